# SPDX-License-Identifier: MIT
# First the header, then the tests: what the header promises is said and provoked.
#   - a comment with "Status" stands directly above every OHM_API declaration
#   - the name of every double ends in its unit
#   - every status a function names is provoked by a test, and no other; of what is said
#     once of every verb, by a test of one of them

function wrong(where, what) {
  printf "%s: %s\n", where, what | "cat >&2"
  faults++
}

BEGIN {
  units = "_(ohm|c|k|k2|percent|ma|m|hpa|h|volt|mw)$"
  # in the unit of whatever is measured, or without a unit
  split("value u limit low high level a b c d a1 b1 c1 d1 percent counts display_count p_low p_within p_high private_storage covariance correlation chi_square probability", free, " ")
  for (i in free)
    unitless[free[i]] = 1
}

# ---- the header ----

FNR == 1 { files++ }

files == 1 && /^ *OHM_[A-Z_]+( = 0)?,? *\/\*\*</ && !statuses_done {
  match($0, /OHM_[A-Z_]+/)
  is_status[substr($0, RSTART, RLENGTH)] = 1
}
files == 1 && /^} ohm_status;/ { statuses_done = 1 }

files == 1 && /^\/\*/ { comment = ""; in_comment = 1 }
files == 1 && in_comment {
  comment = comment "\n" $0
  if ($0 ~ /\*\//) {
    in_comment = 0
    comment_end = FNR
  }
  next
}

# A macro may say double in its text.
files == 1 && /^#/ { next }

files == 1 {
  line = $0
  sub(/\/\*.*/, "", line)
  while (match(line, /double \*?(const )?\*?[a-z0-9_]+/)) {
    name = substr(line, RSTART, RLENGTH)
    sub(/.*[ *]/, "", name)
    rest = substr(line, RSTART + RLENGTH)
    # the value of a function has the name of the function
    if (!(name in unitless) && name !~ units && name != "ohm_finding_number")
      wrong(FILENAME ":" FNR, "double " name " does not end in its unit")
    line = rest
  }
}

# The paragraph that begins with "Status", up to the next label.
function status_text(all,    lines, count, i, text, inside) {
  count = split(all, lines, "\n")
  for (i = 1; i <= count; i++) {
    if (lines[i] ~ /(^|[*. ])Status  /)
      inside = 1
    else if (lines[i] ~ /^ \* [A-Z][a-z]+  /)
      inside = 0
    if (inside) {
      sub(/.*Status  /, "", lines[i])
      text = text " " lines[i]
    }
  }
  return text
}

files == 1 && /^OHM_API/ {
  directly = comment_end == FNR - 1
  declaration = ""
  declared_at = FILENAME ":" FNR
}
files == 1 && declared_at != "" {
  declaration = declaration " " $0
  if (declaration !~ /\(/)
    next
  match(declaration, /ohm_[a-z0-9_]+ *\(/)
  name = substr(declaration, RSTART, RLENGTH)
  sub(/ *\(/, "", name)
  said = directly ? status_text(comment) : ""
  if (said == "")
    wrong(declared_at, name " has no comment directly above it that says its Status")
  status_of[name] = said
  declared_at = ""
}

# What is said once, in a comment of no declaration.
files == 1 && comment_end == FNR - 1 && comment ~ /Every verb/ {
  of_every_verb = status_text(comment)
}

# ---- the tests ----

files > 1 && (/PROVOKES\(/ || pending != "") && !/define PROVOKES/ {
  pending = pending " " $0
  while (match(pending, /PROVOKES\( *ohm_[a-z0-9_]+, *OHM_[A-Z_]+/)) {
    found = substr(pending, RSTART, RLENGTH)
    pending = substr(pending, RSTART + RLENGTH)
    gsub(/PROVOKES\( *| /, "", found)
    split(found, part, ",")
    provoked[part[1], part[2]] = FILENAME ":" FNR
  }
  if (pending !~ /PROVOKES\(/)
    pending = ""
}

function expand(name, text,    depth, other) {
  for (depth = 0; depth < 3 && match(text, /those of ohm_[a-z0-9_]+\(\)/); depth++) {
    other = substr(text, RSTART + 9, RLENGTH - 11)
    if (!(other in status_of))
      wrong(name, "its Status refers to " other "(), which is not declared")
    text = substr(text, 1, RSTART - 1) status_of[other] substr(text, RSTART + RLENGTH)
  }
  return text
}

END {
  for (text = of_every_verb; match(text, /OHM_[A-Z_]+/); text = substr(text, RSTART + RLENGTH))
    shared[substr(text, RSTART, RLENGTH)] = 1
  for (name in status_of) {
    text = expand(name, status_of[name])
    is_verb[name] = text ~ /those of every verb/
    can_fail = is_verb[name]
    while (match(text, /OHM_[A-Z_]+/)) {
      status = substr(text, RSTART, RLENGTH)
      text = substr(text, RSTART + RLENGTH)
      if (!(status in is_status))
        continue
      can_fail = 1
      named[name, status] = 1
      if (status != "OHM_OK" && !((name, status) in provoked))
        wrong(name, "no test provokes " status)
    }
    if (!can_fail && status_of[name] != "" && status_of[name] !~ /cannot fail/)
      wrong(name, "its Status names none, nor says \"cannot fail\"")
  }
  for (pair in provoked) {
    split(pair, part, SUBSEP)
    if (is_verb[part[1]] && part[2] in shared)
      met[part[2]] = 1
    else if (part[2] != "OHM_OK" && !(pair in named))
      wrong(provoked[pair], part[1] "() does not name " part[2] " in the header")
  }
  for (status in shared)
    if (status in is_status && !(status in met))
      wrong("every verb", "no test of one provokes " status)
  exit faults > 0
}
