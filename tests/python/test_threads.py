# SPDX-License-Identifier: MIT
"""One curve, one sensor and one answer, many threads."""

import sys
import threading
import unittest
from array import array

import ohmcurve
import samples

THREADS = 8
ROUNDS = 40


def in_threads(work):
    """Run work in many threads that start together; return what they returned."""
    results, start = [], threading.Barrier(THREADS)

    def run():
        start.wait()
        results.append(work())

    threads = [threading.Thread(target=run) for _ in range(THREADS)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return results


class ThreadsTest(unittest.TestCase):
    def setUp(self):
        self.addCleanup(sys.setswitchinterval, sys.getswitchinterval())
        sys.setswitchinterval(1e-5)

    def test_threads_that_share_a_curve_get_the_results_of_one(self):
        curve = samples.curve()
        source = array("d", [600 + 10 * i for i in range(2000)])
        expected = curve.temperatures(source)
        results = in_threads(lambda: [curve.temperatures(source) for _ in range(ROUNDS)])
        self.assertEqual(len(results), THREADS)
        self.assertTrue(all(each == expected for result in results for each in result))

    def test_threads_that_share_a_sensor_get_one_finding(self):
        sensor = samples.table()
        expected = ohmcurve.check(sensor, "2.45k", at="20C+-1")
        results = in_threads(
            lambda: [ohmcurve.check(sensor, "2.45k", at="20C+-1") for _ in range(ROUNDS)]
        )
        self.assertEqual(len(results), THREADS)
        self.assertTrue(all(each == expected for result in results for each in result))

    def test_threads_that_share_an_answer_read_the_same(self):
        bench = ohmcurve.Bench(sensor=samples.table(), meter="0.5%+1")
        for t_c in range(10, 20):
            bench.read(f"2.45k@{t_c}C")
        expected = bench.check()
        expected = expected.finding, expected.readings, str(expected), expected.budget
        shared = bench.check()
        results = in_threads(
            lambda: (shared.finding, shared.readings, str(shared), shared.budget)
        )
        self.assertEqual(results, [expected] * THREADS)

    def test_an_array_in_use_cannot_be_resized_by_another_thread(self):
        curve, shared = samples.curve(), array("d", [10000]) * 20000
        refused = []

        def resize_or_convert():
            for _ in range(ROUNDS):
                curve.temperatures(shared)
                try:
                    shared.append(10000)
                except BufferError:
                    refused.append(True)
            return True

        self.assertEqual(in_threads(resize_or_convert), [True] * THREADS)


if __name__ == "__main__":
    unittest.main()
