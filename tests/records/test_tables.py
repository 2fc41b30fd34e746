"""Tables saved as CSV: separators, quotes, decimal commas, units in the first row, places."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.diagnostics import ContentErrors
from generator.records.tables import Cell, Place, head, month, read_table, table


def texts(data: str | bytes) -> list[list[str]]:
    """All cells of a table, the first row included."""
    found = table(data if isinstance(data, bytes) else data.encode(), "t.csv")
    assert () == found.problems
    return [[one.cell.text for one in found.heads], *([cell.text for cell in row] for row in found.rows)]


def told(data: str | bytes) -> list[str]:
    found = table(data if isinstance(data, bytes) else data.encode(), "t.csv")
    return [f"{one.place.line}:{one.place.column} {one.expected} / {one.found}" for one in found.problems]


@pytest.mark.parametrize(
    "data",
    [
        "a,b c\n1,2\n", "a;b c\n1;2\n", "a\tb c\n1\t2\n", "a,b c\r\n1,2\r\n", "a,b c\r1,2", '"a","b c"\n"1","2"', " a , b  c \n 1 , 2 \n",
        "sep=;\na;b c\n1;2\n", "\ufeffa,b c\n1,2\n", "a,b c,,\n1,2,,\n,,,\n\n", "# from the weather office\na,b c\n# a note\n1,2\n",
    ],
)  # fmt: skip
def test_tables_of_all_spreadsheets_read_alike(data: str) -> None:
    assert [["a", "b c"], ["1", "2"]] == texts(data)


def test_quotes_hold_separators_line_breaks_and_quotes() -> None:
    assert [["a", "b"], ['say "no"', "1, 2"], ["two lines", ""]] == texts('a,b\n"say ""no""","1, 2"\n"two\nlines",\n')


def test_a_comma_is_no_separator_where_another_one_stands() -> None:
    assert [["a, b", "c"], ["1,5", "2,5"]] == texts("a, b;c\n1,5;2,5\n")


def test_the_separator_is_seen_below_a_title() -> None:
    assert "remove the 2 lines above them, or begin each with #" == table(b"Evora\n1981\nmonth;temp;rain\n1;1,5;3\n", "t.csv").problems[0].mend


def test_a_row_that_is_short_is_filled() -> None:
    assert [["a", "b", "c"], ["1", "", ""]] == texts("a,b,c\n1\n")


def test_places_count_lines_and_columns_as_the_file_has_them() -> None:
    found = table('a;b\n"x\ny"; 12\n;z\n'.encode(), "t.csv")
    assert [[(2, 2), (3, 5)], [(4, 1), (4, 2)]] == [[(c.place.line, c.place.column) for c in row] for row in found.rows]


@pytest.mark.parametrize(
    ("data", "cell", "expected"),
    [
        ("a\n12.50", "12.50", "12.50"), ("a;b\n12,5;1", "12,5", "12.5"), ('a,b\n"12,5",1', "12,5", "12.5"), ("a\n+5", "+5", "5"),
        ("a\n.5", ".5", "0.5"), ("a\n5.", "5.", "5"), ("a\n\u22123", "\u22123", "-3"), ("a\n007", "007", "7"), ("a\n1e3", "1e3", "1e3"),
        ("a;b\n1,234;x", "1,234", "1,234"), ("a;b\n1,234;0,5", "1,234", "1.234"), ("a;b\n0,250;x", "0,250", "0.250"),
        ("a\nwet", "wet", "wet"), ("a;b\n1.234,5;1", "1.234,5", "1.234,5"), ("a\n", "", ""),
    ],
)  # fmt: skip
def test_numbers_get_a_point_where_no_doubt_is_possible(data: str, cell: str, expected: str) -> None:
    assert expected == table(data.encode(), "t.csv").written(Cell(cell, Place("t.csv", 2, 1)))


@pytest.mark.parametrize(
    ("text", "name", "unit"),
    [
        ("temperature (degC)", "temperature", "degC"), ("Mean temperature [°F]", "mean_temperature", "°F"), ("rain", "rain", ""),
        ("N2 (air) (kg N/ha)", "n2_air", "kg N/ha"), ("( mm )", "", "mm"), ("rain (mm", "rain_mm", ""),
    ],
)  # fmt: skip
def test_a_head_is_a_name_and_a_unit_in_brackets(text: str, name: str, unit: str) -> None:
    found = head(Cell(text, Place("t.csv", 1, 1)))
    assert (name, unit) == (found.name, found.unit)


@pytest.mark.parametrize(
    ("text", "expected"), [("January", 0), ("JUN", 5), ("sept.", 8), ("12", 11), ("03", 2), ("0", None), ("ma", None), ("Total", None), ("", None)]
)
def test_months_by_name_and_number(text: str, expected: int | None) -> None:
    assert expected == month(text)


@pytest.mark.parametrize(
    ("data", "expected"),
    [
        ("", ["1:1 a first row with the columns' names / an empty file"]),
        ("\n\n,,\n", ["1:1 a first row with the columns' names / an empty file"]),
        ("a,b\n", ["1:1 rows below the columns' names / none"]),
        ("a,b,a\n1,2,3", ['1:5 columns of different names / "a" again']),
        ("a,b\n1,2,3\n4,5,,6", ['2:5 as many cells as the first row has, 2 / 3, the last of them "3"', '3:6 as many cells as the first row has, 2 / 4, the last of them "6"']),
        ("a,b\n1,{x}", ['2:3 text without braces / "{x}"']),
        (b"a,b\n1,\xb0", ["2:3 text saved as UTF-8 / a byte that is not (0xB0)"]),
        ("a,b\n1,2".encode("utf-16"), ["1:1 text saved as UTF-8 / UTF-16 or a file that is not text"]),
        ("Climate of Evora\nmonth,rain\n1,2\n", ['1:1 the columns\' names in the first row / "Climate of Evora" above them']),
        ("Evora, 1981\n\nPortugal\nmonth;temp;rain\n1;1,5;3\n", ['1:1 the columns\' names in the first row / "Evora, 1981" above them']),
        (b"PK\x03\x04rest", ["1:1 a table saved as text / a spreadsheet file"]),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_table_is_told_at_its_place(data: str | bytes, expected: list[str]) -> None:
    assert expected == told(data)


def test_a_file_in_which_nothing_can_be_read_raises(tmp_path: Path) -> None:
    (tmp_path / "e.csv").touch()
    with pytest.raises(ContentErrors):
        read_table(tmp_path / "e.csv", "e.csv")


def test_a_file_of_any_bytes_is_a_table_or_a_problem() -> None:
    for byte in range(256):
        found = table(b'month;a"' + bytes([byte]) + b'";"\n1;"2', "t.csv")
        assert found.rows or found.problems
