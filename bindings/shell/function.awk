# SPDX-License-Identifier: MIT
# The manual page of one public function, after roff.awk, from its example, when there is
# one, and the header: awk -v page=ohm_bench_check. A function without a comment of its own is
# told of on the page of the one before it.

function function_of(text) {
  sub(/\(.*/, "", text)
  sub(/.*[ *]/, "", text)
  return text
}

# "judge a sensor": the first sentence, to be read behind the name.
function brief(text,  at) {
  gsub(/\n/, " ", text)
  gsub(/  +/, " ", text)
  sub(/^ /, "", text)
  at = match(text, /[.:;]( |$)/)
  if (at > 0)
    text = substr(text, 1, at - 1)
  return text ~ /^[A-Z][a-z]/ ? tolower(substr(text, 1, 1)) substr(text, 2) : text
}

# Functions that the comment names, and the page of them all.
function see_also(text,  seen, name) {
  printf ".SH SEE ALSO\n\\fBohmcurve\\fR(3)"
  while (match(text, /ohm_[a-z_0-9]+\(\)/)) {
    name = substr(text, RSTART, RLENGTH - 2)
    text = substr(text, RSTART + RLENGTH)
    if (name != page && !(name in seen))
      printf ",\n\\fB%s\\fR(3)", roff(name)
    seen[name] = 1
  }
  print ""
}

# A program as it stands in its file, and its comments as prose; what it prints is in the last.
function write_example(  i, text, inside, code, gap) {
  print ".SH EXAMPLE"
  for (i = 1; i <= example_lines; i++) {
    text = example[i]
    if (text == "/*") {
      if (code)
        print ".fi\n.PP"
      code = 0
      gap = ""
      inside = 1
    } else if (text == " */") {
      inside = 0
      literal(0)
    } else if (inside) {
      in_diagram = text ~ /^ [*]     /
      prose(comment_line(text))
    } else if (text == "")
      gap = gap "\\&\n"
    else {
      if (!code)
        print ".PP\n.nf"
      code = 1
      print gap "\\&" roff(text)
      gap = ""
    }
  }
}

function write_page(text) {
  print ".\\\" SPDX-License-Identifier: MIT"
  print ".TH " page " 3 \"\" \"ohmcurve " version "\""
  print ".\\\" Ragged right, unhyphenated, one space after a sentence.\n.ad l\n.nh\n.ss 12 0"
  print ".SH NAME\n" roff(page) " \\- " roff(brief(text))
  print ".SH SYNOPSIS\n\\fB#include <ohmcurve.h>\\fR"
  print ".HP 4\n" declarations
  print ".SH DESCRIPTION"
  comment(text)
  if (example_lines > 0)
    write_example()
  see_also(text)
}

function end_group() {
  if (wanted)
    write_page(told)
  wanted = 0
  declarations = ""
  told = ""
}

function declare(text,  name) {
  name = function_of(text)
  if (declarations == "")
    first = name
  else if (name == page) {
    print ".so man3/" first ".3"
    exit
  }
  if (name == page)
    wanted = 1
  declarations = (declarations == "" ? "" : declarations "\n.HP 4\n") declaration(text)
}

FILENAME ~ /[.]c$/ {
  if (FNR > 1)
    example[++example_lines] = $0
  next
}

state == "comment" {
  told = told "\n" comment_line($0)
  if (/\*\//)
    state = ""
  next
}
state == "declaration" {
  text = text " " $0
  if (/;$/) {
    declare(text)
    state = ""
  }
  next
}
/^\/\*/ {
  end_group()
  told = comment_line($0)
  if (!/\*\//)
    state = "comment"
  next
}
/^OHM_API/ {
  text = $0
  if (/;$/)
    declare(text)
  else
    state = "declaration"
}
END {
  end_group()
}
