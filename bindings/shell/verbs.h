/* SPDX-License-Identifier: MIT */
/* What each verb does. Every one returns the exit status. */
#ifndef OHM_VERBS_H
#define OHM_VERBS_H

#include "arguments.h"

typedef int ohm_verb_run(const struct ohm_arguments *arguments);

ohm_verb_run ohm_check_run;
ohm_verb_run ohm_identify_run;
ohm_verb_run ohm_pins_run; /**< identify with --pins */
ohm_verb_run ohm_explain_run;
ohm_verb_run ohm_soak_run;
ohm_verb_run ohm_convert_run; /**< degrees and ohms */
ohm_verb_run ohm_parts_run;
ohm_verb_run ohm_table_run;
ohm_verb_run ohm_chart_run;
ohm_verb_run ohm_audit_run;
ohm_verb_run ohm_fit_run;
ohm_verb_run ohm_circuit_run;
ohm_verb_run ohm_signal_run;
ohm_verb_run ohm_substitute_run;
ohm_verb_run ohm_fanpoint_run;
ohm_verb_run ohm_help_run;

/** The help of a verb on standard output; NULL for that of the program. */
void ohm_help_print(const struct ohm_verb *verb);

#endif
