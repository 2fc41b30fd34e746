"""Temperature and height: lapse rates of still and of rising air, cloud base, and air that crosses a mountain."""

from __future__ import annotations

import math

from generator.science.method import Method

GRAVITY, HEAT_CAPACITY = 9.80665, 1004.67
"""Of Earth [m s⁻²], and of dry air at constant pressure [J kg⁻¹ K⁻¹]."""
GAS_CONSTANT, VAPORISATION, RATIO = 287.05, 2.501e6, 0.622
"""Of dry air [J kg⁻¹ K⁻¹]; heat to turn water at 0 °C into vapour [J kg⁻¹]; molar mass of water over that of dry air."""
ZERO = 273.15
"""0 degC [K]."""
COLDEST, WARMEST = -80.0, 50.0
"""Between which the moist adiabatic lapse rate is worked out [degC]."""
RISE_PER_KELVIN = 125.0
"""How far air must rise for each kelvin between its temperature and its dew point before cloud forms [m K⁻¹]."""


def moist_adiabatic_lapse_rate(temperature: float, pressure: float) -> float:
    """How fast rising air cools while water condenses in it.

    Parameters
    ----------
    temperature : float
        Of the saturated air [degC], from -80 to 50.
    pressure : float
        [hPa], above 100.

    Returns
    -------
    float
        Lapse rate [K km⁻¹], positive where temperature falls with height.

    Raises
    ------
    ValueError
        If temperature or pressure lies outside these limits.

    Notes
    -----
    Of saturated air that keeps its vapour in balance with liquid water. The warmer the air, the more water condenses from
    it and the slower it cools; in very cold air the rate comes near that of dry air.

    References
    ----------
    .. [1] AMS_LAPSE
    .. [2] BOLTON1980, for the pressure of saturated vapour

    Examples
    --------
    >>> round(moist_adiabatic_lapse_rate(20.0, 1000.0), 2)
    4.22
    """
    if not COLDEST <= temperature <= WARMEST:
        raise ValueError(f"temperature: expected {COLDEST:g} to {WARMEST:g} degC, found {temperature:g}")
    if not 100.0 < pressure < math.inf:
        raise ValueError(f"pressure: expected more than 100 hPa, found {pressure:g}")
    kelvin = temperature + ZERO
    vapour = 6.112 * math.exp(17.67 * temperature / (temperature + 243.5))
    mixing_ratio = RATIO * vapour / (pressure - vapour)
    released = VAPORISATION * mixing_ratio
    above = GRAVITY * (1.0 + released / (GAS_CONSTANT * kelvin))
    below = HEAT_CAPACITY + released * VAPORISATION * RATIO / (GAS_CONSTANT * kelvin**2)
    return 1000.0 * above / below


_DRY = ("dry_lapse_rate", "cooling of rising air without cloud", "K/km")

ENVIRONMENTAL_LAPSE_RATE = Method(
    id="environmental_lapse_rate",
    name="Lapse rate between two stations",
    formula=("lapse_rate = (temperature_before - temperature) / (height - height_before)",),
    symbols=(
        ("lapse_rate", "how much colder it is for each kilometre up", "K/km"),
        ("temperature_before", "at the station before", "degC"), ("temperature", "at the station", "degC"),
        ("height", "of the station", "m"), ("height_before", "of the station before", "m"),
    ),
    sources=("BARRY_CHORLEY2010",),
    limits="Of the air near the ground, from one station to the next. Below zero it is warmer higher up: cold air has gathered below. "
    "Stations far apart differ for other reasons too, such as the distance from the sea.",
)  # fmt: skip

DRY_ADIABATIC_LAPSE_RATE = Method(
    id="dry_adiabatic_lapse_rate",
    name="Dry adiabatic lapse rate",
    formula=("dry_lapse_rate = gravity / heat_capacity",),
    symbols=(_DRY, ("gravity", "acceleration of free fall", "m/s2"), ("heat_capacity", "heat that warms dry air at constant pressure", "J/kg/K")),
    sources=("AMS_LAPSE",),
    limits="For air that rises or sinks without cloud and without exchanging heat; close to 10 K for each kilometre.",
)

