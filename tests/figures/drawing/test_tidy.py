"""What is left of the SVG that the drawing library writes."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from figures import Chart, DataTable
from figures.drawing import draw
from figures.drawing.canvas import Canvas, polygon, segments
from tests.figures.specimens import CLIMATES, FLUX_DIAGRAMS, PYRAMIDS


@pytest.mark.parametrize("chart", (CLIMATES[7], PYRAMIDS[0], FLUX_DIAGRAMS[0]), ids=lambda chart: chart.name)
def test_a_drawing_is_a_flat_list_of_paths_and_texts(chart: Chart):
    svg = draw(chart)
    assert {"path", "text"} == {child.tag.split("}")[-1] for child in ElementTree.fromstring(svg)}
    assert not re.search(r"\bid=|\sstyle=|metadata|matplotlib|<!--|\d\.\d{3}", svg)
    assert len(svg) < 25_000


def test_text_is_written_as_it_is_read_even_where_it_looks_like_formulas_or_markup():
    canvas = Canvas(200, 100)
    canvas.text(10, 20, "cost $5 & $6 <b> m⁻² 4\u202f800")
    assert ["cost $5 & $6 <b> m⁻² 4\u202f800"] == [text.text for text in ElementTree.fromstring(canvas.svg()).findall(".//{*}text")]


def test_shapes_keep_their_place_part_and_dashes():
    canvas = Canvas(200, 100)
    canvas.move(10, 0)
    canvas.fill(polygon([(0, 10), (20, 10), (20, 30)]), "plant", part="leaf")
    canvas.stroke(segments([((0, 50), (30, 50))]), "ink", 2, dash=(6, 4))
    leaf, line = list(ElementTree.fromstring(canvas.svg()))[-2:]
    assert ("leaf", "M10 10L30 10L30 30z", "#0f5749") == (leaf.get("data-part"), leaf.get("d"), leaf.get("fill"))
    assert ("M10 50L40 50", "6,4", "2") == (line.get("d"), line.get("stroke-dasharray"), line.get("stroke-width"))


def test_an_unknown_kind_of_chart_is_refused():
    chart = Chart(name="n", title="t", description="d", reading=(), table=DataTable(caption="c", columns=(), rows=()))
    with pytest.raises(TypeError, match="no drawing for Chart"):
        draw(chart)


def test_the_reader_s_own_drawing_settings_change_nothing(monkeypatch: pytest.MonkeyPatch):
    import matplotlib

    plain = draw(CLIMATES[0])
    for setting, value in (("font.size", 30), ("lines.scale_dashes", False), ("savefig.bbox", "tight"), ("path.snap", False)):
        monkeypatch.setitem(matplotlib.rcParams, setting, value)
    assert plain == draw(CLIMATES[0])
