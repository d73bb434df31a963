# SPDX-License-Identifier: MIT
"""Every reference row of tests/refs, by the call it names, as the C tests ask them."""

import itertools
import math
import unittest

import samples
from ohmcurve import (
    Bench,
    Curve,
    History,
    Sensor,
    conformance,
    cooling_hours,
    cooling_tau,
    cooling_temperature,
    divider_resistance,
    divider_volts,
    preferred_nearest,
    reported_of,
    signal,
    substitute,
    water_boiling,
    water_pressure,
)

CELLS = "kind id source place call inputs quantity expected half u_source budget".split()


def rows():
    for path in sorted((samples.ROOT / "tests/refs").glob("*.psv")):
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if line.strip() and not line.startswith("#"):
                row = dict(zip(CELLS, map(str.strip, line.split("|")), strict=True))
                row["inputs"] = dict(pair.split("=") for pair in row["inputs"].split())
                row["at"] = f"{path.name}:{number}"
                yield row


def numbers(row, *names):
    return {name: float(row["inputs"][name]) for name in names}


def of_curve(row, curve):
    if row["quantity"] == "t_c":
        return curve.temperature(**numbers(row, "r_ohm"))
    if row["quantity"] == "r_ohm":
        return curve.resistance(**numbers(row, "t_c"))
    return {"alpha_per_k": curve.alpha}[row["quantity"]](**numbers(row, "t_c"))


def beta(row):
    return of_curve(row, Curve.beta(**numbers(row, "r0_ohm", "t0_c", "beta_k", "low_c", "high_c")))


def steinhart_hart(row):
    return of_curve(row, Curve.steinhart_hart(**numbers(row, "a", "b", "c", "low_c", "high_c")))


def four_term(row):
    names = ("r_ref_ohm", "a1", "b1", "c1", "d1", "low_c", "high_c")
    return of_curve(row, Curve.four_term(**numbers(row, *names)))


def of_temperature_curve(row):
    names = ("r_ref_ohm", "a", "b", "c", "d", "low_c", "high_c")
    return Curve.four_term_of_temperature(**numbers(row, *names))


def four_term_of_temperature(row):
    return of_curve(row, of_temperature_curve(row))


def exchange(row):
    """How far the inverse form misses the temperature the forward form was asked for."""
    names = ("r_ref_ohm", "a1", "b1", "c1", "d1", "low_c", "high_c")
    (t_c,) = numbers(row, "t_c").values()
    inverse = Curve.four_term(**numbers(row, *names))
    back_c = inverse.temperature(of_temperature_curve(row).resistance(t_c))
    return {"difference_k": back_c - t_c}[row["quantity"]]


def platinum(row):
    return of_curve(row, Curve.platinum(**numbers(row, "r0_ohm", "low_c", "high_c")))


def silicon(row):
    names = ("r25_ohm", "alpha_per_k", "beta_per_k2", "low_c", "high_c")
    return of_curve(row, Curve.silicon(**numbers(row, *names)))


def platinum_class(row):
    """Half the width of a class at a temperature, in ohm and through the slope in kelvin."""
    given = row["inputs"]
    sensor = Sensor.parse(
        f"# tolerance: class {given['class']}\n# model: platinum\n"
        f"# r0_ohm: {given['r0_ohm']}\n# range: -200 to 850 C\n"
    )
    (t_c,) = numbers(row, "t_c").values()
    band = sensor.band(t_c)
    limit_ohm = (band.high_ohm - band.low_ohm) / 2
    ohm_per_k = sensor.curve.resistance(t_c) * sensor.curve.alpha(t_c)
    return {"limit_ohm": limit_ohm, "limit_k": limit_ohm / ohm_per_k}[row["quantity"]]


def points(row):
    pairs = [map(float, pair.split(":")) for pair in row["inputs"]["points"].split(",")]
    t_c, r_ohm = zip(*pairs)
    return of_curve(row, Curve.points(t_c=t_c, r_ohm=r_ohm))


def of_conformance(row):
    parts = conformance(**numbers(row, "value", "u", "limit", "low", "high"))
    return getattr(parts, row["quantity"])


def meter_limit(row):
    given = row["inputs"]
    bench = Bench(leads="exact", meter="{percent}%+{counts}x{resolution_ohm}".format(**given))
    bench.read(float(given["r_ohm"]))
    return {"limit_ohm": bench.measure().finding.meter_limit_ohm}[row["quantity"]]


def boiling(row):
    t_c = water_boiling(**numbers(row, "pressure_hpa"))
    return {"t_c": t_c, "t_k": t_c + 273.15}[row["quantity"]]


def pressure(row):
    pressure_hpa = water_pressure(**numbers(row, "altitude_m"))
    return {"p_bar": pressure_hpa / 1000, "p_pa": pressure_hpa * 100}[row["quantity"]]


def boiling_at(row):
    pressure_hpa = water_pressure(**numbers(row, "altitude_m"))
    return {"t_c": water_boiling(pressure_hpa)}[row["quantity"]]


def degrees(row, name):
    """A temperature of a row in either unit."""
    given = row["inputs"]
    fahrenheit = given.get(f"{name}_f")
    return float(given[f"{name}_c"]) if fahrenheit is None else (float(fahrenheit) - 32) / 1.8


def hours(row, name):
    return float(row["inputs"][f"{name}_min"]) / 60


def cooling(row):
    start_c, air_c = degrees(row, "start"), degrees(row, "air")
    t_c = cooling_temperature(start_c, air_c, hours(row, "tau"), hours(row, "after"))
    return {"t_c": t_c}[row["quantity"]]


