"""The drawn chain: all its words, numbered in order, joined by arrows."""

from __future__ import annotations

from dataclasses import replace
from xml.etree import ElementTree

import pytest

from figures import ChainSequence
from figures.drawing import draw
from tests.figures.drawn import drawn
from tests.figures.overview_specimens import CHAINS

SHORT, FOUR, LONG = CHAINS[:3]


def elements(chart: ChainSequence, tag: str) -> list[ElementTree.Element]:
    return ElementTree.fromstring(drawn(chart)).findall(f".//{{*}}{tag}")


def parts(chart: ChainSequence, name: str) -> int:
    return sum((path.get("data-part") or "").startswith(name) for path in elements(chart, "path"))


@pytest.mark.parametrize("chart", CHAINS, ids=lambda chart: chart.name)
def test_every_word_stands_there_in_the_order_of_the_chain(chart: ChainSequence):
    says = [text.text for text in elements(chart, "text")]
    expected = [word for number, step in enumerate(chart.steps, start=1) for word in (f"{number}", *step.split())]
    assert expected == " ".join(says).split()


@pytest.mark.parametrize("chart", CHAINS, ids=lambda chart: chart.name)
def test_steps_are_joined_by_one_arrow_less_than_there_are_steps(chart: ChainSequence):
    assert (len(chart.steps), len(chart.steps) - 1) == (parts(chart, "step"), parts(chart, "arrow"))


@pytest.mark.parametrize("chart", CHAINS, ids=lambda chart: chart.name)
def test_a_phone_300_px_wide_inside_its_margins_shows_every_letter_at_11_px(chart: ChainSequence):
    ((_, _, width, _),) = (map(float, svg.get("viewBox").split()) for svg in ElementTree.fromstring(drawn(chart)).iter() if svg.get("viewBox"))
    longest = max(len(word) for step in chart.steps for word in step.split())
    smallest = min(float(text.get("font-size", "0")) for text in elements(chart, "text"))
    assert smallest * 300 / width >= 11 or longest > 30


def test_long_sentences_wrap():
    assert len(elements(LONG, "text")) > 2 * len(LONG.steps)


def test_boxes_stand_below_each_other():
    starts = [path.get("d").removeprefix("M").split("L")[0].split() for path in elements(FOUR, "path") if "step" in (path.get("data-part") or "")]
    corners = [(float(x), float(y)) for x, y in starts]
    assert 1 == len({x for x, _ in corners})
    assert all(a[1] < b[1] for a, b in zip(corners, corners[1:], strict=False))


def test_a_chain_without_steps_is_refused():
    with pytest.raises(ValueError, match="no step"):
        draw(replace(SHORT, steps=()))
