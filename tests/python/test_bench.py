# SPDX-License-Identifier: MIT
"""A bench and its answers in Python: what is set, what is read, and what lives how long."""

import copy
import gc
import pickle
import unittest
import weakref

import ohmcurve
import samples
from ohmcurve import (
    SETTINGS,
    Answer,
    Bench,
    Circuit,
    Error,
    Explanation,
    Finding,
    History,
    Quantity,
    Sensor,
    Status,
    Verb,
    Verdict,
    _ohmcurve,
)


def bench(**settings):
    made = Bench(sensor=samples.table(), meter="0.5%+1", **settings)
    made.read("2.45k@20C+-0.1")
    return made


class SettingsTest(unittest.TestCase):
    def test_a_text_is_the_notation_and_a_number_the_number(self):
        made = Bench(fan_c="207F", limit_k=4, undisturbed=True, extend=False)
        self.assertEqual(
            made.settings,
            {"fan_c": "207F", "limit_k": "4C", "undisturbed": "yes", "extend": "no"},
        )

    def test_none_unsets(self):
        made = Bench(fan_c=97, limit_k=5)
        made.set(fan_c=None)
        self.assertEqual(list(made.settings), ["limit_k"])

    def test_every_setting_takes_its_example(self):
        for name, setting in SETTINGS.items():
            with self.subTest(name=name):
                self.assertEqual(Bench(**{name: setting.example}).settings, {name: setting.example})

    def test_every_setting_tells_default_limits_and_meaning(self):
        for name, setting in SETTINGS.items():
            with self.subTest(name=name):
                self.assertTrue(all((setting.default, setting.allowed, setting.meaning)))

    def test_the_settings_cannot_be_changed(self):
        with self.assertRaises(TypeError):
            SETTINGS["fan_c"] = SETTINGS["aim_c"]

    def test_a_mistake_leaves_all_as_it_was(self):
        made = Bench(fan_c=97)
        for wrong in ({"fan_c": "140C"}, {"fan_c": "warm"}, {"limit_k": 4, "fan_c": float("nan")}):
            with self.assertRaisesRegex(Error, "fan_c"):
                made.set(**wrong)
        with self.assertRaises(TypeError):
            made.set(limit_k=4, fan_c=[97])
        self.assertEqual(made.settings, {"fan_c": "97C"})

    def test_an_unknown_setting_is_answered_with_the_nearest(self):
        with self.assertRaisesRegex(TypeError, "no setting 'pullup': did you mean pull_up?"):
            Bench(pullup="1k")
        with self.assertRaisesRegex(TypeError, "no setting 'fan-c'"):
            Bench(**{"fan-c": "97C"})

    def test_zero_is_a_value(self):
        with self.assertRaises(Error) as caught:
            Bench(fan_c=0)
        self.assertIs(caught.exception.status, Status.OUT_OF_RANGE)
        self.assertEqual(Bench(stop=0, hidden_ohm=0).settings, {"stop": "0C", "hidden_ohm": "0"})


class ReadingsTest(unittest.TestCase):
    def test_readings_stand_in_their_order_and_notation(self):
        made = Bench()
        self.assertEqual(made.read("2.31k@21.5C,sensor"), 0)
        self.assertEqual(made.read(("2.31k", "boil")), 1)
        self.assertEqual(made.read(2310), 2)
        self.assertEqual(
            made.readings, ("2.31k@21.5C,sensor", "2.31k@boil", "=2310")
        )
        self.assertEqual(len(made), 3)

    def test_numbers_are_read_as_what_they_are(self):
        made = Bench()
        made.read_number(Quantity.OHMS, 2310, 21.5)
        made.read_number(Quantity.VOLTS, 0.97)
        made.read_number(Quantity.REPORTED, 91)
        self.assertEqual(made.readings, ("=2310@21.5C", "=0.97V", "91C"))
        with self.assertRaises(Error):
            made.read_number(Quantity.OHMS, float("nan"))
        with self.assertRaises(ValueError):
            made.read_number(9, 2310)

    def test_a_forgotten_reading_moves_the_others_up(self):
        made = Bench()
        for r_ohm in ("1k", "2k", "3k"):
            made.read(r_ohm)
        made.forget(1)
        self.assertEqual(made.readings, ("1k", "3k"))
        with self.assertRaises(Error) as caught:
            made.forget(2)
        self.assertIs(caught.exception.status, Status.NOT_FOUND)
        with self.assertRaises(IndexError):
            made.forget(-1)

    def test_what_is_no_reading_is_refused(self):
        made = Bench()
        for wrong in (None, ["2.31k", "20C"], ("2.31k",), b"2.31k"):
            with self.subTest(wrong=wrong), self.assertRaisesRegex(TypeError, "reading is"):
                made.read(wrong)
        self.assertEqual(len(made), 0)

    def test_a_reading_is_one_line(self):
        made = Bench()
        self.assertEqual((made.read(" 2.31k \n"), made.readings), (0, ("2.31k",)))
        for wrong in ("a=good\nb=bad", "a=good\n# level: 0.6"):
            with self.assertRaisesRegex(Error, "one short line"):
                made.read(wrong)
        with self.assertRaises(Error):
            made.set(band="a\n# level: 0.6")

    def test_an_empty_bench_is_true(self):
        self.assertTrue(Bench())


