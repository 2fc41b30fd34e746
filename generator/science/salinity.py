"""Names for water by its salt: the main classes of the Venice system."""

from __future__ import annotations

import math

from generator.science.method import Method

SALINITY_CLASSES: tuple[tuple[float, str], ...] = (
    (0.5, "fresh water"),
    (30.0, "brackish water"),
    (40.0, "sea water"),
    (math.inf, "brine"),
)
"""The classes from fresh to salt as rules to be tried in order: each with the salinity [g/kg] that it stays below."""


def salinity_class(salinity: float) -> str:
    """The class of water by its salinity.

    Parameters
    ----------
    salinity : float
        Dissolved salt [g/kg], not negative.

    Returns
    -------
    str
        The name of the first class whose upper limit lies above the salinity.

    Raises
    ------
    ValueError
        If the salinity is negative or not finite.

    Notes
    -----
    Lower limits belong to the class: 0.5 is brackish, 30 is sea water. The Venice system divides brackish water further.

    References
    ----------
    .. [1] VENICE1958

    Examples
    --------
    >>> salinity_class(7.0)
    'brackish water'
    """
    if not 0.0 <= salinity < math.inf:
        raise ValueError(f"salinity: expected a finite number from 0, found {salinity:g}")
    return next(name for limit, name in SALINITY_CLASSES if salinity < limit)


SALINITY_CLASS = Method(
    id="salinity_class",
    name="Class of water by salinity",
    formula=(),
    rule="Below 0.5 g kg⁻¹ fresh, below 30 g kg⁻¹ brackish, below 40 g kg⁻¹ sea water, otherwise brine.",
    symbols=(),
    sources=("VENICE1958",),
    limits="The limits are an agreement; in an estuary one place can pass through several classes in a day.",
    function=salinity_class,
)
