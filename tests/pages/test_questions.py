"""What stands in a question's block beside its prompt: what the answer rests on, and how a number is written."""

from __future__ import annotations

import pytest
from bs4 import BeautifulSoup

from generator.pages.questions import question
from generator.questions.making import Draft, ordering
from generator.questions.question import Interval, Needs, NumberEntry, Question

STEPS = ["It rains.", "Water runs.", "Water sinks.", "It is gone."]


def said(item: Question, part: str, *, has_data: bool = True) -> str:
    """The text of one part of the block."""
    return BeautifulSoup(question(item, "biome/somewhere", 1, has_data=has_data), "html.parser").select_one(f"p.{part}").get_text()


def steps(**given: object) -> Question:
    made = ordering(Draft(id="q", prompt="In which order?", solution="So.", **given), STEPS, starts_with="first", leads_on=lambda *_: "next", salt="s")
    assert isinstance(made, Question)
    return made


def typed(unit: str, *, asks_unit: bool) -> Question:
    return NumberEntry(
        id="q", prompt="How much?", needs=Needs.DATA, solution="So.", unit=unit, answer=f"3 {unit}", accepted=Interval(2.5, 3.5),
        right_feedback="Yes.", slips=(), otherwise="Again.", asks_unit=asks_unit,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("needs", "with_data", "without"),
    [
        (Needs.DATA, "Answer from the data on this page.", "Answer from what this page says."),
        (Needs.KNOWLEDGE, "Answer from what you have learned.", "Answer from what you have learned."),
        (Needs.BOTH, "Use the data on this page and what you have learned.", "Use what this page says and what you have learned."),
    ],
    ids=lambda value: value.name if isinstance(value, Needs) else "",
)
def test_nobody_is_sent_to_data_that_a_page_does_not_have(needs: Needs, with_data: str, without: str) -> None:
    item = steps(needs=needs)
    assert (with_data, without) == (said(item, "needs"), said(item, "needs", has_data=False))


def test_a_question_that_tells_all_itself_speaks_of_no_numbers_where_it_may_have_none() -> None:
    """An order of steps has none, and the 1 % of a photic depth is a number of the page too."""
    assert "Work from what the question tells, not from the page." == said(steps(needs=Needs.DATA, supposed=True), "needs")
    assert "Use what the question tells, and the map that it names." == said(steps(needs=Needs.MAP), "needs")


def test_where_the_unit_is_asked_for_the_example_has_another_one() -> None:
    shown = {unit: said(typed(unit, asks_unit=True), "forms").replace("\u00a0", " ") for unit in ("mm", "g", "kg s⁻¹")}
    assert "Write it like 1234.5 kg, 1234,5 kg or 1.2e3 kg." == shown["mm"]
    assert ("1234.5 s,", "1234.5 mol,") == (shown["g"][14:23], shown["kg s⁻¹"][14:25])
    assert "Write it like 1234.5, 1234,5 or 1.2e3." == said(typed("mm", asks_unit=False), "forms")
