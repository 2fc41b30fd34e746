"""The flows of every level: as stated or converted into energy, with what follows from the others filled in."""

from __future__ import annotations

import re
from dataclasses import dataclass

from generator.kinds.pyramid.record import Level, PyramidRecord
from generator.quantities import shown
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, in_proportion, stated
from generator.quantities.units import Unit, convert, unit
from generator.records.fields import stated_amount
from generator.science import energy_conversions, energy_flow, harvest
from generator.science.method import Method

ENERGY, CARBON, DRY_MATTER = unit("kJ/m2/yr"), unit("g C/m2/yr"), unit("g/m2/yr")
NAMES = {
    "gross_production": "Gross production", "respiration": "Respiration", "eaten": "Eaten", "egested": "Egested", "respired": "Respired",
}  # fmt: skip
"""Of the flows of a level besides its production, in the order in which they are told."""
_ENERGIES = ("kcal", "cal", "J", "kJ", "MJ", "GJ")
MOST_FIGURES = 6
"""Of a number that is turned into another unit by an exact factor."""


@dataclass(frozen=True)
class Conversion:
    """How a stated flow becomes energy: the method, the name of the flow in it, and the factor."""

    method: Method
    symbol: str
    factor: Fact
    to: Unit
    exact: bool = False
    before: tuple[Fact, ...] = ()
    """Facts that the factor itself is made of."""

    def fact(self, raw: Fact, figures: int) -> Fact:
        """The converted flow with the step as working; a spread is converted with it."""
        given = {self.symbol: raw, self.factor_name: self.factor}
        if self.exact:
            figures = max(figures, min(self._digits(raw), MOST_FIGURES))
        made = computed(raw.id, raw.name, self.method.expression, given, self.to, method=self.method.id, figures=figures)
        return in_proportion(made, raw)

    def _digits(self, raw: Fact) -> int:
        """As many as were stated, and all before the decimal point: flows that add up must still do so once they are converted."""
        stated_digits = sum(c.isdigit() for c in raw.written.lstrip("0."))
        return max(stated_digits, shown.whole_digits(raw.number * self.factor.number) if raw.is_number else 0)

    @property
    def factor_name(self) -> str:
        """What the method calls the factor."""
        return next(name for name in self.method.expression.names if name != self.symbol)


def energy_per_carbon(record: PyramidRecord) -> Fact | None:
    """The stated factor from carbon to energy, for flows and for a catch."""
    return _factor(record, "energy_per_carbon", "Energy for each gram of carbon", "kJ/g C")


def conversion(record: PyramidRecord) -> Conversion | None:
    """What turns the record's flows into energy; None where they are used as stated."""
    source, told = unit(record.units.energy_flow), record.conversions
    to = unit(told.to) if told and told.to else ENERGY
    if source.same_kind(ENERGY):
        return _of_energy(source, to) if told and told.to and source.label != to.label else None
    per_carbon = energy_per_carbon(record)
    if source.same_kind(CARBON):
        return Conversion(energy_conversions.ENERGY_FROM_CARBON, "carbon", per_carbon, to) if per_carbon else None
    per_mass, before = _factor(record, "energy_per_dry_matter", "Energy in a gram of dry matter", "kJ/g"), ()
    share = _factor(record, "carbon_per_dry_matter", "Carbon in a gram of dry matter", "g C/g")
    if per_mass is None and share and per_carbon:
        method, before = energy_conversions.ENERGY_PER_DRY_MATTER, (share,)
        per_mass = computed(
            "conversions.energy_per_dry_matter", "Energy in a gram of dry matter", method.expression,
            {"carbon_per_dry_matter": share, "energy_per_carbon": per_carbon}, unit("kJ/g"), method=method.id, figures=4,
        )  # fmt: skip
    return Conversion(harvest.ENERGY_FROM_DRY_MATTER, "dry_matter", per_mass, to, before=before) if per_mass else None


def in_energy_of(stated_fact: Fact, used: Conversion | None) -> Fact:
    """A stated need or content of energy in the energy unit of the converted flows; as it is where nothing was converted."""
    if used is None or stated_fact.unit is None:
        return stated_fact
    name = next(name for name, _, _ in used.to.factors if name in _ENERGIES)
    target = unit(re.sub(rf"\b(?:{'|'.join(_ENERGIES)})\b", name, stated_fact.unit.label))
    if target.label == stated_fact.unit.label:
        return stated_fact
    return _of_energy(stated_fact.unit, target).fact(stated_fact, stated_fact.figures)


