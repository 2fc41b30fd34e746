"""The drawn light profile: the curve to scale, the marked depths where they belong, words that keep apart."""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest
from playwright.sync_api import Browser

from figures import LightProfile
from figures.drawing.light_profile import depth_labels, depth_step
from tests.figures.drawn import corners, drawn, words
from tests.figures.specimens import TABLE
from tests.figures.test_no_overlap import page_of, violations


def profile(name: str, extinction: float, bottom: float, lowest: float) -> LightProfile:
    photic = math.log(100) / extinction
    depths = [lowest * number / 40 for number in range(41)]
    return LightProfile(
        name=f"light_{name.lower().replace(' ', '_')}", title=f"Light at {name}", description="Light fades.", reading=(), table=TABLE,
        station=name, place=f"{bottom:g} m deep", curve=tuple((z, 100 * math.exp(-extinction * z)) for z in depths),
        photic_depth_m=photic, photic_label=f"{photic:.3g} m", bottom_m=bottom, bottom_label=f"{bottom:g} m",
        bottom_light_label=f"{100 * math.exp(-extinction * bottom):.3g} %",
    )  # fmt: skip


LAKE = profile("Deep Lake", 0.5, 24, 11.5)
REEF = profile("Bright Reef", 0.09, 12, 12)
BAR = profile("Murky Bar", 0.74, 9, 9)
CLOSE = profile("Just Lit", 0.5, 9.3, 9.3)
SHALLOW = profile("A Ditch with a Very Long Name that Runs on and on beyond any Reason or Need", 0.2, 0.08, 0.08)
MURKY = profile("Mud", 40, 1, 0.14)
PROFILES = (LAKE, REEF, BAR, CLOSE, SHALLOW, MURKY)


def part(chart: LightProfile, name: str) -> list[tuple[float, float]]:
    """The points of a named shape [px]."""
    (found,) = corners(chart, name)
    return found


@pytest.mark.parametrize("chart", PROFILES, ids=lambda chart: chart.name)
def test_curve_is_to_scale_in_both_directions(chart: LightProfile) -> None:
    found = part(chart, "light")
    (x0, y0), (x1, y1) = found[0], found[-1]
    (light0, _), (light1, lowest) = chart.curve[0][::-1], chart.curve[-1][::-1]
    wide, high = (x0 - x1) / (light0 - light1), (y1 - y0) / lowest
    expected = [(x0 - wide * (light0 - light), y0 + high * depth) for depth, light in chart.curve]
    assert [pytest.approx(point, abs=0.02) for point in expected] == found


def test_dashed_line_crosses_the_curve_at_one_percent() -> None:
    (left, y), (right, _) = part(LAKE, "photic depth")
    x_one = left + 0.01 * (right - left)
    below = min(part(LAKE, "light"), key=lambda point: abs(point[1] - y))
    assert x_one == pytest.approx(below[0], abs=1.0)


def test_bottom_lies_at_the_end_of_the_curve() -> None:
    assert part(REEF, "light")[-1][1] == pytest.approx(part(REEF, "bottom")[0][1], abs=0.02)


@pytest.mark.parametrize(
    ("chart", "says", "not_drawn"),
    [
        (LAKE, "The bottom lies deeper, at 24 m.", "bottom"),
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


@pytest.mark.browser
@pytest.mark.parametrize("typeface", ["inherit", "DejaVu Sans"])
def test_text_keeps_apart(browser: Browser, typeface: str) -> None:
    assert [] == violations(browser, page_of(PROFILES, typeface), len(PROFILES))
