"""Spec of an oxygen curve: what water can hold by its temperature, and what was measured in it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from figures.chart import Chart


@dataclass(frozen=True, kw_only=True)
class SaturationCurve:
    """What water of one salinity can hold."""

    label: str
    """Which water and its salinity as shown: "sea water, 35 g kg⁻¹"."""
    points: tuple[tuple[float, float], ...]
    """Temperature [degC] and saturation [mg/L], from 0 degC to the warm end of the axis."""


@dataclass(frozen=True, kw_only=True)
class OxygenPoint:
    """One water that was measured."""

    label: str
    temperature_degc: float
    oxygen_mg_per_l: float
    saturation_mg_per_l: float
    """What it could hold at its own temperature and salinity."""
    value_label: str
    """As shown, with its part of the saturation: "2.1 mg L⁻¹, 17.1 %"."""


@dataclass(frozen=True, kw_only=True)
class OxygenCurve(Chart):
    """One to three curves, from the freshest water to the saltiest, and the points of the waters."""

    HAS_NARROW: ClassVar[bool] = True
    curves: tuple[SaturationCurve, ...]
    points: tuple[OxygenPoint, ...]
