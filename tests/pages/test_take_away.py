"""Charts to take away: tables that a spreadsheet reads as numbers, drawings that stand by themselves on white."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import pytest

from figures import DataTable
from figures.palette import LIGHT
from figures.svg import read_svg
from generator.pages.take_away import drawing_file, table_file
from tests.figures.drawn import drawn
from tests.figures.specimens import CLIMATES

CHART = CLIMATES[0]
ORIGIN = "A course, biome/steppe.html. The numbers are invented."


def rows(*cells: str) -> list[list[str]]:
    table = DataTable(caption="Caption", columns=tuple(f"c{n}, °C" for n in range(len(cells))), rows=(cells,))
    return list(csv.reader(io.StringIO(table_file(replace(CHART, table=table), ORIGIN).decode("utf-8-sig"))))


def test_a_table_begins_with_its_heads_and_ends_with_caption_and_origin():
    found = list(csv.reader(io.StringIO(table_file(CHART, ORIGIN).decode("utf-8-sig"))))
    assert list(CHART.table.columns) == found[0]
    assert len(CHART.table.rows) == len(found[1:-3])
    assert [[], [CHART.table.caption], [ORIGIN]] == found[-3:]


def test_a_table_says_by_its_first_bytes_that_it_is_utf_8():
    assert table_file(CHART, ORIGIN).startswith(b"\xef\xbb\xbf")


@pytest.mark.parametrize("shown, read", [("−9.0", "-9.0"), ("12\u202f500", "12500"), ("12 500.5", "12500.5"), ("0", "0")])
def test_numbers_are_read_as_numbers(shown: str, read: str):
    assert read == rows("Jan", shown)[1][1]
    assert float(read) is not None


@pytest.mark.parametrize("shown", ["12 to 24", "4\u202f800 kg", "a, b", 'say "x"', "1 2"])
def test_other_cells_stay_as_they_are(shown: str):
    assert shown == rows("Jan", shown)[1][1]


@pytest.mark.parametrize("shown", ["=1+1", "@x", "+x", "-x"])
def test_no_cell_runs_as_a_formula(shown: str):
    assert f"'{shown}" == rows("Jan", shown)[1][1]


def test_a_drawing_is_named_described_and_white_and_needs_no_page():
    chart = replace(CHART, title="A < B", description="Rain & sun.")
    text = drawing_file(chart, drawn(CHART), ORIGIN).decode()
    root = read_svg(text)
    assert ["A < B", f"Rain & sun. {ORIGIN}"] == [root[0].text, root[1].text]
    assert "#ffffff" in text
    assert LIGHT["ground"] not in text and "var(" not in text
