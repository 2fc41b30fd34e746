"""Day length from latitude and date, by the FAO-56 formulas."""

from __future__ import annotations

import math

import numpy as np

from generator.science.method import Method
from generator.science.months import MONTH_LENGTHS, FloatArray


def fao_day_length(latitude: float, day_of_year: int) -> float:
    """Time that the centre of the sun is above the level horizon on one day.

    Fit for estimates of evapotranspiration. For the time between sunrise and sunset in an almanac it is too short, by
    about 7 minutes at the equator and 13 to 23 minutes at 60 degrees: an almanac counts the sun's upper edge, lifted by
    refraction.

    Parameters
    ----------
    latitude : float
        Latitude [deg], -90 to 90, south negative.
    day_of_year : int
        1 (1 January) to 366.

    Returns
    -------
    float
        Day length [h], 0 to 24.

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Equations 24, 25 and 34 of [1]_. The sine for the declination is crude: 0.1 to 0.3 h off near the equinoxes at high
    latitudes. Where the sun does not set (or rise) the cosine of the sunset angle leaves -1 to 1 and is held there,
    which gives 24 h (or 0 h); that serves the poles too.

    References
    ----------
    .. [1] FAO56

    Examples
    --------
    >>> round(fao_day_length(-20.0, 246), 1)
    11.7
    >>> fao_day_length(90.0, 172)
    24.0
    """
    _check_latitude(latitude)
    if not (float(day_of_year).is_integer() and 1 <= day_of_year <= 366):
        raise ValueError(f"day_of_year: expected a whole number from 1 to 366, found {day_of_year}")
    return float(_day_lengths(latitude, np.array([float(day_of_year)]))[0])


def monthly_day_length(latitude: float) -> tuple[float, ...]:
    """Mean day length of each month, over all its days in a year of 365 days.

    Parameters
    ----------
    latitude : float
        Latitude [deg], -90 to 90, south negative.

    Returns
    -------
    tuple of float, length 12
        Mean day length [h], 0 to 24, January first.

    Raises
    ------
    ValueError
        If the latitude is out of its range.

    Notes
    -----
    The mean of the daily values of `fao_day_length`, not the value of the middle day; the two differ by a few minutes.

    References
    ----------
    .. [1] FAO56

    Examples
    --------
    >>> [round(hours, 2) for hours in monthly_day_length(0.0)[:3]]
    [12.0, 12.0, 12.0]
    """
    return tuple(float(month.mean()) for month in _by_month(latitude))


def polar_day_days(latitude: float) -> tuple[int, ...]:
    """How many days of each month have a day length of 24 h.

    Parameters
    ----------
    latitude : float
        Latitude [deg], -90 to 90, south negative.

    Returns
    -------
    tuple of int, length 12
        Number of days, January first, in a year of 365 days.

    Raises
    ------
    ValueError
        If the latitude is out of its range.

    Notes
    -----
    By `fao_day_length`, which counts the centre of the sun. To the eye the midnight sun lasts some days longer, and beyond
    the polar circle a little, because the air bends light and the upper edge is seen first.

    References
    ----------
    .. [1] FAO56

    Examples
    --------
    >>> polar_day_days(70.0)
    (0, 0, 0, 0, 11, 30, 22, 0, 0, 0, 0, 0)
    """
    return tuple(int((month == 24.0).sum()) for month in _by_month(latitude))


def polar_night_days(latitude: float) -> tuple[int, ...]:
    """How many days of each month have a day length of 0 h; twilight may still light them.

    Parameters, result, errors and notes are those of `polar_day_days`.

    Examples
    --------
    >>> polar_night_days(70.0)
    (21, 0, 0, 0, 0, 0, 0, 0, 0, 0, 12, 31)
    """
    return tuple(int((month == 0.0).sum()) for month in _by_month(latitude))


def _by_month(latitude: float) -> list[FloatArray]:
    """The day lengths [h] of each month, January first, in a year of 365 days."""
    _check_latitude(latitude)
    return np.split(_day_lengths(latitude, np.arange(1.0, 366.0)), np.cumsum(MONTH_LENGTHS)[:-1])


def _check_latitude(latitude: float) -> None:
    if not -90.0 <= latitude <= 90.0:
        raise ValueError(f"latitude: expected -90 to 90 [deg], found {latitude:g}")


def _day_lengths(latitude: float, days: FloatArray) -> FloatArray:
    declination = 0.409 * np.sin(2.0 * np.pi * days / 365.0 - 1.39)
    cosine = -math.tan(math.radians(latitude)) * np.tan(declination)
    return 24.0 / np.pi * np.arccos(cosine.clip(-1.0, 1.0))


_DAY_LENGTH_LINES = (
    "declination = 0.409 * sin(2 * pi * day_of_year / 365 - 1.39)",
    "sunset_angle = arccos(-tan(latitude) * tan(declination))",
    "day_length = 24 / pi * sunset_angle",
)
_DAY_LENGTH_SYMBOLS = (
    ("day_length", "time that the sun is above the horizon", "h"),
    ("declination", "angle of the sun north of the equator", "radians"),
    ("sunset_angle", "angle that the Earth turns between noon and sunset", "radians"),
    ("latitude", "latitude, south negative; turned into radians for the formula", "deg"),
    ("day_of_year", "number of the day, 1 for 1 January", "d"),
    ("pi", "half a turn in radians, 3.14159", "radians"),
)
_DAY_LENGTH_RULE = "Where the sun does not set, the day has 24 h; where it does not rise, 0 h."

FAO_DAY_LENGTH = Method(
    id="fao_day_length",
    name="Day length on one day (FAO-56)",
    formula=_DAY_LENGTH_LINES,
    rule=_DAY_LENGTH_RULE,
    symbols=_DAY_LENGTH_SYMBOLS,
    sources=("FAO56",),
    limits="Counts the centre of the sun and no bending of light by the air, so it is shorter than an almanac's day by "
    "about 7 minutes at the equator and about 20 at 60 degrees.",
    function=fao_day_length,
)

MONTHLY_DAY_LENGTH = Method(
    id="monthly_day_length",
    name="Mean day length of each month (FAO-56)",
    formula=(*_DAY_LENGTH_LINES, "monthly_day_length = mean(day_length)"),
    rule=_DAY_LENGTH_RULE + " The mean is taken over all days of the month.",
    symbols=(("monthly_day_length", "mean day length of a month", "h"), *_DAY_LENGTH_SYMBOLS),
    sources=("FAO56",),
    limits=FAO_DAY_LENGTH.limits,
    function=monthly_day_length,
)

_POLAR_LIMITS = (
    "Counts the centre of the sun and no bending of light by the air. Seen from the ground the sun stays up some days longer, and "
    "a polar night has hours of twilight."
)

POLAR_DAY_DAYS = Method(
    id="polar_day_days",
    name="Days on which the sun does not set (FAO-56)",
    formula=_DAY_LENGTH_LINES,
    rule="A day counts when its length is 24 h.",
    symbols=_DAY_LENGTH_SYMBOLS,
    sources=("FAO56",),
    limits=_POLAR_LIMITS,
    function=polar_day_days,
)

POLAR_NIGHT_DAYS = Method(
    id="polar_night_days",
    name="Days on which the sun does not rise (FAO-56)",
    formula=_DAY_LENGTH_LINES,
    rule="A day counts when its length is 0 h.",
    symbols=_DAY_LENGTH_SYMBOLS,
    sources=("FAO56",),
    limits=_POLAR_LIMITS,
    function=polar_night_days,
)
