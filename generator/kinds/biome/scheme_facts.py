"""How schemes class a station's climate, each with its path of rules, and whether that suits the biome."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence

from generator.kinds.biome import month_facts
from generator.kinds.biome.climate_facts import DEGC, MM
from generator.kinds.biome.record import BiomeRecord, Station, UsualClass, UsualRange
from generator.quantities import shown
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.quantities.working import MonthTable, Rule, RulePath
from generator.science import aridity, biome_regions, climate_class, life_zones, plant_production

NPP = unit("g/m2/yr")
COLD = "cold"
NO_REGION = "no region"
METHODS = (
    climate_class.CLIMATE_CLASS, aridity.ARIDITY_CLASS, life_zones.BIOTEMPERATURE, life_zones.LIFE_ZONE,
    biome_regions.BIOME_REGION, plant_production.NPP_BY_TEMPERATURE, plant_production.NPP_BY_PRECIPITATION,
    plant_production.POTENTIAL_NPP, plant_production.LIMITING_FACTOR,
)  # fmt: skip


def climate_class_fact(station: Station, temp: Fact, precip: Fact) -> Fact:
    """The class of Köppen and Geiger with its reading, and the question whether the older limit would change it."""
    method = climate_class.CLIMATE_CLASS
    letters, path = climate_class.class_and_path(temp.series, precip.series)
    rules = [Rule(question.asks, _compared(question), question.holds) for question in path]
    if letters[0] in "CD":
        older = older_class(temp, precip)
        limit = shown.written(f"{climate_class.OLDER_COLD_LIMIT:g}")
        asks = f"Older maps part C from D at {limit} °C. Would that give another class?"
        rules.append(Rule(asks, older, older != letters))
    return Fact(
        id=f"{station.id}.{method.id}", name="Climate class", value=letters, working=RulePath(tuple(rules)), method=method.id,
        reading=climate_class.reading(letters, min(temp.series)),
    )  # fmt: skip


def older_class(temp: Fact, precip: Fact) -> str:
    """The class with the older limit between mild and cold winters."""
    return climate_class.climate_class(temp.series, precip.series, climate_class.OLDER_COLD_LIMIT)


def _compared(question: climate_class.Question) -> str:
    """Both numbers with the sign that was asked, with as many figures as it takes to see the answer."""
    if not question.unit:
        return f"{question.left:g} {question.sign} {question.right:g}"
    holds = climate_class.SIGNS[question.sign]
    figures = next(
        count
        for count in range(shown.FIGURES, 20)
        if holds(*(float(shown.rounded(number, count)) for number in (question.left, question.right))) == question.holds
    )
    left, right = (shown.number(number, max(figures, shown.whole_digits(number))) for number in (question.left, question.right))
    return unit(question.unit).after(f"{left} {question.sign} {right}")


def aridity_class_fact(station: Station, temp: Fact, index: Fact) -> Fact:
    """Cold climates first, then the limits of the index from dry to wet, up to the one that decides."""
    fact_id, name, method = f"{station.id}.aridity_class", "Aridity class", aridity.ARIDITY_CLASS.id
    if index.value is None:
        return month_facts.undefined(fact_id, name, aridity.ARIDITY_CLASS, index.undefined_because)
    below, above = sum(t < 0 for t in temp.series), sum(t > 6 for t in temp.series)
    cold = aridity.is_cold(temp.series)
    asks = f"{COLD}: do more than six months average below 0 °C, and at most three above 6 °C?"
    rules = [Rule(asks, f"{below} below, {above} above", cold)]
    if cold:
        return Fact(id=fact_id, name=name, value=COLD, working=RulePath(tuple(rules)), method=method)
    found = aridity.aridity_class(index.number) or ""
    rules += _up_to(found, aridity.ARIDITY_CLASSES, "is the index below {}?", lambda limit: f"{index.shown} < {limit}")
    return Fact(id=fact_id, name=name, value=found, working=RulePath(tuple(rules)), method=method)


def _up_to(found: str, limits: Sequence[tuple[float, str]], asks: str, numbers: Callable[[str], str]) -> Iterator[Rule]:
    """Whether a class is the one found, class by class up to it; the last one has no upper limit and needs no question."""
    for limit, name in limits:
        if math.isinf(limit):
            return
        yield Rule(f"{name}: {asks.format(f'{limit:g}')}", numbers(f"{limit:g}"), name == found)
        if name == found:
            return


def life_zone_facts(station: Station, temp: Fact, total: Fact, figures: int) -> Iterator[Fact]:
    """The biotemperature, and the zone by its belt and by demand over precipitation."""
    method = life_zones.BIOTEMPERATURE
    value = life_zones.biotemperature(temp.series)
    useful = tuple(min(max(t, 0.0), life_zones.MOST_USEFUL) for t in temp.series)
    columns = (month_facts.column(temp), ("kept between 0 and 30 °C", shown.series(useful, figures)))
    warmth = Fact(
        id=f"{station.id}.{method.id}", name="Biotemperature", value=value, unit=DEGC, method=method.id, figures=figures,
        working=MonthTable(columns, f"the mean of the last column is {DEGC.after(shown.number(value, figures))}"),
    )  # fmt: skip
    yield warmth
    zone = life_zones.life_zone(value, total.number)
    yield Fact(
        id=f"{station.id}.life_zone", name="Life zone", value=zone,
        working=RulePath(tuple(_zone_rules(zone, warmth, total, figures))), method=life_zones.LIFE_ZONE.id,
    )  # fmt: skip


def _zone_rules(found: str, warmth: Fact, total: Fact, figures: int) -> Iterator[Rule]:
    """The limits of the belts from cold to warm, then those of the zones from wet to dry, each up to the one that decides."""
    belt = life_zones.belt_of(warmth.number)
    yield from _up_to(belt, life_zones.BELTS, "is the biotemperature below {} °C?", lambda _: warmth.shown)
    ratio = life_zones.pet_ratio(warmth.number, total.number)
    put_in = f"{life_zones.PET_FACTOR} × {warmth.shown_number} ÷ {total.shown_number}"
    result = f"{put_in} = {shown.number(ratio, figures)}" if math.isfinite(ratio) else "nothing falls"
    zone = found.removeprefix(f"{belt} ")
    yield from _up_to(zone, life_zones.ZONES[belt], "is demand over precipitation below {}?", lambda _: result)


def production(station: Station, mean: Fact, total: Fact, figures: int) -> Iterator[Fact]:
    """What temperature and precipitation each allow; the smaller one is what plants can produce, and names what limits."""
    limits = {
        method.id: computed(
            f"{station.id}.{method.id}", name, method.expression, given, NPP, method=method.id, figures=figures, bare=True
        )
        for method, name, given in (
            (plant_production.NPP_BY_TEMPERATURE, "Production that the temperature allows", {"annual_mean_temp": mean}),
            (plant_production.NPP_BY_PRECIPITATION, "Production that the precipitation allows", {"annual_precip": total}),
        )
    }
    yield from limits.values()
    method = plant_production.POTENTIAL_NPP
    yield computed(
        f"{station.id}.{method.id}", "Potential net primary production (dry matter)", method.expression, limits, NPP,
        method=method.id, figures=figures,
    )  # fmt: skip
    yield _limiting_factor(station, *limits.values())


def _limiting_factor(station: Station, by_temp: Fact, by_precip: Fact) -> Fact:
    method = plant_production.LIMITING_FACTOR
    found = plant_production.limiting_factor(by_temp.number, by_precip.number)
    both = f"{by_temp.shown} and {by_precip.shown}"
    rules = [Rule("Does the temperature allow less than the precipitation?", both, found == plant_production.TEMPERATURE)]
    if not rules[0].holds:
        asks = "Does the precipitation allow less than the temperature?"
        rules.append(Rule(asks, both, found == plant_production.PRECIPITATION))
    return Fact(
        id=f"{station.id}.{method.id}", name="Limiting factor (temperature or precipitation)", value=found,
        working=RulePath(tuple(rules)), method=method.id,
    )  # fmt: skip


def region(station: Station, mean: Fact, total: Fact) -> Fact:
    """The region of the temperature-rainfall map; lying in none is an answer too."""
    found = biome_regions.biome_region(mean.number, total.number)
    name = biome_regions.NAMES[found] if found else NO_REGION
    rule = Rule("Does the outline of one region enclose the point?", f"{mean.shown}, {total.shown}", found is not None)
    return Fact(
        id=f"{station.id}.region", name="Region on the temperature-rainfall map", value=name, working=RulePath((rule,)),
        method=biome_regions.BIOME_REGION.id,
    )  # fmt: skip


def usual_region(record: BiomeRecord, found: object) -> str:
    """The name of the record's own region where a station lies in another; a station in none is no contradiction."""
    own = biome_regions.NAMES.get(record.region, "")
    return own if found not in (own, NO_REGION) else ""


