"""Budgets of a stock: what flows in and out, how long it takes to turn over, and whether the account closes."""

from __future__ import annotations

import math
from collections.abc import Sequence

from generator.science.method import Method

_ROUNDING = 1e-9


def combined_uncertainty(uncertainties: Sequence[float]) -> float:
    """The uncertainty of a sum or difference of independent values.

    Parameters
    ----------
    uncertainties : sequence of float
        The plus-or-minus of each value, all in one unit, none negative.

    Returns
    -------
    float
        Root of the sum of squares, in the same unit; 0 where nothing is given.

    Raises
    ------
    ValueError
        If an uncertainty is negative or not finite.

    Notes
    -----
    For independent errors only. Errors that go up and down together add in full.

    References
    ----------
    .. [1] GUM2008

    Examples
    --------
    >>> combined_uncertainty([3.0, 4.0])
    5.0
    """
    for number, uncertainty in enumerate(uncertainties, start=1):
        if not 0.0 <= uncertainty < math.inf:
            raise ValueError(f"uncertainties: expected finite values from 0, found {uncertainty:g} as number {number}")
    return math.hypot(*uncertainties)


def closes(balance: float, change: float | None, uncertainties: Sequence[float], residual: bool = False) -> bool | None:
    """Whether a budget closes: its balance agrees with the separately stated change of the stock.

    Parameters
    ----------
    balance : float
        Sum of inflows less sum of outflows.
    change : float or None
        How fast the stock changes, known from elsewhere, in the unit of `balance`; None where nobody says.
    uncertainties : sequence of float
        The plus-or-minus of every flow and of the change, in the same unit.
    residual : bool
        Whether a flow or the change was itself found as the rest of this budget.

    Returns
    -------
    bool or None
        True where balance and change differ by no more than their combined uncertainty; None without a stated change,
        and None with a residual, for then they cannot differ.

    Raises
    ------
    ValueError
        If a number is not finite or an uncertainty is negative.

    Notes
    -----
    A change or a flow worked out from all the others closes the budget by construction and proves nothing.

    References
    ----------
    .. [1] GCB2019

    Examples
    --------
    >>> closes(balance=3.0, change=4.0, uncertainties=[0.6, 0.8])
    True
    >>> closes(balance=3.0, change=None, uncertainties=[0.6]) is None
    True
    """
    allowed = combined_uncertainty(uncertainties)
    for name, value in (("balance", balance), ("change", change)):
        if value is not None and not math.isfinite(value):
            raise ValueError(f"{name}: expected a finite number, found {value:g}")
    if change is None or residual:
        return None
    slack = _ROUNDING * max(abs(balance), abs(change), allowed)
    return abs(balance - change) <= allowed + slack


BALANCE = Method(
    id="balance",
    name="Balance of a stock",
    formula=("balance = inflow - outflow",),
    symbols=(
        ("balance", "inflow less outflow", "the unit of the stock per time"),
        ("inflow", "sum of all flows into the stock", "the unit of the stock per time"),
        ("outflow", "sum of all flows out of the stock", "the unit of the stock per time"),
    ),
    sources=(),
    limits="Only as good as its flows: one that is left out or counted twice shows up here. "
    "Positive means that the stock grows.",
)

TURNOVER_TIME = Method(
    id="turnover_time",
    name="Turnover time",
    formula=("turnover_time = stock / outflow",),
    symbols=(
        ("turnover_time", "time in which as much flows out as the stock holds", "yr"),
        ("stock", "what the reservoir holds", "any unit"),
        ("outflow", "sum of all flows out of the stock", "the unit of the stock per year"),
    ),
    sources=("RODHE1992",),
    limits="The mean time that matter stays, if inflow equals outflow. It depends on which outflows are counted, "
    "and it is not the time that a disturbance takes to fade. Undefined where nothing flows out.",
)

HUMAN_SHARE = Method(
    id="human_share",
    name="Share caused by people",
    formula=("human_share = caused_by_people / total",),
    symbols=(
        ("human_share", "part of the flow that people cause", ""),
        ("caused_by_people", "flows of the process that people cause", "the unit of the stock per time"),
        ("total", "all flows of the process", "the unit of the stock per time"),
    ),
    sources=(),
    limits="Undefined where the process moves nothing.",
)

COMBINED_UNCERTAINTY = Method(
    id="combined_uncertainty",
    name="Uncertainty of a sum or difference",
    formula=("combined_uncertainty = sqrt(sum(uncertainty ** 2))",),
    symbols=(
        ("combined_uncertainty", "uncertainty of the sum or difference", "the unit given"),
        ("uncertainty", "uncertainty of each value", "the unit given"),
    ),
    sources=("GUM2008",),
    limits="For errors that are independent of each other; errors with one common cause add in full.",
    function=combined_uncertainty,
)

CLOSES = Method(
    id="closes",
    name="Does the budget close?",
    formula=("imbalance = balance - change", *COMBINED_UNCERTAINTY.formula),
    rule="The budget closes when the imbalance, its sign left aside, is no larger than the combined uncertainty.",
    symbols=(
        ("imbalance", "balance less stated change", "the unit of the stock per time"),
        ("balance", "inflow less outflow", "the unit of the stock per time"),
        ("change", "change of the stock, known from elsewhere", "the unit of the stock per time"),
        ("combined_uncertainty", "uncertainty of the imbalance", "the unit of the stock per time"),
        ("uncertainty", "uncertainty of each flow and of the change", "the unit of the stock per time"),
    ),
    sources=("GCB2019", "GUM2008"),
    limits="No verdict without a change that was found in another way, nor where one of the flows was found as the rest. "
    "A budget can close by luck, when two errors cancel.",
    function=closes,
)
