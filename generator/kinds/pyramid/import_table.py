"""A table of trophic levels as a pyramid: a row a level, from producers up; units in brackets."""

from __future__ import annotations

from collections.abc import Iterator

from generator.diagnostics import Diagnostic
from generator.quantities.units import UnitError, unit
from generator.records.field_path import FieldPath
from generator.records.tables import Cell, Imported, Table, id_of_row, left_out, problem, read_from

NAMES = ("level", "trophic_level", "name", "id")
FLOWS = ("gross_production", "respiration", "eaten", "egested", "respired", "production")
"""Columns that share the unit of energy flow, by the fields that they become."""
OTHER = {"biomass": "biomass", "energy_content": "energy_content"}
WITHOUT_UNIT = ("transfer_efficiency", "individuals_per_m2")
ALSO = {
    "gross_primary_production": "gross_production", "net_production": "production", "net_primary_production": "production",
    "gpp": "gross_production", "npp": "production", "ingested": "eaten", "ingestion": "eaten", "consumption": "eaten", "egestion": "egested",
}  # fmt: skip
EXAMPLES = {"energy_flow": "kJ/m2/yr", "biomass": "g/m2", "energy_content": "kJ/g"}


def import_table(table: Table) -> Imported:
    """The levels of a table, in its order."""
    columns = {field: at for at, one in enumerate(table.heads) if (field := ALSO.get(one.name, one.name)) in (*FLOWS, *OTHER, *WITHOUT_UNIT)}
    named = table.column(*NAMES)
    start = table.heads[0].cell
    problems: list[Diagnostic] = []
    if named is None:
        problems.append(problem(start, "", "a column with the levels' names", "name it level", "none"))
    if not any(field in FLOWS for field in columns):
        problems.append(problem(start, "", f"a column with a flow of energy, such as production ({EXAMPLES['energy_flow']})", "add one", "none"))
    units, of_units = _units(table, columns)
    problems += of_units
    known = {*columns.values(), *([] if named is None else [named])}
    notes = (read_from(table, known), *left_out((one for at, one in enumerate(table.heads) if at not in known), "pyramid"))
    if named is None or "energy_flow" not in units or not table.rows:
        return Imported(fields={}, notes=notes, problems=tuple(problems))
    levels = [
        {"id": id_of_row(row[named].text, "level", at), "name": row[named].text} | {name: table.written(row[c]) for name, c in columns.items() if row[c].text}
        for at, row in enumerate(table.rows)
    ]
    used = {field: units.get(field, example) for field, example in EXAMPLES.items()}
    return Imported(
        fields={"units": used, "levels": levels}, cells=dict(_cells(table, columns, named)) | dict(_unit_cells(table, columns)),
        notes=notes, next=("Check that the levels stand from producers up.",), problems=tuple(problems),
    )  # fmt: skip


def _quantity(field: str) -> str:
    return "energy_flow" if field in FLOWS else OTHER.get(field, "")


def _units(table: Table, columns: dict[str, int]) -> tuple[dict[str, str], list[Diagnostic]]:
    """The unit of each quantity, which all its columns must share."""
    units: dict[str, str] = {}
    problems = []
    for field, at in columns.items():
        one, quantity = table.heads[at], _quantity(field)
        if not quantity:
            if "%" in one.unit:
                problems.append(problem(one.cell, field, "shares such as 0.10", "divide the column by 100"))
            continue
        example = EXAMPLES[quantity]
        try:
            fits, mend = unit(one.unit).same_kind(unit(example)), f"write the unit behind the name, such as {field.replace('_', ' ')} ({example})"
        except UnitError as error:
            fits, mend = False, str(error)
        if not fits:
            problems.append(problem(one.cell, field, f"a unit in brackets such as {example}", mend))
        elif units.setdefault(quantity, one.unit) != one.unit:
            problems.append(problem(one.cell, field, f"one unit for all flows: {units[quantity]}", "convert the column"))
    return units, problems


def _cells(table: Table, columns: dict[str, int], named: int) -> Iterator[tuple[FieldPath, Cell]]:
    for at, row in enumerate(table.rows):
        yield ("levels", at), row[named]
        yield from ((("levels", at, field), row[column]) for field, column in columns.items())


def _unit_cells(table: Table, columns: dict[str, int]) -> Iterator[tuple[FieldPath, Cell]]:
    yield from ((("units", quantity), table.heads[at].cell) for field, at in columns.items() if (quantity := _quantity(field)))
