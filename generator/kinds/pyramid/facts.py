"""Every number of a pyramid, level by level, and what passes from one to the next."""

from __future__ import annotations

from collections.abc import Iterator
from types import MappingProxyType

from generator.kinds.pyramid.record import Level, PyramidRecord, TopConsumer
from generator.quantities import shown
from generator.quantities.fact import Fact, Facts, computed, stated
from generator.quantities.units import Unit, unit
from generator.records.fields import stated_amount
from generator.science import energy_flow
from generator.science.method import Method

METHODS = MappingProxyType(
    {
        method.id: method
        for method in (
            energy_flow.NET_PRODUCTION, energy_flow.CONSUMER_PRODUCTION, energy_flow.PRODUCTION_FROM_BELOW,
            energy_flow.TRANSFER_EFFICIENCY, energy_flow.NOT_PASSED_ON, energy_flow.OVERALL_EFFICIENCY,
            energy_flow.SUPPORTING_AREA, energy_flow.PRODUCTION_TO_BIOMASS,
        )
    }
)  # fmt: skip
PERCENT, HECTARE, PER_YEAR = unit("percent"), unit("ha"), unit("1/yr")
STATED = (
    ("gross_production", "Gross production"), ("respiration", "Respiration"), ("eaten", "Eaten"), ("egested", "Egested"),
    ("respired", "Respired"),
)  # fmt: skip
NO_LEVEL_ABOVE = "not defined: no level stands above"


def facts(record: PyramidRecord) -> Facts:
    """All facts, from producers up."""
    return Facts(_Pyramid(record).facts())


class _Pyramid:
    """The record with its units and the production of each level, which everything else builds on."""

    def __init__(self, record: PyramidRecord) -> None:
        self.record = record
        self.flow = unit(record.units.energy_flow)
        self.figures = record.figures or shown.FIGURES
        self.stated = {level.id: self._stated(level) for level in record.levels}
        self.production: list[Fact] = []
        for index, level in enumerate(record.levels):
            self.production.append(self._production(index, level))

    def facts(self) -> Iterator[Fact]:
        for index, level in enumerate(self.record.levels):
            yield from self.stated[level.id].values()
            yield self.production[index]
            yield self._transfer_efficiency(index, level)
            yield self._not_passed_on(index, level)
            yield self._production_to_biomass(index, level)
        if self.record.top_consumer:
            yield from self._supporting_area(self.record.top_consumer)
        yield self._made(
            "overall_efficiency", "Overall efficiency, top level from producers", energy_flow.OVERALL_EFFICIENCY,
            {"top_production": self.production[-1], "producer_production": self.production[0]}, PERCENT,
        )  # fmt: skip

    def _made(self, fact_id: str, name: str, method: Method, given: dict[str, Fact], of: Unit) -> Fact:
        return computed(fact_id, name, method.expression, given, of, method=method.id, figures=self.figures)

    def _stated(self, level: Level) -> dict[str, Fact]:
        found = {
            field: stated(f"{level.id}.{field}", name, getattr(level, field), self.flow, figures=self.figures)
            for field, name in STATED
            if getattr(level, field) is not None
        }
        units = {"biomass": self.record.units.biomass, "energy_content": self.record.units.energy_content, "individuals_per_m2": "1/m2"}
        names = {"biomass": "Biomass", "energy_content": "Energy content", "individuals_per_m2": "Individuals per square metre"}
        for field, label in units.items():
            amount = getattr(level, field)
            if amount is not None:
                found[field] = stated(f"{level.id}.{field}", names[field], amount, unit(label), figures=self.figures)
        return found

    def _production(self, index: int, level: Level) -> Fact:
        """As stated; or what is left of the intake; or a share of the level below."""
        fact_id, has = f"{level.id}.production", self.stated[level.id]
        name = "Net production" if index == 0 else "Production"
        if level.production is not None:
            return stated(fact_id, name, level.production, self.flow, figures=self.figures)
        if "gross_production" in has and "respiration" in has:
            return self._made(fact_id, name, energy_flow.NET_PRODUCTION, _pick(has, "gross_production", "respiration"), self.flow)
        if all(field in has for field in ("eaten", "egested", "respired")):
            return self._made(fact_id, name, energy_flow.CONSUMER_PRODUCTION, _pick(has, "eaten", "egested", "respired"), self.flow)
        if level.transfer_efficiency is not None and index:
            share = stated(f"{level.id}.stated_efficiency", "Transfer efficiency", stated_amount(level.transfer_efficiency), unit(""))
            given = {"production_below": self.production[index - 1], "transfer_efficiency": share}
            return self._made(fact_id, name, energy_flow.PRODUCTION_FROM_BELOW, given, self.flow)
        return Fact(id=fact_id, name=name, value=None, unit=self.flow, undefined_because="not known: the record does not state it")

    def _transfer_efficiency(self, index: int, level: Level) -> Fact:
        fact_id, name, method = f"{level.id}.transfer_efficiency", "Transfer efficiency from the level below", energy_flow.TRANSFER_EFFICIENCY
        if index == 0:
            because = "not defined: producers have no level below"
            return Fact(id=fact_id, name=name, value=None, unit=PERCENT, method=method.id, undefined_because=because)
        given = {"production": self.production[index], "production_below": self.production[index - 1]}
        return self._made(fact_id, name, method, given, PERCENT)

    def _not_passed_on(self, index: int, level: Level) -> Fact:
        fact_id, name, method = f"{level.id}.not_passed_on", "Not passed on to the next level", energy_flow.NOT_PASSED_ON
        if index + 1 == len(self.production):
            return Fact(id=fact_id, name=name, value=None, unit=self.flow, method=method.id, undefined_because=NO_LEVEL_ABOVE)
        given = {"production": self.production[index], "production_above": self.production[index + 1]}
        return self._made(fact_id, name, method, given, self.flow)

    def _production_to_biomass(self, index: int, level: Level) -> Fact:
        fact_id, name, method = f"{level.id}.production_to_biomass", "Production to biomass", energy_flow.PRODUCTION_TO_BIOMASS
        has = self.stated[level.id]
        if missing := [field for field in ("biomass", "energy_content") if field not in has]:
            because = f"not known: the record states no {missing[0].replace('_', ' ')} of this level"
            return Fact(id=fact_id, name=name, value=None, unit=PER_YEAR, method=method.id, undefined_because=because)
        given = {"production": self.production[index]} | _pick(has, "biomass", "energy_content")
        return self._made(fact_id, name, method, given, PER_YEAR)

    def _supporting_area(self, top: TopConsumer) -> Iterator[Fact]:
        """By the convention that the record states: the need of one animal against what its level eats, or produces."""
        index = [level.id for level in self.record.levels].index(top.level)
        as_eaten = top.measured_as == "eaten"
        flow = self.stated[top.level]["eaten"] if as_eaten else self.production[index]
        need = stated(f"{top.level}.need", "Need of one animal in a year", stated_amount(top.needs.value), unit(top.needs.unit))
        name = f"Supporting area of one animal (need compared with what its level {'eats' if as_eaten else 'produces'})"
        yield need
        yield self._made(f"{top.level}.supporting_area", name, energy_flow.SUPPORTING_AREA, {"need": need, "flow": flow}, HECTARE)


def _pick(found: dict[str, Fact], *fields: str) -> dict[str, Fact]:
    return {field: found[field] for field in fields}
