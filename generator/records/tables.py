"""Tables saved by a spreadsheet as CSV: cells with their places, numbers with a decimal point or comma, units in the first row."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from generator.diagnostics import ContentErrors, Diagnostic, Place, listed
from generator.quantities.shown import MONTHS
from generator.records.field_path import FieldPath
from generator.records.numeral import plain_value, tidied
from generator.records.source import LARGEST_FILE, Source, as_it_stands
from generator.records.wording import excerpt

SEPARATORS = "\t;,"
"""In the order in which they are looked for: a comma may be a decimal sign where another separator stands."""
_SEPARATOR_LINE = re.compile(r"sep=([\t;,])[ ]*", re.IGNORECASE)
_HEAD = re.compile(r"(.*?)\s*[(\[]([^()\[\]]*)[)\]]", re.DOTALL)
_WITH_COMMA = re.compile(r"[-+]?\d+,\d+", re.ASCII)
_THOUSANDS = re.compile(r"[-+]?[1-9]\d{0,2},\d{3}", re.ASCII)
_NUMBER = re.compile(r"\+?(-?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)", re.ASCII)


@dataclass(frozen=True)
class Cell:
    """What stands between two separators, without white space around it."""

    text: str
    place: Place


@dataclass(frozen=True)
class Head:
    """The first cell of a column: what it holds, and in which unit."""

    name: str
    """In the spelling of ids: `mean_temperature`."""
    unit: str
    """What stands in brackets behind the name."""
    cell: Cell


@dataclass(frozen=True)
class Table:
    """A table whose first row names its columns."""

    file: str
    heads: tuple[Head, ...] = ()
    rows: tuple[tuple[Cell, ...], ...] = ()
    """Each as long as the first row; a cell that is not there is empty."""
    decimal_comma: bool = False
    """Whether some number can only be read with its comma as a decimal sign."""
    problems: tuple[Diagnostic, ...] = ()

    @property
    def place(self) -> Place:
        """Where the table begins."""
        return self.heads[0].cell.place if self.heads else Place(self.file, 1, 1)

    def column(self, *names: str) -> int | None:
        """The first column with one of the names."""
        return next((at for at, head in enumerate(self.heads) if head.name in names), None)

    def written(self, cell: Cell) -> str:
        """The cell's number as records write it, with a point; any other text as it is.

        `1,234` may mean either: it is a number only where the table has another decimal comma.
        """
        text = cell.text.replace("\u2212", "-")
        if _WITH_COMMA.fullmatch(text) and (self.decimal_comma or not _THOUSANDS.fullmatch(text)):
            text = text.replace(",", ".")
        number = _NUMBER.fullmatch(text)
        return tidied(number[1].removesuffix(".")) if number else cell.text


@dataclass(frozen=True, kw_only=True)
class Imported:
    """What a kind makes of a table."""

    fields: Mapping[str, Any]
    """What the kind's `new.yaml.j2` knows as `table`; empty where the table gives too little to make a record of."""
    cells: Mapping[FieldPath, Cell] = field(default_factory=dict)
    """Where in the table each value of the record to come stands, so that a problem of the value is told there."""
    told: frozenset[FieldPath] = frozenset()
    """Values of the record to come that one of the problems already stands for."""
    notes: tuple[str, ...] = ()
    """What was read, how it was understood, and what was left out."""
    next: tuple[str, ...] = ()
    """What the author has to see to."""
    problems: tuple[Diagnostic, ...] = ()


def read_table(path: Path, name: str) -> Table:
    """The table in a file, called `name` in every message.

    Raises
    ------
    ContentErrors
        If nothing can be read: not a text file, or an empty one.
    """
    with path.open("rb") as file:
        data = file.read(LARGEST_FILE + 1)
    read = table(data, name)
    if not read.heads:
        raise ContentErrors(read.problems)
    return read


