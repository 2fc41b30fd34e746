"""Spec of a chart of turnover times on a logarithmic axis, from days to millions of years."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from figures.chart import Chart


@dataclass(frozen=True, kw_only=True)
class TurnoverTime:
    """One reservoir."""

    id: str
    label: str
    """The reservoir: "Deep ocean"."""
    cycle: str
    """The cycle it belongs to, heading of its group: "Carbon, the Earth"; may be empty."""
    years: float
    """More than zero; sets the place of the dot."""
    value_label: str
    """As shown with its unit: "350 yr"."""
    range_years: tuple[float, float] | None
    """Lowest and highest turnover time [yr], both more than zero; None where no range is known."""


@dataclass(frozen=True, kw_only=True)
class TurnoverChart(Chart):
    """All reservoirs; drawn in groups by cycle, in each the quickest first."""

    times: tuple[TurnoverTime, ...]
    """At least one, in any order; cycles are drawn in the order in which they first occur."""
    HAS_NARROW: ClassVar[bool] = True
