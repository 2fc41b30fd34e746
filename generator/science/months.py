"""Twelve monthly values: how long a month is, and the refusal of a series that is not twelve usable numbers."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]

MONTH_LENGTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
"""Days in each month of a year of 365 days, January first."""

ROUNDING = 1e-9
"""Two monthly values closer than this are one: converting degF or inches may disturb the last digits."""


def twelve(name: str, values: Sequence[float], low: float = -np.inf, high: float = np.inf) -> FloatArray:
    """The twelve values as an array.

    Parameters
    ----------
    name : str
        What the values are called in an error.
    values : sequence of float, length 12
        January first.
    low, high : float
        Least and greatest value allowed, in the unit of `values`.

    Returns
    -------
    ndarray, shape (12,)
        The same values.

    Raises
    ------
    ValueError
        If there are not twelve, or one is not finite or lies outside `low` to `high`.

    Examples
    --------
    >>> twelve("monthly_precip", [1.0] * 11)
    Traceback (most recent call last):
    ...
    ValueError: monthly_precip: expected 12 values, January to December, found 11
    """
    series = np.asarray(values, dtype=float)
    if series.shape != (12,):
        found = len(series) if series.ndim == 1 else f"shape {series.shape}"
        raise ValueError(f"{name}: expected 12 values, January to December, found {found}")
    for month, value in enumerate(series.tolist(), start=1):
        if not np.isfinite(value):
            raise ValueError(f"{name}: expected finite values, found {value} in month {month}")
        if not low <= value <= high:
            raise ValueError(f"{name}: expected values from {low:g} to {high:g}, found {value:g} in month {month}")
    return series


def months_where(chosen: npt.NDArray[np.bool_]) -> tuple[int, ...]:
    """The numbers, 1 to 12, of the months that are chosen."""
    return tuple(int(month) + 1 for month in np.flatnonzero(chosen))
