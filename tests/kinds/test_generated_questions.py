"""Every question that kinds make, of the demo course and of two hundred drawn records: fair options, and a key that follows from what is shown."""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Iterator
from functools import cache
from itertools import combinations
from typing import Any

import pint
import pytest

from generator.kinds import all_kinds
from generator.quantities.fact import Fact
from generator.quantities.units import SUBSTANCES
from generator.quantities.working import Substitution
from generator.questions.item_writing import FEWEST_OPTIONS, MOST_OPTIONS, doubts_about
from generator.questions.question import (
    ChartReading,
    Choice,
    Matching,
    NumberEntry,
    Ordering,
    Question,
    Rejected,
    SeveralChoice,
)
from tests.kinds.generated_records import WANTED, generated_subjects
from tests.kinds.small_records import library

UNITS = pint.UnitRegistry()
"""Units as the library itself defines them, not as this project does."""
UNITS.define("individuals = []")
FUNCTIONS = {"sum": sum, "mean": lambda series: sum(series) / len(series), "max": max, "min": min, "ln": math.log, "exp": math.exp, "sqrt": lambda x: x**0.5, "abs": abs}
TOLERANCE = 0.02
"""Of a result from numbers as they are shown, rounded to three figures; as the page itself accepts."""


@cache
def made() -> tuple[tuple[str, Question], ...]:
    """All questions, each with where it comes from; those of the demo first."""
    of_demo = [(record, item) for record, items in library().questions.items() for item in items]
    of_drawn = [
        (subject.name, item)
        for subject in generated_subjects()
        for item in all_kinds()[subject.kind].questions(subject, library().catalogue)
        if not isinstance(item, Rejected)
    ]
    return (*of_demo, *of_drawn)


def of_type(*types: type[Question]) -> Iterator[tuple[str, Any]]:
    return ((f"{record}/{item.id}", item) for record, item in made() if isinstance(item, types))


def test_two_hundred_records_of_all_kinds_that_compute_were_drawn() -> None:
    subjects = generated_subjects()
    assert WANTED == len(subjects)
    assert {name for name, kind in all_kinds().items() if kind.computes} == {subject.kind for subject in subjects}


def test_choices_have_the_declared_number_of_keys_and_distinct_options() -> None:
    for name, item in of_type(Choice, SeveralChoice):
        texts = [" ".join(option.text.casefold().split()).rstrip(".") for option in item.options]
        assert len(set(texts)) == len(texts), name
        right = sum(option.right for option in item.options)
        assert right == 1 if isinstance(item, Choice) else 2 <= right < len(texts), name
        assert FEWEST_OPTIONS <= len(texts) <= MOST_OPTIONS + 2 * isinstance(item, SeveralChoice), name


def test_every_answer_that_can_be_given_has_its_feedback() -> None:
    for name, item in of_type(Choice, SeveralChoice):
        assert all(len(option.feedback.split()) >= 2 for option in item.options), name
    for name, item in of_type(NumberEntry):
        assert item.right_feedback and item.otherwise and all(slip.feedback for slip in item.slips), name
    for name, item in of_type(ChartReading):
        assert item.solution and item.otherwise and all(slip.feedback for slip in item.slips), name
    for name, item in of_type(Ordering):
        assert item.starts_with and all(step.leads_on for step in item.steps[:-1]), name
    for name, item in of_type(Matching):
        assert all(pair.because for pair in item.pairs), name


def test_nine_distractors_of_ten_and_more_carry_an_entry_of_the_catalogue() -> None:
    ids = [option.misconception for _, item in of_type(Choice, SeveralChoice) for option in item.options if not option.right]
    ids += [slip.misconception for _, item in of_type(NumberEntry, ChartReading) for slip in item.slips]
    assert len(ids) > 1000
    assert sum(one in library().catalogue for one in ids) >= 0.9 * len(ids)


def test_accepted_ranges_of_a_number_do_not_meet() -> None:
    for name, item in of_type(NumberEntry):
        ranges = [item.accepted, *(slip.accepted for slip in item.slips)]
        assert not any(one.meets(other) for one, other in combinations(ranges, 2)), name


