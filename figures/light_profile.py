"""Spec of a light profile: how much light is left with depth, where one percent is left, and where the bottom lies."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from figures.chart import Chart


@dataclass(frozen=True, kw_only=True)
class LightProfile(Chart):
    """One place, from the surface down."""

    HAS_NARROW: ClassVar[bool] = True
    station: str
    place: str
    """What is said of it below its name: "24 m deep"."""
    curve: tuple[tuple[float, float], ...]
    """Depth [m] and light [% of that just below the surface], from the surface to the lowest depth drawn."""
    photic_depth_m: float
    """Where 1 % is left; may lie below the lowest depth drawn."""
    photic_label: str
    """The photic depth as shown: "9.21 m"."""
    bottom_m: float
    """May lie below the lowest depth drawn."""
    bottom_label: str
    """The depth as shown: "24 m"."""
    bottom_light_label: str
    """What is left at the bottom, as shown: "33.9 %"."""
    axis_m: float = 0.0
    """Down to where the axis runs, for profiles that are to be compared; no further than the curve where it is less."""

    @property
    def lowest_m(self) -> float:
        """The lowest depth drawn [m]."""
        return self.curve[-1][0]
