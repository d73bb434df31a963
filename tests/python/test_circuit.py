# SPDX-License-Identifier: MIT
"""Circuits and isolation in Python."""

import pathlib
import tempfile
import unittest

from ohmcurve import Circuit, Error, Status, Verdict, circuits

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
    def setUp(self):
        self.circuit = Circuit.built_in("radiator-switch")

    def test_without_a_record_the_first_test_is_told(self):
        finding = self.circuit.isolate()
        self.assertIs(finding.verdict, Verdict.UNDECIDED)
        self.assertEqual((finding.about, finding.next), ("isolation", "starts"))
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


if __name__ == "__main__":
    unittest.main()
