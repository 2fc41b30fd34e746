"""Sums asked with supposed numbers: prompt, key, slips and solution speak of the same numbers, and none of them is the record's."""

from __future__ import annotations

import re
from dataclasses import replace
from decimal import Decimal

import pytest

from generator.questions.making import Draft, choice_of_numbers, number_entry
from generator.questions.mistake import Mistake
from generator.questions.question import Choice, NumberEntry, Reckoned
from generator.questions.supposed import SAID, supposed
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import unit
from tests.kinds.small_records import library
from tests.questions.test_fresh import CATALOGUE, OUTFLOW, STOCK

GIVEN = {"stock": STOCK, "outflow": OUTFLOW}
SLIPS = (
    Mistake("a.b", "outflow / stock", "turning it round"), Mistake("a.b", "stock * outflow", "multiplying"), Mistake("a.b", "stock", "giving the stock"),
)  # fmt: skip
UNITS = {Decimal(number) for number in ("60", "100", "1000", "10000", "86400", "365.25", "24", "1")}
"""Seconds, metres, percent, days: what a solution may name without the prompt doing so."""
ASKED = [
    pytest.param(item, id=f"{record}/{item.id}")
    for record, items in library().questions.items() for item in items
    if isinstance(item, Reckoned) and item.fact is not None and item.supposed and item.prompt.startswith(SAID)
]  # fmt: skip


def time() -> Fact:
    return computed("soil.turnover_time", "Turnover time", Expression("stock / outflow"), GIVEN, unit("yr"))


def draft(prompt: str = "") -> Draft:
    told = f"It holds {STOCK.shown_exactly}, and {OUTFLOW.shown_exactly} leave it. How long?"
    return Draft(id="turnover", prompt=prompt or told, solution=f"{STOCK.shown_exactly} ÷ {OUTFLOW.shown_exactly} = {time().shown_exactly}.")


def typed(prompt: str = "", kept: tuple[str, ...] = ()) -> NumberEntry:
    made = number_entry(draft(prompt), time(), GIVEN, SLIPS, CATALOGUE, otherwise="Divide.", kept=kept)
    assert isinstance(made, NumberEntry)
    return made


def picked() -> Choice:
    made = choice_of_numbers(draft(), time(), GIVEN, SLIPS, CATALOGUE)
    assert isinstance(made, Choice)
    return made


def again(item: NumberEntry | Choice) -> NumberEntry | Choice:
    made = supposed(item, CATALOGUE, "salt")
    assert isinstance(made, NumberEntry | Choice)
    return made


def numbers(text: str) -> list[Decimal]:
    """The plain numbers of a text, without the exponents of units."""
    return [Decimal(found.replace("\u202f", "")) for found in re.findall(r"\d[\d\u202f]*(?:\.\d+)?", text)]


def test_the_key_is_worked_out_from_the_numbers_in_the_prompt() -> None:
    made = again(typed())
    assert isinstance(made, NumberEntry)
    stock, outflow = numbers(made.prompt)
    assert made.supposed
    assert (stock, outflow) != (Decimal(4800), Decimal(94))
    assert made.accepted.low <= float(stock / outflow) <= made.accepted.high
    assert [float(outflow / stock), float(stock * outflow), float(stock)] == [
        pytest.approx((slip.accepted.low + slip.accepted.high) / 2, rel=0.01) for slip in made.slips
    ]  # fmt: skip


def test_solution_and_feedback_speak_of_the_supposed_numbers() -> None:
    made = again(typed())
    assert isinstance(made, NumberEntry)
    assert [*numbers(made.prompt), *numbers(made.answer)] == numbers(made.solution)
    assert made.solution == made.right_feedback


def test_a_choice_has_the_options_of_the_supposed_numbers() -> None:
    made = again(picked())
    assert isinstance(made, Choice)
    stock, outflow = (float(number) for number in numbers(made.prompt))
    (key,) = [float(numbers(option.text)[0]) for option in made.options if option.right]
    assert key == pytest.approx(stock / outflow, rel=0.01)
    assert len(picked().options) == len(made.options)
    assert made.solution == next(option.feedback for option in made.options if option.right)


def test_what_is_kept_stays_and_need_not_be_told() -> None:
    made = again(typed(f"It holds {STOCK.shown_exactly}. How long?", kept=(OUTFLOW.id,)))
    assert made.supposed
    assert OUTFLOW == made.given["outflow"]


@pytest.mark.parametrize(
    "prompt",
    [
        "Read both numbers off the chart. How long?",
        f"It holds {STOCK.shown_exactly}. How long?",
        f"It holds {STOCK.shown_number} to 5000 kg, and {OUTFLOW.shown_exactly} leave it. How long?",
        f"It holds {STOCK.shown_exactly}, and {OUTFLOW.shown_exactly} leave it; 94 more are lost. How long?",
    ],
    ids=["none is told", "one is not told", "told without its unit", "told twice"],
)
def test_a_sum_whose_numbers_are_not_each_told_once_stays(prompt: str) -> None:
    item = typed(prompt)
    assert item is supposed(item, CATALOGUE, "salt")


def test_two_inputs_that_look_alike_are_not_taken_for_each_other() -> None:
    other = stated("other.stock", "Other stock", Amount(value=4800.0, written="4800"), unit("kg N/ha"))
    both = {"stock": STOCK, "other": other}
    total = computed("total", "Total", Expression("stock + other"), both, unit("kg N/ha"))
    item = number_entry(Draft(id="t", prompt=f"{STOCK.shown_exactly} and {STOCK.shown_exactly}?", solution="."), total, both, SLIPS[:0], CATALOGUE, otherwise=".")
    assert item is supposed(item, CATALOGUE, "salt")


def test_what_supposes_other_numbers_already_stays() -> None:
    item = replace(typed(), supposed=True)
    assert item is supposed(item, CATALOGUE, "salt")


def test_it_is_the_same_each_time() -> None:
    assert again(typed()).prompt == again(typed()).prompt


def test_many_sums_of_the_small_records_are_supposed() -> None:
    assert len(ASKED) > 20


@pytest.mark.parametrize("item", ASKED)
def test_no_number_of_the_record_is_left_in_a_supposed_sum(item: NumberEntry | Choice) -> None:
    """The key follows from the working that is shown, and the working's own inputs stand in the prompt."""
    assert item.fact is not None
    assert item.fact.working is not None
    drawn = [fact for _, fact in item.fact.working.given if isinstance(fact, Fact) and fact.id not in item.kept]
    assert drawn
    assert [] == [fact.shown_exactly for fact in drawn if fact.shown_exactly not in item.prompt]


@pytest.mark.parametrize("item", ASKED)
def test_no_solution_keeps_a_number_that_followed_from_the_record(item: NumberEntry | Choice) -> None:
    """Each number of the solution is in the prompt, is the answer, follows from the drawn inputs, or is a factor between units."""
    assert item.fact is not None
    known = {*numbers(item.prompt), *numbers(item.fact.shown_exactly), *UNITS}
    known |= {number for fact in item.given.values() if fact.is_number for number in numbers(fact.shown_exactly)}
    assert [] == [number for number in numbers(item.solution) if number not in known]


@pytest.mark.parametrize("item", ASKED)
def test_no_result_is_a_bare_power_of_ten_that_could_be_guessed(item: NumberEntry | Choice) -> None:
    assert item.fact
    assert item.fact.shown_number.strip("0.\u202f") != "1"
