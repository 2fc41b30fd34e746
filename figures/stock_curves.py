"""Spec of stocks through time: a small panel for each reservoir, all over the same years."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from figures.chart import Chart

Curve = tuple[tuple[float, float], ...]
"""Years from now and the stock, years rising; two stocks at one time are a jump."""
Ticks = tuple[tuple[float, str], ...]
"""Values with their words, rising; the first and the last are the ends of the axis."""


@dataclass(frozen=True, kw_only=True)
class StockPanel:
    """One reservoir."""

    label: str
    curve: Curve
    end_label: str
    """What stands at the end of the curve: "with 7.83"."""
    other: Curve = ()
    """The same without what is changed; empty where nothing is."""
    other_end_label: str = ""
    ticks: Ticks

    @property
    def begins_above_zero(self) -> bool:
        """Whether the axis leaves out the stocks next to nothing, so that heights must not be compared as amounts."""
        return self.ticks[0][0] > 0


@dataclass(frozen=True, kw_only=True)
class StockCurves(Chart):
    """One or more panels, drawn two in a row; one or two, and all on a narrow sheet, are drawn in full width."""

    HAS_NARROW: ClassVar[bool] = True
    axis: str
    """What the upright axes show, with the unit: "Stock, kg N ha⁻¹"."""
    key: tuple[str, str]
    """What the full and the broken lines are; empty where there is only one line."""
    year_ticks: Ticks
    panels: tuple[StockPanel, ...]
