"""Arrows of food webs: bent where a box stands in the way, as wide as the share."""

from __future__ import annotations

import pytest

from figures import FeedingLink
from figures.drawing.food_web_arrows import THINNEST, Frame, arrows, shaft, touched

LOW, MIDDLE, HIGH = Frame(300, 500, 80, 50), Frame(300, 350, 80, 50), Frame(300, 200, 80, 50)
PASSING = FeedingLink(food="low", eater="high", share=None)


def test_arrow_bends_round_a_box_in_its_way() -> None:
    (straight,) = arrows([PASSING], {"low": LOW, "high": HIGH})
    (bent,) = arrows([PASSING], {"low": LOW, "middle": MIDDLE, "high": HIGH})
    assert (1, 0) == (touched(straight, [MIDDLE]), touched(bent, [MIDDLE]))


def test_arrow_with_a_free_way_is_straight() -> None:
    (arrow,) = arrows([PASSING], {"low": LOW, "high": HIGH})
    assert [300.0] * 11 == pytest.approx([arrow.at(share / 10)[0] for share in range(11)])
    assert (475, 225) == (arrow.start[1], arrow.end[1])


def test_arrows_at_one_side_keep_apart_in_the_order_of_their_goals() -> None:
    frames = {"low": LOW, "left": Frame(150, 300, 80, 50), "right": Frame(450, 300, 80, 50)}
    to_right, to_left = arrows([FeedingLink(food="low", eater=name, share=None) for name in ("right", "left")], frames)
    assert to_left.start[0] < to_right.start[0]


def test_cannibal_has_an_arrow_out_and_back() -> None:
    (arrow,) = arrows([FeedingLink(food="high", eater="high", share=None)], {"high": HIGH})
    assert (340, 175) == (arrow.start[0], arrow.end[1])
    assert arrow.at(0.5)[0] > 340 and arrow.at(0.5)[1] < 200


def test_shaft_is_never_too_thin_to_see() -> None:
    assert (5.0, 2.5, THINNEST) == (shaft(1.0), shaft(0.5), shaft(0.001))
