"""Miniatures: a chart's own numbers as bars, true to each other; none where there is nothing to see."""

from __future__ import annotations

from dataclasses import replace

import pytest
from bs4 import BeautifulSoup, Tag
from figures import Chart, DataTable

from generator.kinds import all_kinds
from generator.pages.miniatures import HIGH, WIDE, miniature
from generator.pages.site import HOME
from tests.kinds.small_records import library
from tests.pages.rendered import demo_pages, rendered

PLAIN = Chart(name="x.y", title="Lengths", description="Three lengths.", reading=("Read.",), table=DataTable(caption="Lengths", columns=("What", "Length (m)"), rows=()))


def of(columns: tuple[str, ...], rows: tuple[tuple[str, ...], ...]) -> BeautifulSoup:
    return BeautifulSoup(miniature(replace(PLAIN, table=DataTable(caption="c", columns=columns, rows=rows))), "html.parser")


def sizes(found: BeautifulSoup | Tag, side: str) -> list[float]:
    return [float(str(bar[side])) for bar in found.select("rect")]


def test_bars_are_true_to_each_other_and_say_what_they_are_with_the_unit() -> None:
    found = of(("What", "Length (m)"), (("a", "1\u202f000"), ("b", "500"), ("c", "250 ± 20")))
    assert [WIDE, WIDE / 2, WIDE / 4] == sizes(found, "width")
    assert "Lengths: Length (m)" == found.get_text()


def test_a_whole_column_goes_before_one_with_gaps_and_words_are_no_numbers() -> None:
    found = of(("What", "Rate", "Efficiency", "Cause"), (("a", "8", "–", "x"), ("b", "4", "2", "y"), ("c", "2", "1", "z"), ("d", "1", "9", "z")))
    assert found.get_text().endswith("Rate")
    assert [WIDE, WIDE / 2, WIDE / 4, WIDE / 8] == sizes(found, "width")


@pytest.mark.parametrize(
    "rows",
    [(), (("a", "1"),), (("a", "1"), ("b", "2")), (("a", "-1"), ("b", "2"), ("c", "3")), (("a", "5"), ("b", "5"), ("c", "5")), tuple((str(n), str(n)) for n in range(13))],
)
def test_nothing_is_drawn_where_there_is_nothing_to_see(rows: tuple[tuple[str, ...], ...]) -> None:
    assert not of(("What", "Length"), rows).select("svg")


def test_months_stand_side_by_side() -> None:
    subject = library().subjects["biome/temperate_grassland"]
    found = BeautifulSoup(miniature(all_kinds()["biome"].charts(subject)[0]), "html.parser")
    rain = subject.facts["harrow_plain.monthly_precip"].series
    assert [pytest.approx(HIGH * value / max(rain), abs=0.05) for value in rain] == sizes(found, "height")


def test_a_pyramid_stands_on_its_base() -> None:
    subject = library().subjects["pyramid/sill_lake"]
    found = BeautifulSoup(miniature(all_kinds()["pyramid"].charts(subject)[0]), "html.parser")
    widths = sizes(found, "width")
    assert sorted(widths) == widths
    assert [pytest.approx(WIDE / 2, abs=0.1)] * len(widths) == [x + width / 2 for x, width in zip(sizes(found, "x"), widths, strict=True)]


def test_a_bar_too_thin_to_see_is_a_line_and_the_words_say_so() -> None:
    found = of(("What", "Length (m)"), (("a", "1000"), ("b", "500"), ("c", "1")))
    assert [WIDE, WIDE / 2, 1.5] == sizes(found, "width")
    assert "Lengths: Length (m); a line stands for a bar too thin to see" == found.get_text()


def test_every_topic_with_charts_has_its_miniature_on_the_front_page() -> None:
    page = rendered(demo_pages()[HOME])
    topics = [topic for topic in library().course.topics if topic.show]
    charted = [any(all_kinds()[record.partition("/")[0]].charts(library().subjects[record]) for record in topic.records) for topic in topics]
    assert charted == [bool(entry.select("svg.miniature")) for entry in page.select(".course-map > li")]
