/* SPDX-License-Identifier: MIT */
/*
 * The fan of a hay baler stays off, also with the plug of its switch
 * bridged, and runs with its relay bridged: what is left to suspect?
 */
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

int main(void) {
  const char *text = "starts=bad\nbridge=bad\njump=good\n";
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_circuit *circuit =
      ohm_circuit_built_in_load("radiator-switch", &error);
  ohm_bench *bench = circuit ? ohm_bench_new(&error) : NULL;
  if (ohm_bench_use_circuit(bench, circuit) == OHM_OK &&
      ohm_bench_read_record(bench, text, strlen(text), &error) == OHM_OK)
    answer = ohm_bench_isolate(bench, &error);
  const ohm_finding *finding = ohm_answer_finding(answer);
  if (finding) {
    const char *link;
    for (size_t i = 0;
         (link = ohm_finding_text(finding, OHM_FIELD_SUSPECTS, i)); i++)
      printf("suspect: %s\n", link);
    printf("next: %s, %s\n",
           ohm_finding_text(finding, OHM_FIELD_NEXT, 0),
           ohm_finding_text(finding, OHM_FIELD_NEXT_POINTS, 0));
  } else
    fprintf(stderr, "%s\n", error.message);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_circuit_free(circuit);
  return error.status;
}

/*
 * It prints:
 *
 *     suspect: contact
 *     suspect: control
 *     suspect: coil-feed
 *     suspect: coil
 *     next: lamp-85, cavity 85 to ground
 */
