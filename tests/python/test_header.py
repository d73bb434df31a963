# SPDX-License-Identifier: MIT
"""What is written by hand in Python says the same as the header."""

import re
import unittest

import ohmcurve
import samples
from ohmcurve import Display, Reason, Status, Verdict, _ohmcurve

REFERENCE_KINDS = ["OHM_REFERENCE_THERMOMETER", "OHM_REFERENCE_ICE"]


class HeaderTest(unittest.TestCase):
    def test_status_has_every_constant(self):
        self.assertEqual(
            ["OHM_" + each.name for each in Status], samples.enum_constants("ohm_status")
        )
        for each in Status:
            self.assertEqual(each, getattr(_ohmcurve, "OHM_" + each.name))

    def test_verdict_has_every_constant(self):
        self.assertEqual(
            ["OHM_" + each.name for each in Verdict], samples.enum_constants("ohm_verdict")
        )

    def test_reason_has_every_constant(self):
        self.assertEqual(
            ["OHM_REASON_" + each.name for each in Reason], samples.enum_constants("ohm_reason")
        )

    def test_reason_has_the_words_of_the_header(self):
        words = re.findall(r'/\*\*< "(\w+)"', samples.enum_block("ohm_reason"))
        self.assertEqual([each.value for each in Reason], words)

    def test_display_has_every_constant(self):
        self.assertEqual(
            ["OHM_DISPLAY_" + each.name for each in Display],
            samples.enum_constants("ohm_display"),
        )

    def test_the_kinds_of_reference_are_those_python_knows(self):
        self.assertEqual(samples.enum_constants("ohm_reference_kind"), REFERENCE_KINDS)

    def test_every_function_of_the_header_is_bound_or_left_out_on_purpose(self):
        declared = set(re.findall(r"^OHM_API [^(]*?\b(ohm_\w+)\(", samples.header(), re.MULTILINE))
        left_out = {name for name in declared if not hasattr(_ohmcurve, name)}
        self.assertEqual(left_out, {"ohm_curve_free", "ohm_sensor_free", "ohm_nearest"})

    def test_the_version_is_that_of_the_header(self):
        version = re.search(r'#define OHM_VERSION +"(.*)"', samples.header())[1]
        self.assertEqual(ohmcurve.__version__, version)

    def test_every_public_name_exists(self):
        for name in ohmcurve.__all__:
            self.assertTrue(hasattr(ohmcurve, name), name)


if __name__ == "__main__":
    unittest.main()
