"""The drawn stocks through time: places on the axes, ends of the curves, and labels that keep their order."""

from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from figures import StockCurves
from figures.drawing.stock_curves import BREAK_WORDS
from tests.figures.drawn import drawn
from tests.figures.overview_specimens import STOCKS

ONE, TWO, FIVE = STOCKS


def root(chart: StockCurves) -> ElementTree.Element:
    return ElementTree.fromstring(drawn(chart))


def texts(chart: StockCurves) -> list[str]:
    return [element.text or "" for element in root(chart).findall(".//{*}text")]


def height_of(chart: StockCurves, words: str) -> float:
    (found,) = [element for element in root(chart).findall(".//{*}text") if element.text == words]
    return float(found.get("y", "nan"))


def points(chart: StockCurves, part: str) -> list[tuple[float, float]]:
    path = root(chart).find(f".//*[@data-part='{part}']")
    assert path is not None
    return [(float(x), float(y)) for x, y in re.findall(r"([-\d.]+) ([-\d.]+)", path.get("d", ""))]


def test_equal_steps_of_a_stock_are_equal_heights() -> None:
    (_, first), (_, half), (_, last) = points(ONE, "curve 0 0")
    assert (first - half) / 50 == pytest.approx((half - last) / 140, rel=1e-3)


def test_equal_years_are_equal_widths_and_both_lines_share_them() -> None:
    (a, _), (b, _), (c, _) = points(TWO, "curve 0 0")
    assert b - a == pytest.approx(c - b, abs=0.02)
    assert [a, b, c] == [x for x, _ in points(TWO, "curve 0 1")]


def test_broken_line_is_only_the_other_one() -> None:
    dashed = [element.get("data-part") for element in root(TWO).iter() if element.get("stroke-dasharray") and element.get("data-part")]
    assert ["curve 0 1", "curve 1 1"] == dashed


def test_key_stands_there_only_where_there_are_two_lines() -> None:
    assert "without it" in texts(TWO)
    assert "without it" not in texts(ONE)


def test_axis_that_leaves_out_zero_has_a_zigzag_below_its_lowest_number_and_the_key_says_so() -> None:
    """Of the five panels only the ocean's begins high above zero."""
    zigzags = [element.get("data-part") for element in root(FIVE).iter() if (element.get("data-part") or "").startswith("zigzag")]
    assert ["zigzag 4"] == zigzags
    foot, lowest = max(y for _, y in points(FIVE, "zigzag 4")), max(y for _, y in points(FIVE, "curve 4 0"))
    assert foot > lowest + 10
    assert {x for x, y in points(FIVE, "zigzag 4") if y in (foot, min(y for _, y in points(FIVE, "zigzag 4")))} == {points(FIVE, "curve 4 0")[0][0]}
    assert BREAK_WORDS in texts(FIVE)


def test_axes_from_zero_have_no_zigzag_and_no_word_of_one() -> None:
    for chart in (ONE, TWO):
        assert "zigzag" not in drawn(chart)
        assert BREAK_WORDS not in texts(chart)


def test_each_label_stands_beside_the_end_of_its_own_line() -> None:
    """Text is centred on the line, 5 px above its baseline, where there is room."""
    assert points(TWO, "curve 0 0")[-1][1] == pytest.approx(height_of(TWO, "with 290") - 5, abs=0.1)
    assert points(TWO, "curve 0 1")[-1][1] == pytest.approx(height_of(TWO, "without 130") - 5, abs=0.1)


@pytest.mark.parametrize(("upper", "lower"), [("with 200", "without 199"), ("with 300", "without 299"), ("without 1", "with 0")])
def test_labels_of_ends_that_meet_are_pushed_apart_in_their_order(upper: str, lower: str) -> None:
    assert 19.0 == pytest.approx(height_of(FIVE, lower) - height_of(FIVE, upper), abs=0.1)


def test_long_name_is_broken_and_all_panels_make_room_for_it() -> None:
    assert "Soil organic matter with a very long name of its own" not in texts(FIVE)
    assert " ".join(texts(FIVE)).count("Soil organic matter with") == 1
    heights = [max(y for _, y in points(FIVE, f"curve {number} 0")) for number in (2, 3)]
    assert heights[1] - heights[0] > 100


def test_one_or_two_panels_take_the_full_width() -> None:
    assert len({points(TWO, f"curve {number} 0")[0][0] for number in range(2)}) == 1
    assert points(FIVE, "curve 1 0")[0][0] > 350 > points(FIVE, "curve 0 0")[0][0]


def test_years_are_named_below_each_panel() -> None:
    assert [1, 2, 5] == [texts(chart).count("Years from now") for chart in STOCKS]


def test_words_under_the_years_stand_clear_of_a_foot_that_a_zigzag_lowers() -> None:
    foot = max(y for _, y in points(FIVE, "zigzag 4"))
    heights = [float(found.get("y", "nan")) for found in root(FIVE).findall(".//{*}text") if found.text == "Years from now"]
    assert max(heights) > foot + 40


@pytest.mark.parametrize("narrow", [False, True], ids=["wide", "narrow"])
def test_panels_of_one_column_begin_and_end_at_the_same_places(narrow: bool) -> None:
    """The ocean's axis has the widest numbers and stands below the soil's."""
    lines = [points(replace(FIVE, narrow=narrow), f"curve {number} 0") for number in (0, 2, 4)]
    assert [1, 1] == [len({line[end][0] for line in lines}) for end in (0, -1)]


def test_on_a_narrow_sheet_all_panels_stand_in_one_column() -> None:
    narrow = replace(FIVE, narrow=True)
    starts = [points(narrow, f"curve {number} 0") for number in range(5)]
    assert max(x for line in starts for x, _ in line) < 400
    tops = [min(y for _, y in line) for line in starts]
    assert sorted(tops) == tops and len(set(tops)) == 5


def test_a_key_that_is_too_long_for_the_sheet_goes_on_in_a_second_row() -> None:
    places = [[height_of(chart, words) for words in ("with the change", "without it", BREAK_WORDS)] for chart in (FIVE, replace(FIVE, narrow=True))]
    assert [1, 2] == [len(set(rows)) for rows in places]
