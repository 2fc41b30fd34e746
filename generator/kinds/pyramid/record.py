"""What a pyramid record holds: its trophic levels from producers up, with the flows of a year."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator

from generator.records.fields import Bounds, Id, Number, Some, StatedAmount, Text, different
from generator.records.parts import Part
from generator.records.record import Record

class Units(Part):
    """The units of the levels' numbers."""

    energy_flow: Text
    biomass: Text = "g/m2"
    energy_content: Text = "kJ/g"

Flow = Annotated[StatedAmount, AfterValidator(Bounds(0, mend="a flow or a stock of energy cannot be negative"))]
"""An amount that cannot be negative."""

class Level(Part):
    """One trophic level; producers photosynthesise, all others eat."""

    id: Id
    name: Text | None = None
    gross_production: Flow | None = None
    respiration: Flow | None = None
    """Of producers; what consumers respire is `respired`."""
    eaten: Flow | None = None
    egested: Flow | None = None
    respired: Flow | None = None
    production: Flow | None = None
    """Net production: what is built into new matter."""
    transfer_efficiency: Annotated[Number, AfterValidator(Bounds(0, 1, mend="write a share of the level below, such as 0.10 for ten percent"))] | None = None
    """In place of `production`."""
    biomass: Flow | None = None
    energy_content: Flow | None = None
    individuals_per_m2: Flow | None = None

    @property
    def label(self) -> str:
        """The name, or the id made readable."""
        return self.name or self.id.replace("_", " ").capitalize()

class Need(Part):
    """What one animal of the top level needs in a year."""

    value: Annotated[Number, AfterValidator(Bounds(0, above=True, mend="an animal needs something"))]
    unit: Text

class TopConsumer(Part):
    """The animal whose feeding area is asked for."""

    level: Id
    needs: Need
    measured_as: Literal["eaten", "production"]
    """Which flow of its level the need is compared with."""

class PyramidRecord(Record):
    """One pyramid."""

    units: Units
    levels: Annotated[Some[Level], different()]
    top_consumer: TopConsumer | None = None
