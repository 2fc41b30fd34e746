"""The drawn turnover times: places on the logarithmic axis, order, and words under it."""

from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from figures import TurnoverChart
from figures.drawing.sheet import Sheet
from figures.drawing.turnover_chart import TICKS, Scale, axis_words, lines_told, scale_of
from tests.figures.drawn import drawn
from tests.figures.overview_specimens import TURNOVERS, turnover

FOUR, POND, QUICK = TURNOVERS[:3]
SHEETS = [Sheet.of(replace(FOUR, narrow=narrow), wide=(30, 30), narrow=(22, 22)) for narrow in (False, True)]
TIMES = st.lists(st.floats(-5, 9).map(lambda power: 10**power), min_size=1, max_size=8)


def texts(chart: TurnoverChart) -> list[str]:
    return [element.text for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}text")]


def points(chart: TurnoverChart, part: str) -> list[tuple[float, float]]:
    path = ElementTree.fromstring(drawn(chart)).find(f".//*[@data-part='{part}']").get("d")
    return [tuple(map(float, point.split())) for point in re.findall(r"[-\d.]+ [-\d.]+", path)]


def test_equal_factors_are_equal_distances():
    chart = turnover("factors", ("", "A", 2, None), ("", "B", 20, None), ("", "C", 200, None))
    one, ten, hundred = (points(chart, f"dot t{number}")[0][0] for number in range(3))
    assert ten - one == pytest.approx(hundred - ten, abs=0.02)


@pytest.mark.parametrize("sheet", SHEETS, ids=("wide", "narrow"))
def test_dots_stand_where_the_named_ticks_say(sheet: Sheet):
    scale = Scale(sheet, 1, 1e6)
    assert scale.x(1e3) == pytest.approx((scale.x(1) + scale.x(1e6)) / 2)


def test_a_range_reaches_from_lowest_to_highest_around_its_dot():
    (low, _), (high, _) = points(FOUR, "range t3")
    scale = scale_of(FOUR.times, SHEETS[0])
    assert (scale.x(200), scale.x(1000)) == pytest.approx((low, high), abs=0.01)
    assert low < points(FOUR, "dot t3")[0][0] < high


def test_what_ranges_mean_is_said_only_where_there_are_any():
    told = "from lowest to highest; its dot: middle stock divided by middle outflow"
    assert (True, False) == (told in texts(FOUR), told in texts(POND))


def test_lines_that_are_not_tenfold_are_named():
    """From a day to a month is thirtyfold, from a month to a year twelvefold."""
    assert "Upright lines: a day, a month, a year, then each ten times the one before" in texts(FOUR)
    assert "Upright lines: each ten times the one before" == lines_told(Scale(SHEETS[0], 1.0, 1e4))


def test_cycles_keep_their_order_and_reservoirs_are_sorted_within_them():
    says = [text for text in texts(FOUR) if text in ("Carbon, the Earth", "Water, the Earth") or " yr" in text]
    assert ["Carbon, the Earth", "Land plants, 3.8 yr", "Atmosphere, 4.1 yr", "Soil, 28 yr"] == says[:4]
    assert "Water, the Earth" == says[6]


def test_the_axis_names_times_in_words():
    says = " ".join(texts(FOUR))
    for words in ("a day", "a month", "a year", "ten years", "a hundred years", "a thousand years", "a million years", "a billion years"):
        assert words in says


@pytest.mark.parametrize("sheet", SHEETS, ids=("wide", "narrow"))
@given(years=TIMES)
def test_the_axis_holds_all_times_and_names_at_least_one(sheet: Sheet, years: list[float]):
    scale = scale_of(turnover("any", *(("", "A", value, None) for value in years)).times, sheet)
    assert all(sheet.left <= scale.x(value) <= sheet.right for value in years)
    assert axis_words(scale)


@pytest.mark.parametrize("years, reach", ((0.0, None), (-1.0, None), (1.0, (0.0, 2.0))))
def test_times_of_zero_are_refused(years: float, reach: tuple[float, float] | None):
    with pytest.raises(ValueError, match="above zero"):
        scale_of(turnover("zero", ("", "A", years, reach)).times, SHEETS[0])
