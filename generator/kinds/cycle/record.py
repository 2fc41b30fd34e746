"""What a cycle record holds: reservoirs, fluxes, and the ends of fluxes that are not budgeted."""

from __future__ import annotations

import keyword
import re
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, Strict

from generator.records.fields import Bounds, Id, Many, Number, Some, StatedAmount, Text, different
from generator.records.parts import Part
from generator.records.record import Record


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
    cause: Literal["nature", "people", "both"] = "nature"
    """Its main direct cause; `both` where nature and people drive it and nobody can part them."""
    pace: Literal["fast", "slow"] | None = None

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
    """What a scenario changes."""

    flux: Id
    times: Annotated[Number, AfterValidator(Bounds(0, 1000))]


class Scenario(Part):
    """A what-if, with the assumption that it rests on."""

    id: Id
    name: Text
    change: Some[Change]
    years: Annotated[Number, AfterValidator(Bounds(1, 100000, "years"))]
    assumes: Text


class CycleRecord(Record):
    """One cycle."""

    units: Units
    outside: Annotated[Many[Id], different()] = ()
    reservoirs: Annotated[Some[Reservoir], different()]
    fluxes: Annotated[Some[Flux], different()]
    scenarios: Annotated[Many[Scenario], different()] = ()
