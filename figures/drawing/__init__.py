"""Draws charts; the only code of the project that loads matplotlib, and only once a chart is really drawn."""

from __future__ import annotations

from importlib import import_module

from figures.chain_sequence import ChainSequence
from figures.chart import Chart
from figures.climate_diagram import ClimateDiagram
from figures.climate_multiples import ClimateMultiples
from figures.error_bars import ErrorBarChart, ProductionProfile
from figures.flux_diagram import FluxDiagram
from figures.food_web_diagram import FoodWebDiagram
from figures.light_profile import LightProfile
from figures.oxygen_curve import OxygenCurve
from figures.stock_curves import StockCurves
from figures.temperature_rainfall_map import TemperatureRainfallMap
from figures.transect_profile import TransectProfile
from figures.trophic_pyramid import TrophicPyramid
from figures.turnover_chart import TurnoverChart

STYLE_VERSION = "3"
"""Goes into the key of a kept drawing; counts up whenever the same spec would give other bytes."""
_DRAWINGS: dict[type[Chart], str] = {
    ChainSequence: "chain_sequence",
    ClimateDiagram: "climate_diagram",
    ClimateMultiples: "climate_multiples",
    ErrorBarChart: "error_bar_chart",
    FluxDiagram: "flux_diagram",
    FoodWebDiagram: "food_web_diagram",
    LightProfile: "light_profile",
    OxygenCurve: "oxygen_curve",
    ProductionProfile: "production_profile",
    StockCurves: "stock_curves",
    TemperatureRainfallMap: "temperature_rainfall_map",
    TransectProfile: "transect_profile",
    TrophicPyramid: "trophic_pyramid",
    TurnoverChart: "turnover_chart",
}
"""For each kind of spec the module of this package that draws it, by a function `draw_<module>`."""


def draw(chart: Chart) -> str:
    """The chart as a self-contained SVG document in the light palette; equal specs give equal bytes.

    Raises
    ------
    TypeError
        If no drawing is known for this kind of spec.
    """
    module = _DRAWINGS.get(type(chart))
    if module is None:
        raise TypeError(f"no drawing for {type(chart).__name__}")
    import matplotlib

    with matplotlib.rc_context():
        matplotlib.rcdefaults()  # a matplotlibrc on the reader's machine must not change the bytes
        return getattr(import_module(f"figures.drawing.{module}"), f"draw_{module}")(chart)
