"""Questions on transects: which are asked of which line, and what is left out where a record says little."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.questions.item_writing import flaws
from generator.questions.question import ChartReading, Choice, NumberEntry, SeveralChoice
from tests.kinds.small_records import demo, made, rejected
from tests.kinds.transect.test_facts import RIDGE, transect

LINES = ["climb_to_high_saddle", "coastal_range"]


def test_without_cloud_only_the_reason_is_asked_for() -> None:
    assert {"lapse_rate", "why_dry"} == set(made(transect(*RIDGE, air="temperature: 20, cloud_base: 4000")))


def test_line_without_air_asks_more_of_its_stations() -> None:
    assert {
        "lapse_rate", "whole_line", "halfway", "freezing_height", "pressed_air", "steepest_ground", "largest_drop", "profile_shows", "belts_match",
    } == set(made(demo("transect/climb_to_high_saddle")))  # fmt: skip


@pytest.mark.parametrize("record", LINES)
def test_every_line_is_asked_by_five_types_and_mostly_from_its_data(record: str) -> None:
    questions = list(made(demo(f"transect/{record}")).values())
    assert {ChartReading, NumberEntry, SeveralChoice, Choice} < {type(question) for question in questions}
    assert 8 <= sum(question.needs != "knowledge" for question in questions) <= len(questions) <= 12
    assert {} == rejected(demo(f"transect/{record}"))


@pytest.mark.parametrize("record", LINES)
def test_no_prompt_tells_the_answer_to_another_question(record: str) -> None:
    questions = list(made(demo(f"transect/{record}")).values())
    answers = {question.id: question.answer for question in questions if isinstance(question, NumberEntry)}
    assert [] == [(name, other.id) for name, answer in answers.items() for other in questions if other.id != name and answer in other.prompt]


@pytest.mark.parametrize("record", LINES)
def test_hints_hold_for_fresh_numbers_too(record: str) -> None:
    """No number that is given in the sum stands in a hint."""
    for question in made(demo(f"transect/{record}")).values():
        if isinstance(question, NumberEntry):
            given = [fact.shown_exactly for fact in question.given.values() if fact.number]
            assert [] == [hint for hint in question.hints for told in given if told in hint], question.id


@pytest.mark.parametrize("stations", [((0, 300, 12), (5, 300, 11.5)), ((0, 300, 12), (5, 400, 11.5))])
def test_hardly_any_climb_gives_no_lapse_rate_to_ask_for(stations: tuple[tuple[float, float, float], ...]) -> None:
    assert not {"lapse_rate", "whole_line", "halfway", "freezing_height"} & set(made(transect(*stations)))


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 80), st.integers(0, 4500), st.integers(-5, 27)), min_size=2, max_size=7))
def test_questions_on_any_line_are_fair(steps: list[tuple[int, int, int]]) -> None:
    far, line = 0, []
    for step, height, temp in steps:
        far += step
        line.append((far - steps[0][0], height, temp))
    for question in made(transect(*line)).values():
        assert [] == list(flaws(question))
        if isinstance(question, NumberEntry):
            ranges = [question.accepted, *(slip.accepted for slip in question.slips)]
            assert not any(a.meets(b) for n, a in enumerate(ranges) for b in ranges[:n]), question.id
