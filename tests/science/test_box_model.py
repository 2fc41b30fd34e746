"""Properties and edges of generator/science/box_model.py, beside scipy; outside values are in test_checks.py."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.linalg import expm, null_space

from generator.science.box_model import adjustment_time, steady_state, stocks_after

Model = tuple[list[list[float]], list[float], list[float]]
rate = st.one_of(st.just(0.0), st.floats(0.001, 20.0))
stock = st.floats(0.0, 5000.0)


def matrix(flows: list[list[float]], losses: list[float]) -> list[list[float]]:
    """Rates of flows from column to row, and of losses to outside."""
    count = len(losses)
    between = [[0.0 if row == column else flows[row][column] for column in range(count)] for row in range(count)]
    for column in range(count):
        between[column][column] = -losses[column] - math.fsum(between[row][column] for row in range(count) if row != column)
    return between


@st.composite
def models(draw: st.DrawFn, losses: st.SearchStrategy[float] = rate, inputs: st.SearchStrategy[float] = stock) -> Model:
    """Rates, inputs and stocks of one to four reservoirs."""
    count = draw(st.integers(1, 4))
    flows = draw(st.lists(st.lists(rate, min_size=count, max_size=count), min_size=count, max_size=count))
    lost, given_, start = (draw(st.lists(of, min_size=count, max_size=count)) for of in (losses, inputs, stock))
    return matrix(flows, lost), given_, start


open_models = models(losses=st.floats(0.01, 20.0))
closed_models = models(losses=st.just(0.0), inputs=st.just(0.0))
times = st.floats(0.0, 200.0)


def by_scipy(model: Model, time: float) -> np.ndarray:
    """The matrix exponential of rates and inputs together, by another program."""
    rates, inputs, start = model
    together = np.zeros((len(start) + 1, len(start) + 1))
    together[:-1, :-1], together[:-1, -1] = rates, inputs
    return (expm(together * time) @ [*start, 1.0])[:-1]


@settings(max_examples=60, deadline=None)
@given(models(), times)
def test_response_is_that_of_scipy(model: Model, time: float) -> None:
    assert by_scipy(model, time) == pytest.approx(np.array(stocks_after(*model, time)), rel=1e-7, abs=1e-6)


@settings(max_examples=10, deadline=None)
@given(models(), st.floats(0.1, 5.0))
def test_response_is_that_of_small_steps(model: Model, time: float) -> None:
    """A solver that follows the rates step by step comes to the same stocks."""
    rates, inputs, start = model
    run = solve_ivp(lambda _, stocks: np.array(rates) @ stocks + inputs, (0, time), start, method="LSODA", rtol=1e-9, atol=1e-9)
    assert run.y[:, -1] == pytest.approx(np.array(stocks_after(*model, time)), rel=1e-5, abs=1e-4)


@settings(max_examples=60, deadline=None)
@given(closed_models, times)
def test_closed_loop_keeps_its_total(model: Model, time: float) -> None:
    assert sum(model[2]) == pytest.approx(sum(stocks_after(*model, time)), rel=1e-11, abs=1e-9)


@settings(max_examples=60, deadline=None)
@given(models(), times)
def test_no_stock_falls_below_zero(model: Model, time: float) -> None:
    assert min(stocks_after(*model, time)) >= 0.0


@settings(max_examples=60, deadline=None)
@given(models(), times, times)
def test_two_spans_of_time_are_as_good_as_one(model: Model, first: float, second: float) -> None:
    rates, inputs, start = model
    at_once = stocks_after(rates, inputs, start, first + second)
    assert at_once == pytest.approx(stocks_after(rates, inputs, stocks_after(rates, inputs, start, first), second), rel=1e-9, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(models(), times)
def test_what_enters_less_what_leaves_is_what_the_total_gains(model: Model, time: float) -> None:
    """A further box that catches all losses keeps the books."""
    rates, inputs, start = model
    losses = [-math.fsum(row[column] for row in rates) for column in range(len(start))]
    losses = [max(0.0, loss) for loss in losses]
    caught = [[*row, 0.0] for row in rates] + [[*losses, 0.0]]
    total = sum(stocks_after(caught, [*inputs, 0.0], [*start, 0.0], time))
    assert sum(start) + time * sum(inputs) == pytest.approx(total, rel=1e-9, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(open_models)
def test_steady_state_of_an_open_model_solves_its_equations_and_stays(model: Model) -> None:
    rates, inputs, start = model
    steady = steady_state(rates, inputs, start)
    assert steady is not None
    assert np.linalg.solve(np.array(rates), -np.array(inputs)) == pytest.approx(np.array(steady), rel=1e-6, abs=1e-6)
    assert steady == pytest.approx(stocks_after(rates, inputs, steady, 50.0), rel=1e-7, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(closed_models)
def test_steady_state_of_a_closed_loop_is_the_null_vector_with_its_total(model: Model) -> None:
    rates, inputs, start = model
    kernel = null_space(np.array(rates), rcond=1e-10)
    assume(kernel.shape[1] == 1)
    shares = kernel[:, 0] / kernel[:, 0].sum()
    assert shares * sum(start) == pytest.approx(np.array(steady_state(rates, inputs, start)), rel=1e-6, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(models(inputs=st.just(0.0)))
def test_without_inputs_every_model_comes_to_what_it_holds_after_a_very_long_time(model: Model) -> None:
    """Loops, traps and drains together: after forty adjustment times only what is kept for ever is left."""
    assert stocks_after(*model, 40 * (adjustment_time(model[0]) or 1.0)) == pytest.approx(steady_state(*model), rel=1e-6, abs=1e-5)


@settings(max_examples=60, deadline=None)
@given(open_models)
def test_adjustment_time_is_that_of_the_slowest_eigenvalue(model: Model) -> None:
    assert -1 / max(np.linalg.eigvals(np.array(model[0])).real) == pytest.approx(adjustment_time(model[0]), rel=1e-9)


@settings(max_examples=40, deadline=None)
@given(st.lists(st.floats(0.001, 20.0), min_size=1, max_size=4))
def test_boxes_apart_adjust_as_slowly_as_the_slowest_turns_over(losses: list[float]) -> None:
    rates = matrix([[0.0] * len(losses)] * len(losses), losses)
    assert 1 / min(losses) == pytest.approx(adjustment_time(rates))


def test_whole_can_adjust_more_slowly_than_any_of_its_boxes_turns_over() -> None:
    """Two boxes that pass matter to and fro turn over within a year each, but let go of it in a hundred."""
    rates = matrix([[0.0, 1.0], [1.0, 0.0]], [0.01, 0.01])
    assert 100.0 == pytest.approx(adjustment_time(rates))


def test_matter_in_the_last_box_of_a_chain_is_still_there_at_the_end() -> None:
    rates = matrix([[0.0, 0.0, 0.0], [2.0, 0.0, 0.0], [0.0, 1.0, 0.0]], [0.0, 0.0, 0.0])
    assert (0.0, 0.0, 12.0) == pytest.approx(steady_state(rates, [0, 0, 0], [3, 4, 5]))


def test_trap_that_is_half_of_a_fork_gets_its_share() -> None:
    """A quarter of what leaves the first box is lost, three quarters are kept by the second."""
    rates = matrix([[0.0, 0.0], [0.75, 0.0]], [0.25, 0.0])
    assert (0.0, 5.0 + 0.75 * 8.0) == pytest.approx(steady_state(rates, [0, 0], [8, 5]))


@pytest.mark.parametrize("inputs", [[5.0, 0.0], [0.0, 5.0], [1e-6, 0.0], [1e9, 0.0], [1.0, -1.000001]])
def test_no_steady_state_where_a_trap_is_fed_for_ever(inputs: list[float]) -> None:
    assert steady_state(matrix([[0.0, 0.0], [1.0, 0.0]], [0.0, 0.0]), inputs, [1, 1]) is None


def test_trap_that_is_fed_and_drained_alike_stays_as_it_is() -> None:
    """A constant loss makes up for what arrives from the first box, whose own steady state is 2 x 5 / 1."""
    assert (10.0, 7.0) == pytest.approx(steady_state(matrix([[0.0, 0.0], [1.0, 0.0]], [0.0, 0.0]), [10.0, -10.0], [10, 7]))


@pytest.mark.parametrize("factor", [1e-9, 1.0, 1e9])
def test_rounding_of_what_feeds_and_drains_a_trap_does_not_make_it_grow(factor: float) -> None:
    """0.1 + 0.2 in and 0.3 out, in any unit of matter."""
    steady = steady_state(matrix([[0.0, 0.0], [1.0, 0.0]], [0.0, 0.0]), [(0.1 + 0.2) * factor, -0.3 * factor], [factor, factor])
    assert (0.3 * factor, 1.7 * factor) == pytest.approx(steady)


def test_singular_rates_with_an_input_grow_without_end_and_are_followed() -> None:
    """Closed but for an input of 6 a year: after a long time both stocks grow by 3 a year."""
    rates = matrix([[0.0, 1.0], [1.0, 0.0]], [0.0, 0.0])
    assert (33.0, 33.0) == pytest.approx(stocks_after(rates, [3.0, 3.0], [3.0, 3.0], 10.0))
    assert by_scipy((rates, [6.0, 0.0], [0.0, 0.0]), 40.0) == pytest.approx(np.array(stocks_after(rates, [6.0, 0.0], [0.0, 0.0], 40.0)))


def test_defective_rates_have_an_exponential() -> None:
    """Two equal boxes in a row have one eigenvector only; the second fills and empties as t exp(-t)."""
    rates = matrix([[0.0, 0.0], [1.0, 0.0]], [0.0, 1.0])
    assert (math.exp(-2), 2 * math.exp(-2)) == pytest.approx(stocks_after(rates, [0.0, 0.0], [1.0, 0.0], 2.0))


def test_large_inputs_and_slow_rates_keep_their_digits() -> None:
    """Millions flow into a store of a thousand millions that turns over in thousands of years."""
    assert by_scipy(([[-3e-4]], [4e5], [1.3e9]), 20.0) == pytest.approx(np.array(stocks_after([[-3e-4]], [4e5], [1.3e9], 20.0)), rel=1e-13)


def test_empty_model_is_at_rest() -> None:
    assert ((), (), None) == (steady_state([], [], []), stocks_after([], [], [], 5.0), adjustment_time([]))


def test_no_time_changes_nothing() -> None:
    assert (40.0,) == stocks_after([[-0.05]], [5.0], [40.0], 0.0)


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"inputs": [1.0]}, "expected 2 by 2 rates and 2 inputs"),
        ({"rates": [[-1.0, 0.0]]}, "expected 2 by 2 rates"),
        ({"rates": [[-1.0], [1.0]]}, "expected 2 by 2 rates"),
        ({"start": [1.0, math.nan]}, "start: expected finite numbers, found nan"),
        ({"inputs": [math.inf, 0.0]}, "inputs: expected finite numbers, found inf"),
        ({"rates": [[-1.0, -0.5], [1.0, 0.5]]}, "rates: expected 0 or more between reservoirs, found -0.5"),
        ({"rates": [[-1.0, 0.0], [1.5, -1.0]]}, "rates: expected columns that sum to 0 or less"),
        ({"time": -1.0}, "time: expected a finite number from 0, found -1"),
        ({"time": math.inf}, "time: expected a finite number from 0, found inf"),
    ],
)
def test_impossible_models_are_refused(change: dict[str, object], message: str) -> None:
    model = {"rates": [[-1.0, 0.0], [1.0, -1.0]], "inputs": [1.0, 0.0], "start": [1.0, 1.0], "time": 1.0} | change
    with pytest.raises(ValueError, match=message):
        stocks_after(**model)