def in_usual_range(record: BiomeRecord, station: Station, mean: Fact, total: Fact) -> Fact:
    """True or false against every range that the record cites; None where it cites none."""
    fact_id, name = f"{station.id}.in_usual_range", "Within the usual range of the biome"
    if not record.usual_range:
        return Fact(id=fact_id, name=name, value=None, undefined_because="not known: the record cites no usual range")
    rules = [rule for usual in record.usual_range for rule in range_rules(usual, mean, total)]
    return Fact(
        id=fact_id, name=name, value=all(rule.holds for rule in rules), working=RulePath(tuple(rules)),
        sources=tuple(usual.source for usual in record.usual_range),
    )  # fmt: skip


def range_rules(usual: UsualRange, mean: Fact, total: Fact) -> tuple[Rule, Rule]:
    """The two questions that a usual range asks of a station."""

    def rule(fact: Fact, ends: tuple[float, float], of: str) -> Rule:
        low, high = (shown.written(f"{end:g}") for end in ends)
        asks = f"Is the {fact.name.lower()} from {low} to {high} {of}?"
        return Rule(asks, fact.shown, ends[0] <= fact.number <= ends[1])

    temps = tuple(float(end) for end in usual.annual_mean_temp)
    rains = tuple(float(end) for end in usual.annual_precip)
    return rule(mean, (temps[0], temps[1]), "°C"), rule(total, (rains[0], rains[1]), MM.shown)


def in_usual_class(record: BiomeRecord, station: Station, found: Fact) -> Fact:
    """True where one of the works that the record cites lists the station's class for the biome; None where it cites none."""
    fact_id, name = f"{station.id}.in_usual_class", "Within the usual climate classes of the biome"
    if not record.usual_class:
        return Fact(id=fact_id, name=name, value=None, undefined_because="not known: the record cites no usual classes")
    rules = tuple(class_rule(usual, found) for usual in record.usual_class)
    return Fact(
        id=fact_id, name=name, value=any(rule.holds for rule in rules), working=RulePath(rules),
        sources=tuple(usual.source for usual in record.usual_class),
    )  # fmt: skip


def class_rule(usual: UsualClass, found: Fact) -> Rule:
    """The question that a list of usual classes asks of a station; `BS` stands for BSh and BSk."""
    listed = f"{', '.join(usual.classes[:-1])} or {usual.classes[-1]}" if len(usual.classes) > 1 else usual.classes[0]
    return Rule(f"Does the climate class begin with {listed}?", str(found.value), str(found.value).startswith(usual.classes))
