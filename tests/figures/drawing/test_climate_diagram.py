"""The drawn climate diagram: heights on the canvas, what it says and what it leaves out."""

from __future__ import annotations

import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from figures import ClimateDiagram
from tests.figures.drawn import drawn
from tests.figures.specimens import CLIMATES, climate

HARROW, ICE, FROZEN, MARO, RAINLESS, EVEN, FREEZING, MONSOON, CAPE = CLIMATES
EVEN_TEMP = [10] * 12


def texts(chart: ClimateDiagram) -> list[str]:
    return [element.text for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}text")]


def curve(chart: ClimateDiagram, part: str) -> list[tuple[float, float]]:
    path = ElementTree.fromstring(drawn(chart)).find(f".//*[@data-part='{part}']").get("d")
    return [tuple(map(float, point.split())) for point in re.findall(r"[-\d.]+ [-\d.]+", path)]


def test_ten_degrees_stand_as_high_as_twenty_mm():
    chart = climate("Even", EVEN_TEMP, [20] * 12)
    assert {y for _, y in curve(chart, "temperature")} == {y for _, y in curve(chart, "precipitation")}


def test_thirty_degrees_stand_as_high_as_sixty_mm_and_a_drawn_degree_as_two_mm():
    temp, precip = [0] * 6 + [30] * 6, [0] * 6 + [60] * 6
    chart = climate("Step", temp, precip)
    assert curve(chart, "temperature") == curve(chart, "precipitation")


def test_above_one_hundred_mm_the_same_height_is_ten_times_as_much():
    chart = climate("Rising", [0] * 12, [0, 0, 100, 100, 300, 300, 300, 300, 300, 300, 0, 0])
    heights = {x: y for x, y in curve(chart, "precipitation")}
    ground, hundred, three_hundred = (heights[62 + 48 * place] for place in (1.5, 2.5, 4.5))
    for_100_mm, for_200_mm_more = ground - hundred, hundred - three_hundred
    assert for_100_mm / 100 == pytest.approx(10 * for_200_mm_more / 200, rel=0.01)


@pytest.mark.parametrize("chart", CLIMATES, ids=lambda chart: chart.name)
def test_curves_run_from_frame_to_frame_and_stay_inside(chart: ClimateDiagram):
    for part in ("temperature", "precipitation"):
        points = curve(chart, part)
        assert (62.0, 638.0) == (points[0][0], points[-1][0])
        assert points[0][1] == points[-1][1]
        assert all(104 <= y <= 404 for _, y in points)


def test_the_header_names_station_place_mean_and_total():
    assert {"Harrow Plain", "46.5° N, 310 m", "7.1 °C", "327 mm"} <= set(texts(HARROW))


@pytest.mark.parametrize("chart, first", ((HARROW, "Jan"), (CAPE, "Jul")))
def test_the_year_starts_in_january_in_the_north_and_in_july_in_the_south(chart: ClimateDiagram, first: str):
    assert first == next(text for text in texts(chart) if text in ("Jan", "Jul"))


@pytest.mark.parametrize("chart, expected", (
    (HARROW, {"dry season", "humid season"}), (RAINLESS, {"dry season"}), (FROZEN, {"humid season"}), (EVEN, {"humid season"}),
))  # fmt: skip
def test_seasons_are_named_in_words(chart: ClimateDiagram, expected: set[str]):
    assert expected == {text for text in texts(chart) if "season" in text}


def test_the_temperature_axis_goes_below_zero_where_needed():
    assert {"−40", "−30", "0", "10"} <= set(texts(FROZEN))
    assert not any(text.startswith("−") for text in texts(MARO))


def test_months_averaging_below_zero_have_a_bar_below_them_that_is_never_called_frost():
    bars = ElementTree.fromstring(drawn(HARROW)).findall(".//*[@data-part='below 0 degC']")
    spans = [sorted({float(x) for x in re.findall(r"([-\d.]+) [-\d.]+", bar.get("d"))}) for bar in bars]
    assert [[62, 62 + 2 * 48], [62 + 11 * 48, 638]] == spans  # January and February, December; 0 °C in March is not below
    assert "months averaging below 0 °C" in texts(HARROW)
    assert not any("frost" in text for text in texts(HARROW))


@pytest.mark.parametrize("chart", (MARO, FREEZING), ids=lambda chart: chart.name)
def test_a_year_with_no_month_below_zero_has_no_bar_and_no_word_of_it(chart: ClimateDiagram):
    assert "below 0 degC" not in drawn(chart)
    assert "months averaging below 0 °C" not in texts(chart)


def test_a_note_explains_the_change_of_scale_only_where_it_happens():
    assert any("above 100 mm" in text for text in texts(MONSOON))
    assert not any("above 100 mm" in text for text in texts(HARROW))


def test_the_pattern_of_a_season_fills_its_band_beside_the_words():
    """Source: 'humid season' takes about 90 px, the band is 576 px long."""
    found = [e.get("d") or "" for e in ElementTree.fromstring(drawn(EVEN)).findall(".//{*}path") if e.get("data-part") == "humid sample"]
    across = sorted(float(x) for data in found for x in re.findall(r"M([-\d.]+)", data))
    assert across[-1] - across[0] > 560
    assert 1 == sum(b - a > 5 for a, b in pairwise(across))
