# SPDX-License-Identifier: MIT
# Reference rows, one a line, eleven cells apart by "|"; "#" begins a comment.
#
#   kind       published   printed in the source, at the place
#              computed    worked out apart from this library, in high precision
#              practice    common practice of the trade, no source
#              memory      known, but the page was not at hand
#   id         one of a kind, over all files
#   source     maker or body and document
#   place      table, page, clause, section, row, eq., figure, appendix or example
#   call       what to ask: see the table of calls in tests/test_refs.c
#   inputs     key=value, apart by spaces; the key ends in its unit
#   quantity   which of the results is meant; ends in its unit
#   expected   the figure
#   half       half its last printed digit, and that of the printed inputs moved
#              through the slope
#   u_source   what the source says of its own figures, or what shows from them
#   budget     for arithmetic and, where the row needs it, interpolation
#
# A result is right when it lies within half + u_source + budget of expected.
# This program stops the build at a row that does not keep to that.

function wrong(what) {
  printf "%s:%d: %s\n", FILENAME, FNR, what | "cat >&2"
  faults++
}

function is_number(text) {
  return text ~ /^[-+]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][-+]?[0-9]+)?$/
}

BEGIN {
  FS = "|"
  split("kind id source place call inputs quantity expected half u_source budget", name, " ")
  for (i in name)
    column[name[i]] = i + 0
}

/^#/ || /^[ \t]*$/ { next }

NF != 11 {
  wrong("has " NF " cells, not 11: kind | id | source | place | call | inputs | quantity | expected | half | u_source | budget")
  next
}

{
  for (i = 1; i <= NF; i++) {
    gsub(/^[ \t]+|[ \t]+$/, "", $i)
    cell[i] = $i
    if ($i == "" && i != column["source"] && i != column["place"])
      wrong(name[i] " is empty")
  }
  rows++

  kind = cell[column["kind"]]
  if (kind !~ /^(published|computed|practice|memory)$/)
    wrong("kind \"" kind "\" is none of published, computed, practice, memory")
  if (kind == "published") {
    if (cell[column["source"]] == "")
      wrong("a published figure needs its source")
    if (tolower(cell[column["place"]]) !~ /(^|[^a-z])(tables?|pages?|clauses?|sections?|rows?|eqs?\.|figures?|appendix|examples?) [^ ]/)
      wrong("a published figure needs its place: table, page, clause, section, row, eq., figure, appendix or example, and which")
  }

  id = cell[column["id"]]
  if (id in seen)
    wrong("id " id " is taken by " seen[id])
  seen[id] = FILENAME ":" FNR

  count = split(cell[column["inputs"]], input, /[ \t]+/)
  for (i = 1; i <= count; i++)
    if (input[i] !~ /^[a-z][a-z0-9_]*=[^=]+$/)
      wrong("input \"" input[i] "\" is not key=value")

  for (i = column["expected"]; i <= column["budget"]; i++)
    if (!is_number(cell[i]))
      wrong(name[i] " \"" cell[i] "\" is no number")
    else if (i > column["expected"] && cell[i] + 0 < 0)
      wrong(name[i] " is below 0")
}

END {
  if (!faults && rows == 0) {
    print "no reference rows at all" | "cat >&2"
    faults++
  }
  exit faults > 0
}
