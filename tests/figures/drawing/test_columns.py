"""Places of columns under points: on them where there is room, else apart and as near as can be."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from figures.drawing.columns import columns_under


def test_columns_stand_under_their_points_where_these_are_far_enough_apart() -> None:
    assert [30.0, 90.0, 200.0] == columns_under([30, 90, 200], [40, 60], 10, 220)


def test_two_too_near_give_way_by_equal_parts_and_at_an_end_the_inner_one_alone() -> None:
    assert [90.0, 120.0] == columns_under([100, 110], [30], 0, 200)
    assert [0.0, 30.0] == columns_under([5, 10], [30], 0, 200)


def test_without_room_there_are_no_places() -> None:
    assert columns_under([0, 10, 20], [60, 60], 0, 100) is None


@given(st.lists(st.tuples(st.floats(0, 600), st.floats(1, 90)), min_size=1, max_size=8))
def test_columns_keep_their_gaps_and_stay_between_the_ends(given_points: list[tuple[float, float]]) -> None:
    points, gaps = sorted(point for point, _ in given_points), [gap for _, gap in given_points[1:]]
    found = columns_under(points, gaps, 0, 600)
    assert found is not None or sum(gaps) > 599
    if found is not None:
        assert all(b - a >= gap - 1e-6 for (a, b), gap in zip(pairwise(found), gaps, strict=True))
        assert -1e-6 <= found[0] and found[-1] <= 600 + 1e-6
