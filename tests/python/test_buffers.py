# SPDX-License-Identifier: MIT
"""Arrays: what is taken, what is refused, and where the results go."""

import ctypes
import math
import sys
import unittest
from array import array

import samples

try:
    import numpy
except ImportError:
    numpy = None


class TakenTest(unittest.TestCase):
    def setUp(self):
        self.curve = samples.curve()

    def test_an_array_of_double_converts_like_its_items(self):
        source = array("d", [5000, 10000, 20000])
        self.assertEqual(
            self.curve.temperatures(source).tolist(),
            [self.curve.temperature(r_ohm) for r_ohm in source],
        )

    def test_temperatures_convert_back(self):
        source = array("d", [-40, 0, 25, 125])
        self.assertEqual(
            self.curve.resistances(source).tolist(),
            [self.curve.resistance(t_c) for t_c in source],
        )

    def test_the_result_is_a_new_array_of_double(self):
        result = self.curve.temperatures(array("d", [10000]))
        self.assertIsInstance(result, array)
        self.assertEqual(result.typecode, "d")

    def test_a_list_and_a_generator_are_taken(self):
        self.assertEqual(len(self.curve.temperatures([5000, 10000])), 2)
        self.assertEqual(len(self.curve.temperatures(r for r in (5000, 10000, 20000))), 3)

    def test_nothing_converts_to_nothing(self):
        self.assertEqual(len(self.curve.temperatures([])), 0)
        self.assertEqual(len(self.curve.resistances(array("d"))), 0)

    def test_what_cannot_be_converted_is_nan_and_the_rest_go_on(self):
        result = self.curve.temperatures([math.nan, 10000, -1, 1e12])
        self.assertEqual([math.isnan(t_c) for t_c in result], [True, False, True, True])

    def test_what_failed_is_counted(self):
        out = array("d", [0, 0, 0])
        self.assertEqual(self.curve.temperatures_into([math.nan, 10000, -1], out), 2)
        self.assertEqual(self.curve.resistances_into([25, 0, 1000], out), 1)
        self.assertEqual(self.curve.resistances_into([], array("d")), 0)

    def test_counting_fills_like_converting(self):
        source, out = array("d", [5000, 10000]), array("d", [0, 0])
        self.curve.temperatures_into(source, out)
        self.assertEqual(out, self.curve.temperatures(source))

    def test_an_array_of_ctypes_is_taken_and_filled(self):
        source, out = (ctypes.c_double * 2)(5000, 10000), (ctypes.c_double * 2)()
        self.curve.temperatures(source, out=out)
        self.assertEqual(list(out), self.curve.temperatures([5000, 10000]).tolist())

    def test_arrays_side_by_side_in_one_buffer_are_taken(self):
        whole = array("d", [5000, 10000, 0, 0])
        view = memoryview(whole)
        self.curve.temperatures(view[:2], out=view[2:])
        self.assertEqual(whole[2:], self.curve.temperatures(whole[:2]))

    def test_out_is_filled_and_returned(self):
        out = array("d", [0, 0])
        self.assertIs(self.curve.temperatures([5000, 10000], out=out), out)
        self.assertEqual(out[1], self.curve.temperature(10000))

    def test_out_may_be_the_source(self):
        both = array("d", [5000, 10000])
        expected = self.curve.temperatures(both).tolist()
        self.curve.temperatures(both, out=both)
        self.assertEqual(both.tolist(), expected)

    def test_a_contiguous_part_of_a_memoryview_is_taken(self):
        view = memoryview(array("d", [1, 5000, 10000, 2]))[1:3]
        self.assertEqual(len(self.curve.temperatures(view)), 2)

    def test_every_second_item_is_taken_and_filled(self):
        source = memoryview(array("d", [5000, 1, 10000, 2, 20000, 3]))[::2]
        whole = array("d", [7] * 6)
        self.curve.temperatures(source, out=memoryview(whole)[1::2])
        self.assertEqual(whole[1::2], self.curve.temperatures([5000, 10000, 20000]))
        self.assertEqual(whole[::2], array("d", [7] * 3))
        self.assertEqual(self.curve.temperatures(source), whole[1::2])

    def test_one_column_beside_the_other_is_filled_from_it(self):
        table = array("d", [5000, 0, 10000, 0, 20000, 0])
        view = memoryview(table)
        self.curve.temperatures(view[::2], out=view[1::2])
        self.assertEqual(table[1::2], self.curve.temperatures(table[::2]))

    def test_out_with_gaps_may_be_the_source(self):
        table = array("d", [5000, 7, 10000, 7])
        view = memoryview(table)[::2]
        expected = self.curve.temperatures(view)
        self.assertIs(self.curve.temperatures(view, out=view), view)
        self.assertEqual(table, array("d", [expected[0], 7, expected[1], 7]))

    def test_a_single_item_has_no_gap(self):
        self.assertEqual(len(self.curve.temperatures(memoryview(array("d", [5000, 1]))[::-2])), 1)

    def test_a_read_only_source_is_taken(self):
        view = memoryview(array("d", [5000])).toreadonly()
        self.assertEqual(len(self.curve.temperatures(view)), 1)

    def test_buffers_are_given_back_after_success_and_after_failure(self):
        source, out = array("d", [5000]), array("d", [0])
        self.curve.temperatures(source, out=out)
        with self.assertRaises(TypeError):
            self.curve.temperatures(source, out=array("f", [0]))
        with self.assertRaises(ValueError):
            self.curve.temperatures(source, out=array("d"))
        # An array with a buffer held by somebody cannot grow.
        source.append(1)
        out.append(1)


