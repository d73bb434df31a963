# SPDX-License-Identifier: MIT
"""A check in Python: verdicts are results."""

import dataclasses
import json
import math
import unittest

import ohmcurve
import samples
from ohmcurve import Finding, Meter, Reading, Reason, Reference, Verdict, _ohmcurve


def check(reading="2.45k", at="20C+-0.5", **keywords):
    keywords.setdefault("meter", "0.5%+1")
    return ohmcurve.check(samples.table(), reading, at=at, **keywords)


class VerdictTest(unittest.TestCase):
    def test_a_good_sensor_is_within(self):
        finding = check(at="20C+-0.1")
        self.assertIs(finding.verdict, Verdict.WITHIN)
        self.assertIs(finding.reason, Reason.CONFORMS)

    def test_a_resistance_too_high_is_outside(self):
        finding = check("3.5k")
        self.assertIs(finding.verdict, Verdict.OUTSIDE)
        self.assertIs(finding.reason, Reason.HIGH)

    def test_a_resistance_too_low_is_outside(self):
        self.assertIs(check("1.5k").reason, Reason.LOW)

    def test_too_coarse_a_measurement_is_undecided_and_no_exception(self):
        finding = check(at="20C+-10")
        self.assertIs(finding.verdict, Verdict.UNDECIDED)
        self.assertIs(finding.reason, Reason.UNCERTAIN)

    def test_over_range_is_undecided_and_no_exception(self):
        finding = check("OL")
        self.assertIs(finding.verdict, Verdict.UNDECIDED)
        self.assertIs(finding.reason, Reason.OVER_RANGE)

    def test_no_circuit_is_outside_and_no_exception(self):
        self.assertIs(check("open").reason, Reason.OPEN)

    def test_a_sensor_without_tolerance_is_undecided_and_no_exception(self):
        bare = ohmcurve.Sensor.parse(samples.BARE_TABLE)
        finding = ohmcurve.check(bare, "2.45k", at="20C")
        self.assertIs(finding.verdict, Verdict.UNDECIDED)
        self.assertIs(finding.reason, Reason.NO_TOLERANCE)

    def test_a_verdict_is_also_its_text(self):
        self.assertEqual(Verdict.WITHIN, "within")
        self.assertEqual(f"{Verdict.WITHIN} {Reason.OVER_RANGE}", "within over_range")


class ArgumentsTest(unittest.TestCase):
    def test_objects_and_their_texts_give_the_same_finding(self):
        by_text = check("2.31k", "21.5C+-1", meter="0.8%+3", leads="0.4+-0.1")
        by_object = check(
            Reading(r_ohm=2310, resolution_ohm=10),
            Reference(21.5, limit_k=1),
            meter=Meter(percent=0.8, counts=3, lead_ohm=0.4, lead_limit_ohm=0.1),
        )
        self.assertEqual(by_text, by_object)

    def test_leads_given_beside_a_meter_come_first(self):
        meter = Meter(lead_ohm=5, lead_limit_ohm=1)
        self.assertAlmostEqual(
            check("100.0", meter=meter, leads="0.5+-0.1").r_ohm, 99.5, delta=1e-9
        )

    def test_a_tolerance_replaces_that_of_the_sensor(self):
        finding = check(tolerance="10%")
        self.assertAlmostEqual(finding.tolerance_percent, 10, delta=1e-9)
        self.assertAlmostEqual(finding.high_ohm, 2450 * 1.1, delta=1e-6)

    def test_the_level_is_as_asked(self):
        self.assertEqual(check(level=0.99).level, 0.99)
        self.assertEqual(check().level, 0.95)

    def test_a_level_that_decides_nothing_is_out_of_range(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            check(level=0.3)
        self.assertIs(caught.exception.status, ohmcurve.Status.OUT_OF_RANGE)

    def test_a_level_that_is_no_number_is_a_bad_argument(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            check(level=math.nan)
        self.assertIs(caught.exception.status, ohmcurve.Status.BAD_ARGUMENT)

    def test_what_was_not_told_is_listed(self):
        self.assertGreater(len(check(at="20C", meter=None).assumed), 1)

    def test_the_temperature_is_given_by_keyword_only(self):
        with self.assertRaises(TypeError):
            ohmcurve.check(samples.table(), "2.45k", "20C")

    def test_an_argument_of_another_type_is_named(self):
        with self.assertRaisesRegex(TypeError, "reading is 2310"):
            check(2310)
        with self.assertRaisesRegex(TypeError, "at is 20"):
            check(at=20)
        with self.assertRaisesRegex(TypeError, "meter is 0.8"):
            check(meter=0.8)
        with self.assertRaisesRegex(TypeError, "sensor is None"):
            ohmcurve.check(None, "2.45k", at="20C")


class FindingTest(unittest.TestCase):
    def test_the_attributes_are_the_list_of_fields(self):
        names = [
            _ohmcurve.ohm_field_name(index) for index in range(_ohmcurve.OHM_FIELD_COUNT)
        ]
        attributes = [each.name for each in dataclasses.fields(Finding)]
        self.assertEqual([name for name in attributes if not name.startswith("_")], names)
        self.assertEqual(list(check().as_dict()), names)

    def test_every_attribute_has_a_meaning(self):
        for name in check().as_dict():
            self.assertTrue(Finding.meaning(name), name)

    def test_an_unknown_field_has_no_meaning(self):
        with self.assertRaises(KeyError):
            Finding.meaning("weather")

    def test_what_is_absent_is_none(self):
        self.assertIsNone(check("OL").r_ohm)

    def test_lists_are_tuples(self):
        self.assertIsInstance(check().assumed, tuple)

    def test_the_probabilities_add_up(self):
        finding = check()
        total = finding.p_low + finding.p_within + finding.p_high
        self.assertAlmostEqual(total, 1, delta=1e-9)

    def test_the_versions_are_those_of_the_module(self):
        self.assertEqual(check().version, ohmcurve.__version__)
        self.assertEqual(check().tables_version, ohmcurve.tables_version)

    def test_the_dictionary_is_plain_enough_for_json(self):
        plain = check().as_dict()
        self.assertEqual(json.loads(json.dumps(plain)), plain)
        self.assertIs(type(plain["verdict"]), str)

    def test_the_text_is_the_report(self):
        lines = str(check()).splitlines()
        self.assertTrue(any(line.startswith("VERDICT") for line in lines))
        self.assertLessEqual(max(map(len, lines)), 80)

    def test_a_finding_cannot_be_changed(self):
        with self.assertRaises(dataclasses.FrozenInstanceError):
            check().verdict = Verdict.OUTSIDE

    def test_repr_shows_verdict_reason_and_sensor(self):
        self.assertRegex(repr(check("3.5k")), r"^<Finding outside \(high\): invented-2k reads .*>$")


class ConformanceTest(unittest.TestCase):
    def test_a_value_on_a_limit_is_half_inside(self):
        parts = ohmcurve.conformance(value=10, u=1, low=10)
        self.assertAlmostEqual(parts.p_within, 0.5, delta=1e-12)
        self.assertAlmostEqual(parts.p_low, 0.5, delta=1e-12)
        self.assertEqual(parts.p_high, 0)

    def test_a_negative_uncertainty_is_a_bad_argument(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            ohmcurve.conformance(value=10, u=-1)
        self.assertIs(caught.exception.status, ohmcurve.Status.BAD_ARGUMENT)


if __name__ == "__main__":
    unittest.main()
