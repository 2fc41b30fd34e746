"""The climate class after Köppen and Geiger, found by a path of questions that can be told one by one."""

from __future__ import annotations

import operator
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from generator.science.method import Method
from generator.science.months import FloatArray, twelve

COLD_LIMIT = 0.0
"""Mean of the coldest month [degC] that parts mild (C) from cold (D) winters, as in Peel et al. and Beck et al."""
OLDER_COLD_LIMIT = -3.0
"""The same limit as Köppen drew it, kept by Kottek et al. and by many older maps [degC]."""
MAIN_SHARE = 0.7
"""Share of the year's precipitation [-] from which a half-year counts as the wet one."""
SUMMER, WINTER = [3, 4, 5, 6, 7, 8], [9, 10, 11, 0, 1, 2]
"""Places of April to September and of October to March in a year; south of the equator they change their parts."""
DECIMALS = 9
"""Means and limits are rounded to so many decimals before they are compared: 12 times 28.3333 must be 340."""
CLASSES = (
    "Af", "Am", "Aw", "BWh", "BWk", "BSh", "BSk", "Csa", "Csb", "Csc", "Cwa", "Cwb", "Cwc", "Cfa", "Cfb", "Cfc",
    "Dsa", "Dsb", "Dsc", "Dsd", "Dwa", "Dwb", "Dwc", "Dwd", "Dfa", "Dfb", "Dfc", "Dfd", "ET", "EF",
)  # fmt: skip
"""All thirty classes."""
SIGNS: dict[str, Callable[[float, float], bool]] = {
    "<": operator.lt, ">": operator.gt, "≤": operator.le, "≥": operator.ge,
}  # fmt: skip


@dataclass(frozen=True)
class Question:
    """One comparison on the way to a class."""

    asks: str
    left: float
    sign: str
    """One of `SIGNS`."""
    right: float
    unit: str
    """Label of the unit of both numbers; empty for a number of months."""

    @property
    def holds(self) -> bool:
        """Whether the comparison is true."""
        return SIGNS[self.sign](self.left, self.right)


def climate_class(
    monthly_mean_temp: Sequence[float], monthly_precip: Sequence[float], cold_limit: float = COLD_LIMIT
) -> str:
    """The class of a climate after Köppen and Geiger, as letters.

    Parameters
    ----------
    monthly_mean_temp : sequence of float, length 12
        Mean temperature of each month [degC], January first.
    monthly_precip : sequence of float, length 12
        Precipitation of each month [mm], January first.
    cold_limit : float
        Mean of the coldest month [degC] above which winters count as mild (C, not D).

    Returns
    -------
    str
        Two or three letters, such as `BSk`, `Cfb` or `ET`.

    Raises
    ------
    ValueError
        If a series is not twelve finite numbers, or a precipitation is negative.

    Notes
    -----
    Limits of [1]_; dryness (B) is asked first, before heat and frost, as in [2]_. Summer is the warmer of April to
    September and October to March, so no latitude is needed; where both are equally warm it is April to September.
    Where both summer and winter would count as dry, the half-year with the wettest month is the wet one. A warmest month
    of exactly 10 degC is too cold (E), a coldest month of exactly 0 degC is cold (D).

    References
    ----------
    .. [1] PEEL2007
    .. [2] BECK2018

    Examples
    --------
    >>> climate_class([-9, -6, 0, 8, 14, 19, 22, 21, 15, 8, 0, -7], [12, 10, 16, 26, 48, 66, 42, 34, 26, 20, 15, 12])
    'BSk'
    """
    return class_and_path(monthly_mean_temp, monthly_precip, cold_limit)[0]


def class_and_path(
    monthly_mean_temp: Sequence[float], monthly_precip: Sequence[float], cold_limit: float = COLD_LIMIT
) -> tuple[str, tuple[Question, ...]]:
    """The class of `climate_class`, and the questions that led to it, in their order.

    Raises
    ------
    ValueError
        As in `climate_class`.
    """
    temp = twelve("monthly_mean_temp", monthly_mean_temp)
    precip = twelve("monthly_precip", monthly_precip, low=0.0)
    asking = _Asking(temp, precip, cold_limit)
    letters = asking.letters()
    return letters, tuple(asking.asked)


