"""A line as the question builders get it."""

from __future__ import annotations

from generator.kinds.transect.asked_line import AskedLine
from generator.questions.question import ChartReading, Made, NumberEntry, Ordering
from tests.kinds.small_records import demo, library
from tests.kinds.transect.test_facts import Station, transect


def small(*stations: Station, air: str = "") -> AskedLine:
    """Stations `s0`, `s1`, ... as (distance, height, mean temperature), with 1000, 900, 800 ... mm of rain."""
    return AskedLine(transect(*stations, air=air), library().catalogue)


def of_demo(name: str) -> AskedLine:
    return AskedLine(demo(f"transect/{name}"), library().catalogue)


def number(item: Made) -> tuple[str, dict[str, str]]:
    assert isinstance(item, NumberEntry), item
    return item.answer, {slip.shown.split(" ")[0]: slip.misconception for slip in item.slips}


def read(item: Made) -> tuple[tuple[str, ...], dict[str, str]]:
    assert isinstance(item, ChartReading), item
    return item.right, {label: slip.misconception for slip in item.slips for label in slip.labels}


def order(item: Made) -> list[str]:
    assert isinstance(item, Ordering), item
    return [step.text for step in item.steps]
