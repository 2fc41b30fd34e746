"""What does not fit on a transect: stations out of order, a crest that is none, air that cannot be; and what one would question."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from generator.diagnostics import Severity, did_you_mean, listed
from generator.kinds.transect.crossing import PART
from generator.kinds.transect.record import RainShadow, TransectRecord
from generator.quantities import shown
from generator.quantities.fact import Facts
from generator.quantities.units import convert, unit
from generator.records.field_path import FieldPath
from generator.records.finding import Finding

FEWEST, MOST = 2, 8
"""Stations of a line: two to compare, and no more than a drawing has room for."""
LOWEST, HIGHEST = -450.0, 8900.0
"""Heights of land on Earth [m], with a little to spare."""
COLDEST, WARMEST = -70.0, 45.0
"""Air near the ground [degC]."""
STEEP = 12.0
"""Lapse rate between neighbours [K/km] beyond which, up or down, a slip is likelier than nature."""
_SPELLED = {"start": "from", "crest": "crest", "end": "to"}
LEAST_CLIMB = 100.0
"""Height [m] below which a lapse rate says more of other differences than of height."""


def findings(record: TransectRecord) -> Iterator[Finding]:
    """Contradictions inside the record."""
    if not FEWEST <= len(record.stations) <= MOST:
        yield Finding(
            path=("stations",), expected=f"{FEWEST} to {MOST} stations", found=str(len(record.stations)),
            mend="add a station, or make two records of a long line",
        )  # fmt: skip
    for s, (before, station) in enumerate(pairwise(record.stations), start=1):
        if station.distance <= before.distance:
            yield Finding(
                path=("stations", s, "distance"), expected=f"more than {shown.written(before.distance.text)}, that of {before.label} before it",
                found=shown.written(station.distance.text), mend="list the stations in their order along the line, distances counted from the first",
            )  # fmt: skip
    for s, station in enumerate(record.stations):
        if station.id == PART:
            yield Finding(path=("stations", s, "id"), expected="another id", found=f'"{PART}"', mend="it is kept for the air that crosses the line")
        yield from _within(("stations", s, "height"), station.height, record.units.height, "m", (LOWEST, HIGHEST), "height")
        yield from _within(("stations", s, "annual_mean_temp"), station.annual_mean_temp, record.units.temperature, "degC", (COLDEST, WARMEST), "temperature")
    if record.rain_shadow:
        yield from _rain_shadow(record, record.rain_shadow)


def _within(path: FieldPath, number: float, scale: str, target: str, ends: tuple[float, float], field: str) -> Iterator[Finding]:
    found, of = convert(float(number), unit(scale), unit(target)), unit(target)
    if not ends[0] <= found <= ends[1]:
        yield Finding(
            path=path, expected=of.after(f"{shown.number(ends[0])} to {shown.number(ends[1])}"), found=of.after(shown.number(found)),
            mend=f"check the digits, and that `units: {field}:` names the unit of the numbers",
        )  # fmt: skip


def _rain_shadow(record: TransectRecord, shadow: RainShadow) -> Iterator[Finding]:
    known = {station.id: (place, station) for place, station in enumerate(record.stations)}
    missing = [field for field in _SPELLED if getattr(shadow, field) not in known]
    for field in missing:
        name = getattr(shadow, field)
        yield Finding(
            path=("rain_shadow", _SPELLED[field]), expected="the id of a station", found=f'"{name}"', mend=did_you_mean(name, known, f"write one of {listed(known)}")
        )  # fmt: skip
    if missing:
        return
    (first, start), (top, crest), (last, end) = (known[getattr(shadow, field)] for field in _SPELLED)
    if not (first < top < last or first > top > last):
        yield Finding(
            path=("rain_shadow", "crest"), expected="a station between `from` and `to`", found=f'"{shadow.crest}"',
            mend="air goes up from the start, over the crest, and down to the end",
        )  # fmt: skip
    for field, foot in (("start", start), ("end", end)):
        if foot.height >= crest.height:
            yield Finding(
                path=("rain_shadow", _SPELLED[field]), expected=f"a station below {crest.label}", found=f"{foot.label}, which is as high or higher",
                mend="name the highest station of the way as the crest",
            )  # fmt: skip
    yield from _air(record, shadow, float(start.height))


def _air(record: TransectRecord, shadow: RainShadow, height: float) -> Iterator[Finding]:
    given = [field for field in ("dew_point", "cloud_base") if getattr(shadow, field) is not None]
    if len(given) != 1:
        yield Finding(
            path=("rain_shadow",), expected="dew_point or cloud_base", found="both" if given else "neither",
            mend="keep the one that was measured" if given else "write dew_point: 8, or cloud_base: 500",
        )  # fmt: skip
    if shadow.dew_point is not None and shadow.dew_point > shadow.temperature:
        yield Finding(
            path=("rain_shadow", "dew_point"), expected=f"at most the temperature, {shown.written(shadow.temperature.text)}",
            found=shown.written(shadow.dew_point.text), mend="the dew point is where cooling air becomes saturated: exchange the two, or correct one",
        )  # fmt: skip
    if shadow.cloud_base is not None and shadow.cloud_base < height:
        yield Finding(
            path=("rain_shadow", "cloud_base"), expected=f"{height:g} or more, the height of the start", found=shown.written(shadow.cloud_base.text),
            mend="give the height above the sea, not above the start",
        )  # fmt: skip
    for field in ("temperature", "dew_point"):
        number = getattr(shadow, field)
        if number is not None:
            yield from _within(("rain_shadow", field), number, record.units.temperature, "degC", (COLDEST, WARMEST), "temperature")
    dry, moist = shadow.dry_lapse_rate, shadow.moist_lapse_rate
    if dry is not None and moist is not None and moist >= dry:
        yield Finding(
            path=("rain_shadow", "moist_lapse_rate"), expected=f"less than the dry one, {dry:g}", found=f"{moist:g}",
            mend="air in cloud cools more slowly, for condensing water warms it",
        )  # fmt: skip


def doubts(record: TransectRecord, facts: Facts) -> Iterator[Finding]:
    """Lapse rates that nature hardly has between neighbours that differ much in height."""
    for s, station in enumerate(record.stations[1:], start=1):
        climb, rate = (facts[f"{station.id}.{name}"] for name in ("climb_from_previous", "lapse_rate_from_previous"))
        if rate.is_number and abs(climb.number) >= LEAST_CLIMB and abs(rate.number) > STEEP:
            yield Finding(
                path=("stations", s, "annual_mean_temp"), expected=f"a lapse rate of at most {STEEP:g} K/km up or down", found=rate.shown,
                severity=Severity.WARNING, rule="steep_lapse_rate", mend="check height and temperature of this station and of the one before it",
            )  # fmt: skip
