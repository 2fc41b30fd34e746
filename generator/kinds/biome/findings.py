"""What does not add up in a biome, and what a careful reader would question."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.diagnostics import Severity
from generator.kinds.biome.record import BiomeRecord, Station
from generator.kinds.biome.scheme_facts import class_rule, range_rules, usual_region
from generator.quantities import shown
from generator.quantities.fact import Facts
from generator.quantities.units import Unit, convert, unit
from generator.records.field_path import FieldPath
from generator.records.finding import Finding

MEAN_TEMPS, PRECIPITATION = (-80.0, 50.0), (0.0, 10000.0)
"""Limits of our own: monthly values beyond them [degC, mm] do not occur in a mean year on Earth, a slip of unit or digits does."""


def findings(record: BiomeRecord) -> Iterator[Finding]:
    """Contradictions inside the record."""
    temperature, precipitation = unit(record.units.temperature), unit(record.units.precipitation)
    for s, station in enumerate(record.stations):
        series = ("stations", s, "monthly_mean_temp"), ("stations", s, "monthly_precip")
        yield from _months(series[0], station.monthly_mean_temp, temperature, unit("degC"), MEAN_TEMPS)
        yield from _months(series[1], station.monthly_precip, precipitation, unit("mm"), PRECIPITATION)
    if all(station.use == "paper" for station in record.stations):
        yield Finding(
            path=("stations",), expected="at least one station with `use: page` or `use: practice`", found="only `use: paper`",
            mend="give the students' page a station of its own; data for a class test never reach the site",
        )  # fmt: skip


def _months(
    path: FieldPath, values: Sequence[float], source: Unit, target: Unit, ends: tuple[float, float]
) -> Iterator[Finding]:
    """The months whose value, turned into the target's unit, lies beyond the ends."""
    low, high = (shown.written(f"{end:g}") for end in ends)
    for month, value in enumerate(values):
        reading = convert(float(value), source, target)
        if not ends[0] <= reading <= ends[1]:
            yield Finding(
                path=(*path, month), expected=f"a monthly value from {low} to {high} {target.shown}",
                found=f"{shown.number(reading)} {target.shown}", note=shown.MONTHS[month],
                mend="check the digits, and that `units:` names the unit of the numbers",
            )  # fmt: skip


ACCEPT = "check the numbers, or accept the warning with a reason under `accepted_warnings:`"


def doubts(record: BiomeRecord, facts: Facts) -> Iterator[Finding]:
    """Stations that differ from what the record itself says, or cites, of its biome."""
    for s, station in enumerate(record.stations):
        outside = list(_outside_range(record, station, facts, s))
        yield from outside or _in_another_region(record, station, facts, s)
        yield from _outside_class(record, station, facts, s)


def _outside_range(record: BiomeRecord, station: Station, facts: Facts, s: int) -> Iterator[Finding]:
    mean, total = facts[f"{station.id}.annual_mean_temp"], facts[f"{station.id}.annual_precip"]
    for usual in record.usual_range:
        for rule, field in zip(range_rules(usual, mean, total), ("monthly_mean_temp", "monthly_precip"), strict=True):
            if not rule.holds:
                expected = rule.asks.removeprefix("Is ").removesuffix("?").replace(" from ", " to be from ", 1)
                yield Finding(
                    path=("stations", s, field), expected=f"{expected}, as {usual.source} gives for this biome",
                    found=rule.numbers, severity=Severity.WARNING, rule="outside_usual_range", mend=ACCEPT,
                )  # fmt: skip


def _in_another_region(record: BiomeRecord, station: Station, facts: Facts, s: int) -> Iterator[Finding]:
    """A region of the map that is not the record's; lying in none is no contradiction, for many real places do."""
    found = facts[f"{station.id}.region"].shown
    if own := usual_region(record, found):
        yield Finding(
            path=("stations", s), expected=f"the region of the temperature-rainfall map that the record names, {own}",
            found=f"{found}, {_climate(station, facts)}", severity=Severity.WARNING, rule="outside_region", mend=ACCEPT,
        )  # fmt: skip


def _outside_class(record: BiomeRecord, station: Station, facts: Facts, s: int) -> Iterator[Finding]:
    found = facts[f"{station.id}.climate_class"]
    if any(class_rule(usual, found).holds for usual in record.usual_class):
        return
    for usual in record.usual_class:
        yield Finding(
            path=("stations", s), expected=f"a climate class that {usual.source} gives for this biome: {', '.join(usual.classes)}",
            found=f"{found.shown}, {_climate(station, facts)}", severity=Severity.WARNING, rule="outside_usual_class", mend=ACCEPT,
        )  # fmt: skip


def _climate(station: Station, facts: Facts) -> str:
    """The numbers that classes are made from, in short."""

    def value(of: str, month: str) -> str:
        months = facts[f"{station.id}.{month}"].value
        members, unit = facts[f"{station.id}.{of}"].shown_members, facts[f"{station.id}.{of}"].unit
        text = members[int(months[0]) - 1] if isinstance(months, tuple) else ""
        return unit.after(text) if unit else text

    coldest, warmest = (value("monthly_mean_temp", month) for month in ("coldest_month", "warmest_month"))
    return f"with {facts[f'{station.id}.annual_precip'].shown} and months of {coldest} to {warmest}"
