# SPDX-License-Identifier: MIT
# Writes what the lists of ohmcurve.h are in Python: the words, the settings and the
# attributes of a finding.

# The cells of one X(...): words as they are, texts without their quotes.
function cells(text, cell,    count) {
  for (count = 0; text != "" && text !~ /^ *\)/;) {
    sub(/^[ ,]+/, "", text)
    if (!match(text, /^("[^"]*"|[^,")]+)/))
      wrong(text)
    cell[++count] = substr(text, 1, RLENGTH)
    text = substr(text, RLENGTH + 1)
    gsub(/^"|"$/, "", cell[count])
  }
  return count
}

# The class of ohm_job_reason is JobReason.
function class_of(name,    part, count, i, class) {
  count = split(name, part, "_")
  for (i = 2; i <= count; i++)
    class = class toupper(substr(part[i], 1, 1)) substr(part[i], 2)
  return class
}

function entries(list, entry) {
  return split(lists[list], entry, /X\(/)
}

function wrong(text) {
  print "fields.awk: this is no line of a list: " text >"/dev/stderr"
  failed = 1
  exit 1
}

function begin(class, base, text) {
  print "\n\nclass " class "(" base "):\n    \"\"\"" text "\"\"\"\n"
}

function print_words(list,    entry, cell, count, i) {
  begin(class[list], "Word", meaning[list])
  count = entries(list, entry)
  for (i = 2; i <= count; i++) {
    if (cells(entry[i], cell) != 4)
      wrong(entry[i])
    print "    " toupper(cell[3]) " = \"" cell[3] "\"\n    \"\"\"" cell[4] "\"\"\""
  }
}

function print_settings(    entry, cell, count, i) {
  begin("Settings", "TypedDict, total=False", "What can be asked; a str is in the notation, None is unset.")
  count = entries("OHM_SETTINGS", entry)
  for (i = 2; i <= count; i++) {
    if (cells(entry[i], cell) != 9)
      wrong(entry[i])
    print "    " cell[3] ": " (cell[4] in given ? given[cell[4]] : "float | str | None")
    print "    \"\"\"" cell[9] "\n\n    Without it: " cell[5] ". Allowed: " cell[6] ". Example: " cell[7] "."
    print "    Of: " cell[8] ".\n    \"\"\""
  }
}

function print_fields(    entry, cell, count, i, type, list) {
  print "\n\n@dataclass(frozen=True, repr=False)\nclass Fields:"
  print "    \"\"\"What is answered; None is absent.\"\"\"\n"
  count = entries("OHM_FIELDS", entry)
  for (i = 2; i <= count; i++) {
    if (cells(entry[i], cell) != 5)
      wrong(entry[i])
    type = type_of[cell[4]]
    if (cell[4] == "WORD" && match(cell[5], /OHM_[A-Z_]+/)) {
      list = substr(cell[5], RSTART, RLENGTH)
      # A later library may know a word that this list has not.
      type = class[list] " | str | None"
      by_name = by_name "    \"" cell[3] "\": " class[list] ",\n"
    }
    if (type == "")
      wrong(entry[i])
    print "    " cell[3] ": " type "\n    \"\"\"" cell[5] "\"\"\""
  }
  print "\n\nWORDS: dict[str, type[Word]] = {\n" by_name "}"
}

BEGIN {
  type_of["NUMBER"] = "float | None"
  type_of["TEXT"] = "str | None"
  type_of["LIST"] = "tuple[str, ...]"
  given["TEXT"] = given["METER"] = given["TAU"] = given["DRAWER"] = "str | None"
  given["PLACE"] = given["NEGATIVE"] = given["RANGE"] = given["ROUNDING"] = given["SERIES"] = "str | None"
  given["FLAG"] = given["MOVES"] = "bool | str | None"
}
/^\/\*\* .* \*\/$/ { comment = substr($0, 5, length($0) - 7) }
/^#define OHM_[A-Z_]+\(X\)/ {
  name = $2
  sub(/\(X\)/, "", name)
  meaning[name] = comment
  inside = 1
  next
}
inside {
  inside = sub(/ *\\$/, "")
  lists[name] = lists[name] $0
}
/^typedef enum .*\(OHM_CONSTANT\)/ {
  list = $5
  sub(/\(.*/, "", list)
  class[list] = class_of($3)
  order[++words] = list
}
END {
  if (failed)
    exit 1
  print "# SPDX-License-Identifier: MIT"
  print "# Written by fields.awk from ohmcurve.h."
  print "from __future__ import annotations\n"
  print "from dataclasses import dataclass\nfrom typing import TypedDict\n"
  print "from .word import Word\n"
  print "__all__ = ["
  for (i = 1; i <= words; i++)
    print "    \"" class[order[i]] "\","
  print "    \"Settings\",\n]"
  for (i = 1; i <= words; i++)
    print_words(order[i])
  print_settings()
  print_fields()
}
