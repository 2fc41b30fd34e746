"""A table of monthly means as the stations of a biome: a row a month, or a column a month; units in brackets."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from pathlib import PurePath

from generator.diagnostics import Diagnostic, listed
from generator.kinds.biome.import_heads import BASE_UNITS, EXAMPLES, TRACE, UNITS, missing, quantity_of, unit_of, with_unit
from generator.quantities.shown import MONTHS
from generator.records.field_path import FieldPath
from generator.records.tables import Cell, Head, Imported, Table, found_in, head, id_of, id_of_row, left_out, month, problem, read_from

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
    months: dict[int, Cell] = field(default_factory=dict)
    """Where each month's name stands."""
    unread: int = 0
    """How many rows name a month that cannot be read."""


@dataclass
class _Reading:
    """One run over a table, gathering stations, units and problems as it goes."""

    table: Table
    stations: dict[str, _Station] = field(default_factory=dict)
    units: dict[str, str] = field(default_factory=dict)
    problems: list[Diagnostic] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)

    @property
    def station_column(self) -> int | None:
        return self.table.column("station", "place", "site")

    def station(self, row: tuple[Cell, ...]) -> _Station:
        """The station that a row is about."""
        at = self.station_column
        label = row[at] if at is not None else Cell(PurePath(self.table.file).stem.replace("_", " ").capitalize(), self.table.place)
        return self.stations.setdefault(label.text, _Station(label))

    def unit(self, quantity: str, one: Head) -> None:
        """Take the unit of a quantity from where its name stands."""
        unit = unit_of(quantity, one.unit)
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
        if quantity == "precipitation" and cell.text.lower() in TRACE:
            self.notes.append(f"{cell.place}: {found_in(cell)} was read as 0: less than can be measured")
            cell = replace(cell, text="0")
        values.setdefault(at, cell)

    def again(self, cell: Cell, name: str, expected: str, found: str) -> None:
        """Tell what stands there twice for one station."""
        self.problems.append(problem(cell, name, expected, "remove one, or tell stations apart in a column named station", found))


def import_table(table: Table) -> Imported:
    """The stations of a table, with units as they stand; the program converts them and shows the step."""
    reading = _Reading(replace(table, heads=tuple(map(with_unit, table.heads))))
    months = {at: number for at, one in enumerate(table.heads) if (number := month(one.cell.text)) is not None}
    if len(months) >= SEVERAL_MONTHS:
        _read_month_columns(reading, months)
    elif (other := _months_in_another_language(reading.table)) is not None:
        return Imported(fields={}, problems=(other,))
    else:
        _read_month_rows(reading)
    stations = list(_fields(reading))
    return Imported(
        fields={"units": BASE_UNITS | reading.units, "stations": stations} if stations else {}, cells=dict(_cells(reading)),
        told=frozenset(_short(reading)), notes=(*reading.notes, *_understood(reading)), problems=tuple(reading.problems),
        next=(*_named_after_the_file(reading), "Write what you know of the biome: region, summary, and latitude where it is missing."),
    )  # fmt: skip


def _understood(reading: _Reading) -> Iterator[str]:
    """A note on units that the page converts."""
    other = {quantity: unit for quantity, unit in reading.units.items() if unit != BASE_UNITS[quantity]}
    if other:
        kept = listed((f"{quantity} in {'inches' if unit == 'in' else unit}" for quantity, unit in other.items()), "and")
        shown = listed((BASE_UNITS[quantity] for quantity in other), "and")
        yield f"The record keeps {kept}, as in the table; the page shows {shown}, with the conversion."


def _named_after_the_file(reading: _Reading) -> Iterator[str]:
    if reading.station_column is None:
        for label in reading.stations:
            yield f'The station is called "{label}", after the file: change its id and its name, or name it in a column station.'


def _read_month_rows(reading: _Reading) -> None:
    table = reading.table
    quantities = {at: quantity for at, one in enumerate(table.heads) if (quantity := quantity_of(one.name))}
    at_month = table.column("month")
    there = {*quantities.values(), *(["month"] if at_month is not None else [])}
    reading.problems += missing(table, ("month", *SERIES), there, "column")
    for at, quantity in quantities.items():
        reading.unit(quantity, table.heads[at])
    constants = _constants(reading)
    known = {at for at in (*quantities, *constants.values(), at_month, reading.station_column) if at is not None}
    reading.notes.append(read_from(table, known))
    reading.notes += left_out((one for at, one in enumerate(table.heads) if at not in known), "biome")
    odd = []
    for row in table.rows:
        number = None if at_month is None else month(row[at_month].text)
        if at_month is not None and number is None:
            odd += _odd_row(reading, row, row[at_month])
            continue
        _take_constants(reading, row, constants)
        if at_month is None or number is None:
            continue
        if number in (months := reading.station(row).months):
            reading.again(row[at_month], "month", "each month once", f"{MONTHS[number]} again")
        months.setdefault(number, row[at_month])
        for at, quantity in quantities.items():
            reading.value(row, quantity, number, row[at])
    reading.problems += [*_odd_months(odd), *_missing_rows(reading)]


def _odd_row(reading: _Reading, row: tuple[Cell, ...], cell: Cell) -> list[Cell]:
    if id_of(cell.text) in WHOLE_YEAR:
        reading.notes.append(f'{cell.place}: the row "{cell.text}" was left out: the program sums the months up itself')
        return []
    reading.station(row).unread += 1
    return [cell]


