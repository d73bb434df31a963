# SPDX-License-Identifier: MIT
# Prints C source that holds the tables, see lib/ground/built_in.h.
#
#   LC_ALL=C awk -f tables/embed.awk tables/VERSION tables/*.csv tables/circuits/*.csv
#
# od reads the bytes, because awks differ in what they make of a NUL and of a
# byte above 127.

function refuse(sentence) {
  print "embed.awk: " sentence | "cat 1>&2"
  close("cat 1>&2")
  refused = 1
  exit 1
}

function stem(file) {
  sub(/^.*\//, "", file)
  sub(/\.csv$/, "", file)
  return file
}

function version_of(file,    line) {
  if ((getline line <file) <= 0 || line !~ /^[0-9]+$/)
    refuse(file ": the first line must be the version of the tables, a whole number")
  close(file)
  return line
}

function named(file,    name) {
  name = stem(file)
  if (file !~ /\.csv$/ || name !~ /^[a-z0-9][a-z0-9.-]*$/)
    refuse(file ": name a table in a-z, 0-9, dot and hyphen, with .csv at the end")
  if (name in file_of)
    refuse(file ": there is a table " name " already, " file_of[name])
  return name
}

function insert(name,    i) {
  for (i = count++; i > 0 && (names[i - 1] "") > (name ""); i--)
    names[i] = names[i - 1]
  names[i] = name
}

# Those of tables/circuits/ are circuits, all others sensors.
function is_circuit(name) {
  return file_of[name] ~ /(^|\/)circuits\//
}

function print_tables(noun, circuits,    i, listed, list, bytes) {
  for (i = 0; i < count; i++)
    if (is_circuit(names[i]) == circuits) {
      list = list "  \"" names[i] "\",\n"
      bytes = bytes "  {table_" i ", sizeof table_" i "},\n"
      listed++
    }
  if (!listed)
    refuse("give at least one sensor and one circuit")
  print "\nstatic const char *const " noun "_names[] = {\n" list "};"
  print "\nstatic const struct oc_table " noun "_bytes[] = {\n" bytes "};"
  print "\nconst struct oc_tables oc_" noun "_tables = {\"" noun "\", " listed ", " \
    noun "_names, " noun "_bytes};"
}

function print_bytes(file,    command, line, byte, n, i, length_) {
  command = "od -A n -v -t u1 '" file "'"
  while ((command | getline line) > 0) {
    n = split(line, byte, " ")
    for (i = 1; i <= n; i++) {
      if (byte[i] == "0")
        refuse(file ": byte " (length_ + i) " is NUL; a table is text")
      printf "%s%s,", i == 1 ? "  " : " ", byte[i]
    }
    if (n > 0)
      print ""
    length_ += n
  }
  close(command)
  if (!length_)
    refuse(file ": the table is empty or cannot be read")
}

BEGIN {
  if (ARGC < 3)
    refuse("give tables/VERSION and at least one table")
  version = version_of(ARGV[1])
  for (a = 2; a < ARGC; a++) {
    name = named(ARGV[a])
    file_of[name] = ARGV[a]
    insert(name)
  }
  print "/* Made by tables/embed.awk. */"
  print "#include \"lib/ground/built_in.h\"\n"
  print "const char oc_tables_version_text[] = \"" version "\";"
  for (i = 0; i < count; i++) {
    print "\nstatic const unsigned char table_" i "[] = {"
    print_bytes(file_of[names[i]])
    print "};"
  }
  print_tables("sensor", 0)
  print_tables("circuit", 1)
  exit 0
}

END {
  if (refused)
    exit 1
}
