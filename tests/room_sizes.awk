# SPDX-License-Identifier: MIT
# Text and data of the library, floor by floor and room by room, and of the rooms that
# the program of a linker's map took from the archive, marked *; these have a bound.
#
#     size librooms.a | awk -v bound=150000 -f room_sizes.awk DEVELOPERS.md MAP -
#
# Floors and their rooms are those of the table in DEVELOPERS.md.

FILENAME ~ /DEVELOPERS[.]md$/ {
  if (/^[|] floor [|]/) table = 1
  else if (!/^[|]/) table = 0
  if (table && /^[|] `[a-z]+` [|]/) {
    split($0, cells, "[|]")
    gsub(/[ `]/, "", cells[2])
    floors[++floor_count] = cells[2]
    room_count[floor_count] = split(cells[3], names, "`")
    for (i = 2; i < room_count[floor_count]; i += 2) {
      rooms[floor_count, i] = names[i]
      floor_of[names[i]] = floor_count
    }
  }
  next
}

match($0, /librooms_la-[a-z_0-9]+[.]o/) {
  room = substr($0, RSTART + 12, RLENGTH - 14)
  if (FILENAME != "-") {
    needed[room] = 1
  } else if (room == "tables_data") {
    tables = $1 + $2
  } else {
    bytes[room] = $1 + $2
    all += bytes[room]
    if (room in needed) check += bytes[room]
    if (!(room in floor_of)) homeless = homeless " " room
    on_floor[floor_of[room]] += bytes[room]
  }
}

END {
  for (f = 1; f <= floor_count; f++) {
    printf "%7d  %s\n", on_floor[f], floors[f]
    for (i = 2; i < room_count[f]; i += 2)
      printf "%7d    %s%s\n", bytes[rooms[f, i]], rooms[f, i], rooms[f, i] in needed ? " *" : ""
  }
  if (homeless) print "On no floor in DEVELOPERS.md:" homeless
  printf "%7d  together, without the tables of %d\n", all, tables
  printf "%7d  * what one check needs, of at most %d\n", check, bound
  exit !check || check > bound
}