def table(data: bytes, name: str) -> Table:
    """The bytes of a file as a table; empty where nothing can be read, and then with the reason."""
    if data.startswith(b"PK\x03\x04"):
        mend = "in the spreadsheet, save the sheet as CSV (UTF-8)"
        return Table(name, problems=(Diagnostic(Place(name, 1, 1), "", "a table saved as text", "a spreadsheet file", mend),))
    source = as_it_stands(data, name)
    if source.problems:
        return Table(name, problems=source.problems)
    start, separator = _separator(source.text)
    rows = [row for row in _rows(source, start, separator) if any(cell.text for cell in row) and not row[0].text.startswith("#")]
    if not rows:
        expected, mend = "a first row with the columns' names", "write the table into it"
        return Table(name, problems=(source.problem(0, expected, "an empty file", mend),))
    if above := _above_the_heads(rows):
        return Table(name, problems=(above,))
    heads = tuple(map(head, _without_empty_end(rows[0])))
    problems = list(_repeated(heads))
    for row in rows[1:]:
        problems += _too_long(row, heads, separator)
    cells = [cell for row in rows for cell in row]
    problems += [_braces(cell) for cell in cells if "{" in cell.text or "}" in cell.text]
    body = tuple(_as_long(row, len(heads)) for row in rows[1:])
    if not body:
        problems.append(Diagnostic(heads[0].cell.place, "", "rows below the columns' names", "none", "write the numbers below"))
    comma = any(_WITH_COMMA.fullmatch(cell.text) and not _THOUSANDS.fullmatch(cell.text) for cell in cells)
    return Table(name, heads, body, comma, tuple(problems))


def head(cell: Cell) -> Head:
    """A cell that names a series, with its unit in round or square brackets: `Mean temperature [degF]`."""
    found = _HEAD.fullmatch(cell.text)
    words, unit = (found[1], found[2].strip()) if found else (cell.text, "")
    return Head(id_of(words), unit, cell)


def id_of(text: str) -> str:
    """Words in the spelling of ids.

    >>> id_of("Soil organic matter"), id_of("N2 (air)")
    ('soil_organic_matter', 'n2_air')
    """
    return re.sub(r"[^a-z0-9]+", "_", text.lower()).strip("_")


def id_of_row(name: str, word: str, at: int) -> str:
    """The id of what a row or a label names; a name that begins with no letter of ours gets a word before it.

    >>> id_of_row("East Farm", "station", 0), id_of_row("2nd floor", "station", 0), id_of_row("東", "station", 0)
    ('east_farm', 'station_2nd_floor', 'station_1')
    """
    found = id_of(name)
    return found if found[:1].isalpha() else f"{word}_{found or at + 1}"


def month(text: str) -> int | None:
    """The month from 0 to 11 that a name, the first three letters of one or more, or a number from 1 to 12 means.

    >>> month("Jan"), month("sept."), month("12"), month("13"), month("Ma")
    (0, 8, 11, None, None)
    """
    word = text.strip().rstrip(".").lower()
    if re.fullmatch(r"0?[1-9]|1[0-2]", word, re.ASCII):
        return int(word) - 1
    near = [at for at, name in enumerate(MONTHS) if len(word) >= 3 and name.lower().startswith(word)]
    return near[0] if near else None


def problem(cell: Cell, name: str, expected: str, mend: str, found: str = "") -> Diagnostic:
    """What is wrong with a cell."""
    return Diagnostic(cell.place, name, expected, found or found_in(cell), mend)


def found_in(cell: Cell) -> str:
    """A cell's content in a message."""
    return f'"{excerpt(cell.text)}"' if cell.text else "an empty cell"


def left_out(heads: Iterable[Head], kind: str) -> tuple[str, ...]:
    """A note on every column that a kind has no place for."""
    return tuple(
        f'{one.cell.place}: the column "{excerpt(one.cell.text)}" was left out: a {kind} record has no place for it'
        for one in heads
        if one.cell.text
    )


def read_from(table: Table, columns: Iterable[int]) -> str:
    """A note on the columns that were read."""
    names = listed((found_in(table.heads[at].cell) for at in sorted(set(columns))), "and")
    return f"{table.file}: read {names} from {len(table.rows)} {'row' if len(table.rows) == 1 else 'rows'}."


