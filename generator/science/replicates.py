"""Replicates: the mean of repeated readings, their spread, and how far a mean or a difference of means can be trusted."""

from __future__ import annotations

import math
from collections.abc import Sequence

from generator.science.method import Method

TIMES_THE_ERROR = 2.0
"""How many standard errors a difference must exceed to be told apart from zero."""
_READINGS = ("readings", "the repeated readings", "the unit given")
_REPLICATES = ("replicates", "how many readings there are", "")
_SPREAD = ("sample_standard_deviation", "sample standard deviation of the readings", "the unit given")


def sample_standard_deviation(readings: Sequence[float]) -> float | None:
    """The sample standard deviation of repeated readings.

    Parameters
    ----------
    readings : sequence of float
        Readings of one quantity, all in one unit.

    Returns
    -------
    float or None
        Root of the sum of squared deviations from the mean over one less than the number of readings, in the same
        unit; None for a single reading, which has no spread.

    Raises
    ------
    ValueError
        If there is no reading, or one is not finite.

    References
    ----------
    .. [1] GUM2008

    Examples
    --------
    >>> sample_standard_deviation([9.0, 10.0, 11.0])
    1.0
    >>> sample_standard_deviation([9.0]) is None
    True
    """
    if not readings or not all(map(math.isfinite, readings)):
        raise ValueError(f"readings: expected one finite number or more, found {list(readings)}")
    if len(readings) == 1:
        return None
    return math.sqrt(math.fsum(deviation**2 for deviation in deviations(readings)) / (len(readings) - 1))


def deviations(readings: Sequence[float]) -> tuple[float, ...]:
    """How far each reading lies from their mean, in the unit of the readings.

    >>> deviations([9.0, 10.0, 11.0])
    (-1.0, 0.0, 1.0)
    """
    mean = math.fsum(readings) / len(readings)
    return tuple(reading - mean for reading in readings)


def told_apart(difference: float, standard_error: float | None) -> bool | None:
    """Whether a difference is larger than chance alone would often give.

    Parameters
    ----------
    difference : float
        A difference of two means.
    standard_error : float or None
        Its standard error, in the same unit; None where nothing was repeated.

    Returns
    -------
    bool or None
        True where the difference, its sign left aside, is more than twice its standard error; None without one.

    Raises
    ------
    ValueError
        If a number is not finite, or the standard error is negative.

    Examples
    --------
    >>> told_apart(0.45, 0.1), told_apart(-0.15, 0.1), told_apart(0.45, None)
    (True, False, None)
    """
    if not math.isfinite(difference) or (standard_error is not None and not 0.0 <= standard_error < math.inf):
        raise ValueError(f"expected a finite difference and an error from 0, found {difference} and {standard_error}")
    return None if standard_error is None else abs(difference) > TIMES_THE_ERROR * standard_error


REPLICATE_MEAN = Method(
    id="replicate_mean",
    name="Mean of repeated readings",
    formula=("replicate_mean = mean(readings)",),
    symbols=(("replicate_mean", "mean of the readings", "the unit given"), _READINGS),
    sources=(),
    limits="One reading far off moves the mean of a few readings a lot; look at the single readings too.",
)

SAMPLE_STANDARD_DEVIATION = Method(
    id="sample_standard_deviation",
    name="Sample standard deviation, the spread of repeated readings",
    formula=("sample_standard_deviation = sqrt(sum(deviation ** 2) / (replicates - 1))",),
    symbols=(_SPREAD, ("deviation", "each reading less the mean of all", "the unit given"), _REPLICATES),
    sources=("GUM2008",),
    limits="Says how far single readings stray, from nature and from handling together. From three or four readings it is itself "
    "only known roughly. A single reading has none.",
    function=sample_standard_deviation,
)

STANDARD_ERROR = Method(
    id="standard_error",
    name="Standard error of a mean",
    formula=("standard_error = sample_standard_deviation / sqrt(replicates)",),
    symbols=(("standard_error", "how far the mean itself may be off, by chance", "the unit given"), _SPREAD, _REPLICATES),
    sources=("GUM2008",),
    limits="Counts chance only: a meter that reads too high reads too high every time, and no number of replicates shows it. "
    "The readings must be independent; the same bottle read three times is one replicate.",
)

STANDARD_ERROR_OF_DIFFERENCE = Method(
    id="standard_error_of_difference",
    name="Standard error of a sum or difference",
    formula=("standard_error_of_difference = sqrt(first_error ** 2 + second_error ** 2)",),
    symbols=(
        ("standard_error_of_difference", "standard error of the sum or difference", "the unit given"),
        ("first_error", "standard error of the one value", "the unit given"),
        ("second_error", "standard error of the other value", "the unit given"),
    ),
    sources=("GUM2008",),
    limits="For two values that were found independently of each other.",
)

STANDARD_ERROR_OF_RATE = Method(
    id="standard_error_of_rate",
    name="Standard error of a change per time",
    formula=("standard_error_of_rate = sqrt(first_error ** 2 + second_error ** 2) / duration",),
    symbols=(
        ("standard_error_of_rate", "standard error of the rate", "the unit given, per time"),
        ("first_error", "standard error of the one mean", "the unit given"),
        ("second_error", "standard error of the other mean", "the unit given"),
        ("duration", "time between the two, taken as exact", "h or d"),
    ),
    sources=("GUM2008",),
    limits="For two means that were found independently of each other, over a time that is known much better than they are.",
)

TOLD_APART = Method(
    id="told_apart",
    name="Is a difference told apart from zero?",
    formula=(),
    rule="It is where the difference, its sign left aside, is more than twice its standard error.",
    symbols=(),
    sources=(),
    limits="A rule of thumb: with many replicates chance alone goes beyond two standard errors about once in twenty times. With "
    "three or four it does so more often, so a difference only just beyond them is weak evidence. That a difference is not told "
    "apart does not show that there is none: more replicates may find it.",
    function=told_apart,
)
