"""Arrows of food webs: bent where a box stands in the way, as wide as the share."""

from __future__ import annotations

import pytest

from figures import FeedingLink
from figures.drawing.food_web_arrows import THINNEST, Frame, arrows, shaft, touched

LOW, MIDDLE, HIGH = Frame(300, 500, 80, 50), Frame(300, 350, 80, 50), Frame(300, 200, 80, 50)
PASSING = FeedingLink(food="low", eater="high", share=None)


def test_arrow_bends_round_a_box_in_its_way() -> None:
    (straight,) = arrows([PASSING], {"low": LOW, "high": HIGH}, 0.0, 700.0)
    (bent,) = arrows([PASSING], {"low": LOW, "middle": MIDDLE, "high": HIGH}, 0.0, 700.0)
    assert (1, 0) == (touched(straight, [MIDDLE]), touched(bent, [MIDDLE]))


def test_arrow_that_bends_stays_on_the_canvas() -> None:
    """Free of the canvas' edge it bends to the right."""
    wide, narrow = (arrows([PASSING], {"low": LOW, "middle": MIDDLE, "high": HIGH}, 0.0, width)[0] for width in (700.0, 345.0))
    assert (True, True) == (wide.at(0.5)[0] > 340, narrow.at(0.5)[0] < 260)


def test_arrow_with_a_free_way_is_straight() -> None:
    (arrow,) = arrows([PASSING], {"low": LOW, "high": HIGH}, 0.0, 700.0)
    assert [300.0] * 11 == pytest.approx([arrow.at(share / 10)[0] for share in range(11)])
    assert (475, 225) == (arrow.start[1], arrow.end[1])


def test_arrows_at_one_side_keep_apart_in_the_order_of_their_goals() -> None:
    frames = {"low": LOW, "left": Frame(150, 300, 80, 50), "right": Frame(450, 300, 80, 50)}
    to_right, to_left = arrows([FeedingLink(food="low", eater=name, share=None) for name in ("right", "left")], frames, 0.0, 700.0)
    assert to_left.start[0] < to_right.start[0]


def test_cannibal_has_an_arrow_out_and_back() -> None:
    (arrow,) = arrows([FeedingLink(food="high", eater="high", share=None)], {"high": HIGH}, 0.0, 700.0)
    assert (340, 175) == (arrow.start[0], arrow.end[1])
    assert arrow.at(0.5)[0] > 340 and arrow.at(0.5)[1] < 200


def test_shaft_is_never_too_thin_to_see() -> None:
    assert (5.0, 2.5, THINNEST) == (shaft(1.0), shaft(0.5), shaft(0.001))
