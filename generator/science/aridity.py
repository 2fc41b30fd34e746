"""The aridity index of the United Nations Environment Programme and its five classes."""

from __future__ import annotations

import math
from collections.abc import Sequence

from generator.science.method import Method
from generator.science.months import twelve

ARIDITY_CLASSES: tuple[tuple[float, str], ...] = (
    (0.05, "hyper-arid"),
    (0.20, "arid"),
    (0.50, "semi-arid"),
    (0.65, "dry sub-humid"),
    (math.inf, "humid"),
)
"""The classes from dry to wet as rules to be tried in order: each with the index [-] that it stays below."""


def aridity_class(aridity_index: float | None) -> str | None:
    """The aridity class of a place.

    Parameters
    ----------
    aridity_index : float or None
        Annual precipitation over annual potential evapotranspiration [-], not negative; None where it is undefined.

    Returns
    -------
    str or None
        The name of the first class whose upper limit lies above the index; None where the index is undefined.

    Raises
    ------
    ValueError
        If the index is negative or not finite.

    Notes
    -----
    Lower limits belong to the class: 0.05 is arid, 0.65 is humid. The index grows with *wetness*. Ask `is_cold` first:
    the atlas classes cold places apart, whatever their index.

    References
    ----------
    .. [1] UNEP1992

    Examples
    --------
    >>> aridity_class(0.3)
    'semi-arid'
    """
    if aridity_index is None:
        return None
    if not 0.0 <= aridity_index < math.inf:
        raise ValueError(f"aridity_index: expected a finite number from 0, found {aridity_index:g}")
    return next(name for limit, name in ARIDITY_CLASSES if aridity_index < limit)


def is_cold(monthly_mean_temp: Sequence[float]) -> bool:
    """Whether a climate is so cold that its aridity index says nothing.

    Parameters
    ----------
    monthly_mean_temp : sequence of float, length 12
        Monthly mean temperature [degC].

    Returns
    -------
    bool
        True with more than six months below 0 degC on average and at most three above 6 degC.

    Raises
    ------
    ValueError
        If there are not twelve finite values.

    Notes
    -----
    In such climates formulas for potential evapotranspiration built on temperature give far too much.

    References
    ----------
    .. [1] UNEP1992

    Examples
    --------
    >>> is_cold([-25.0] * 9 + [2.0, 4.0, 3.0])
    True
    """
    temp = twelve("monthly_mean_temp", monthly_mean_temp)
    return bool((temp < 0.0).sum() > 6 and (temp > 6.0).sum() <= 3)


ARIDITY_INDEX = Method(
    id="aridity_index",
    name="Aridity index",
    formula=("aridity_index = annual_precip / potential_evapotranspiration",),
    symbols=(
        ("aridity_index", "how much of what could evaporate falls as precipitation", ""),
        ("annual_precip", "all that falls in a year", "mm"),
        ("potential_evapotranspiration", "potential evapotranspiration of the year", "mm"),
    ),
    sources=("UNEP1992",),
    limits="A larger index means a wetter place. Undefined where plants could use no water at all, as on an ice sheet. "
    "It depends on how the potential evapotranspiration was found; the classes were drawn for Thornthwaite's.",
)

COLD_CLIMATE = Method(
    id="cold_climate",
    name="Cold climate",
    formula=(),
    rule="A climate is cold when more than six months average below 0 °C and at most three above 6 °C.",
    symbols=(),
    sources=("UNEP1992",),
    limits="Known from works that quote the atlas. In cold climates an index of aridity says nothing, for the formula "
    "for evapotranspiration gives far too much there.",
    function=is_cold,
)

ARIDITY_CLASS = Method(
    id="aridity_class",
    name="Aridity class",
    formula=(),
    rule="Cold climates stand apart. Otherwise: below 0.05 hyper-arid, below 0.20 arid, below 0.50 semi-arid, "
    "below 0.65 dry sub-humid, from there on humid.",
    symbols=(),
    sources=("UNEP1992",),
    limits="A place close to a limit may change its class with a few mm of rain.",
    function=aridity_class,
)