class _Asking:
    """One run down the questions, which are kept as they are asked."""

    def __init__(self, temp: FloatArray, precip: FloatArray, cold_limit: float) -> None:
        self.asked: list[Question] = []
        self.cold_limit = cold_limit
        self.temp, self.precip = temp, precip
        self.mean, self.total = _rounded(temp.mean()), _rounded(precip.sum())
        self.coldest, self.hottest = float(temp.min()), float(temp.max())
        self.summer, self.winter = self.halves()

    def ask(self, asks: str, left: float, sign: str, right: float, unit: str) -> bool:
        question = Question(asks, _rounded(left), sign, _rounded(right), unit)
        self.asked.append(question)
        return question.holds

    def letters(self) -> str:
        extra = self.extra_for_wet_summers()
        limit = 20.0 * self.mean + extra
        named = f"20 × the annual mean temperature{f' + {extra:g}' if extra else ''}"
        if self.ask(f"Dry (B): does less precipitation fall than the limit, {named}?", self.total, "<", limit, "mm"):
            return self.dry(limit)
        if self.ask("Hot all year (A): is the coldest month 18 °C or warmer?", self.coldest, "≥", 18, "degC"):
            return self.tropical()
        if not self.ask("Is the warmest month above 10 °C?", self.hottest, ">", 10, "degC"):
            thaws = self.ask("Tundra (ET), not ice (EF): is the warmest month above 0 °C?", self.hottest, ">", 0, "degC")
            return "ET" if thaws else "EF"
        limit_shown = f"{self.cold_limit:g}".replace("-", "−")
        asks = f"Mild winters (C), not cold ones (D): is the coldest month above {limit_shown} °C?"
        group = "C" if self.ask(asks, self.coldest, ">", self.cold_limit, "degC") else "D"
        return group + self.dry_season() + self.warmth(group)

    def halves(self) -> tuple[FloatArray, FloatArray]:
        """Precipitation of the warmer half of the year, and of the other [mm]."""
        asks = "Summer half-year: is April to September as warm as October to March, or warmer?"
        northern = self.ask(asks, self.temp[SUMMER].mean(), "≥", self.temp[WINTER].mean(), "degC")
        halves = self.precip[SUMMER], self.precip[WINTER]
        return halves if northern else halves[::-1]

    def extra_for_wet_summers(self) -> float:
        """What is added to the limit of dryness [mm]: rain in the warm half of the year evaporates faster.

        A year without rain has no wet half, and gets what evenly spread rain gets.
        """
        main = MAIN_SHARE * self.total
        if main and self.ask("Wet winters: does 70 % of the total, or more, fall in the winter half-year?", self.winter.sum(), "≥", main, "mm"):
            return 0.0
        if main and self.ask("Wet summers: does 70 % of the total, or more, fall in the summer half-year?", self.summer.sum(), "≥", main, "mm"):
            return 280.0
        return 140.0

    def dry(self, limit: float) -> str:
        desert = self.ask("Desert (W), not steppe (S): does less than half of the limit fall?", self.total, "<", limit / 2, "mm")
        hot = self.ask("Hot (h), not cool (k): is the annual mean 18 °C or more?", self.mean, "≥", 18, "degC")
        return f"B{'W' if desert else 'S'}{'h' if hot else 'k'}"

    def tropical(self) -> str:
        driest = float(self.precip.min())
        if self.ask("Wet in every month (f): does the driest month get 60 mm or more?", driest, "≥", 60, "mm"):
            return "Af"
        asks = "Wet over a short dry season (m): does the driest month get 100 mm less a 25th of the year's total, or more?"
        return "Am" if self.ask(asks, driest, "≥", 100 - self.total / 25, "mm") else "Aw"

    def dry_season(self) -> str:
        summer, winter = self.summer, self.winter
        dry_summer = self.ask(
            "Dry summer (s): does the driest summer month get less than 40 mm?", summer.min(), "<", 40, "mm"
        ) and self.ask("… and less than a third of the wettest winter month?", summer.min(), "<", winter.max() / 3, "mm")
        asks = "Dry winter (w): does the driest winter month get less than a tenth of the wettest summer month?"
        dry_winter = self.ask(asks, winter.min(), "<", summer.max() / 10, "mm")
        if dry_summer and dry_winter:
            asks = "Both would count as dry. Is the wettest winter month as wet as the wettest summer month, or wetter?"
            dry_summer = self.ask(asks, winter.max(), "≥", summer.max(), "mm")
            dry_winter = not dry_summer
        return "s" if dry_summer else "w" if dry_winter else "f"

    def warmth(self, group: str) -> str:
        if self.ask("Hot summer (a): is the warmest month 22 °C or warmer?", self.hottest, "≥", 22, "degC"):
            return "a"
        warm_months = int((self.temp.round(DECIMALS) >= 10).sum())
        if self.ask("Warm summer (b): do four months or more reach a mean of 10 °C?", warm_months, "≥", 4, ""):
            return "b"
        asks = "Very cold winter (d), not just a short summer (c): is the coldest month below −38 °C?"
        return "d" if group == "D" and self.ask(asks, self.coldest, "<", -38, "degC") else "c"


