"""Plain summaries of a mean year: means, totals, ranges, and the months that stand out."""

from __future__ import annotations

from collections.abc import Sequence

from generator.science.method import Method
from generator.science.months import ROUNDING, months_where, twelve

GROWING_SEASON_THRESHOLD = 5.0
"""Monthly mean temperature [degC] at and above which a month counts as growing season."""

_TEMPERATURES = ("monthly_mean_temp", "mean temperature of each month", "degC")
_PRECIPITATION = ("monthly_precip", "precipitation of each month", "mm")


def extreme_months(values: Sequence[float], largest: bool) -> tuple[int, ...]:
    """The months with the largest, or the smallest, value of the year.

    Parameters
    ----------
    values : sequence of float, length 12
        One value for each month, January first, in any unit.
    largest : bool
        True for the largest value, false for the smallest.

    Returns
    -------
    tuple of int
        Month numbers, 1 to 12, in order; more than one where months are equal.

    Raises
    ------
    ValueError
        If `values` is not twelve finite numbers.

    Examples
    --------
    >>> extreme_months([3, 4, 6, 9, 13, 16, 18, 18, 15, 11, 7, 4], largest=True)
    (7, 8)
    """
    series = twelve("values", values)
    extreme = series.max() if largest else series.min()
    return months_where(abs(series - extreme) <= ROUNDING)


def dry_months(monthly_mean_temp: Sequence[float], monthly_precip: Sequence[float]) -> tuple[int, ...]:
    """The months that are dry by Gaussen's rule.

    A month is dry when its precipitation [mm] is less than twice its mean temperature [degC]. The rule was made for
    places with a warm season; it cannot see that water is frozen, so it says little about cold months.

    Parameters
    ----------
    monthly_mean_temp : sequence of float, length 12
        Mean temperature of each month [degC], January first.
    monthly_precip : sequence of float, length 12
        Precipitation of each month [mm], January first.

    Returns
    -------
    tuple of int
        Month numbers, 1 to 12, in order.

    Raises
    ------
    ValueError
        If a series is not twelve finite numbers, or a precipitation is negative.

    Notes
    -----
    A month with a mean of 0 degC or below is never dry, since precipitation cannot be negative.

    References
    ----------
    .. [1] BAGNOULS_GAUSSEN1953
    .. [2] WALTER_LIETH1967

    Examples
    --------
    >>> dry_months([20.0] * 12, [41, 40, 39, 0, 80, 80, 80, 80, 80, 80, 80, 80])
    (3, 4)
    """
    temp = twelve("monthly_mean_temp", monthly_mean_temp)
    precip = twelve("monthly_precip", monthly_precip, low=0.0)
    return months_where(2.0 * temp - precip > ROUNDING)


def months_below_freezing(monthly_mean_temp: Sequence[float]) -> tuple[int, ...]:
    """The months whose mean temperature is below 0 °C.

    A monthly mean does not tell frost: nights can freeze in a month that averages well above 0 degC.

    Parameters
    ----------
    monthly_mean_temp : sequence of float, length 12
        Mean temperature of each month [degC], January first.

    Returns
    -------
    tuple of int
        Month numbers, 1 to 12, in order.

    Raises
    ------
    ValueError
        If the series is not twelve finite numbers.

    Examples
    --------
    >>> months_below_freezing([-9, -6, 0, 8, 14, 19, 22, 21, 15, 8, 0, -7])
    (1, 2, 12)
    """
    return months_where(twelve("monthly_mean_temp", monthly_mean_temp) < -ROUNDING)


def growing_season_months(monthly_mean_temp: Sequence[float]) -> tuple[int, ...]:
    """The months warm enough for most plants to grow: a mean of 5 °C or more.

    Only warmth is counted. A month can be warm enough and still too dry.

    Parameters
    ----------
    monthly_mean_temp : sequence of float, length 12
        Mean temperature of each month [degC], January first.

    Returns
    -------
    tuple of int
        Month numbers, 1 to 12, in order.

    Raises
    ------
    ValueError
        If the series is not twelve finite numbers.

    Examples
    --------
    >>> growing_season_months([-9, -6, 0, 5, 14, 19, 22, 21, 15, 8, 0, -7])
    (4, 5, 6, 7, 8, 9, 10)
    """
    return months_where(twelve("monthly_mean_temp", monthly_mean_temp) >= GROWING_SEASON_THRESHOLD - ROUNDING)