def _odd_months(cells: list[Cell]) -> Iterator[Diagnostic]:
    """One problem for all names that are no months: they most often are of one sort."""
    if cells:
        more = f" and {len(cells) - 1} more like it" if len(cells) > 1 else ""
        mend = "write January, Jan or 1" + ("; all months in English or as numbers" if more else "")
        yield problem(cells[0], "month", "a month", mend, f"{found_in(cells[0])}{more}")


def _months_in_another_language(table: Table) -> Diagnostic | None:
    """What is wrong where rows hold the series, and the columns cannot be told to be months."""
    series = [at for at in range(len(table.heads)) if any(quantity_of(head(row[at]).name) for row in table.rows)]
    if not series or any(quantity_of(one.name) for one in table.heads):
        return None
    first = next((one for at, one in enumerate(table.heads) if at > series[0]), table.heads[0])
    return problem(first.cell, "month", "columns named after months", "name them January, Jan or 1, and so on to December")


def _read_month_columns(reading: _Reading, months: dict[int, int]) -> None:
    table = reading.table
    twice = [at for at in months if list(months.values()).index(months[at]) != list(months).index(at)]
    reading.problems += [problem(table.heads[at].cell, "month", "each month once", "rename or remove the column") for at in twice]
    reading.problems += _missing_columns(table, months)
    constants = _constants(reading)
    others = [at for at in range(len(table.heads)) if at not in (*months, *constants.values(), reading.station_column)]
    whole_year = [at for at in others if table.heads[at].name in WHOLE_YEAR]
    named = [at for at in others if at not in whole_year]
    reading.notes += [f'{(cell := table.heads[at].cell).place}: the column "{cell.text}" was left out: the program sums the months up itself' for at in whole_year]
    reading.notes += left_out((table.heads[at] for at in named[1:]), "biome")
    if not named:
        mend = f"add a first column with {EXAMPLES['temperature']} and {EXAMPLES['precipitation']} in its rows"
        reading.problems.append(problem(table.heads[0].cell, "", "a column that says what each row holds", mend))
        return
    for row in table.rows:
        one = with_unit(head(row[named[0]]))
        quantity = quantity_of(one.name)
        if not quantity:
            reading.notes.append(f"{one.cell.place}: the row {found_in(one.cell)} was left out: a biome record has no place for it")
            continue
        reading.unit(quantity, one)
        _take_constants(reading, row, constants)
        reading.notes.append(f'{one.cell.place}: read the row {found_in(one.cell)}, a value for each month')
        if reading.station(row).series[quantity]:
            reading.again(one.cell, quantity, f"each quantity once for {reading.station(row).label.text}", f"the {quantity} again")
        for at, number in months.items():
            if at not in twice:
                reading.value(row, quantity, number, row[at])
    reading.problems += [*missing(table, SERIES, reading.units, "row"), *_missing_series(reading)]


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


def _missing_rows(reading: _Reading) -> Iterator[Diagnostic]:
    """What is wrong where a station has no row for a month, beside those rows whose month cannot be read."""
    for station in reading.stations.values():
        lacking = [number for number in range(len(MONTHS)) if number not in station.months]
        if station.months and len(lacking) > station.unread:
            before = max((number for number in station.months if number < lacking[0]), default=min(station.months))
            expected, found = f"12 months for {station.label.text or 'the station'}", f"none for {_months(lacking)}"
            yield problem(station.months[before], "month", expected, "add a row for each that is missing", found)


def _missing_series(reading: _Reading) -> Iterator[Diagnostic]:
    """What is wrong where a station has no row for a quantity that others have."""
    for station in reading.stations.values():
        for quantity in (quantity for quantity, values in station.series.items() if quantity in reading.units and not values):
            expected = f"a row of {quantity} for {station.label.text or 'the station'}"
            yield problem(station.label, quantity, expected, "add the row", "none")


def _missing_columns(table: Table, months: dict[int, int]) -> Iterator[Diagnostic]:
    lacking = [number for number in range(len(MONTHS)) if number not in months.values()]
    if lacking:
        before = max((at for at in months if months[at] < lacking[0]), default=min(months))
        mend = "add what is missing; a month is called January, Jan or 1"
        yield problem(table.heads[before].cell, "month", "a column for each month", mend, f"none for {_months(lacking)}")


def _months(numbers: Iterable[int]) -> str:
    return listed((MONTHS[number] for number in numbers), "and")


def _short(reading: _Reading) -> Iterator[FieldPath]:
    """The series with less than twelve months, of which something is said already."""
    for at, station in enumerate(reading.stations.values()):
        yield from (("stations", at, SERIES[quantity]) for quantity, values in station.series.items() if len(values) < len(MONTHS))


def _fields(reading: _Reading) -> Iterator[dict[str, object]]:
    written = reading.table.written
    for at, station in enumerate(reading.stations.values()):
        series = {SERIES[name]: [written(cell) for _, cell in sorted(values.items())] for name, values in station.series.items()}
        constants = dict.fromkeys(OF_A_STATION, "") | {name: written(cell) for name, cell in station.constants.items()}
        yield {"id": id_of_row(station.label.text, "station", at), "name": station.label.text} | constants | series


def _cells(reading: _Reading) -> Iterator[tuple[FieldPath, Cell]]:
    for at, station in enumerate(reading.stations.values()):
        yield ("stations", at, "id"), station.label
        for name, cell in station.constants.items():
            yield ("stations", at, name), cell
        for name, values in station.series.items():
            for index, (_, cell) in enumerate(sorted(values.items())):
                yield ("stations", at, SERIES[name], index), cell
