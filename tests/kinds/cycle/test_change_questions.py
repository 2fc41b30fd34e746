"""What stocks do once something changes: directions and where they settle, by sums done over here."""

from __future__ import annotations

import re

import pytest

from generator.kind import Subject
from generator.kinds.cycle.change_questions import ChangeQuestions
from generator.questions.question import Choice, Made, Matching, NumberEntry, Rejected
from tests.kinds.cycle.test_chart_questions import boxes
from tests.kinds.cycle.test_facts import cycle
from tests.kinds.small_records import demo, library

RANGES = "a source pool {low: 20, high: 50}\nb pool sink {low: 10, high: 60}"


def asked(of: Subject, sort: str) -> Made:
    return getattr(ChangeQuestions(of, library().catalogue), sort)()


@pytest.mark.parametrize("record", ["water", "wend_hollow_nitrogen", "global_nitrogen"])
def test_stocks_do_what_their_sums_say_without_the_flux(record: str) -> None:
    """Source: the ends of each range added up here."""
    of = demo(f"cycle/{record}").record
    question = asked(demo(f"cycle/{record}"), "if_stopped")
    assert isinstance(question, Matching)
    (stopped,) = [flux for flux in of.fluxes if f"“{flux.label}”" in question.prompt]
    names = {reservoir.label: reservoir.id for reservoir in of.reservoirs}
    for pair in question.pairs:
        into, out = (
            [flux.rate for flux in of.fluxes if flux is not stopped and getattr(flux, side) == names[pair.text]] for side in ("end", "start")
        )  # fmt: skip
        least, most = (sum(getattr(rate, end) if getattr(rate, end) is not None else rate.value for rate in into) for end in ("low", "high"))
        lost, lost_most = (sum(getattr(rate, end) if getattr(rate, end) is not None else rate.value for rate in out) for end in ("low", "high"))
        assert pair.partner == ("Its stock grows" if least > lost_most else "Its stock shrinks" if most < lost else "Its stock stays as it is")
        assert pair.partner != "Its stock stays as it is" or least == most == lost == lost_most
    assert {stopped.start, stopped.end} & {names[pair.text] for pair in question.pairs}


def test_flux_that_a_scenario_of_the_page_changes_is_not_stopped_once_more() -> None:
    """Without fossil burning fuel would stay, air shrink and land grow; but scenarios of the page tell what less of it does."""
    assert isinstance(asked(demo("cycle/global_carbon"), "if_stopped"), Rejected)


def test_directions_that_are_not_all_there_are_not_asked_for() -> None:
    assert isinstance(asked(boxes(), "if_stopped"), Rejected)


def test_overlapping_ranges_leave_both_directions_open() -> None:
    """Source: the numbers of the prompt: most in beats least out, least in falls short of most out; the middle and the most point two ways."""
    question = asked(cycle(RANGES), "range_balance")
    assert isinstance(question, Choice) and question.supposed
    least_in, most_in, least_out, most_out = (float(number) for number in re.findall(r"[\d.]+", question.prompt.partition(". ")[2])[:4])
    assert most_in > least_out and least_in < most_out
    assert (least_in + most_in) > (least_out + most_out) and most_out > most_in
    assert ["It cannot be told, for the two ranges overlap"] == [option.text for option in question.options if option.right]


@pytest.mark.parametrize("fluxes", ["a source pool 30\nb pool sink {low: 10, high: 60}", "a source pool {low: 70, high: 90}\nb pool sink {low: 10, high: 60}", "a source pool {low: 2, high: 3}"])
def test_ranges_that_tell_the_direction_are_not_asked_about(fluxes: str) -> None:
    assert isinstance(asked(cycle(fluxes), "range_balance"), Rejected)


def test_stock_settles_where_its_outflow_has_grown_as_much_as_its_inflow() -> None:
    """Source: arithmetic: 400 loses 40, so 500 loses the 50 that come in; 410 after a year, 320 upside down."""
    question = asked(cycle("a source pool 40\nb pool sink 40", "stock: 400"), "new_steady")
    assert isinstance(question, NumberEntry)
    assert ("500 Gt C", {"400 Gt C", "320 Gt C"}) == (question.answer, {slip.shown for slip in question.slips})


@pytest.mark.parametrize(("stock", "flow", "more"), [("400", "40", ", constant: true"), ("unknown", "40", ""), ("400", "0", ""), ("4", "40", ""), ("400000", "40", "")])
def test_stock_that_does_not_follow_its_inflow_within_reach_settles_nowhere(stock: str, flow: str, more: str) -> None:
    assert isinstance(asked(cycle(f"a source pool {flow}\nb pool sink {flow}{more}", f"stock: {stock}"), "new_steady"), Rejected)
