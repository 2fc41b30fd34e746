"""Properties and edges of generator/science/budgets.py; outside values are in test_checks.py."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.budgets import closes, combined_uncertainty

rates = st.floats(0, 1e6)
uncertainties = st.lists(st.floats(0, 1e6), max_size=8)


@given(st.lists(rates, max_size=6), st.lists(rates, max_size=6))
def test_balance_turns_round_when_the_flows_do(inflows: list[float], outflows: list[float]) -> None:
    """Inflow less outflow changes sign when the two are exchanged, and vanishes when they are equal."""
    inflow, outflow = sum(inflows), sum(outflows)
    balance = METHODS["balance"].compute(inflow=inflow, outflow=outflow)
    assert balance == -METHODS["balance"].compute(inflow=outflow, outflow=inflow)
    assert 0.0 == METHODS["balance"].compute(inflow=inflow, outflow=inflow)
    assert inflow == pytest.approx(outflow + balance, rel=1e-9, abs=1e-6)


@given(st.floats(0.001, 1e6), st.floats(0.001, 1e6), st.floats(0.001, 1000))
def test_turnover_time_does_not_depend_on_the_unit_of_matter(stock: float, outflow: float, factor: float) -> None:
    """Counting in other units of mass leaves the time alone."""
    turnover = METHODS["turnover_time"].compute
    scaled = turnover(stock=stock * factor, outflow=outflow * factor)
    assert turnover(stock=stock, outflow=outflow) == pytest.approx(scaled)


def test_turnover_without_outflow_is_undefined() -> None:
    """Zero outflow raises, so that no infinite time is ever shown."""
    with pytest.raises(ZeroDivisionError):
        METHODS["turnover_time"].compute(stock=5.0, outflow=0.0)


@given(uncertainties)
def test_combined_uncertainty_lies_between_the_largest_and_the_sum(values: list[float]) -> None:
    """Independent errors partly cancel, but never below the largest of them."""
    combined = combined_uncertainty(values)
    assert max(values, default=0.0) <= combined * (1 + 1e-12)
    assert combined <= sum(values) * (1 + 1e-12)


@given(st.floats(-1e6, 1e6), uncertainties)
def test_budget_that_balances_exactly_closes(balance: float, values: list[float]) -> None:
    """A change equal to the balance closes whatever the uncertainties."""
    assert closes(balance, balance, values) is True


@given(st.floats(-1e3, 1e3), st.floats(-1e3, 1e3), uncertainties, st.floats(0, 1e6))
def test_more_uncertainty_never_opens_a_closed_budget(
    balance: float, change: float, values: list[float], more: float
) -> None:
    """What closes still closes when one more value is uncertain."""
    assert closes(balance, change, [*values, more]) or not closes(balance, change, values)


@pytest.mark.parametrize(("change", "verdict"), [(3.0, True), (3.0001, False), (-3.0, True), (-3.0001, False)])
def test_budget_closes_up_to_its_uncertainty(change: float, verdict: bool) -> None:
    """The limit itself counts as closed, on both sides."""
    assert verdict is closes(0.0, change, [3.0])


def test_rounding_of_the_sums_does_not_open_a_budget() -> None:
    """0.1 + 0.2 closes against 0.3 without any uncertainty."""
    assert closes(0.1 + 0.2, 0.3, []) is True


def test_no_verdict_without_a_stated_change() -> None:
    """The verdict is undefined, not false, where nobody states a change."""
    assert closes(0.0, None, []) is None


@given(st.floats(-1e3, 1e3), st.floats(-1e3, 1e3), uncertainties)
def test_residual_is_never_a_check(balance: float, change: float, values: list[float]) -> None:
    """What was found as the rest closes any budget, so that there is no verdict on it."""
    assert closes(balance, change, values, residual=True) is None


@pytest.mark.parametrize("bad", [-1.0, math.nan, math.inf])
def test_impossible_uncertainty_is_refused(bad: float) -> None:
    """An uncertainty is a finite size; the wrong one is counted."""
    with pytest.raises(ValueError, match="uncertainties: expected finite values from 0, found .* as number 2"):
        closes(0.0, None, [1.0, bad])


@pytest.mark.parametrize(("balance", "change", "name"), [(math.nan, 0.0, "balance"), (0.0, math.inf, "change")])
def test_endless_flow_is_refused(balance: float, change: float, name: str) -> None:
    """Balance and change are finite numbers."""
    with pytest.raises(ValueError, match=f"{name}: expected a finite number, found"):
        closes(balance, change, [])


@given(rates, rates)
def test_shares_of_people_and_nature_make_a_whole(people: float, nature: float) -> None:
    if people + nature > 0.0:
        shares = (METHODS["human_share"].compute(caused_by_people=part, total=people + nature) for part in (people, nature))
        assert 1.0 == pytest.approx(sum(shares))


@pytest.mark.parametrize(("people", "total", "share"), [(0.0, 5.0, 0.0), (5.0, 5.0, 1.0)])
def test_flow_of_nature_alone_or_of_people_alone(people: float, total: float, share: float) -> None:
    assert share == METHODS["human_share"].compute(caused_by_people=people, total=total)


def test_share_of_a_flow_that_moves_nothing_is_undefined() -> None:
    with pytest.raises(ZeroDivisionError):
        METHODS["human_share"].compute(caused_by_people=0.0, total=0.0)


def test_sum_of_nothing_is_certain_and_one_value_keeps_its_uncertainty() -> None:
    assert (0.0, 7.0) == (combined_uncertainty([]), combined_uncertainty([7.0]))
