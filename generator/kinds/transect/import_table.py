"""A table of stations as a transect: a row a station, in order along the line; units in brackets."""

from __future__ import annotations

from collections.abc import Iterator

from generator.diagnostics import Diagnostic
from generator.kinds.transect.record import Units
from generator.quantities.units import UnitError, unit
from generator.records.field_path import FieldPath
from generator.records.tables import Cell, Imported, Table, id_of_row, left_out, problem, read_from

NAMES = ("station", "place", "name", "site")
ALSO = {
    "distance": ("distance", "along"), "height": ("height", "elevation", "altitude"),
    "annual_mean_temp": ("annual_mean_temp", "mean_temperature", "temperature", "annual_mean_temperature", "temp"),
    "annual_precip": ("annual_precip", "precipitation", "annual_precipitation", "rain", "rainfall", "precip"),
}  # fmt: skip
"""Column names by the field that they become."""
QUANTITIES = {"distance": "distance", "height": "height", "annual_mean_temp": "temperature", "annual_precip": "precipitation"}
NEEDED = ("distance", "height", "annual_mean_temp")


def import_table(table: Table) -> Imported:
    """The stations of a table, in its order."""
    columns = {field: at for field, words in ALSO.items() if (at := table.column(*words)) is not None}
    named, start = table.column(*NAMES), table.heads[0].cell
    problems: list[Diagnostic] = []
    if named is None:
        problems.append(problem(start, "", "a column with the stations' names", "name it station", "none"))
    for field in NEEDED:
        if field not in columns:
            problems.append(problem(start, "", f"a column {ALSO[field][0]}", f"name it {ALSO[field][0]}, with its unit in brackets", "none"))
    units, of_units = _units(table, columns)
    problems += of_units
    known = {*columns.values(), *([] if named is None else [named])}
    notes = (read_from(table, known), *left_out((one for at, one in enumerate(table.heads) if at not in known), "transect"))
    if named is None or problems or not table.rows:
        return Imported(fields={}, notes=notes, problems=tuple(problems))
    stations = [
        {"id": id_of_row(row[named].text, "station", at), "name": row[named].text} | {field: table.written(row[c]) for field, c in columns.items() if row[c].text}
        for at, row in enumerate(table.rows)
    ]
    cells: dict[FieldPath, Cell] = dict(_cells(table, columns, named))
    return Imported(
        fields={"units": units, "stations": stations}, cells=cells | {("stations",): start}, notes=notes,
        next=("Check that the stations stand in their order along the line.",), problems=tuple(problems),
    )  # fmt: skip


def _units(table: Table, columns: dict[str, int]) -> tuple[dict[str, str], list[Diagnostic]]:
    """The unit of each quantity, one of those that a record may use."""
    units, problems = {}, []
    for field, at in columns.items():
        quantity, head = QUANTITIES[field], table.heads[at]
        allowed = Units.model_fields[quantity].annotation.__args__
        label = _label(head.unit)
        if label in allowed:
            units[quantity] = label
        else:
            example = f"{head.name.replace('_', ' ')} ({allowed[0]})"
            problems.append(problem(head.cell, field, f"a unit in brackets: {' or '.join(allowed)}", f"write {example}"))
    return units, problems


def _label(written: str) -> str:
    """The unit in the record's own spelling: `degC` of `°C`."""
    try:
        found = unit(written)
    except UnitError:
        return ""
    return found.factors[0][0] if len(found.factors) == 1 else ""


def _cells(table: Table, columns: dict[str, int], named: int) -> Iterator[tuple[FieldPath, Cell]]:
    for at, row in enumerate(table.rows):
        yield ("stations", at), row[named]
        yield from ((("stations", at, field), row[column]) for field, column in columns.items())
