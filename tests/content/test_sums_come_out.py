"""Every sum of the demo course, done over with the numbers that stand on its page: the result must count as right."""

from __future__ import annotations

import pytest

from generator.quantities.fact import Fact
from generator.quantities.units import Unit, number_in
from generator.quantities.working import Substitution
from generator.questions.question import Choice, NumberEntry, Question
from tests.kinds.small_records import library

PLAIN = str.maketrans({"\u202f": "", "\u2212": "-"}) | str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")


def as_read(text: str) -> float:
    """What somebody with a calculator types for a number as it is printed."""
    return float(text.translate(PLAIN).replace(" × 10", "e"))


def as_seen(fact: Fact) -> object:
    """A quantity as the page gives it."""
    if fact.unit is None:
        return fact.value
    if fact.is_series:
        return fact.unit.quantity([as_read(member) for member in fact.shown_members])
    return fact.unit.quantity(as_read(fact.shown_number))


def done_over(right: Fact) -> float:
    """The result of the calculation with the numbers as shown."""
    working = right.working
    assert isinstance(working, Substitution) and right.unit is not None
    seen = {name: as_seen(fact) for name, fact in working.given if isinstance(fact, Fact)}
    if working.bare:
        seen = {name: getattr(value, "magnitude", value) for name, value in seen.items()}
    return number_in(Unit("", ()) if working.bare else right.unit, working.expression.evaluate(seen))


def sums(*types: type[Question]) -> list[tuple[str, Question]]:
    """The questions of these types whose answer is worked out."""
    return [
        (f"{record}/{item.id}", item) for record, items in library().questions.items() for item in items
        if isinstance(item, types) and item.fact is not None and item.fact.is_number and isinstance(item.fact.working, Substitution)
    ]  # fmt: skip


def test_every_number_to_type_comes_out_of_the_numbers_as_shown() -> None:
    wrong = {}
    for name, item in sums(NumberEntry):
        assert isinstance(item, NumberEntry) and item.fact is not None and isinstance(item.fact.working, Substitution)
        result = done_over(item.fact)
        if not item.accepted.low - 1e-9 * abs(result) <= result <= item.accepted.high + 1e-9 * abs(result):
            wrong[name] = f"{item.fact.working.put_in} gives {result:g}, accepted: {item.accepted}"
    assert {} == wrong


def test_every_choice_of_numbers_offers_what_the_numbers_as_shown_give() -> None:
    wrong = {}
    for name, item in sums(Choice):
        assert isinstance(item, Choice) and item.fact is not None and isinstance(item.fact.working, Substitution)
        answer, result = as_read(item.fact.shown_number), done_over(item.fact)
        if result != pytest.approx(answer, rel=0.02):
            wrong[name] = f"{item.fact.working.put_in} gives {result:g}, offered: {answer:g}"
    assert {} == wrong


def test_working_of_every_answer_starts_from_what_its_question_gives() -> None:
    """Otherwise the sum that is asked for is not the one that is shown and tried here; authors' own questions state their answers."""
    wrong = {}
    for record, items in library().questions.items():
        for item in items:
            if not isinstance(item, NumberEntry) or not item.given or item.fact is None:
                continue
            told = {fact.id for fact in item.given.values()}
            working = item.fact.working
            used = [fact for _, fact in working.given if isinstance(fact, Fact)] if isinstance(working, Substitution) else [item.fact]
            if strange := [fact.id for fact in used if fact.id not in told and fact.shown_exactly not in item.prompt and fact.value != 1]:
                wrong[f"{record}/{item.id}"] = strange
    assert {} == wrong


def test_there_are_many_sums_of_every_kind_with_numbers() -> None:
    kinds = {name.partition("/")[0] for name, _ in sums(NumberEntry)}
    assert {"biome", "aquatic_biome", "cycle", "food_web", "productivity", "pyramid", "transect"} == kinds
    assert len(sums(NumberEntry)) >= 60
