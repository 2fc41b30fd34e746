"""Every number of an aquatic biome, station by station: light, salt, warmth, oxygen, exchange of water."""

from __future__ import annotations

from collections.abc import Iterator
from types import MappingProxyType

from generator.kinds.aquatic_biome.record import AquaticBiomeRecord, Station
from generator.quantities import shown
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, Facts, computed, in_unit, stated
from generator.quantities.units import Unit, convert, unit
from generator.quantities.working import Rule, RulePath
from generator.records.fields import stated_amount
from generator.science import dissolved_oxygen, light_in_water, salinity, water_exchange
from generator.science.method import Method

M, PER_M, DEGC, K, SALT, OXYGEN = unit("m"), unit("1/m"), unit("degC"), unit("K"), unit("g/kg"), unit("mg/L")
SPEED, M3, M3_PER_S, DAY, PERCENT, DEG = unit("m/s"), unit("m3"), unit("m3/s"), unit("d"), unit("percent"), unit("deg")
KELVIN_FIGURES = 5
"""Of absolute temperatures, so that whoever puts 291.15 K into the formula gets the oxygen that is printed."""
DARK_FROM = 26.0
"""Extinction times depth from which on less than a billionth of a percent is left."""
DARK = "next to none: less than a billionth of a percent"
METHODS = MappingProxyType(
    {
        method.id: method
        for method in (
            light_in_water.EXTINCTION_FROM_SECCHI, light_in_water.LIGHT_AT_DEPTH, light_in_water.PHOTIC_DEPTH,
            salinity.SALINITY_CLASS, dissolved_oxygen.OXYGEN_SATURATION, dissolved_oxygen.OXYGEN_SATURATION_PERCENT,
            water_exchange.FLUSHING_TIME,
        )
    }
)  # fmt: skip


def facts(record: AquaticBiomeRecord) -> Facts:
    """All facts of all stations, in the order in which a page tells them."""
    return Facts(fact for station in record.stations for fact in _Station(record, station).facts())


