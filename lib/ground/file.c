/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE   200809L
#define _FILE_OFFSET_BITS 64

#include "file.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <unistd.h>

#include "status.h"

/* A path is quoted in pieces, since its end is what tells two apart. */
static void quote_path(char *buffer, size_t size, const char *path) {
  enum { PIECE = 40, SHOWN = 200 };
  struct oc_text text = oc_text_begin(buffer, size);
  size_t length = strlen(path), at = 0;
  for (; length - at > PIECE && at < SHOWN; at += PIECE)
    oc_text_add_quoted(&text, path + at, PIECE);
  oc_text_add_quoted(&text, path + at, length - at);
}

static char *refuse(ohm_error *error, ohm_status status, const char *path, const char *why) {
  char shown[256];
  quote_path(shown, sizeof shown, path);
  oc_fail(error, status, shown, ": ", why, (const char *)NULL);
  return NULL;
}

static char *refuse_large(ohm_error *error, const char *path) {
  return refuse(error, OHM_TOO_LARGE, path,
                "it is larger than 16 MiB: leave out what is not needed, or give another file");
}

static const char *why_not_opened(int number) {
  switch (number) {
  case ENOENT:
    return "there is no such file: check its name and the folder it is in";
  case ENOTDIR:
    return "a part of its path is no folder: check the path";
  case EACCES:
  case EPERM:
    return "you are not permitted to read it: ask its owner, or give a copy of it";
  case EISDIR:
    return "it is a directory: give a file in it";
  case ELOOP:
    return "its links lead in a circle: give the file itself";
  case ENAMETOOLONG:
    return "its name is too long: give a shorter path";
  case EMFILE:
  case ENFILE:
    return "too many files are open: close some and try again";
  case ENXIO:
  case ENODEV:
    return "it is not a plain file: give a plain file";
  default:
    return "it cannot be opened: check that it is a plain file you may read";
  }
}

/* Without waiting, since a pipe with no writer would wait for ever. */
static int open_plain(const char *path) {
  int handle;
  do
    handle = open(path, O_RDONLY | O_NONBLOCK | O_CLOEXEC | O_NOCTTY);
  while (handle < 0 && errno == EINTR);
  return handle;
}

/* Returns how many bytes were read, 0 at the end, -1 when it fails. */
static ssize_t read_some(int handle, char *bytes, size_t room) {
  ssize_t count;
  do
    count = read(handle, bytes, room);
  while (count < 0 && errno == EINTR);
  return count;
}

/* Bytes being read, with room for one more than may be kept and for the NUL. */
struct bytes {
  char *start;
  size_t length, room;
};

static bool make_room(struct bytes *bytes) {
  size_t room = 2 * bytes->room;
  if (room > OC_FILE_MAX + 2)
    room = OC_FILE_MAX + 2;
  char *start = realloc(bytes->start, room);
  if (!start)
    return false;
  bytes->start = start;
  bytes->room = room;
  return true;
}

/* The size that was told is only where to begin: it may be 0, or change. */
static char *read_all(int handle, struct bytes *bytes, const char *path, ohm_error *error) {
  for (;;) {
    if (bytes->length > OC_FILE_MAX)
      return refuse_large(error, path);
    if (bytes->length + 1 >= bytes->room && !make_room(bytes)) {
      oc_fail_memory(error);
      return NULL;
    }
    ssize_t count =
        read_some(handle, bytes->start + bytes->length, bytes->room - bytes->length - 1);
    if (count < 0)
      return refuse(error, OHM_CANNOT_OPEN, path,
                    "it cannot be read to its end: copy it to another place and give the copy");
    if (count == 0)
      break;
    bytes->length += (size_t)count;
  }
  bytes->start[bytes->length] = '\0';
  return bytes->start;
}

static char *read_sized(int handle, size_t size, const char *path, size_t *length,
                        ohm_error *error) {
  struct bytes bytes = {malloc(size + 2), 0, size + 2};
  if (!bytes.start) {
    oc_fail_memory(error);
    return NULL;
  }
  if (!read_all(handle, &bytes, path, error)) {
    free(bytes.start);
    return NULL;
  }
  *length = bytes.length;
  return bytes.start;
}

static char *read_handle(int handle, const char *path, size_t *length, ohm_error *error) {
  struct stat what;
  if (fstat(handle, &what) != 0)
    return refuse(error, OHM_CANNOT_OPEN, path, why_not_opened(errno));
  if (S_ISDIR(what.st_mode))
    return refuse(error, OHM_CANNOT_OPEN, path, why_not_opened(EISDIR));
  if (!S_ISREG(what.st_mode))
    return refuse(error, OHM_CANNOT_OPEN, path, why_not_opened(ENODEV));
  if (what.st_size > OC_FILE_MAX)
    return refuse_large(error, path);
  return read_sized(handle, (size_t)what.st_size, path, length, error);
}

char *oc_file_read(const char *path, size_t *length, ohm_error *error) {
  *length = 0;
  int handle = open_plain(path);
  if (handle < 0)
    return refuse(error, OHM_CANNOT_OPEN, path, why_not_opened(errno));
  char *bytes = read_handle(handle, path, length, error);
  close(handle);
  return bytes;
}
