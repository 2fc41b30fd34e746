"""Shorter path data draw the same lines: read back here by the rules of SVG, and measured against what was there before."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from figures.path_data import shorter, turning

A_TENTH = 0.12
"""Half a tenth along each axis, and what a corner may lie off a straight line [unit]."""
places = st.tuples(st.floats(-20, 900).map(lambda x: round(x, 2)), st.floats(-20, 900).map(lambda x: round(x, 2)))
lines = st.lists(places, min_size=2, max_size=30, unique=True)


def path(points: list[tuple[float, float]], end: str = "") -> str:
    return "M" + "L".join(f"{x:g} {y:g}" for x, y in points) + end


def read(data: str) -> list[list[tuple[float, float]]]:
    """The corners of each stroke of relative straight steps (SVG 1.1, 8.3.2 to 8.3.4, from memory)."""
    strokes: list[list[tuple[float, float]]] = []
    here = (0.0, 0.0)
    for command, numbers in re.findall(r"([mlhvz])([^mlhvz]*)", data):
        values = [float(number) for number in re.findall(r"-?(?:\d+(?:\.\d+)?|\.\d+)", numbers)]
        along, across = {"h": (values, [0.0] * len(values)), "v": ([0.0] * len(values), values)}.get(command, (values[::2], values[1::2]))
        steps = list(zip(along, across, strict=True))
        if command == "z":
            here = strokes[-1][0]
            strokes[-1].append(here)
        for number, (x, y) in enumerate(steps):
            here = here[0] + x, here[1] + y
            if command == "m" and number == 0:
                strokes.append([])
            strokes[-1].append(here)
    return strokes


def off(point: tuple[float, float], line: list[tuple[float, float]]) -> float:
    """How far a point lies from a line."""
    found = []
    for (x0, y0), (x1, y1) in zip(line, line[1:], strict=False):
        length = (x1 - x0) ** 2 + (y1 - y0) ** 2
        part = min(1, max(0, ((point[0] - x0) * (x1 - x0) + (point[1] - y0) * (y1 - y0)) / length)) if length else 0
        found.append(((x0 + part * (x1 - x0) - point[0]) ** 2 + (y0 + part * (y1 - y0) - point[1]) ** 2) ** 0.5)
    return min(found)


@given(lines)
def test_no_corner_of_the_old_line_lies_off_the_new_one_nor_of_the_new_off_the_old(points):
    (new,) = read(shorter(path(points)))
    assert max(off(point, new) for point in points) < A_TENTH
    assert max(off(point, points) for point in new) < A_TENTH


@given(st.lists(lines, min_size=1, max_size=8))
def test_what_is_rounded_off_does_not_add_up_from_stroke_to_stroke(strokes):
    found = read(shorter("".join(map(path, strokes))))
    assert len(strokes) == len(found)
    for old, new in zip(strokes, found, strict=True):
        assert old[0] == pytest.approx(new[0], abs=0.0501) and old[-1] == pytest.approx(new[-1], abs=0.11)


@given(lines)
def test_a_closed_line_stays_closed_and_is_not_closed_twice(points):
    data = shorter(path([*points, points[0]], "z"))
    (new,) = read(data)
    assert data.endswith("z")
    assert max(off(point, new) for point in points) < A_TENTH


@pytest.mark.parametrize(("data", "short"), [
    ("M0 0L700 0L700 472L0 472z", "m0 0h700v472h-700z"),
    ("M62 404L62 104L638 104L638 404L62 404z", "m62 404v-300h576v300z"),
    ("M86 347L86.02 347M134 344L134.02 344", "m86 347h.1m47.9-3h.1"),
    ("M1 1L2 2L3 3L4 4L2.5 3", "m1 1 3 3-1.5-1"),
    ("M0 0Q1 1 2 0Q3 -1 4 0", "m0 0q1 1 2 0 1-1 2 0"),
    ("M10 10C1 2 3 4 5 6L5 9z", "m10 10c-9-8-7-6-5-4v3z"),
    ("M0.5 0.5L1.2 -0.3", "m.5.5.7-.8"),
    ("M5 5L9 5L9 9z M9 9L12 9", "m5 5h4v4zm4 4h3"),
])  # fmt: skip
def test_steps_are_relative_and_written_with_the_fewest_signs(data, short):
    assert short == shorter(data)


def test_a_line_that_comes_back_on_itself_keeps_its_turn():
    assert [(0, 0), (9, 0), (4, 0)] == turning([(0, 0), (5, 0), (9, 0), (4, 0)])


@pytest.mark.parametrize("data", ["M0 0A5 5 0 0 1 9 9", "m1 1 2 2", ""])
def test_data_of_another_sort_stay_as_they_are(data):
    assert data == shorter(data)


def test_strokes_that_look_the_same_from_either_end_begin_where_the_pen_is_nearer():
    hatched = "M10 100L10 200M20 90L20 210M30 80L30 220"
    assert "m10 100v100m10 10v-120m10-10v140" == shorter(hatched, from_either_end=True)
    assert "m10 100v100m10-110v120m10-130v140" == shorter(hatched)
