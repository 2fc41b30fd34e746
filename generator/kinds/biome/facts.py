"""Every number of a biome, station by station."""

from __future__ import annotations

import math
from collections.abc import Iterator
from types import MappingProxyType

from generator.kinds.biome.record import BiomeRecord, Station, UsualRange
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, Facts, computed, stated
from generator.quantities.units import Unit, convert, unit
from generator.quantities.working import MonthTable, Rule, RulePath, Working
from generator.records.fields import stated_amount
from generator.science import aridity, biome_regions, climate, day_length, evapotranspiration, plant_production
from generator.science.months import MONTH_LENGTHS

DEGC, MM, M, K, HOUR, NPP, BARE = unit("degC"), unit("mm"), unit("m"), unit("K"), unit("h"), unit("g/m2/yr"), unit("")
METHODS = MappingProxyType(
    {
        method.id: method
        for method in (
            climate.ANNUAL_MEAN_TEMP, climate.ANNUAL_PRECIP, climate.ANNUAL_TEMP_RANGE, climate.EXTREME_MONTHS,
            climate.DRY_MONTHS, climate.MONTHS_BELOW_FREEZING, climate.GROWING_SEASON_MONTHS,
            day_length.MONTHLY_DAY_LENGTH, evapotranspiration.MONTHLY_PET, evapotranspiration.POTENTIAL_EVAPOTRANSPIRATION,
            aridity.ARIDITY_INDEX, aridity.ARIDITY_CLASS, plant_production.NPP_BY_TEMPERATURE,
            plant_production.NPP_BY_PRECIPITATION, plant_production.POTENTIAL_NPP, biome_regions.BIOME_REGION,
        )
    }
)  # fmt: skip
COLD = "cold"
NO_REGION = "no region"
NO_LATITUDE = "not known: the station states no latitude"


def facts(record: BiomeRecord) -> Facts:
    """All facts of all stations, in the order in which a page tells them."""
    return Facts(fact for station in record.stations for fact in _of_station(record, station))


def _of_station(record: BiomeRecord, station: Station) -> Iterator[Fact]:
    figures = record.figures or shown.FIGURES
    temp = _series(station, "monthly_mean_temp", "Monthly mean temperature", unit(record.units.temperature), DEGC)
    precip = _series(station, "monthly_precip", "Monthly precipitation", unit(record.units.precipitation), MM)
    yield from (temp, precip)
    if station.latitude is not None:
        yield stated(f"{station.id}.latitude", "Latitude", stated_amount(station.latitude), unit("deg"))
    if station.elevation is not None:
        yield _elevation(record, station)

    mean = computed(
        f"{station.id}.annual_mean_temp", "Annual mean temperature", climate.ANNUAL_MEAN_TEMP.expression,
        {"monthly_mean_temp": temp}, DEGC, method="annual_mean_temp", figures=figures,
    )  # fmt: skip
    total = computed(
        f"{station.id}.annual_precip", "Annual precipitation", climate.ANNUAL_PRECIP.expression,
        {"monthly_precip": precip}, MM, method="annual_precip", figures=figures,
    )  # fmt: skip
    spread = computed(
        f"{station.id}.annual_temp_range", "Annual temperature range", climate.ANNUAL_TEMP_RANGE.expression,
        {"monthly_mean_temp": temp}, K, method="annual_temp_range", figures=figures,
    )  # fmt: skip
    yield from (mean, total, spread)
    yield from _months(station, temp, precip)
    yield from _water(station, temp, total, figures)
    yield from _production(station, mean, total, figures)
    yield _region(station, mean, total)
    yield _in_usual_range(record, station, mean, total)


def _series(station: Station, field: str, name: str, source: Unit, target: Unit) -> Fact:
    """The monthly series, converted with the step shown where the record has another unit."""
    months = getattr(station, field)
    numbers = tuple(float(month) for month in months)
    common = {"id": f"{station.id}.{field}", "name": name, "unit": target}
    if source.label == target.label:
        return Fact(**common, value=numbers, written=" ".join(month.text for month in months))
    converted = tuple(convert(number, source, target) for number in numbers)
    columns = (
        (f"as stated ({source.shown})", tuple(shown.written(month.text) for month in months)),
        (f"converted ({target.shown})", shown.series(converted)),
    )
    working = MonthTable(columns, f"each month is converted: {target.shown} = {_conversion(source)}")
    return Fact(**common, value=converted, working=working)


