"""Spec of a pyramid of energy, biomass or numbers: one bar a trophic level, widths to scale, wider above or not."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from figures.chart import Chart


WIDEST_BAR, THIN = 466.0, 2.0
"""The widest bar of a pyramid, and a bar so narrow that it cannot be read off and is shown again, magnified [px]."""


@dataclass(frozen=True, kw_only=True)
class PyramidLevel:
    """One bar, from producers up."""

    id: str
    label: str
    role: str
    """"producers", "primary consumers", ..."""
    value: float
    """In the pyramid's unit, more than zero; sets the width of the bar."""
    value_label: str
    """As shown with its unit."""
    passed_on_label: str
    """What share of the level below this level's production is, as shown ("10.0 %"); empty draws no arrow."""


@dataclass(frozen=True, kw_only=True)
class TrophicPyramid(Chart):
    """A whole pyramid; `levels` from producers up, in any order of size."""

    HAS_NARROW: ClassVar[bool] = True
    levels: tuple[PyramidLevel, ...]
    quantity: str
    """What the widths show: "Production, kJ m⁻² yr⁻¹"."""

    @property
    def heading(self) -> str:
        """What the widths show, in words above the bars."""
        return f"Width of the bars: {self.quantity[:1].lower()}{self.quantity[1:]}"

    @property
    def has_thin_levels(self) -> bool:
        """Whether some bars are too thin to read, so that the drawing shows them magnified beside or below."""
        values = [level.value for level in self.levels]
        return min(values) * WIDEST_BAR < THIN * max(values)
