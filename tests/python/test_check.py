# SPDX-License-Identifier: MIT
"""A check in Python: verdicts are results."""

import dataclasses
import gc
import json
import math
import pickle
import unittest

import ohmcurve
import samples
from ohmcurve import SETTINGS, Finding, JobReason, Place, Reason, Verdict, _ohmcurve
from ohmcurve._fields import WORDS


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
        self.assertIs(check("1.5k", place="sensor").reason, Reason.LOW)

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

    def test_a_resistance_too_low_may_be_that_of_a_plug_left_on(self):
        self.assertIs(check("1.5k").reason, Reason.PLUG_ON)

    def test_a_k_that_is_missing_is_suggested(self):
        finding = check("2.45")
        self.assertIs(finding.reason, Reason.MISSING_K)
        self.assertEqual(finding.suggested_ohm, 2450)

    def test_a_lone_one_is_undecided(self):
        self.assertIs(check("1").reason, Reason.LONE_ONE)

    def test_nearly_no_resistance_is_a_short(self):
        self.assertIs(check("0").reason, Reason.SHORTED)

    def test_over_range_on_a_range_above_what_is_allowed_is_high(self):
        finding = check("OL@20k")
        self.assertIs(finding.reason, Reason.HIGH)
        self.assertEqual(finding.range_ohm, 20000)

    def test_a_verdict_is_also_its_text(self):
        self.assertEqual(Verdict.WITHIN, "within")
        self.assertEqual(f"{Verdict.WITHIN} {Reason.OVER_RANGE}", "within over_range")


class JobTest(unittest.TestCase):
    def test_a_good_sensor_is_good_enough_for_the_fan(self):
        finding = check("320.0", "80C+-0.1", fan_c=70)
        self.assertIs(finding.job, Verdict.WITHIN)
        self.assertIs(finding.job_reason, JobReason.CONFORMS)

    def test_the_fan_is_given_as_text_or_in_degrees_celsius(self):
        self.assertEqual(check("320.0", "80C", fan_c="158F").fan_c, 70)
        self.assertEqual(check("320.0", "80C", fan_c=70), check("320.0", "80C", fan_c="70C"))

    def test_fan_and_limit_left_out_are_those_assumed(self):
        finding = check("320.0", "80C")
        told = {name: SETTINGS[name].default for name in ("fan_c", "limit_k")}
        stated = check("320.0", "80C", **told)
        self.assertEqual((finding.fan_c, finding.limit_k), (stated.fan_c, stated.limit_k))
        self.assertLess(len(stated.assumed), len(finding.assumed))

    def test_the_limit_is_as_asked_and_decides(self):
        finding = check("320.0", "80C+-0.1", fan_c=70, limit_k=0.1)
        self.assertEqual(finding.limit_k, 0.1)
        self.assertIsNot(finding.job, Verdict.WITHIN)

    def test_a_fan_at_0_is_no_fan_left_out(self):
        for fan in (0, "0C"):
            with self.subTest(fan=fan), self.assertRaises(ohmcurve.Error) as caught:
                check(fan_c=fan)
            self.assertIs(caught.exception.status, ohmcurve.Status.OUT_OF_RANGE)

    def test_a_fan_of_another_type_is_named(self):
        with self.assertRaisesRegex(TypeError, "fan_c is b'97C'"):
            check(fan_c=b"97C")

    def test_no_answer_for_the_fan_is_none(self):
        finding = check("OL")
        self.assertIsNone(finding.job)
        self.assertIsNone(finding.job_reason)


class PlaceTest(unittest.TestCase):
    def test_a_place_is_given_by_word_or_by_member(self):
        for place in (Place.SENSOR, Place.PLUG_ON, Place.MODULE):
            with self.subTest(place=place):
                self.assertIs(check(place=place).place, place)
                self.assertEqual(check(place=place.value), check(place=place))
                self.assertEqual(check(f"2.45k@20C+-0.5,{place}", None), check(place=place))

    def test_left_out_it_is_not_told(self):
        self.assertIs(check().place, Place.NOT_TOLD)

    def test_another_word_is_answered_with_those_there_are(self):
        with self.assertRaisesRegex(ohmcurve.Error, "floor.*sensor, plug_on, module"):
            check(place="floor")

    def test_what_the_place_leaves_untested_is_told(self):
        self.assertTrue(check(place="sensor").not_tested)
        self.assertNotEqual(check(place="sensor").not_tested, check(place="module").not_tested)


