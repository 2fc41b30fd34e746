"""Every number of a transect: its stations one by one, how temperature falls between them, and air that crosses the crest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from types import MappingProxyType

from generator.kinds.transect.crossing import Crossing
from generator.kinds.transect.record import Station, TransectRecord
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, Facts, computed, in_unit, stated
from generator.quantities.units import unit
from generator.records.fields import stated_amount
from generator.science import lapse_rates

METHODS = MappingProxyType(
    {
        method.id: method
        for method in (
            lapse_rates.ENVIRONMENTAL_LAPSE_RATE, lapse_rates.DRY_ADIABATIC_LAPSE_RATE, lapse_rates.MOIST_ADIABATIC_LAPSE_RATE,
            lapse_rates.STANDARD_PRESSURE, lapse_rates.CLOUD_BASE, lapse_rates.TEMPERATURE_AT_HEIGHT, lapse_rates.FOEHN_WARMING,
        )
    }
)  # fmt: skip
M, KM, DEGC, MM, K_PER_KM = unit("m"), unit("km"), unit("degC"), unit("mm"), unit("K/km")
FIRST = "not defined: no station stands before it"
LEVEL = "not defined: both stations lie at the same height"


def facts(record: TransectRecord) -> Facts:
    """All facts, along the line and then of the air that crosses it."""
    return Facts(_Transect(record).facts())


class _Transect:
    """The record with its units, and the stated facts of each station."""

    def __init__(self, record: TransectRecord) -> None:
        self.record = record
        self.figures = record.figures or shown.FIGURES
        self.of = {station.id: self.stated_facts(station) for station in record.stations}

    def facts(self) -> Iterator[Fact]:
        before: Station | None = None
        for station in self.record.stations:
            yield from self.of[station.id].values()
            yield from self.from_previous(station, before)
            before = station
        yield self.lapse_rate()
        if self.record.rain_shadow:
            yield from Crossing(self.record, self.record.rain_shadow, self.of, self.figures).facts()

    def stated_facts(self, station: Station) -> dict[str, Fact]:
        units = self.record.units
        rows = (
            ("distance", "Distance along the line", units.distance, KM), ("height", "Height above the sea", units.height, M),
            ("annual_mean_temp", "Annual mean temperature", units.temperature, DEGC),
            ("annual_precip", "Annual precipitation", units.precipitation, MM),
        )  # fmt: skip
        return {
            name: in_unit(stated(f"{station.id}.{name}", title, stated_amount(number), unit(source), figures=self.figures), target)
            for name, title, source, target in rows
            if (number := getattr(station, name)) is not None
        }

    def from_previous(self, station: Station, before: Station | None) -> Iterator[Fact]:
        """How far up from the station before, and how much colder for each kilometre of that."""
        climb, rate = f"{station.id}.climb_from_previous", f"{station.id}.lapse_rate_from_previous"
        names = ("Climb from the station before", "Lapse rate from the station before")
        if before is None:
            method = lapse_rates.ENVIRONMENTAL_LAPSE_RATE.id
            yield Fact(id=climb, name=names[0], value=None, unit=M, undefined_because=FIRST)
            yield Fact(id=rate, name=names[1], value=None, unit=K_PER_KM, method=method, undefined_because=FIRST)
            return
        given = {"height": self.of[station.id]["height"], "height_before": self.of[before.id]["height"]}
        yield computed(climb, names[0], Expression("height - height_before"), given, M, figures=self.figures)
        yield self.between(rate, names[1], before, station)

    def between(self, fact_id: str, name: str, before: Station, station: Station) -> Fact:
        method, here, there = lapse_rates.ENVIRONMENTAL_LAPSE_RATE, self.of[station.id], self.of[before.id]
        given = {
            "temperature_before": there["annual_mean_temp"], "temperature": here["annual_mean_temp"],
            "height": here["height"], "height_before": there["height"],
        }  # fmt: skip
        found = computed(fact_id, name, method.expression, given, K_PER_KM, method=method.id, figures=self.figures)
        return found if found.is_number else replace(found, undefined_because=LEVEL)

    def lapse_rate(self) -> Fact:
        """Between the lowest and the highest station; of several, the first along the line."""
        by_height = sorted(self.record.stations, key=lambda station: self.of[station.id]["height"].number)
        low, high = by_height[0], by_height[-1]
        return self.between("lapse_rate", f"Lapse rate from {low.label} up to {high.label}", low, high)
