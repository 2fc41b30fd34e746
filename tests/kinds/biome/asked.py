"""One station as the question builders get it, of a small record or of the project's own content."""

from __future__ import annotations

from generator.kind import Subject
from generator.kinds.biome.asked_station import AskedStation
from generator.questions.question import ChartReading, Made, NumberEntry, Ordering, SeveralChoice
from tests.kinds.biome.test_facts import biome
from tests.kinds.small_records import demo, library

WARM = [9, 10, 12, 15, 18, 22, 25, 24, 21, 17, 13, 10]
"""Mild winters, hot summers: warmest in July, coldest in January."""
WINTER_RAIN = [88, 72, 58, 38, 20, 6, 1, 2, 18, 55, 80, 95]
STEADY = [26, 26, 26.5, 26.5, 26, 26, 25.5, 25.5, 26, 26, 26, 26]


def asked(of: Subject, place: int = 0) -> AskedStation:
    return AskedStation(of, of.record.stations[place], library().catalogue)


def small(temp: object = WARM, precip: object = WINTER_RAIN, latitude: str = "latitude: 36") -> AskedStation:
    return asked(biome(temp, precip, latitude))


def of_demo(name: str, place: int = 0) -> AskedStation:
    return asked(demo(f"biome/{name}"), place)


def read(item: Made) -> tuple[tuple[str, ...], dict[str, str]]:
    """What is right, and the wrong idea behind each wrong label."""
    assert isinstance(item, ChartReading), item
    return item.right, {label: slip.misconception for slip in item.slips for label in slip.labels}


def right_and_wrong(item: Made) -> tuple[set[str], dict[str, str]]:
    assert isinstance(item, SeveralChoice), item
    return {o.text for o in item.options if o.right}, {o.misconception: o.text for o in item.options if not o.right}


def order(item: Made) -> list[str]:
    assert isinstance(item, Ordering), item
    return [step.text for step in item.steps]


def number(item: Made) -> tuple[str, dict[str, str]]:
    assert isinstance(item, NumberEntry), item
    return item.answer, {slip.misconception: slip.shown for slip in item.slips}