def test_no_prompt_and_no_hint_gives_the_key_of_a_number_away() -> None:
    for name, item in of_type(NumberEntry):
        if item.fact and isinstance(item.fact.working, Substitution):
            inputs = {fact.shown_number for _, fact in item.fact.working.given if not fact.is_series}
            key = item.answer.split(" ")[0]
            if key not in inputs and len(key.replace(".", "")) >= 3:
                assert not re.search(rf"(?<![\d.]){re.escape(key)}(?![\d.])", f"{item.prompt} {' '.join(item.hints)}"), name


def test_key_follows_from_the_numbers_that_are_shown_by_another_library() -> None:
    """The expression is evaluated by Python, with units by pint's own definitions, from each input as the page shows it."""
    reproduced = 0
    for name, item in of_type(NumberEntry):
        if item.fact is None or not isinstance(item.fact.working, Substitution) or item.fact.unit is None:
            continue
        result, near = evaluated(item.fact, item.fact.working), rounding(item.fact, item.fact.working)
        assert result == pytest.approx(item.fact.number, rel=TOLERANCE, abs=near), name
        within = max(near, abs(result) * TOLERANCE)
        assert item.accepted.low - within <= result <= item.accepted.high + within, name
        reproduced += 1
    assert reproduced > 300


def rounding(fact: Fact, working: Substitution) -> float:
    """How much of a difference may be due to inputs that are shown with three figures: half of the last of them, of the largest."""
    same = [given for _, given in working.given if given.unit == fact.unit]
    return 0.005 * max((abs(value) for given in same for value in (given.series if given.is_series else (given.number,))), default=0.0)


def evaluated(fact: Fact, working: Substitution) -> float:
    """In the unit of the fact."""
    given = {name: as_shown(one, working.bare) for name, one in working.given}
    result = eval(working.expression.source.replace("^", "**"), {"__builtins__": {}}, {**FUNCTIONS, **given})
    if isinstance(result, pint.Quantity):
        return float(result.to(pint_unit(fact.unit.label)).magnitude)
    return float(result)


def as_shown(fact: Fact, plain: bool) -> Any:
    texts = fact.shown_members if fact.is_series else (fact.shown_number,)
    numbers = [float(text.replace("\u202f", "").replace("\u2212", "-").replace("\u00a0", "")) for text in texts]
    values = numbers if plain or fact.unit is None else [UNITS.Quantity(number, pint_unit(fact.unit.label)) for number in numbers]
    return values if fact.is_series else values[0]


def pint_unit(label: str) -> str:
    """A label without the substance that it counts, in the spelling of the library.

    A factor is the one unit over the other; a temperature is counted in steps, so that it can be added up and taken off.
    """
    if label == "degC":
        return "delta_degC"
    if " in " in label:
        made, of = label.split(" in ")
        return f"({pint_unit(made)}) / ({pint_unit(of)})"
    words = [word for word in re.sub(r"\b(?:" + "|".join(SUBSTANCES) + r")\b", "", label).split() if word]
    joined = re.sub(r"(?<=[A-Za-z])(-?\d)", r"**\1", "*".join(words).replace("*/", "/").replace("/*", "/"))
    return re.sub(r"\byr\b", "year", re.sub(r"\bd\b", "day", joined)) or "dimensionless"


def test_right_options_stand_at_places_that_look_drawn() -> None:
    """No place holds more than its share beyond three standard deviations of chance, over all choices in words with as many options."""
    for size in range(FEWEST_OPTIONS, MOST_OPTIONS + 1):
        placed = Counter(
            next(n for n, option in enumerate(item.options) if option.right)
            for record, items in library().questions.items() for item in items
            if isinstance(item, Choice) and len(item.options) == size and not item.options[0].text[:1].isdigit()
        )  # fmt: skip
        total = sum(placed.values())
        if total >= 8:
            spread = math.sqrt(total * (1 / size) * (1 - 1 / size))
            assert all(abs(placed[place] - total / size) <= 3 * spread for place in range(size)), (size, placed)


def test_whatever_is_longer_than_the_rule_allows_is_told() -> None:
    """Of drawn records: a right option that stands out by its length leaves a doubt behind, never silence."""
    for name, item in of_type(Choice):
        right = next(len(option.text) for option in item.options if option.right)
        wrong = [len(option.text) for option in item.options if not option.right]
        if right >= 1.3 * sum(wrong) / len(wrong) and right >= max(wrong) + 12:
            assert "long_option" in {doubt.rule for doubt in doubts_about([item], [])}, name
