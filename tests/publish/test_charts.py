"""Charts stand in the page as elements with a name, a description and ids of their own."""

from __future__ import annotations

from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from generator.publish.charts import ChartMissing, inline_charts
from tests.publish.fake_pages import CHART, FIGURE

NAME = "temperate_grassland.climate"


@pytest.fixture
def charts(tmp_path: Path) -> Path:
    (tmp_path / f"{NAME}.svg").write_text(CHART, "utf-8")
    return tmp_path


def test_the_drawing_replaces_the_image_and_keeps_the_caption(charts: Path) -> None:
    figure = BeautifulSoup(inline_charts(FIGURE.format(name=NAME, title="Climate"), charts, "x.md"), "html.parser").figure
    assert figure is not None
    assert ["svg", "figcaption"] == [child.name for child in figure.find_all(recursive=False)]


def test_title_and_description_come_from_the_image_with_references_resolved(charts: Path) -> None:
    svg = BeautifulSoup(inline_charts(FIGURE.format(name=NAME, title="A &lt; B"), charts, "x.md"), "html.parser").svg
    assert svg is not None
    named = {attribute: svg.find(id=svg[attribute]) for attribute in ("aria-labelledby", "aria-describedby")}
    assert "A < B" == named["aria-labelledby"].get_text()
    assert "Rain peaks in June with 54 mm & more than in July." == named["aria-describedby"].get_text()


def test_the_same_chart_twice_in_a_page_shares_no_id(charts: Path) -> None:
    page = inline_charts(2 * FIGURE.format(name=NAME, title="Climate"), charts, "x.md")
    ids = [element["id"] for element in BeautifulSoup(page, "html.parser").find_all(id=True)]
    assert 6 == len(ids) == len(set(ids))


def test_order_of_attributes_does_not_matter(charts: Path) -> None:
    figure = f'<figure class="chart"><img title="T" alt="D" class="a" src="charts/{NAME}.svg"></figure>'
    assert "<svg" in inline_charts(figure, charts, "x.md")


def test_an_image_outside_a_chart_figure_stays(charts: Path) -> None:
    image = f'<p><img src="../charts/{NAME}.svg" alt="D" title="T"></p>'
    assert image == inline_charts(image, charts, "x.md")


def test_a_chart_that_was_not_drawn_is_told_with_page_and_file(charts: Path) -> None:
    with pytest.raises(ChartMissing, match=r"biome/x\.md: expected the chart .*none\.svg, found no such file"):
        inline_charts(FIGURE.format(name="none", title="Climate"), charts, "biome/x.md")