def _factor(record: PyramidRecord, field: str, name: str, label: str) -> Fact | None:
    told = record.conversions
    number = getattr(told, field) if told else None
    if told is None or number is None:
        return None
    return stated(f"conversions.{field}", name, stated_amount(number), unit(label), sources=(told.source,) if told.source else ())


def _of_energy(source: Unit, to: Unit) -> Conversion:
    """From one unit of energy to another, as kcal to kJ: the factor is a matter of definition."""
    kilocalories = any(name in ("kcal", "cal") for name, _, _ in source.factors)
    factor = stated(
        "conversions.factor", f"Factor from {source.shown} to {to.shown}{', thermochemical calories' if kilocalories else ''}",
        Amount(value=(times := convert(1.0, source, to)), written=f"{times:.10g}"), _quotient(to, source),
        sources=energy_conversions.ENERGY_CONVERSION.sources if kilocalories else (),
    )  # fmt: skip
    return Conversion(energy_conversions.ENERGY_CONVERSION, "amount", factor, to, exact=True)


def _quotient(above: Unit, below: Unit) -> Unit:
    """One unit divided by another, without what stands in both: `kJ kcal⁻¹`."""
    turned = [(name, -power, of) for name, power, of in below.factors]
    left = [factor for factor in above.factors if (factor[0], -factor[1], factor[2]) not in turned]
    right = [factor for factor in turned if (factor[0], -factor[1], factor[2]) not in above.factors]
    return Unit(f"{above.label} in {below.label}", (*left, *right))


class Flows:
    """Every flow of a record by level; `production` of each level in order, and all others in `of`."""

    def __init__(self, record: PyramidRecord) -> None:
        self.conversion = conversion(record)
        self.unit = self.conversion.to if self.conversion else unit(record.units.energy_flow)
        self.figures = record.figures or shown.FIGURES
        self.raw_unit = unit(record.units.energy_flow)
        self.of: dict[str, dict[str, Fact]] = {}
        self.production: list[Fact] = []
        for index, level in enumerate(record.levels):
            has = {field: self._stated(level, field, NAMES[field]) for field in NAMES if getattr(level, field) is not None}
            made = self._production(index, level, has)
            self.production.append(made)
            self.of[level.id] = self._completed(level, has, made, energy_flow.CONSUMER_BALANCE if index else energy_flow.PRODUCER_BALANCE)

    def _stated(self, level: Level, field: str, name: str) -> Fact:
        raw = stated(f"{level.id}.{field}", name, getattr(level, field), self.raw_unit, figures=self.figures)
        return self.conversion.fact(raw, self.figures) if self.conversion else raw

    def _production(self, index: int, level: Level, has: dict[str, Fact]) -> Fact:
        """As stated; or what is left of the intake; or a share of the level below."""
        name = "Production" if index else "Net production"
        if level.production is not None:
            return self._stated(level, "production", name)
        below = self.production[index - 1] if index else None
        for method, given in (
            (energy_flow.NET_PRODUCTION, has), (energy_flow.CONSUMER_PRODUCTION, has),
            (energy_flow.PRODUCTION_FROM_BELOW, _from_below(level, below)),
        ):  # fmt: skip
            if all(symbol in given for symbol in method.expression.names):
                needed = {symbol: given[symbol] for symbol in method.expression.names}
                return self._made(f"{level.id}.production", name, method.expression, needed, method)
        because = "not known: the record does not state it"
        return Fact(id=f"{level.id}.production", name=name, value=None, unit=self.unit, undefined_because=because)

    def _completed(self, level: Level, has: dict[str, Fact], production: Fact, balance: dict[str, Expression]) -> dict[str, Fact]:
        """The flows with the one that the others leave no choice about; several unknown ones stay unknown."""
        known = has | {"production": production}
        method = energy_flow.CONSUMER_PRODUCTION if "eaten" in balance else energy_flow.NET_PRODUCTION
        found = {
            field: self._made(f"{level.id}.{field}", NAMES[field], expression, {name: known[name] for name in expression.names}, method)
            for field, expression in balance.items()
            if field not in has and production.is_number and all(name in known for name in expression.names)
        }
        both = has | found
        return {field: both[field] for field in NAMES if field in both}

    def _made(self, fact_id: str, name: str, expression: Expression, given: dict[str, Fact], method: Method) -> Fact:
        return computed(fact_id, name, expression, given, self.unit, method=method.id, figures=self.figures)


def _from_below(level: Level, below: Fact | None) -> dict[str, Fact]:
    if level.transfer_efficiency is None or below is None:
        return {}
    share = stated(f"{level.id}.stated_efficiency", "Transfer efficiency", stated_amount(level.transfer_efficiency), unit(""))
    return {"production_below": below, "transfer_efficiency": share}