class RecordTest(unittest.TestCase):
    def test_a_record_gives_an_equal_bench(self):
        made = bench(fan_c="70C", place="sensor", leads=0.4)
        made.read(("320.5", "boil@1200m"))
        again = Bench.from_record(made.record())
        self.assertEqual(again.record(), made.record())
        self.assertEqual((again.settings, again.readings), (made.settings, made.readings))
        self.assertEqual(str(again), made.record())
        again.sensor = made.sensor
        self.assertEqual(again.check().finding, made.check().finding)

    def test_a_record_is_taken_whole_or_not_at_all(self):
        made = Bench()
        with self.assertRaises(Error) as caught:
            made.read_record("# fan_c: 97C\n2.31k\nnothing\n")
        self.assertEqual(caught.exception.line, 3)
        self.assertEqual(made.record(), "")

    def test_a_record_is_text_or_its_bytes(self):
        self.assertEqual(Bench.from_record(b"2.31k").readings, ("2.31k",))

    def test_outcomes_are_held_against_the_circuit(self):
        with self.assertRaises(Error):
            Bench.from_record("no-such=good", circuit=Circuit.built_in("radiator-switch"))


class LifeTest(unittest.TestCase):
    def test_a_copy_goes_its_own_way(self):
        made = bench(fan_c=70)
        for other in (made.copy(), copy.copy(made)):
            self.assertEqual(other.record(), made.record())
            self.assertIs(other.sensor, made.sensor)
            other.read("320@80C")
            other.set(fan_c=None)
            self.assertEqual((len(made), made.settings["fan_c"]), (1, "70C"))

    def test_a_copy_outlives_its_original_and_what_that_borrowed(self):
        made = Bench(sensor=samples.table(), compared=[samples.banded()])
        made.read("2.45k@20C")
        expected, other = made.explain().finding, made.copy()
        del made
        gc.collect()
        clutter = [samples.table() for _ in range(50)]
        self.assertEqual(other.explain().finding, expected)
        self.assertEqual(len(clutter), 50)

    def test_a_bench_keeps_alive_what_it_borrows(self):
        made = Bench(
            sensor=Sensor.parse(samples.TABLE),
            compared=(Sensor.parse(samples.BARE_TABLE) for _ in range(3)),
            history=History([0, 14], [15, 9]),
            circuit=Circuit.built_in("radiator-switch"),
        )
        gc.collect()
        self.assertEqual((made.sensor.name, len(made.compared)), ("invented-2k", 3))
        self.assertEqual(made.isolate().finding.circuit, "radiator-switch")
        made.read("3.8k")
        self.assertEqual(made.soak().finding.after_h, 14)

    def test_what_was_borrowed_can_be_given_back(self):
        made = bench()
        made.sensor = made.history = made.circuit = None
        with self.assertRaises(Error) as caught:
            made.check()
        self.assertIs(caught.exception.status, Status.NOT_FOUND)

    def test_a_cleared_bench_is_empty(self):
        made = bench(fan_c=70)
        made.compare(samples.banded())
        made.clear()
        self.assertEqual((made.record(), made.sensor, made.compared), ("", None, ()))

    def test_what_is_borrowed_has_its_class(self):
        for name, given in (("sensor", "x"), ("history", samples.table()), ("circuit", 1)):
            with self.assertRaisesRegex(TypeError, f"{name} is"):
                Bench(**{name: given})
        with self.assertRaisesRegex(TypeError, "sensor is None"):
            Bench().compare(None)

    def test_an_answer_outlives_bench_and_sensor(self):
        made = bench()
        expected = made.check().finding
        answer = made.check()
        del made
        gc.collect()
        clutter = [samples.table() for _ in range(50)]
        self.assertEqual(answer.finding, expected)
        self.assertEqual(str(answer), str(expected))
        self.assertEqual(len(clutter), 50)

    def test_a_finding_outlives_its_answer(self):
        answer = bench().check()
        each, gone = answer.readings, weakref.ref(answer)
        del answer
        gc.collect()
        self.assertIsNone(gone())
        self.assertEqual(each[0].read, "2.45 k")

    def test_an_answer_stays_what_it_was_when_the_bench_changes(self):
        made = bench()
        answer = made.check()
        made.clear()
        self.assertIs(answer.finding.verdict, Verdict.WITHIN)
        self.assertEqual(len(answer.readings), 1)

    def test_bench_and_answer_are_not_pickled(self):
        for each, hint in ((bench(), "record"), (bench().check(), "findings")):
            with self.assertRaisesRegex(TypeError, hint):
                pickle.dumps(each)


