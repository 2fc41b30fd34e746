"""Spec of many climate diagrams beside each other on one common scale, so that heights compare across panels."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from figures.chart import Chart


@dataclass(frozen=True, kw_only=True)
class ClimatePanel:
    """One station's mean year, small."""

    title: str
    """The station, or the biome it stands for."""
    subtitle: str
    """What stands below it, e.g. "7.1 °C, 327 mm"; may be empty, or break into lines at line breaks."""
    southern: bool
    """Whether the year starts in July, so that summer stands in the middle."""
    monthly_mean_temp_degc: tuple[float, ...]
    """Shape (12,), January first whatever the hemisphere."""
    monthly_precip_mm: tuple[float, ...]
    """Shape (12,), January first."""


@dataclass(frozen=True, kw_only=True)
class ClimateMultiples(Chart):
    """All panels, in the order of reading."""

    panels: tuple[ClimatePanel, ...]
    """At least one."""
    HAS_NARROW: ClassVar[bool] = True