MOIST_ADIABATIC_LAPSE_RATE = Method(
    id="moist_adiabatic_lapse_rate",
    name="Moist adiabatic lapse rate",
    formula=(
        "vapour_pressure = 6.112 * exp(17.67 * temperature / (temperature + 243.5))",
        "mixing_ratio = 0.622 * vapour_pressure / (pressure - vapour_pressure)",
        "moist_lapse_rate = gravity * (1 + vaporisation * mixing_ratio / (gas_constant * absolute_temperature)) "
        "/ (heat_capacity + vaporisation ** 2 * mixing_ratio * 0.622 / (gas_constant * absolute_temperature ** 2))",
    ),
    symbols=(
        ("moist_lapse_rate", "cooling of rising air in cloud", "K/m"), ("vapour_pressure", "of saturated air", "hPa"),
        ("mixing_ratio", "vapour for each mass of dry air", "kg/kg"), ("temperature", "of the air", "degC"),
        ("absolute_temperature", "the same from absolute zero", "K"), ("pressure", "of the air", "hPa"),
        ("gravity", "acceleration of free fall", "m/s2"), ("heat_capacity", "heat that warms dry air at constant pressure", "J/kg/K"),
        ("vaporisation", "heat that turns water into vapour", "J/kg"), ("gas_constant", "of dry air", "J/kg/K"),
    ),
    sources=("AMS_LAPSE", "BOLTON1980"),
    limits="Not constant: about 4 K for each kilometre in warm air, over 8 in very cold air. The 5 to 6 of many books is for mild air low down. "
    "Here it is taken at the cloud base and kept up to the crest, so the crest comes out a little too warm.",
    function=moist_adiabatic_lapse_rate,
)  # fmt: skip

STANDARD_PRESSURE = Method(
    id="standard_pressure",
    name="Air pressure of the standard atmosphere",
    formula=("pressure = 1013.25 * (1 - 0.0065 * height / 288.15) ** 5.2559",),
    symbols=(("pressure", "of the air", "hPa"), ("height", "above the sea", "m")),
    sources=("USSA1976",),
    limits="A mean over the middle latitudes, from 15 °C at the sea with 6.5 K less for each kilometre; the weather changes it by some percent. "
    "Up to 11 km.",
)

CLOUD_BASE = Method(
    id="cloud_base",
    name="Cloud base by rule of thumb",
    formula=("cloud_base = height + rise_per_kelvin * (temperature - dew_point)",),
    symbols=(
        ("cloud_base", "height at which cloud begins", "m"), ("height", "where the air sets out", "m"),
        ("rise_per_kelvin", "125 m for each kelvin", "m/K"), ("temperature", "of the air where it sets out", "degC"),
        ("dew_point", "temperature at which the air would be saturated", "degC"),
    ),
    sources=("AHRENS",),
    limits="A rule of thumb: rising air cools by about 10 K for each kilometre and its dew point falls by about 2 K, so they meet after 125 m "
    "for each kelvin between them.",
)  # fmt: skip

TEMPERATURE_AT_HEIGHT = Method(
    id="temperature_at_height",
    name="Temperature of rising or sinking air",
    formula=("temperature = temperature_before - lapse_rate * (height - height_before)",),
    symbols=(
        ("temperature", "after the way", "degC"), ("temperature_before", "before it", "degC"), ("lapse_rate", "dry or moist, whichever holds", "K/km"),
        ("height", "where the way ends", "m"), ("height_before", "where it begins", "m"),
    ),
    sources=("BARRY_CHORLEY2010",),
    limits="With one lapse rate all the way. Air that sinks warms by the dry one, for no cloud is left to evaporate.",
)  # fmt: skip

FOEHN_WARMING = Method(
    id="foehn_warming",
    name="How much warmer air comes down than it went up",
    formula=("warming = (dry_lapse_rate - moist_lapse_rate) * (crest - cloud_base)",),
    symbols=(
        ("warming", "at the height from which the air set out", "K"), _DRY, ("moist_lapse_rate", "its cooling in cloud", "K/km"),
        ("crest", "height of the crest", "m"), ("cloud_base", "height at which cloud begins", "m"),
    ),
    sources=("ESA_FOEHN", "BARRY_CHORLEY2010"),
    limits="Takes it that all water that condenses falls as rain or snow before the crest, and that the same air goes all the way. "
    "Without cloud below the crest there is no warming.",
)  # fmt: skip
