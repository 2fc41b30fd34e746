"""Places of boxes: the given ones, and the ring that is used where none are given."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from figures.drawing.flux_places import place_boxes, ring
from figures.drawing.sheet import NARROW, WIDE
from tests.figures.specimens import WEND_HOLLOW, flux_diagram, random_flux_diagram


def names(count: int) -> list[str]:
    return [f"R{number}" for number in range(count)]


def test_neighbours_in_a_chain_stand_beside_each_other_on_the_ring():
    chain = [("R0", "R2"), ("R2", "R4"), ("R4", "R1"), ("R1", "R3"), ("R3", "R0")]
    assert ["R0", "R2", "R4", "R1", "R3"] in (list(ring(names(5), chain)), ["R0", *reversed(list(ring(names(5), chain))[1:])])


def test_two_boxes_stand_side_by_side():
    assert {"R0": (0.0, 0.0), "R1": (1.0, 0.0)} == ring(names(2), [])


def test_a_box_without_a_place_goes_to_a_free_place_near_those_it_exchanges_with():
    boxes = [("A", "1 kg", False, (0, 0)), ("B", "1 kg", False, (2, 0)), ("C", "1 kg", False, None)]
    a, b, c = place_boxes(flux_diagram("x", boxes, [("A", "C", 1, "flow", False), ("C", "B", 1, "flow", False)]), 150)
    assert (c.x, c.y) == ((a.x + b.x) / 2, a.y)


def test_boxes_that_would_touch_go_to_the_ring():
    touching = [("A", "1 kg", False, (0, 0)), ("B", "1 kg", False, (0.2, 0.1))]
    one, other = place_boxes(flux_diagram("x", touching, [("A", "B", 1, "flow", False)]), 150)
    assert one.rectangle[2] + 100 < other.rectangle[0]


def test_ends_outside_have_no_fixed_place_unless_they_are_given_one():
    boxes = tuple(replace(box, at=(2, 0)) if box.id == "air" else box for box in WEND_HOLLOW.boxes)
    assert "air" not in [box.box.id for box in place_boxes(WEND_HOLLOW, 150)]
    assert "air" in [box.box.id for box in place_boxes(replace(WEND_HOLLOW, boxes=boxes), 150)]


@pytest.mark.parametrize("narrow, width", ((False, WIDE), (True, NARROW)))
@given(seed=st.integers(0, 10_000))
def test_boxes_keep_apart_and_on_the_canvas(narrow: bool, width: float, seed: int):
    rectangles = [box.rectangle for box in place_boxes(replace(random_flux_diagram(seed), narrow=narrow), 145)]
    assert all(0 < left and right < width for left, _, right, _ in rectangles)
    for one, other in combinations(rectangles, 2):
        assert one[2] < other[0] or other[2] < one[0] or one[3] < other[1] or other[3] < one[1]
