"""Charts: a frozen spec in, SVG out. Imports nothing of the generator.

The specs (`climate_diagram`, `flux_diagram`, `energy_pyramid`) are plain data and load no drawing library;
`figures.drawing` is imported only when a chart is really drawn.
"""

from figures.chart import Chart, DataTable
from figures.climate_diagram import ClimateDiagram
from figures.energy_pyramid import EnergyPyramid, PyramidLevel
from figures.flux_diagram import Box, FluxArrow, FluxDiagram

__all__ = ["Box", "Chart", "ClimateDiagram", "DataTable", "EnergyPyramid", "FluxArrow", "FluxDiagram", "PyramidLevel"]
