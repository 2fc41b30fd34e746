"""Told apart without colour: marks of two hues differ in width, dashes, filling or the marks beside them too."""

from __future__ import annotations

import re
from itertools import combinations
from xml.etree import ElementTree

import pytest

from figures import Chart
from figures.palette import LIGHT
from figures.svg import read_svg
from tests.figures.drawn import drawn
from tests.figures.overview_specimens import CHAINS, MAPS, MULTIPLES, STOCKS, TURNOVERS
from tests.figures.specimens import CLIMATES, FLUX_DIAGRAMS, PYRAMIDS
from tests.figures.transect_specimens import TRANSECTS
from tests.figures.web_specimens import WEBS

HUES = {LIGHT[role] for role in ("water", "heat", "plant", "soil", "animal")}
SPECIMENS = (*CLIMATES, *FLUX_DIAGRAMS, *CHAINS, *MAPS, *MULTIPLES, *STOCKS, *TURNOVERS, *TRANSECTS, *WEBS)
Look = tuple[str, ...]


def line(element: ElementTree.Element) -> tuple[str, Look] | None:
    """The hue of a line and all that can be seen of it without its hue; of an outline, the steps of its shape too."""
    style = dict(part.strip().split(": ", 1) for part in element.get("style", "").split(";") if ": " in part)
    seen = {**element.attrib, **style}
    if seen.get("stroke") not in HUES:
        return None
    path = seen["d"].strip()
    shape = re.sub(r"[^A-Z]", "", path.upper()) if path.upper().endswith("Z") else ""
    return seen["stroke"], (shape, *(seen.get(name, "") for name in ("stroke-width", "stroke-dasharray", "stroke-linecap")))


def alike(svg: str) -> list[tuple[tuple[str, Look], tuple[str, Look]]]:
    """Pairs of lines that only their hue tells apart."""
    lines = sorted({found for element in read_svg(svg).iter("path") if (found := line(element))})
    return [(one, other) for one, other in combinations(lines, 2) if one[0] != other[0] and one[1] == other[1]]


@pytest.mark.parametrize("chart", SPECIMENS, ids=lambda chart: chart.name)
def test_no_two_lines_of_a_chart_differ_by_hue_alone(chart: Chart):
    assert [] == alike(drawn(chart))


def test_the_comparison_finds_two_lines_that_differ_by_hue_alone():
    paths = "".join(f'<path d="M 0 0 L 9 9" stroke="{LIGHT[role]}" stroke-width="2"/>' for role in ("water", "heat"))
    assert 1 == len(alike(f'<svg xmlns="http://www.w3.org/2000/svg">{paths}</svg>'))


@pytest.mark.parametrize("chart", PYRAMIDS, ids=lambda chart: chart.name)
def test_every_bar_of_a_pyramid_stands_beside_the_name_of_its_level(chart: Chart):
    texts = "".join(element.text or "" for element in read_svg(drawn(chart)).iter("text"))
    assert [] == [level.id for level in chart.levels if level.label.split()[0] not in texts]
