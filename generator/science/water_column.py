"""A column of water: what is made over its depth below one square metre, and the depth at which a day leaves nothing over."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from generator.science.method import Method

_DAILY = "mg O2/L/d"


def column_sum(depths: Sequence[float], values: Sequence[float]) -> float:
    """What a column of water holds or makes below one square metre, by trapezoids between the depths.

    Parameters
    ----------
    depths : sequence of float, shape (n,)
        Depths [m] from the uppermost down, each below the one before, two or more.
    values : sequence of float, shape (n,)
        The value at each depth, per volume: [g m-3 h-1] and the like.

    Returns
    -------
    float
        Sum over the layers of their thickness times the mean of the values at their top and bottom: [g m-2 h-1].

    Raises
    ------
    ValueError
        If there are fewer than two depths, not as many values as depths, or a depth that is not below the one before.

    References
    ----------
    .. [1] KENNESAW_LIMNO

    Examples
    --------
    >>> column_sum([0, 2, 5], [3.0, 1.0, 0.0])
    5.5
    """
    return math.fsum(weight * value for weight, value in zip(layer_weights(depths), _as_many(depths, values), strict=True))


def column_error(depths: Sequence[float], errors: Sequence[float]) -> float:
    """The standard error of a sum over depth from the independent standard errors at the depths.

    Parameters
    ----------
    depths : sequence of float, shape (n,)
        Depths [m] from the uppermost down, each below the one before, two or more.
    errors : sequence of float, shape (n,)
        The standard error of the value at each depth, from 0.

    Returns
    -------
    float
        Root of the sum of squares of each error times the thickness of water that its depth stands for.

    Raises
    ------
    ValueError
        If the depths are not as `column_sum` wants them, or an error is negative.

    References
    ----------
    .. [1] GUM2008

    Examples
    --------
    >>> column_error([0, 2, 4], [0.3, 0.0, 0.4])
    0.5
    """
    if any(error < 0 for error in errors):
        raise ValueError(f"errors: expected none below 0, found {list(errors)}")
    return math.hypot(*(weight * error for weight, error in zip(layer_weights(depths), _as_many(depths, errors), strict=True)))


def layer_weights(depths: Sequence[float]) -> tuple[float, ...]:
    """The thickness of water [m] that each depth stands for: half of the layer above it and half of the layer below.

    >>> layer_weights([0, 2, 5])
    (1.0, 2.5, 1.5)
    """
    layers = [below - above for above, below in pairwise(depths)]
    if not layers or any(layer <= 0 for layer in layers):
        raise ValueError(f"depths: expected two or more, each below the one before, found {list(depths)}")
    return tuple(above / 2 + below / 2 for above, below in pairwise([0.0, *layers, 0.0]))


def _as_many(depths: Sequence[float], values: Sequence[float]) -> Sequence[float]:
    if len(depths) != len(values):
        raise ValueError(f"expected a value for each of {len(depths)} depths, found {len(values)}")
    return values


COLUMN_SUM = Method(
    id="column_sum",
    name="Sum over depth, by trapezoids",
    formula=("column_sum = sum(thickness * (upper_value + lower_value) / 2)",),
    symbols=(
        ("column_sum", "value of the whole column below one square metre", "g/m2"), ("thickness", "thickness of each layer", "m"),
        ("upper_value", "value at the top of the layer", "g/m3"), ("lower_value", "value at the bottom of the layer", "g/m3"),
    ),
    rule="1 mg/L is 1 g/m3, so the unit changes by itself.",
    sources=("KENNESAW_LIMNO",),
    limits="Takes it that values change evenly from one depth to the next. Water above the uppermost and below the lowest bottles "
    "is not counted; a peak between two depths is missed.",
    function=column_sum,
)  # fmt: skip

COLUMN_ERROR = Method(
    id="column_error",
    name="Standard error of a sum over depth",
    formula=("column_error = sqrt(sum((thickness * depth_error) ** 2))",),
    symbols=(
        ("column_error", "standard error of the sum over depth", "g/m2"),
        ("thickness", "water that each depth stands for, half of the layer above and half of the layer below", "m"),
        ("depth_error", "standard error at each depth", "g/m3"),
    ),
    sources=("GUM2008",),
    limits="Counts the chance of the readings only, not what is missed between the depths.",
    function=column_error,
)

COMPENSATION_DEPTH = Method(
    id="compensation_depth",
    name="Compensation depth, where a day's gross production just meets respiration",
    formula=("compensation_depth = upper_depth + (lower_depth - upper_depth) * upper_net / (upper_net - lower_net)",),
    symbols=(
        ("compensation_depth", "depth at which a day leaves nothing over", "m"),
        ("upper_depth", "the lowest depth above it with a gain", "m"), ("lower_depth", "the next depth, with a loss", "m"),
        ("upper_net", "net production of a day at the upper depth", _DAILY), ("lower_net", "net production of a day at the lower depth", _DAILY),
    ),
    rule="On a straight line between the two depths on either side of it.",
    sources=(),
    limits="For everything in the water, over a day and a night. Algae alone would break even deeper, because they do not have to "
    "make up for what bacteria and animals respire. It moves with the weather and the season.",
)  # fmt: skip
