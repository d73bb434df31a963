# SPDX-License-Identifier: MIT
# Writes the attributes of a finding in Python, from the list of fields in ohmcurve.h.
BEGIN {
  words["verdict"] = words["job"] = "Verdict"
  words["reason"] = "Reason"
  words["job_reason"] = "JobReason"
  words["place"] = "Place"
  words["explanation"] = "Explanation"
  words["role"] = "Role"
  words["agreement"] = "Agreement"
  words["odd"] = "Soaked"
  words["negative"] = "Negative"
  words["joined"] = "Joined"
  type_of["NUMBER"] = "float | None"
  type_of["TEXT"] = "str | None"
  type_of["LIST"] = "tuple[str, ...]"
}
/^#define OHM_FIELDS\(/ { inside = 1; next }
inside {
  last = !sub(/ *\\$/, "")
  list = list $0
  if (last)
    exit
}
END {
  print "# SPDX-License-Identifier: MIT"
  print "# Written by fields.awk from ohmcurve.h."
  print "from __future__ import annotations\n"
  print "from dataclasses import dataclass\n"
  print "from .verdict import Agreement, Explanation, JobReason, Joined, Negative, Place, Reason, Role, Soaked, Verdict, Word\n\n"
  print "@dataclass(frozen=True, repr=False)\nclass Fields:"
  count = split(list, fields, /X\(/)
  for (i = 2; i <= count; i++) {
    split(fields[i], part, /, */)
    name = part[2]
    type = type_of[part[3]]
    if (name in words) {
      type = words[name] (name ~ /^verdict$/ ? "" : " | None")
      by_name = by_name "    \"" name "\": " words[name] ",\n"
    }
    if (type == "" || !match(fields[i], /".*"/)) {
      print "fields.awk: this is no field: " fields[i] >"/dev/stderr"
      exit 1
    }
    print "    " name ": " type
    print "    \"\"\"" substr(fields[i], RSTART + 1, RLENGTH - 2) "\"\"\""
  }
  print "\n\nWORDS: dict[str, type[Word]] = {\n" by_name "}"
  if (count < 2)
    exit 1
}
