"""What does not add up in an aquatic biome, and what a careful reader would question."""

from __future__ import annotations

from collections.abc import Iterator

from generator.diagnostics import Severity
from generator.kinds.aquatic_biome.record import AquaticBiomeRecord, Light, Station
from generator.quantities import shown
from generator.quantities.fact import Facts
from generator.quantities.units import convert, unit
from generator.records.field_path import FieldPath
from generator.records.finding import Finding

COLDEST, WARMEST = -3.0, 100.0
"""Water beyond these [degC] is ice or steam; a slip of unit or digits gives it."""
MOST_OXYGEN = 150.0
"""Share of the saturation [%] that algae on a bright day hardly exceed."""


def findings(record: AquaticBiomeRecord) -> Iterator[Finding]:
    """Contradictions inside the record."""
    for s, station in enumerate(record.stations):
        yield from _temperatures(record, ("stations", s), station)
        if station.light is not None:
            yield from _light(("stations", s, "light"), station, station.light)
        if station.sample_depth is not None and station.sample_depth > station.depth:
            yield Finding(
                path=("stations", s, "sample_depth"), expected=f"at most the depth of the water, {shown.written(station.depth.text)}",
                found=shown.written(station.sample_depth.text), mend="correct one of the two depths",
            )  # fmt: skip
    if all(station.use == "paper" for station in record.stations):
        yield Finding(
            path=("stations",), expected="at least one station with `use: page` or `use: practice`", found="only `use: paper`",
            mend="give the students' page a station of its own; data for a class test never reach the site",
        )  # fmt: skip


def _temperatures(record: AquaticBiomeRecord, path: FieldPath, station: Station) -> Iterator[Finding]:
    scale, year = unit(record.units.temperature), station.yearly_temperature
    fields = [("temperature", station.temperature)]
    if year is not None and year.low is not None and year.high is not None:
        fields += [("yearly_temperature", year.low), ("yearly_temperature", year.high)]
        if not year.low <= station.temperature <= year.high:
            ends = f"{shown.written(year.low.text)} to {shown.written(year.high.text)}"
            yield Finding(
                path=(*path, "temperature"), expected=f"a temperature of the year, {ends}",
                found=shown.written(station.temperature.text), mend="correct it, or the year's coldest and warmest",
            )  # fmt: skip
    for field, number in fields:
        reading = convert(float(number), scale, unit("degC"))
        if not COLDEST <= reading <= WARMEST:
            yield Finding(
                path=(*path, field), expected=f"liquid water, {shown.number(COLDEST, 1)} to {shown.number(WARMEST)} °C",
                found=f"{shown.number(reading)} °C", mend="check the digits, and that `units: temperature:` names the unit of the numbers",
            )  # fmt: skip


def _light(path: FieldPath, station: Station, light: Light) -> Iterator[Finding]:
    given = [name for name in ("extinction", "secchi_depth") if getattr(light, name) is not None]
    if len(given) != 1:
        yield Finding(
            path=path, expected="extinction or secchi_depth", found="both" if given else "neither",
            mend="keep the measured extinction" if given else "write {secchi_depth: 4.5}, or leave `light:` out",
        )  # fmt: skip
    elif light.secchi_depth is not None and light.secchi_depth >= station.depth:
        yield Finding(
            path=(*path, "secchi_depth"), expected=f"less than the depth of the water, {shown.written(station.depth.text)}",
            found=shown.written(light.secchi_depth.text), mend="a disk that is seen on the bottom gives no Secchi depth: state the extinction",
        )  # fmt: skip


def doubts(record: AquaticBiomeRecord, facts: Facts) -> Iterator[Finding]:
    """Waters outside the ranges that the record cites, and more oxygen than water is likely to hold."""
    for s, station in enumerate(record.stations):
        extinction, share = (facts.get(f"{station.id}.{name}") for name in ("extinction", "oxygen_saturation_percent"))
        for usual in record.usual_range:
            low, high = usual.extinction
            if extinction is not None and extinction.is_number and not low <= extinction.number <= high:
                yield Finding(
                    path=("stations", s, "light"), found=extinction.shown, severity=Severity.WARNING, rule="outside_usual_range",
                    expected=f"an extinction from {low:g} to {high:g} m⁻¹, as {usual.source} gives for such waters",
                    mend="check the numbers, or accept the warning with a reason under `accepted_warnings:`",
                )  # fmt: skip
        if share is not None and share.is_number and share.number > MOST_OXYGEN:
            yield Finding(
                path=("stations", s, "dissolved_oxygen"), found=share.shown, severity=Severity.WARNING, rule="much_oxygen",
                expected=f"at most {MOST_OXYGEN:g} % of the saturation", mend="check the number and the temperature; or accept the warning",
            )  # fmt: skip
