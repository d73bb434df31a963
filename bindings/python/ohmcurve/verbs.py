# SPDX-License-Identifier: MIT
"""The verbs without a bench of one's own: settings by keyword, under their own names."""

# mypy: enable-incomplete-feature=Unpack
from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Any, NamedTuple, Tuple

from . import _ohmcurve
from ._fields import Settings, Soaked
from .bench import Bench, Reading, Shown, noted
from .circuit import Circuit
from .error import Error, Status
from .finding import Finding
from .history import History
from .sensor import Sensor, catalogue
from .setting import SETTINGS, refusal

if TYPE_CHECKING:
    from typing_extensions import Unpack

Several = Tuple[Finding, Tuple[Finding, ...]]
"""The finding of all together, and those of each."""


class Estimate(NamedTuple):
    """A quantity and its standard uncertainty (k = 1)."""

    value: float
    u: float


def _bench(verb: str, number: int, settings: Settings, **borrowed: Any) -> Bench:
    """A bench with the settings of a verb; one of another verb would be passed over."""
    allowed = [
        name
        for name, setting in SETTINGS.items()
        if _ohmcurve.ohm_setting_is_of(setting.number, number)
    ]
    for name in settings:
        if name not in allowed:
            raise refusal(name, allowed, f"{verb}() takes no keyword")
    return Bench(**borrowed, **settings)


def _needed(sensor: Any) -> Any:
    if not isinstance(sensor, Sensor):
        raise TypeError(f"sensor is {sensor!r}: pass a Sensor, for instance Sensor.load(path)")
    return sensor


def _among(sensors: Iterable[Sensor] | None) -> Iterable[Sensor]:
    return map(Sensor.from_catalogue, catalogue()) if sensors is None else sensors


def _put_down(bench: Bench, readings: Iterable[Reading]) -> Bench:
    for reading in readings:
        bench.read(reading)
    return bench


def check(sensor: Sensor, reading: Reading, **settings: Unpack[Settings]) -> Finding:
    """Judge a sensor that lies at a known temperature: a bath, a room, the open air.

        check(sensor, "2.31k", at="21.5C+-1", place="sensor", meter="0.8%+3", fan_c="95C")

    What is left out is assumed; Finding.assumed says what was.
    """
    bench = _bench("check", _ohmcurve.OHM_VERB_CHECK, settings, sensor=_needed(sensor))
    return _put_down(bench, [reading]).check().finding


def check_several(
    sensor: Sensor, readings: Iterable[Reading], **settings: Unpack[Settings]
) -> Several:
    """Judge a sensor by several readings, in the order they were taken.

    check_several(sensor, [("2.31k", "21.5C"), ("191", "boil")], leads="0.4")
    """
    bench = _bench("check_several", _ohmcurve.OHM_VERB_CHECK, settings, sensor=_needed(sensor))
    answer = _put_down(bench, readings).check()
    return answer.finding, answer.readings


def identify(
    readings: Iterable[Reading],
    *,
    sensors: Iterable[Sensor] | None = None,
    **settings: Unpack[Settings],
) -> Several:
    """Tell which of the sensors readings were taken of; None: of all that are built in. The
    findings of each are those of the sensors that could be compared, the likeliest first.
    """
    bench = _bench("identify", _ohmcurve.OHM_VERB_IDENTIFY, settings, compared=_among(sensors))
    answer = _put_down(bench, readings).identify()
    return answer.finding, answer.candidates


def identify_pins(
    pairs: Iterable[str],
    *,
    sensors: Iterable[Sensor] | None = None,
    **settings: Unpack[Settings],
) -> Several:
    """Tell which pins of a body are the module's element, and which the gauge's.

    identify_pins(["1-2=2.31k", "B-D=OL", "1-body=480", "1-minus=480"], at="21.5C")
    """
    bench = _bench("identify_pins", _ohmcurve.OHM_VERB_PINS, settings, compared=_among(sensors))
    answer = _put_down(bench, pairs).pins()
    return answer.finding, answer.readings


