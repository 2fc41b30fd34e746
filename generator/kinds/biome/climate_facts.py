"""What a biome's stations state, and what follows from temperature, precipitation and latitude alone."""

from __future__ import annotations

from collections.abc import Iterator

from generator.kinds.biome import month_facts
from generator.kinds.biome.record import BiomeRecord, Station
from generator.quantities import shown
from generator.quantities.fact import Fact, computed, in_unit, stated
from generator.quantities.units import Unit, convert, unit
from generator.quantities.working import MonthTable
from generator.records.fields import stated_amount
from generator.science import climate, day_length
from generator.science.months import MONTH_LENGTHS

DEGC, MM, M, K, HOUR, BARE = unit("degC"), unit("mm"), unit("m"), unit("K"), unit("h"), unit("")
NO_LATITUDE = "not known: the station states no latitude"
METHODS = (
    climate.ANNUAL_MEAN_TEMP, climate.ANNUAL_PRECIP, climate.ANNUAL_TEMP_RANGE, climate.EXTREME_MONTHS, climate.DRY_MONTHS,
    climate.MONTHS_BELOW_FREEZING, climate.GROWING_SEASON_MONTHS, climate.PRECIPITATION_SEASONALITY,
    day_length.MONTHLY_DAY_LENGTH, day_length.POLAR_DAY_DAYS, day_length.POLAR_NIGHT_DAYS,
)  # fmt: skip


def stated_facts(record: BiomeRecord, station: Station) -> Iterator[Fact]:
    """The two series, latitude and elevation, each in the unit that everything is computed in."""
    units = record.units
    yield _series(station, "monthly_mean_temp", "Monthly mean temperature", unit(units.temperature), DEGC)
    yield _series(station, "monthly_precip", "Monthly precipitation", unit(units.precipitation), MM)
    if station.latitude is not None:
        yield stated(f"{station.id}.latitude", "Latitude, south negative" if station.latitude < 0 else "Latitude", stated_amount(station.latitude), unit("deg"))
    if station.elevation is not None:
        yield stated_in(f"{station.id}.elevation", "Elevation", station.elevation, unit(units.elevation), M)


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


def stated_in(fact_id: str, name: str, value: float, source: Unit, target: Unit) -> Fact:
    """A number that a station states, turned into the unit that is computed in where it has another one."""
    return in_unit(stated(fact_id, name, stated_amount(value), source), target)


def annual_facts(station: Station, temp: Fact, precip: Fact, figures: int) -> Iterator[Fact]:
    """Mean, total and range of the year."""
    for method, name, given, of in (
        (climate.ANNUAL_MEAN_TEMP, "Annual mean temperature", {"monthly_mean_temp": temp}, DEGC),
        (climate.ANNUAL_PRECIP, "Annual precipitation", {"monthly_precip": precip}, MM),
        (climate.ANNUAL_TEMP_RANGE, "Annual temperature range", {"monthly_mean_temp": temp}, K),
    ):
        yield computed(
            f"{station.id}.{method.id}", name, method.expression, given, of, method=method.id, figures=figures
        )  # fmt: skip


def month_lists(station: Station, temp: Fact, precip: Fact) -> Iterator[Fact]:
    """The facts that are lists of months, each with the table that shows why."""
    t, p = temp.series, precip.series
    for name, title, fact, largest in (
        ("warmest_month", "Warmest month", temp, True), ("coldest_month", "Coldest month", temp, False),
        ("wettest_month", "Wettest month", precip, True), ("driest_month", "Driest month", precip, False),
    ):  # fmt: skip
        found = climate.extreme_months(fact.series, largest=largest)
        which = "largest" if largest else "smallest"
        table = MonthTable((month_facts.column(fact),), f"the {which} value stands in {shown.months(found)}")
        yield month_facts.months(f"{station.id}.{name}", title, found, table, climate.EXTREME_MONTHS)

    dry = climate.dry_months(t, p)
    doubled = tuple(2 * value for value in t)
    columns = (
        ("precipitation (mm)", precip.shown_members), ("twice the temperature (°C)", shown.series(doubled)),
        month_facts.marks("dry", dry),
    )  # fmt: skip
    table = MonthTable(columns, f"precipitation is below twice the temperature in {shown.months(dry)}")
    yield month_facts.months(f"{station.id}.dry_months", "Dry months", dry, table, climate.DRY_MONTHS)
    for method, title, found, says in (
        (climate.MONTHS_BELOW_FREEZING, "Months averaging below 0 °C", climate.months_below_freezing(t), "below 0 °C"),
        (climate.GROWING_SEASON_MONTHS, "Growing season months", climate.growing_season_months(t), "5 °C or warmer"),
    ):
        table = MonthTable(
            (("mean temperature (°C)", temp.shown_members), month_facts.marks(says, found)), f"{says}: {shown.months(found)}"
        )  # fmt: skip
        yield month_facts.months(f"{station.id}.{method.id}", title, found, table, method)


def seasonality(station: Station, precip: Fact, total: Fact, figures: int) -> Fact:
    """How unevenly precipitation is spread, with what each month is off the mean."""
    method = climate.PRECIPITATION_SEASONALITY
    fact_id, name = f"{station.id}.{method.id}", "Seasonality of precipitation"
    found = climate.precipitation_seasonality(precip.series)
    if found is None:
        return month_facts.undefined(fact_id, name, method, "not defined: nothing falls in any month", BARE)
    off = tuple(abs(month - total.number / 12) for month in precip.series)
    columns = (month_facts.column(precip), ("off the mean month (mm)", shown.series(off, figures)))
    says = f"together they are off by {shown.number(sum(off), figures)} mm, over a total of {total.shown}"
    return Fact(
        id=fact_id, name=name, value=found, unit=BARE, working=MonthTable(columns, says), method=method.id, figures=figures
    )  # fmt: skip


def light(station: Station, figures: int) -> Iterator[Fact]:
    """Day length, and the months with days on which the sun does not set or does not rise."""
    method = day_length.MONTHLY_DAY_LENGTH
    heads = (
        (day_length.POLAR_DAY_DAYS, "polar_day_months", "Months with days of 24 h of sun", "24 h"),
        (day_length.POLAR_NIGHT_DAYS, "polar_night_months", "Months with days without sun", "0 h"),
    )
    if station.latitude is None:
        yield month_facts.undefined(f"{station.id}.{method.id}", "Mean day length", method, NO_LATITUDE, HOUR)
        for one, field, name, _ in heads:
            yield month_facts.undefined(f"{station.id}.{field}", name, one, NO_LATITUDE)
        return
    latitude = float(station.latitude)
    says = "day length averaged over the days of each month"
    hours = day_length.monthly_day_length(latitude)
    yield month_facts.series(f"{station.id}.{method.id}", "Mean day length", HOUR, method, hours, (), says, figures)
    for one, field, name, length in heads:
        days = one.compute(latitude=latitude)
        columns = (
            ("days in the month", tuple(map(str, MONTH_LENGTHS))), (f"days of {length} of sun", tuple(map(str, days))),
        )  # fmt: skip
        found = tuple(month for month, count in enumerate(days, start=1) if count)
        yield month_facts.months(f"{station.id}.{field}", name, found, MonthTable(columns, f"{sum(days)} days in all"), one)