def is_number(text: str) -> bool:
    """Whether a text is a number as records write it."""
    value = plain_value(text)
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def _separator(text: str) -> tuple[int, str]:
    """Where the table begins, and what separates its cells."""
    told = _SEPARATOR_LINE.match(text)
    if told and text[told.end() : told.end() + 1] in ("\r", "\n"):
        return told.end(), told[1]
    lines = [line for line in text.splitlines() if line.strip() and not line.startswith("#")]
    first, *others = [re.sub(r'"[^"]*"', "", line) for line in lines] or [""]
    others = [line for line in others if any(sign in line for sign in SEPARATORS)]
    below = [sign for sign in SEPARATORS if others and all(sign in line for line in others)]
    return 0, next((sign for sign in SEPARATORS if sign in first or sign in below), ",")


def _rows(source: Source, start: int, separator: str) -> Iterator[list[Cell]]:
    """The cells of each line; a cell in quotes may hold separators, line breaks, and quotes written twice."""
    part = re.compile(rf'[ ]*"((?:[^"]|"")*)"[ ]*(?=[{separator}\r\n]|\Z)|([^{separator}\r\n]*)')
    text, at, row = source.text, start, list[Cell]()
    while at < len(text):
        found = part.match(text, at)
        quoted = found[1] is not None
        inner = found[1].replace('""', '"') if quoted else found[2]
        begin = found.start(1) if quoted else found.start(2)
        begin += len(inner) - len(inner.lstrip()) if not quoted else 0
        row.append(Cell(" ".join(inner.split()), source.place(begin if inner.strip() else found.start())))
        at = found.end()
        if text[at : at + 1] == separator:
            at += 1
            if at == len(text):
                row.append(Cell("", source.place(at)))
            continue
        at += 2 if text.startswith("\r\n", at) else 1
        yield row
        row = []
    if row:
        yield row


def _above_the_heads(rows: list[list[Cell]]) -> Diagnostic | None:
    """What is wrong where titles stand above the columns' names: rows that are shorter than one without numbers below them."""
    filled = [[cell for cell in row if cell.text] for row in rows]
    longer = (at for at in range(1, len(filled)) if len(filled[at]) > len(filled[0]))
    titles = next(longer, 0)
    if not titles or any(_NUMBER.fullmatch(cell.text) or _WITH_COMMA.fullmatch(cell.text) for cell in filled[titles]):
        return None
    mend = "remove the line, or begin it with #" if titles == 1 else f"remove the {titles} lines above them, or begin each with #"
    return problem(filled[0][0], "", "the columns' names in the first row", mend, f"{found_in(filled[0][0])} above them")


def _without_empty_end(row: list[Cell]) -> list[Cell]:
    while row and not row[-1].text:
        row = row[:-1]
    return row


def _as_long(row: list[Cell], length: int) -> tuple[Cell, ...]:
    return tuple([*row, *(Cell("", row[-1].place) for _ in range(length - len(row)))][:length])


def _repeated(heads: tuple[Head, ...]) -> Iterator[Diagnostic]:
    seen: set[str] = set()
    for one in heads:
        if one.name and one.name in seen:
            yield problem(one.cell, "", "columns of different names", "rename or remove one", f"{found_in(one.cell)} again")
        seen.add(one.name)


def _too_long(row: list[Cell], heads: tuple[Head, ...], separator: str) -> Iterator[Diagnostic]:
    if more := [cell for cell in row[len(heads) :] if cell.text]:
        mend = "name the columns in the first row, or remove the cell"
        if separator == ",":
            mend = "put a number with a decimal comma in quotes, or save the table with semicolons between cells"
        yield problem(more[0], "", f"as many cells as the first row has, {len(heads)}", mend, f"{len(row)}, the last of them {found_in(row[-1])}")


def _braces(cell: Cell) -> Diagnostic:
    return problem(cell, "", "text without braces", "remove them: in a record, braces stand around the id of a fact")
