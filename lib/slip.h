/* SPDX-License-Identifier: MIT */
/* What a printer or a typist does to a number, undone. */
#ifndef OHM_SLIP_H
#define OHM_SLIP_H

#include "internal.h"

enum { OHM_SLIP_DIGITS = 20 };

enum ohm_slip_kind {
  OHM_SLIP_POINT,    /**< the decimal point is misplaced, or zeros are too many or few */
  OHM_SLIP_EXCHANGE, /**< two neighbouring digits are exchanged */
  OHM_SLIP_DIGIT,    /**< one digit is another */
  OHM_SLIP_LOST,     /**< a digit is missing */
  OHM_SLIP_ADDED,    /**< a digit is too many */
  OHM_SLIP_NONE
};

struct ohm_slip {
  enum ohm_slip_kind kind;
  double value;
  char text[OHM_SLIP_DIGITS + 12]; /**< what was meant, in the notation of the given */
};

/**
 * The one slip that best explains a printed number: the likeliest kind of those that
 * lead into low..high, and of it the value nearest to middle. OHM_SLIP_NONE when
 * none does, or the text is no plain number of at most OHM_SLIP_DIGITS characters.
 */
struct ohm_slip ohm_slip_undo(const char *text, double low, double middle, double high);

/** "two digits exchanged", for a sentence. */
const char *ohm_slip_words(enum ohm_slip_kind kind);

#endif
