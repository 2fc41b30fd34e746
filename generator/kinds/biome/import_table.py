"""A table of monthly means as the stations of a biome: a row a month, or a column a month; units in brackets."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import PurePath

from generator.diagnostics import Diagnostic, listed, nearest
from generator.records.field_path import FieldPath
from generator.records.fields import MONTHS
from generator.records.tables import Cell, Head, Imported, Table, found_in, head, id_of, left_out, month, problem

TEMPERATURE = (
    "temperature", "mean_temperature", "mean_temp", "temp", "monthly_mean_temperature", "monthly_mean_temp", "mean_monthly_temperature",
    "average_temperature", "daily_mean", "tmean", "tavg",
)  # fmt: skip
PRECIPITATION = (
    "precipitation", "precip", "rainfall", "rain", "monthly_precipitation", "monthly_precip", "mean_precipitation",
    "mean_monthly_precipitation", "average_precipitation", "prcp",
)  # fmt: skip
UNITS = {
    "temperature": {"degc": "degC", "°c": "degC", "c": "degC", "deg c": "degC", "degf": "degF", "°f": "degF", "f": "degF", "deg f": "degF"},
    "precipitation": {"mm": "mm", "cm": "cm", "in": "in", "inch": "in", "inches": "in"},
    "elevation": {"m": "m", "ft": "ft", "feet": "ft"},
}
EXAMPLES = {"temperature": "temperature (degC)", "precipitation": "precipitation (mm)", "elevation": "elevation (m)"}
SERIES = {"temperature": "monthly_mean_temp", "precipitation": "monthly_precip"}
OF_A_STATION = ("latitude", "elevation")
WHOLE_YEAR = ("year", "annual", "total", "sum", "mean", "average", "annual_total", "annual_mean")
"""What a row below the months may be called that sums them up; it is computed anew."""
SEVERAL_MONTHS = 3
"""Columns named after months, from which on a table is taken to have a column for each."""


@dataclass
class _Station:
    """A station as far as it is read."""

    label: Cell
    series: dict[str, dict[int, Cell]] = field(default_factory=lambda: {name: {} for name in SERIES})
    constants: dict[str, Cell] = field(default_factory=dict)


@dataclass
class _Reading:
    """One run over a table, gathering stations, units and problems as it goes."""

    table: Table
    stations: dict[str, _Station] = field(default_factory=dict)
    units: dict[str, str] = field(default_factory=dict)
    problems: list[Diagnostic] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)

    def station(self, row: tuple[Cell, ...]) -> _Station:
        """The station that a row is about."""
        at = self.table.column("station", "place", "site")
        label = row[at] if at is not None else Cell(PurePath(self.table.file).stem.replace("_", " ").capitalize(), self.table.place)
        return self.stations.setdefault(label.text, _Station(label))

    def unit(self, quantity: str, one: Head) -> None:
        """Take the unit of a quantity from where its name stands."""
        unit = UNITS[quantity].get(one.unit.lower().replace("degrees", "deg"))
        known = listed(dict.fromkeys(UNITS[quantity].values()))
        if unit is None:
            mend = f"write the unit behind the name, such as {EXAMPLES[quantity]}"
            self.problems.append(problem(one.cell, quantity, f"a unit in brackets: {known}", mend))
        elif self.units.setdefault(quantity, unit) != unit:
            expected, mend = f"one unit for all: {self.units[quantity]}", "convert one of the two, or make two records of them"
            self.problems.append(problem(one.cell, quantity, expected, mend))

    def value(self, row: tuple[Cell, ...], quantity: str, at: int, cell: Cell) -> None:
        """Take the value of a month."""
        values = self.station(row).series[quantity]
        if at in values:
            found = f"{MONTHS[at]} again"
            mend = "remove one, or tell stations apart in a column named station"
            self.problems.append(problem(cell, quantity, "each month once", mend, found))
        values.setdefault(at, cell)


def import_table(table: Table) -> Imported:
    """The stations of a table, with units as they stand; the program converts them and shows the step."""
    reading = _Reading(table)
    months = {at: number for at, one in enumerate(table.heads) if (number := month(one.cell.text)) is not None}
    if len(months) >= SEVERAL_MONTHS:
        _read_month_columns(reading, months)
    else:
        _read_month_rows(reading)
    short = list(_missing_months(reading))
    reading.problems += [one for _, one in short if one is not None]
    units = {"temperature": "degC", "precipitation": "mm", "elevation": "m"} | reading.units
    stations = list(_fields(reading))
    return Imported(
        fields={"units": units, "stations": stations} if stations else {}, cells=dict(_cells(reading)), told=frozenset(path for path, _ in short),
        notes=(*reading.notes, "Write what you know of the biome: region, summary, and latitude where it is missing."),
        problems=tuple(reading.problems),
    )  # fmt: skip


def _quantity(name: str) -> str:
    return "temperature" if name in TEMPERATURE else "precipitation" if name in PRECIPITATION else ""


def _read_month_rows(reading: _Reading) -> None:
    table = reading.table
    quantities = {at: quantity for at, one in enumerate(table.heads) if (quantity := _quantity(one.name))}
    at_month = table.column("month")
    there = {*quantities.values(), *(["month"] if at_month is not None else [])}
    reading.problems += _missing(table, ("month", *SERIES), there, "column")
    for at, quantity in quantities.items():
        reading.unit(quantity, table.heads[at])
    constants = _constants(reading)
    known = {*quantities, *constants.values(), at_month, table.column("station", "place", "site")}
    reading.notes += left_out((one for at, one in enumerate(table.heads) if at not in known), "biome")
    for row in table.rows:
        number = None if at_month is None else month(row[at_month].text)
        if at_month is not None and number is None:
            _odd_row(reading, row[at_month])
            continue
        _take_constants(reading, row, constants)
        for at, quantity in quantities.items() if number is not None else ():
            reading.value(row, quantity, number, row[at])


def _odd_row(reading: _Reading, cell: Cell) -> None:
    if id_of(cell.text) in WHOLE_YEAR:
        reading.notes.append(f'{cell.place}: the row "{cell.text}" was left out: the program sums the months up itself')
    else:
        reading.problems.append(problem(cell, "month", "a month", "write January, Jan or 1"))


def _read_month_columns(reading: _Reading, months: dict[int, int]) -> None:
    table = reading.table
    twice = [at for at in months if list(months.values()).index(months[at]) != list(months).index(at)]
    reading.problems += [problem(table.heads[at].cell, "month", "each month once", "rename or remove the column") for at in twice]
    constants = _constants(reading)
    station = table.column("station", "place", "site")
    others = [at for at in range(len(table.heads)) if at not in (*months, *constants.values(), station)]
    whole_year = [at for at in others if table.heads[at].name in WHOLE_YEAR]
    named = [at for at in others if at not in whole_year]
    reading.notes += left_out((table.heads[at] for at in [*whole_year, *named[1:]]), "biome")
    if not named:
        mend = f"add a first column with {EXAMPLES['temperature']} and {EXAMPLES['precipitation']} in its rows"
        reading.problems.append(problem(table.heads[0].cell, "", "a column that says what each row holds", mend))
        return
    for row in table.rows:
        one = head(row[named[0]])
        quantity = _quantity(one.name)
        if not quantity:
            reading.notes.append(f"{one.cell.place}: the row {found_in(one.cell)} was left out: a biome record has no place for it")
            continue
        reading.unit(quantity, one)
        _take_constants(reading, row, constants)
        for at, number in months.items():
            if at not in twice:
                reading.value(row, quantity, number, row[at])
    reading.problems += _missing(table, SERIES, reading.units, "row")


def _missing(table: Table, wanted: Iterable[str], there: Collection[str], what: str) -> Iterator[Diagnostic]:
    for name in wanted:
        if name not in there:
            near = nearest(name, (one.name for one in table.heads if what == "column"))
            found = f'none, but "{near}"' if near else "none"
            yield problem(table.heads[0].cell, "", f"a {what} with {_article(name)}", f"name it {EXAMPLES.get(name, name)}", found)


def _article(name: str) -> str:
    return {"month": "the months", "temperature": "the mean temperature"}.get(name, f"the {name}")


def _constants(reading: _Reading) -> dict[str, int]:
    """The columns that say where a station lies."""
    found = {name: at for name in OF_A_STATION if (at := reading.table.column(name)) is not None}
    if "elevation" in found:
        reading.unit("elevation", reading.table.heads[found["elevation"]])
    return found


def _take_constants(reading: _Reading, row: tuple[Cell, ...], constants: dict[str, int]) -> None:
    station = reading.station(row)
    for name, at in constants.items():
        cell = row[at]
        known = station.constants.setdefault(name, cell) if cell.text else cell
        if known.text != cell.text:
            mend = f"write one {name} for a station; it stands at {known.place} too"
            reading.problems.append(problem(cell, name, f"{known.text} as above", mend))


def _missing_months(reading: _Reading) -> Iterator[tuple[FieldPath, Diagnostic | None]]:
    """The series that lack months, and what to say, unless the whole quantity is missing, which is told once."""
    for at, station in enumerate(reading.stations.values()):
        for quantity, values in station.series.items():
            missing = [name for at, name in enumerate(MONTHS) if at not in values]
            if missing:
                found = f"none for {listed(missing, 'and')}" if values else "none"
                one = problem(station.label, quantity, f"12 months for {station.label.text or 'the station'}", "add what is missing", found)
                yield ("stations", at, SERIES[quantity]), one if quantity in reading.units else None


def _fields(reading: _Reading) -> Iterator[dict[str, object]]:
    written = reading.table.written
    for at, station in enumerate(reading.stations.values()):
        series = {SERIES[name]: [written(cell) for _, cell in sorted(values.items())] for name, values in station.series.items()}
        constants = dict.fromkeys(OF_A_STATION, "") | {name: written(cell) for name, cell in station.constants.items()}
        yield {"id": _id(station.label.text, at), "name": station.label.text} | constants | series


def _id(label: str, at: int) -> str:
    """An id from a name, which may begin with a digit or hold no letter of ours at all."""
    found = id_of(label)
    return found if found[:1].isalpha() else f"station_{found or at + 1}"


def _cells(reading: _Reading) -> Iterator[tuple[FieldPath, Cell]]:
    for at, station in enumerate(reading.stations.values()):
        yield ("stations", at, "id"), station.label
        for name, cell in station.constants.items():
            yield ("stations", at, name), cell
        for name, values in station.series.items():
            for index, (_, cell) in enumerate(sorted(values.items())):
                yield ("stations", at, SERIES[name], index), cell
