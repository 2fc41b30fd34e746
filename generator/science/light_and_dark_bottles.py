"""Light and dark bottles: gross production, net production and respiration from oxygen, per hour and by the day, and as carbon."""

from __future__ import annotations

from generator.science.method import Method
from generator.science.substances import molar_mass

_OXYGEN, _RATE, _DAILY = "mg O2/L", "mg O2/L/h", "mg O2/L/d"
_LIGHT = ("light", "mean oxygen in the light bottles at the end", _OXYGEN)
_DARK = ("dark", "mean oxygen in the dark bottles at the end", _OXYGEN)
_INITIAL = ("initial", "mean oxygen at the start", _OXYGEN)
_INCUBATION = ("incubation", "time that the bottles hung in the water", "h")
_BOTTLE_SOURCES = ("GAARDER_GRAN1927", "MICHIGAN_LIMNO")
_MOLAR = (
    ("molar_mass_carbon", f"mass of one mole of carbon, {molar_mass('C'):g} g", "g C/mol"),
    ("molar_mass_oxygen", f"mass of one mole of oxygen gas, {molar_mass('O2'):g} g", "g O2/mol"),
)

BOTTLE_GROSS_PRODUCTION = Method(
    id="bottle_gross_production",
    name="Gross production by light and dark bottles",
    formula=("gross_production = (light - dark) / incubation",),
    symbols=(("gross_production", "oxygen made by photosynthesis", _RATE), _LIGHT, _DARK, _INCUBATION),
    sources=_BOTTLE_SOURCES,
    limits="Takes it that as much is respired in the light as in the dark. Algae may respire more in the light, so gross production "
    "may come out too small. Below zero it cannot be: then an error is larger than what was to be measured.",
)

BOTTLE_NET_PRODUCTION = Method(
    id="bottle_net_production",
    name="Net production by light bottles",
    formula=("net_production = (light - initial) / incubation",),
    symbols=(("net_production", "oxygen left over after all respiration in the bottle", _RATE), _LIGHT, _INITIAL, _INCUBATION),
    sources=_BOTTLE_SOURCES,
    limits="Net of everything that respires in the bottle: algae, bacteria and small animals together, so the algae's own net "
    "production is larger. Below zero is a real result: more is respired there than is made. Bubbles and nutrients that run out "
    "falsify long incubations.",
)

BOTTLE_RESPIRATION = Method(
    id="bottle_respiration",
    name="Respiration by dark bottles",
    formula=("respiration = (initial - dark) / incubation",),
    symbols=(("respiration", "oxygen used by everything alive in the bottle", _RATE), _INITIAL, _DARK, _INCUBATION),
    sources=_BOTTLE_SOURCES,
    limits="Of algae, bacteria and small animals together. Below zero it cannot be: no oxygen is made in the dark, so light got in, "
    "or a reading is wrong.",
)

DAILY_GROSS_PRODUCTION = Method(
    id="daily_gross_production",
    name="Gross production of a day",
    formula=("daily_gross_production = gross_production * light_hours",),
    symbols=(
        ("daily_gross_production", "gross production of a day", _DAILY), ("gross_production", "gross production of an hour", _RATE),
        ("light_hours", "hours of light in a day", "h/d"),
    ),
    sources=("SELVARAJ2005",),
    limits="Photosynthesis runs in the light only. The rate of the incubation is taken to hold in all hours of light, which gives "
    "too much where the bottles hung round noon only.",
)  # fmt: skip

DAILY_RESPIRATION = Method(
    id="daily_respiration",
    name="Respiration of a day",
    formula=("daily_respiration = respiration * hours_of_a_day",),
    symbols=(
        ("daily_respiration", "respiration of a day", _DAILY), ("respiration", "respiration of an hour", _RATE),
        ("hours_of_a_day", "24, for respiration goes on day and night", "h/d"),
    ),
    sources=(),
    limits="Takes it that as much is respired by night as by day.",
)  # fmt: skip

