"""A table of stations becomes a transect; what is missing or cannot be used is told at its cell."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from generator.course.new_record import create, draft
from generator.diagnostics import ContentErrors
from generator.kinds import all_kinds
from generator.records.located import located
from generator.records.tables import read_table
from tests.kinds.small_records import kind

HEAD = "station;distance (km);elevation (m);mean temperature (°C);rain (mm)\n"
ROWS = "West Shore;0;10;10,4;1450\nHigh Gap;38;1640;1,2;2100\nEast Farm;85;260;9,8;480\n"


def written(tmp_path: Path, text: str) -> Any:
    path = tmp_path / "t.csv"
    path.write_text(text, "utf-8")
    return draft(kind("transect"), "A title", read_table(path, "t.csv"))


def told(tmp_path: Path, text: str) -> list[str]:
    with pytest.raises(ContentErrors) as caught:
        written(tmp_path, text)
    return [str(problem) for problem in caught.value.diagnostics]


def test_rows_become_stations_in_their_order(tmp_path: Path) -> None:
    text, notes = written(tmp_path, HEAD + ROWS)
    value = located(text.encode(), "r.yaml").value
    assert {"distance": "km", "height": "m", "temperature": "degC", "precipitation": "mm"} == value["units"]
    assert [("west_shore", 10.4, 10), ("high_gap", 1.2, 1640), ("east_farm", 9.8, 260)] == [(s["id"], s["annual_mean_temp"], s["height"]) for s in value["stations"]]
    assert any("order along the line" in note for note in notes)


def test_record_made_from_a_table_passes_the_check(tmp_path: Path) -> None:
    source, content = tmp_path / "t.csv", tmp_path / "content"
    source.write_text(HEAD + ROWS, "utf-8")
    (content / "transect").mkdir(parents=True)
    created = create(content, all_kinds(), "transect", "from_table", source=(source, "t.csv"))
    assert "transect/from_table" == created.id


def test_missing_columns_and_units_are_told_at_once(tmp_path: Path) -> None:
    problems = " ".join(told(tmp_path, "station;distance;height (m)\nA;0;5\nB;4;900\n"))
    assert "annual_mean_temp" in problems and "km or m" in problems


def test_contradiction_of_the_record_is_told_at_its_cell(tmp_path: Path) -> None:
    (problem,) = told(tmp_path, HEAD + "A;0;5;10;900\nB;40;900;3;1200\nC;30;100;9;400\n")
    assert problem.startswith("t.csv:4:3")
