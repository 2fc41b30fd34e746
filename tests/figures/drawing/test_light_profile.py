"""The drawn light profile: the curve to scale, the marked depths where they belong, words that keep apart."""

from __future__ import annotations

from dataclasses import replace
from xml.etree import ElementTree

import pytest

from figures import LightProfile
from figures.drawing.light_profile import depth_labels, depth_step
from tests.figures.drawn import corners, drawn, words
from tests.figures.water_specimens import BAR, LAKE_LIGHT, LIGHTS, REEF


NARROW = tuple(replace(chart, name=f"{chart.name}.narrow", narrow=True) for chart in LIGHTS)


def part(chart: LightProfile, name: str) -> list[tuple[float, float]]:
    """The points of a named shape [px]."""
    (found,) = corners(chart, name)
    return found


@pytest.mark.parametrize("chart", (*LIGHTS, *NARROW), ids=lambda chart: chart.name)
def test_curve_is_to_scale_in_both_directions(chart: LightProfile) -> None:
    found = part(chart, "light")
    (x0, y0), (x1, y1) = found[0], found[-1]
    (light0, _), (light1, lowest) = chart.curve[0][::-1], chart.curve[-1][::-1]
    wide, high = (x0 - x1) / (light0 - light1), (y1 - y0) / lowest
    expected = [(x0 - wide * (light0 - light), y0 + high * depth) for depth, light in chart.curve]
    assert [pytest.approx(point, abs=0.02) for point in expected] == found


def test_dashed_line_crosses_the_curve_at_one_percent() -> None:
    (left, y), (right, _) = part(LAKE_LIGHT, "photic depth")
    x_one = left + 0.01 * (right - left)
    below = min(part(LAKE_LIGHT, "light"), key=lambda point: abs(point[1] - y))
    assert x_one == pytest.approx(below[0], abs=1.0)


def test_bottom_lies_at_the_end_of_the_curve() -> None:
    assert part(REEF, "light")[-1][1] == pytest.approx(part(REEF, "bottom")[0][1], abs=0.02)


@pytest.mark.parametrize(
    ("chart", "says", "not_drawn"),
    [
        (LAKE_LIGHT, "Bottom at 24 m.", "bottom"),
        (REEF, "1 % would only be left at 51.2 m", "photic depth"),
        (BAR, "bottom at 9 m, 0.128 % left", ""),
    ],
)
def test_what_lies_below_the_chart_is_said(chart: LightProfile, says: str, not_drawn: str) -> None:
    drawn_parts = [e.get("data-part") for e in ElementTree.fromstring(drawn(chart)).findall(".//{*}path")]
    assert says in words(chart)
    assert not_drawn not in drawn_parts


@pytest.mark.parametrize("lowest", [0.08, 0.14, 1, 7.3, 11.5, 24, 144, 5000])
def test_depth_marks_are_round_and_few(lowest: float) -> None:
    step = depth_step(lowest)
    assert 4 <= lowest / step <= 10.001
    assert f"{step:.0e}"[0] in "125"


@pytest.mark.parametrize(("lowest", "expected"), ((0.35, ["0.00", "0.05"]), (1.1, ["0.0", "0.2"]), (11.5, ["0", "2"]), (4200, ["0", "1000"])))
def test_depth_marks_are_written_with_the_same_decimals(lowest: float, expected: list[str]) -> None:
    assert expected == depth_labels(lowest)[:2]


@pytest.mark.parametrize("chart", LIGHTS, ids=lambda chart: chart.name)
def test_the_narrow_drawing_says_what_the_wide_one_says(chart: LightProfile) -> None:
    wide, narrow = (words(one).replace(" | ", " ").split() for one in (chart, replace(chart, narrow=True)))
    assert sorted(wide) == sorted(narrow)


def test_a_long_name_pushes_the_water_down_and_nothing_leaves_the_sheet() -> None:
    named, short = (part(replace(LAKE_LIGHT, narrow=True, station=station), "surface")[0][1] for station in ("A Lake with a Name that is Longer than a Telephone is Wide", "Lake"))
    assert named > short + 10


def test_frame_ends_at_the_bottom_and_an_axis_that_goes_on_is_explained() -> None:
    """An axis of 24 m beside 12 m of water, as where the other station of a page is that deep."""
    shared = replace(REEF, name="shared", axis_m=24.0)
    *_, (_, right_end) = part(shared, "frame")
    assert part(shared, "bottom")[0][1] == pytest.approx(right_end, abs=0.02)
    told = "The axis goes on below, as deep as at the other stations."
    assert (True, False) == (told in words(shared), told in words(REEF))