def _conversion(source: Unit) -> str:
    return {"degF": "(°F − 32) × 5 ÷ 9", "in": "inches × 25.4", "cm": "centimetres × 10", "ft": "feet × 0.3048"}[source.label]


def _elevation(record: BiomeRecord, station: Station) -> Fact:
    source = unit(record.units.elevation)
    height = stated(f"{station.id}.elevation", "Elevation", stated_amount(station.elevation), source)
    if source.label == M.label:
        return height
    return computed(height.id, height.name, Expression("elevation"), {"elevation": height}, M)


def _months(station: Station, temp: Fact, precip: Fact) -> Iterator[Fact]:
    """The facts that are lists of months, each with the table that shows why."""

    def months(name: str, title: str, numbers: tuple[int, ...], working: Working, method: str) -> Fact:
        return Fact(
            id=f"{station.id}.{name}", name=title, value=numbers, months=True, working=working, method=method
        )  # fmt: skip

    t, p = temp.series, precip.series
    for name, title, fact, largest in (
        ("warmest_month", "Warmest month", temp, True), ("coldest_month", "Coldest month", temp, False),
        ("wettest_month", "Wettest month", precip, True), ("driest_month", "Driest month", precip, False),
    ):  # fmt: skip
        found = climate.extreme_months(fact.series, largest=largest)
        column = (f"{fact.name} ({_shown(fact)})", fact.shown_members)
        which = "largest" if largest else "smallest"
        table = MonthTable((column,), f"the {which} value stands in {shown.months(found)}")
        yield months(name, title, found, table, "extreme_months")

    dry = climate.dry_months(t, p)
    doubled = tuple(2 * value for value in t)
    columns = (
        ("precipitation (mm)", precip.shown_members), ("twice the temperature (°C)", shown.series(doubled)), _marks("dry", dry),
    )  # fmt: skip
    table = MonthTable(columns, f"precipitation is below twice the temperature in {shown.months(dry)}")
    yield months("dry_months", "Dry months", dry, table, "dry_months")
    for name, title, found, says in (
        ("months_below_freezing", "Months averaging below 0 °C", climate.months_below_freezing(t), "below 0 °C"),
        ("growing_season_months", "Growing season months", climate.growing_season_months(t), "5 °C or warmer"),
    ):
        table = MonthTable(
            (("mean temperature (°C)", temp.shown_members), _marks(says, found)), f"{says}: {shown.months(found)}"
        )
        yield months(name, title, found, table, name)


def _marks(head: str, found: tuple[int, ...]) -> tuple[str, tuple[str, ...]]:
    return head, tuple("yes" if month in found else "no" for month in range(1, 13))


def _shown(fact: Fact) -> str:
    return fact.unit.shown if fact.unit else ""


