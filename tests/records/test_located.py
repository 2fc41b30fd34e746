"""Reading YAML with places."""

from __future__ import annotations

import time
from dataclasses import fields
from pathlib import Path

import pytest

from generator.diagnostics import Place
from generator.records.located import Located, located, read
from generator.records.numeral import WrittenFloat, WrittenInt

SMALL = b"""\
# a note
title: Harrow Plain
stations:
  - id: harrow_plain
    rain: [12, 12.50]
  - {id: ebb, rain: }
"""


def small() -> Located:
    return located(SMALL, "small.yaml")


def messages(data: bytes, parser: type) -> list[str]:
    return [str(one) for one in located(data, "f", parser).problems]


def test_values_come_as_plain_lists_and_dicts(parser: type) -> None:
    expected = {
        "title": "Harrow Plain",
        "stations": [{"id": "harrow_plain", "rain": [12, 12.5]}, {"id": "ebb", "rain": None}],
    }
    assert expected == located(SMALL, "f", parser).value


@pytest.mark.parametrize(
    ("path", "line", "column"),
    [
        ((), 2, 1),
        (("title",), 2, 8),
        (("stations",), 4, 3),
        (("stations", 0), 4, 5),
        (("stations", 0, "rain"), 5, 11),
        (("stations", 0, "rain", 1), 5, 16),
        (("stations", 1), 6, 5),
        (("stations", 1, "rain"), 6, 20),
    ],
)
def test_every_value_has_its_place(path: tuple[str | int, ...], line: int, column: int, parser: type) -> None:
    assert Place("f", line, column) == located(SMALL, "f", parser).place(path)


def test_field_name_has_its_own_place() -> None:
    assert Place("small.yaml", 5, 5) == small().key_place(("stations", 0, "rain"))


def test_item_of_a_list_has_no_name_so_its_value_is_pointed_at() -> None:
    assert Place("small.yaml", 5, 16) == small().key_place(("stations", 0, "rain", 1))


def test_missing_value_is_placed_at_its_nearest_known_ancestor() -> None:
    assert Place("small.yaml", 6, 5) == small().place(("stations", 1, "position", "latitude"))


def test_plain_numbers_remember_how_they_were_written() -> None:
    whole, decimal = small().at(("stations", 0, "rain"))
    assert (WrittenInt, "12", WrittenFloat, "12.50") == (type(whole), whole.text, type(decimal), decimal.text)


def test_surprises_of_yaml_1_1_read_as_a_teacher_means_them(parser: type) -> None:
    """Only true, false, null, ~ and plain numbers are anything but text."""
    words = [
        "NO",
        "yes",
        "on",
        "12:30",
        "010",
        "0x1F",
        "1_000",
        "2024-01-02",
        "<<",
        "=",
        ".5",
        "+5",
        ".inf",
        "NaN",
        "True",
    ]
    value = located(f"a: [{', '.join(words)}]\nb: [true, null, ~, 1e3]".encode(), "f", parser).value
    assert (words, [True, None, None, 1000.0]) == (value["a"], value["b"])


def test_number_of_thousands_of_digits_stays_text(parser: type) -> None:
    """Neither an infinite number nor a complaint of the language about too many digits."""
    value = located(b"a: " + b"9" * 5000 + b"\nb: 1e999\nc: 0." + b"1" * 5000, "f", parser).value
    assert [str, str, str] == [type(one) for one in value.values()]


def test_byte_order_mark_and_windows_line_ends_leave_places_right(parser: type) -> None:
    file = located(b"\xef\xbb\xbftitle: Sea\r\nsummary: It is deep.\r\n", "f", parser)
    assert ({"title": "Sea", "summary": "It is deep."}, ()) == (file.value, file.problems)
    assert (Place("f", 1, 8), Place("f", 2, 10)) == (file.place(("title",)), file.place(("summary",)))


def test_tab_that_does_not_indent_is_a_space(parser: type) -> None:
    file = located(b"title:\tSea\t# note\nsummary: It\tis\n", "f", parser)
    assert ({"title": "Sea", "summary": "It is"}, ()) == (file.value, file.problems)


def test_alias_bomb_is_refused_at_each_reference_and_never_grows(parser: type) -> None:
    bomb = b"a: &a [x, x, x]\n" + b"".join(
        b"%c: &%c [*%c, *%c, *%c]\n" % (n, n, n - 1, n - 1, n - 1) for n in b"bcdefghi"
    )
    file = located(bomb, "f", parser)
    assert 9 + 8 * 3 == len(file.problems)
    assert [None, None, None] == file.value["i"]


def test_deep_nesting_is_refused_at_once(parser: type) -> None:
    begin = time.perf_counter()
    problems = messages(b"a: " + b"[" * 5000, parser)
    assert ["f:1:23: a: expected at most 20 levels, found more\n    mend: put text with brackets in quotes"] == problems
    assert time.perf_counter() - begin < 1


def test_file_with_too_many_values_is_refused(parser: type) -> None:
    problem = located(b"a: [" + b"1," * 30_000 + b"]", "f", parser).problems[0]
    assert "at most 20000 values in a file" == problem.expected


