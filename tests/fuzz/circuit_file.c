/* SPDX-License-Identifier: MIT */
/* Any bytes as a circuit file. What loads is printed, read and printed again, which must
 * give the same text without a note; every cell of it is there. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "../../include/ohmcurve.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void require(int truth) {
  if (!truth)
    abort();
}

static char *printed(const ohm_circuit *circuit) {
  size_t size = ohm_circuit_print(circuit, NULL, 0) + 1;
  char *text = malloc(size);
  require(text && ohm_circuit_print(circuit, text, size) == size - 1 && strlen(text) == size - 1);
  return text;
}

static void check_print(const ohm_circuit *circuit) {
  char *first = printed(circuit);
  ohm_circuit *again = ohm_circuit_parse(first, strlen(first), "another", NULL);
  require(again && ohm_circuit_note_count(again) == 0);
  char *second = printed(again);
  require(strcmp(first, second) == 0);
  free(second);
  free(first);
  ohm_circuit_free(again);
}

static void check_cells(const ohm_circuit *circuit) {
  require(ohm_circuit_link_count(circuit) <= 64 && ohm_circuit_test_count(circuit) <= 256);
  for (size_t i = 0; i < ohm_circuit_link_count(circuit); i++)
    for (int column = 0; column < OHM_LINK_COLUMN_COUNT; column++)
      require(ohm_circuit_link_text(circuit, i, column) != NULL);
  for (size_t i = 0; i < ohm_circuit_test_count(circuit); i++)
    for (int column = 0; column < OHM_TEST_COLUMN_COUNT; column++)
      require(ohm_circuit_test_text(circuit, i, column) != NULL);
  for (size_t i = 0; i < ohm_circuit_note_count(circuit); i++)
    require(strlen(ohm_circuit_note(circuit, i)) > 0);
  require(ohm_circuit_note_count(circuit) <= 100);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  ohm_error error;
  ohm_circuit *circuit = ohm_circuit_parse((const char *)data, size, "given", &error);
  if (circuit) {
    require(error.status == OHM_OK);
    check_cells(circuit);
    check_print(circuit);
  } else {
    require(error.status != OHM_OK && error.message[0]);
    require(memchr(error.message, '\0', sizeof error.message) != NULL);
  }
  ohm_circuit_free(circuit);
  return 0;
}
