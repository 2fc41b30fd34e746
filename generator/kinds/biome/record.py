"""What a biome record holds: its stations with their mean year, its living things, and what people do there."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator, Strict

from generator.diagnostics import did_you_mean
from generator.records.expectation import expected
from generator.records.fields import Bounds, Id, Many, Number, Series12, Some, SourceKey, Text, Use, different, monthly
from generator.records.parts import Adaptation, Part
from generator.records.record import Record
from generator.science.climate_class import CLASSES

Region = Literal[
    "tundra", "boreal_forest", "temperate_seasonal_forest", "temperate_rain_forest", "tropical_rain_forest",
    "tropical_seasonal_forest_savanna", "subtropical_desert", "temperate_grassland_desert", "woodland_shrubland", "none",
]  # fmt: skip


class Units(Part):
    """The units of the stations' numbers."""

    temperature: Literal["degC", "degF"] = "degC"
    precipitation: Literal["mm", "cm", "in"] = "mm"
    elevation: Literal["m", "ft"] = "m"
    soil_store: Literal["mm", "cm", "in"] = "mm"


class Station(Part):
    """A place with the mean year of its climate."""

    id: Id
    name: Text | None = None
    latitude: Annotated[Number, AfterValidator(Bounds(-90, 90, "degrees", "check the digits; south is negative"))] | None = None
    """[degrees], north is positive."""
    elevation: Annotated[Number, AfterValidator(Bounds(-500, 30000, "above the sea"))] | None = None
    soil_store: Annotated[Number, AfterValidator(Bounds(0, 2000, mend="100 mm is the usual store", above=True))] | None = None
    """Most water that the soil can hold for plants, where it is known; otherwise the usual store is taken."""
    use: Use = "page"
    monthly_mean_temp: Series12
    """Shape (12,), January first."""
    monthly_precip: monthly(Bounds(0, mend="precipitation cannot be negative: check the sign"))
    """Shape (12,), January first."""

    @property
    def label(self) -> str:
        """The name, or the id made readable."""
        return self.name or self.id.replace("_", " ").capitalize()


def _rising(ends: tuple[float, float]) -> tuple[float, float]:
    if ends[0] > ends[1]:
        raise expected("from, to in rising order", "exchange the two")
    return ends


Ends = Annotated[tuple[Number, Number], Strict(False), AfterValidator(_rising)]
"""From, to."""


class UsualRange(Part):
    """What a source says the biome spans."""

    annual_mean_temp: Ends
    """[degC] from, to."""
    annual_precip: Ends
    """[mm] from, to."""
    source: SourceKey


def _climate_class(letters: str) -> str:
    if not any(one.startswith(letters) for one in CLASSES):
        begun = sorted({one[:length] for one in CLASSES for length in (1, 2, 3)})
        raise expected("a climate class or its first letters, such as BSk or BS", did_you_mean(letters, begun, "check the letters"))
    return letters


class UsualClass(Part):
    """Which classes of climate a source names for the biome."""

    classes: Some[Annotated[Text, AfterValidator(_climate_class)]]
    """Letters of Köppen and Geiger; BS stands for BSh and BSk."""
    source: SourceKey


class Soil(Part):
    """The soil and where it keeps its nutrients."""

    type: Text
    nutrients_held_in: Text
    why: Text
    """Why they are held there, as it goes on after "because"."""
    deeper: Text | None = None
    """What lies behind that, in turn; a sentence."""


class Found(Part):
    """Where on Earth the biome lies."""

    latitudes: Ends
    """[degrees] from, to, on both sides of the equator."""
    where: Text


class BiomeRecord(Record):
    """One biome."""

    units: Units = Units()
    region: Region
    """The region of the temperature-rainfall map that the biome usually falls in."""
    usual_range: Many[UsualRange] = ()
    usual_class: Many[UsualClass] = ()
    stations: Annotated[Some[Station], different()]
    adaptations: Many[Adaptation] = ()
    soil: Soil | None = None
    disturbance: Many[Text] = ()
    found: Found | None = None
