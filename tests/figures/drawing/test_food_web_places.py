"""Places of boxes across: within the sheet, apart from each other, and so that arrows do not cross where they need not."""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from figures.drawing.food_web_places import Web, places_across


def web(levels: list[float], links: list[tuple[int, int]]) -> Web:
    """Boxes of one size at these heights."""
    return Web(
        middles=np.array([-124.0 * level for level in levels]), sizes=np.tile([90.0, 50.0], (len(levels), 1)),
        links=np.array(links, int).reshape(-1, 2), left=64.0, right=690.0,
    )  # fmt: skip


@settings(max_examples=12, deadline=None)
@given(st.lists(st.sampled_from([1.0, 1.5, 2.0, 2.3, 3.0]), min_size=1, max_size=5), st.randoms(use_true_random=False))
def test_boxes_stay_on_the_sheet_and_apart(levels: list[float], chance: object) -> None:
    links = [(low, high) for high in range(len(levels)) for low in range(high) if levels[low] < levels[high]]
    best, *others = places_across(web(levels, links))
    assert all(64 + 45 - 1e-6 <= x <= 690 - 45 + 1e-6 for found in (best, *others) for x in found)
    for one in range(len(levels)):
        assert all(abs(best[one] - best[other]) >= 90 for other in range(one) if abs(levels[one] - levels[other]) * 124 < 50)


def test_arrows_that_need_not_cross_do_not() -> None:
    """Two chains side by side, named crosswise."""
    left, right, above_right, above_left = places_across(web([1, 1, 2, 2], [(0, 3), (1, 2)]))[0]
    assert (left < right) == (above_left < above_right)


def test_an_arrow_past_a_box_finds_its_way_round() -> None:
    """From level 1 to level 3, with a box between them that lies on neither's way."""
    low, middle, high = places_across(web([1, 2, 3], [(0, 2), (0, 1)]))[0]
    at_height = (low + high) / 2
    assert abs(at_height - middle) > 45


def test_no_box_needs_no_link() -> None:
    (alone,) = places_across(web([1], []))[0]
    assert abs(alone - 377) < 20
