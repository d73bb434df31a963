# SPDX-License-Identifier: MIT
"""What is written by hand in Python says the same as the header."""

import dataclasses
import inspect
import re
import unittest

import ohmcurve
import samples
from ohmcurve import (
    ASSUMED,
    Companion,
    Display,
    Explanation,
    FitBasis,
    FitModel,
    FitPoint,
    JobReason,
    Meter,
    Place,
    Reading,
    Reason,
    Reference,
    ReferenceKind,
    Role,
    Row,
    Soaked,
    Status,
    Suspect,
    Suspicion,
    Verdict,
    _ohmcurve,
)


def words(enum_name):
    """The words in quotes beside the constants of an enum."""
    return re.findall(r'/\*\*< "(\w+)"', samples.enum_block(enum_name))


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
        self.assertEqual([each.value for each in Reason], words("ohm_reason"))

    def test_job_reason_has_every_constant(self):
        self.assertEqual(
            ["OHM_JOB_" + each.name for each in JobReason], samples.enum_constants("ohm_job_reason")
        )

    def test_job_reason_has_the_words_of_the_header(self):
        self.assertEqual([each.value for each in JobReason], words("ohm_job_reason"))

    def test_place_has_every_constant(self):
        self.assertEqual(
            ["OHM_PLACE_" + each.name for each in Place], samples.enum_constants("ohm_place")
        )

    def test_place_has_the_words_of_the_header(self):
        self.assertEqual([each.value for each in Place], words("ohm_place"))

    def test_display_has_every_constant(self):
        self.assertEqual(
            ["OHM_DISPLAY_" + each.name for each in Display],
            samples.enum_constants("ohm_display"),
        )

    def test_reference_kind_has_every_constant(self):
        self.assertEqual(
            ["OHM_REFERENCE_" + each.name for each in ReferenceKind],
            samples.enum_constants("ohm_reference_kind"),
        )

    def test_fit_model_has_every_constant(self):
        self.assertEqual(
            ["OHM_FIT_" + each.name for each in FitModel], samples.enum_constants("ohm_fit_model")
        )

    def test_fit_model_has_the_names_of_the_methods_of_curve(self):
        for each in FitModel:
            self.assertTrue(callable(getattr(ohmcurve.Curve, each.value)))

    def test_fit_basis_has_every_constant(self):
        self.assertEqual(
            ["OHM_FIT_" + each.name for each in FitBasis], samples.enum_constants("ohm_fit_basis")
        )

    def test_suspicion_has_every_constant(self):
        constants = samples.enum_constants("ohm_suspicion")
        self.assertEqual(["OHM_SUSPECT_" + each.name for each in Suspicion], constants)

    def test_suspicion_has_the_words_of_the_library(self):
        self.assertEqual(
            [each.value for each in Suspicion],
            [_ohmcurve.ohm_suspicion_name(index) for index in range(len(Suspicion))],
        )

    def test_a_suspect_has_every_member(self):
        self.assertEqual(list(Suspect._fields), samples.struct_members("ohm_suspect"))

    def test_a_row_has_every_member(self):
        self.assertEqual(list(Row._fields), samples.struct_members("ohm_sensor_row"))

    def test_a_fit_point_has_every_member(self):
        self.assertEqual(list(FitPoint._fields), samples.struct_members("ohm_fit_point"))

    def test_explanation_has_the_words_of_the_header(self):
        self.assertEqual([each.value for each in Explanation], words("ohm_explanation"))

    def test_role_has_the_words_of_the_header(self):
        self.assertEqual([each.value for each in Role], words("ohm_role"))

    def test_soaked_has_every_constant_and_the_words_of_the_header(self):
        self.assertEqual(
            ["OHM_SOAKED_" + each.name for each in Soaked], samples.enum_constants("ohm_soaked")
        )
        self.assertEqual([each.value for each in Soaked], words("ohm_soaked"))

    def test_a_companion_has_every_member(self):
        self.assertEqual(list(Companion._fields), samples.struct_members("ohm_companion"))

    def test_a_soak_can_be_asked_for_by_every_member(self):
        members = set(samples.struct_members("ohm_soak"))
        asked = set(inspect.signature(ohmcurve.soak).parameters)
        told = {
            "after_h": "hours",
            "start": "stop",
            "stop_c": "stop",
            "stop_limit_k": "stop",
            "tau_low_h": "tau_h",
            "tau_high_h": "tau_h",
            "companions": "others",
            "companion_count": "others",
        }
        self.assertLessEqual({told.get(each, each) for each in members}, asked)

    def test_a_fit_can_be_asked_for_by_every_member(self):
        asked = list(inspect.signature(ohmcurve.fit).parameters)
        self.assertEqual(asked, ["points", *samples.struct_members("ohm_fit_request")])

    def test_a_reading_has_every_member(self):
        self.assertEqual(
            {each.name for each in dataclasses.fields(Reading)},
            set(samples.struct_members("ohm_reading")),
        )

    def test_a_reference_has_every_member(self):
        self.assertEqual(
            {each.name for each in dataclasses.fields(Reference)} | {"accuracy"},
            set(samples.struct_members("ohm_reference")),
        )

    def test_a_meter_has_every_member(self):
        self.assertEqual(
            {each.name for each in dataclasses.fields(Meter)} - {"exact"} | {"accuracy", "leads"},
            set(samples.struct_members("ohm_meter")),
        )

    def test_everything_assumed_is_readable_by_its_name(self):
        pairs = re.findall(r"#define OHM_ASSUMED_(\w+) +([\d.]+)", samples.header())
        self.assertEqual(ASSUMED, {name.lower(): float(value) for name, value in pairs})

    def test_what_is_assumed_cannot_be_changed(self):
        with self.assertRaises(TypeError):
            ASSUMED["fan_c"] = 90

    def test_every_function_of_the_header_is_bound_or_left_out_on_purpose(self):
        declared = set(re.findall(r"^OHM_API [^(]*?\b(ohm_\w+)\(", samples.header(), re.MULTILINE))
        left_out = {name for name in declared if not hasattr(_ohmcurve, name)}
        freed = {f"ohm_{each}_free" for each in ("curve", "sensor", "fit", "audit", "history", "circuit")}
        self.assertEqual(left_out, freed | {"ohm_nearest"})

    def test_the_version_is_that_of_the_header(self):
        version = re.search(r'#define OHM_VERSION +"(.*)"', samples.header())[1]
        self.assertEqual(ohmcurve.__version__, version)

    def test_every_public_name_exists(self):
        for name in ohmcurve.__all__:
            self.assertTrue(hasattr(ohmcurve, name), name)


if __name__ == "__main__":
    unittest.main()
