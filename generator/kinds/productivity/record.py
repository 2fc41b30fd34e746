"""What a productivity record holds: an investigation of primary production, by light and dark bottles or by harvest, with its readings."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator

from generator.records.fields import Bounds, Id, Number, Some, StatedAmount, Text, different
from generator.records.parts import Part
from generator.records.record import Record

Oxygen = Annotated[Number, AfterValidator(Bounds(0, 60, "mg/L", "water holds no more than that: check the digits and the unit"))]
Mass = Annotated[Number, AfterValidator(Bounds(0, 100000, "g", "a dry mass cannot be negative: check the digits"))]
Quotient = Annotated[Number, AfterValidator(Bounds(0.5, 2, mend="write a quotient such as 1.2"))]


class Units(Part):
    """The units of the readings; all others are fixed: mg/L, m, m2, g, d, h."""

    incubation: Literal["h", "min", "d"] = "h"
    quadrat_area: Literal["m2", "cm2"] = "m2"


class Controlled(Part):
    """Something that is kept the same, so that it cannot be the cause of a difference."""

    what: Text
    how: Text


class Variables(Part):
    """What is changed, what is measured, and what is kept the same."""

    independent: Text
    dependent: Text
    controlled: Some[Controlled]


class SourceOfError(Part):
    """What can go wrong, what it does to the result, and how to mend it."""

    what: Text
    effect: Text
    mend: Text


class Depth(Part):
    """A depth at which bottles hung, with the oxygen [mg/L] of each; a list holds the replicates."""

    id: Id
    name: Text | None = None
    depth: Annotated[Number, AfterValidator(Bounds(0, 500, "m", "write the depth below the surface without a sign"))]
    """[m]"""
    initial: Some[Oxygen]
    """At the start."""
    light: Some[Oxygen]
    """In clear bottles, at the end."""
    dark: Some[Oxygen]
    """In bottles that let no light in, at the end."""

    @property
    def label(self) -> str:
        """The name, or the depth."""
        return self.name or f"At {self.depth.text} m"


class Bottles(Part):
    """A series of light and dark bottles, from the uppermost depth down."""

    incubation: Annotated[Number, AfterValidator(Bounds(0, above=True, mend="without time there is no rate: write how long the bottles hung"))]
    """How long the bottles hung in the water."""
    light_hours: Annotated[Number, AfterValidator(Bounds(0, 24, "h", "write the hours of light of the day", above=True))]
    """[h] of a day."""
    photosynthetic_quotient: Quotient = 1.2
    """Moles of oxygen made for each mole of carbon fixed."""
    respiratory_quotient: Quotient = 1.0
    """Moles of carbon dioxide given off for each mole of oxygen used."""
    depths: Annotated[Some[Depth], different()]


class Cut(Part):
    """One harvest of a plot: the dry mass [g] of each quadrat."""

    id: Id
    name: Text | None = None
    """When, as readers say it: "1 May"."""
    day: Annotated[Number, AfterValidator(Bounds(0, 4000, "d", "count the days from the first harvest, or from 1 January"))]
    """[d] from any day that is the same for all harvests."""
    dry_mass: Some[Mass]

    @property
    def label(self) -> str:
        """The name, or the day."""
        return self.name or f"Day {self.day.text}"


class Plot(Part):
    """Ground whose plants were harvested, each time in other quadrats."""

    id: Id
    name: Text | None = None
    grazing: Literal["kept_out", "open"] | None = None
    """Whether grazers were kept out; with a plot of each sort, what they ate is worked out."""
    respiration: Annotated[StatedAmount, AfterValidator(Bounds(0, mend="respiration cannot be negative"))] | None = None
    """[g/m2/d] of dry matter, where it was measured in another way."""
    harvests: Annotated[Some[Cut], different()]

    @property
    def label(self) -> str:
        """The name, or the id made readable."""
        return self.name or self.id.replace("_", " ").capitalize()


class Harvest(Part):
    """Harvests of one or more plots."""

    quadrat_area: Annotated[Number, AfterValidator(Bounds(0, above=True, mend="write the area of a quadrat, such as 0.25"))]
    carbon_fraction: Annotated[Number, AfterValidator(Bounds(0.2, 0.6, "g C/g", "write the part that is carbon, such as 0.45"))] = 0.45
    """[g C/g]"""
    energy_content: Annotated[Number, AfterValidator(Bounds(5, 40, "kJ/g", "write the energy of a gram of dry mass, such as 17.5"))] = 17.5
    """[kJ/g]"""
    plots: Annotated[Some[Plot], different()]


class ProductivityRecord(Record):
    """One investigation, by one of the two methods."""

    units: Units = Units()
    question: Text
    """That the investigation answers."""
    idea: Text
    """How the method gets from readings to production."""
    hypothesis: Text
    variables: Variables
    control: Text
    """What the readings are compared with, and what it rules out."""
    cautions: Some[Text]
    """What can do harm, and how it is prevented; shown before the method."""
    steps: Some[Text]
    sources_of_error: Some[SourceOfError]
    bottles: Bottles | None = None
    harvest: Harvest | None = None
