"""Net primary production that a climate allows, by the Miami model: two limits, of which the lower one holds."""

from __future__ import annotations

from generator.science.method import Method

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
    symbols=(_BY_TEMPERATURE, ("annual_mean_temp", "annual mean temperature, its number in degC", "")),
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
