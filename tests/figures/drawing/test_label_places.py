"""Places of labels beside points: apart from each other, from marks and from what is taken."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from figures.drawing.label_places import Rectangle, place_labels

BOUNDS = (0.0, 0.0, 600.0, 400.0)
POINTS = st.lists(st.tuples(st.floats(20, 580), st.floats(20, 380)), min_size=1, max_size=12)


def apart(one: Rectangle, other: Rectangle) -> bool:
    return one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]


def test_a_lone_label_stands_close_to_the_right_without_a_leader():
    [place], faults = place_labels([(100, 100)], [(50, 14)], 5, BOUNDS, [])
    assert (0, None) == (faults, place.leader)
    assert 105 < place.box[0] < 110
    assert 100 == (place.box[1] + place.box[3]) / 2


def test_a_label_at_the_right_edge_goes_elsewhere():
    [place], faults = place_labels([(590, 100)], [(50, 14)], 5, BOUNDS, [])
    assert 0 == faults
    assert place.box[2] <= 600


def test_a_label_stands_off_a_line_that_runs_right_of_its_point_but_not_apart_from_it():
    line = [(125.0, float(y)) for y in range(0, 400, 5)]
    [plain], _ = place_labels([(100, 100)], [(50, 14)], 5, BOUNDS, [])
    [place], faults = place_labels([(100, 100)], [(50, 14)], 5, BOUNDS, [], line)
    assert plain.box[0] < 125 < plain.box[2]
    assert (0, None) == (faults, place.leader)
    assert place.box[2] < 125


def test_points_at_one_place_have_labels_apart_from_each_other():
    places, faults = place_labels([(300, 200)] * 8, [(20, 14)] * 8, 5, BOUNDS, [])
    assert 0 == faults
    assert all(apart(one.box, other.box) for one, other in combinations(places, 2))


def test_a_line_leads_to_the_middle_height_of_its_label():
    """At its lower edge it would look like a line under it, beside a number like a minus."""
    places, _ = place_labels([(300, 200)] * 8, [(20, 14)] * 8, 5, BOUNDS, [])
    led = [(place.leader, place.box) for place in places if place.leader is not None]
    assert led
    for (start, end), box in led:
        assert box[1] + 4 < end[1] < box[3] - 4
        assert abs(end[0] - start[0]) + abs(end[1] - start[1]) > 7


def test_what_finds_no_room_is_counted():
    _, faults = place_labels([(10, 10)], [(50, 14)], 5, (0, 0, 20, 20), [])
    assert 1 == faults
    assert ([], 0) == place_labels([], [], 5, BOUNDS, [])


@settings(max_examples=30, deadline=None)
@given(POINTS)
def test_without_faults_labels_keep_apart_from_labels_marks_and_what_is_taken(points: list[tuple[float, float]]):
    taken = [(250.0, 150.0, 350.0, 200.0)]
    places, faults = place_labels(points, [(24, 15)] * len(points), 5, BOUNDS, taken)
    assert (places, faults) == place_labels(points, [(24, 15)] * len(points), 5, BOUNDS, taken)
    boxes = [place.box for place in places]
    marks = [(x - 5, y - 5, x + 5, y + 5) for x, y in points]
    if faults == 0:
        assert all(apart(one, other) for one, other in combinations(boxes, 2))
        assert all(apart(box, other) for box in boxes for other in (*marks, *taken))
        assert all(0 <= left and 0 <= top and right <= 600 and bottom <= 400 for left, top, right, bottom in boxes)
