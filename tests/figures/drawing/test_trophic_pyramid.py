"""The drawn pyramid: widths in proportion, thin levels never thickened but magnified."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from figures import TrophicPyramid
from figures.drawing.pyramid_bars import hatching
from figures.drawing.pyramid_panels import NARROW, UNSEEN, WIDE, Layout, panels
from figures.palette import LIGHT
from figures.trophic_pyramid import THIN
from tests.figures.drawn import drawn
from tests.figures.specimens import PYRAMIDS, pyramid

SILL_LAKE = PYRAMIDS[0]
SARNE_BAY, WOOD, MANY_DECADES, HOLLOW, UPSIDE_DOWN = PYRAMIDS[7:12]
LAYOUTS = st.sampled_from((WIDE, NARROW))
SHARE = st.floats(-9, 0).map(lambda power: 10**power)


def texts(chart: TrophicPyramid) -> list[str]:
    return [element.text for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}text")]


def widths(chart: TrophicPyramid, kind: str) -> dict[str, float]:
    found = {}
    for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}path"):
        name = element.get("data-part", "")
        if name.startswith(f"{kind} "):
            xs = [float(point.split()[0]) for point in re.findall(r"[-\d.]+ [-\d.]+", element.get("d"))]
            found[name.removeprefix(f"{kind} ")] = max(xs) - min(xs)
    return found


@pytest.mark.parametrize("chart", (*PYRAMIDS, *filter(None, (chart.narrowed() for chart in PYRAMIDS))), ids=lambda chart: chart.name)
def test_drawn_bars_are_in_proportion_to_their_values_but_for_lines_that_could_not_be_seen(chart: TrophicPyramid):
    drawn = widths(chart, "bar")
    scale = max(drawn.values()) / max(level.value for level in chart.levels)
    assert {level.id: pytest.approx(max(level.value * scale, 1.5), abs=0.011) for level in chart.levels} == drawn


def test_thin_levels_are_shown_again_at_the_magnification_that_is_stated():
    bars, inset = widths(SILL_LAKE, "bar"), widths(SILL_LAKE, "inset")
    says = texts(SILL_LAKE)
    assert ["perch", "pike"] == sorted(inset)
    assert {"these two levels,", "40 times wider"} <= set(says)
    assert 40 * bars["perch"] == pytest.approx(inset["perch"], abs=0.5)
    assert bars["pike"] < THIN < inset["pike"]


def fills(chart: TrophicPyramid, kind: str) -> set[str]:
    found = ElementTree.fromstring(drawn(chart)).findall(".//{*}path")
    return {element.get("fill") for element in found if element.get("data-part", "").startswith(f"{kind} ")}


def test_magnified_bars_are_hatched_and_others_full():
    assert {LIGHT["ground"]} == fills(SILL_LAKE, "inset")
    assert {LIGHT["plant"], LIGHT["animal"]} == fills(SILL_LAKE, "bar")
    strokes = [e for e in ElementTree.fromstring(drawn(SILL_LAKE)).findall(".//{*}path") if e.get("d").count("M") > 5]
    assert strokes and {LIGHT["animal"]} == {e.get("stroke") for e in strokes}


@given(st.floats(1, 400), st.floats(1, 100))
def test_hatching_stays_in_its_box(width: float, height: float):
    for start, end in hatching(10, 20, width, height):
        assert all(10 <= x <= 10 + width + 1e-6 and 20 - 1e-6 <= y <= 20 + height + 1e-6 for x, y in (start, end))
        assert start[0] < end[0] and start[1] > end[1]


def test_a_pyramid_without_thin_levels_has_no_inset():
    assert {} == widths(pyramid("Stout", ("Algae", 100), ("Snails", 20)), "inset")


@pytest.mark.parametrize("chart", PYRAMIDS, ids=lambda chart: chart.name)
def test_the_spec_knows_whether_levels_are_too_thin(chart: TrophicPyramid):
    values = [level.value for level in chart.levels]
    whole, *insets = panels(values)
    assert chart.has_thin_levels or [] == insets == panels(values, NARROW)[1:]
    assert chart.has_thin_levels == (min(whole.widths) / max(whole.widths) < THIN / 466)


@given(st.lists(SHARE, min_size=1, max_size=6), st.floats(1e-4, 1e5), LAYOUTS)
def test_every_panel_is_in_proportion_and_stays_in_its_bounds(shares: list[float], largest: float, layout: Layout):
    values = [largest * share for share in shares]
    whole, *insets = panels(values, layout)
    for panel in (whole, *insets):
        unit = whole.widths[0] / values[0] * panel.magnified
        assert panel.widths == pytest.approx([value * unit for value in values[panel.first : panel.last + 1]])
        assert max(panel.widths) <= panel.right - panel.left + 1e-6
        assert panel is whole or panel.magnified > 1


@given(st.lists(SHARE, min_size=1, max_size=6))
def test_insets_stand_on_no_wide_bar_and_not_on_each_other(values: list[float]):
    whole, *insets = panels(values)
    for number, inset in enumerate(insets):
        assert all(whole.centre + width / 2 < inset.left for width in whole.widths[inset.first : inset.last + 1])
        for other in insets[:number]:
            beside = other.right < inset.left or inset.right < other.left
            assert beside or other.last < inset.first or inset.last < other.first


def test_steps_of_up_to_a_hundred_always_end_in_an_inset_that_can_be_read():
    for values in ((1000, 10), (10000, 100, 1), (1e6, 1e4, 1e2), (1e4, 3000, 30, 9)):
        assert min(panels(values)[-1].widths) >= THIN


def test_values_of_zero_are_refused():
    for values in ((), (5, 0), (5, -1)):
        with pytest.raises(ValueError, match="values above zero"):
            panels(values)


def test_each_step_says_what_share_was_passed_on():
    says = texts(SILL_LAKE)
    assert {"8 % passed on", "8.62 % passed on", "10 % passed on"} == {text for text in says if text.endswith("passed on")}


def test_without_shares_nothing_is_said_to_be_passed_on():
    assert [] == [text for text in texts(SARNE_BAY) if "passed on" in text]


def test_a_pyramid_can_stand_on_its_head():
    bars = widths(SARNE_BAY, "bar")
    assert 21 / 4 == pytest.approx(bars["zooplankton_and_bottom_animals"] / bars["phytoplankton"], abs=0.001)
    assert {} == widths(SARNE_BAY, "inset")


def test_thin_levels_below_and_above_wide_ones_have_insets_of_their_own():
    assert ["oaks", "tits"] == sorted(widths(WOOD, "inset"))
    assert {"3\u202f000 times wider", "10\u202f000 times wider"} <= set(texts(WOOD))


def test_eight_decades_need_a_chain_of_insets_and_words_for_what_cannot_be_seen():
    last = panels([level.value for level in MANY_DECADES.levels])[-1]
    assert (3, 10_000_000) == (last.first, last.magnified)
    assert last.widths[0] >= THIN
    assert 2 == " ".join(texts(MANY_DECADES)).count("to scale, thinner than this line")
    assert "10 million times wider" in " ".join(texts(MANY_DECADES))


@pytest.mark.parametrize("chart", (MANY_DECADES, MANY_DECADES.narrowed()), ids=["wide", "narrow"])
def test_a_bar_that_could_not_be_seen_is_a_line_in_full_colour_beside_which_it_is_said(chart: TrophicPyramid):
    """Source: arithmetic; 1.5 and 0.0007 of 52000, on 466 px at most, are less than a tenth of a pixel, and 310 more than two."""
    unseen = [level for level in chart.levels if level.value < 10]
    drawing = ElementTree.fromstring(drawn(chart))
    bars = [element for element in drawing.findall(".//{*}path") if element.get("data-part") in {f"bar {level.id}" for level in unseen}]
    assert [(LIGHT["animal"], None)] * 2 == [(bar.get("fill"), bar.get("opacity")) for bar in bars]
    assert [1.5, 1.5] == [widths(chart, "bar")[level.id] for level in unseen]
    assert 2 <= " ".join(texts(chart)).count("thinner than")


def test_what_no_inset_can_show_is_said_to_be_too_thin_even_when_magnified():
    assert min(panels([level.value for level in UPSIDE_DOWN.levels])[-1].widths) < UNSEEN
    assert "thinner than this line even when magnified" in " ".join(texts(UPSIDE_DOWN))
    assert "even when magnified" not in " ".join(texts(HOLLOW))


def test_bars_that_can_be_seen_are_not_said_to_be_too_thin():
    assert "thinner" not in " ".join(texts(pyramid("Slim", ("Algae", 1000), ("Snails", 4))))
