"""A table of fluxes as a cycle: a row a flux, with `from`, `to` and `rate (unit)`; ends that are left and reached are reservoirs."""

from __future__ import annotations

from typing import Any

from generator.diagnostics import Diagnostic
from generator.quantities.units import UnitError, unit
from generator.records.field_path import FieldPath
from generator.records.tables import Cell, Imported, Table, id_of, left_out, problem, read_from

TEXTS = ("process", "starts_as", "ends_as", "done_by", "oxygen", "scene", "cause", "pace")
NAMES = ("id", "flux", "name")
RATES = ("rate", "flux_rate", "value", "amount")
RANGES = ("plus_minus", "uncertainty", "low", "high")
PER_TIME = ("yr", "a", "year", "d", "day", "h", "s")


def import_table(table: Table) -> Imported:
    """The fluxes of a table, and the reservoirs that they imply; stocks are unknown until the author writes them."""
    columns = {name: at for name in ("from", "to") if (at := table.column(name)) is not None}
    rate, low = table.column(*RATES), table.column("low")
    missing = [name for name in ("from", "to") if name not in columns] + ["rate"] * (rate is None and low is None)
    start = table.heads[0].cell
    problems = [problem(start, "", f"a column {name}", _named(name), "none") for name in missing]
    at_unit = rate if rate is not None else low
    labels, of_unit = _units(table, at_unit) if at_unit is not None else ({}, [])
    problems += of_unit
    known = {*columns.values(), *(at for at in (rate, table.column(*NAMES)) if at is not None)}
    known |= {at for name in (*TEXTS, *RANGES) if (at := table.column(name)) is not None}
    notes = (read_from(table, known), *left_out((one for at, one in enumerate(table.heads) if at not in known), "cycle"))
    if missing or not labels or not table.rows:
        return Imported(fields={}, notes=notes, problems=tuple(problems))
    fluxes, cells = _fluxes(table, columns)
    ends = _ends(table, columns)
    reservoirs, outside = _sorted_ends(fluxes, ends)
    return Imported(
        fields={"units": labels, "reservoirs": [{"id": end, "name": ends[end].text} for end in reservoirs], "outside": outside, "fluxes": fluxes},
        cells=cells | {("units", "flux"): table.heads[at_unit].cell, ("units", "stock"): table.heads[at_unit].cell, ("fluxes",): start},
        notes=notes, problems=tuple(problems),
        next=("Write the stock of each reservoir in place of `unknown`, and check which ends are reservoirs and which outside.",),
    )  # fmt: skip


def _named(name: str) -> str:
    return "name it rate (kg N/ha/yr), with your unit" if name == "rate" else f"name it {name}: where each flux {'starts' if name == 'from' else 'ends'}"


def _units(table: Table, at: int) -> tuple[dict[str, str], list[Diagnostic]]:
    """The unit of the fluxes, and that of the stocks: the same without the time."""
    one = table.heads[at]
    expected, mend = "a unit of a flux in brackets", "write it behind the name, such as rate (kg N/ha/yr) or rate (Gt C/yr)"
    stock, slash, time = one.unit.rpartition("/")
    if not slash or time.strip() not in PER_TIME:
        return {}, [problem(one.cell, "rate", expected, mend)]
    try:
        unit(one.unit)
    except UnitError as error:
        return {}, [problem(one.cell, "rate", expected, str(error))]
    others = [table.heads[near] for name in RANGES if (near := table.column(name)) is not None and near != at]
    wrong = [problem(o.cell, o.name, f"the unit of the rates, {one.unit}", "convert the column") for o in others if o.unit not in ("", one.unit)]
    return {"stock": stock.strip(), "flux": one.unit}, wrong


def _fluxes(table: Table, columns: dict[str, int]) -> tuple[list[dict[str, Any]], dict[FieldPath, Cell]]:
    fluxes: list[dict[str, Any]] = []
    cells: dict[FieldPath, Cell] = {}
    for at, row in enumerate(table.rows):
        flux: dict[str, Any] = {"id": ""} | {name: id_of(row[column].text) for name, column in columns.items()}
        cells |= {("fluxes", at, name): row[column] for name, column in columns.items()}
        flux["rate"], of_rate = _rate(table, row)
        cells |= {("fluxes", at, "rate", *path): cell for path, cell in of_rate.items()}
        for name in TEXTS:
            column = table.column(name)
            if column is not None and row[column].text:
                flux[name] = row[column].text
                cells["fluxes", at, name] = row[column]
        named = table.column(*NAMES)
        cells["fluxes", at, "id"] = row[named if named is not None else columns["from"]]
        flux["id"] = _id(flux, row[named].text if named is not None else "", [other["id"] for other in fluxes])
        fluxes.append(flux)
    return fluxes, cells


def _rate(table: Table, row: tuple[Cell, ...]) -> tuple[str | dict[str, str], dict[FieldPath, Cell]]:
    """A number, one with its uncertainty, or a range, whichever the row states."""
    found: dict[str, Cell] = {}
    for field, names in (("value", RATES), ("plus_minus", ("plus_minus", "uncertainty")), ("low", ("low",)), ("high", ("high",))):
        column = table.column(*names)
        if column is not None and (row[column].text or field == "value"):
            found[field] = row[column]
    for pair in (("value", "plus_minus"), ("low", "high")):
        if all(name in found and found[name].text for name in pair):
            return {name: table.written(found[name]) for name in pair}, {(name,): found[name] for name in pair}
    cell = found.get("value") or next(iter(found.values()), Cell("", row[0].place))
    return table.written(cell), {(): cell}


def _id(flux: dict[str, Any], named: str, taken: list[str]) -> str:
    """The flux's own name; else its process, or its ends, with a number where that is taken."""
    own = id_of(named)
    if own:
        return own if own[0].isalpha() else f"flux_{own}"
    first = id_of(flux.get("process", "")) or "_to_".join(flux[end] for end in ("from", "to") if flux[end]) or "flux"
    return next(name for name in (first, *(f"{first}_{n}" for n in range(2, len(taken) + 3))) if name not in taken)


def _ends(table: Table, columns: dict[str, int]) -> dict[str, Cell]:
    ends: dict[str, Cell] = {}
    for row in table.rows:
        for column in columns.values():
            if end := id_of(row[column].text):
                ends.setdefault(end, row[column])
    return ends


def _sorted_ends(fluxes: list[dict[str, Any]], ends: dict[str, Cell]) -> tuple[list[str], list[str]]:
    """Reservoirs are left and reached; all other ends are outside, unless that leaves no reservoir, or a flux between two of those."""
    starts, goals = {flux["from"] for flux in fluxes}, {flux["to"] for flux in fluxes}
    reservoirs = starts & goals
    for flux in fluxes:
        if not {flux["from"], flux["to"]} & reservoirs:
            reservoirs = reservoirs | {flux["to"]}
    return [end for end in ends if end in reservoirs], [end for end in ends if end not in reservoirs]
