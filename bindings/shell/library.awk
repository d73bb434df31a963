# SPDX-License-Identifier: MIT
# The manual page of the library, man(7), from the comments of its header. Each
# comment is laid out by its own marks: a word and two spaces begin an entry, four
# spaces a formula.

function roff(text) {
  gsub(/\\/, "\\e", text)
  gsub(/-/, "\\-", text)
  gsub(/'/, "\\(aq", text)
  gsub(/\^/, "\\(ha", text)
  gsub(/~/, "\\(ti", text)
  gsub(/`/, "\\(ga", text)
  gsub(/"/, "\\(dq", text)
  return text
}

# Spaces inside of a parameter do not break.
function declaration(text) {
  gsub(/[ \t]+/, " ", text)
  sub(/^OHM_API /, "", text)
  text = roff(text)
  gsub(/ /, "\\ ", text)
  gsub(/,\\ /, ", ", text)
  gsub(/[{]\\ /, "{ ", text)
  gsub(/\\ [}]/, " }", text)
  return "\\fB" text "\\fR"
}

function literal(on) {
  if (on != in_literal)
    print on ? ".RS 4\n.nf" : ".fi\n.RE"
  in_literal = on
}

# Entries stand close together.
function entry(on) {
  if (on != in_entry)
    print on ? ".PP\n.PD 0" : ".PD"
  in_entry = on
}

# One line of prose inside of a comment.
function prose(text,  word) {
  if (text == "") {
    literal(0)
    entry(0)
    print ".PP"
    return
  }
  if (match(text, /^ ?[A-Z][A-Za-z]+  +[^ ]/)) {
    literal(0)
    entry(1)
    sub(/^ /, "", text)
    word = text
    sub(/ .*/, "", word)
    sub(/^[A-Za-z]+ +/, "", text)
    print ".TP 10\n\\fI" word "\\fR"
    named(text, "")
  } else if (in_entry && text ~ /^    /) {
    sub(/^ +/, "", text)
    named(text, ".br\n")
  } else if (text ~ /^    / || in_diagram) {
    literal(1)
    print roff(text)
  } else {
    literal(0)
    sub(/^ +/, "", text)
    print "\\&" roff(text)
  }
}

# "t_c     degrees Celsius": what a parameter or a member is.
function named(text, apart,  word) {
  if (match(text, /^[a-z_0-9.]+(, [a-z_0-9.]+)*  +[^ ]/)) {
    word = text
    sub(/  .*/, "", word)
    sub(/^[^ ]+(, [^ ]+)* +/, "", text)
    print apart "\\fB" roff(word) "\\fR \\(em"
  }
  print "\\&" roff(text)
}

function comment_line(text) {
  sub(/^ *\/\*\*? ?/, "", text)
  sub(/ *\*\/ *$/, "", text)
  sub(/^ \* ?/, "", text)
  sub(/^ \*$/, "", text)
  sub(/[ \t]+$/, "", text)
  return text
}

# A comment as a whole. "Status  ..." at the end of a sentence is an entry, too.
function comment(text,  lines, count, i, at) {
  count = split(text, lines, "\n")
  for (i = 1; i <= count; i++) {
    at = match(lines[i], /[^ ] +Status  /)
    if (at > 0) {
      prose(substr(lines[i], 1, at))
      prose(substr(lines[i], at + 1 + index(substr(lines[i], at + 1), "S") - 1))
    } else if (!(lines[i] == "" && (i == 1 || i == count)))
      prose(lines[i])
  }
  literal(0)
  entry(0)
}

function flush_comment() {
  if (pending_comment != "")
    comment(pending_comment)
  pending_comment = ""
}

# "int status;  an ohm_status", a member or a constant and its comment.
function member(text,  about) {
  about = ""
  if (match(text, /\/\*\*<.*/)) {
    about = substr(text, RSTART)
    text = substr(text, 1, RSTART - 1)
    sub(/^\/\*\*< */, "", about)
    sub(/ *\*\/ *$/, "", about)
    gsub(/ +/, " ", about)
  }
  sub(/^ +/, "", text)
  sub(/[ ,]+$/, "", text)
  print ".TP\n" declaration(text)
  print "\\&" roff(about)
}

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

# ---- the list of fields

state == "fields" {
  text = $0
  more = text ~ /\\$/
  sub(/ *\\$/, "", text)
  sub(/^ +/, " ", text)
  field = field text
  if (field ~ /\)$/) {
    split(field, parts, /, */)
    name = parts[2]
    about = field
    sub(/^[^"]*"/, "", about)
    sub(/"\)$/, "", about)
    kind = parts[3] ~ /^"/ ? "" : " (" tolower(parts[3]) ")"
    print ".TP\n\\fB" roff(name) "\\fR" kind "\n\\&" roff(about)
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
/^#define OHM_(FIELDS|LINK_COLUMNS|TEST_COLUMNS)/ {
  print ".PP\n" declaration($2)
  print ".PP"
  flush_comment()
  field = ""
  state = "fields"
  next
}
/^#define OHM_(FIELD|LINK|TEST)_CONSTANT/ { next }
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
