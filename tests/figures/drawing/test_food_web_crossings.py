"""Crossings of arrows: a gap in one of the two, never near an end of the one that is cut."""

from __future__ import annotations

import pytest

from figures.drawing.food_web_arrows import Arrow
from figures.drawing.food_web_crossings import gaps


def test_where_two_arrows_cross_one_has_a_gap_and_where_they_meet_none_has():
    """Straight ways from corner to corner of a square of 200 px, and two that begin in one place."""
    one, other = (Arrow(a, a, b, b) for a, b in (((0.0, 0.0), (200.0, 200.0)), ((0.0, 200.0), (200.0, 0.0))))
    (gap,) = gaps([one, other], [2, 2])
    assert (1, 0) == (gap.over, gap.under)
    assert (100, 100) == pytest.approx(gap.piece[4])
    assert [] == gaps([one, Arrow((0.0, 0.0), (0.0, 0.0), (200.0, 0.0), (200.0, 0.0))], [2, 2])


def test_an_arrow_that_would_be_cut_near_its_head_passes_over_the_other():
    long, short = (Arrow(a, a, b, b) for a, b in (((0.0, 0.0), (200.0, 0.0)), ((100.0, -100.0), (100.0, 8.0))))
    assert [(1, 0)] == [(gap.over, gap.under) for gap in gaps([long, short], [2, 2])]
    assert [(0, 1)] == [(gap.over, gap.under) for gap in gaps([short, long], [2, 2])]
