"""A table of readings as a productivity record: bottles by depth and sort, or dry masses by plot and day; one or more readings a row."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from generator.diagnostics import Diagnostic
from generator.records.field_path import FieldPath
from generator.records.tables import Cell, Head, Imported, Table, found_in, id_of, id_of_row, is_number, left_out, problem, read_from

SORTS = {
    "initial": "initial", "start": "initial", "i": "initial", "light": "light", "clear": "light", "l": "light",
    "dark": "dark", "black": "dark", "d": "dark",
}  # fmt: skip
OXYGEN = ("oxygen", "dissolved_oxygen", "do", "reading")
MASS = ("dry_mass", "dry_weight", "mass", "biomass")
BOTTLE, DEPTH = ("bottle", "bottles", "sort"), ("depth",)
INCUBATION, LIGHT = ("incubation", "incubation_time", "time"), ("light_hours", "hours_of_light", "day_length")
PLOT, DAY, NAME, AREA = ("plot", "treatment"), ("day",), ("harvest", "date", "name"), ("quadrat_area", "area", "quadrat")
HOURS = {"h": "h", "hours": "h", "hr": "h", "min": "min", "minutes": "min", "d": "d", "days": "d"}
AREAS = {"m2": "m2", "m²": "m2", "cm2": "cm2", "cm²": "cm2"}


def import_table(table: Table) -> Imported:
    """Bottles where a column says which bottle a reading is of, harvests else."""
    return _Bottles(table).imported() if table.column(*BOTTLE) is not None else _Harvests(table).imported()


@dataclass
class _Reading:
    """What is read of a table, and what is wrong with it."""

    table: Table
    problems: list[Diagnostic] = field(default_factory=list)
    cells: dict[FieldPath, Cell] = field(default_factory=dict)
    units: dict[str, str] = field(default_factory=dict)
    used: set[int] = field(default_factory=set)
    told: set[FieldPath] = field(default_factory=set)

    def column(self, what: str, *names: str) -> int | None:
        """The column with one of the names; told where it is missing."""
        at = self.table.column(*names)
        if at is None:
            self.problems.append(problem(self.table.heads[0].cell, "", f"a column {what}", f"add it, or name it {what}", "none"))
        else:
            self.used.add(at)
        return at

    def series(self, what: str, unit: str, spellings: tuple[str, ...], names: tuple[str, ...]) -> list[int]:
        """All columns of readings, `oxygen`, `oxygen 1`, `oxygen 2`, which share a unit."""
        found = [at for at, one in enumerate(self.table.heads) if one.name in names or one.name.rstrip("0123456789").rstrip("_") in names]
        if not found:
            self.problems.append(problem(self.table.heads[0].cell, "", f"a column {what} ({unit})", f"name it {what} ({unit})", "none"))
        for at in found:
            self.used.add(at)
            if self.table.heads[at].unit not in spellings:
                self.problems.append(problem(self.table.heads[at].cell, what, f"readings in {unit}", f"convert them, and write {what} ({unit})"))
        return found

    def constant(self, what: str, known: dict[str, str], quantity: str, *names: str) -> tuple[str, Cell] | None:
        """A number that all rows share, with the unit of its head."""
        at = self.column(what, *names)
        if at is None:
            return None
        head: Head = self.table.heads[at]
        if known and head.unit not in known:
            units = ", ".join(dict.fromkeys(known.values()))
            self.problems.append(problem(head.cell, quantity, f"one of the units {units} in brackets", f"write {what}"))
        elif known:
            self.units[quantity] = known[head.unit]
        filled = [row[at] for row in self.table.rows if row[at].text]
        for cell in filled[1:]:
            if cell.text != filled[0].text:
                mend = "make a record of its own of what was done in another way"
                self.problems.append(problem(cell, quantity, f"{filled[0].text} in every row", mend))
        if not filled:
            self.problems.append(problem(head.cell, quantity, "a number below it", "fill in the column", "empty cells"))
        return (self.table.written(filled[0]), filled[0]) if filled else None

    def finished(self, fields: dict[str, Any], *next_: str) -> Imported:
        heads = self.table.heads
        notes = (read_from(self.table, self.used), *left_out((one for at, one in enumerate(heads) if at not in self.used), "productivity"))
        usual = {"incubation": "h", "quadrat_area": "m2"}
        kept = {quantity: label for quantity, label in self.units.items() if label != usual[quantity]}
        return Imported(
            fields=fields and fields | {"units": kept}, cells=self.cells, notes=notes, told=frozenset(self.told), next=next_,
            problems=tuple(self.problems),
        )  # fmt: skip


class _Bottles:
    """Readings by depth and sort of bottle."""

    def __init__(self, table: Table) -> None:
        self.reading, self.table = _Reading(table), table

    def imported(self) -> Imported:
        reading = self.reading
        sort_at, depth_at = reading.column("bottle", *BOTTLE), reading.column("depth (m)", *DEPTH)
        values = reading.series("oxygen", "mg/L", ("mg/L", "mg/l", "mg O2/L"), OXYGEN)
        hours = reading.constant("incubation (h)", HOURS, "incubation", *INCUBATION)
        light = reading.constant("light hours", {}, "light_hours", *LIGHT)
        if sort_at is None or depth_at is None or not values or hours is None or light is None or not self.table.rows:
            return reading.finished({})
        reading.cells |= {("bottles", "incubation"): hours[1], ("bottles", "light_hours"): light[1]}
        depths = list(self.depths(sort_at, depth_at, values))
        return reading.finished(
            {"bottles": depths, "incubation": hours[0], "light_hours": light[0], "plots": []},
            "Write the question, the idea, the method and above all the cautions.",
        )

    def depths(self, sort_at: int, depth_at: int, values: list[int]) -> Iterator[dict[str, Any]]:
        """Each depth once, in the table's order, with the readings of its bottles."""
        found: dict[str, tuple[Cell, dict[str, list[Cell]]]] = {}
        for row in self.table.rows:
            sort = SORTS.get(id_of(row[sort_at].text).split("_")[0])
            if sort is None:
                self.reading.problems.append(problem(row[sort_at], "bottle", "initial, light or dark", "write one of them"))
                continue
            _, sorts = found.setdefault(self.same(row[depth_at]), (row[depth_at], {}))
            sorts.setdefault(sort, []).extend(row[at] for at in values if row[at].text)
        for at, (cell, sorts) in enumerate(found.values()):
            path: FieldPath = ("bottles", "depths", at)
            depth = self.table.written(cell)
            self.reading.cells |= {path: cell, (*path, "depth"): cell, (*path, "id"): cell}
            for sort in ("initial", "light", "dark"):
                if not sorts.get(sort):
                    self.reading.problems.append(problem(cell, sort, f"a reading of the {sort} bottles at {depth}", "add a row", "none"))
                    self.reading.told.add((*path, sort))
                for number, reading in enumerate(sorts.get(sort, [])):
                    self.reading.cells[*path, sort, number] = reading
            readings = {sort: [self.table.written(one) for one in sorts.get(sort, [])] for sort in ("initial", "light", "dark")}
            yield {"id": id_of(f"at {depth} m"), "depth": depth} | readings

    def same(self, cell: Cell) -> str:
        """What tells depths apart: 2 and 2.0 are one."""
        text = self.table.written(cell)
        return repr(float(text)) if is_number(text) else text


