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
    """What the air gains and loses stands in a prompt; that of sea and land stands in none."""
    asked = made(demo("cycle/global_carbon"))
    told = {box for box in ("The atmosphere", "The ocean", "“Plants and soils”") if any(f"{box} gains" in getattr(q, "prompt", "") for q in asked.values())}
    said = [option.text for option in asked["statements"].options if "than it" in option.text]
    assert {"The atmosphere"} == told
    assert said and not [text for text in said if text.startswith("The atmosphere")]


def test_outflows_that_a_reading_compares_are_no_statement() -> None:
    """Which box gives off most is asked of the carbon cycle, and its answer prints the outflows; of water it is not."""
    asked, other = made(demo("cycle/global_carbon")), made(demo("cycle/water"))
    assert "largest_outflow" in asked and not [option.text for option in asked["statements"].options if "in a year than leaves" in option.text]
    assert "largest_outflow" not in other and [option.text for option in other["statements"].options if "in a year than leaves" in option.text]


def test_share_of_a_half_is_answered_with_its_sum() -> None:
    """Source: arithmetic on the record: 70 of 112 is 62.5 %."""
    (said,) = [claim for claim in claims(demo("cycle/wend_hollow_nitrogen"), "_shares") if "leaves “Ammonium in soil”" in claim.holds]
    assert said.because.endswith("of 112 kg N ha⁻¹ yr⁻¹: 62.5 %.") and "compare with 50 %" in said.instead


def test_smaller_reservoir_that_passes_more_on_is_pointed_out() -> None:
    """Source: arithmetic on the record: 11 leave the air, 8 the soil, 1 the sea; they hold 10, 50 and 1000."""
    assert ["the air the sea", "the air the soil", "the soil the sea"] == sorted(c.holds.removeprefix("More carbon leaves ").replace("in a year than leaves ", "") for c in claims(boxes(), "_outflows"))
    assert all(claim.misconception == "cyc.stock-is-flow" for claim in claims(boxes(), "_outflows"))


@pytest.mark.parametrize(("people", "said"), [("9", "People bring more"), ("2", "Nature brings more"), ("3", ""), (RANGE, "")])
def test_inputs_of_people_and_nature_are_compared(people: str, said: str) -> None:
    found = claims(cycle(f"a source pool {people}, cause: people\nb source pool 3"), "_inputs")
    assert [said] * bool(said) == [" ".join(claim.holds.split()[:3]) for claim in found]


def test_arrow_that_has_one_leading_back_is_not_turned_round() -> None:
    """Air and soil are linked both ways."""
    assert ["An arrow leads from the air to the sea", "An arrow leads from the sea to “X”"] == [claim.holds for claim in claims(boxes(), "_arrows")]


def test_boxes_without_a_straight_arrow_are_linked_by_way_of_another() -> None:
    assert [("No arrow leads straight from the soil to the sea", "There is no such arrow; a way of two arrows goes through the air.")] == [(c.holds, c.because) for c in claims(boxes(), "_detours")]


@pytest.mark.parametrize(("b", "said"), [(4, ["More"]), (5, []), (6, []), (9, ["More"]), (RANGE, []), ("unknown", []), (1, ["More"])])
def test_share_of_the_largest_flux_is_compared_with_a_half(b: object, said: list[str]) -> None:
    """Source: arithmetic: 6 of 10 and of 7, 9 of 15; 6 of 11 is close to a half, 6 of 12 is one."""
    assert said == [claim.holds.split()[0] for claim in claims(boxes(b=b), "_shares") if "the air" in claim.holds.split("leaves")[1].split("goes")[0]]


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
