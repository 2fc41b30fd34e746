"""The pyramid on a narrow sheet: every level with its words above its bar, magnified levels in frames below, in their order."""

from __future__ import annotations

from dataclasses import replace
from xml.etree import ElementTree

import pytest

from figures import TrophicPyramid
from tests.figures.drawn import corners, drawn, words
from tests.figures.specimens import PYRAMIDS, pyramid

SILL_LAKE, LONG_NAMES = (replace(chart, narrow=True) for chart in PYRAMIDS[:2])
SARNE_BAY, *_, UPSIDE_DOWN = (replace(chart, narrow=True) for chart in PYRAMIDS[7:])


def baseline(chart: TrophicPyramid, text: str) -> list[float]:
    """Where a text stands, from top to bottom [px]."""
    return [float(e.get("y") or 0) for e in ElementTree.fromstring(drawn(chart)).findall(".//{*}text") if e.text == text]


def top(chart: TrophicPyramid, part: str) -> float:
    (shape,) = corners(chart, part)
    return min(y for _, y in shape)


def test_every_level_is_named_right_above_its_bar_with_its_value_beside_its_role() -> None:
    for level in SILL_LAKE.levels:
        name, role, value = (baseline(SILL_LAKE, text)[0] for text in (level.label, level.role, level.value_label))
        assert role == value
        assert name < role < top(SILL_LAKE, f"bar {level.id}") < name + 40


def test_a_long_name_takes_more_lines_and_pushes_what_is_below() -> None:
    assert baseline(LONG_NAMES, "that is green")[0] > baseline(LONG_NAMES, "Algae and eelgrass with everything else")[0]
    gaps = [top(chart, f"bar {chart.levels[0].id}") - top(chart, f"bar {chart.levels[1].id}") for chart in (LONG_NAMES, SILL_LAKE)]
    assert gaps[0] - gaps[1] == pytest.approx(18, abs=0.1)


def test_a_value_that_does_not_fit_beside_its_role_has_a_line_of_its_own() -> None:
    chart = replace(pyramid("Wide", ("Algae", 5), ("Snails", 2), unit="kilojoules per square metre and year of the survey"), narrow=True)
    level = chart.levels[0]
    assert baseline(chart, level.role)[0] < baseline(chart, level.value_label)[0] < top(chart, f"bar {level.id}")


def test_magnified_levels_stand_below_the_pyramid_under_their_names() -> None:
    bottom = top(SILL_LAKE, "bar phytoplankton")
    assert bottom < top(SILL_LAKE, "inset pike") < top(SILL_LAKE, "inset perch")
    assert 2 == len(baseline(SILL_LAKE, "Pike")) == len(baseline(SILL_LAKE, "Perch"))
    assert "These two levels, | 100 times wider" in words(SILL_LAKE)


def test_what_no_frame_can_show_is_said_and_what_is_wide_enough_is_not_shown_again() -> None:
    assert "thinner than this line" in words(UPSIDE_DOWN)
    assert "wider" not in words(SARNE_BAY)


def test_each_step_says_what_share_was_passed_on() -> None:
    assert 3 == words(SILL_LAKE).count("passed on")
    assert 0 == words(SARNE_BAY).count("passed on")
