/* SPDX-License-Identifier: MIT */
/* Feeds every file of a corpus to its target, without a fuzzer. */
#define _POSIX_C_SOURCE 200809L
#include <dirent.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { INPUT_MAX = 1 << 20, PATH_SIZE = 4096 };

static uint8_t input[INPUT_MAX];

/* Exactly its own bytes are on the heap, so that a checker sees what reads past them. */
static int feed(const char *path) {
  FILE *file = fopen(path, "rb");
  if (!file) {
    perror(path);
    return 1;
  }
  size_t size = fread(input, 1, sizeof input, file);
  int failed = ferror(file);
  fclose(file);
  uint8_t *data = malloc(size + (size == 0));
  if (failed || !data)
    return 1;
  for (size_t i = 0; i < size; i++)
    data[i] = input[i];
  fprintf(stderr, "%s\n", path); /* the last one named is the one that failed */
  LLVMFuzzerTestOneInput(data, size);
  free(data);
  return 0;
}

int main(void) {
  const char *source = getenv("srcdir");
  char folder[PATH_SIZE / 2];
  char path[PATH_SIZE];
  snprintf(folder, sizeof folder, "%s/tests/fuzz/corpus/" CORPUS, source ? source : ".");
  DIR *directory = opendir(folder);
  if (!directory) {
    perror(folder);
    return 1;
  }
  size_t count = 0;
  int failed = 0;
  for (const struct dirent *entry; (entry = readdir(directory)) != NULL;) {
    if (entry->d_name[0] == '.')
      continue;
    snprintf(path, sizeof path, "%s/%s", folder, entry->d_name);
    failed |= feed(path);
    count++;
  }
  closedir(directory);
  printf("%zu inputs of %s\n", count, folder);
  return failed || count == 0;
}