class AnswerTest(unittest.TestCase):
    def test_an_answer_has_a_finding_and_groups(self):
        answer = bench().check()
        self.assertIsInstance(answer.finding, Finding)
        self.assertEqual([type(each) for each in answer.readings], [Finding])
        for group in (answer.candidates, answer.explanations, answer.tests, answer.resistors):
            self.assertEqual(group, ())

    def test_report_and_budget_are_those_of_the_whole(self):
        answer = bench().check()
        self.assertEqual(str(answer), str(answer.finding))
        self.assertEqual(answer.budget, answer.finding.budget)
        self.assertTrue(answer.budget)

    def test_an_answer_cannot_be_changed(self):
        answer = bench().check()
        for name in ("finding", "readings", "other"):
            with self.subTest(name=name), self.assertRaisesRegex(AttributeError, name):
                setattr(answer, name, None)
        with self.assertRaises(AttributeError):
            del answer._answer

    def test_an_answer_is_not_made_out_of_nothing(self):
        with self.assertRaisesRegex(TypeError, "Bench"):
            Answer()

    def test_repr_shows_what_was_found(self):
        self.assertRegex(repr(bench().check()), "^<Answer: <Finding verdict within, .*>>$")
        self.assertEqual(repr(bench(fan_c=70)), "<Bench of 1 readings, set fan_c, meter>")

    def test_every_verb_of_the_header_is_a_method_that_says_so(self):
        made = Bench(
            sensor=Sensor.from_catalogue("ntc-2k45-20c"),
            compared=map(Sensor.from_catalogue, ohmcurve.catalogue()),
            circuit=Circuit.built_in("radiator-switch"),
            at="20C",
            air="20C",
            after_h=24,
        )
        names = {verb: verb.value for verb in Verb} | {Verb.CIRCUIT: "isolate"}
        of_another_kind = {Verb.PINS: ["1-2=2.45k"], Verb.LOOM: ["179.4@93C", "998@42C"]}
        for verb, name in names.items():
            with self.subTest(verb=verb):
                asked = made.copy()
                for reading in of_another_kind.get(verb, ["2.45k"]):
                    asked.read(reading)
                self.assertTrue(getattr(Bench, name).__doc__)
                self.assertIs(getattr(asked, name)().finding.about, verb)

    def test_explanations_stand_in_the_order_of_their_words(self):
        made = bench()
        answer = made.explain()
        self.assertEqual([each.explanation for each in answer.explanations], list(Explanation))

    def test_a_word_of_a_later_library_is_plain_text(self):
        name, number, read = next(each for each in ohmcurve.finding._READERS if each[0] == "reason")
        self.assertEqual(_ohmcurve.ohm_field_kind_of(number), _ohmcurve.OHM_KIND_WORD)
        finding = _ohmcurve.ohm_answer_finding(bench().check()._answer)
        self.assertIs(read(finding, number, name), ohmcurve.Reason.CONFORMS)
        self.assertEqual(read(finding, number, "job"), "conforms")
        self.assertIs(type(read(finding, number, "job")), str)


if __name__ == "__main__":
    unittest.main()
