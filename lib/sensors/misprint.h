/* SPDX-License-Identifier: MIT */
/* What a printer or a typist does to a number, undone. */
#ifndef OC_MISPRINT_H
#define OC_MISPRINT_H

#include "../ground/internal.h"

enum { OC_MISPRINT_DIGITS = 20 };

enum oc_misprint_kind {
  OC_MISPRINT_POINT,    /**< the decimal point is misplaced, or zeros are too many or few */
  OC_MISPRINT_EXCHANGE, /**< two neighbouring digits are exchanged */
  OC_MISPRINT_DIGIT,    /**< one digit is another */
  OC_MISPRINT_LOST,     /**< a digit is missing */
  OC_MISPRINT_ADDED,    /**< a digit is too many */
  OC_MISPRINT_NONE
};

struct oc_misprint {
  enum oc_misprint_kind kind;
  double value;
  char text[OC_MISPRINT_DIGITS + 12]; /**< what was meant, in the notation of the given */
};

/**
 * The one slip that best explains a printed number: the likeliest kind of those that
 * lead into low..high, and of it the value nearest to middle. OC_MISPRINT_NONE when
 * none does, or the text is no plain number of at most OC_MISPRINT_DIGITS characters.
 */
struct oc_misprint oc_misprint_undo(const char *text, double low, double middle, double high);

/** "two digits exchanged", for a sentence. */
const char *oc_misprint_words(enum oc_misprint_kind kind);

#endif
