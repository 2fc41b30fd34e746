"""What a cycle record holds: reservoirs, fluxes, ends that are not budgeted, and what is worked out from them beside the budgets."""

from __future__ import annotations

import keyword
import re
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, Strict

from generator.quantities.units import SUBSTANCES
from generator.records.fields import (
    ID,
    Bounds,
    Id,
    Many,
    Number,
    Some,
    StatedAmount,
    Text,
    UnitLabel,
    Whole,
    different,
    one_of,
    spelled,
)
from generator.records.parts import Part
from generator.records.record import Record
from generator.science.combustion import FUELS

LONGEST_RUN = 100000
"""Years of a scenario."""
PPM = "ppm"
Year = Annotated[Number, AfterValidator(Bounds(0, LONGEST_RUN, "years", mend="count years from now"))]
QuantityId = spelled(
    rf"{ID}\.(?:stock|change|rate|inflow|outflow|balance)", "the id of a stock or a flow", "atmosphere.stock or leaching.rate",
    lambda text: text.strip("{} "),
)  # fmt: skip
StatedId = spelled(
    rf"(?:numbers\.{ID}|{ID}\.(?:stock|change|rate|inflow|outflow|balance))", "the id of a stock, a flow or a stated number",
    "ocean.stock or numbers.sea_nitrogen", lambda text: text.strip("{} "),
)  # fmt: skip


class Units(Part):
    """The units of all stocks and of all fluxes."""

    stock: Text
    flux: Text


class Reservoir(Part):
    """A store of matter."""

    id: Id
    name: Text | None = None
    stock: Annotated[StatedAmount, AfterValidator(Bounds(0, mend="a stock cannot be negative"))]
    change: StatedAmount | None = None
    """By how much the stock changes, stated apart from the fluxes, so that the budget can be tested."""
    residual: bool = False
    """Whether that change was itself found as the rest of the fluxes, so that it tests nothing."""
    at: Annotated[tuple[Number, Number], Strict(False)] | None = None
    """Column and row in the drawing, from the top left."""

    @property
    def label(self) -> str:
        """The name, or the id made readable."""
        return self.name or self.id.replace("_", " ").capitalize()


class Flux(Part):
    """A flow of matter from one end to another."""

    id: Id
    name: Text | None = None
    start: Annotated[Id, Field(alias="from")]
    end: Annotated[Id, Field(alias="to")]
    rate: Annotated[StatedAmount, AfterValidator(Bounds(0, mend="turn a negative flux round: swap `from` and `to`"))]
    process: Text | None = None
    starts_as: Text | None = None
    """The substance that enters the process."""
    ends_as: Text | None = None
    done_by: Text | None = None
    oxygen: Literal["needed", "none"] | None = None
    scene: Annotated[Text | None, Field(repr=False)] = None
    """A moment in which the process goes on, told without its name: students say which form turns into which.

    Questions are drawn by the repr, so that a scene moves no other question if it is no part of that.
    """
    cause: Literal["nature", "people", "both"] = "nature"
    """Its main direct cause; `both` where nature and people drive it and nobody can part them."""
    pace: Literal["fast", "slow"] | None = None
    constant: bool = False
    """Whether, in a model of the whole, it stays as it is when the stock that it leaves changes."""
    residual: bool = False
    """Whether its rate was found as the rest of a budget, so that this budget closes whatever the numbers are."""

    @property
    def label(self) -> str:
        """The name, or the id made readable."""
        return self.name or self.id.replace("_", " ").capitalize()

    @property
    def process_id(self) -> str:
        """The process, or the flux itself where none is named, as part of fact ids."""
        return "_".join(re.findall("[a-z0-9]+", (self.process or self.id).lower())) or self.id

    @property
    def symbol(self) -> str:
        """The flux in a formula: its id, unless the expression language keeps that word for itself, as it does `import`."""
        return f"{self.id}_flux" if keyword.iskeyword(self.id) else self.id


