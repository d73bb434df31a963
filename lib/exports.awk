# SPDX-License-Identifier: MIT
# The functions the header declares, one a line.
/^OHM_API/ {
  match($0, /ohm_[a-z0-9_]+ *\(/)
  if (RSTART == 0) {
    # the name stands on a later line of the declaration
    pending = 1
    next
  }
  name = substr($0, RSTART, RLENGTH)
  sub(/ *\($/, "", name)
  print name
  next
}
pending {
  if (match($0, /ohm_[a-z0-9_]+ *\(/)) {
    name = substr($0, RSTART, RLENGTH)
    sub(/ *\($/, "", name)
    print name
    pending = 0
  }
}