def explain(
    sensor: Sensor,
    readings: Iterable[Reading],
    *,
    others: Iterable[Sensor] | None = None,
    **settings: Unpack[Settings],
) -> Several:
    """Say what would explain readings of a sensor, and how large it would be; it may be one
    of the others instead, None: of all that are built in. There is a finding for each
    Explanation; leading is 1 of those that would do.
    """
    borrowed = {"sensor": _needed(sensor), "compared": _among(others)}
    bench = _bench("explain", _ohmcurve.OHM_VERB_EXPLAIN, settings, **borrowed)
    answer = _put_down(bench, readings).explain()
    return answer.finding, answer.explanations


def soak(
    sensor: Sensor,
    reading: Reading,
    *,
    history: History | None = None,
    others: Mapping[str, Shown] | None = None,
    **settings: Unpack[Settings],
) -> Finding:
    """Judge a coolant sensor of a car that stood, by the air.

        soak(sensor, "3.9k", air="9C+-2", after_h=7, others={"intake": "10.5C"})

    history is what the air did, None: it never changed. others are what other sensors of
    the car show.
    """
    borrowed = {"sensor": _needed(sensor), "history": history}
    bench = _bench("soak", _ohmcurve.OHM_VERB_SOAK, settings, **borrowed)
    _put_down(bench, [reading])
    for name, at in (others or {}).items():
        bench.read(f"{Soaked(name)}={noted(name, at, '{!r}C')}")
    return bench.soak().finding


def signal(sensor: Sensor, *readings: Reading, **settings: Unpack[Settings]) -> Finding:
    """Say where the way from the sensor to what the module reports parts.

        signal(sensor, "187", "0.97V,pin", "91C", pull_up="1k")

    Ohms at the sensor's own pins, volts at the module's, degrees it reports: any of them.
    """
    bench = _bench("signal", _ohmcurve.OHM_VERB_SIGNAL, settings, sensor=_needed(sensor))
    return _put_down(bench, readings).signal().finding


def substitute(
    sensor: Sensor, **settings: Unpack[Settings]
) -> tuple[Finding, Finding | None]:
    """Find ordinary resistors in place of the sensor, for a module to see a temperature: the
    single one nearest to it, and the pair that comes nearest, None when there is none.
    """
    bench = _bench("substitute", _ohmcurve.OHM_VERB_SUBSTITUTE, settings, sensor=_needed(sensor))
    single, *pair = bench.substitute().resistors
    return single, pair[0] if pair else None


def loom(
    sensor: Sensor, readings: Iterable[Reading], **settings: Unpack[Settings]
) -> Finding:
    """Tell the resistance of plug and wires from two resistors fitted in the sensor's place.

    loom(sensor, [("179.4", "93C"), ("998", "42C")]), each with what the module reported
    """
    bench = _bench("loom", _ohmcurve.OHM_VERB_LOOM, settings, sensor=_needed(sensor))
    return _put_down(bench, readings).loom().finding


def fanpoint(sensor: Sensor, **settings: Unpack[Settings]) -> Finding:
    """Tell what to expect where the fan starts and stops.

    fanpoint(sensor, fan_c=98, off_c=93, pull_up="1k")
    """
    bench = _bench("fanpoint", _ohmcurve.OHM_VERB_FANPOINT, settings, sensor=_needed(sensor))
    return bench.fanpoint().finding


def isolate(
    circuit: Circuit, record: str | Iterable[str] = "", **settings: Unpack[Settings]
) -> Finding:
    """Tell which part of a circuit is at fault after a record, lines of NAME=OUTCOME, and
    what to test next.
    """
    bench = _bench("isolate", _ohmcurve.OHM_VERB_CIRCUIT, settings, circuit=circuit)
    bench.read_record(record if isinstance(record, str) else "\n".join(record))
    return bench.isolate().finding


def measure(reading: Reading, **settings: Unpack[Settings]) -> Estimate:
    """What a reading says of the resistance at the probes' tips, in ohm.

    measure("2.31k", meter="0.8%+3", leads="0.4")
    """
    bench = _bench("measure", _ohmcurve.OHM_VERB_MEASURE, settings)
    finding = _put_down(bench, [reading]).measure().finding
    if finding.r_ohm is None or finding.u_r_ohm is None:
        raise Error(f"{reading} shows no number: read it again", Status.OUT_OF_RANGE)
    return Estimate(finding.r_ohm, finding.u_r_ohm)
