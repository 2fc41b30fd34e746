"""What plants could evaporate, what falls, and how the soil carries water from month to month."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from generator.kinds.biome import month_facts
from generator.kinds.biome.climate_facts import BARE, MM, NO_LATITUDE, stated_in
from generator.kinds.biome.record import BiomeRecord, Station
from generator.quantities import shown
from generator.quantities.fact import Fact, computed
from generator.quantities.last_digits import MOST_WHOLE_DIGITS
from generator.quantities.units import unit
from generator.quantities.working import MonthTable, Rule, RulePath
from generator.science import aridity, climate, evapotranspiration, water_balance
from generator.science.method import Method
from generator.science.months import MONTH_LENGTHS

METHODS = (
    evapotranspiration.MONTHLY_PET, evapotranspiration.POTENTIAL_EVAPOTRANSPIRATION, aridity.ARIDITY_INDEX,
    water_balance.MONTHLY_SOIL_WATER, water_balance.BUCKET_SOIL_WATER, water_balance.MONTHLY_ACTUAL_EVAPOTRANSPIRATION,
    water_balance.ACTUAL_EVAPOTRANSPIRATION, water_balance.WATER_DEFICIT, water_balance.WATER_SURPLUS,
)  # fmt: skip
TOO_COLD = "so little warmth makes this formula give far too much"


def demand(station: Station, temp: Fact, hours: Fact, figures: int) -> Iterator[Fact]:
    """Potential evapotranspiration by month and of the year."""
    method = evapotranspiration.MONTHLY_PET
    fact_id, name = f"{station.id}.{method.id}", "Monthly potential evapotranspiration"
    if station.latitude is None:
        pet = month_facts.undefined(fact_id, name, method, NO_LATITUDE, MM)
    else:
        need = evapotranspiration.monthly_pet(float(station.latitude), temp.series)
        columns = (
            ("mean temperature (°C)", temp.shown_members), ("day length (h)", shown.series(hours.series)),
            ("days", tuple(map(str, MONTH_LENGTHS))),
        )  # fmt: skip
        pet = month_facts.series(fact_id, name, MM, method, need, columns, _heat(temp, figures), figures)
    yield pet
    of_year = evapotranspiration.POTENTIAL_EVAPOTRANSPIRATION
    yield computed(
        f"{station.id}.{of_year.id}", "Potential evapotranspiration", of_year.expression, {"monthly_pet": pet}, MM,
        method=of_year.id, figures=figures,
    )  # fmt: skip


def _heat(temp: Fact, figures: int) -> str:
    """The heat index with its exponent, and a word of warning where it is out of its depth."""
    heat = evapotranspiration.heat_index(temp.series)
    says = f"heat index of the year: {shown.number(heat, figures)}"
    if heat > 0:
        says += f"; exponent: {shown.number(evapotranspiration.THORNTHWAITE_EXPONENT.compute(heat_index=heat), figures)}"
    return f"{says}; {TOO_COLD}" if is_beyond_the_formula(temp) else says


def is_beyond_the_formula(temp: Fact) -> bool:
    """Whether a climate is so cold that its potential evapotranspiration comes out far too large."""
    heat = evapotranspiration.heat_index(temp.series)
    return heat > 0 and (heat < evapotranspiration.LEAST_HEAT_INDEX or aridity.is_cold(temp.series))


def aridity_index(station: Station, total: Fact, year: Fact, figures: int) -> Fact:
    """What falls over what plants could use."""
    return computed(
        f"{station.id}.aridity_index", "Aridity index", aridity.ARIDITY_INDEX.expression,
        {"annual_precip": total, "potential_evapotranspiration": year}, BARE, method="aridity_index", figures=figures,
    )  # fmt: skip


def soil_store(record: BiomeRecord, station: Station) -> Fact:
    """How much water the soil can hold: as stated, or the usual store."""
    fact_id, name = f"{station.id}.soil_store", "Most water that the soil can hold for plants"
    if station.soil_store is not None:
        return stated_in(fact_id, name, station.soil_store, unit(record.units.soil_store), MM)
    usual = water_balance.USUAL_STORE
    path = RulePath((Rule("Does the record state how much the soil holds?", f"Otherwise the usual {usual:g} mm are taken", False),))
    return Fact(id=fact_id, name=name, value=usual, unit=MM, working=path, written=f"{usual:g}")


def balance(station: Station, temp: Fact, precip: Fact, pet: Fact, store: Fact, figures: int) -> Iterator[Fact]:
    """The soil's year: water in it, what plants use, what they lack, what is left over."""
    heads = (
        (water_balance.MONTHLY_SOIL_WATER, "Soil water at the end of each month"),
        (water_balance.MONTHLY_ACTUAL_EVAPOTRANSPIRATION, "Monthly actual evapotranspiration"),
        (water_balance.ACTUAL_EVAPOTRANSPIRATION, "Actual evapotranspiration"),
        (water_balance.WATER_DEFICIT, "Water deficit"),
        (water_balance.WATER_SURPLUS, "Water surplus"),
    )
    if pet.value is None:
        for method, name in heads:
            yield month_facts.undefined(f"{station.id}.{method.id}", name, method, pet.undefined_because, MM)
        return
    year = water_balance.drying_balance(precip.series, pet.series, store.number)
    before = (year.soil_water[-1], *year.soil_water[:-1])
    gained = tuple(after - earlier for after, earlier in zip(year.soil_water, before, strict=True))
    falls, could = month_facts.column(precip), ("potential evapotranspiration (mm)", pet.shown_members)

    def cells(name: str, numbers: tuple[float, ...]) -> month_facts.Column:
        return month_facts.head(name, MM), shown.series(numbers, figures)

    used = cells("actual evapotranspiration", year.evapotranspiration)
    change = cells("gained by the soil", gained)
    soil, monthly, *annual = heads
    yield month_facts.series(
        f"{station.id}.{soil[0].id}", soil[1], MM, soil[0], year.soil_water, (falls, could), _about_soil(temp, store), figures
    )  # fmt: skip
    says = "what falls less what the soil gains, where less falls than plants could use; otherwise all that they could use"
    yield month_facts.series(
        f"{station.id}.{monthly[0].id}", monthly[1], MM, monthly[0], year.evapotranspiration, (falls, could, change), says, figures
    )  # fmt: skip
    columns: Mapping[str, tuple[month_facts.Column, ...]] = {
        "actual_evapotranspiration": (used,),
        "water_deficit": (could, used, cells("deficit", year.deficit)),
        "water_surplus": (falls, used, change, cells("surplus", year.surplus)),
    }
    parts = (year.evapotranspiration, year.deficit, year.surplus)
    for (method, name), numbers in zip(annual, parts, strict=True):
        yield _sum(f"{station.id}.{method.id}", name, method, numbers, columns[method.id], figures)


def _sum(
    fact_id: str, name: str, method: Method, numbers: tuple[float, ...], columns: tuple[month_facts.Column, ...], figures: int
) -> Fact:  # fmt: skip
    """The sum of twelve months, shown to the millimetre at least, so that it adds up on paper."""
    value = math.fsum(numbers)
    figures_of_months, figures = figures, max(figures, min(shown.whole_digits(value), MOST_WHOLE_DIGITS))
    total, (*others, (head, _)) = shown.number(value, figures), columns
    table = MonthTable((*others, (head, shown.adding_up(numbers, total, figures_of_months))), f"the last column adds up to {MM.after(total)}")
    return Fact(id=fact_id, name=name, value=value, unit=MM, working=table, method=method.id, figures=figures)


def _about_soil(temp: Fact, store: Fact) -> str:
    says = f"the soil holds {store.shown} at most, and December leaves it as January finds it"
    frozen = climate.months_below_freezing(temp.series)
    return f"{says}; snow is not followed: in {shown.months(frozen)} it counts as water at once" if frozen else says
