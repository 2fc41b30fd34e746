"""Names of series: beside their own marks, clear of all others and of each other, or none at all."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from figures.drawing.series_names import Drawn, along, apart, distances, name_places

BOUNDS = (0.0, 0.0, 400.0, 300.0)
PLACE = st.tuples(st.floats(20, 380), st.floats(20, 280))


def line(name: str, *points: tuple[float, float]) -> Drawn:
    return Drawn(name, along(points), along(points))


STEEP, LEVEL = line("Gross production", (60, 40), (340, 260)), line("Respiration", (20, 200), (380, 210))


def test_points_along_a_line_are_close_and_keep_its_ends() -> None:
    found = along([(0, 0), (30, 40), (30, 41)])
    assert ((0, 0), (30, 41)) == (found[0], found[-1])
    assert max(math.dist(one, other) for one, other in zip(found, found[1:], strict=False)) < 10


def test_distance_is_measured_from_the_edge_and_is_nothing_inside() -> None:
    assert [0, 3, 5] == pytest.approx(distances((10, 10, 20, 20), [(15, 15), (23, 12), (24, 23)]))


def test_boxes_are_apart_when_a_gap_lies_between_them_in_one_direction() -> None:
    assert apart((0, 0, 10, 10), (14, 0, 20, 10))
    assert apart((0, 0, 10, 10), (0, 14, 10, 20))
    assert not apart((0, 0, 10, 10), (13, 3, 20, 10))


@given(PLACE, PLACE, PLACE, PLACE)
def test_every_name_is_nearer_to_its_own_line_than_to_any_other_and_on_none(a, b, c, d) -> None:
    series = [line("Net production", a, b), line("Respiration", c, d)]
    for number, place in enumerate(name_places(series, 14, BOUNDS) or ()):
        own, other = (distances(place.box, series[which].marks).min() for which in (number, 1 - number))
        assert 0 < own < other
        assert BOUNDS[0] <= place.box[0] and place.box[2] <= BOUNDS[2] and BOUNDS[1] <= place.box[1] and place.box[3] <= BOUNDS[3]


def test_two_lines_apart_are_both_named_clear_of_what_is_taken() -> None:
    free = name_places([STEEP, LEVEL], 14, BOUNDS)
    assert free is not None
    taken = [place.box for place in free]
    moved = name_places([STEEP, LEVEL], 14, BOUNDS, taken)
    assert moved is not None
    assert all(apart(place.box, box) for place in moved for box in taken)
    assert apart(moved[0].box, moved[1].box)


def test_a_name_of_two_words_breaks_where_one_line_finds_no_room() -> None:
    (place,) = name_places([line("Gross production", (55, 10), (55, 290))], 14, (0.0, 0.0, 160.0, 300.0)) or ()
    assert ("Gross", "production") == place.lines


def test_lines_on_each_other_are_not_named_at_all() -> None:
    assert name_places([line("one", (20, 100), (380, 100)), line("other", (20, 104), (380, 104)), line("third", (20, 108), (380, 108))], 14, BOUNDS) is None
