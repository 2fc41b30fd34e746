"""The drawn oxygen curve: curves and points on one scale, each label nearest to its own point, words that keep apart."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from playwright.sync_api import Browser

from figures import OxygenCurve, OxygenPoint, SaturationCurve
from figures.drawing.oxygen_curve import name_tops
from tests.figures.drawn import drawn
from tests.figures.specimens import TABLE
from tests.figures.test_no_overlap import page_of, violations


def saturation(temperature: float, salinity: float) -> float:
    """Near enough to the real thing for a drawing."""
    return (14.6 - 0.39 * temperature + 0.0047 * temperature**2) * (1 - 0.0055 * salinity)


def curve(name: str, *points: tuple[str, float, float], salinities: tuple[float, ...] = (0.2,)) -> OxygenCurve:
    return OxygenCurve(
        name=f"oxygen_{name.lower().replace(' ', '_')}", title=name, description="Oxygen falls.", reading=(), table=TABLE,
        curves=tuple(
            SaturationCurve(label=f"{'fresh' if s < 0.5 else 'brackish'} water, {s:g} g kg⁻¹", points=tuple((float(t), saturation(t, s)) for t in range(41)))
            for s in salinities
        ),
        points=tuple(
            OxygenPoint(
                label=label, temperature_degc=t, oxygen_mg_per_l=o, saturation_mg_per_l=saturation(t, salinities[0]),
                value_label=f"{o:g} mg L⁻¹, {100 * o / saturation(t, salinities[0]):.3g} %",
            )
            for label, t, o in points
        ),
    )  # fmt: skip


LAKE = curve("Lake", ("Halden Water", 20, 9.4), ("Halden Water, deep layer", 6.5, 2.1))
ESTUARY = curve("Estuary", ("Wendmouth Narrows", 17, 7.4), ("Wendmouth Bar", 16, 8.0), salinities=(8, 28))
CORNERS = curve("Corners", ("Ice Hole", 0, 14.6), ("Bog", 0, 0), ("Hot Spring", 40, 6.4), ("Ooze below the Hot Spring", 40, 0.1))
SEA = curve("Sea", ("Reef at Noon in the Hottest Month", 31, 7.4), ("Deep", 3, 2.0), salinities=(0, 22, 38))
BLOOM = curve("Bloom", ("Pond in June at Noon", 26, 21.5))
CURVES = (LAKE, ESTUARY, CORNERS, SEA, BLOOM)


def shapes(chart: OxygenCurve, part: str) -> list[tuple[float, float]]:
    """The points of a named shape [px]."""
    (path,) = [e for e in ElementTree.fromstring(drawn(chart)).findall(".//{*}path") if e.get("data-part") == part]
    return [tuple(map(float, point.split())) for point in re.findall(r"[-\d.]+ [-\d.]+", path.get("d"))]


def texts(chart: OxygenCurve) -> list[str]:
    return [element.text or "" for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}text")]


@pytest.mark.parametrize("chart", CURVES, ids=lambda chart: chart.name)
def test_curve_is_to_scale(chart: OxygenCurve) -> None:
    found, points = shapes(chart, "curve 0"), chart.curves[0].points
    wide = (found[-1][0] - found[0][0]) / 40
    high = (found[-1][1] - found[0][1]) / (points[0][1] - points[-1][1])
    expected = [(found[0][0] + wide * t, found[0][1] + high * (points[0][1] - o)) for t, o in points]
    assert [pytest.approx(point, abs=0.02) for point in expected] == found


@pytest.mark.parametrize("chart", CURVES, ids=lambda chart: chart.name)
def test_all_waters_are_named_with_their_oxygen(chart: OxygenCurve) -> None:
    assert {word for point in chart.points for word in (point.label, point.value_label)} <= set(texts(chart))


def test_axis_reaches_beyond_water_that_holds_more_than_it_should() -> None:
    assert ["16", "24"] == [text for text in texts(BLOOM) if text in ("16", "24")]
    assert "24" not in texts(LAKE)


def test_saltest_water_has_the_lower_curve() -> None:
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


@pytest.mark.browser
@pytest.mark.parametrize("typeface", ["inherit", "DejaVu Sans"])
def test_text_keeps_apart(browser: Browser, typeface: str) -> None:
    assert [] == violations(browser, page_of(CURVES, typeface), len(CURVES))
