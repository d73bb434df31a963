# SPDX-License-Identifier: MIT
# The manual page of the library as a whole, after roff.awk, from its header.

function open_section(name) {
  print ".SH " toupper(name)
}

BEGIN {
  print ".\\\" SPDX-License-Identifier: MIT"
  print ".TH OHMCURVE 3 \"\" \"ohmcurve " version "\""
  print ".\\\" Ragged right, unhyphenated, one space after a sentence.\n.ad l\n.nh\n.ss 12 0"
  print ".SH NAME"
  print "ohmcurve \\- from the reading of an ohmmeter to a verdict on a temperature sensor"
  print ".SH SYNOPSIS\n.nf\n\\fB#include <ohmcurve.h>\\fR\n"
  print "\\fBcc ... $(pkg\\-config \\-\\-cflags \\-\\-libs ohmcurve)\\fR\n.fi"
  print ".SH DESCRIPTION"
  state = "top"
}

# ---- the page of conventions at the top

state == "top" {
  if ($0 == "#ifndef OHMCURVE_H") {
    literal(0)
    entry(0)
    state = "skip"
    next
  }
  if ($0 ~ /SPDX|^\/\*$|^ \*\/$/)
    next
  text = comment_line($0)
  if (text ~ /^Conventions/) {
    literal(0)
    open_section("conventions")
    next
  }
  in_diagram = text ~ /^  [^ ]/
  if (text ~ /^  /)
    sub(/^  /, "", text)
  prose(text)
  in_diagram = 0
  next
}

/^\/\* ---- .* -+ \*\/$/ {
  open_section($3)
  state = "group"
  next
}
state == "skipped" {
  if (!/\\$/)
    state = "group"
  next
}
state != "group" && state != "struct" && state != "comment" && state != "declaration" &&
  state != "fields" && state != "macro" { next }
/^#ifdef __cplusplus/ { exit }

# ---- members

state == "struct" {
  if ($0 ~ /^[}]/) {
    if (member_text != "")
      member(member_text)
    member_text = ""
    state = "group"
    next
  }
  text = $0
  sub(/^ +/, "", text)
  if (member_text != "" && member_text ~ /\/\*/ && member_text !~ /\*\//)
    member_text = member_text " " text
  else {
    if (member_text != "")
      member(member_text)
    member_text = text
  }
  next
}

# ---- lists: X(1, VERDICT, verdict, WORD, "meaning"), X(LINK, link, "meaning")

# The texts of an entry, into quoted[]. Returns how many.
function split_quoted(text,  count) {
  count = 0
  while (match(text, /"[^"]*"/)) {
    quoted[++count] = substr(text, RSTART + 1, RLENGTH - 2)
    text = substr(text, RSTART + RLENGTH)
  }
  return count
}

function list_entry(field,  parts, numbered, kind, texts) {
  split(field, parts, /, */)
  numbered = parts[1] ~ /\([0-9]+$/
  kind = parts[3 + numbered] ~ /"/ ? "" : " (" tolower(parts[3 + numbered]) ")"
  texts = split_quoted(field)
  print ".TP\n\\fB" roff(parts[2 + numbered]) "\\fR" kind
  if (texts < 5)
    print "\\&" roff(quoted[texts])
  else
    print "\\&" roff(quoted[5]) "; without it " roff(quoted[1]) ".\nSuch as " roff(quoted[3]) \
      ".\nOf " roff(quoted[4]) "."
}

state == "fields" {
  text = $0
  more = text ~ /\\$/
  sub(/ *\\$/, "", text)
  sub(/^ +/, " ", text)
  field = field text
  if (field ~ /\)$/) {
    list_entry(field)
    field = ""
  }
  if (!more)
    state = "group"
  next
}

# ---- comments

state == "comment" {
  pending_comment = pending_comment "\n" comment_line($0)
  if ($0 ~ /\*\//)
    state = "group"
  next
}
state == "macro" {
  text = text " " $0
  if ($0 ~ /\\$/)
    next
  gsub(/\\/, " ", text)
  print declaration(text) "\n.br"
  state = "group"
  next
}
state == "declaration" {
  text = text " " $0
  if ($0 !~ /;$/)
    next
  print declaration(text)
  print ".RS 4\n.PP"
  flush_comment()
  print ".RE"
  state = "group"
  next
}

/^[^#]/ { in_defines = 0 }
/^\/\*/ {
  flush_comment()
  pending_comment = comment_line($0)
  if ($0 !~ /\*\//)
    state = "comment"
  next
}

# ---- what they are of

/^OHM_API/ {
  print ".HP 4"
  text = $0
  if ($0 !~ /;$/) {
    state = "declaration"
    next
  }
  print declaration(text)
  print ".RS 4\n.PP"
  flush_comment()
  print ".RE"
  next
}
/^typedef.*[{].*[}].*;$/ {
  print ".PP"
  print declaration($0)
  print ".RS 4\n.PP"
  flush_comment()
  print ".RE"
  next
}
/^typedef.*[{]$/ {
  print ".PP"
  name = $0
  sub(/ *[{]$/, "", name)
  sub(/^typedef /, "", name)
  print declaration(name)
  print ".PP"
  flush_comment()
  state = "struct"
  next
}
/^typedef/ {
  print ".PP"
  print declaration($0)
  print ".RS 4\n.PP"
  flush_comment()
  print ".RE"
  next
}
/^#define OHM_[A-Z_]+\(X\)/ {
  print ".PP\n" declaration($2)
  print ".PP"
  flush_comment()
  field = ""
  state = "fields"
  next
}
/^#define OHM_[A-Z_]*CONSTANT/ {
  if (/\\$/)
    state = "skipped"
  next
}
/^#define/ {
  if (pending_comment != "" || !in_defines)
    print ".PP"
  if (pending_comment != "") {
    flush_comment()
    print ".br"
  }
  in_defines = 1
  text = $0
  if (text ~ /\\$/) {
    state = "macro"
    next
  }
  print declaration(text) "\n.br"
  next
}
END {
  print ".SH SEE ALSO\n\\fBohmcurve\\fR(1)"
}
