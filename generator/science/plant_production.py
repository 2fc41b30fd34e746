"""Net primary production that a climate allows, by the Miami model: two limits, of which the lower one holds."""

from __future__ import annotations

import math

from generator.science.method import Method
from generator.science.months import ROUNDING

TEMPERATURE, PRECIPITATION, BOTH = "temperature", "precipitation", "temperature and precipitation alike"


def limiting_factor(npp_by_temperature: float, npp_by_precipitation: float) -> str:
    """What holds production down by the Miami model: the factor that allows less.

    Parameters
    ----------
    npp_by_temperature, npp_by_precipitation : float
        Production that each of the two allows [g m-2 yr-1, dry matter], not negative.

    Returns
    -------
    str
        `temperature`, `precipitation`, or `temperature and precipitation alike` where they allow the same.

    Raises
    ------
    ValueError
        If a production is negative or not finite.

    References
    ----------
    .. [1] LIETH1973

    Examples
    --------
    >>> limiting_factor(1860.0, 1240.0)
    'precipitation'
    """
    for allowed in (npp_by_temperature, npp_by_precipitation):
        if not 0.0 <= allowed < math.inf:
            raise ValueError(f"expected finite productions from 0 [g m-2 yr-1], found {allowed:g}")
    if abs(npp_by_temperature - npp_by_precipitation) <= ROUNDING:
        return BOTH
    return TEMPERATURE if npp_by_temperature < npp_by_precipitation else PRECIPITATION


_SOURCES = ("LIETH1973", "LIETH1975")
_LIMITS = (
    "A curve through sites measured before 1973; in dry matter, not carbon. "
    "It knows no soil, no season of rain and no irrigation, so it gives what the climate allows, not what grows there."
)
_BY_TEMPERATURE = ("npp_by_temperature", "production that the temperature allows, dry matter", "g/m2/yr")
_BY_PRECIPITATION = ("npp_by_precipitation", "production that the precipitation allows, dry matter", "g/m2/yr")

NPP_BY_TEMPERATURE = Method(
    id="npp_by_temperature",
    name="Net primary production that the temperature allows (Miami model)",
    formula=("npp_by_temperature = 3000 / (1 + exp(1.315 - 0.119 * annual_mean_temp))",),
    symbols=(_BY_TEMPERATURE, ("annual_mean_temp", "annual mean temperature, its number in °C", "")),
    sources=_SOURCES,
    limits=_LIMITS,
)

NPP_BY_PRECIPITATION = Method(
    id="npp_by_precipitation",
    name="Net primary production that the precipitation allows (Miami model)",
    formula=("npp_by_precipitation = 3000 * (1 - exp(-0.000664 * annual_precip))",),
    symbols=(_BY_PRECIPITATION, ("annual_precip", "annual precipitation, its number in mm", "")),
    sources=_SOURCES,
    limits=_LIMITS,
)

POTENTIAL_NPP = Method(
    id="potential_npp",
    name="Potential net primary production (Miami model)",
    formula=("potential_npp = min(npp_by_temperature, npp_by_precipitation)",),
    symbols=(
        ("potential_npp", "net primary production that the climate allows, dry matter", "g/m2/yr"),
        _BY_TEMPERATURE,
        _BY_PRECIPITATION,
    ),
    sources=_SOURCES,
    limits=_LIMITS,
)

LIMITING_FACTOR = Method(
    id="limiting_factor",
    name="Limiting factor of production (Miami model)",
    formula=(),
    rule="Of temperature and precipitation, the one that allows less production; both where they allow the same.",
    symbols=(),
    sources=_SOURCES,
    limits="The model knows these two factors only. Nutrients, light, salt or fire may hold production down further, and within a "
    "year the two factors can take turns.",
    function=limiting_factor,
)
