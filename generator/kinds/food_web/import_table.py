"""A table of feeding links as a food web: a row a link, with `eater`, `eaten` and, where it is known, `share`."""

from __future__ import annotations

from typing import Any

from generator.diagnostics import Diagnostic
from generator.quantities.text import sentence
from generator.records.field_path import FieldPath
from generator.records.tables import Cell, Imported, Table, id_of, left_out, problem

EATERS = ("eater", "consumer", "predator")
EATEN = ("eaten", "food", "prey", "resource")
SHARES = ("share", "diet_share", "fraction", "diet_fraction", "proportion")
DEAD = ("detritus", "dead", "litter", "carrion", "dung", "debris")
"""Words in a name by which dead matter is known."""


def import_table(table: Table) -> Imported:
    """The links of a table; whoever is never an eater is taken for a producer, or for dead matter where its name says so."""
    columns = {name: at for name, words in (("eater", EATERS), ("eaten", EATEN)) if (at := table.column(*words)) is not None}
    share, start = table.column(*SHARES), table.heads[0].cell
    missing = [name for name in ("eater", "eaten") if name not in columns]
    problems = [problem(start, "", f"a column {name}", f"name it {name}: who {_does(name)} in each link", "none") for name in missing]
    if share is not None and "%" in table.heads[share].unit:
        problems.append(problem(table.heads[share].cell, "share", "shares such as 0.25", "divide the column by 100, and leave out the %"))
    known = {*columns.values(), *([share] if share is not None else [])}
    notes = left_out((one for at, one in enumerate(table.heads) if at not in known), "food_web")
    if missing or not table.rows:
        return Imported(fields={}, notes=notes, problems=tuple(problems))
    species, cells, wrong = _species(table, columns["eater"], columns["eaten"], share)
    return Imported(
        fields={"species": list(species.values())}, cells=cells | {("species",): start},
        notes=(*notes, "Check `feeding:`: who eats nothing in the table was taken for a producer, or for dead matter by its name."),
        problems=(*problems, *wrong),
    )  # fmt: skip


def _does(name: str) -> str:
    return "eats" if name == "eater" else "is eaten"


def _species(
    table: Table, eater: int, eaten: int, share: int | None
) -> tuple[dict[str, dict[str, Any]], dict[FieldPath, Cell], list[Diagnostic]]:  # fmt: skip
    """Every species in the order of the table, the eaten ones of a row first, so that the bottom comes before the top."""
    found: dict[str, dict[str, Any]] = {}
    cells: dict[FieldPath, Cell] = {}
    wrong: list[Diagnostic] = []
    for row in table.rows:
        for cell in (row[eaten], row[eater]):
            if not cell.text:
                wrong.append(problem(cell, "", "the name of a species", "fill in the cell"))
            elif _id(cell.text) not in found:
                cells |= {("species", len(found)): cell, ("species", len(found), "id"): cell, ("species", len(found), "name"): cell}
                found[_id(cell.text)] = {"id": _id(cell.text), "name": sentence(cell.text), "feeding": _sort(cell.text), "eats": []}
        if not row[eater].text or not row[eaten].text:
            continue
        one = found[_id(row[eater].text)]
        path = ("species", [*found].index(one["id"]), "eats")
        food = {"food": _id(row[eaten].text)}
        cells.setdefault(path, row[eater])
        cells |= {(*path, len(one["eats"])): row[eaten], (*path, len(one["eats"]), "food"): row[eaten]}
        if share is not None and row[share].text:
            food["share"] = table.written(row[share])
            cells[*path, len(one["eats"]), "share"] = row[share]
        one["feeding"] = "consumer"
        one["eats"].append(food)
    return found, cells, wrong


def _sort(name: str) -> str:
    return "detritus" if any(word in id_of(name).split("_") for word in DEAD) else "producer"


def _id(name: str) -> str:
    found = id_of(name)
    return found if found[:1].isalpha() else f"species_{found}".rstrip("_")
