"""The drawn pyramid: widths in proportion, thin levels never thickened but magnified."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from figures import TrophicPyramid
from figures.drawing.trophic_pyramid import THIN, panels
from tests.figures.drawn import drawn
from tests.figures.specimens import PYRAMIDS, pyramid

SILL_LAKE = PYRAMIDS[0]


def widths(chart: TrophicPyramid, kind: str) -> dict[str, float]:
    found = {}
    for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}path"):
        name = element.get("data-part", "")
        if name.startswith(f"{kind} "):
            xs = [float(point.split()[0]) for point in re.findall(r"[-\d.]+ [-\d.]+", element.get("d"))]
            found[name.removeprefix(f"{kind} ")] = max(xs) - min(xs)
    return found


@pytest.mark.parametrize("chart", PYRAMIDS, ids=lambda chart: chart.name)
def test_drawn_bars_are_in_proportion_to_their_values(chart: TrophicPyramid):
    drawn = widths(chart, "bar")
    scale = max(drawn.values()) / max(level.value for level in chart.levels)
    assert {level.id: pytest.approx(level.value * scale, abs=0.011) for level in chart.levels} == drawn


def test_thin_levels_are_shown_again_at_the_magnification_that_is_stated():
    bars, inset = widths(SILL_LAKE, "bar"), widths(SILL_LAKE, "inset")
    says = [element.text for element in ElementTree.fromstring(drawn(SILL_LAKE)).findall(".//{*}text")]
    assert ["perch", "pike"] == sorted(inset)
    assert {"these two levels,", "40 times wider"} <= set(says)
    assert 40 * bars["perch"] == pytest.approx(inset["perch"], abs=0.5)
    assert bars["pike"] < THIN < inset["pike"]


def test_a_pyramid_without_thin_levels_has_no_inset():
    assert {} == widths(pyramid("Stout", ("Algae", 100), ("Snails", 20)), "inset")


@given(st.lists(st.floats(0.001, 1), min_size=1, max_size=5), st.floats(1, 1e5))
def test_every_panel_is_in_proportion_and_stays_in_its_bounds(shares: list[float], producers: float):
    values = [producers]
    for share in shares:
        values.append(values[-1] * share)
    whole, *insets = panels(values)
    for panel in (whole, *insets):
        shown = values[panel.first :]
        unit = whole.widths[0] / values[0] * panel.magnified
        assert panel.widths == pytest.approx([value * unit for value in shown])
        assert max(panel.widths) <= panel.right - panel.left + 1e-6
    assert all(left.right < right.left for left, right in zip(insets, insets[1:], strict=False))


def test_steps_of_up_to_a_hundred_always_end_in_an_inset_that_can_be_read():
    for values in ((1000, 10), (10000, 100, 1), (1e6, 1e4, 1e2), (1e4, 3000, 30, 9)):
        assert min(panels(values)[-1].widths) >= THIN


def test_values_of_zero_are_refused():
    for values in ((), (5, 0), (5, -1)):
        with pytest.raises(ValueError, match="values above zero"):
            panels(values)


def test_each_step_says_what_share_was_passed_on():
    says = [element.text for element in ElementTree.fromstring(drawn(SILL_LAKE)).findall(".//{*}text")]
    assert {"8 % passed on", "8.62 % passed on", "10 % passed on"} == {text for text in says if text.endswith("passed on")}
