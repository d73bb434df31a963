# SPDX-License-Identifier: MIT
"""Statuses are exceptions with a sentence and a place."""

import math
import pickle
import tempfile
import unittest

import ohmcurve
import samples
from ohmcurve import Curve, Error, Sensor, Status, _ohmcurve

def sensor_with(lines):
    return "# name: long\ntemp_c,r_nom_ohm\n" + lines


class StatusTest(unittest.TestCase):
    def assert_status(self, status, call, *arguments, **keywords):
        with self.assertRaises(Error) as caught:
            call(*arguments, **keywords)
        self.assertIs(caught.exception.status, status)
        self.assertTrue(str(caught.exception))
        return caught.exception

    def test_a_resistance_that_is_no_number_is_a_bad_argument(self):
        self.assert_status(Status.BAD_ARGUMENT, samples.curve().temperature, math.nan)

    def test_a_definition_that_is_no_number_is_a_bad_argument(self):
        self.assert_status(
            Status.BAD_ARGUMENT,
            Curve.beta,
            r0_ohm=math.nan,
            t0_c=25,
            beta_k=3950,
            low_c=0,
            high_c=100,
        )

    def test_a_temperature_beyond_the_range_is_out_of_range(self):
        self.assert_status(Status.OUT_OF_RANGE, samples.curve().resistance, 126)

    def test_a_text_not_in_its_notation_is_bad_syntax(self):
        self.assert_status(Status.BAD_SYNTAX, ohmcurve.Bench().read, "two k")

    def test_points_that_rise_are_a_bad_definition(self):
        self.assert_status(Status.BAD_DEFINITION, Curve.points, t_c=[0, 20], r_ohm=[100, 200])

    def test_an_unknown_name_is_not_found(self):
        self.assert_status(Status.NOT_FOUND, Sensor.from_catalogue, "no such sensor at all")

    def test_a_sensor_without_tolerance_has_no_band_to_be_found(self):
        self.assert_status(Status.NOT_FOUND, Sensor.parse(samples.BARE_TABLE).band, 20)

    def test_a_file_that_is_not_there_cannot_be_opened(self):
        with tempfile.TemporaryDirectory() as folder:
            self.assert_status(Status.CANNOT_OPEN, Sensor.load, folder + "/absent.csv")

    def test_a_directory_cannot_be_opened(self):
        with tempfile.TemporaryDirectory() as folder:
            self.assert_status(Status.CANNOT_OPEN, Sensor.load, folder)

    def test_more_rows_than_4096_are_too_large(self):
        rows = "".join(f"{0.01 * i!r},{10000 - i}\n" for i in range(4097))
        self.assert_status(Status.TOO_LARGE, Sensor.parse, sensor_with(rows))

    def test_fewer_points_than_coefficients_are_a_bad_definition(self):
        self.assert_status(Status.BAD_DEFINITION, ohmcurve.fit, [(25, 10000)])

    def test_a_point_that_is_no_number_is_a_bad_argument(self):
        self.assert_status(Status.BAD_ARGUMENT, ohmcurve.fit, [(25, math.nan), (50, 3600)])

    def test_more_points_than_4096_are_too_large(self):
        self.assert_status(Status.TOO_LARGE, ohmcurve.fit, [(25, 10000)] * 4097)

    def test_a_level_of_one_is_out_of_range(self):
        made = ohmcurve.fit(samples.fit_points())
        self.assert_status(Status.OUT_OF_RANGE, made.temperature, 10000, 1)

    def test_a_table_without_rows_cannot_be_audited(self):
        self.assert_status(
            Status.BAD_DEFINITION, ohmcurve.Audit.parse, "temp_c,r_nom_ohm\n"
        )

    def test_no_object_is_a_null_argument(self):
        self.assert_status(
            Status.NULL_ARGUMENT, _ohmcurve.ohm_curve_temperature, None, 10000.0
        )

    def test_none_where_a_text_is_needed_is_a_type_error(self):
        for call in (Sensor.parse, Sensor.from_catalogue, Sensor.load, ohmcurve.Bench().read):
            with self.subTest(call=call), self.assertRaises(TypeError):
                call(None)


class PlaceTest(unittest.TestCase):
    def test_an_error_is_a_value_error(self):
        self.assertTrue(issubclass(Error, ValueError))

    def test_the_place_is_carried_beside_the_sentence(self):
        with self.assertRaises(Error) as caught:
            Sensor.parse("# name: x\n# model: parabola\n", name="mine")
        self.assertEqual(caught.exception.line, 2)
        self.assertEqual(caught.exception.column, 10)
        self.assertIn("line 2, column 10", str(caught.exception))
        self.assertIn("parabola", str(caught.exception))

    def test_the_sentence_names_the_text(self):
        with self.assertRaisesRegex(Error, "mine"):
            Sensor.parse("# model: parabola\n", name="mine")

    def test_a_place_that_is_not_meant_is_none(self):
        with self.assertRaises(Error) as caught:
            samples.curve().temperature(math.nan)
        self.assertIsNone(caught.exception.line)
        self.assertIsNone(caught.exception.column)

    def test_the_name_is_that_of_the_status(self):
        with self.assertRaises(Error) as caught:
            samples.curve().resistance(1000)
        self.assertEqual(caught.exception.name, "out_of_range")

    def test_a_value_out_of_range_gets_the_sentence_of_its_status(self):
        with self.assertRaises(Error) as caught:
            samples.curve().resistance(1000)
        self.assertEqual(
            str(caught.exception), _ohmcurve.ohm_status_text(_ohmcurve.OHM_OUT_OF_RANGE)
        )

    def test_an_error_survives_pickling(self):
        with self.assertRaises(Error) as caught:
            Sensor.parse("# model: parabola\n")
        copy = pickle.loads(pickle.dumps(caught.exception))
        self.assertEqual(str(copy), str(caught.exception))
        self.assertEqual((copy.status, copy.line), (caught.exception.status, 1))

    def test_a_nul_inside_a_notation_is_refused(self):
        with self.assertRaisesRegex(ValueError, "NUL"):
            ohmcurve.Bench().read("2.31k\0junk")

    def test_bytes_that_are_not_utf_8_in_a_path_do_not_hide_the_error(self):
        with self.assertRaises(Error) as caught:
            Sensor.load(b"absent-\xff.csv")
        self.assertIs(caught.exception.status, Status.CANNOT_OPEN)


if __name__ == "__main__":
    unittest.main()
