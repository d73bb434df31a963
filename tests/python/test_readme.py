# SPDX-License-Identifier: MIT
"""The example of bindings/python/README.md says what it says."""

import contextlib
import io
import re
import unittest

import samples


class ReadmeTest(unittest.TestCase):
    def test_the_example_prints_what_stands_below_it(self):
        readme = (samples.ROOT / "bindings/python/README.md").read_text(encoding="utf-8")
        code = re.search(r"```python\n(.*?)```", readme, re.DOTALL)[1]
        said = re.search(r"```text\n(.*?)```", readme, re.DOTALL)[1]
        printed = io.StringIO()
        with contextlib.redirect_stdout(printed):
            exec(compile(code, "README.md", "exec"), {})
        self.assertEqual(printed.getvalue(), said)


if __name__ == "__main__":
    unittest.main()