def of_cooling_tau(row):
    start_c, air_c = degrees(row, "start"), degrees(row, "air")
    tau_h = cooling_tau(start_c, air_c, degrees(row, "to"), hours(row, "after"))
    return {"k_per_min": 1 / (60 * tau_h)}[row["quantity"]]


def of_cooling_hours(row):
    """By the time constant of what was seen on the way."""
    start_c, air_c = degrees(row, "start"), degrees(row, "air")
    tau_h = cooling_tau(start_c, air_c, degrees(row, "seen"), hours(row, "seen"))
    after_h = cooling_hours(start_c, air_c, tau_h, degrees(row, "to"))
    return {"after_min": 60 * after_h}[row["quantity"]]


def history_cooling(row):
    pairs = [map(float, pair.split(":")) for pair in row["inputs"]["air"].split(",")]
    history = History(*zip(*pairs))
    return {"t_c": history.cooling}[row["quantity"]](
        **numbers(row, "start_c", "tau_h", "after_h")
    )


def divider(row):
    if row["quantity"] == "v_volt":
        return divider_volts(**numbers(row, "r_ohm", "pull_up_ohm", "supply_volt"))
    assert row["quantity"] == "r_ohm"
    return divider_resistance(**numbers(row, "v_volt", "pull_up_ohm", "supply_volt"))


def preferred(row):
    nearest_ohm = preferred_nearest(float(row["inputs"]["r_ohm"]), row["inputs"]["series"])
    return {"nearest_ohm": nearest_ohm}[row["quantity"]]


def reported(row):
    cut = row["inputs"]["rounding"] == "2"
    return {"shown_c": reported_of(float(row["inputs"]["t_c"]), cut=cut)}[row["quantity"]]


def looks(row):
    sensor = Sensor.from_catalogue("ntc-2k45-20c")
    reason = signal(sensor, row["inputs"]["v_volt"] + "V", pull_up="1k").reason
    return {"looks": {"open": 1, "shorted": -1}.get(reason, 0)}[row["quantity"]]


def sensors(all_rows):
    """A sensor of the rows of each table."""
    tables = {}
    for row in all_rows:
        if row["call"] == "band":
            table = tables.setdefault(row["inputs"]["table"], {})
            table.setdefault(row["inputs"]["t_c"], {})[row["quantity"]] = row["expected"]
    columns = ("low_ohm", "nominal_ohm", "high_ohm")
    return {
        name: Sensor.parse(
            "temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\n"
            + "".join(
                ",".join([t_c, *(cells.get(column, "") for column in columns)]) + "\n"
                for t_c, cells in table.items()
            )
        )
        for name, table in tables.items()
    }


def is_near(got, want, tol):
    return all(map(math.isfinite, (got, want, tol))) and tol >= 0 and abs(got - want) <= tol


class ReferenceRowsTest(unittest.TestCase):
    def test_the_comparer_takes_no_nan_and_no_infinity(self):
        self.assertTrue(is_near(1.5, 1.0, 0.5))
        self.assertTrue(is_near(1.0, 1.0, 0.0))
        self.assertFalse(is_near(1.0, 1.0, -1.0))
        for one in itertools.permutations((1.0, 1.0, math.nan)):
            self.assertFalse(is_near(*one))
        self.assertFalse(is_near(math.inf, math.inf, 1.0))
        self.assertFalse(is_near(1.0, 1.0, math.inf))

    def test_every_reference_row_is_met(self):
        all_rows = list(rows())
        made = sensors(all_rows)

        def band(row):
            sensor = made[row["inputs"]["table"]]
            if row["quantity"] == "nominal_ohm":
                return sensor.curve.resistance(**numbers(row, "t_c"))
            return getattr(sensor.band(**numbers(row, "t_c")), row["quantity"])

        def infer(row):
            """What the temperature seems to be with a fault beside the nominal sensor."""
            curve = made[row["inputs"]["table"]].curve
            r_ohm = curve.resistance(**numbers(row, "t_c"))
            if "series_ohm" in row["inputs"]:
                r_ohm += float(row["inputs"]["series_ohm"])
            else:
                r_ohm = 1 / (1 / r_ohm + 1 / float(row["inputs"]["leakage_ohm"]))
            return {"t_c": curve.temperature}[row["quantity"]](r_ohm)

        def of_substitute(row):
            single, _ = substitute(
                made[row["inputs"]["table"]], drawer=row["inputs"]["r_ohm"]
            )
            return {"t_c": single.t_c}[row["quantity"]]

        calls = {
            "beta": beta,
            "steinhart_hart": steinhart_hart,
            "four_term": four_term,
            "four_term_of_temperature": four_term_of_temperature,
            "exchange": exchange,
            "platinum": platinum,
            "platinum_class": platinum_class,
            "silicon": silicon,
            "points": points,
            "conformance": of_conformance,
            "meter_limit": meter_limit,
            "band": band,
            "infer": infer,
            "boiling": boiling,
            "pressure": pressure,
            "boiling_at": boiling_at,
            "cooling": cooling,
            "cooling_tau": of_cooling_tau,
            "cooling_hours": of_cooling_hours,
            "history_cooling": history_cooling,
            "divider": divider,
            "preferred": preferred,
            "reported": reported,
            "looks": looks,
            "substitute": of_substitute,
        }
        self.assertTrue(all_rows)
        for row in all_rows:
            with self.subTest(row["at"], source=row["source"], place=row["place"]):
                got = calls[row["call"]](row)
                want = float(row["expected"])
                tol = sum(float(row[part]) for part in ("half", "u_source", "budget"))
                self.assertTrue(
                    is_near(got, want, tol),
                    f"{row['quantity']} is {got!r}, not within {tol!r} of {want!r}",
                )


if __name__ == "__main__":
    unittest.main()