def test_file_that_is_too_long_is_refused_unread(tmp_path: Path) -> None:
    path = tmp_path / "long.yaml"
    path.write_bytes(b"a: " + b"x" * 500_000)
    file = read(path, "long.yaml")
    assert (None, "a file of at most 400 kB") == (file.value, file.problems[0].expected)


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-16-be", "utf-32"])
def test_other_unicode_encodings_are_told_in_one_line(encoding: str, parser: type) -> None:
    file = located("title: Temperate grassland\n".encode(encoding), "f", parser)
    assert (None, ["text saved as UTF-8"]) == (file.value, [one.expected for one in file.problems])


def test_every_line_in_another_encoding_is_told(parser: type) -> None:
    file = located("title: Größe\nlevel: core\nsummary: Höhe\n".encode("latin-1"), "f", parser)
    assert [Place("f", 1, 10), Place("f", 3, 11)] == [one.place for one in file.problems]


def test_wrong_bytes_in_very_many_lines_are_counted_not_listed(parser: type) -> None:
    problems = located(b"\xff\n" * 500, "f", parser).problems
    assert [True] == [one.found.endswith("and the same in 490 more lines") for one in problems if "more" in one.found]


def test_a_wrong_line_costs_only_its_own_field(parser: type) -> None:
    """The rest of the file is read, and what was set aside is not told again as missing."""
    file = located(b"title: 'Sea\nsummary: It is deep.\nlevel: @core\ndata: invented\n", "f", parser)
    assert ("It is deep.", "invented") == (file.value["summary"], file.value["data"])
    assert (True, True, False) == (file.is_unread(("title",)), file.is_unread(("level",)), file.is_unread(("data",)))


def test_first_of_two_equal_fields_counts(parser: type) -> None:
    assert {"a": 1} == located(b"a: 1\na: [2, {b: 3}]\n", "f", parser).value


def test_second_document_is_told_and_not_read(parser: type) -> None:
    file = located(b"a: 1\n---\na: [2]\n", "f", parser)
    assert ({"a": 1}, [Place("f", 2, 1)]) == (file.value, [one.place for one in file.problems])


def test_both_parsers_give_the_same_values_and_places(good_records: dict[str, bytes], parser: type) -> None:
    for name, data in good_records.items():
        quick, file = located(data, name), located(data, name, parser)
        assert {one.name: getattr(quick, one.name) for one in fields(Located)} == {one.name: getattr(file, one.name) for one in fields(Located)}
        assert () == file.problems


def test_file_is_read_anew_only_where_it_has_changed(tmp_path: Path) -> None:
    file = tmp_path / "soil.yaml"
    file.write_text("title: Soil\n")
    first = read(file, "content/soil.yaml")
    file.write_bytes(file.read_bytes())
    assert first is read(file, "content/soil.yaml")
    assert first is not read(file, "elsewhere/soil.yaml")
    file.write_text("title: Soils\n")
    assert {"title": "Soils"} == read(file, "content/soil.yaml").value


def test_missing_file_is_told_not_raised(tmp_path: Path) -> None:
    file = read(tmp_path / "none.yaml", "content/none.yaml")
    assert ["content/none.yaml:1:1: expected a file, found none that can be opened\n    mend: rename or remove it"] == [
        str(one) for one in file.problems
    ]


def test_folder_in_place_of_a_file_is_told_not_raised(tmp_path: Path) -> None:
    assert "a folder" == read(tmp_path, "x.yaml").problems[0].found


def test_a_thousand_records_are_read_in_a_few_seconds(good_records: dict[str, bytes]) -> None:
    """Measured at about a millisecond each; the bound leaves room for a busy machine."""
    begin = time.perf_counter()
    for _ in range(100):
        located(good_records["sill_lake"], "f")
    assert time.perf_counter() - begin < 3


FOLDED = b"""\
a: plain text of
   {one.fact} in two lines
b: 'It''s {two.facts}, it''s {two.facts}'
c: >-
  Folded text

  with {three.facts}
    indented more
d: "quoted \\u00e9 \\"x\\" \\
   on {four.facts}"
e: |  # note {five.facts}
  literal
  {five.facts}
"""


@pytest.mark.parametrize(
    ("name", "fragment", "line", "column"),
    [
        ("a", "{one.fact}", 2, 4),
        ("b", "{two.facts}", 3, 11),
        ("c", "{three.facts}", 7, 8),
        ("c", "indented", 8, 5),
        ("d", "{four.facts}", 10, 7),
        ("e", "{five.facts}", 13, 3),
    ],
)
def test_piece_of_a_text_has_its_place(name: str, fragment: str, line: int, column: int, parser: type) -> None:
    assert Place("f", line, column) == located(FOLDED, "f", parser).place_in_text((name,), fragment)


def test_later_occurrence_of_a_piece_is_found_behind_a_position() -> None:
    file = located(FOLDED, "f")
    after = file.value["b"].index("{two.facts}") + 1
    assert Place("f", 3, 30) == file.place_in_text(("b",), "{two.facts}", after)


def test_piece_that_is_not_there_is_placed_at_the_text() -> None:
    assert Place("f", 1, 4) == located(FOLDED, "f").place_in_text(("a",), "{no.fact}")


def test_piece_of_a_value_that_is_no_text_is_placed_at_the_value() -> None:
    assert Place("small.yaml", 5, 12) == small().place_in_text(("stations", 0, "rain", 0), "12")
