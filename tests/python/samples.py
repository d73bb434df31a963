# SPDX-License-Identifier: MIT
"""What several of the tests start from. The figures are invented."""

import pathlib
import re

import ohmcurve

ROOT = pathlib.Path(__file__).resolve().parents[2]

TABLE = """\
# name: invented-2k
# description: a table of three rows
# source: invented for the tests
# kind: module
temp_c,r_min_ohm,r_nom_ohm,r_max_ohm
0,5400,5700,6000
20,2350,2450,2550
80,310,320,330
"""

BARE_TABLE = """\
# name: invented-bare
temp_c,r_nom_ohm
0,5700
20,2450
80,320
"""

BANDED_TABLE = """\
# name: invented-banded
# dissipation_mw_per_k: 2
# band loose: invented manual, page 2
# band tight: invented manual, page 3
temp_c,r_min_ohm,r_nom_ohm,r_max_ohm,band
0,,5700,,
20,,2450,,
80,,320,,
0,5000,,6400,loose
80,280,,360,loose
0,5600,,5800,tight
80,315,,325,tight
"""

MODEL = """\
# name: invented-model
# model: beta
# r0_ohm: 10000
# t0_c: 25
# beta_k: 3950
# range: -40 to 125 C
"""

SLIPPED_TABLE = """\
temp_c,r_nom_ohm
-20,15480
0,5790
20,2450
40,11480
60,586.5
80,322.2
"""


def curve():
    return ohmcurve.Curve.beta(r0_ohm=10000, t0_c=25, beta_k=3950, low_c=-40, high_c=125)


def table():
    return ohmcurve.Sensor.parse(TABLE)


def banded():
    return ohmcurve.Sensor.parse(BANDED_TABLE)


def fit_points(**keywords):
    """Six points of the curve, moved a little."""
    moved = (0.02, -0.03, 0.01, 0.02, -0.01, -0.01)
    return [
        ohmcurve.FitPoint(t_c + move, curve().resistance(t_c), **keywords)
        for t_c, move in zip(range(0, 120, 20), moved)
    ]


def header():
    return (ROOT / "include" / "ohmcurve.h").read_text(encoding="utf-8")


def enum_block(name):
    """What stands between the braces of an enum of the header."""
    return re.search(r"typedef enum %s \{(.*?)\} %s;" % (name, name), header(), re.DOTALL)[1]


def struct_members(name):
    """The members of a struct of the header, in order."""
    block = re.search(r"typedef struct %s \{(.*?)\} %s;" % (name, name), header(), re.DOTALL)[1]
    code = re.sub(r"/\*.*?\*/", "", block, flags=re.DOTALL)
    return re.findall(r"(\w+);", code)


def entries(name):
    """The cells of a list of the header, an entry each."""
    block = re.search(r"#define %s\(X\)(.*?[^\\])\n" % name, header(), re.DOTALL)[1]
    block = block.replace("\\\n", "")
    cell = re.compile(r'"([^"]*)"|([^\s,"()]+)')
    return [
        [text or word for text, word in cell.findall(entry)]
        for entry in re.findall(r'X\(((?:"[^"]*"|[^")])*)\)', block)
    ]


def enum_constants(name):
    """The constants of an enum of the header, in order."""
    code = re.sub(r"/\*.*?\*/", "", enum_block(name), flags=re.DOTALL)
    return re.findall(r"OHM_\w+", code)
