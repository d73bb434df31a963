#!/bin/sh
# SPDX-License-Identifier: MIT
# The folders of lib/ are floors. A room calls the floors below and, on its own, rooms
# further left in the table of DEVELOPERS.md, never the other way; no room has more
# than 600 lines. What each object needs and gives comes from nm.
# NM may carry flags and is therefore not quoted.
set -e
: "${srcdir:=.}" "${NM:=nm}" "${AWK:=awk}"
LC_ALL=C
export LC_ALL
scratch=tests/floors.tmp
rm -rf "$scratch"
mkdir -p "$scratch"
trap 'rm -rf "$scratch"' EXIT
failed=0

for source in "$srcdir"/lib/*/*.c; do
  case $source in
  */tables_data.c) continue ;;
  esac
  [ "$(wc -l <"$source")" -le 600 ] || {
    echo "${source#"$srcdir"/} has more than 600 lines: divide it" >&2
    failed=1
  }
done

for object in lib/*/librooms_la-*.o; do
  floor=${object#lib/}
  floor=${floor%%/*}
  room=${object##*librooms_la-}
  echo "room $floor ${room%.o}"
  $NM "$object"
done >"$scratch/nm" || exit 1

$AWK '
  function complain(sentence) {
    print sentence >"/dev/stderr"
    failed = 1
  }
  # The table lists the uppermost floor first.
  FNR == NR {
    if (/^[|] floor [|]/) table = 1
    else if (!/^[|]/) table = 0
    if (table && /^[|] `[a-z]+` [|]/) {
      split($0, cells, "[|]")
      split(cells[2], name, "`")
      floors[++floor_count] = name[2]
      rooms = split(cells[3], names, "`")
      for (i = 2; i < rooms; i += 2) {
        floor_of[names[i]] = name[2]
        height[names[i]] = -1000 * floor_count + i
      }
    }
    next
  }
  $1 == "room" { room = $3; seen[room] = $2; next }
  NF == 2 && $1 == "U" { calls[room, $2]; next }
  NF == 3 && $2 ~ /^[TDRBVW]$/ { home[$3] = room }
  END {
    height["tables_data"] = -1000 * floor_count
    floor_of["tables_data"] = "ground"
    for (room in seen) {
      count++
      if (!(room in floor_of))
        complain("lib/" seen[room] "/" room ".c is in no row of the table in DEVELOPERS.md")
      else if (floor_of[room] != seen[room])
        complain("lib/" seen[room] "/" room ".c stands on the floor " floor_of[room] " of the table in DEVELOPERS.md")
    }
    for (room in floor_of)
      if (!(room in seen))
        complain("DEVELOPERS.md lists a room " room " that does not exist")
    for (pair in calls) {
      split(pair, part, SUBSEP)
      if (!(part[2] in home) || home[part[2]] == part[1])
        continue
      made++
      if (height[home[part[2]]] > height[part[1]])
        complain(floor_of[part[1]] "/" part[1] " calls " part[2] "() of " \
          floor_of[home[part[2]]] "/" home[part[2]] ", which is not below or to the left")
    }
    print made + 0 " calls between " count + 0 " rooms"
    exit failed || !count || !made
  }' "$srcdir/DEVELOPERS.md" "$scratch/nm" || failed=1
exit $failed
