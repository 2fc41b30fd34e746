"""Energy flow through feeding levels: production, what is passed on, and the area that a consumer needs."""

from __future__ import annotations

from generator.quantities.expression import Expression
from generator.science.method import Method

_FLOW = "kJ/m2/yr"
_PRODUCTION = ("production", "production of the level", _FLOW)
_EATEN = ("eaten", "energy in the food eaten", _FLOW)
_EGESTED = ("egested", "energy in faeces", _FLOW)

NET_PRODUCTION = Method(
    id="net_production",
    name="Net primary production",
    formula=("net_production = gross_production - respiration",),
    symbols=(
        ("net_production", "net production of the plants", _FLOW),
        ("gross_production", "energy fixed by photosynthesis", _FLOW),
        ("respiration", "energy that the plants respire themselves", _FLOW),
    ),
    sources=("ODUM1957",),
    limits="For producers. Everything must be for one area and one span of time.",
)

CONSUMER_PRODUCTION = Method(
    id="consumer_production",
    name="Production of a consumer",
    formula=("production = eaten - egested - respired",),
    symbols=(
        ("production", "energy in growth and offspring", _FLOW),
        _EATEN,
        _EGESTED,
        ("respired", "energy leaving as heat of respiration", _FLOW),
    ),
    sources=("STRAYER2012", "PETRUSEWICZ_MACFADYEN1970"),
    limits="For consumers, over a time in which their number does not change much. Urine is excreted, not egested: its energy was taken up. "
    "It has no term of its own here: as a rule it is measured with the faeces where it leaves with them, as in birds and insects; elsewhere "
    "production comes out a little too large. "
    "Any one of the four follows from the other three.",
)
CONSUMER_BALANCE = {
    "eaten": Expression("egested + respired + production"),
    "egested": Expression("eaten - respired - production"),
    "respired": Expression("eaten - egested - production"),
}
"""`CONSUMER_PRODUCTION` solved for each of its other flows."""
PRODUCER_BALANCE = {
    "gross_production": Expression("respiration + production"),
    "respiration": Expression("gross_production - production"),
}
"""`NET_PRODUCTION` solved for each of its other flows."""

TRANSFER_EFFICIENCY = Method(
    id="transfer_efficiency",
    name="Transfer efficiency",
    formula=("transfer_efficiency = production / production_below",),
    symbols=(
        ("transfer_efficiency", "part of the production below that becomes production here", ""),
        _PRODUCTION,
        ("production_below", "production of the level below", _FLOW),
    ),
    sources=("LINDEMAN1942", "PAULY_CHRISTENSEN1995"),
    limits="Flows, never standing stocks, and both of one kind: net over net or gross over gross. "
    "About a tenth is a rough mean; measured values differ widely. Producers have none.",
)

CONSUMPTION_EFFICIENCY = Method(
    id="consumption_efficiency",
    name="Consumption efficiency",
    formula=("consumption_efficiency = eaten / production_below",),
    symbols=(
        ("consumption_efficiency", "part of the production below that is eaten", ""),
        _EATEN,
        ("production_below", "net production of the level below", _FLOW),
    ),
    sources=("BAILEY_RIEGERT1973", "STRAYER2012"),
    limits="Only where all food comes from the level below. What is not eaten dies and feeds decomposers.",
)

ASSIMILATION_EFFICIENCY = Method(
    id="assimilation_efficiency",
    name="Assimilation efficiency",
    formula=("assimilation_efficiency = (eaten - egested) / eaten",),
    symbols=(("assimilation_efficiency", "part of the food that is taken up into the body", ""), _EATEN, _EGESTED),
    sources=("BAILEY_RIEGERT1973", "EVANS_PRIMARY_CONSUMERS", "PETRUSEWICZ_MACFADYEN1970"),
    limits="Urine that is measured with the faeces makes it come out a little too small. Animal food is taken up better than grass, and grass better than wood.",
)

