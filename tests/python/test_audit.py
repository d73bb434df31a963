# SPDX-License-Identifier: MIT
"""An audit in Python."""

import gc
import pathlib
import tempfile
import unittest

import samples
from ohmcurve import Audit, Suspicion

CROSSED = "temp_c,r_min_ohm,r_max_ohm\n20,2590,2310\n80,310,326\n"


class AuditTest(unittest.TestCase):
    def test_a_table_in_order_has_no_suspect(self):
        self.assertEqual(Audit.parse(samples.TABLE), Audit(3, (), ()))

    def test_a_slip_of_digits_is_found_with_its_place_and_what_would_fit(self):
        audit = Audit.parse(samples.SLIPPED_TABLE, name="page")
        self.assertEqual(audit.row_count, 6)
        (suspect,) = audit.suspects
        self.assertIs(suspect.kind, Suspicion.DIGITS)
        self.assertEqual((suspect.line, suspect.column, suspect.t_c), (5, 4, 40))
        self.assertEqual((suspect.name, suspect.printed), ("r_nom_ohm", "11480"))
        self.assertEqual(suspect.would_fit, "1148")
        self.assertTrue(suspect.low <= 1148 <= suspect.high)
        self.assertTrue(0.5 <= suspect.level <= 1)

    def test_what_is_not_known_is_none(self):
        suspects = Audit.parse(CROSSED).suspects
        self.assertIs(suspects[0].kind, Suspicion.BAND)
        self.assertIsNone(suspects[0].would_fit)

    def test_the_text_is_the_sentences(self):
        audit = Audit.parse(samples.SLIPPED_TABLE, name="page")
        self.assertEqual(str(audit), audit.suspects[0].sentence)
        self.assertIn("page", str(audit))
        self.assertEqual(str(Audit.parse(samples.TABLE)), "")

    def test_a_doubt_about_the_whole_table_is_a_remark(self):
        rises = "temp_c,r_nom_ohm\n0,100\n20,107.8\n40,115.5\n60,123.2\n80,130.9\n"
        self.assertTrue(Audit.parse(rises).remarks)

    def test_a_file_is_audited_like_its_text(self):
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder, "page.csv")
            path.write_text(samples.SLIPPED_TABLE, encoding="utf-8")
            parsed = Audit.parse(samples.SLIPPED_TABLE)
            self.assertEqual(Audit.load(path).suspects[0][:-1], parsed.suspects[0][:-1])

    def test_what_was_found_outlives_the_audit(self):
        suspects = Audit.parse(samples.SLIPPED_TABLE).suspects
        gc.collect()
        self.assertEqual(suspects[0].printed, "11480")


if __name__ == "__main__":
    unittest.main()
