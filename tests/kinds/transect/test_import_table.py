"""A table of stations becomes a transect; what is missing or cannot be used is told at its cell."""

from __future__ import annotations

from tests.course.test_new_record import content, made, notes, told, values

__all__ = ["content"]  # a fixture
HEAD = "station;distance (km);elevation (m);mean temperature (°C);rain (mm)\n"
ROWS = "West Shore;0;10;10,4;1450\nHigh Gap;38;1640;1,2;2100\nEast Farm;85;260;9,8;480\n"


def test_rows_become_stations_in_their_order() -> None:
    value = values("transect", HEAD + ROWS)
    assert {"distance": "km", "height": "m", "temperature": "degC", "precipitation": "mm"} == value["units"]
    assert [("west_shore", 10.4, 10), ("high_gap", 1.2, 1640), ("east_farm", 9.8, 260)] == [(s["id"], s["annual_mean_temp"], s["height"]) for s in value["stations"]]
    assert any("order along the line" in note for note in notes("transect", HEAD + ROWS))


def test_record_made_from_a_table_passes_the_check(content) -> None:
    source = content.parent / "t.csv"
    source.write_text(HEAD + ROWS, "utf-8")
    assert "transect/from_table" == made(content, "transect", "from_table", source=(source, "t.csv")).id


def test_missing_columns_and_units_are_told_at_once() -> None:
    expected = ["1:1  / none", '1:9 distance / "distance"']
    assert expected == told("transect", "station;distance;height (m)\nA;0;5\nB;4;900\n")


def test_contradiction_of_the_record_is_told_at_its_cell() -> None:
    assert ["4:3 stations[2].distance / 30"] == told("transect", HEAD + "A;0;5;10;900\nB;40;900;3;1200\nC;30;100;9;400\n")
