"""The water balance of soil through a mean year: what plants use, what is lacking, and what runs off or seeps away."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import reduce

from generator.science.method import Method
from generator.science.months import twelve

USUAL_STORE = 100.0
"""Water that soil holds for plants [mm] where nothing better is known; a convention for comparing climates (CARVALHO_BALANCE)."""


@dataclass(frozen=True)
class WaterBalance:
    """Twelve months of a year that repeats itself, January first, all in mm."""

    soil_water: tuple[float, ...]
    """At the end of each month."""
    evapotranspiration: tuple[float, ...]
    """Actual evapotranspiration, never more than potential."""
    deficit: tuple[float, ...]
    surplus: tuple[float, ...]


@dataclass(frozen=True)
class _Course:
    """What becomes of the soil water S over a span of time: keep * S + add, held between low and high [mm]."""

    high: float
    keep: float = 1.0
    add: float = 0.0
    low: float = 0.0

    def __call__(self, water: float) -> float:
        return min(max(self.keep * water + self.add, self.low), self.high)

    def then(self, next_: _Course) -> _Course:
        """Both spans as one."""
        return _Course(next_(self.high), self.keep * next_.keep, next_.keep * self.add + next_.add, next_(self.low))

    def repeated(self) -> float:
        """The soil water that the span leaves as it found it; of several the largest."""
        if self.keep < 1.0:
            return min(max(self.add / (1.0 - self.keep), self.low), self.high)
        return self.low if self.add < 0.0 else self.high


def drying_balance(
    monthly_precip: Sequence[float], monthly_pet: Sequence[float], soil_store: float = USUAL_STORE
) -> WaterBalance:
    """The balance where a drying soil gives up its water ever more slowly (Thornthwaite and Mather).

    Fit for comparing climates by month. Snow is not followed: what falls in a frozen month counts as water at once, so in
    cold places the surplus of winter really is snow that melts in spring.

    Parameters
    ----------
    monthly_precip : sequence of float, length 12
        Precipitation of each month [mm], January first.
    monthly_pet : sequence of float, length 12
        Potential evapotranspiration of each month [mm].
    soil_store : float
        Most water that the soil can hold for plants [mm], more than 0.

    Returns
    -------
    WaterBalance
        The year that repeats itself: December ends with the soil water with which January begins.

    Raises
    ------
    ValueError
        If a series is not twelve finite numbers from 0, or the store is not a finite number above 0.

    Notes
    -----
    In a month with less rain than demand the soil keeps the part exp(-(demand - rain) / store) of its water [1]_; it never
    dries out wholly. The tables of [2]_ were made for that course. Where the start makes no difference to the year that
    follows, because rain meets demand in every month exactly, the soil is full.

    References
    ----------
    .. [1] PEREIRA2005
    .. [2] THORNTHWAITE_MATHER1957

    Examples
    --------
    >>> year = drying_balance([100.0] * 6 + [0.0] * 6, [50.0] * 12)
    >>> round(year.soil_water[5]), round(sum(year.surplus))
    (100, 205)
    """

    return _balance(monthly_precip, monthly_pet, soil_store, lambda lack: _Course(soil_store, keep=math.exp(-lack / soil_store)))


def bucket_balance(
    monthly_precip: Sequence[float], monthly_pet: Sequence[float], soil_store: float = USUAL_STORE
) -> WaterBalance:
    """The balance of most textbooks: the soil is a bucket that gives all it has until it is empty.

    Parameters, result and errors are those of `drying_balance`; it differs in dry months only, where the whole lack of rain
    is taken from the soil as long as there is any.

    Examples
    --------
    >>> bucket_balance([100.0] * 6 + [0.0] * 6, [50.0] * 12).deficit[6:]
    (0.0, 0.0, 50.0, 50.0, 50.0, 50.0)
    """

    return _balance(monthly_precip, monthly_pet, soil_store, lambda lack: _Course(soil_store, add=-lack))


def _balance(
    monthly_precip: Sequence[float], monthly_pet: Sequence[float], soil_store: float, drying: Callable[[float], _Course]
) -> WaterBalance:
    """The year that repeats itself, with the course that a dry month takes for what it lacks [mm]."""
    if not 0.0 < soil_store < math.inf:
        raise ValueError(f"soil_store: expected a finite number above 0 [mm], found {soil_store:g}")
    soil_store = float(soil_store)
    precip = twelve("monthly_precip", monthly_precip, low=0.0).tolist()
    pet = twelve("monthly_pet", monthly_pet, low=0.0).tolist()
    courses = [
        _Course(soil_store, add=p - e) if p >= e else drying(e - p) for p, e in zip(precip, pet, strict=True)
    ]  # fmt: skip
    before = reduce(_Course.then, courses).repeated()
    months = []
    for p, e, course in zip(precip, pet, courses, strict=True):
        after = course(before)
        used = e if p >= e else min(p + before - after, e)
        surplus = max(before + p - e - soil_store, 0.0) if p >= e else 0.0
        months.append((after, used, e - used, surplus))
        before = after
    return WaterBalance(*(tuple(column) for column in zip(*months, strict=True)))


def monthly_soil_water(
    monthly_precip: Sequence[float], monthly_pet: Sequence[float], soil_store: float = USUAL_STORE
) -> tuple[float, ...]:
    """Soil water at the end of each month [mm], by `drying_balance`."""
    return drying_balance(monthly_precip, monthly_pet, soil_store).soil_water


def monthly_actual_evapotranspiration(
    monthly_precip: Sequence[float], monthly_pet: Sequence[float], soil_store: float = USUAL_STORE
) -> tuple[float, ...]:
    """Actual evapotranspiration of each month [mm], by `drying_balance`."""
    return drying_balance(monthly_precip, monthly_pet, soil_store).evapotranspiration


def actual_evapotranspiration(
    monthly_precip: Sequence[float], monthly_pet: Sequence[float], soil_store: float = USUAL_STORE
) -> float:
    """Actual evapotranspiration of the year [mm], by `drying_balance`."""
    return math.fsum(drying_balance(monthly_precip, monthly_pet, soil_store).evapotranspiration)


def water_deficit(
    monthly_precip: Sequence[float], monthly_pet: Sequence[float], soil_store: float = USUAL_STORE
) -> float:
    """What plants could have used in the year but did not get [mm], by `drying_balance`."""
    return math.fsum(drying_balance(monthly_precip, monthly_pet, soil_store).deficit)


def water_surplus(
    monthly_precip: Sequence[float], monthly_pet: Sequence[float], soil_store: float = USUAL_STORE
) -> float:
    """What runs off or seeps away in the year [mm], by `drying_balance`."""
    return math.fsum(drying_balance(monthly_precip, monthly_pet, soil_store).surplus)


def bucket_soil_water(
    monthly_precip: Sequence[float], monthly_pet: Sequence[float], soil_store: float = USUAL_STORE
) -> tuple[float, ...]:
    """Soil water at the end of each month [mm], by `bucket_balance`."""
    return bucket_balance(monthly_precip, monthly_pet, soil_store).soil_water


_PRECIP = ("monthly_precip", "precipitation of each month", "mm")
_PET = ("monthly_pet", "potential evapotranspiration of each month", "mm")
_AET = ("monthly_actual_evapotranspiration", "actual evapotranspiration of each month", "mm")
_STORE = ("soil_store", "most water that the soil can hold for plants", "mm")
_SOIL = (("soil_water", "water in the soil at the end of a month", "mm"), ("soil_water_before", "the same a month earlier", "mm"))
_SOURCES = ("THORNTHWAITE_MATHER1957", "PEREIRA2005", "CARVALHO_BALANCE")
_LIMITS = (
    "Rain of a whole month is set against the demand of a whole month; slopes, streams and groundwater are left out. "
    "Snow is not followed: in a frozen month it counts as water at once, so a surplus of winter really melts in spring. "
    "The store is a convention: sand holds less than loam, and deep roots reach more than shallow ones."
)
_WET_RULE = (
    "Where more falls than plants could use, the rest fills the soil up to its store; what the soil cannot take is surplus. "
)
_CYCLE_RULE = " The year repeats itself: December leaves the soil as January finds it."
_DRYING_RULE = _WET_RULE + (
    "Where less falls, the soil gives water, ever less of it as it dries (the formula); what is still lacking is deficit."
)

MONTHLY_SOIL_WATER = Method(
    id="monthly_soil_water",
    name="Water in the soil month by month",
    formula=("soil_water = soil_water_before * exp(-(monthly_pet - monthly_precip) / soil_store)",),
    rule=_DRYING_RULE + _CYCLE_RULE,
    symbols=(*_SOIL, _PET, _PRECIP, _STORE),
    sources=_SOURCES,
    limits=_LIMITS + " The simpler bucket of many textbooks gives the soil's water without delay, so it runs dry earlier.",
    function=monthly_soil_water,
)

BUCKET_SOIL_WATER = Method(
    id="bucket_soil_water",
    name="Water in the soil month by month, as a bucket",
    formula=("soil_water = max(0, soil_water_before - (monthly_pet - monthly_precip))",),
    rule=_WET_RULE
    + "Where less falls, the soil gives all that is lacking until it is empty (the formula)."
    + _CYCLE_RULE
    + " This is the usual variant of textbooks. The facts of this site use the other one, in which a drying soil gives ever less.",
    symbols=(*_SOIL, _PET, _PRECIP),
    sources=("RITTER_ROCKFORD",),
    limits=_LIMITS,
    function=bucket_soil_water,
)

MONTHLY_ACTUAL_EVAPOTRANSPIRATION = Method(
    id="monthly_actual_evapotranspiration",
    name="Actual evapotranspiration of each month",
    formula=("monthly_actual_evapotranspiration = monthly_precip + soil_water_before - soil_water",),
    rule="In months with as much rain as plants could use it is the potential evapotranspiration; the formula is for the "
    "other months. " + _DRYING_RULE.replace("the formula", "by the formula for the water in the soil") + _CYCLE_RULE,
    symbols=(_AET, _PRECIP, *_SOIL),
    sources=_SOURCES,
    limits=_LIMITS,
    function=monthly_actual_evapotranspiration,
)

ACTUAL_EVAPOTRANSPIRATION = Method(
    id="actual_evapotranspiration",
    name="Actual evapotranspiration of the year",
    formula=("actual_evapotranspiration = sum(monthly_actual_evapotranspiration)",),
    symbols=(("actual_evapotranspiration", "actual evapotranspiration of the year", "mm"), _AET),
    sources=_SOURCES,
    limits=_LIMITS,
    function=actual_evapotranspiration,
)

WATER_DEFICIT = Method(
    id="water_deficit",
    name="Water deficit of the year",
    formula=("water_deficit = sum(monthly_pet) - sum(monthly_actual_evapotranspiration)",),
    rule="It comes together in the dry months; a wet season does not make up for it.",
    symbols=(("water_deficit", "what plants could have used but did not get", "mm"), _PET, _AET),
    sources=_SOURCES,
    limits=_LIMITS,
    function=water_deficit,
)

WATER_SURPLUS = Method(
    id="water_surplus",
    name="Water surplus of the year",
    formula=("water_surplus = sum(monthly_precip) - sum(monthly_actual_evapotranspiration)",),
    rule="Over a year that repeats itself the soil ends as it began, so all that is not used runs off or seeps away.",
    symbols=(("water_surplus", "what runs off or seeps away", "mm"), _PRECIP, _AET),
    sources=_SOURCES,
    limits=_LIMITS,
    function=water_surplus,
)
