"""Questions on what a stock does: it follows the difference of inflow and outflow, and wrong answers know why they are wrong."""

from __future__ import annotations

import pytest

from generator.questions.question import Choice, NumberEntry
from tests.kinds.cycle.test_facts import cycle
from tests.kinds.small_records import demo, library, made


def test_stock_goes_on_growing_while_its_inflow_falls() -> None:
    """Source: arithmetic on the record; half-way between 9 and 4 is 6.5."""
    question = made(cycle("a source pool 9\nb pool sink 4"))["falling_inflow"]
    assert isinstance(question, Choice)
    assert "falls to 6.5 Gt C yr⁻¹" in question.prompt
    right = [option.text for option in question.options if option.right]
    assert ["It goes on growing, but more slowly"] == right
    assert {"cyc.stock-mirrors-flow", "cyc.steady-flows", "cyc.stock-needed"} == {o.misconception for o in question.options if not o.right}


def test_steady_flows_are_not_taken_for_a_steady_stock() -> None:
    """Source: arithmetic on the record; ten years of 9 - 4."""
    question = made(cycle("a source pool 9\nb pool sink 4"))["after_years"]
    assert isinstance(question, NumberEntry)
    slips = {slip.misconception: slip.shown.split(" ")[0] for slip in question.slips}
    assert {"cyc.steady-flows": "0", "cyc.one-year": "5.0", "carb.no-removal": "90.0", "nit.budget-add": "130"} == slips
    assert question.accepted.low <= 50.0 <= question.accepted.high


def test_stock_that_people_feed_is_asked_about_first() -> None:
    assert "The atmosphere gains" in made(demo("cycle/global_carbon"))["after_years"].prompt


@pytest.mark.parametrize("fluxes", ["a source pool 4\nb pool sink 4", "a source pool 3\nb pool sink 4", "a source pool {low: 5, high: 9}\nb pool sink 4"])
def test_stock_that_is_not_known_to_grow_is_not_asked_about(fluxes: str) -> None:
    assert {"falling_inflow", "after_years"}.isdisjoint(made(cycle(fluxes)))


def test_stock_that_shrinks_is_asked_for_the_share_of_a_year() -> None:
    """Source: arithmetic on the record: 5 of 200 a year; 9 of 200, 13 of 200, and a hundredth."""
    question = made(cycle("a source pool 4\nb pool sink 9", "stock: 200"))["yearly_share"]
    assert isinstance(question, NumberEntry)
    assert ("2.5", ["4.5", "6.5", "0.025"]) == (question.answer.split(" ")[0], [slip.shown.split(" ")[0] for slip in question.slips])
    assert "yearly_share" not in made(cycle("a source pool 9\nb pool sink 4"))


def test_page_asks_for_the_shortest_time_with_numbers_of_its_own() -> None:
    """The page tells the turnover time of its own ranges."""
    for record in ("phosphorus", "global_nitrogen"):
        (question,) = [one for one in library().questions[f"cycle/{record}"] if one.id == "shortest_time"]
        assert question.supposed


def test_flows_that_look_alike_when_rounded_are_not_asked_about() -> None:
    assert "falling_inflow" not in made(cycle("a source pool 1000.2\nb pool sink 1000.1", "stock: 10"))


def test_shortest_time_takes_the_least_stock_and_the_most_outflow() -> None:
    """Source: arithmetic on the record: 2600/200 = 13, and 2600/60, 3000/200, 3000/60, 200/2600."""
    question = made(demo("cycle/phosphorus"))["shortest_time"]
    assert isinstance(question, NumberEntry)
    assert ("13.0 yr", ["43.3 yr", "15.0 yr", "50.0 yr", "0.0769 yr"]) == (question.answer, [slip.shown for slip in question.slips])


@pytest.mark.parametrize("stock", ["10", "{low: 0, high: 9}", "unknown"])
def test_shortest_time_needs_two_ranges(stock: str) -> None:
    assert "shortest_time" not in made(cycle("a source pool 4\nb pool sink {low: 2, high: 5}", f"stock: {stock}"))