class BandTest(unittest.TestCase):
    def check(self, **keywords):
        return ohmcurve.check(samples.banded(), "2.450k", at="20C+-0.1", **keywords)

    def test_a_band_is_judged_by_when_named(self):
        finding = self.check(band="tight")
        self.assertEqual(finding.band, "tight")
        self.assertEqual(finding.band_source, "invented manual, page 3")

    def test_left_out_it_is_the_widest(self):
        self.assertEqual(self.check().band, "loose")

    def test_what_other_makers_allow_is_told(self):
        self.assertTrue(any("tight" in each for each in self.check().other_bands))

    def test_an_unknown_band_is_answered_with_those_there_are(self):
        with self.assertRaisesRegex(ohmcurve.Error, "wide.*loose, tight") as caught:
            self.check(band="wide")
        self.assertIs(caught.exception.status, ohmcurve.Status.NOT_FOUND)

    def test_a_band_asked_for_many_times_stays_the_one_asked_for(self):
        for name in ["loose", "tight"] * 50:
            self.assertEqual(self.check(band=name).band, name)

    def test_the_test_current_of_the_meter_warms_the_element(self):
        cool = self.check(meter="0.5%+1", current_ma="10uA")
        warm = self.check(meter="0.5%+1", current_ma=1)
        self.assertAlmostEqual(warm.heating_k / cool.heating_k, 1e4, delta=1)


