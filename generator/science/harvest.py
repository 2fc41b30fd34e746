"""Harvests: net production above ground from quadrats that are cut, dried and weighed, and what it is as carbon and as energy."""

from __future__ import annotations

from generator.science.method import Method

_DRY = "g/m2/d"

BIOMASS_OF_AREA = Method(
    id="biomass_of_area",
    name="Biomass on one square metre, from quadrats",
    formula=("biomass = dry_mass / quadrat_area",),
    symbols=(
        ("biomass", "dry mass on one square metre", "g/m2"), ("dry_mass", "mean dry mass from one quadrat", "g"),
        ("quadrat_area", "area of a quadrat", "m2"),
    ),
    sources=(),
    limits="Quadrats must be placed by chance: who puts them where the grass stands high measures too much.",
)  # fmt: skip

HARVEST_NET_PRODUCTION = Method(
    id="harvest_net_production",
    name="Net production by harvest",
    formula=("net_production = (later_biomass - earlier_biomass) / duration",),
    symbols=(
        ("net_production", "net production above ground, dry matter", _DRY), ("later_biomass", "mean biomass at the later harvest", "g/m2"),
        ("earlier_biomass", "mean biomass at the earlier harvest", "g/m2"), ("duration", "time from the one to the other", "d"),
    ),
    sources=("SINGH1975",),
    limits="Above ground only: roots, often the larger part in grassland, are not seen. What was eaten, died and fell in between "
    "is missing too, so it is a lower limit.",
)  # fmt: skip

GROSS_FROM_NET = Method(
    id="gross_from_net",
    name="Gross production from net production and respiration",
    formula=("gross_production = net_production + respiration",),
    symbols=(
        ("gross_production", "all that was built up", _DRY), ("net_production", "what is left of it", _DRY),
        ("respiration", "what the plants respired", _DRY),
    ),
    sources=("ODUM1957",),
    limits="Both for the same plants, area and time, and both as dry matter.",
)  # fmt: skip

EATEN_BY_GRAZERS = Method(
    id="eaten_by_grazers",
    name="Eaten by grazers, from plots with and without them",
    formula=("eaten = ungrazed_production - grazed_production",),
    symbols=(
        ("eaten", "what grazers took", _DRY), ("ungrazed_production", "net production where grazers were kept out", _DRY),
        ("grazed_production", "net production where they could feed", _DRY),
    ),
    sources=(),
    limits="Takes it that grazed and ungrazed plants grow alike. Grazed plants may grow again faster, and a fence or net gives "
    "shelter and shade.",
)  # fmt: skip

CARBON_FROM_DRY_MATTER = Method(
    id="carbon_from_dry_matter",
    name="Carbon in dry matter",
    formula=("carbon = dry_matter * carbon_fraction",),
    symbols=(
        ("carbon", "carbon built in", "g C/m2/d"), ("dry_matter", "plant matter built up, dried", _DRY), ("carbon_fraction", "carbon in a gram of dry matter", "g C/g"),
    ),
    sources=("MAGNUSSEN_REED2004",),
    limits="A convention: 0.45 to 0.5 in land plants, less where there is much ash.",
)  # fmt: skip

ENERGY_FROM_DRY_MATTER = Method(
    id="energy_from_dry_matter",
    name="Energy in dry matter",
    formula=("energy = dry_matter * energy_content",),
    symbols=(
        ("energy", "energy built in", "kJ/m2/d"), ("dry_matter", "plant matter built up, dried", _DRY), ("energy_content", "energy in a gram of dry matter", "kJ/g"),
    ),
    sources=("PLANT_ENERGY",),
    limits="A convention unless it was measured by burning a sample: about 17 to 19 kJ/g in grass and herbs, more in seeds and wood.",
)  # fmt: skip
