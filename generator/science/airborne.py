"""Carbon in the air: as a mass and as parts per million, and the share of emissions that stays there."""

from __future__ import annotations

from generator.science.method import Method

CARBON_PER_PPM = "2.124"
"""Carbon in the whole air for each ppm of carbon dioxide [Gt C/ppm], as the Global Carbon Budgets use it.

Other works have 2.12, 2.13 or 2.14, by the mass of air that they take: one factor for a whole budget, and name it.
"""

CARBON_AS_PPM = Method(
    id="carbon_as_ppm",
    name="Carbon in the air as parts per million",
    formula=("parts = carbon / carbon_per_ppm",),
    symbols=(
        ("parts", "carbon dioxide in dry air", "ppm CO2"), ("carbon", "carbon in the air as carbon dioxide", "Gt C"),
        ("carbon_per_ppm", "carbon in the whole air for each ppm", "Gt C/ppm CO2"),
    ),
    sources=("BALLANTYNE2012", "GCB2024"),
    limits="The factor 2.124 is a convention of carbon budgets. It takes the gas to be mixed evenly through the whole air.",
)  # fmt: skip

PPM_AS_CARBON = Method(
    id="ppm_as_carbon",
    name="Parts per million in the air as carbon",
    formula=("carbon = parts * carbon_per_ppm",),
    symbols=CARBON_AS_PPM.symbols,
    sources=CARBON_AS_PPM.sources,
    limits=CARBON_AS_PPM.limits,
)

AIRBORNE_FRACTION = Method(
    id="airborne_fraction",
    name="Airborne fraction",
    formula=("airborne_fraction = growth / emissions",),
    symbols=(
        ("airborne_fraction", "share of the emissions that stays in the air", ""),
        ("growth", "growth of the carbon in the air", "Gt C/yr"), ("emissions", "carbon that people emit", "Gt C/yr"),
    ),
    sources=("GCB2019",),
    limits="It swings from year to year with the uptake by land, so a mean of ten years says more. It is no law of nature: "
    "the share depends on how fast emissions grow. Undefined without emissions.",
)  # fmt: skip