class _Station:
    """A station with the units and figures that its record sets."""

    def __init__(self, record: AquaticBiomeRecord, station: Station) -> None:
        self.record, self.station = record, station
        self.figures = record.figures or shown.FIGURES

    def facts(self) -> Iterator[Fact]:
        station = self.station
        if station.latitude is not None:
            yield self.stated("latitude", "Latitude, south negative" if station.latitude < 0 else "Latitude", station.latitude, DEG)
        depth = self.in_unit("depth", "Depth of the water", station.depth, unit(self.record.units.depth), M)
        yield depth
        if station.light is not None:
            yield from self.light(depth)
        yield from self.water()
        yield from self.exchange()

    def stated(self, name: str, title: str, number: float, of: Unit) -> Fact:
        return stated(f"{self.station.id}.{name}", title, stated_amount(number), of, figures=self.figures)

    def in_unit(self, name: str, title: str, number: float, source: Unit, target: Unit) -> Fact:
        """As stated where the record has our unit, otherwise converted with the step shown."""
        return in_unit(self.stated(name, title, number, source), target)

    def made(self, name: str, title: str, method: Method, given: dict[str, Fact], of: Unit, *, bare: bool = False) -> Fact:
        return computed(
            f"{self.station.id}.{name}", title, method.expression, given, of, method=method.id, figures=self.figures, bare=bare
        )  # fmt: skip

    def light(self, depth: Fact) -> Iterator[Fact]:
        """How fast light fades, where one percent is left, and what the bottom gets."""
        light = self.station.light
        if light is not None and light.secchi_depth is not None:
            secchi = self.in_unit("secchi_depth", "Secchi depth", light.secchi_depth, unit(self.record.units.depth), M)
            yield secchi
            method = light_in_water.EXTINCTION_FROM_SECCHI
            extinction = self.made("extinction", "Extinction coefficient of light", method, {"secchi_depth": secchi}, PER_M)
        else:
            number = light.extinction if light is not None and light.extinction is not None else 0.0
            extinction = self.stated("extinction", "Extinction coefficient of light", number, PER_M)
        photic = self.made("photic_depth", "Photic depth, 1 % of the light left", light_in_water.PHOTIC_DEPTH, {"extinction": extinction}, M)
        yield from (extinction, photic)
        yield self.light_at_bottom(extinction, depth)
        yield self.reaches_bottom(photic, depth)

    def light_at_bottom(self, extinction: Fact, depth: Fact) -> Fact:
        """Undefined where the law would give a number so small that it says nothing but dark."""
        name, title, method = "light_at_bottom", "Light left at the bottom", light_in_water.LIGHT_AT_DEPTH
        if extinction.number * depth.number > DARK_FROM:
            return Fact(
                id=f"{self.station.id}.{name}", name=title, value=None, unit=PERCENT, method=method.id, undefined_because=DARK
            )  # fmt: skip
        return self.made(name, title, method, {"extinction": extinction, "depth": depth}, PERCENT)

    def reaches_bottom(self, photic: Fact, depth: Fact) -> Fact:
        holds = photic.number >= depth.number
        rule = Rule("Does the photic depth reach the depth of the water?", f"{photic.shown_exactly} ≥ {depth.shown_exactly}", holds)
        return Fact(
            id=f"{self.station.id}.reaches_bottom", name="Enough light for plants at the bottom (1 % or more)", value=holds,
            working=RulePath((rule,)), sources=light_in_water.PHOTIC_DEPTH.sources,
        )  # fmt: skip

    def water(self) -> Iterator[Fact]:
        """Salt, warmth and oxygen where the water was taken."""
        station, scale = self.station, unit(self.record.units.temperature)
        if station.sample_depth is not None:
            source = unit(self.record.units.depth)
            yield self.in_unit("sample_depth", "Depth at which the water was taken", station.sample_depth, source, M)
        salt = self.stated("salinity", "Salinity", station.salinity, SALT)
        temp = self.in_unit("temperature", "Water temperature", station.temperature, scale, DEGC)
        yield from (salt, self.salinity_class(salt), temp)
        if station.yearly_temperature is not None:
            yield self.yearly_temperature(station.yearly_temperature, scale)
        kelvin = self.absolute("absolute_temperature", "Water temperature from absolute zero", temp)
        saturation = self.saturation("oxygen_saturation", "Oxygen saturation at this temperature and salinity", temp, kelvin, salt)
        yield from (kelvin, saturation)
        if station.yearly_temperature is not None:
            yield from self.yearly_saturation(station.yearly_temperature, scale, salt)
        if station.dissolved_oxygen is not None:
            oxygen = self.stated("dissolved_oxygen", "Dissolved oxygen, measured", station.dissolved_oxygen, OXYGEN)
            given = {"dissolved_oxygen": oxygen, "oxygen_saturation": saturation}
            yield oxygen
            yield self.made(
                "oxygen_saturation_percent", "Oxygen as part of saturation", dissolved_oxygen.OXYGEN_SATURATION_PERCENT, given, PERCENT
            )  # fmt: skip

    def salinity_class(self, salt: Fact) -> Fact:
        rules = []
        for limit, label in salinity.SALINITY_CLASSES[:-1]:
            holds = salt.number < limit
            rules.append(Rule(f"{label}: is the salinity below {SALT.after(f'{limit:g}')}?", f"{salt.shown_exactly} < {limit:g}", holds))
            if holds:
                break
        return Fact(
            id=f"{self.station.id}.salinity_class", name="Class by salinity", value=salinity.salinity_class(salt.number),
            working=RulePath(tuple(rules)), method=salinity.SALINITY_CLASS.id,
        )  # fmt: skip

    def yearly_temperature(self, year: Amount, scale: Unit) -> Fact:
        fact_id, name = f"{self.station.id}.yearly_temperature", "Water temperature over the year"
        if scale.label == DEGC.label:
            return stated(fact_id, name, year, DEGC, figures=self.figures)
        low, high = (convert(float(end), scale, DEGC) for end in _ends(year))
        return stated(fact_id, name, Amount.between(low, high), DEGC, figures=self.figures)

    def absolute(self, name: str, title: str, temp: Fact) -> Fact:
        return computed(f"{self.station.id}.{name}", title, Expression("temperature"), {"temperature": temp}, K, figures=KELVIN_FIGURES)

    def saturation(self, name: str, title: str, temp: Fact, kelvin: Fact, salt: Fact) -> Fact:
        """Undefined beyond what the formula was fitted to."""
        method = dissolved_oxygen.OXYGEN_SATURATION
        for fact, (low, high), of in (
            (temp, dissolved_oxygen.VALID_TEMPERATURES, DEGC), (salt, dissolved_oxygen.VALID_SALINITIES, SALT),
        ):  # fmt: skip
            if not low <= fact.number <= high:
                because = f"not defined: the formula holds from {low:g} to {high:g} {of.shown}"
                return Fact(
                    id=f"{self.station.id}.{name}", name=title, value=None, unit=OXYGEN, method=method.id, undefined_because=because
                )  # fmt: skip
        return self.made(name, title, method, {"absolute_temperature": kelvin, "salinity": salt}, OXYGEN, bare=True)

    def yearly_saturation(self, year: Amount, scale: Unit, salt: Fact) -> Iterator[Fact]:
        """What the same water could hold when it is coldest, and when it is warmest."""
        for end, word in zip(_ends(year), ("coldest", "warmest"), strict=True):
            temp = self.in_unit("temperature", f"Water temperature when {word}", end, scale, DEGC)
            kelvin = self.absolute("absolute_temperature", f"Water temperature from absolute zero when {word}", temp)
            yield self.saturation(f"saturation_when_{word}", f"Oxygen saturation when the water is {word}", temp, kelvin, salt)

    def exchange(self) -> Iterator[Fact]:
        """What flows, and how long it takes to exchange the water."""
        station = self.station
        if station.flow_speed is not None:
            yield self.stated("flow_speed", "Speed of the current", station.flow_speed, SPEED)
        if station.discharge is not None:
            yield self.stated("discharge", "Discharge", station.discharge, M3_PER_S)
        if station.volume is not None:
            yield self.in_unit("volume", "Volume of the water", station.volume, unit(self.record.units.volume), M3)
        if station.volume is not None and station.discharge is not None:
            given = {
                "volume": self.in_unit("volume", "Volume of the water", station.volume, unit(self.record.units.volume), M3),
                "discharge": self.stated("discharge", "Discharge", station.discharge, M3_PER_S),
            }
            yield self.made("flushing_time", "Flushing time", water_exchange.FLUSHING_TIME, given, DAY)


def _ends(year: Amount) -> tuple[float, float]:
    """Coldest and warmest; the record lets nothing else through."""
    if year.low is None or year.high is None:
        raise ValueError("yearly_temperature: expected a range")
    return year.low, year.high
