"""What a transect's record holds: stations in order along a line, and the air that crosses them."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from generator.records.fields import Bounds, Id, Number, Some, Text, different
from generator.records.parts import Part
from generator.records.record import Record


class Units(Part):
    """The units of the stations' numbers; lapse rates are in K/km."""

    height: Literal["m", "ft"] = "m"
    distance: Literal["km", "m"] = "km"
    temperature: Literal["degC", "degF"] = "degC"
    precipitation: Literal["mm", "cm", "in"] = "mm"


class Station(Part):
    """A place on the line."""

    id: Id
    name: Text | None = None
    distance: Annotated[Number, AfterValidator(Bounds(0, mend="count distances from the first station"))]
    """From the first station, along the line."""
    height: Number
    """Above the sea."""
    annual_mean_temp: Number
    annual_precip: Annotated[Number, AfterValidator(Bounds(0, mend="precipitation cannot be negative"))] | None = None
    grows_there: Text | None = None
    """What covers the land, in a few words that may hold facts."""

    @property
    def label(self) -> str:
        """The name, or the id made readable."""
        return self.name or self.id.replace("_", " ").capitalize()


Rate = Annotated[Number, AfterValidator(Bounds(0, 12, "K/km", "lapse rates are positive where air cools on its way up", above=True))]


class RainShadow(Part):
    """Air on one day, from a station up over the crest and down to another one."""

    start: Annotated[Id, Field(alias="from")]
    crest: Id
    end: Annotated[Id, Field(alias="to")]
    temperature: Number
    """Of the air at the start."""
    dew_point: Number | None = None
    """Of the air at the start; cloud begins where rising air has cooled to it."""
    cloud_base: Number | None = None
    """In place of `dew_point`: the height at which cloud was seen to begin."""
    dry_lapse_rate: Rate | None = None
    """[K/km], where it shall not be worked out."""
    moist_lapse_rate: Rate | None = None


class TransectRecord(Record):
    """One line across the land."""

    units: Units = Units()
    stations: Annotated[Some[Station], different()]
    rain_shadow: RainShadow | None = None