class Change(Part):
    """What a scenario changes: a flux for some years, or a stock at once."""

    flux: Id | None = None
    times: Annotated[Number, AfterValidator(Bounds(0, 1000))] | None = None
    """What its rate is multiplied by."""
    rate: Annotated[Number, AfterValidator(Bounds(0, mend="turn a negative flux round: swap `from` and `to`"))] | None = None
    """What its rate is set to; only of a flux that does not follow a stock."""
    begin: Annotated[Year | None, Field(alias="from")] = None
    """First year of the change, by default 0, which is now."""
    until: Year | None = None
    """Last year, by default the end of the scenario."""
    into: Id | None = None
    """The reservoir that gets a single pulse."""
    add: Annotated[Number, AfterValidator(Bounds(0, above=True, mend="write how much is added at once"))] | None = None
    """How much, in the unit of the stocks."""
    at: Year | None = None
    """In which year, by default 0."""

    @property
    def is_pulse(self) -> bool:
        """Whether it changes a stock and no flux."""
        return self.into is not None


class Scenario(Part):
    """A what-if, with the assumption that it rests on."""

    id: Id
    name: Text
    asks: Text | None = None
    """The question that it answers, as it goes on after "find out": `how far nitrate rises`."""
    change: Many[Change] = ()
    """Nothing at all shows where things go as they are."""
    years: Annotated[Number, AfterValidator(Bounds(1, LONGEST_RUN, "years"))]
    tell: Annotated[Many[Annotated[Whole, AfterValidator(Bounds(1, LONGEST_RUN, "years"))]], different()] = ()
    """The years for which the stocks are told; without them only the last one."""
    assumes: Text
    limits: Text | None = None
    """How far the model can be trusted, and what better ones say."""

    @property
    def told_years(self) -> tuple[float, ...]:
        """The years for which there are facts."""
        return tuple(float(year) for year in self.tell) or (float(self.years),)

    def then(self, reservoir: str, year: float, changed: bool = True) -> str:
        """The id of the fact that tells a stock after some years, with the change or without it."""
        when = f"{year:.10g}".replace(".", "_")
        return f"{self.id}.{reservoir}_{'' if changed else 'without_'}at_{when}"

    def finally_(self, reservoir: str) -> str:
        """The id of the fact that tells where a stock leads."""
        return f"{self.id}.{reservoir}_steady_state"


class Conversion(Part):
    """A stock or a flow counted as another substance, or as parts per million in the air."""

    of: QuantityId
    substance: Annotated[one_of(*SUBSTANCES, PPM), Field(alias="as")]
    unit: UnitLabel | None = None
    """By default the unit of the quantity, with the other substance in it."""

    @property
    def fact(self) -> str:
        """The id of the fact that it gives: `fossil_burning.rate_as_co2`."""
        return f"{self.of}_as_{self.substance.lower()}"


class Ratio(Part):
    """Two elements beside each other, by mass and by atoms."""

    id: Id
    name: Text
    of: StatedId
    to: StatedId
    says: Text | None = None
    """What it means; may hold facts."""


class AirborneFraction(Part):
    """Which reservoir is the air, and which fluxes are what people emit."""

    air: Id
    emissions: Annotated[Some[Id], different()]


class BurnedFuel(Part):
    """An amount of fuel: an ordinary fuel by its name, or a pure compound by its formula."""

    id: Id
    name: Text
    fuel: one_of(*FUELS) | None = None
    formula: Text | None = None
    mass: Annotated[Number, AfterValidator(Bounds(0, above=True, mend="write how much is burned"))]
    unit: UnitLabel


class CycleRecord(Record):
    """One cycle."""

    units: Units
    outside: Annotated[Many[Id], different()] = ()
    reservoirs: Annotated[Some[Reservoir], different()]
    fluxes: Annotated[Some[Flux], different()]
    scenarios: Annotated[Many[Scenario], different()] = ()
    conversions: Many[Conversion] = ()
    ratios: Annotated[Many[Ratio], different()] = ()
    airborne_fraction: AirborneFraction | None = None
    fuels: Annotated[Many[BurnedFuel], different()] = ()
