"""Linear box models: several stocks that exchange matter in proportion to what they hold, their steady state and their response."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import numpy as np

from generator.science.method import Method

Matrix = Sequence[Sequence[float]]
_CLOSED = 1e-12
"""A reservoir leaks when it loses more than this part of its outflow to nowhere in the model; less is rounding."""
_TERMS = 16
"""Of the exponential series, enough for matrices of norm 1/2."""


def steady_state(rates: Matrix, inputs: Sequence[float], start: Sequence[float]) -> tuple[float, ...] | None:
    """The stocks that a linear box model comes to in the end.

    Parameters
    ----------
    rates : matrix of float, shape (n, n)
        Rate constants [1/yr]: in row i and column j what flows from j to i, as a share of stock j a year; on the
        diagonal minus all that leaves j.
    inputs : sequence of float, shape (n,)
        What enters each reservoir from outside whatever the stocks are [stock/yr]; negative for a constant loss.
    start : sequence of float, shape (n,)
        The stocks now [stock]; they matter where matter cannot leave.

    Returns
    -------
    tuple of float or None
        One stock for each reservoir; None where a stock would grow or shrink for ever.

    Raises
    ------
    ValueError
        If the shapes do not fit, a number is not finite, a rate between reservoirs is negative, or matter is made of nothing.

    Notes
    -----
    Where all matter can leave, the answer is ``-rates⁻¹ inputs``. Reservoirs that exchange among themselves and lose
    nothing keep their total: it is shared out in proportion to the null vector of their rates.

    References
    ----------
    .. [1] RODHE1992

    Examples
    --------
    >>> steady_state([[-0.05]], inputs=[5.0], start=[40.0])
    (100.0,)
    >>> steady_state([[0.0]], inputs=[5.0], start=[40.0]) is None
    True
    """
    matrix, source, stocks = _checked(rates, inputs, start)
    if not stocks.size:
        return ()
    kept = _kept_for_ever(matrix)
    if np.any(np.abs(kept @ source) > 1e-9 * np.abs(source).sum()):
        return None
    return tuple(float(stock) for stock in kept @ stocks - np.linalg.solve(matrix - kept, source))


def stocks_after(rates: Matrix, inputs: Sequence[float], start: Sequence[float], time: float) -> tuple[float, ...]:
    """The stocks of a linear box model after some time.

    Parameters
    ----------
    rates, inputs, start
        As for `steady_state`.
    time : float
        How long the rates and inputs hold [yr], 0 or more.

    Returns
    -------
    tuple of float
        One stock for each reservoir.

    Raises
    ------
    ValueError
        As `steady_state`, and if the time is negative or not finite.

    Notes
    -----
    The matrix exponential of rates and inputs together, so that it also holds where the rates have no inverse.

    References
    ----------
    .. [1] MOLER_VAN_LOAN2003

    Examples
    --------
    >>> [round(stock, 6) for stock in stocks_after([[-0.05]], inputs=[5.0], start=[40.0], time=10.0)]
    [63.60816]
    """
    matrix, source, stocks = _checked(rates, inputs, start)
    if not 0 <= time < math.inf:
        raise ValueError(f"time: expected a finite number from 0, found {time:g}")
    fastest = float(max((-matrix).diagonal(), default=0.0)) or 1.0
    size = float(np.abs(source).max(initial=0.0)) / fastest or 1.0  # keeps large inputs from outgrowing the rates
    together = np.zeros((len(stocks) + 1, len(stocks) + 1))
    together[:-1, :-1], together[:-1, -1] = matrix, source / size
    return tuple(float(stock) for stock in (_exponential(together * time) @ np.append(stocks, size))[:-1])


def adjustment_time(rates: Matrix) -> float | None:
    """How long a linear box model takes to come to rest: the time in which its slowest disturbance falls to 1/e.

    Parameters
    ----------
    rates : matrix of float, shape (n, n)
        Rate constants [1/yr], as for `steady_state`.

    Returns
    -------
    float or None
        Minus one over the largest real part of an eigenvalue that is not zero [yr]; None where nothing fades.

    Raises
    ------
    ValueError
        As `steady_state`.

    Notes
    -----
    An eigenvalue of zero stands for a total that never changes; there are as many as groups of reservoirs that lose nothing.

    References
    ----------
    .. [1] RODHE1992

    Examples
    --------
    >>> adjustment_time([[-0.05]])
    20.0
    >>> adjustment_time([[0.0]]) is None
    True
    """
    matrix, _, _ = _checked(rates, [0.0] * len(rates), [0.0] * len(rates))
    fading = sorted(np.linalg.eigvals(matrix).real if len(matrix) else [], reverse=True)[len(list(_closed_groups(matrix))) :]
    return float(-1.0 / fading[0]) if fading else None


def _checked(rates: Matrix, inputs: Sequence[float], start: Sequence[float]) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    count = len(start)
    if len(rates) != count or any(len(row) != count for row in rates) or len(inputs) != count:
        raise ValueError(f"rates, inputs: expected {count} by {count} rates and {count} inputs, as many as stocks")
    matrix = np.array(rates, dtype=float).reshape(count, count)
    source, stocks = np.array(inputs, dtype=float), np.array(start, dtype=float)
    for name, values in (("rates", matrix), ("inputs", source), ("start", stocks)):
        if not np.isfinite(values).all():
            raise ValueError(f"{name}: expected finite numbers, found {values[~np.isfinite(values)][0]:g}")
    between = matrix - np.diag(matrix.diagonal())
    if (between < 0).any():
        raise ValueError(f"rates: expected 0 or more between reservoirs, found {between.min():g}")
    if (matrix.sum(axis=0) > _CLOSED * between.sum(axis=0)).any():
        raise ValueError("rates: expected columns that sum to 0 or less, for no flow makes matter of nothing")
    return matrix, source, stocks


def _exponential(matrix: np.ndarray) -> np.ndarray:
    """exp of a matrix by its series, after halving it often enough, and squaring as often.

    What is added on the diagonal first makes every term of the series positive where rates are, so that nothing cancels:
    shares stay above zero, and what is closed keeps its total.
    """
    shift = float(max((-matrix).diagonal(), default=0.0))
    one = np.eye(len(matrix))
    shifted = matrix + shift * one
    norm = float(np.abs(shifted).sum(axis=0).max(initial=0.0))
    halvings = max(0, math.ceil(math.log2(2 * norm))) if norm else 0
    shifted /= 2.0**halvings
    term = total = one
    for order in range(1, _TERMS + 1):
        term = term @ shifted / order
        total = total + term
    total = total * math.exp(-shift / 2.0**halvings)
    for _ in range(halvings):
        total = total @ total
    return total


def _closed_groups(matrix: np.ndarray) -> Iterator[list[int]]:
    """Groups of reservoirs that exchange matter with each other, and lose none to other reservoirs or to outside."""
    count = len(matrix)
    reached = (matrix > 0) | np.eye(count, dtype=bool)
    for _ in range(count):
        reached = (reached.astype(int) @ reached.astype(int)) > 0
    leaks = -matrix.sum(axis=0) > _CLOSED * np.abs(matrix.diagonal())
    for first in range(count):
        group = [int(one) for one in np.flatnonzero(reached[:, first])]
        if group[0] == first and not leaks[group].any() and reached[first, group].all():
            yield group


def _kept_for_ever(matrix: np.ndarray) -> np.ndarray:
    """Of what is in each reservoir now (column), the part that stays in each reservoir (row) after an endless time."""
    groups = list(_closed_groups(matrix))
    closed = [one for group in groups for one in group]
    passing = [one for one in range(len(matrix)) if one not in closed]
    kept = np.zeros_like(matrix)
    for group in groups:
        shares = matrix[np.ix_(group, group)].copy()
        shares[-1] = 1.0
        shares = np.linalg.solve(shares, np.append(np.zeros(len(group) - 1), 1.0))
        ends_here = np.zeros(len(matrix))
        ends_here[group] = 1.0
        if passing:
            arriving = matrix[np.ix_(group, passing)].sum(axis=0)
            ends_here[passing] = np.linalg.solve(matrix[np.ix_(passing, passing)].T, -arriving)
        kept[group] = np.outer(shares, ends_here)
    return kept


_RATES = ("rates", "matrix of rate constants: what flows from one reservoir to another in a year, as a share of the stock it leaves", "1/yr")

STEADY_STATE = Method(
    id="steady_state",
    name="Steady state of a linear box model",
    formula=("change = rates * stocks + inputs",),
    rule="Each flux between reservoirs, or out of the budget, keeps its share of the stock that it leaves; fluxes from outside stay "
    "as they are. The steady state is the set of stocks for which every change is zero. Where matter cannot leave, its total stays.",
    symbols=(
        ("change", "change of every stock", "the unit of the stocks per year"), _RATES, ("stocks", "what every reservoir holds", "one unit for all"),
        ("inputs", "what enters every reservoir from outside", "the unit of the stocks per year"),
    ),
    sources=("RODHE1992",),
    limits="A teaching model, no forecast: real fluxes seldom follow a stock in strict proportion, and conditions do not stay. "
    "There is none where more flows into a stock for ever than can leave it.",
    function=steady_state,
)  # fmt: skip

STOCKS_AFTER = Method(
    id="stocks_after",
    name="Stocks of a linear box model through time",
    formula=("stocks_then = steady_stocks + exp(rates * time) * (stocks_now - steady_stocks)",),
    rule="All stocks are moved on together, with the exponential of the matrix of rates. Where there is no steady state, "
    "the inputs are carried along in the matrix.",
    symbols=(
        ("stocks_then", "stocks after the time", "one unit for all"), ("steady_stocks", "stocks in the steady state", "the same unit"), _RATES,
        ("time", "how long the rates hold", "yr"), ("stocks_now", "stocks at the start", "the same unit"),
    ),
    sources=("RODHE1992", "MOLER_VAN_LOAN2003"),
    limits="It holds as long as every flux keeps its share of the stock that it leaves, or stays constant where the record says so.",
    function=stocks_after,
)  # fmt: skip

ADJUSTMENT_TIME = Method(
    id="adjustment_time",
    name="Adjustment time of a linear box model",
    formula=("adjustment_time = -1 / slowest",),
    rule="Every disturbance of the stocks is a sum of patterns that fade at rates of their own, the eigenvalues of the matrix of "
    "rates. The slowest one sets how long the whole takes; totals that never change are left out.",
    symbols=(
        ("adjustment_time", "time in which the slowest disturbance falls to 37 %", "yr"),
        ("slowest", "largest real part of an eigenvalue that is not zero", "1/yr"),
    ),
    sources=("RODHE1992",),
    limits="It belongs to all reservoirs together and can be longer than every single turnover time, or shorter than the longest. "
    "Undefined where no flux follows a stock.",
    function=adjustment_time,
)  # fmt: skip
