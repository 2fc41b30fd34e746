"""Drawn means with error bars: to scale, bars as long as they should be, every reading a dot, words that keep apart."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from figures.drawing.error_bar_chart import span
from figures.palette import LIGHT
from tests.figures.drawn import corners, drawn, words
from tests.figures.water_specimens import BOTTLES, DEPTHS, FAR, PLAIN, RATES

def middle(shape: list[tuple[float, float]]) -> tuple[float, float]:
    xs, ys = zip(*shape, strict=True)
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def test_means_are_to_scale_and_bars_twice_their_half() -> None:
    """The same number of pixels stands for a unit along marks and along bars."""
    light = [middle(shape) for shape in corners(BOTTLES, "mean light bottles")]
    dark = [middle(shape) for shape in corners(BOTTLES, "mean dark bottles")]
    scale = (dark[0][1] - light[0][1]) / 0.66
    assert light[1][1] - light[0][1] == pytest.approx(0.44 * scale, abs=0.1)
    lengths = [abs(a[1] - b[1]) for a, b in corners(BOTTLES, "bar light bottles")]
    assert [2 * 0.05 * scale, 2 * 0.04 * scale] == pytest.approx(lengths, abs=0.1)


def test_bars_are_centred_on_their_means() -> None:
    for (a, b), mark in zip(corners(BOTTLES, "bar dark bottles"), corners(BOTTLES, "mean dark bottles"), strict=True):
        assert middle([a, b]) == pytest.approx(middle(mark), abs=0.1)


def test_a_mean_without_an_error_has_no_bar() -> None:
    assert (1, [], 1) == (len(corners(RATES, "bar Respiration")), corners(RATES, "bar Net production"), len(corners(RATES, "mean Net production")))


def test_days_are_to_scale_and_joined() -> None:
    (line,) = corners(PLAIN, "line Under nets")
    assert line[1][0] - line[0][0] == pytest.approx(line[2][0] - line[1][0], abs=0.1)
    assert [] == corners(BOTTLES, "line light bottles")


def test_series_at_one_place_stand_apart_and_alone_stand_in_the_middle() -> None:
    light, dark = (middle(corners(BOTTLES, f"mean {sort} bottles")[0])[0] for sort in ("light", "dark"))
    assert dark - light > 20
    assert "light bottles" in words(BOTTLES)
    labels = [e for e in ElementTree.fromstring(drawn(RATES)).findall(".//{*}text") if e.text == "Respiration"]
    assert 1 == len(labels)
    assert middle(corners(RATES, "mean Respiration")[0])[0] == pytest.approx(float(labels[0].get("x") or re.findall(r"[\d.]+", labels[0].get("transform") or "")[0]), abs=1)


def test_measured_places_stand_to_scale_and_named_ones_evenly() -> None:
    """From 0 to 4 m is twice as far as from 4 to 6 m."""
    top, middle_depth, deep = (middle(shape)[0] for shape in corners(DEPTHS, "mean light"))
    assert middle_depth - top == pytest.approx(2 * (deep - middle_depth), abs=0.1)
    labelled = re.findall(r"\d m\b", words(DEPTHS))
    assert ["0 m", "4 m", "6 m"] == labelled


def test_names_stand_on_no_line_of_the_grid_where_there_is_room() -> None:
    """The letters of bold names reach from about 0.75 text sizes above their line to 0.25 below it, from memory."""
    drawing = ElementTree.fromstring(drawn(BOTTLES))
    levels = {float(y) for path in drawing.findall(".//{*}path") if path.get("stroke") == LIGHT["grid"] for y in re.findall(r"[ML][-\d.]+ ([-\d.]+)", path.get("d") or "")}
    names = {e.text: float(e.get("y", "nan")) for e in drawing.findall(".//{*}text") if (e.text or "").endswith("bottles")}
    assert {"light bottles", "dark bottles"} == set(names)
    assert len(levels) > 3
    assert [] == [(name, y) for name, base in names.items() for y in levels if base - 0.75 * 14.5 < y < base + 0.25 * 14.5]


def test_axis_begins_at_nothing_unless_all_lies_far_above_it_and_then_says_so() -> None:
    assert "not at 0" not in words(PLAIN)
    assert "The axis begins at 9" in words(FAR)
    assert (0.0, 233) == span(PLAIN)
    assert (9.38, pytest.approx(9.92)) == span(FAR)
