"""What a pyramid record holds: its trophic levels from producers up, with the flows of a year."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator

from generator.records.fields import Bounds, Id, Number, Some, SourceKey, StatedAmount, Text, different
from generator.records.numeral import WrittenFloat
from generator.records.parts import Part
from generator.records.record import Record

class Units(Part):
    """The units of the levels' numbers."""

    energy_flow: Text
    biomass: Text = "g/m2"
    energy_content: Text = "kJ/g"
    catch: Text = "g/m2/yr"


Positive = Annotated[Number, AfterValidator(Bounds(0, above=True, mend="check the digits: the factor multiplies every flow"))]
Share = Annotated[Number, AfterValidator(Bounds(0, 1, above=True, mend="write a share such as 0.10 for ten percent"))]


class Conversions(Part):
    """What turns the flows of a record into energy of one unit, with every factor stated."""

    to: Text | None = None
    """The unit in which everything is computed, where the record states its flows in another one."""
    energy_per_carbon: Positive | None = None
    """Kilojoules in organic matter that holds a gram of carbon."""
    carbon_per_dry_matter: Share | None = None
    """Grams of carbon in a gram of dry matter."""
    energy_per_dry_matter: Positive | None = None
    """Kilojoules in a gram of dry matter."""
    source: SourceKey | None = None
    """Where the factors come from."""


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


class Taken(Part):
    """What people take out of one level in a year."""

    level: Id
    amount: Flow
    """Fresh mass."""
    trophic_level: Annotated[Number, AfterValidator(Bounds(1, 6, mend="plants stand at 1, what eats them at 2"))] | None = None
    """Where it differs from the place of the level in the pyramid, as it does for animals that eat from several levels."""


class Catch(Part):
    """A yearly catch, and what is assumed to trace it back to plant growth."""

    transfer_efficiency: Share = WrittenFloat("0.10")
    """Assumed at every step."""
    fresh_mass_per_carbon: Positive = WrittenFloat("9")
    """Grams of fresh catch that hold a gram of carbon."""
    taken: Annotated[Some[Taken], different("level")]


class PyramidRecord(Record):
    """One pyramid."""

    units: Units
    conversions: Conversions | None = None
    levels: Annotated[Some[Level], different()]
    top_consumer: TopConsumer | None = None
    catch: Catch | None = None
