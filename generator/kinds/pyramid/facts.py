"""Every number of a pyramid, level by level, and what passes from one to the next."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from types import MappingProxyType

from generator.kind import in_sentence
from generator.kinds.pyramid.flows import Flows, energy_per_carbon, in_energy_of
from generator.kinds.pyramid.needs import production_behind, supporting_area
from generator.kinds.pyramid.record import Level, PyramidRecord
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, Facts, computed, stated
from generator.quantities.units import Unit, unit
from generator.quantities.working import Rule, RulePath
from generator.science import energy_conversions, energy_flow, harvest, production_required, pyramid_shape
from generator.science.method import Method

METHODS = MappingProxyType(
    {
        method.id: method
        for method in (
            energy_flow.NET_PRODUCTION, energy_flow.CONSUMER_PRODUCTION, energy_flow.PRODUCTION_FROM_BELOW,
            energy_flow.TRANSFER_EFFICIENCY, energy_flow.CONSUMPTION_EFFICIENCY, energy_flow.ASSIMILATION_EFFICIENCY,
            energy_flow.PRODUCTION_EFFICIENCY, energy_flow.NOT_PASSED_ON, energy_flow.OVERALL_EFFICIENCY, energy_flow.SUPPORTING_AREA,
            energy_flow.PRODUCTION_TO_BIOMASS, energy_flow.BIOMASS_TURNOVER_TIME, pyramid_shape.PYRAMID_SHAPE,
            energy_conversions.ENERGY_CONVERSION, energy_conversions.ENERGY_FROM_CARBON, harvest.ENERGY_FROM_DRY_MATTER,
            energy_conversions.ENERGY_PER_DRY_MATTER, production_required.PRIMARY_PRODUCTION_REQUIRED,
            production_required.PRIMARY_PRODUCTION_SHARE,
        )
    }
)  # fmt: skip
PERCENT, PER_YEAR, YEAR, DAY = unit("percent"), unit("1/yr"), unit("yr"), unit("d")
SHORT = 2.0
"""Years below which a turnover time is told in days."""
NO_LEVEL_ABOVE = "not defined: no level stands above"
EATS_NOTHING = "not defined: producers eat nothing"


def facts(record: PyramidRecord) -> Facts:
    """All facts, from producers up."""
    return Facts(_Pyramid(record).facts())


class _Pyramid:
    """The record with its flows, which everything else builds on."""

    def __init__(self, record: PyramidRecord) -> None:
        self.record = record
        self.flows = Flows(record)
        self.production = self.flows.production
        self.stocks = {level.id: self._stocks(level) for level in record.levels}

    def facts(self) -> Iterator[Fact]:
        for index, level in enumerate(self.record.levels):
            yield from self.flows.of[level.id].values()
            yield from self.stocks[level.id].values()
            yield self.production[index]
            yield self._transfer_efficiency(index, level)
            yield from self._efficiencies(index, level)
            yield self._not_passed_on(index, level)
            yield from self._turnover(index, level)
        yield from self._outweighing()
        if self.record.top_consumer:
            yield from supporting_area(self.record, self.flows, self.record.top_consumer)
        yield from self._shapes()
        if self.record.catch:
            yield from production_behind(self.record, self.flows, self.record.catch)
        yield from self._factors()
        yield self._made(
            "overall_efficiency", "Overall efficiency, top level from producers", energy_flow.OVERALL_EFFICIENCY,
            {"top_production": self.production[-1], "producer_production": self.production[0]}, PERCENT,
        )  # fmt: skip

    def _made(
        self, fact_id: str, name: str, method: Method, given: dict[str, Fact], of: Unit, expression: Expression | None = None
    ) -> Fact:  # fmt: skip
        return computed(fact_id, name, expression or method.expression, given, of, method=method.id, figures=self.flows.figures)

    def _stocks(self, level: Level) -> dict[str, Fact]:
        units = self.record.units
        return {
            field: in_energy_of(stated(f"{level.id}.{field}", name, amount, unit(label), figures=self.flows.figures), self.flows.conversion)
            for field, name, label in (
                ("biomass", "Biomass", units.biomass), ("energy_content", "Energy content", units.energy_content),
                ("individuals_per_m2", "Individuals per square metre", "1/m2"),
            )
            if (amount := getattr(level, field)) is not None
        }  # fmt: skip

    def _transfer_efficiency(self, index: int, level: Level) -> Fact:
        fact_id, name, method = f"{level.id}.transfer_efficiency", "Transfer efficiency from the level below", energy_flow.TRANSFER_EFFICIENCY
        if index == 0:
            return _undefined(fact_id, name, PERCENT, method, "not defined: producers have no level below")
        given = {"production": self.production[index], "production_below": self.production[index - 1]}
        return self._made(fact_id, name, method, given, PERCENT)

    def _efficiencies(self, index: int, level: Level) -> Iterator[Fact]:
        """The three shares whose product is the transfer efficiency: eaten, of that assimilated, of that built up."""
        has = self.flows.of[level.id] | {"production": self.production[index]}
        if index:
            has["production_below"] = self.production[index - 1]
        for name, method in (
            ("Consumption efficiency: eaten, of the production below", energy_flow.CONSUMPTION_EFFICIENCY),
            ("Assimilation efficiency: taken up, of what is eaten", energy_flow.ASSIMILATION_EFFICIENCY),
            ("Production efficiency: built up, of what is taken up", energy_flow.PRODUCTION_EFFICIENCY),
        ):
            fact_id, expression = f"{level.id}.{method.id}", method.expression
            if method is energy_flow.PRODUCTION_EFFICIENCY and not {"eaten", "egested"} <= set(has):
                expression = energy_flow.ASSIMILATED_FROM_USES
            missing = [symbol for symbol in expression.names if symbol not in has]
            if index == 0:
                yield _undefined(fact_id, name, PERCENT, method, EATS_NOTHING)
            elif missing:
                yield _undefined(fact_id, name, PERCENT, method, f"not known: the record does not state what is {missing[0]}")
            else:
                yield self._made(fact_id, name, method, {symbol: has[symbol] for symbol in expression.names}, PERCENT, expression)

    def _not_passed_on(self, index: int, level: Level) -> Fact:
        fact_id, name, method = f"{level.id}.not_passed_on", "Not passed on to the next level", energy_flow.NOT_PASSED_ON
        if index + 1 == len(self.production):
            return _undefined(fact_id, name, self.flows.unit, method, NO_LEVEL_ABOVE)
        given = {"production": self.production[index], "production_above": self.production[index + 1]}
        return self._made(fact_id, name, method, given, self.flows.unit)

    def _turnover(self, index: int, level: Level) -> Iterator[Fact]:
        """How often a year the biomass is built anew, and how long that takes: the one is the other turned round."""
        has = self.stocks[level.id]
        missing = [field for field in ("biomass", "energy_content") if field not in has]
        given = {"production": self.production[index]} | {field: has[field] for field in ("biomass", "energy_content") if field in has}
        for name, method, of in (
            ("Ratio of production to biomass", energy_flow.PRODUCTION_TO_BIOMASS, PER_YEAR),
            ("Turnover time of biomass", energy_flow.BIOMASS_TURNOVER_TIME, YEAR),
        ):
            if missing:
                because = f"not known: the record states no {missing[0].replace('_', ' ')} of this level"
                yield _undefined(f"{level.id}.{method.id}", name, of, method, because)
                continue
            made = self._made(f"{level.id}.{method.id}", name, method, given, of)
            short = of is YEAR and made.is_number and made.number < SHORT
            yield self._made(made.id, name, method, given, DAY) if short else made

    def _outweighing(self) -> Iterator[Fact]:
        """For each level with more biomass than the one below: how much more, and how much longer its biomass lasts."""
        for (below, level), (least, most) in zip(pairwise(self.record.levels), pairwise(self.production), strict=True):
            down, up = self.stocks[below.id], self.stocks[level.id]
            if not all("biomass" in has and "energy_content" in has and has["biomass"].is_number for has in (down, up)):
                continue
            if up["biomass"].number <= down["biomass"].number:
                continue
            method = energy_flow.BIOMASS_TURNOVER_TIME
            lasts = [
                self._made(f"{of.id}.{method.id}", "Turnover time of biomass", method, {"production": made} | has, DAY)
                for of, has, made in ((level, up, most), (below, down, least))
            ]
            for name, title, symbol, pair in (
                ("biomass_ratio", "Biomass, times that of the level below", "biomass", (up["biomass"], down["biomass"])),
                ("turnover_ratio", "Turnover time of biomass, times that of the level below", "turnover_time", lasts),
            ):
                given = dict(zip((symbol, f"{symbol}_below"), pair, strict=True))
                expression = Expression(f"{symbol} / {symbol}_below")
                yield computed(f"{level.id}.{name}", title, expression, given, unit(""), figures=self.flows.figures)

    def _shapes(self) -> Iterator[Fact]:
        """Which way up the pyramids of biomass and of numbers stand, where every level states what they need."""
        method = pyramid_shape.PYRAMID_SHAPE
        for field, fact_id, name in (
            ("biomass", "biomass_pyramid", "Pyramid of biomass"), ("individuals_per_m2", "numbers_pyramid", "Pyramid of numbers"),
        ):  # fmt: skip
            known = [fact for level in self.record.levels if (fact := self.stocks[level.id].get(field)) and fact.is_number]
            if len(known) < len(self.record.levels):
                continue
            rules = tuple(
                Rule(f"Is there more of {in_sentence(above.label)} than of {in_sentence(below.label)}?", f"{up.shown_exactly} > {down.shown_exactly}", up.number > down.number)
                for (below, down), (above, up) in pairwise(zip(self.record.levels, known, strict=True))
            )
            shape = pyramid_shape.pyramid_shape([fact.number for fact in known])
            yield Fact(id=fact_id, name=name, value=shape, working=RulePath(rules), method=method.id)

    def _factors(self) -> Iterator[Fact]:
        """What flows were converted with, and what the catch was traced with."""
        used = self.flows.conversion
        found = [*used.before, used.factor] if used else []
        if (per_carbon := energy_per_carbon(self.record)) and per_carbon.id not in {fact.id for fact in found}:
            found.insert(0, per_carbon)
        yield from found


def _undefined(fact_id: str, name: str, of: Unit, method: Method, because: str) -> Fact:
    return Fact(id=fact_id, name=name, value=None, unit=of, method=method.id, undefined_because=because)