class SeveralTest(unittest.TestCase):
    def several(self, *readings, **keywords):
        keywords.setdefault("meter", "0.1%+1")
        return ohmcurve.check_several(samples.table(), readings, **keywords)

    def test_each_reading_has_its_own_finding_in_order(self):
        together, each = self.several(("2.450k", "20C+-0.1"), ("320.0", "80C+-0.1"))
        self.assertEqual([finding.at_c for finding in each], [20, 80])
        self.assertEqual(together.readings, 2)

    def test_the_finding_of_a_reading_is_that_of_a_check(self):
        pairs = [("2.450k", "20C+-0.1"), ("320.0", "80C+-0.1")]
        _, each = self.several(*pairs, place="sensor", fan_c="70C", limit_k=4, level=0.9)
        alone = [
            check(reading, at, meter="0.1%+1", place="sensor", fan_c=70, limit_k=4, level=0.9)
            for reading, at in pairs
        ]
        self.assertEqual(list(each), alone)

    def test_good_readings_are_within_together(self):
        together, _ = self.several(("2.450k", "20C+-0.1"), ("320.0", "80C+-0.1"))
        self.assertIs(together.verdict, Verdict.WITHIN)

    def test_one_bad_reading_is_enough(self):
        together, _ = self.several(("2.450k", "20C+-0.1"), ("400.0", "80C+-0.1"))
        self.assertIs(together.verdict, Verdict.OUTSIDE)

    def test_a_reading_still_moving_is_undecided(self):
        together, _ = self.several(("2.450k", "20C"), ("2.900k", "20C"))
        self.assertIs(together.reason, Reason.MOVING)

    def test_a_generator_is_taken(self):
        readings = [("2.450k", "20C+-0.1")]
        together, each = ohmcurve.check_several(samples.table(), (pair for pair in readings))
        self.assertEqual(together.read, each[0].read)

    def test_readings_at_two_places_are_a_bad_argument(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            self.several("2.450k@20C,sensor", "320@80C,plug_on")
        self.assertIs(caught.exception.status, ohmcurve.Status.BAD_ARGUMENT)

    def test_the_findings_outlive_the_call(self):
        _, each = self.several(*[("2.450k", f"{t_c}C") for t_c in range(10, 26)])
        gc.collect()
        self.assertEqual([finding.at_c for finding in each], list(range(10, 26)))

    def test_no_reading_is_not_found(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            self.several()
        self.assertIs(caught.exception.status, ohmcurve.Status.NOT_FOUND)

    def test_seventeen_readings_are_too_large(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            self.several(*[("2.450k", "20C")] * 17)
        self.assertIs(caught.exception.status, ohmcurve.Status.TOO_LARGE)


class ArgumentsTest(unittest.TestCase):
    def test_a_reading_carries_its_temperature_or_has_that_of_all(self):
        of_all = check("2.31k", "21.5C+-1")
        self.assertEqual(check("2.31k@21.5C+-1", None), of_all)
        self.assertEqual(check(("2.31k", "21.5C+-1"), None), of_all)
        self.assertEqual(check("2.31k@21.5C+-1", "80C"), of_all)

    def test_numbers_are_ohms_and_degrees_celsius(self):
        finding = check(2310.25, 21.5)
        self.assertEqual(finding, check((2310.25, 21.5), None))
        self.assertEqual(finding, check("=2310.25@21.5C", None))
        self.assertEqual(check(("2.31k", 21.5), None), check("2.31k", "21.5C"))
        self.assertEqual(check((320.5, "boil"), None), check(320.5, "boil"))

    def test_leads_are_taken_off(self):
        self.assertAlmostEqual(check("100.0", leads="0.5+-0.1").r_ohm, 99.5, delta=1e-9)
        self.assertEqual(check("100.0", leads=0.5), check("100.0", leads="0.5"))

    def test_a_tolerance_replaces_that_of_the_sensor(self):
        finding = check(tolerance_percent="10%")
        self.assertEqual(finding, check(tolerance_percent=10))
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

    def test_without_a_temperature_a_check_is_refused(self):
        with self.assertRaisesRegex(ohmcurve.Error, "temperature of 2.45k is missing"):
            ohmcurve.check(samples.table(), "2.45k")

    def test_an_unknown_keyword_is_answered_with_the_nearest(self):
        with self.assertRaisesRegex(TypeError, r"check\(\).*'fan_k': did you mean fan_c\?"):
            check(fan_k=97)
        with self.assertRaisesRegex(TypeError, "'weather': there are level, .*meter"):
            check(weather="fair")

    def test_a_keyword_of_another_verb_is_refused(self):
        with self.assertRaisesRegex(TypeError, r"check\(\) takes no keyword 'pull_up'"):
            check(pull_up="1k")

    def test_none_is_not_told(self):
        self.assertEqual(check(leads=None, fan_c=None, place=None), check())

    def test_an_argument_of_another_type_is_named(self):
        with self.assertRaisesRegex(TypeError, "reading is b'2310'"):
            check(b"2310")
        with self.assertRaisesRegex(TypeError, "reading is None"):
            check((None, "20C"))
        with self.assertRaisesRegex(TypeError, "at is \\[20\\]"):
            check(at=[20])
        with self.assertRaisesRegex(ohmcurve.Error, "meter: .*set it as text"):
            check(meter=0.8)
        with self.assertRaisesRegex(TypeError, "sensor is None"):
            ohmcurve.check(None, "2.45k", at="20C")


class FindingTest(unittest.TestCase):
    def test_the_attributes_are_the_list_of_fields(self):
        names = [
            _ohmcurve.ohm_field_name(_ohmcurve.ohm_field_at(index))
            for index in range(_ohmcurve.ohm_field_count())
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
        for name in ("assumed", "not_tested", "other_bands"):
            with self.subTest(name=name):
                self.assertIsInstance(getattr(check(), name), tuple)

    def test_words_are_members(self):
        finding = check("320.0", "80C", fan_c=70, place="sensor")
        of_others = {"agreement", "explanation", "role", "odd", "negative", "joined", "outcome", "wires"}
        for name, word in WORDS.items():
            with self.subTest(name=name):
                absent = type(None) if name in of_others else word
                self.assertIs(type(getattr(finding, name)), absent)

    def test_the_kind_of_reference_is_told(self):
        self.assertEqual(check(at="infrared@20C").reference, "infrared")
        self.assertEqual(check("320.0", "boil@1200m").reference, "boil_altitude")

    def test_the_budget_names_its_causes(self):
        budget = check().budget
        for cause in ("meter", "leads", "reference"):
            self.assertRegex(budget, rf"(?m)^{cause}")

    def test_a_finding_survives_pickling(self):
        finding = check()
        copy = pickle.loads(pickle.dumps(finding))
        self.assertEqual(copy, finding)
        self.assertEqual((str(copy), copy.budget), (str(finding), finding.budget))

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
        self.assertRegex(repr(check("3.5k")), r"^<Finding verdict outside, reason high, sensor invented-2k, read .*>$")


class WaterTest(unittest.TestCase):
    def test_water_boils_where_the_standard_says(self):
        # IAPWS R7-97(2012), table 36: 372.755919 K at 0.1 MPa.
        self.assertAlmostEqual(ohmcurve.water_boiling(1000), 372.755919 - 273.15, delta=5e-7)

    def test_the_standard_pressure_is_that_of_the_height_0(self):
        self.assertAlmostEqual(ohmcurve.water_pressure(0), 1013.25, delta=1e-9)

    def test_a_check_in_boiling_water_uses_both(self):
        at_4000 = check("320.0", at="boil@4000m").at_c
        boiling_c = [ohmcurve.water_boiling(ohmcurve.water_pressure(m)) for m in (4000, 0)]
        at_0 = check("320.0", at="boil@0m").at_c
        self.assertAlmostEqual(at_4000 - at_0, boiling_c[0] - boiling_c[1], delta=1e-9)

    def test_a_height_in_space_is_out_of_range(self):
        for call in (ohmcurve.water_pressure, ohmcurve.water_boiling):
            with self.subTest(call=call), self.assertRaises(ohmcurve.Error) as caught:
                call(1e6)
            self.assertIs(caught.exception.status, ohmcurve.Status.OUT_OF_RANGE)


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
