"""Primary production required: how much plant growth lies behind a catch, step by step down the food chain."""

from __future__ import annotations

from generator.science.method import Method

PRIMARY_PRODUCTION_REQUIRED = Method(
    id="primary_production_required",
    name="Primary production required for a catch",
    formula=("primary_production_required = catch / fresh_mass_per_carbon * (1 / transfer_efficiency) ** (trophic_level - 1)",),
    symbols=(
        ("primary_production_required", "net primary production, as carbon, that the catch rests on", "t C/yr"),
        ("catch", "fresh mass taken out in a year", "t/yr"),
        ("fresh_mass_per_carbon", "fresh mass that holds a unit of carbon, usually 9", "g/g C"),
        ("transfer_efficiency", "part of the production that passes each step, usually 0.10", ""),
        ("trophic_level", "trophic level of what is caught, 1 for plants", ""),
    ),
    sources=("PAULY_CHRISTENSEN1995", "INDEX_PPR"),
    limits="One efficiency stands for every step, and a small change of it changes the result much. "
    "Work it out for each species and add; the mean trophic level of a mixed catch gives too little, "
    "for each level multiplies by about ten.",
)

PRIMARY_PRODUCTION_SHARE = Method(
    id="primary_production_share",
    name="Share of the net primary production that a catch rests on",
    formula=("primary_production_share = primary_production_required * energy_per_carbon / net_production",),
    symbols=(
        ("primary_production_share", "part of the net primary production behind the catch", ""),
        ("primary_production_required", "net primary production behind the catch, as carbon", "g C/m2/yr"),
        ("energy_per_carbon", "energy in organic matter that holds a gram of carbon", "kJ/g C"),
        ("net_production", "net production of the producers", "kJ/m2/yr"),
    ),
    sources=("PAULY_CHRISTENSEN1995",),
    limits="Above 100 % the catch cannot last, or food comes from outside. A small share does not show that the stock is safe.",
)
