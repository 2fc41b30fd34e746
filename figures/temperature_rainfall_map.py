"""Spec of a map of climates: annual mean temperature across, annual precipitation up, with regions and stations."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from figures.chart import Chart


@dataclass(frozen=True, kw_only=True)
class MapRegion:
    """A published region of climates, as one outline."""

    id: str
    label: str
    outline: tuple[tuple[float, float], ...]
    """Corners as (annual mean temperature [degC], annual precipitation [mm]), at least three; closed by itself."""


@dataclass(frozen=True, kw_only=True)
class MapStation:
    """One place of known climate."""

    id: str
    label: str
    annual_mean_temp_degc: float
    annual_precip_mm: float
    region: str
    """Label of the region that the place lies in; empty where it lies in none."""


@dataclass(frozen=True, kw_only=True)
class TemperatureRainfallMap(Chart):
    """All stations on one map."""

    regions: tuple[MapRegion, ...]
    stations: tuple[MapStation, ...]
    """In the order in which they are numbered where labels find no room."""
    HAS_NARROW: ClassVar[bool] = True
