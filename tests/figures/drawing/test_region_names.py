"""Places of region names: inside, beside, or a letter."""

from __future__ import annotations

from figures.drawing.region_names import line_forms, place_region_names

INSIDE = (0.0, 0.0, 600.0, 400.0)
WIDE = [(100, 100), (400, 100), (400, 300), (100, 300)]


def test_a_name_stands_in_the_middle_of_its_region():
    [name] = place_region_names(["Steppe"], [WIDE], 13, [], INSIDE)
    left, top, right, bottom = name.box
    assert (("Steppe",), None, "") == (name.lines, name.leader, name.letter)
    assert abs((left + right) / 2 - 250) < 5 and abs((top + bottom) / 2 - 200) < 5


def test_a_name_keeps_off_marks():
    mark = (190.0, 100.0, 390.0, 300.0)
    [name] = place_region_names(["Steppe"], [WIDE], 13, [mark], INSIDE)
    left, top, right, bottom = name.box
    assert 100 < left and right <= mark[0] and 100 < top and bottom < 300


def test_a_name_too_long_for_one_line_breaks():
    [name] = place_region_names(["Tropical seasonal forest/savanna"], [[(100, 100), (230, 100), (230, 300), (100, 300)]], 13, [], INSIDE)
    assert len(name.lines) > 1
    assert "" == name.letter


def test_a_region_too_small_is_named_beside_with_a_line_that_ends_in_it():
    small = [(300, 200), (320, 200), (320, 220), (300, 220)]
    [name] = place_region_names(["Tundra"], [small], 13, [], INSIDE)
    _, (x, y) = name.leader
    assert 300 < x < 320 and 200 < y < 220
    assert name.box[2] < 300 or name.box[0] > 320 or name.box[3] < 200 or name.box[1] > 220


def test_a_region_without_room_inside_or_beside_gets_a_letter():
    ring = [(0, 0), (600, 0), (600, 400), (0, 400)]
    small = [(300, 200), (322, 200), (322, 230), (300, 230)]
    _, name = place_region_names(["Sea", "Island of great length"], [ring, small], 13, [], INSIDE)
    assert (("A",), "A", None) == (name.lines, name.letter, name.leader)
    assert 300 < name.box[0] and name.box[2] < 322


def test_names_break_at_spaces_and_after_slashes_only():
    assert [("Woodland/shrubland",), ("Woodland/", "shrubland")] == line_forms("Woodland/shrubland", 12)
    assert [("Tundra",)] == line_forms("Tundra", 12)
    assert ("Boreal", "forest") in line_forms("Boreal forest", 12)
