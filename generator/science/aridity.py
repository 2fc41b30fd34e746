"""The aridity index of the United Nations Environment Programme and its five classes."""

from __future__ import annotations

import math

from generator.science.method import Method

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
    Lower limits belong to the class: 0.05 is arid, 0.65 is humid. The index grows with *wetness*. The atlas classes
    cold places apart (more than six months below 0 degC on average and at most three above 6 degC); this does not.

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


ARIDITY_INDEX = Method(
    id="aridity_index",
    name="Aridity index",
    formula=("aridity_index = annual_precip / potential_evapotranspiration",),
    symbols=(
        ("aridity_index", "aridity index", ""),
        ("annual_precip", "annual precipitation", "mm"),
        ("potential_evapotranspiration", "potential evapotranspiration of the year", "mm"),
    ),
    sources=("UNEP1992",),
    limits="A larger index means a wetter place. Undefined where plants could use no water at all, as on an ice sheet. "
    "It depends on how the potential evapotranspiration was found; the classes were drawn for Thornthwaite's.",
)

ARIDITY_CLASS = Method(
    id="aridity_class",
    name="Aridity class",
    formula=(),
    rule="Below 0.05 hyper-arid, below 0.20 arid, below 0.50 semi-arid, below 0.65 dry sub-humid, otherwise humid.",
    symbols=(),
    sources=("UNEP1992",),
    limits="Cold places, which the atlas classes apart, are not treated apart here. "
    "A place close to a limit may change its class with a few mm of rain.",
    function=aridity_class,
)
