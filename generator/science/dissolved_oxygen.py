"""Oxygen dissolved in water: how much water can hold in touch with air, and how much of that is there."""

from __future__ import annotations

from generator.science.method import Method

VALID_TEMPERATURES = (0.0, 40.0)
"""Water temperatures [degC] from, to, for which the saturation was fitted."""
VALID_SALINITIES = (0.0, 40.0)
"""Salinities [g/kg] from, to, for which the saturation was fitted."""

OXYGEN_SATURATION = Method(
    id="oxygen_saturation",
    name="Oxygen saturation after Benson and Krause",
    formula=(
        "oxygen_saturation = exp(-139.34411 + 1.575701 * 10 ** 5 / absolute_temperature - 6.642308 * 10 ** 7 / absolute_temperature ** 2"
        " + 1.2438 * 10 ** 10 / absolute_temperature ** 3 - 8.621949 * 10 ** 11 / absolute_temperature ** 4"
        " - salinity * (0.017674 - 10.754 / absolute_temperature + 2140.7 / absolute_temperature ** 2))",
    ),
    symbols=(
        ("oxygen_saturation", "dissolved oxygen of water that has settled with the air above it", "mg/L"),
        ("absolute_temperature", "temperature of the water counted from absolute zero", "K"),
        ("salinity", "dissolved salt", "g/kg"),
    ),
    sources=("BENSON_KRAUSE1984",),
    limits="For the air pressure at sea level, for 0 to 40 °C and up to 40 g of salt in a kilogram; about a tenth less at 1000 m above "
    "the sea. Salinity counts on the practical scale, whose numbers differ from g kg⁻¹ by half a percent. Where algae make oxygen, "
    "water can hold more for some hours.",
)

OXYGEN_SATURATION_PERCENT = Method(
    id="oxygen_saturation_percent",
    name="Oxygen as part of saturation",
    formula=("oxygen_saturation_percent = dissolved_oxygen / oxygen_saturation",),
    symbols=(
        ("oxygen_saturation_percent", "part of the saturation that is there", ""),
        ("dissolved_oxygen", "measured dissolved oxygen", "mg/L"),
        ("oxygen_saturation", "what the water could hold at its temperature and salinity", "mg/L"),
    ),
    sources=(),
    limits="Says how far water is from settling with the air, not whether animals get enough: warm water can be saturated "
    "and still hold little.",
)
