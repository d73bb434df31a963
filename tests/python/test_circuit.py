# SPDX-License-Identifier: MIT
"""Circuits and isolation in Python."""

import pathlib
import tempfile
import unittest

from ohmcurve import Bench, Circuit, Error, Outcome, Sensor, Status, Verb, Verdict, circuits

DEAD = [
    "starts=bad",
    "coolant-level=good",
    "standing=good",
    "battery-volts=12.4",
    "hoses=good",
    "engine-heat=103",
]


class CircuitTest(unittest.TestCase):
    def test_every_circuit_built_in_loads_and_prints_to_an_equal_one(self):
        self.assertGreaterEqual(len(circuits()), 5)
        for name in circuits():
            circuit = Circuit.built_in(name)
            self.assertEqual((circuit.name, circuit.notes), (name, ()))
            self.assertTrue(circuit.description and circuit.source)
            self.assertEqual(str(Circuit.parse(str(circuit))), str(circuit))

    def test_links_and_tests_are_rows_by_column(self):
        circuit = Circuit.built_in("radiator-switch")
        self.assertIn("radiator switch", {link["part"] for link in circuit.links})
        self.assertEqual(circuit.tests[0]["role"], "symptom")
        self.assertIn("Circuit 'radiator-switch'", repr(circuit))

    def test_a_file_is_read(self):
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder) / "mine.csv"
            path.write_text(str(Circuit.built_in("pulse-width")))
            self.assertEqual(Circuit.load(path).name, "pulse-width")

    def test_a_circuit_that_is_none_raises(self):
        with self.assertRaises(Error) as raised:
            Circuit.built_in("radiator-swich")
        self.assertEqual(raised.exception.status, Status.NOT_FOUND)
        with self.assertRaises(Error):
            Circuit.parse("link\n")
        with self.assertRaises(TypeError):
            Circuit()


class IsolationTest(unittest.TestCase):
    def test_each_test_made_has_a_finding(self):
        made = Bench(circuit=self.circuit)
        made.read("starts=bad")
        made.read("battery-volts=12.4")
        starts, volts = made.isolate().tests
        self.assertEqual((starts.test, starts.outcome), ("starts", Outcome.BAD))
        self.assertEqual((volts.measured, volts.verdict), (12.4, Verdict.WITHIN))

    def setUp(self):
        self.circuit = Circuit.built_in("radiator-switch")

    def test_without_a_record_the_first_test_is_told(self):
        finding = self.circuit.isolate()
        self.assertIs(finding.verdict, Verdict.UNDECIDED)
        self.assertEqual((finding.about, finding.next), (Verb.CIRCUIT, "starts"))
        self.assertIsNone(finding.reason)

    def test_a_part_is_found_and_the_case_closed(self):
        found = self.circuit.isolate(DEAD + ["fuse-look=bad"])
        self.assertIs(found.verdict, Verdict.OUTSIDE)
        self.assertEqual((found.state, found.faulty), ("found", ("fuse",)))
        self.assertIn("BUY fan fuse", str(found))
        closed = self.circuit.isolate(
            "\n".join(DEAD + ["fuse-look=bad", "fuse=renewed", "starts=good"])
        )
        self.assertIs(closed.verdict, Verdict.WITHIN)

    def test_a_record_that_cannot_be_read_raises_with_its_line(self):
        with self.assertRaises(Error) as raised:
            self.circuit.isolate(DEAD + ["fuse-look=perhaps"])
        self.assertEqual(raised.exception.line, 7)

    def test_where_the_fan_starts_is_told_by_setting(self):
        hot = [*DEAD[:-1], "engine-heat=108"]
        self.assertEqual(self.circuit.isolate(hot, fan_c=90).state, "too_hot")
        self.assertNotEqual(self.circuit.isolate(hot, fan_c="105C").state, "too_hot")

    def test_an_outcome_that_is_none_of_the_circuits_is_refused(self):
        with self.assertRaises(Error) as raised:
            Bench(circuit=self.circuit).read("fuse-lok=good")
        self.assertIs(raised.exception.status, Status.NOT_FOUND)

    def test_a_sensors_answer_is_a_reading_of_the_circuit(self):
        sensor = Sensor.from_catalogue("ntc-2k45-20c")
        circuit = Circuit.built_in("module-relays")
        bench = Bench(sensor=sensor, place="sensor", meter="exact", leads="exact")
        bench.read("400@80C")
        reading = circuit.reading_of(bench.check())
        self.assertTrue(reading.endswith("=outside"), reading)
        Bench(circuit=circuit).read(reading)
        self.assertIsNone(circuit.reading_of(Bench(sensor=sensor).fanpoint()))


if __name__ == "__main__":
    unittest.main()
