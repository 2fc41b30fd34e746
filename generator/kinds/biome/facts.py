"""Every number of a biome, station by station."""

from __future__ import annotations

from collections.abc import Iterator
from types import MappingProxyType

from generator.kinds.biome import climate_facts, scheme_facts, water_facts
from generator.kinds.biome.record import BiomeRecord, Station
from generator.quantities import shown
from generator.quantities.fact import Fact, Facts

METHODS = MappingProxyType(
    {method.id: method for part in (climate_facts, water_facts, scheme_facts) for method in part.METHODS}
)


def facts(record: BiomeRecord) -> Facts:
    """All facts of all stations, in the order in which a page tells them."""
    return Facts(fact for station in record.stations for fact in _of_station(record, station))


def _of_station(record: BiomeRecord, station: Station) -> Iterator[Fact]:
    figures = record.figures or shown.FIGURES
    temp, precip, *place = climate_facts.stated_facts(record, station)
    mean, total, spread = climate_facts.annual_facts(station, temp, precip, figures)
    letters = scheme_facts.climate_class_fact(station, temp, precip)
    yield from (temp, precip, *place, mean, total, spread, letters)
    yield from climate_facts.month_lists(station, temp, precip)
    yield climate_facts.seasonality(station, precip, total, figures)

    hours, *polar = climate_facts.light(station, figures)
    pet, year = water_facts.demand(station, temp, hours, figures)
    index = water_facts.aridity_index(station, total, year, figures)
    store = water_facts.soil_store(record, station)
    yield from (hours, *polar, pet, year, index, store)
    yield from water_facts.balance(station, temp, precip, pet, store, figures)

    yield from scheme_facts.production(station, mean, total, figures)
    yield scheme_facts.aridity_class_fact(station, temp, index)
    yield from scheme_facts.life_zone_facts(station, temp, total, figures)
    yield scheme_facts.region(station, mean, total)
    yield scheme_facts.in_usual_range(record, station, mean, total)
    yield scheme_facts.in_usual_class(record, station, letters)
