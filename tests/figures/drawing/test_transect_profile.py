"""The drawn profile: ground and bars in proportion, the air over its way, a cloud only where there is one."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from figures.drawing import draw
from figures.drawing.transect_profile import height_step, slice_between
from tests.figures.transect_specimens import RANGE, TRANSECTS, transect


def part(svg: str, name: str) -> list[tuple[float, float]]:
    """Corners of the named shape."""
    found = re.search(rf'<path[^>]*data-part="{name}"[^>]*>', svg)
    assert found, name
    data = re.search(r' d="([^"]+)"', found[0])
    numbers = [float(n) for n in re.findall(r"-?\d+\.?\d*", data[1] if data else "")]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


def test_ground_rises_in_proportion() -> None:
    """Source: the record, 25, 640 and 2280 m; level at both ends."""
    ground = part(draw(TRANSECTS[0]), "ground")
    heights = [y for _, y in ground]
    assert (2280 - 25) / (640 - 25) == pytest.approx((heights[1] - heights[4]) / (heights[1] - heights[2]), rel=0.02)
    assert heights[0] == heights[1]


@pytest.mark.parametrize(("number", "parts"), [(0, 3), (2, 2)])
def test_air_in_cloud_is_drawn_only_where_there_is_cloud(number: int, parts: int) -> None:
    svg = draw(TRANSECTS[number])
    assert parts == sum(f'data-part="{name}"' in svg for name in ("dry ascent", "moist ascent", "dry descent"))
    assert (number == 0) == ('data-part="cloud base"' in svg)


@pytest.mark.parametrize("narrow", [False, True])
def test_bars_are_as_long_as_their_precipitation(narrow: bool) -> None:
    """Source: the record, 2282, 2950 and 3420 mm at the first three stations."""
    bars = re.findall(r'<path[^>]*data-part="precipitation"[^>]*>', draw(replace(TRANSECTS[0], narrow=narrow)))
    corners = [list(map(float, re.findall(r"-?\d+\.?\d*", re.search(r' d="([^"]+)"', bar)[1]))) for bar in bars]
    long = [max(side) - min(side) for side in (bar[1 - narrow :: 2] for bar in corners)]
    assert [2282 / 3420, 2950 / 3420] == pytest.approx([long[0] / long[2], long[1] / long[2]], abs=0.005)


def test_on_a_narrow_sheet_letters_under_the_profile_name_the_rows_below() -> None:
    svg = draw(replace(TRANSECTS[0], narrow=True))
    places = {found[2]: found[1] for found in re.finditer(r'y="([\d.]+)"[^>]*>([^<]+)</text>', svg)}
    for station, mark in zip(TRANSECTS[0].stations, "ABCDEFG", strict=True):
        assert 2 == svg.count(f">{mark}</text>")
        assert places[mark] == places[station.label]
    assert ">H</text>" not in svg


def test_air_keeps_above_the_ground() -> None:
    svg = draw(TRANSECTS[0])
    ground = dict(part(svg, "ground"))
    above = [(x, y) for name in ("moist ascent", "dry descent") for x, y in part(svg, name) if x in ground]
    assert len(above) >= 5
    assert all(y < ground[x] for x, y in above)


def test_wind_from_the_other_side_turns_the_words() -> None:
    svg = draw(TRANSECTS[1])
    places = {word: float(re.search(rf'x="([\d.]+)"[^>]*>{word}<', svg)[1]) for word in ("lee side", "windward side")}
    assert places["lee side"] < places["windward side"]


def test_rain_that_is_not_known_is_said() -> None:
    assert "not known" in draw(transect("dry", [("A", 0.0, 5.0, None), ("B", 5.0, 900.0, 400.0)]))


def test_equal_specs_give_equal_bytes() -> None:
    assert draw(transect("same", RANGE, (0, 3, 6, 525.0))) == draw(transect("same", RANGE, (0, 3, 6, 525.0)))


@pytest.mark.parametrize(("span", "step"), [(2280.0, 500.0), (4120.0, 1000.0), (90.0, 20.0), (0.0, 0.2)])
def test_height_marks_are_round(span: float, step: float) -> None:
    assert step == pytest.approx(height_step(span))


def test_slices_hold_both_ends() -> None:
    assert [1, 2, 3] == [0, 1, 2, 3, 4][slice_between(3, 1)] == [0, 1, 2, 3, 4][slice_between(1, 3)]


@pytest.mark.parametrize("narrow", [False, True], ids=["wide", "narrow"])
def test_names_stand_under_their_stations_where_these_are_far_enough_apart(narrow: bool) -> None:
    """Each name stands where the ground has its station; the ground goes on to both edges."""
    stations = (("Shore", 0.0, 2.0, 900.0), ("Fern", 120.0, 800.0, 950.0), ("Top", 340.0, 1400.0, 700.0))
    svg = draw(replace(transect("spaced", stations), narrow=narrow))
    across = [float(x) for name in (("A", "B", "C") if narrow else ("Shore", "Fern", "Top")) for x in re.findall(rf'<text x="([\d.]+)"[^>]*>{name}<', svg)[:1]]
    assert [pytest.approx(x, abs=0.1) for x, _ in part(svg, "ground")[1:-1]] == across
