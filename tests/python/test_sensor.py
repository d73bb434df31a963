# SPDX-License-Identifier: MIT
"""A sensor in Python."""

import gc
import pathlib
import tempfile
import unittest

import ohmcurve
import samples
from ohmcurve import Band, Row, Sensor, Temperature


class SensorTest(unittest.TestCase):
    def test_the_lines_of_the_file_are_properties(self):
        sensor = samples.table()
        self.assertEqual(sensor.name, "invented-2k")
        self.assertEqual(sensor.description, "a table of three rows")
        self.assertEqual(sensor.source, "invented for the tests")
        self.assertEqual(sensor.kind, "module")
        self.assertIsNone(sensor.dissipation_mw_per_k)
        self.assertEqual(sensor.notes, ())

    def test_the_text_gives_an_equal_sensor_again(self):
        text = str(samples.table())
        self.assertEqual(str(Sensor.parse(text)), text)

    def test_text_and_its_utf_8_bytes_are_the_same_sensor(self):
        self.assertEqual(str(Sensor.parse(samples.TABLE.encode())), str(samples.table()))

    def test_a_file_is_read_by_str_and_by_path(self):
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder, "two k é.csv")
            path.write_text(samples.TABLE, encoding="utf-8")
            self.assertEqual(str(Sensor.load(path)), str(samples.table()))
            self.assertEqual(str(Sensor.load(str(path))), str(samples.table()))

    def test_a_text_without_a_name_takes_the_given_one(self):
        text = samples.TABLE.replace("# name: invented-2k\n", "")
        self.assertEqual(Sensor.parse(text, name="mine").name, "mine")

    def test_a_row_that_cannot_be_used_is_noted(self):
        notes = Sensor.parse(samples.TABLE + "90,x,y,z\n").notes
        self.assertEqual(len(notes), 1)
        self.assertIn("line 9", notes[0])

    def test_the_band_has_named_parts(self):
        self.assertEqual(samples.table().band(20), Band(2350, 2450, 2550))

    def test_the_rows_are_those_printed_in_rising_temperature(self):
        rows = samples.table().rows
        self.assertEqual(rows[1], Row(20, 2350, 2450, 2550))
        self.assertEqual([row.t_c for row in rows], [0, 20, 80])

    def test_a_cell_left_blank_is_none(self):
        self.assertEqual(Sensor.parse(samples.BARE_TABLE).rows[1], Row(20, None, 2450, None))

    def test_the_rows_of_makers_bands_are_not_among_them(self):
        self.assertEqual(len(samples.banded().rows), 3)

    def test_a_model_has_no_rows(self):
        self.assertEqual(Sensor.parse(samples.MODEL).rows, ())

    def test_the_temperature_of_a_sensor_that_was_not_fitted_has_no_interval(self):
        self.assertEqual(samples.table().temperature(2450), Temperature(20, None, None))

    def test_the_bands_of_makers_have_names_and_sources(self):
        self.assertEqual(
            samples.banded().bands,
            {"loose": "invented manual, page 2", "tight": "invented manual, page 3"},
        )

    def test_a_sensor_without_bands_of_makers_has_none(self):
        self.assertEqual(samples.table().bands, {})

    def test_of_makers_bands_the_widest_is_the_band(self):
        self.assertEqual(samples.banded().band(0), Band(5000, 5700, 6400))

    def test_the_curve_outlives_the_sensor(self):
        curve = Sensor.parse(samples.TABLE).curve
        gc.collect()
        others = [Sensor.parse(samples.TABLE.replace("2450", "2400")) for _ in range(50)]
        self.assertEqual(curve.resistance(20), 2450)
        self.assertEqual(len(others), 50)

    def test_repr_shows_name_and_range(self):
        self.assertRegex(repr(samples.table()), r"^<Sensor 'invented-2k': <Curve 0 to 80 C, .*>>$")

    def test_a_sensor_is_not_made_out_of_nothing(self):
        with self.assertRaisesRegex(TypeError, "Sensor.load"):
            Sensor()


class CatalogueTest(unittest.TestCase):
    def test_every_name_of_the_catalogue_loads(self):
        self.assertTrue(ohmcurve.catalogue())
        for name in ohmcurve.catalogue():
            with self.subTest(name=name):
                self.assertEqual(Sensor.from_catalogue(name).name, name)

    def test_the_names_are_in_order(self):
        self.assertEqual(list(ohmcurve.catalogue()), sorted(ohmcurve.catalogue()))

    def test_words_of_the_description_find_a_sensor(self):
        for name in ohmcurve.catalogue():
            with self.subTest(name=name):
                words = Sensor.from_catalogue(name).description.upper()
                self.assertIn(name, ohmcurve.find_sensors(words.replace(",", " ")))

    def test_words_that_nothing_holds_find_nothing(self):
        self.assertEqual(ohmcurve.find_sensors("no such sensor at all"), ())

    def test_no_word_finds_nothing(self):
        self.assertEqual(ohmcurve.find_sensors(" "), ())

    def test_a_name_nearly_right_is_answered_with_the_right_one(self):
        name = ohmcurve.catalogue()[0]
        with self.assertRaisesRegex(ohmcurve.Error, name):
            Sensor.from_catalogue(name + "x")


if __name__ == "__main__":
    unittest.main()
