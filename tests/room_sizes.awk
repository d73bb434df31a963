# SPDX-License-Identifier: MIT
# Text and data of the rooms that the program of a linker's map took from the archive, which
# have a bound; with whole=1 of the library too, floor by floor and room by room.
#
#     size librooms.a | awk -v program=NAME -v bound=150000 -f room_sizes.awk DEVELOPERS.md MAP -
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
    for (i = 2; i < room_count[f]; i += 2)
      if (rooms[f, i] in needed && (floors[f] == "bench" || floors[f] == "answers" || floors[f] == "words"))
        above = above " " rooms[f, i]
    if (!whole)
      continue
    printf "%7d  %s\n", on_floor[f], floors[f]
    for (i = 2; i < room_count[f]; i += 2)
      printf "%7d    %s\n", bytes[rooms[f, i]], rooms[f, i]
  }
  if (homeless) print "On no floor in DEVELOPERS.md:" homeless
  if (whole) printf "%7d  together, without the tables of %d\n", all, tables
  printf "%7d  what %s needs, of at most %d\n", check, program, bound
  if (program == "conversion" && above) {
    print "a conversion links rooms of the bench or above:" above
    exit 1
  }
  exit !check || check > bound
}
