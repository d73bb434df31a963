/* SPDX-License-Identifier: MIT */
/* Any text as a history of the air. What reads rises in time, and cooling in it stays
 * between the warmest and the coldest; what does not leaves a sentence. */
#include "contract.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void require_refused(const ohm_error *error) {
  require(error->status == OHM_BAD_SYNTAX || error->status == OHM_OUT_OF_RANGE ||
              error->status == OHM_BAD_DEFINITION || error->status == OHM_TOO_LARGE,
          "a refused history has one of its statuses");
  require(error->message[0] && memchr(error->message, '\0', sizeof error->message),
          "a refused history has a sentence");
}

static void require_rising(const ohm_history *history, double *low_c, double *high_c) {
  double before_h = -1e9;
  size_t count = ohm_history_count(history);
  require(within(1, (double)count, 4096), "a history has 1 to 4096 points");
  for (size_t i = 0; i < count; i++) {
    double after_h, t_c;
    require(ohm_history_point(history, i, &after_h, &t_c) == OHM_OK, "a point is there");
    require(within(-1000, after_h, 1000) && before_h < after_h, "times rise");
    require(-273.15 < t_c && t_c <= 1000, "air is a temperature");
    *low_c = fmin(*low_c, t_c);
    *high_c = fmax(*high_c, t_c);
    before_h = after_h;
  }
}

static void require_cooling(const ohm_history *history, double low_c, double high_c) {
  double last_h, t_c;
  ohm_history_point(history, ohm_history_count(history) - 1, &last_h, NULL);
  for (double tau_h = 1e-3; tau_h <= 1000; tau_h *= 10) {
    ohm_status status = ohm_history_cooling(history, 90, tau_h, last_h, &t_c);
    require(status == OHM_OK || (status == OHM_OUT_OF_RANGE && last_h < 0),
            "cooling reaches the last point");
    if (status == OHM_OK)
      require(within(low_c - 1e-6, t_c, high_c + 1e-6), "a lag stays between its air and start");
  }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  ohm_error error;
  double low_c = 90, high_c = 90;
  ohm_history *history = ohm_history_parse((const char *)data, size, "history", &error);
  if (!history) {
    require_refused(&error);
    return 0;
  }
  require_rising(history, &low_c, &high_c);
  require_cooling(history, low_c, high_c);
  ohm_history_free(history);
  return 0;
}
