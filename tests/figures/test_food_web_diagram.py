"""Which food webs are too crowded to be drawn well, and why."""

from __future__ import annotations

import pytest

from figures import FoodWebDiagram
from figures.food_web_diagram import crowded, rows
from tests.figures.web_specimens import LAKE, WEBS, web

ABREAST = WEBS[-1]


def tower(height: int) -> FoodWebDiagram:
    """A chain of so many species."""
    levels = {f"Level {n}": float(n) for n in range(1, height + 1)}
    return web("a tower", levels, {f"Level {n + 1}": {f"Level {n}": None} for n in range(1, height)})


def tangle(eaters: int) -> FoodWebDiagram:
    """Eaters at heights of their own, each of which eats all those below."""
    levels = {f"Level {n}": float(n) for n in range(1, eaters + 2)}
    return web("a tangle", levels, {name: dict.fromkeys([*levels][:at]) for at, name in enumerate(levels) if at})


@pytest.mark.parametrize("chart", [LAKE, tower(14), tangle(6)], ids=lambda chart: chart.name)
def test_webs_that_can_be_read_are_not_called_crowded(chart: FoodWebDiagram):
    assert crowded(chart) is None


@pytest.mark.parametrize(
    ("chart", "because"),
    [
        (tower(15), "15 species stand in one drawing; more than 14 are hard to follow"),
        (tangle(8), "36 arrows stand in one drawing; more than 28 are hard to tell apart"),
        (ABREAST, "9 species stand side by side; more than 5 do not find room"),
    ],
)
def test_crowded_webs_say_what_there_is_too_much_of(chart: FoodWebDiagram, because: str):
    assert because == crowded(chart)


def test_levels_close_to_each_other_share_a_row():
    assert [[1, 1.3, 1.5], [2]] == rows([1.5, 2, 1.3, 1])
    assert [] == rows([])