def precipitation_seasonality(monthly_precip: Sequence[float]) -> float | None:
    """How unevenly the year's precipitation is spread over its months.

    Parameters
    ----------
    monthly_precip : sequence of float, length 12
        Precipitation of each month [mm], January first.

    Returns
    -------
    float or None
        Seasonality index [-], from 0 (the same in every month) to 11/6 (all in one month); None in a year without any.

    Raises
    ------
    ValueError
        If the series is not twelve finite numbers from 0.

    References
    ----------
    .. [1] WALSH_LAWLER1981

    Examples
    --------
    >>> precipitation_seasonality([200.0] * 6 + [0.0] * 6)
    1.0
    """
    precip = twelve("monthly_precip", monthly_precip, low=0.0)
    total = float(precip.sum())
    return float(abs(precip - total / 12.0).sum() / total) if total > 0.0 else None


ANNUAL_MEAN_TEMP = Method(
    id="annual_mean_temp",
    name="Annual mean temperature",
    formula=("annual_mean_temp = mean(monthly_mean_temp)",),
    symbols=(("annual_mean_temp", "mean of the twelve months", "degC"), _TEMPERATURES),
    sources=(),
    limits="Every month counts alike, as in climate tables; counting every day alike changes the mean by up to 0.1 K.",
)

ANNUAL_PRECIP = Method(
    id="annual_precip",
    name="Annual precipitation",
    formula=("annual_precip = sum(monthly_precip)",),
    symbols=(("annual_precip", "all that falls in a year", "mm"), _PRECIPITATION),
    sources=(),
    limits="A total, not a mean: all twelve months must be known. Snow counts as the water it melts to.",
)

ANNUAL_TEMP_RANGE = Method(
    id="annual_temp_range",
    name="Annual temperature range",
    formula=("annual_temp_range = max(monthly_mean_temp) - min(monthly_mean_temp)",),
    symbols=(("annual_temp_range", "from the coldest month to the warmest", "K"), _TEMPERATURES),
    sources=(),
    limits="The range of monthly means; single days are warmer and colder. "
    "A difference of temperatures is given in kelvin.",
)

EXTREME_MONTHS = Method(
    id="extreme_months",
    name="Warmest, coldest, wettest and driest month",
    formula=(),
    rule="The month with the largest (or smallest) of the twelve values; months with equal values are all named.",
    symbols=(),
    sources=(),
    limits="Two months may differ by less than the values are known to.",
    function=extreme_months,
)

DRY_MONTHS = Method(
    id="dry_months",
    name="Dry months by Gaussen's rule",
    formula=("dryness_limit = 2 * monthly_mean_temp",),
    rule="A month is dry when its precipitation in mm is less than twice its mean temperature in °C.",
    symbols=(("dryness_limit", "precipitation below which a month is dry", "mm"), _TEMPERATURES),
    sources=("BAGNOULS_GAUSSEN1953", "WALTER_LIETH1967"),
    limits="A rule of thumb that joins mm and °C by experience. It ignores soil water and wind; some authors count a "
    "month at exactly twice the temperature as dry too. Months at or below 0 °C are never dry by it.",
    function=dry_months,
)

MONTHS_BELOW_FREEZING = Method(
    id="months_below_freezing",
    name="Months averaging below 0 °C",
    formula=(),
    rule="A month counts when its mean temperature is below 0 °C.",
    symbols=(),
    sources=(),
    limits="A monthly mean does not tell frost: nights can freeze in a month that averages above 0 °C.",
    function=months_below_freezing,
)

GROWING_SEASON_MONTHS = Method(
    id="growing_season_months",
    name="Growing season, by monthly means",
    formula=(),
    rule="A month counts when its mean temperature is 5 °C or more.",
    symbols=(),
    sources=(),
    limits="Only warmth is counted, not water or light, and only whole months. Other limits than 5 °C are in use.",
    function=growing_season_months,
)

PRECIPITATION_SEASONALITY = Method(
    id="precipitation_seasonality",
    name="Seasonality of precipitation after Walsh and Lawler",
    formula=("precipitation_seasonality = sum(abs(monthly_precip - annual_precip / 12)) / annual_precip",),
    rule="0 means the same in every month, 1.83 everything in one month. Below 0.2 precipitation is spread evenly, below 0.4 there "
    "is a wetter season, below 0.8 it is seasonal, below 1 with a long dry season; from there on most of it falls within three months.",
    symbols=(
        ("precipitation_seasonality", "seasonality index", ""),
        _PRECIPITATION,
        ("annual_precip", "all that falls in a year", "mm"),
    ),
    sources=("WALSH_LAWLER1981",),
    limits="It tells how uneven the year is, not when it is wet, nor whether plants have enough water. It is taken from the months of "
    "a mean year; single years are more uneven. Undefined where nothing falls.",
    function=precipitation_seasonality,
)
