"""Which flux diagrams are said to be crowded, and in which words."""

from __future__ import annotations

from figures.flux_diagram import crowded
from tests.figures.specimens import WEND_HOLLOW, flux_diagram


def reservoirs(count: int, at=lambda number: None) -> list[tuple]:
    return [(f"R{number}", "1 kg", False, at(number)) for number in range(count)]


def test_the_wend_hollow_is_not_crowded():
    assert crowded(WEND_HOLLOW) is None


def test_too_many_reservoirs_are_told():
    assert "9 reservoirs stand in one drawing; more than 8 are hard to follow" == crowded(flux_diagram("x", reservoirs(9), []))
    assert crowded(flux_diagram("x", reservoirs(8), [])) is None


def test_too_many_arrows_are_told():
    arrows = [(f"R{n % 6}", f"R{(n + 1 + n // 6) % 6}", 1, "flow", False) for n in range(19)]
    assert "19 arrows stand in one drawing; more than 18 are hard to tell apart" == crowded(flux_diagram("x", reservoirs(6), arrows))


def test_too_many_arrows_at_one_box_are_told_with_its_name():
    arrows = [("R0", f"R{n % 3 + 1}", 1, "flow", False) for n in range(9)]
    assert "9 arrows meet at R0; more than 8 do not find room around one box" == crowded(flux_diagram("x", reservoirs(4), arrows))


def test_too_many_arrows_between_two_boxes_are_told_whatever_their_direction():
    arrows = [("R0", "R1", 1, "flow", False)] * 2 + [("R1", "R0", 1, "flow", False)] * 2
    assert "4 arrows join R0 and R1; more than 3 lie too close" == crowded(flux_diagram("x", reservoirs(2), arrows))


def test_many_arrows_to_an_end_outside_are_fine_because_it_is_drawn_more_than_once():
    arrows = [("R0", "air", 1, "flow", False)] * 5
    assert crowded(flux_diagram("x", [*reservoirs(1), ("air", "", True, None)], arrows)) is None


def test_places_on_top_of_each_other_are_told():
    told = crowded(flux_diagram("x", reservoirs(2, at=lambda n: (0.3 * n, 0.0)), []))
    assert "the places of R0 and R1 are so near that the boxes would touch" == told


def test_too_many_columns_are_told():
    told = crowded(flux_diagram("x", reservoirs(5, at=lambda n: (float(n), 0.0)), []))
    assert "the places span 5 columns; more than 4 leave no room for labels" == told
