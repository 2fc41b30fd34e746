"""Spec of a reservoir-and-flux diagram: boxes for stocks, arrows as wide as the flux is large."""

from __future__ import annotations

from dataclasses import dataclass

from figures.chart import Chart


@dataclass(frozen=True, kw_only=True)
class Box:
    """A reservoir, or an end of fluxes outside the budget."""

    id: str
    label: str
    stock_label: str
    """The stock as shown with its unit; empty for an end outside the budget."""
    outside: bool
    at: tuple[float, float] | None
    """Column and row in the drawing, counted from the top left; None lets the drawing choose."""


@dataclass(frozen=True, kw_only=True)
class FluxArrow:
    """One flux."""

    id: str
    start: str
    end: str
    """Ids of boxes."""
    rate: float
    """In the diagram's unit, zero or more; sets the width."""
    label: str
    """What stands beside the arrow: the process and the rate as shown, without the unit."""
    by_people: bool


@dataclass(frozen=True, kw_only=True)
class FluxDiagram(Chart):
    """A whole cycle."""

    boxes: tuple[Box, ...]
    arrows: tuple[FluxArrow, ...]
    unit_label: str
    """The unit of all arrows as shown, e.g. "kg N ha⁻¹ yr⁻¹"."""