PRODUCTION_EFFICIENCY = Method(
    id="production_efficiency",
    name="Production efficiency",
    formula=("production_efficiency = production / (eaten - egested)",),
    symbols=(("production_efficiency", "part of what is taken up that becomes growth and offspring", ""), _PRODUCTION, _EATEN, _EGESTED),
    sources=("BAILEY_RIEGERT1973", "DELVI_PANDIAN1971"),
    limits="What is taken up is what is respired and what is built up together. "
    "Animals that keep their body warm respire almost all of it.",
)
ASSIMILATED_FROM_USES = Expression("production / (respired + production)")
"""`PRODUCTION_EFFICIENCY` where what is taken up is known only by what becomes of it."""

PRODUCTION_FROM_BELOW = Method(
    id="production_from_below",
    name="Production estimated from the level below",
    formula=("production = production_below * transfer_efficiency",),
    symbols=(
        _PRODUCTION,
        ("production_below", "production of the level below", _FLOW),
        ("transfer_efficiency", "share of the production below that becomes production here", ""),
    ),
    sources=(),
    limits="An estimate, used only where the record states an efficiency in place of a measured production.",
)

NOT_PASSED_ON = Method(
    id="not_passed_on",
    name="Production not passed on",
    formula=("not_passed_on = production - production_above",),
    symbols=(
        ("not_passed_on", "production that does not become production of the next level", _FLOW),
        _PRODUCTION,
        ("production_above", "production of the level above", _FLOW),
    ),
    sources=(),
    limits="Not all of it is heat: it is what is not eaten, egested, respired by the eaters, or dies.",
)

OVERALL_EFFICIENCY = Method(
    id="overall_efficiency",
    name="Overall efficiency of a food chain",
    formula=("overall_efficiency = top_production / producer_production",),
    symbols=(
        ("overall_efficiency", "part of the net primary production that reaches the top level", ""),
        ("top_production", "production of the top level", _FLOW),
        ("producer_production", "net production of the producers", _FLOW),
    ),
    sources=("LINDEMAN1942",),
    limits="The product of all transfer efficiencies, so it falls fast with every further level.",
)

SUPPORTING_AREA = Method(
    id="supporting_area",
    name="Area that supports one consumer",
    formula=("supporting_area = need / flow",),
    symbols=(
        ("supporting_area", "area whose yield one consumer needs", "m2"),
        ("need", "what one consumer eats, or produces, in a year", "kJ/yr"),
        ("flow", "what its level eats, or produces, on a square metre", _FLOW),
    ),
    sources=(),
    limits="Need and flow must both count what is eaten, or both what is produced; "
    "mixing them is wrong by a factor of about ten.",
)

PRODUCTION_TO_BIOMASS = Method(
    id="production_to_biomass",
    name="Ratio of production to biomass",
    formula=("production_to_biomass = production / (biomass * energy_content)",),
    symbols=(
        ("production_to_biomass", "how often a year the biomass is produced anew", "1/yr"),
        _PRODUCTION,
        ("biomass", "mean dry mass present", "g/m2"),
        ("energy_content", "energy in a gram of dry mass", "kJ/g"),
    ),
    sources=("WHITTAKER_LIKENS1975",),
    limits="Biomass is the mean over the year. Where it turns over fast, little biomass carries a large production, "
    "and a pyramid of biomass can stand on its head.",
)

BIOMASS_TURNOVER_TIME = Method(
    id="biomass_turnover_time",
    name="Turnover time of biomass",
    formula=("biomass_turnover_time = biomass * energy_content / production",),
    symbols=(
        ("biomass_turnover_time", "how long production takes to build the biomass anew", "yr"),
        ("biomass", "mean dry mass present", "g/m2"),
        ("energy_content", "energy in a gram of dry mass", "kJ/g"),
        _PRODUCTION,
    ),
    sources=("FIELD1998", "WHITTAKER_LIKENS1975"),
    limits="A mean over a year in which the biomass stays about the same; single organisms live longer or shorter. "
    "Turned round it says: biomass is production times turnover time.",
)
