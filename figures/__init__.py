"""Charts: a frozen spec in, SVG out. Imports nothing of the generator.

The specs (`climate_diagram`, `flux_diagram`, ...) are plain data and load no drawing library;
`figures.drawing` is imported only when a chart is really drawn.
"""

from figures.chain_sequence import ChainSequence
from figures.chart import Chart, DataTable
from figures.climate_diagram import ClimateDiagram
from figures.climate_multiples import ClimateMultiples, ClimatePanel
from figures.error_bars import BarredMean, BarredSeries, ErrorBarChart, ProductionProfile
from figures.flux_diagram import Box, FluxArrow, FluxDiagram
from figures.food_web_diagram import FeedingLink, FoodWebDiagram, WebSpecies
from figures.light_profile import LightProfile
from figures.oxygen_curve import OxygenCurve, OxygenPoint, SaturationCurve
from figures.stock_curves import StockCurves, StockPanel
from figures.temperature_rainfall_map import MapRegion, MapStation, TemperatureRainfallMap
from figures.transect_profile import AirPath, ProfileStation, TransectProfile
from figures.trophic_pyramid import PyramidLevel, TrophicPyramid
from figures.turnover_chart import TurnoverChart, TurnoverTime

__all__ = [
    "AirPath", "BarredMean", "BarredSeries", "Box", "ChainSequence", "Chart", "ClimateDiagram", "ClimateMultiples",
    "ClimatePanel", "DataTable", "ErrorBarChart", "FeedingLink", "FluxArrow", "FluxDiagram", "FoodWebDiagram",
    "LightProfile", "MapRegion", "MapStation", "OxygenCurve", "OxygenPoint", "ProductionProfile", "ProfileStation",
    "PyramidLevel", "SaturationCurve", "StockCurves", "StockPanel", "TemperatureRainfallMap", "TransectProfile",
    "TrophicPyramid", "TurnoverChart", "TurnoverTime", "WebSpecies",
]  # fmt: skip
