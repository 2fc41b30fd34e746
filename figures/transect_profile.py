"""Spec of a transect's profile: stations by distance and height, what is measured at each, and air that crosses the crest."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from figures.chart import Chart


@dataclass(frozen=True, kw_only=True)
class ProfileStation:
    """A place on the line."""

    label: str
    distance_km: float
    height_m: float
    distance_label: str
    """As shown, with its unit; so are the labels below."""
    height_label: str
    temp_label: str
    precip_mm: float | None
    precip_label: str
    """Empty where it is not known."""


@dataclass(frozen=True, kw_only=True)
class AirPath:
    """The way of the air, by the numbers of its stations."""

    start: int
    crest: int
    end: int
    cloud_base_m: float | None
    """None where no cloud forms below the crest."""
    dry_label: str
    """Cooling without cloud, as shown: "9.76 K km⁻¹"."""
    moist_label: str
    cloud_label: str
    """Height of the cloud base, as shown."""
    step_labels: tuple[str, ...]
    """Temperature of the air at the start, at the cloud base (where there is cloud), at the crest and at the end, as shown."""


@dataclass(frozen=True, kw_only=True)
class TransectProfile(Chart):
    """Two to eight stations in their order."""

    HAS_NARROW: ClassVar[bool] = True
    stations: tuple[ProfileStation, ...]
    air: AirPath | None = None

    @property
    def highest_m(self) -> float:
        """Height of the highest station [m]."""
        return max(station.height_m for station in self.stations)

    @property
    def lowest_m(self) -> float:
        """Height of the lowest station, or the level of the sea, whichever is lower [m]."""
        return min(0.0, *(station.height_m for station in self.stations))
