"""Numbers as people write them: one engine in the browser, one table of spellings, the verdict of each."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from pathlib import Path
from typing import Any

import pytest
import yaml
from playwright.sync_api import Browser, Page

from generator.quantities.units import UNITS, UnitError, convert, unit
from generator.questions.mistake import Within, accepted
from generator.questions.question import Needs, NumberEntry, Slip
from tests.browser.one_question import with_question

pytestmark = pytest.mark.browser
TABLE = yaml.safe_load((Path(__file__).parent / "number_spellings.yaml").read_text("utf-8"))
SAID = {
    "right": "✓ Right. because",
    "wrong": "✗ Not right. another",
    "slip": "✗ Not right. slip",
    "nearly": "◐ Nearly. The number is right, but its unit is missing",
    "unit": "✗ Not right. “",
    "none": "That cannot be read as one number.",
    "range": "That is a range.",
    "empty": "Type a number first.",
    "which": "Do you mean ",
    "no unit": "“",
}


def entry(item: dict[str, Any]) -> NumberEntry:
    within, label = Within(share=item["within"]), item["unit"]
    slips = tuple(
        Slip(accepted=accepted(value, within=within), shown=f"{value}", feedback="slip", misconception="some.slip")
        for value in item["slips"]
    )
    return NumberEntry(
        id="sum", prompt="How much?", needs=Needs.DATA, solution="because", unit=label, answer=f"{item['answer']} {label}",
        accepted=accepted(item["answer"], within=within), right_feedback="because", slips=slips, otherwise="another",
        asks_unit=item.get("asks_unit", False),
    )  # fmt: skip


@pytest.fixture
def blank(browser: Browser) -> Iterator[Page]:
    page = browser.new_page()
    yield page
    page.close()


@pytest.mark.parametrize("part", TABLE, ids=lambda part: f"{part['item']['answer']} {part['item']['unit']}")
def test_each_spelling_gets_its_verdict(blank: Page, part: dict[str, Any]) -> None:
    page = with_question(blank, entry(part["item"]))
    found = []
    for typed, verdict in part["rows"]:
        page.locator("input").fill(typed)
        page.locator("input").press("Enter")
        said = page.get_by_role("status").text_content() or ""
        if not said.startswith(SAID[verdict]):
            found.append((typed, verdict, said))
    assert found == []


def test_the_table_holds_enough_spellings() -> None:
    assert sum(len(part["rows"]) for part in TABLE) >= 120


def test_every_unit_is_sized_as_the_records_size_it(blank: Page) -> None:
    page = with_question(blank, entry(TABLE[0]["item"]))
    pairs = list(product(UNITS, UNITS))
    turned = page.evaluate("pairs => pairs.map(pair => studyNumbers.factor(...pair) ?? null)", [list(pair) for pair in pairs])
    found = [None if one is None else pytest.approx(3 * one["factor"] + one["offset"], rel=1e-9) for one in turned]
    assert [expected_of_three(*pair) for pair in pairs] == found


def expected_of_three(typed: str, wanted: str) -> float | None:
    """Three of one unit in another, as records convert; a number of kelvin that is asked for is a difference."""
    if wanted == "K" and typed in ("degC", "degF"):
        return 3.0 if typed == "degC" else 5 / 3
    try:
        return convert(3.0, unit(typed), unit(wanted))
    except UnitError:
        return None


LABELS = ("kJ/m2/yr", "kg N/ha/yr", "Gt C/yr", "mg/L", "g/m2/yr", "ug C/L", "1/yr", "W/m2", "umol/m2/s", "mm/d", "individuals/m2", "K/km")


def test_a_unit_is_read_as_labelled_as_shown_and_as_spoken(blank: Page) -> None:
    page = with_question(blank, entry(TABLE[0]["item"]))
    spellings = [[text, unit(label).shown] for label in (*UNITS, *LABELS) for text in (label, unit(label).shown, unit(label).spoken)]
    factors = page.evaluate("pairs => pairs.map(pair => studyNumbers.factor(...pair) ?? null)", spellings)
    assert [] == [spelling for spelling, found in zip(spellings, factors, strict=True) if not found or abs(found["factor"] - 1) > 1e-12 or found["offset"]]