def _water(station: Station, temp: Fact, total: Fact, figures: int) -> Iterator[Fact]:
    """Day length, what plants could evaporate, and how dry that makes the station."""
    lengths = f"{station.id}.monthly_day_length", "Mean day length", HOUR, day_length.MONTHLY_DAY_LENGTH.id
    demand = f"{station.id}.monthly_pet", "Monthly potential evapotranspiration", MM, evapotranspiration.MONTHLY_PET.id
    if station.latitude is None:
        hours, pet = (
            Fact(id=i, name=n, value=None, unit=u, method=m, undefined_because=NO_LATITUDE) for i, n, u, m in (lengths, demand)
        )
    else:
        latitude = float(station.latitude)
        numbers = tuple(float(h) for h in day_length.monthly_day_length(latitude))
        hours = _monthly(lengths, numbers, (), "day length averaged over the days of each month", figures)
        need = tuple(float(v) for v in evapotranspiration.monthly_pet(latitude, temp.series))
        heat = evapotranspiration.heat_index(temp.series)
        columns = (
            ("mean temperature (°C)", temp.shown_members), ("day length (h)", shown.series(numbers)),
            ("days", tuple(str(d) for d in MONTH_LENGTHS)),
        )  # fmt: skip
        says = f"heat index of the year: {shown.number(heat, figures)}"
        if heat > 0:
            says += f"; exponent: {shown.number(evapotranspiration.THORNTHWAITE_EXPONENT.compute(heat_index=heat), figures)}"
        pet = _monthly(demand, need, columns, says, figures)
    yield from (hours, pet)
    year = computed(
        f"{station.id}.potential_evapotranspiration", "Potential evapotranspiration",
        evapotranspiration.POTENTIAL_EVAPOTRANSPIRATION.expression, {"monthly_pet": pet}, MM,
        method="potential_evapotranspiration", figures=figures,
    )  # fmt: skip
    index = computed(
        f"{station.id}.aridity_index", "Aridity index", aridity.ARIDITY_INDEX.expression,
        {"annual_precip": total, "potential_evapotranspiration": year}, BARE, method="aridity_index", figures=figures,
    )  # fmt: skip
    yield from (year, index, _aridity_class(station, temp, index))


def _monthly(
    head: tuple[str, str, Unit, str], numbers: tuple[float, ...], columns: tuple[tuple[str, tuple[str, ...]], ...], says: str,
    figures: int,
) -> Fact:  # fmt: skip
    fact_id, name, of, method = head
    table = MonthTable((*columns, (f"{name.lower()} ({of.shown})", shown.series(numbers, figures))), says)
    return Fact(id=fact_id, name=name, value=numbers, unit=of, working=table, method=method, figures=figures)


def _aridity_class(station: Station, temp: Fact, index: Fact) -> Fact:
    """Cold climates first, then the limits of the index from dry to wet, up to the one that decides."""
    fact_id, name, method = f"{station.id}.aridity_class", "Aridity class", aridity.ARIDITY_CLASS.id
    if index.value is None:
        return Fact(id=fact_id, name=name, value=None, method=method, undefined_because=index.undefined_because)
    below, above = sum(t < 0 for t in temp.series), sum(t > 6 for t in temp.series)
    cold = aridity.is_cold(temp.series)
    asks = f"{COLD}: do more than six months average below 0 °C, and at most three above 6 °C?"
    rules = [Rule(asks, f"{below} below, {above} above", cold)]
    if cold:
        return Fact(id=fact_id, name=name, value=COLD, working=RulePath(tuple(rules)), method=method)
    found = aridity.aridity_class(index.number)
    for limit, label in aridity.ARIDITY_CLASSES:
        if math.isinf(limit):
            break
        holds = index.number < limit
        rules.append(Rule(f"{label}: is the index below {shown.written(str(limit))}?", f"{index.shown} < {limit}", holds))
        if holds:
            break
    return Fact(id=fact_id, name=name, value=found, working=RulePath(tuple(rules)), method=method)


def _production(station: Station, mean: Fact, total: Fact, figures: int) -> Iterator[Fact]:
    """What temperature and precipitation each allow; the smaller one is what plants can produce."""
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


def _region(station: Station, mean: Fact, total: Fact) -> Fact:
    """The region of the temperature-rainfall map; lying in none is an answer too."""
    found = biome_regions.biome_region(mean.number, total.number)
    name = biome_regions.NAMES[found] if found else NO_REGION
    rule = Rule("Does the outline of one region enclose the point?", f"{mean.shown}, {total.shown}", found is not None)
    return Fact(
        id=f"{station.id}.region", name="Region on the temperature-rainfall map", value=name, working=RulePath((rule,)),
        method=biome_regions.BIOME_REGION.id,
    )  # fmt: skip


def _in_usual_range(record: BiomeRecord, station: Station, mean: Fact, total: Fact) -> Fact:
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
    return rule(mean, (temps[0], temps[1]), "°C"), rule(total, (rains[0], rains[1]), "mm")
