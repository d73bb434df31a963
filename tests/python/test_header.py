# SPDX-License-Identifier: MIT
"""What is written by hand in Python says the same as the header."""

import inspect
import re
import unittest

import ohmcurve
import samples
from ohmcurve import (
    SETTINGS,
    FitBasis,
    FitModel,
    FitPoint,
    Quantity,
    Row,
    Series,
    Settings,
    Status,
    Suspect,
    Suspicion,
    _ohmcurve,
)
from ohmcurve._fields import WORDS


class HeaderTest(unittest.TestCase):
    def test_status_has_every_constant(self):
        self.assertEqual(
            ["OHM_" + each.name for each in Status], samples.enum_constants("ohm_status")
        )
        for each in Status:
            self.assertEqual(each, getattr(_ohmcurve, "OHM_" + each.name))

    def test_words_are_the_lists_of_the_header(self):
        lists = re.findall(r"typedef enum (\w+) \{ (OHM_\w+)\(OHM_CONSTANT\)", samples.header())
        self.assertGreaterEqual(len(lists), 12)
        for enum, name in lists:
            with self.subTest(name=name):
                words = getattr(ohmcurve, enum[4:].title().replace("_", ""))
                expected = [entry[2] for entry in samples.entries(name)]
                self.assertEqual([each.value for each in words], expected)
                self.assertEqual([each.name for each in words], [e.upper() for e in expected])

    def test_every_list_of_words_is_that_of_its_fields(self):
        for _, _, name, kind, meaning in samples.entries("OHM_FIELDS"):
            self.assertEqual(name in WORDS, kind == "WORD", name)
            if kind == "WORD":
                expected = samples.entries(re.search(r"OHM_\w+", meaning)[0])
                self.assertEqual([each.value for each in WORDS[name]], [e[2] for e in expected])

    def test_settings_are_typed_with_every_name_of_the_header(self):
        names = [entry[2] for entry in samples.entries("OHM_SETTINGS")]
        self.assertEqual(list(Settings.__annotations__), names)
        self.assertEqual(list(SETTINGS), names)

    def test_quantity_has_every_constant(self):
        self.assertEqual(
            ["OHM_QUANTITY_" + each.name for each in Quantity],
            samples.enum_constants("ohm_quantity"),
        )

    def test_series_has_every_constant(self):
        self.assertEqual(
            ["OHM_SERIES_" + each.name for each in Series], samples.enum_constants("ohm_series")
        )

    def test_every_group_of_an_answer_has_its_attribute(self):
        for constant in samples.enum_constants("ohm_group"):
            name = constant[len("OHM_GROUP_") :].lower()
            self.assertIn(name, vars(ohmcurve.Answer))

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

    def test_a_fit_can_be_asked_for_by_every_member(self):
        asked = list(inspect.signature(ohmcurve.fit).parameters)
        self.assertEqual(asked, ["points", *samples.struct_members("ohm_fit_request")])

    def test_every_function_of_the_header_is_bound_or_left_out_on_purpose(self):
        declared = set(re.findall(r"^OHM_API [^(]*?\b(ohm_\w+)\(", samples.header(), re.MULTILINE))
        left_out = {name for name in declared if not hasattr(_ohmcurve, name)}
        freed = {f"ohm_{each}_free" for each in ("curve", "sensor", "fit", "audit", "history", "circuit", "bench", "answer")}
        self.assertEqual(left_out, freed)

    def test_the_version_is_that_of_the_header(self):
        version = re.search(r'#define OHM_VERSION +"(.*)"', samples.header())[1]
        self.assertEqual(ohmcurve.__version__, version)

    def test_every_public_name_exists(self):
        for name in ohmcurve.__all__:
            self.assertTrue(hasattr(ohmcurve, name), name)


if __name__ == "__main__":
    unittest.main()