def _rounded(value: float) -> float:
    return round(float(value), DECIMALS)


_WINTERS = {"C": "mild", "D": "cold"}
_SUMMERS = {"a": "hot", "b": "warm", "c": "short, cool", "d": "short, cool"}
_WHOLE = {
    "Af": "hot all year, rain in every month",
    "Am": "hot all year, very heavy rains and a short dry season",
    "Aw": "hot all year, with a dry season",
    "BWh": "hot desert",
    "BSh": "hot dry steppe",
    "ET": "no month above 10 °C, too cold for trees",
    "EF": "frozen, no month above 0 °C",
}


def reading(letters: str, coldest: float) -> str:
    """A climate class in plain words.

    Parameters
    ----------
    letters : str
        The class, as `climate_class` gives it.
    coldest : float
        Mean of the coldest month [degC]: the letter k of deserts and steppes says nothing of the winter.

    Returns
    -------
    str
        A few words without capital and full stop.

    Raises
    ------
    ValueError
        If there is no such class.

    Examples
    --------
    >>> reading("BSk", -9.0), reading("Csa", 9.5)
    ('dry steppe, cold winters', 'mild winters, hot and dry summers')
    """
    if letters not in CLASSES:
        raise ValueError(f"expected a climate class, found {letters!r}")
    if letters in _WHOLE:
        return _WHOLE[letters]
    group, season, warmth = letters
    if group == "B":
        return f"{'desert' if season == 'W' else 'dry steppe'}, {'mild' if coldest > COLD_LIMIT else 'cold'} winters"
    winters = f"{'very ' if warmth == 'd' else ''}{_WINTERS[group]}{' and dry' if season == 'w' else ''} winters"
    summers = f"{_SUMMERS[warmth]}{' and dry' if season == 's' else ''} summers"
    return f"{winters}, {summers}{', no dry season' if season == 'f' else ''}"


CLIMATE_CLASS = Method(
    id="climate_class",
    name="Climate class after Köppen and Geiger",
    formula=(),
    rule="Questions in order: is it dry (B), hot all year (A), never above 10 °C (E), or are winters mild (C) or cold (D)? "
    "The next letters tell when it is dry and how warm it is. Summer is the warmer half-year, April to September or "
    "October to March. Dryness is asked first.",
    symbols=(),
    sources=("PEEL2007", "BECK2018"),
    limits="Versions of the scheme differ. Here winters are mild (C) above 0 °C; Köppen and many older maps take −3 °C. Some "
    "ask for cold (E) before dryness. A place near a limit changes its class with a fraction of a degree, and maps show "
    "averages of whole areas, so a map may name another class.",
    function=climate_class,
)
