"""Spec of a climate diagram on the scaling of Walter and Lieth: 10 degC stand as high as 20 mm."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from figures.chart import Chart


@dataclass(frozen=True, kw_only=True)
class ClimateDiagram(Chart):
    """One station's mean year."""

    HAS_NARROW: ClassVar[bool] = True
    station: str
    place: str
    """Latitude and height as text: "46.5° N, 310 m"."""
    southern: bool
    """Whether the year starts in July, so that summer stands in the middle."""
    monthly_mean_temp_degc: tuple[float, ...]
    """Shape (12,), January first whatever the hemisphere."""
    monthly_precip_mm: tuple[float, ...]
    """Shape (12,), January first."""
    mean_label: str
    """The annual mean temperature as shown: "7.1 °C"."""
    total_label: str
    """The annual precipitation as shown: "327 mm"."""
