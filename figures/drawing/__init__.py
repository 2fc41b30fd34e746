"""Draws charts; the only code of the project that loads matplotlib, and only once a chart is really drawn."""

from __future__ import annotations

from collections.abc import Callable

from figures.chart import Chart
from figures.climate_diagram import ClimateDiagram
from figures.energy_pyramid import EnergyPyramid
from figures.flux_diagram import FluxDiagram

STYLE_VERSION = "1"
"""Goes into the key of a kept drawing; counts up whenever the same spec would give other bytes."""


def draw(chart: Chart) -> str:
    """The chart as a self-contained SVG document in the light palette; equal specs give equal bytes.

    Raises
    ------
    TypeError
        If no drawing is known for this kind of spec.
    """
    import matplotlib

    with matplotlib.rc_context():
        matplotlib.rcdefaults()  # a matplotlibrc on the reader's machine must not change the bytes
        return _drawer(chart)(chart)


def _drawer(chart: Chart) -> Callable[..., str]:
    if isinstance(chart, ClimateDiagram):
        from figures.drawing.climate_diagram import draw_climate_diagram

        return draw_climate_diagram
    if isinstance(chart, EnergyPyramid):
        from figures.drawing.energy_pyramid import draw_energy_pyramid

        return draw_energy_pyramid
    if isinstance(chart, FluxDiagram):
        from figures.drawing.flux_diagram import draw_flux_diagram

        return draw_flux_diagram
    raise TypeError(f"no drawing for {type(chart).__name__}")
