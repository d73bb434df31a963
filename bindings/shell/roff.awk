# SPDX-License-Identifier: MIT
# What the pages of the library share: the comments of its header as man(7). Each comment
# is laid out by its own marks: a word and two spaces begin an entry, four spaces a formula.

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
    print on ? ".RS 2\n.nf" : ".fi\n.RE"
  in_literal = on
}

# Rows of words and what they are: "    2.31k    ohms as the display showed them".
function row(on) {
  if (on != in_row)
    print on ? ".PP\n.PD 0" : ".PD"
  in_row = on
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
    row(0)
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
  } else if (!in_diagram && ((text ~ /^    [a-z0-9][^ ]*  +[^ ]/ && text !~ /[;{]$/) ||
      (in_row && text ~ /^    [a-z0-9]/))) {
    literal(0)
    row(1)
    sub(/^ +/, "", text)
    word = text
    sub(/ .*/, "", word)
    sub(/^[^ ]+ +/, "", text)
    print ".TP 20\n\\fB" roff(word) "\\fR\n\\&" roff(text)
  } else if (in_row && text ~ /^      /) {
    sub(/^ +/, "", text)
    print "\\&" roff(text)
  } else if (text ~ /^    / || in_diagram) {
    row(0)
    literal(1)
    sub(/^    /, "", text)
    print roff(text)
  } else {
    row(0)
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
  row(0)
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
