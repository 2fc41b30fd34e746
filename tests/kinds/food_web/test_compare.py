"""Food webs side by side."""

from __future__ import annotations

from tests.kinds.food_web.test_facts import LAKE, web
from tests.kinds.small_records import demo, kind


def cells(*subjects: object) -> list[list[str]]:
    return [[cell if isinstance(cell, str) else cell.shown for cell in row.cells] for row in kind("food_web").compare(subjects).rows]


def test_each_web_has_a_line() -> None:
    """Source: counted on the record; 11 / 64 = 0.172."""
    assert [["8", "11", "0.172", "3", "pike", "3.80", "roach, pike"]] == cells(demo(LAKE))


def test_web_with_an_unknown_level_has_no_highest_one() -> None:
    ((*_, level, omnivores),) = cells(web(grass="", vole="grass", bear="grass, vole"))
    assert ("bear", True) == (omnivores, level.startswith("not known"))


def test_web_of_a_loop_has_no_top() -> None:
    ((_, _, _, _, top, *_),) = cells(web(algae="", a="algae 0.5, b 0.5", b="a"))
    assert "none" == top