class _Harvests:
    """Dry masses by plot and day."""

    def __init__(self, table: Table) -> None:
        self.reading, self.table = _Reading(table), table

    def imported(self) -> Imported:
        reading, table = self.reading, self.table
        day = reading.column("day", *DAY)
        values = reading.series("dry mass", "g", ("g",), MASS)
        area = reading.constant("quadrat area (m2)", AREAS, "quadrat_area", *AREA)
        plot, name = table.column(*PLOT), table.column(*NAME)
        reading.used |= {at for at in (plot, name) if at is not None}
        if day is None or not values or area is None or not table.rows:
            return reading.finished({})
        reading.cells["harvest", "quadrat_area"] = area[1]
        plots = list(self.plots(plot, day, name, values))
        return reading.finished(
            {"bottles": [], "plots": plots, "quadrat_area": area[0]}, "Write the question, the idea, the method and above all the cautions."
        )

    def plots(self, plot_at: int | None, day_at: int, name_at: int | None, values: list[int]) -> Iterator[dict[str, Any]]:
        """Each plot once, with its harvests by the day."""
        found: dict[str, dict[str, tuple[Cell, Cell | None, list[Cell]]]] = {}
        first: dict[str, Cell] = {}
        for row in self.table.rows:
            label = row[plot_at].text if plot_at is not None else "The plot"
            first.setdefault(label, row[plot_at if plot_at is not None else day_at])
            cut = found.setdefault(label, {}).setdefault(
                self.table.written(row[day_at]), (row[day_at], row[name_at] if name_at is not None else None, [])
            )
            cut[2].extend(row[at] for at in values if row[at].text)
        for at, (label, cuts) in enumerate(found.items()):
            path: FieldPath = ("harvest", "plots", at)
            self.reading.cells |= {path: first[label], (*path, "id"): first[label]}
            yield {"id": id_of_row(label, "plot", at), "name": label, "harvests": list(self.cuts((*path, "harvests"), cuts))}

    def cuts(self, path: FieldPath, cuts: dict[str, tuple[Cell, Cell | None, list[Cell]]]) -> Iterator[dict[str, Any]]:
        for at, (day, (cell, named, masses)) in enumerate(cuts.items()):
            self.reading.cells |= {(*path, at): cell, (*path, at, "day"): cell, (*path, at, "dry_mass"): cell}
            self.reading.cells |= {(*path, at, "dry_mass", number): mass for number, mass in enumerate(masses)}
            if not masses:
                self.reading.problems.append(problem(cell, "dry_mass", f"a dry mass on day {found_in(cell)}", "fill in the cell", "none"))
                self.reading.told.add((*path, at, "dry_mass"))
            name = {"name": named.text} if named is not None and named.text else {}
            yield {"id": f"day_{id_of(day) or at + 1}"} | name | {"day": day, "dry_mass": [self.table.written(mass) for mass in masses]}
