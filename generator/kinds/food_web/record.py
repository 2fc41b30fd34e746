"""What a food web record holds: species or groups, what each of them eats, and whose loss is to be thought through."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Literal

from pydantic import AfterValidator

from generator.kind import in_sentence
from generator.records.fields import Bounds, Id, Many, Number, Some, StatedAmount, Text, different
from generator.records.parts import Part
from generator.records.record import Record


class Units(Part):
    """The unit of all biomasses."""

    biomass: Text = "g/m2"


class Food(Part):
    """One thing that a species eats."""

    food: Id
    share: (
        Annotated[Number, AfterValidator(Bounds(0, 1, above=True, mend="write a share of the diet, such as 0.25 for a quarter"))] | None
    ) = None
    """Part of the diet; left out for an only food, and where nobody knows."""


class Species(Part):
    """A species, a group of them, or dead matter."""

    id: Id
    name: Text | None = None
    feeding: Literal["producer", "consumer", "detritus"]
    """A producer makes its own food, a consumer eats, detritus is dead matter that others eat."""
    biomass: Annotated[StatedAmount, AfterValidator(Bounds(0, mend="a mass cannot be negative"))] | None = None
    eats: Annotated[Many[Food], different("food")] = ()

    @property
    def label(self) -> str:
        """The name, or the id made readable."""
        return self.name or self.id.replace("_", " ").capitalize()

    @property
    def diet(self) -> Mapping[str, float] | None:
        """The share of each food, which is all of it for an only food; None where a share is not stated."""
        if len(self.eats) == 1:
            return {self.eats[0].food: 1.0}
        shares = {one.food: one.share for one in self.eats if one.share is not None}
        return shares if len(shares) == len(self.eats) else None


class FoodWebRecord(Record):
    """One food web."""

    units: Units = Units()
    species: Annotated[Some[Species], different()]
    if_gone: Annotated[Many[Id], different()] = ()
    """Species of which the page shows what their loss would mean."""

    @property
    def eats(self) -> dict[str, tuple[str, ...]]:
        """What each species eats, as the science takes it."""
        return {one.id: tuple(food.food for food in one.eats) for one in self.species}

    @property
    def labels(self) -> dict[str, str]:
        """The name of each species."""
        return {one.id: one.label for one in self.species}

    @property
    def spoken(self) -> dict[str, str]:
        """The same as they stand inside a sentence."""
        return {name: in_sentence(label) for name, label in self.labels.items()}
