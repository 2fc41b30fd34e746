"""Statements on cycles: whether they hold is worked out, and where ranges leave it open nothing is said."""

from __future__ import annotations

import pytest

from generator.kinds.cycle.statement_questions import StatementQuestions
from generator.questions.claims import Claim
from generator.questions.question import Rejected, SeveralChoice
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


def test_inputs_of_people_are_picked_among_each_kind_of_other_flux() -> None:
    question = made(demo("cycle/wend_hollow_nitrogen"))["human_inputs"]
    assert isinstance(question, SeveralChoice)
    assert {"Exhaust", "Fertiliser"} == {option.text for option in question.options if option.right}
    assert ["cyc.cause-overlooked", "cyc.inner-input", "cyc.output-as-input"] == sorted(o.misconception for o in question.options if not o.right)


@pytest.mark.parametrize("fluxes", ["a source pool 9, cause: people\nb pool sink 3", "a source pool 9, cause: people\nb source pool 1, cause: both\nc source pool 2, cause: people\nd pool sink 1\ne source pool 3"])
def test_single_or_mixed_inputs_are_not_picked_from(fluxes: str) -> None:
    assert isinstance(StatementQuestions(cycle(fluxes), library().catalogue).human_inputs(), Rejected)
