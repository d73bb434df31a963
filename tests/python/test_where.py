# SPDX-License-Identifier: MIT
"""Where the package is installed."""

import importlib.util
import unittest

import samples

SPEC = importlib.util.spec_from_file_location(
    "where", samples.ROOT / "bindings" / "python" / "where.py"
)
where = importlib.util.module_from_spec(SPEC)
SPEC.loader.exec_module(where)

DEBIAN_PATH = [
    "/usr/lib/python311.zip",
    "/usr/lib/python3.11",
    "/usr/lib/python3.11/lib-dynload",
    "/usr/local/lib/python3.11/dist-packages",
    "/usr/lib/python3/dist-packages",
]
DEBIAN_SCHEME = "/usr/local/lib/python3.11/dist-packages"
OWN_PATH = ["/opt/py/lib/python3.11", "/opt/py/lib/python3.11/site-packages"]
OWN_SCHEME = "/opt/py/lib/python3.11/site-packages"


def on_debian(prefix):
    return where.package_directory(prefix, DEBIAN_PATH, DEBIAN_SCHEME, "/usr", "3.11")


def on_own_build(prefix):
    return where.package_directory(prefix, OWN_PATH, OWN_SCHEME, "/opt/py", "3.11")


class WhereTest(unittest.TestCase):
    def test_a_directory_it_looks_in_under_the_prefix_is_taken(self):
        self.assertEqual(on_debian("/usr/local"), "/usr/local/lib/python3.11/dist-packages")
        self.assertEqual(on_own_build("/opt/py"), "/opt/py/lib/python3.11/site-packages")

    def test_the_prefix_usr_does_not_write_into_usr_local(self):
        self.assertEqual(on_debian("/usr"), "/usr/lib/python3/dist-packages")

    def test_another_prefix_gets_the_scheme_of_the_interpreter(self):
        self.assertEqual(on_own_build("/opt/x"), "/opt/x/lib/python3.11/site-packages")

    def test_the_local_of_a_scheme_is_not_doubled(self):
        self.assertEqual(on_debian("/opt/x"), "/opt/x/lib/python3.11/dist-packages")

    def test_a_prefix_that_only_starts_alike_is_another(self):
        self.assertEqual(on_own_build("/opt/p"), "/opt/p/lib/python3.11/site-packages")

    def test_a_scheme_outside_its_base_gives_the_usual_place(self):
        self.assertEqual(
            where.package_directory("/opt/x", [], "/elsewhere/site-packages", "/usr", "3.12"),
            "/opt/x/lib/python3.12/site-packages",
        )

    def test_the_running_interpreter_tells_its_module_path(self):
        self.assertTrue(where.own_module_path())


if __name__ == "__main__":
    unittest.main()
