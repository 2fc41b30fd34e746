"""Statements on cycles: whether they hold is worked out, and where ranges leave it open nothing is said."""

from __future__ import annotations

import pytest

from generator.kinds.cycle.statement_questions import StatementQuestions
from generator.questions.claims import Claim
from generator.questions.question import SeveralChoice
from tests.kinds.cycle.test_chart_questions import RANGE, boxes
from tests.kinds.cycle.test_facts import cycle
from tests.kinds.small_records import demo, library, made


def claims(of: object, sort: str) -> list[Claim]:
    return list(getattr(StatementQuestions(of, library().catalogue), sort)())


@pytest.mark.parametrize(
    ("fluxes", "said"),
    [
        ("a source pool 9\nb pool sink 4", ["“Pool” gains more than it loses"]),
        ("a source pool 4\nb pool sink 9", ["“Pool” loses more than it gains"]),
        ("a source pool 4\nb pool sink 4", []),
        (f"a source pool 4\nb pool sink {RANGE}", []),
        (f"a source pool {RANGE}\nb pool sink 1", ["“Pool” gains more than it loses"]),
        ("a source pool 4", []),
        ("a source pool 4\nb pool sink unknown", []),
    ],
)
def test_budgets_are_stated_where_the_ranges_leave_one_sign(fluxes: str, said: list[str]) -> None:
    assert said == [claim.holds for claim in claims(cycle(fluxes), "_budgets")]


def test_budget_that_another_prompt_tells_is_no_statement() -> None:
    """What the air gains and loses stands in two prompts, and that of the sea in one; that of the land stands in none."""
    asked = made(demo("cycle/global_carbon"))
    told = {box for box in ("Atmosphere", "Ocean", "Plants and soils") if any(f"“{box}” gains" in q.prompt for q in asked.values() if hasattr(q, "prompt"))}
    said = [option.text for option in asked["statements"].options if "than it" in option.text]
    assert {"Atmosphere", "Ocean"} == told
    assert ["“Plants and soils” gains more than it loses"] == said
    assert [True] == [option.right for option in asked["statements"].options if option.text in said]


def test_smaller_reservoir_that_passes_more_on_is_pointed_out() -> None:
    """Source: arithmetic on the record: 11 leave the air, 8 the soil, 1 the sea; they hold 10, 50 and 1000."""
    assert ["“Air” than “Sea”", "“Air” than “Soil”", "“Soil” than “Sea”"] == sorted(c.holds.removeprefix("In a year more leaves ") for c in claims(boxes(), "_outflows"))
    assert all(claim.misconception == "cyc.stock-is-flow" for claim in claims(boxes(), "_outflows"))


@pytest.mark.parametrize(("people", "said"), [("9", "People bring more"), ("2", "Nature brings more"), ("3", ""), (RANGE, "")])
def test_inputs_of_people_and_nature_are_compared(people: str, said: str) -> None:
    found = claims(cycle(f"a source pool {people}, cause: people\nb source pool 3"), "_inputs")
    assert [said] * bool(said) == [" ".join(claim.holds.split()[:3]) for claim in found]


def test_arrow_that_has_one_leading_back_is_not_turned_round() -> None:
    """Air and soil are linked both ways."""
    assert ["An arrow leads from “Air” to “Sea”", "An arrow leads from “Sea” to “X”"] == [claim.holds for claim in claims(boxes(), "_arrows")]


def test_boxes_without_a_straight_arrow_are_linked_by_way_of_another() -> None:
    assert [("No single arrow leads from “Soil” to “Sea”", "No arrow leads straight there; a way of two arrows goes through “Air”.")] == [(c.holds, c.because) for c in claims(boxes(), "_detours")]


@pytest.mark.parametrize(("b", "said"), [(4, ["More"]), (5, []), (6, []), (9, ["More"]), (RANGE, []), (1, ["More"])])
def test_share_of_the_largest_flux_is_compared_with_a_half(b: object, said: list[str]) -> None:
    """Source: arithmetic: 6 of 10 and of 7, 9 of 15; 6 of 11 is close to a half, 6 of 12 is one."""
    assert said == [claim.holds.split()[0] for claim in claims(boxes(b=b), "_shares") if "“Air”" in claim.holds.split("leaves")[1]]


@pytest.mark.parametrize("record", ["global_carbon", "global_nitrogen", "phosphorus", "water", "wend_hollow_nitrogen"])
def test_every_demo_cycle_has_statements_to_check(record: str) -> None:
    assert isinstance(made(demo(f"cycle/{record}"))["statements"], SeveralChoice)


@pytest.mark.parametrize(("stock", "said"), [("10", True), ("{low: 4, high: 11}", False), ("9", True), ("unknown", False)])
def test_reservoir_that_passes_on_more_than_it_holds_is_stated_where_that_is_sure(stock: str, said: bool) -> None:
    """Source: arithmetic: 12.5 is more than 1.2 times 10, and less than 1.2 times 11."""
    assert said == bool(claims(cycle("a source pool 5\nb pool sink 12.5", f"stock: {stock}"), "_passing"))


@pytest.mark.parametrize("record", ["global_carbon", "global_nitrogen", "phosphorus", "water", "wend_hollow_nitrogen"])
def test_what_holds_takes_more_than_a_look_at_one_arrow(record: str) -> None:
    right = [option.text for option in made(demo(f"cycle/{record}"))["statements"].options if option.right]
    assert not [text for text in right if "arrow leads" in text]
