"""The drawn oxygen curve: curves and points on one scale, each label nearest to its own point, words that keep apart."""

from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from figures import OxygenCurve
from figures.drawing.oxygen_curve import name_tops
from tests.figures.drawn import drawn
from tests.figures.water_specimens import BLOOM, CORNERS, CURVES, ESTUARY, LAKE_OXYGEN, SEA, curve


NARROW = tuple(replace(chart, name=f"{chart.name}.narrow", narrow=True) for chart in CURVES)


def shapes(chart: OxygenCurve, part: str) -> list[tuple[float, float]]:
    """The points of a named shape [px]."""
    (path,) = [e for e in ElementTree.fromstring(drawn(chart)).findall(".//{*}path") if e.get("data-part") == part]
    return [tuple(map(float, point.split())) for point in re.findall(r"[-\d.]+ [-\d.]+", path.get("d"))]


def texts(chart: OxygenCurve) -> list[str]:
    return [element.text or "" for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}text")]


@pytest.mark.parametrize("chart", (*CURVES, *NARROW), ids=lambda chart: chart.name)
def test_curve_is_to_scale(chart: OxygenCurve) -> None:
    found, points = shapes(chart, "curve 0"), chart.curves[0].points
    wide = (found[-1][0] - found[0][0]) / 40
    high = (found[-1][1] - found[0][1]) / (points[0][1] - points[-1][1])
    expected = [(found[0][0] + wide * t, found[0][1] + high * (points[0][1] - o)) for t, o in points]
    assert [pytest.approx(point, abs=0.02) for point in expected] == found


@pytest.mark.parametrize("chart", (*CURVES, *NARROW), ids=lambda chart: chart.name)
def test_all_waters_are_named_with_their_oxygen(chart: OxygenCurve) -> None:
    said = " ".join(texts(chart))
    assert [] == [word for point in chart.points for word in (point.label, point.value_label) if word not in said]


def test_labels_stay_in_the_frame_where_their_points_lie_in_its_corners() -> None:
    """Set from the top down alone, the label of the lower corner would find no room."""
    root = ElementTree.fromstring(drawn(replace(CORNERS, narrow=True)))
    (bog,) = [element for element in root.findall(".//{*}text") if element.text == "Bog"]
    zero = max(float(element.get("y")) for element in root.findall(".//{*}text") if element.text == "0")
    assert float(bog.get("x")) > 30 and float(bog.get("y")) < zero - 20


def test_axis_reaches_beyond_water_that_holds_more_than_it_should() -> None:
    assert ["16", "24"] == [text for text in texts(BLOOM) if text in ("16", "24")]
    assert "24" not in texts(LAKE_OXYGEN)


def test_saltiest_water_has_the_lower_curve() -> None:
    fresh, salt = shapes(ESTUARY, "curve 0"), shapes(ESTUARY, "curve 1")
    assert all(lower[1] > upper[1] for upper, lower in zip(fresh, salt, strict=True))


def test_every_curve_is_named_at_its_own_end_in_the_order_of_the_ends() -> None:
    root = ElementTree.fromstring(drawn(SEA))
    places = {element.text: float(element.get("y")) for element in root.findall(".//{*}text")}
    names = [places[salt.replace(" ", "\xa0")] for salt in ("0 g kg⁻¹", "22 g kg⁻¹", "38 g kg⁻¹")]
    assert sorted(names) == names
    assert {"fresh water,", "brackish water,"} <= set(places)


def test_curves_are_told_apart_by_their_dashes() -> None:
    paths = [e for e in ElementTree.fromstring(drawn(SEA)).findall(".//{*}path") if e.get("data-part", "").startswith("curve")]
    assert 3 == len({path.get("stroke-dasharray") for path in paths})


@given(st.lists(st.tuples(st.floats(0, 400), st.floats(10, 60)), min_size=1, max_size=3))
def test_names_of_curves_never_touch(names: list[tuple[float, float]]) -> None:
    ends, heights = sorted(end for end, _ in names), [height for _, height in names]
    tops = name_tops(ends, heights)
    assert all(upper + height <= lower for upper, height, lower in zip(tops, heights, tops[1:], strict=False))


def test_a_name_with_room_stands_level_with_its_end() -> None:
    assert [90, 290] == name_tops([100, 300], [20, 20])


@settings(max_examples=15, deadline=None)
@given(st.lists(st.tuples(st.floats(0, 40), st.floats(0, 15)), min_size=1, max_size=3))
def test_any_waters_are_drawn_with_their_names(waters: list[tuple[float, float]]) -> None:
    chart = curve("Any", *((f"Water {n}", t, o) for n, (t, o) in enumerate(waters)))
    assert {point.label for point in chart.points} <= set(texts(chart))