class RefusedTest(unittest.TestCase):
    def setUp(self):
        self.curve = samples.curve()

    def test_float32_is_refused_with_its_format(self):
        with self.assertRaisesRegex(TypeError, "'f'.*'d'.*array"):
            self.curve.temperatures(array("f", [100, 200, 300]))

    def test_int64_is_refused_with_its_format(self):
        with self.assertRaisesRegex(TypeError, "'q'.*'d'"):
            self.curve.temperatures(array("q", [100, 200]))

    def test_bytes_are_refused(self):
        with self.assertRaisesRegex(TypeError, "'B'"):
            self.curve.temperatures(bytes(16))

    def test_an_array_that_runs_backward_is_refused(self):
        with self.assertRaisesRegex(TypeError, "strided.*backwards"):
            self.curve.temperatures(memoryview(array("d", [1, 2, 3, 4]))[::-1])

    def test_points_with_gaps_are_refused(self):
        with self.assertRaisesRegex(TypeError, "strided.*without gaps"):
            gaps = memoryview(array("d", [0, 0, 20, 20]))[::2]
            type(self.curve).points(t_c=gaps, r_ohm=[5700, 2450])

    def test_a_read_only_out_is_refused(self):
        with self.assertRaisesRegex(TypeError, "read-only"):
            self.curve.temperatures([5000], out=memoryview(array("d", [0])).toreadonly())

    def test_the_other_byte_order_is_refused(self):
        order = "__ctype_be__" if sys.byteorder == "little" else "__ctype_le__"
        with self.assertRaisesRegex(TypeError, "'[<>]d'"):
            self.curve.temperatures((getattr(ctypes.c_double, order) * 2)(5000, 10000))

    def test_a_misaligned_array_is_refused(self):
        with self.assertRaisesRegex(TypeError, "misaligned.*copy"):
            self.curve.temperatures(memoryview(bytearray(17))[1:].cast("d"))

    def test_arrays_that_overlap_in_part_are_refused(self):
        view = memoryview(array("d", [5000, 10000, 20000]))
        with self.assertRaisesRegex(ValueError, "overlap"):
            self.curve.temperatures(view[:2], out=view[1:])
        with self.assertRaisesRegex(ValueError, "overlap"):
            self.curve.temperatures(view[1:], out=view[:2])

    def test_arrays_with_gaps_that_share_an_item_at_another_place_are_refused(self):
        view = memoryview(array("d", [5000, 10000, 20000, 5000, 10000, 20000]))
        for source, out in ((view[:4:2], view[2::2]), (view[:3], view[::2])):
            with self.assertRaisesRegex(ValueError, "overlap"):
                self.curve.temperatures(source[:2], out=out[:2])

    def test_an_out_of_another_length_is_refused_with_both(self):
        with self.assertRaisesRegex(ValueError, "3 and 2 numbers"):
            self.curve.temperatures([1, 2, 3], out=array("d", [0, 0]))

    def test_a_list_as_out_is_refused(self):
        with self.assertRaises(TypeError):
            self.curve.temperatures([5000], out=[0.0])

    def test_a_refused_out_is_left_as_it_was(self):
        out = array("d", [7, 7])
        with self.assertRaises(ValueError):
            self.curve.temperatures([5000], out=out)
        self.assertEqual(out.tolist(), [7, 7])

    def test_points_of_two_lengths_are_refused(self):
        with self.assertRaisesRegex(ValueError, "3 and 2 numbers"):
            type(self.curve).points(t_c=[0, 20, 80], r_ohm=[5700, 2450])

    def test_items_that_are_no_numbers_are_refused(self):
        with self.assertRaises(TypeError):
            self.curve.temperatures(["2.31k"])


@unittest.skipIf(numpy is None, "numpy is not installed")
class NumpyTest(unittest.TestCase):
    def test_a_numpy_array_of_float64_is_taken(self):
        source = numpy.array([5000.0, 10000.0])
        self.assertEqual(len(samples.curve().temperatures(source)), 2)

    def test_a_numpy_array_of_float64_is_filled(self):
        out = numpy.zeros(2)
        samples.curve().temperatures(numpy.array([5000.0, 10000.0]), out=out)
        self.assertTrue((out != 0).all())

    def test_a_column_of_a_record_array_is_taken_and_filled(self):
        table = numpy.zeros(2, dtype=[("n", "i8"), ("r", "f8"), ("t", "f8")])
        table["r"] = 5000, 10000
        samples.curve().temperatures(table["r"], out=table["t"])
        self.assertEqual(list(table["t"]), list(samples.curve().temperatures([5000, 10000])))

    def test_an_unaligned_column_of_a_record_array_is_refused(self):
        table = numpy.zeros(2, dtype=[("r", "f8"), ("n", "i4")])
        with self.assertRaisesRegex(TypeError, "misaligned"):
            samples.curve().temperatures(table["r"])

    def test_a_numpy_array_of_float32_is_refused(self):
        with self.assertRaisesRegex(TypeError, "'f'"):
            samples.curve().temperatures(numpy.array([5000], dtype="float32"))

    def test_a_numpy_array_of_the_other_byte_order_is_refused(self):
        other = numpy.array([5000.0]).astype(numpy.dtype("d").newbyteorder())
        with self.assertRaises(TypeError):
            samples.curve().temperatures(other)


if __name__ == "__main__":
    unittest.main()
