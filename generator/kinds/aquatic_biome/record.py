"""What an aquatic biome's record holds: places in the water with their light, salt, warmth and oxygen, and what lives there."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator, Strict

from generator.quantities.amount import Amount
from generator.records.expectation import expected
from generator.records.fields import Bounds, Id, Many, Number, Some, SourceKey, StatedAmount, Text, Use, different
from generator.records.parts import Adaptation, Part
from generator.records.record import Record


class Units(Part):
    """The units of the stations' numbers; all others are fixed: 1/m, g/kg, mg/L, m/s, m3/s."""

    depth: Literal["m", "ft"] = "m"
    temperature: Literal["degC", "degF"] = "degC"
    volume: Literal["m3", "km3"] = "m3"


def _ends(value: Amount) -> Amount:
    if value.low is None or value.high is None:
        raise expected("low and high", "write {low: 4, high: 22}")
    return value


Depth = Annotated[Number, AfterValidator(Bounds(0, 40000, above=True, mend="write the depth without a sign"))]
"""From the surface down."""
Positive = Annotated[Number, AfterValidator(Bounds(0, above=True))]
Amounted = Annotated[Number, AfterValidator(Bounds(0, mend="it cannot be negative: check the sign"))]
"""A number that may be 0 and not less."""


class Light(Part):
    """How fast light fades; one of the two."""

    extinction: Annotated[Number, AfterValidator(Bounds(0, 100, "1/m", above=True))] | None = None
    """[1/m], measured with a light meter."""
    secchi_depth: Depth | None = None
    """Where a white disk is just lost from sight."""


class Station(Part):
    """A place in the water, or one layer of it."""

    id: Id
    name: Text | None = None
    latitude: Annotated[Number, AfterValidator(Bounds(-90, 90, "degrees", "check the digits; south is negative"))] | None = None
    """[degrees], north is positive."""
    use: Use = "page"
    depth: Depth
    """From the surface to the bottom."""
    sample_depth: Annotated[Number, AfterValidator(Bounds(0, 40000))] | None = None
    """Where temperature, salinity and oxygen were measured; at the surface where it is left out."""
    light: Light | None = None
    salinity: Annotated[Number, AfterValidator(Bounds(0, 400, "g/kg"))]
    """[g/kg]"""
    temperature: Number
    """Of the water when it was measured."""
    yearly_temperature: Annotated[StatedAmount, AfterValidator(_ends)] | None = None
    """Coldest and warmest of the year."""
    dissolved_oxygen: Annotated[Number, AfterValidator(Bounds(0, 60, "mg/L"))] | None = None
    """[mg/L]"""
    flow_speed: Amounted | None = None
    """[m/s]"""
    volume: Positive | None = None
    discharge: Amounted | None = None
    """[m3/s] that flows through."""
    nutrients: Text | None = None

    @property
    def label(self) -> str:
        """The name, or the id made readable."""
        return self.name or self.id.replace("_", " ").capitalize()


class Zone(Part):
    """A part of the biome that has its own conditions and its own life."""

    name: Text
    where: Text
    light: Text
    lives_there: Text


class UsualRange(Part):
    """The extinctions that a source gives for waters of this sort."""

    extinction: Annotated[tuple[Number, Number], Strict(False)]
    """[1/m] from, to."""
    source: SourceKey


class AquaticBiomeRecord(Record):
    """One aquatic biome."""

    units: Units = Units()
    usual_range: Many[UsualRange] = ()
    stations: Annotated[Some[Station], different()]
    zones: Many[Zone] = ()
    adaptations: Many[Adaptation] = ()
    found: Text | None = None
    """Where on Earth it lies."""
