"""What does not add up in a biome, and what a careful reader would question."""

from __future__ import annotations

from collections.abc import Iterator

from generator.diagnostics import Severity
from generator.kinds.biome.facts import range_rules
from generator.kinds.biome.record import BiomeRecord
from generator.quantities import shown
from generator.quantities.fact import Facts
from generator.quantities.units import convert, unit
from generator.records.finding import Finding

COLDEST_MEAN, WARMEST_MEAN = -80.0, 50.0
"""Monthly means beyond these [degC] do not occur on Earth's surface; a slip of unit or digits does."""


def findings(record: BiomeRecord) -> Iterator[Finding]:
    """Contradictions inside the record."""
    source = unit(record.units.temperature)
    for s, station in enumerate(record.stations):
        for m, month in enumerate(station.monthly_mean_temp):
            reading = convert(float(month), source, unit("degC"))
            if not COLDEST_MEAN <= reading <= WARMEST_MEAN:
                yield Finding(
                    path=("stations", s, "monthly_mean_temp", m),
                    expected=f"a monthly mean from {shown.number(COLDEST_MEAN, 2)} to {shown.number(WARMEST_MEAN, 2)} °C",
                    found=f"{shown.number(reading)} °C",
                    mend="check the digits, and that `units: temperature:` names the unit of the numbers",
                )
    if all(station.use == "paper" for station in record.stations):
        yield Finding(
            path=("stations",), expected="at least one station with `use: page` or `use: practice`", found="only `use: paper`",
            mend="give the students' page a station of its own; data for a class test never reach the site",
        )  # fmt: skip


def doubts(record: BiomeRecord, facts: Facts) -> Iterator[Finding]:
    """Stations outside the ranges that the record itself cites."""
    for s, station in enumerate(record.stations):
        mean, total = facts[f"{station.id}.annual_mean_temp"], facts[f"{station.id}.annual_precip"]
        for usual in record.usual_range:
            for rule, field in zip(range_rules(usual, mean, total), ("monthly_mean_temp", "monthly_precip"), strict=True):
                if not rule.holds:
                    expected = rule.asks.removeprefix("Is ").removesuffix("?").replace(" from ", " to be from ", 1)
                    yield Finding(
                        path=("stations", s, field), expected=f"{expected}, as {usual.source} gives for this biome",
                        found=rule.numbers, severity=Severity.WARNING, rule="outside_usual_range",
                        mend="check the numbers, or accept the warning with a reason under `accepted_warnings:`",
                    )  # fmt: skip
