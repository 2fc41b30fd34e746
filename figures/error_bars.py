"""Specs of charts with error bars: means beside each other or in time, and rates over depth."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Literal

from figures.chart import Chart

Mark = Literal["circle", "square", "diamond", "open circle", "open square", "open diamond"]
"""The shape of a series' marks; its lines and bars follow it, so that series need no colour."""


@dataclass(frozen=True)
class BarredMean:
    """A mean with what is known of how far to trust it."""

    at: float
    """Its place along the other axis."""
    mean: float
    error: float | None = None
    """Half the length of its bar; none where nothing was repeated."""
    readings: tuple[float, ...] = ()
    """The single readings, drawn as small dots beside it."""


@dataclass(frozen=True, kw_only=True)
class BarredSeries:
    """Means of one sort, told apart by mark and its lines, and by colour."""

    label: str
    role: str
    """Of the palette."""
    mark: Mark
    means: tuple[BarredMean, ...]


@dataclass(frozen=True, kw_only=True)
class ErrorBarChart(Chart):
    """Means with bars upwards and downwards."""

    HAS_NARROW: ClassVar[bool] = True
    quantity: str
    """What the height is: "Dissolved oxygen, mg L⁻¹"."""
    across: str
    """What the places are: "Depth of the bottles, m"."""
    places: tuple[tuple[float, str], ...]
    """Every place with its label, rising."""
    to_scale: bool
    """Whether places are measured, as days or depths are, and not only told apart."""
    series: tuple[BarredSeries, ...]
    joined: bool
    """Whether a line joins the means of a series, because the places follow each other in time."""
    bars: str
    """What the bars are, in words."""


@dataclass(frozen=True, kw_only=True)
class ProductionProfile(Chart):
    """Rates over depth, the surface on top, with bars to both sides."""

    HAS_NARROW: ClassVar[bool] = True
    quantity: str
    """What lies to the right: "Oxygen in a day, mg L⁻¹"."""
    series: tuple[BarredSeries, ...]
    """Each mean at its depth [m]."""
    compensation_m: float | None
    compensation_label: str
    """The compensation depth as shown; empty without one."""
    bars: str
    """What the bars are, in words."""
