"""Spec of an energy pyramid: one bar a trophic level, widths to scale."""

from __future__ import annotations

from dataclasses import dataclass

from figures.chart import Chart


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
    """What share of the level below this level's production is, as shown ("10.0 %"); empty for producers."""


@dataclass(frozen=True, kw_only=True)
class EnergyPyramid(Chart):
    """A whole pyramid; `levels` from producers up."""

    levels: tuple[PyramidLevel, ...]
    quantity: str
    """What the widths show: "Production, kJ m⁻² yr⁻¹"."""
