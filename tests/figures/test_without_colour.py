"""Told apart without colour: marks of two hues differ in width, dashes, filling or the marks beside them too."""

from __future__ import annotations

import re
from itertools import combinations
from xml.etree import ElementTree

import pytest

from figures import Chart, ErrorBarChart, ProductionProfile
from figures.palette import LIGHT
from figures.svg import read_svg
from tests.figures.drawn import corners, drawn
from tests.figures.overview_specimens import CHAINS, MAPS, MULTIPLES, STOCKS, TURNOVERS
from tests.figures.specimens import CLIMATES, FLUX_DIAGRAMS, PYRAMIDS
from tests.figures.transect_specimens import TRANSECTS
from tests.figures.water_specimens import BARS, CURVES, LIGHTS, PRODUCTIONS
from tests.figures.web_specimens import WEBS

HUES = {LIGHT[role] for role in ("water", "heat", "plant", "soil", "animal")}
WIDE = (*CLIMATES, *FLUX_DIAGRAMS, *CHAINS, *MAPS, *MULTIPLES, *STOCKS, *TURNOVERS, *TRANSECTS, *WEBS, *BARS, *PRODUCTIONS, *LIGHTS, *CURVES)
SPECIMENS = (*WIDE, *(narrow for chart in WIDE if (narrow := chart.narrowed())))
TELLING = 1.3
"""How many times as wide a line must be to be told from another by its width."""
Line = tuple[str, float, tuple[str, ...]]


def line(element: ElementTree.Element) -> Line | None:
    """The hue of a line, its width [px] and its other looks; of an outline, the steps of its shape too."""
    style = dict(part.strip().split(": ", 1) for part in element.get("style", "").split(";") if ": " in part)
    seen = {**element.attrib, **style}
    if seen.get("stroke") not in HUES:
        return None
    path = seen["d"].strip()
    shape = re.sub(r"[^A-Z]", "", path.upper()) if path.upper().endswith("Z") else ""
    return seen["stroke"], float(seen.get("stroke-width", "1")), (shape, *(seen.get(name, "") for name in ("stroke-dasharray", "stroke-linecap")))


def alike(svg: str) -> list[tuple[Line, Line]]:
    """Pairs of lines that only their hue tells apart."""
    lines = sorted({found for element in read_svg(svg).iter("path") if (found := line(element))})
    return [
        (one, other) for one, other in combinations(lines, 2)
        if one[0] != other[0] and one[2] == other[2] and max(one[1], other[1]) < TELLING * min(one[1], other[1])
    ]  # fmt: skip


@pytest.mark.parametrize("chart", SPECIMENS, ids=lambda chart: chart.name)
def test_no_two_lines_of_a_chart_differ_by_hue_alone(chart: Chart):
    assert [] == alike(drawn(chart))


def test_the_comparison_finds_two_lines_that_differ_by_hue_alone():
    paths = "".join(f'<path d="M 0 0 L 9 9" stroke="{LIGHT[role]}" stroke-width="{width}"/>' for role, width in (("water", 2), ("heat", 2.2), ("soil", 4)))
    assert 1 == len(alike(f'<svg xmlns="http://www.w3.org/2000/svg">{paths}</svg>'))


@pytest.mark.parametrize("chart", PYRAMIDS, ids=lambda chart: chart.name)
def test_every_bar_of_a_pyramid_stands_beside_the_name_of_its_level(chart: Chart):
    texts = "".join(element.text or "" for element in read_svg(drawn(chart)).iter("text"))
    assert [] == [level.id for level in chart.levels if level.label.split()[0] not in texts]


@pytest.mark.parametrize("chart", (*BARS, *PRODUCTIONS), ids=lambda chart: chart.name)
def test_no_two_series_of_a_chart_have_marks_of_one_shape(chart: ErrorBarChart | ProductionProfile):
    looks = [{(*outline(shape), is_full(chart, one.label)) for shape in corners(chart, f"mean {one.label}")} for one in chart.series]
    assert all(len(of_one) == 1 for of_one in looks)
    assert len(looks) == len(set().union(*looks))


def outline(shape: list[tuple[float, float]]) -> tuple[int, int]:
    """How many corners a shape has, and its width [px]."""
    xs = [x for x, _ in shape]
    return len(shape), int(max(xs) - min(xs) + 0.25)


def is_full(chart: Chart, label: str) -> bool:
    """Whether the marks of a series are filled."""
    (fill,) = {e.get("fill") for e in read_svg(drawn(chart)).iter("path") if e.get("data-part") == f"mean {label}"}
    return fill != LIGHT["ground"]
