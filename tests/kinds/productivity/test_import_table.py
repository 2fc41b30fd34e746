"""Tables of readings as records: replicates gathered by bottle and depth, or by plot and day; what is wrong told at its cell."""

from __future__ import annotations

from typing import Any

import pytest

from generator.course.new_record import draft
from generator.diagnostics import ContentErrors
from generator.kinds import all_kinds
from generator.records.located import located
from generator.records.tables import table

LONG = """\
depth (m);bottle;oxygen (mg/L);incubation (h);light hours
0;initial;9,38;12;15
0;initial;9,44;12;15
0;light;9,82;12;15
0;dark;9,19;12;15
4,5;start;9,3;12;15
4,5;Light bottle;9,6;12;15
4,5;dark;9,1;12;15
"""
WIDE = "depth (m),bottle,oxygen 1 (mg/L),oxygen 2 (mg/L),incubation (min),light hours\n0,initial,8.0,8.2,240,10\n0,light,9.0,9.4,240,10\n0,dark,7.4,,240,10\n"
CUTS = """\
plot,harvest,day,dry mass (g),quadrat area (cm2)
Under nets,1 May,0,9.8,2500
Under nets,1 May,0,11.4,2500
Open ground,1 May,0,10.9,2500
Under nets,20 July,80,55.1,2500
Under nets,20 July,80,47.6,2500
Open ground,20 July,80,39.0,2500
"""


def values(text: str) -> dict[str, Any]:
    """What the record drafted from a table says."""
    found = located(draft(all_kinds()["productivity"], "A title", table(text.encode(), "t.csv"))[0].encode(), "r.yaml").value
    assert isinstance(found, dict)
    return found


def told(text: str) -> list[str]:
    """What is wrong with a table: line, column, what was expected, what was found."""
    with pytest.raises(ContentErrors) as raised:
        values(text)
    assert {"t.csv"} == {one.place.file for one in raised.value.diagnostics}
    assert all(one.mend for one in raised.value.diagnostics)
    return [f"{one.place.line}:{one.place.column} {one.expected} / {one.found}" for one in raised.value.diagnostics]


def test_a_row_a_reading_becomes_lists_of_replicates() -> None:
    found = values(LONG)
    assert {
        "incubation": 12, "light_hours": 15,
        "depths": [
            {"id": "at_0_m", "depth": 0, "initial": [9.38, 9.44], "light": [9.82], "dark": [9.19]},
            {"id": "at_4_5_m", "depth": 4.5, "initial": [9.3], "light": [9.6], "dark": [9.1]},
        ],
    } == found["bottles"]  # fmt: skip
    assert ("measured", False, False) == (found["data"], "harvest" in found, "units" in found)


def test_replicates_may_stand_side_by_side_and_the_time_be_in_minutes() -> None:
    found = values(WIDE)
    assert {"units": {"incubation": "min"}, "bottles": {
        "incubation": 240, "light_hours": 10,
        "depths": [{"id": "at_0_m", "depth": 0, "initial": [8.0, 8.2], "light": [9.0, 9.4], "dark": [7.4]}],
    }}.items() <= found.items()  # fmt: skip


def test_dry_masses_become_plots_with_their_harvests() -> None:
    found = values(CUTS)
    assert {"quadrat_area": "cm2"} == found["units"]
    assert {
        "quadrat_area": 2500,
        "plots": [
            {"id": "under_nets", "name": "Under nets", "harvests": [
                {"id": "day_0", "name": "1 May", "day": 0, "dry_mass": [9.8, 11.4]}, {"id": "day_80", "name": "20 July", "day": 80, "dry_mass": [55.1, 47.6]},
            ]},
            {"id": "open_ground", "name": "Open ground", "harvests": [
                {"id": "day_0", "name": "1 May", "day": 0, "dry_mass": [10.9]}, {"id": "day_80", "name": "20 July", "day": 80, "dry_mass": [39.0]},
            ]},
        ],
    } == found["harvest"]  # fmt: skip


def test_a_table_without_plots_is_one_plot() -> None:
    (plot,) = values("day,mass (g),quadrat area (m2)\n0,12,0.25\n60,50,0.25\n")["harvest"]["plots"]
    assert ("the_plot", ["day_0", "day_60"]) == (plot["id"], [cut["id"] for cut in plot["harvests"]])


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("9,82", "much", '4:9 a number / the text "much"'), ("0;light;", "0;green;", '4:3 initial, light or dark / "green"'),
        ("0;dark;9,19;12;15\n", "", "2:1 a reading of the dark bottles at 0 / none"), ("oxygen (mg/L)", "oxygen (ml/L)", '1:18 readings in mg/L / "oxygen (ml/L)"'),
        ("incubation (h)", "incubation", '1:32 one of the units h, min, d in brackets / "incubation"'), ("light hours", "sun", "1:1 a column light hours / none"),
        ("9,19;12;15", "9,19;13;15", '5:13 12 in every row / "13"'), ("\n4,5;start", "\n0;start", "7:1 a reading of the initial bottles at 4.5 / none"),
        ("9,38", "94", "2:11 0 to 60 mg/L / 94"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_bottles_is_told_at_its_cell(old: str, new: str, expected: str) -> None:
    assert expected in told(LONG.replace(old, new, 1))


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("55.1", "-3", "5:23 0 to 100000 g / -3"), ("dry mass (g)", "dry mass (kg)", '1:18 readings in g / "dry mass (kg)"'),
        ("quadrat area (cm2)", "size", "1:1 a column quadrat area (m2) / none"), ("Under nets,20 July,80,55.1", "Under nets,20 July,x,55.1", '5:20 a number / the text "x"'),
        ("Open ground,20 July,80,39.0,2500\n", "", "4:19 two harvests or more / one"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_harvests_is_told_at_its_cell(old: str, new: str, expected: str) -> None:
    assert expected in told(CUTS.replace(old, new, 1))


def test_depths_out_of_order_are_told_at_the_later_one() -> None:
    assert ["6:1 a depth below 9 m / 4.5 m"] == told(LONG.replace("\n0;", "\n9;"))


def test_a_missing_bottle_is_told_once() -> None:
    assert ["2:1 a reading of the dark bottles at 0 / none"] == told(LONG.replace("0;dark;9,19;12;15\n", ""))


def test_one_depth_may_be_written_in_two_ways() -> None:
    assert ["at_0_m", "at_4_5_m"] == [depth["id"] for depth in values(LONG.replace("0;dark", "0,0;dark"))["bottles"]["depths"]]


def test_what_has_no_place_is_left_out_and_said() -> None:
    _, notes = draft(all_kinds()["productivity"], "A title", table(WIDE.replace("light hours", "light hours,weather").replace(",10\n", ",10,sun\n").encode(), "t.csv"))
    assert any('the column "weather" was left out' in note for note in notes)
    assert any("cautions" in note for note in notes)
