"""A new record: a commented file that builds as it is, from the kind's `new.yaml.j2`, with the numbers of a table if there is one."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from generator.course.library import RESERVED, load_subject
from generator.course.template import rendered
from generator.diagnostics import ContentErrors, Diagnostic, Place, did_you_mean, has_errors, in_order, listed
from generator.kind import Kind
from generator.records import Located, RecordFile, located_finding
from generator.records.field_path import FieldPath
from generator.records.fields import ID
from generator.records.located import located
from generator.records.tables import Cell, Imported, Table, id_of, read_table


class NotCreated(Exception):
    """The record cannot be made as it was asked for; says why, and how to ask."""


@dataclass(frozen=True)
class Created:
    """A record that was written."""

    id: str
    path: Path
    notes: tuple[str, ...]
    """What of the table was left out, and what is left to write."""


def create(
    content: Path, kinds: Mapping[str, Kind[Any]], kind: str, name: str, *, title: str = "", source: tuple[Path, str] | None = None
) -> Created:
    """Write `content/<kind>/<name>.yaml`; `source` is a table and what messages call it.

    Raises
    ------
    NotCreated
        If kind, name or title cannot be used, or the record is there already.
    ContentErrors
        With everything that is wrong in the table; nothing is written.
    """
    if kind not in kinds:
        known = listed(kinds, "and")
        raise NotCreated(f"no kind {kind}; {did_you_mean(kind, kinds, f'known kinds are {known}')}")
    _refuse_name(name)
    of_kind, path = kinds[kind], content / kind / f"{name}.yaml"
    if path.exists():
        raise NotCreated(f"{kind}/{name} exists already; choose another name, or edit its file")
    if source and of_kind.import_table is None:
        able = listed([other.name for other in kinds.values() if other.import_table], "and")
        raise NotCreated(f"a {kind} record has no place for a table; --from works with {able}")
    text, notes = draft(of_kind, _title(title, name), read_table(*source) if source else None)
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("x", encoding="utf-8", newline="\n") as file:
        file.write(text)
    return Created(f"{kind}/{name}", path, notes)


def draft(kind: Kind[Any], title: str, table: Table | None = None) -> tuple[str, tuple[str, ...]]:
    """The text of a new record, and notes on its table.

    Raises
    ------
    ContentErrors
        With everything that is wrong in the table, each at its cell.
    """
    imported = kind.import_table(table) if table and kind.import_table else None
    if imported and not imported.fields:
        raise ContentErrors([*(table.problems if table else ()), *imported.problems])
    text = rendered(kind, title, imported.fields if imported else None)
    file = located(text.encode(), f"{kind.name}.yaml")
    problems = list(_problems(kind, file))
    if table and imported:
        told = [*table.problems, *imported.problems]
        problems = [*told, *_at_their_cells(problems, file, table, imported, only_cells=bool(told))]
    if has_errors(problems):
        raise ContentErrors(in_order(problems))
    return text, _notes(table, imported) if table and imported else ()


def _notes(table: Table, imported: Imported) -> tuple[str, ...]:
    """What was made of the table, what was left out, and what the author has to see to."""
    commas = ["Decimal commas were read as points."] if table.decimal_comma else []
    origin = "The record says `data: measured`: write invented or published there if that is where the numbers come from."
    return (*imported.notes, *commas, origin, *imported.next)


def _refuse_name(name: str) -> None:
    if not re.fullmatch(ID, name, re.ASCII):
        near = id_of(name.removesuffix(".yaml"))
        mend = f"write {near}" if re.fullmatch(ID, near, re.ASCII) else "write it like temperate_grassland"
        raise NotCreated(f'a name in small letters, digits and _ was expected, found "{name}"; {mend}')
    if name in RESERVED:
        raise NotCreated(f'"{name}" is the name of a page of the kind as a whole; choose a name that says what the record is about')


def _title(title: str, name: str) -> str:
    words = " ".join(title.split()) or name.replace("_", " ").capitalize()
    if any(sign in "{}" or not sign.isprintable() for sign in words):
        raise NotCreated(f"a title in plain words was expected, found {words!r}; leave out braces and signs that cannot be seen")
    return words


def _problems(kind: Kind[Any], file: Located) -> Iterator[Diagnostic]:
    """Everything in the record that would stop a build."""
    try:
        subject = load_subject(RecordFile(kind.name, "new", file), {kind.name: kind})
    except ContentErrors as errors:
        yield from errors.diagnostics
    else:
        found = [located_finding(file, finding) for finding in kind.doubts(subject.record, subject.facts)]
        yield from (one for one in found if has_errors([one]))


def _at_their_cells(
    problems: Iterable[Diagnostic], file: Located, table: Table, imported: Imported, *, only_cells: bool
) -> Iterator[Diagnostic]:  # fmt: skip
    """The record's problems at the cells that its values came from.

    With `only_cells`, problems that no cell stands for are left out: they follow from what is told about the table already.
    """
    paths: dict[Place, FieldPath] = {}
    for path in file.values:
        paths.setdefault(file.place(path), path)
    for one in problems:
        path = paths.get(one.place, ())
        cell = _cell(path, imported.cells)
        if path in imported.told or (only_cells and cell is None):
            continue
        if cell is not None and not cell.text:
            yield replace(one, place=cell.place, found="an empty cell", mend="fill in the cell")
        else:
            yield replace(one, place=cell.place if cell else table.place)


def _cell(path: FieldPath, cells: Mapping[FieldPath, Cell]) -> Cell | None:
    """The cell of a value, the first one inside it, or that of the nearest group around it."""
    if not path or path in cells:
        return cells.get(path)
    inside = (cell for inner, cell in cells.items() if inner[: len(path)] == path)
    around = (cells[path[:length]] for length in range(len(path) - 1, 0, -1) if path[:length] in cells)
    return next(inside, None) or next(around, None)
