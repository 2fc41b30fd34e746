"""Shape of a pyramid of biomass or of numbers: upright, inverted, or narrower below at some of its steps."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from generator.science.method import Method

UPRIGHT, PARTLY_INVERTED, INVERTED = "upright", "partly inverted", "inverted"


def pyramid_shape(stocks: Sequence[float]) -> str | None:
    """How a pyramid stands.

    Parameters
    ----------
    stocks : sequence of float
        What each level holds, from producers up, all in one unit and none negative.

    Returns
    -------
    str or None
        `upright` where no level holds more than the one below it, `inverted` where every level does,
        `partly inverted` in between; None for fewer than two levels.

    Raises
    ------
    ValueError
        If a stock is negative or not finite.

    Notes
    -----
    Two equal neighbours count as upright: nothing stands wider above.

    References
    ----------
    .. [1] BAR_ON2018

    Examples
    --------
    >>> pyramid_shape([1.8, 3.6, 2.0, 0.3])
    'partly inverted'
    """
    for number, stock in enumerate(stocks, start=1):
        if not 0.0 <= stock < math.inf:
            raise ValueError(f"stocks: expected finite values from 0, found {stock:g} as number {number}")
    wider = [above > below for below, above in pairwise(stocks)]
    if not wider:
        return None
    return INVERTED if all(wider) else PARTLY_INVERTED if any(wider) else UPRIGHT


PYRAMID_SHAPE = Method(
    id="pyramid_shape",
    name="Which way up a pyramid stands",
    formula=(),
    symbols=(),
    rule="Compare each level with the one below: upright where none holds more, inverted where each does, partly inverted in between.",
    sources=("BAR_ON2018",),
    limits="For stocks at one moment, of biomass or of individuals. A pyramid of production over a year on one area cannot be inverted.",
    function=pyramid_shape,
)
