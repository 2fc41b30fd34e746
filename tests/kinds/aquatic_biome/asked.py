"""Stations of a water as the question builders get them."""

from __future__ import annotations

from generator.kind import Subject
from generator.kinds.aquatic_biome.asked_water import AskedWater
from generator.questions.question import ChartReading, Made, NumberEntry, Ordering
from tests.kinds.aquatic_biome.test_facts import water
from tests.kinds.small_records import demo, library


def asked(of: Subject) -> list[AskedWater]:
    return [AskedWater(of, station, library().catalogue) for station in of.record.stations]


def small(*stations: str) -> list[AskedWater]:
    """Small waters of depth 10, salinity 0.2 and 20 degrees, unless they state their own."""
    return asked(water(*stations))


def of_demo(name: str) -> list[AskedWater]:
    """Those that the page of a water shows."""
    return [one for one in asked(demo(f"aquatic_biome/{name}")) if one.station.use == "page"]


def number(item: Made) -> tuple[str, dict[str, str]]:
    assert isinstance(item, NumberEntry), item
    return item.answer, {slip.shown: slip.misconception for slip in item.slips}


def read(item: Made) -> tuple[tuple[str, ...], dict[str, str]]:
    assert isinstance(item, ChartReading), item
    return item.right, {label: slip.misconception for slip in item.slips for label in slip.labels}


def order(item: Made) -> list[str]:
    assert isinstance(item, Ordering), item
    return [step.text for step in item.steps]
