"""Small multiples: one scale for all, southern years from July, numbers at the outer edges only."""

from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from figures import ClimateMultiples, ClimatePanel
from figures.drawing import draw
from figures.drawing.climate_frame import Frame
from figures.drawing.climate_multiples import precipitation_ticks
from figures.drawing.walter_lieth import precipitation_height
from tests.figures.drawn import drawn
from tests.figures.overview_specimens import MULTIPLES

NINE, SIXTEEN, ONE, TWO = MULTIPLES[:4]


def made(*panels: tuple[list[float], list[float]]) -> ClimateMultiples:
    """Panels as (temperatures, precipitations)."""
    return replace(ONE, panels=tuple(
        ClimatePanel(title=f"P{n}", subtitle="", southern=False, monthly_mean_temp_degc=tuple(t), monthly_precip_mm=tuple(p))
        for n, (t, p) in enumerate(panels)
    ))  # fmt: skip


def texts(chart: ClimateMultiples) -> list[str]:
    return [element.text for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}text")]


def curve(chart: ClimateMultiples, part: str) -> list[tuple[float, float]]:
    path = ElementTree.fromstring(drawn(chart)).find(f".//*[@data-part='{part}']").get("d")
    return [tuple(map(float, point.split())) for point in re.findall(r"[-\d.]+ [-\d.]+", path)]


def march(chart: ClimateMultiples, part: str) -> float:
    """How far down [px] a curve stands in the middle of March, or of September in the south."""
    points = curve(chart, part)
    x = points[0][0] + (points[-1][0] - points[0][0]) * 2.5 / 12
    return min(points, key=lambda point: abs(point[0] - x))[1]


def test_equal_values_stand_equally_high_in_all_panels_of_a_row():
    chart = made(([10] * 12, [20] * 12), ([10] * 6 + [30] * 6, [20] * 6 + [900] * 6), ([-30] * 12, [20] * 12))
    ten_degrees = {march(chart, "temperature 0"), march(chart, "temperature 1")}
    twenty_mm = {march(chart, f"precipitation {number}") for number in range(3)}
    assert 1 == len(ten_degrees | twenty_mm)


def test_a_month_is_equally_wide_and_a_degree_equally_high_in_every_panel():
    spans = [(panel[-1][0] - panel[0][0]) for panel in (curve(SIXTEEN, f"temperature {number}") for number in range(16))]
    assert max(spans) - min(spans) <= 0.02
    # Harrow Plain is panel 0 and 9, in different rows.
    first, again = (curve(SIXTEEN, f"temperature {number}") for number in (0, 9))
    assert [y - first[0][1] for _, y in first] == pytest.approx([y - again[0][1] for _, y in again], abs=0.03)


def test_southern_years_start_in_july_and_say_so():
    says = texts(NINE)
    assert (8, 1) == (says.count("Jan"), says.count("Jul"))
    assert (8, 1) == (says.count("Dec"), says.count("Jun"))


def test_every_panel_has_its_title_and_the_axes_stand_only_outside():
    says = texts(SIXTEEN)
    assert 2 == sum(says.count(title) for title in ("Harrow Plain",))
    assert 4 == says.count("100")
    assert 4 == says.count("20")


def test_the_change_of_scale_is_explained_only_where_it_happens():
    assert any("ten times as much" in text for text in texts(NINE))
    assert not any("ten times as much" in text for text in texts(ONE))


def test_months_averaging_below_zero_have_a_bar_under_their_panel_and_the_key_says_so():
    chart = made(([-5] + [3] * 10 + [-1], [20] * 12), ([10] * 12, [20] * 12))
    bars = ElementTree.fromstring(drawn(chart)).findall(".//*[@data-part='below 0 degC']")
    assert 2 == len(bars)
    assert "months averaging below 0 °C" in texts(chart)
    assert "months averaging below 0 °C" not in texts(made(([10] * 12, [20] * 12)))


def test_every_month_has_its_dot_on_the_temperature_curve():
    """A line that rounding makes a point of is not drawn at all."""
    dots = [e.get("d") for e in ElementTree.fromstring(drawn(NINE)).findall(".//{*}path") if e.get("stroke-width") == "4"]
    ends = [re.findall(r"[-\d.]+ [-\d.]+", dot) for dot in dots]
    assert [2, *[24] * 9] == [len(each) for each in ends]  # the key's own dot, then twelve a panel
    assert all(start != end for each in ends for start, end in zip(each[::2], each[1::2], strict=True))


def test_a_subtitle_breaks_where_its_author_says():
    panel = replace(ONE.panels[0], subtitle="Tundra\n7 °C")
    assert {"Tundra", "7 °C"} <= set(texts(replace(ONE, panels=(panel,))))


@pytest.mark.parametrize("height, high", ((104, 40), (150, 60), (170, 160)))
def test_precipitation_ticks_keep_apart_and_begin_at_zero(height: float, high: float):
    frame = Frame(0, 100, 0, height, -20, high)
    ticks = precipitation_ticks(frame)
    places = [frame.y(precipitation_height(mm)) for mm in ticks]
    assert 0 == ticks[0]
    assert all(below - above >= 17 for below, above in zip(places, places[1:], strict=False))
    assert (100 in ticks) == (high >= 50)


def test_no_panels_are_refused():
    with pytest.raises(ValueError, match="no climate"):
        draw(replace(ONE, panels=()))
