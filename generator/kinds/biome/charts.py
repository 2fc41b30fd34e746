"""The charts of a biome: one climate diagram for each station that its page shows, and for each that written questions may show."""

from __future__ import annotations

from figures import ClimateDiagram, DataTable

from generator.kind import Subject
from generator.kinds.biome.record import BiomeRecord, Station
from generator.quantities import shown
from generator.quantities.fact import Fact, Facts
from generator.records.fields import Use

READING_COLD = "A bar below the months marks those that average below 0 °C. It says nothing of single nights, which may be colder or warmer."
READING = (
    "Find the months along the bottom axis and the station's name above.",
    "Read the line with dots, labelled temperature, on the left axis: the mean temperature of each month.",
    "Read the plain thick line, labelled precipitation, on the right axis: how much rain and snow falls in each month.",
    "Where precipitation runs below temperature (dotted), plants lack water; where it runs above (hatched), the month is humid.",
)
TROPIC = 23.44
"""Latitude [deg] of the tropics, the tilt of the axis. Source: common practice."""


def charts(subject: Subject[BiomeRecord]) -> tuple[ClimateDiagram, ...]:
    """A climate diagram a station of the page."""
    return _of(subject, "page")


def practice_charts(subject: Subject[BiomeRecord]) -> tuple[ClimateDiagram, ...]:
    """A climate diagram a station that is kept for practice."""
    return _of(subject, "practice")


def _of(subject: Subject[BiomeRecord], use: Use) -> tuple[ClimateDiagram, ...]:
    stations = [station for station in subject.record.stations if station.use == use]
    return tuple(_climate_diagram(subject.name, station, subject.facts) for station in stations)


def _climate_diagram(name: str, station: Station, facts: Facts) -> ClimateDiagram:
    def fact(part: str) -> Fact:
        return facts[f"{station.id}.{part}"]

    temp, precip = fact("monthly_mean_temp"), fact("monthly_precip")
    mean, total = fact("annual_mean_temp"), fact("annual_precip")
    return ClimateDiagram(
        name=f"{name}.climate_diagram.{station.id}",
        title=f"Climate diagram of {station.label}",
        description=_description(station, facts),
        reading=(*READING, READING_COLD) if fact("months_below_freezing").value else READING,
        table=DataTable(
            caption=f"Mean year of {station.label}",
            columns=("Month", "Mean temperature (°C)", "Precipitation (mm)"),
            rows=tuple(zip(shown.MONTHS, temp.shown_members, precip.shown_members, strict=True)),
        ),
        station=station.label,
        place=_place(station, facts),
        southern=has_southern_summer(station),
        monthly_mean_temp_degc=temp.series,
        monthly_precip_mm=precip.series,
        mean_label=mean.shown,
        total_label=total.shown,
    )


def is_southern(station: Station) -> bool:
    """Whether the station lies south of the equator."""
    return station.latitude is not None and station.latitude < 0


def has_southern_summer(station: Station) -> bool:
    """Whether its year is drawn from July, so that its summer stands in the middle: between the tropics there is no summer to centre."""
    return station.latitude is not None and station.latitude < -TROPIC


def _place(station: Station, facts: Facts) -> str:
    parts = []
    if station.latitude is not None:
        degrees = shown.written(station.latitude.text.lstrip("-"))
        parts.append(f"{degrees}° {'S' if is_southern(station) else 'N'}")
    if f"{station.id}.elevation" in facts:
        parts.append(facts[f"{station.id}.elevation"].shown)
    return ", ".join(parts)


def _description(station: Station, facts: Facts) -> str:
    """What the diagram shows, in words, with the numbers that decide."""

    def fact(part: str) -> Fact:
        return facts[f"{station.id}.{part}"]

    def peak(series: str, month: str) -> str:
        values, numbers = fact(series), fact(month).value
        index = int(numbers[0]) - 1 if isinstance(numbers, tuple) else 0
        unit = values.unit.shown if values.unit else ""
        return f"{values.shown_members[index]} {unit} in {fact(month).shown}"

    dry, cold = fact("dry_months"), fact("months_below_freezing")
    months = len(dry.value) if isinstance(dry.value, tuple) else 0
    season = f"By the rule of the diagram {f'{months} months are' if months > 1 else 'one month is' if months else 'no month is'} dry."
    return (
        f"Mean temperature runs from {peak('monthly_mean_temp', 'coldest_month')} to {peak('monthly_mean_temp', 'warmest_month')}, "
        f"{fact('annual_mean_temp').shown} over the year. Precipitation runs from {peak('monthly_precip', 'driest_month')} "
        f"to {peak('monthly_precip', 'wettest_month')}, {fact('annual_precip').shown} in all. {season}"
        + (f" Months averaging below 0 °C: {cold.shown}." if cold.value else "")
    )