DAILY_NET_PRODUCTION = Method(
    id="daily_net_production",
    name="Net production of a day",
    formula=("daily_net_production = daily_gross_production - daily_respiration",),
    symbols=(
        ("daily_net_production", "what a day and a night leave over", _DAILY),
        ("daily_gross_production", "gross production of a day", _DAILY), ("daily_respiration", "respiration of a day", _DAILY),
    ),
    sources=(),
    limits="Net of everything that respires in the water. Smaller than the net production of the bottles in the light, because "
    "respiration goes on by night.",
)  # fmt: skip

DAILY_NET_ERROR = Method(
    id="daily_net_error",
    name="Standard error of the net production of a day",
    formula=(
        "daily_net_error = sqrt((light_hours * light_error) ** 2 + ((hours_of_a_day - light_hours) * dark_error) ** 2"
        " + (hours_of_a_day * initial_error) ** 2) / incubation",
    ),
    symbols=(
        ("daily_net_error", "standard error of the net production of a day", _DAILY), ("light_hours", "hours of light in a day", "h/d"),
        ("hours_of_a_day", "24, for respiration goes on day and night", "h/d"), ("light_error", "standard error of the light bottles", _OXYGEN),
        ("dark_error", "standard error of the dark bottles", _OXYGEN), ("initial_error", "standard error of the initial bottles", _OXYGEN),
        _INCUBATION,
    ),
    sources=("GUM2008",),
    limits="Gross production and respiration rest on the same dark bottles, so their errors are not independent and must not be "
    "added as if they were: this formula goes back to the three sorts of bottles, which are.",
)  # fmt: skip

CARBON_FROM_OXYGEN = Method(
    id="carbon_from_oxygen",
    name="Carbon fixed, from the oxygen made",
    formula=("carbon = oxygen * molar_mass_carbon / molar_mass_oxygen / photosynthetic_quotient",),
    symbols=(
        ("carbon", "carbon built into living matter", "g C/m2/d"), ("oxygen", "oxygen made by photosynthesis", "g O2/m2/d"), *_MOLAR,
        ("photosynthetic_quotient", "moles of oxygen made for each mole of carbon fixed", ""),
    ),
    sources=("KENNESAW_LIMNO", "TRENTMAN2023"),
    limits="The photosynthetic quotient is a convention: 1.0 where only sugar is made, 1.2 to 1.25 as a usual mean with fats and "
    "proteins. Measured quotients scatter far more widely, so carbon is known less well than oxygen.",
)  # fmt: skip

CARBON_OF_RESPIRATION = Method(
    id="carbon_of_respiration",
    name="Carbon respired, from the oxygen used",
    formula=("carbon = oxygen * molar_mass_carbon / molar_mass_oxygen * respiratory_quotient",),
    symbols=(
        ("carbon", "carbon given off as carbon dioxide", "g C/m2/d"), ("oxygen", "oxygen used by respiration", "g O2/m2/d"), *_MOLAR,
        ("respiratory_quotient", "moles of carbon dioxide given off for each mole of oxygen used", ""),
    ),
    sources=(),
    limits="The respiratory quotient is a convention too: 1.0 where sugar is respired, about 0.7 for fats.",
)  # fmt: skip

NET_CARBON = Method(
    id="net_carbon",
    name="Net production as carbon",
    formula=("net_carbon = gross_carbon - respired_carbon",),
    symbols=(
        ("net_carbon", "carbon left over", "g C/m2/d"), ("gross_carbon", "carbon fixed", "g C/m2/d"),
        ("respired_carbon", "carbon respired", "g C/m2/d"),
    ),
    sources=(),
    limits="Here oxygen made and oxygen used are turned into carbon each with its own quotient. Some works divide net oxygen by the "
    "photosynthetic quotient instead; the two agree only where the one quotient is 1 divided by the other, as where both are 1.",
)  # fmt: skip
