"""Conversions between energy, carbon and dry matter: each with its factor, which is stated and never silent."""

from __future__ import annotations

from generator.science.method import Method

_FLOW = "kJ/m2/yr"
KILOJOULES_PER_KILOCALORIE = 4.184
"""Of the thermochemical kilocalorie [kJ/kcal]; the International Table kilocalorie is 4.1868 kJ."""

ENERGY_CONVERSION = Method(
    id="energy_conversion",
    name="Energy in another unit",
    formula=("energy = amount * factor",),
    symbols=(
        ("energy", "the flow in kilojoules", _FLOW),
        ("amount", "the flow as stated", "kcal/m2/yr"),
        ("factor", "how much of the one unit makes up the other; 4.184 kilojoules for a thermochemical kilocalorie", "kJ/kcal"),
    ),
    sources=("NIST_SP811",),
    limits="Exact. The kilocalorie of steam tables is a little larger, 4.1868 kJ; older works seldom say which one they use.",
)

ENERGY_FROM_CARBON = Method(
    id="energy_from_carbon",
    name="Energy from carbon",
    formula=("energy = carbon * energy_per_carbon",),
    symbols=(
        ("energy", "the flow as energy", _FLOW),
        ("carbon", "the flow as carbon", "g C/m2/yr"),
        ("energy_per_carbon", "energy in organic matter that holds a gram of carbon", "kJ/g C"),
    ),
    sources=("STRAYER2012", "FINLAY_UHLIG1981", "SALONEN1976"),
    limits="The factor depends on what the matter is made of: about 39 for sugar, about 45 for living things, more for fat. "
    "With one factor for all levels the shares between them stay the same.",
)

ENERGY_PER_DRY_MATTER = Method(
    id="energy_per_dry_matter",
    name="Energy in a gram of dry matter, by way of carbon",
    formula=("energy_per_dry_matter = carbon_per_dry_matter * energy_per_carbon",),
    symbols=(
        ("energy_per_dry_matter", "energy in a gram of dry mass", "kJ/g"),
        ("carbon_per_dry_matter", "carbon in a gram of dry mass", "g C/g"),
        ("energy_per_carbon", "energy in organic matter that holds a gram of carbon", "kJ/g C"),
    ),
    sources=("STRAYER2012",),
    limits="Both factors are means over many kinds of organisms; ash and water in a sample make it smaller.",
)
