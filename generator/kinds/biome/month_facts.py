"""Facts by month: series with their table, and lists of months."""

from __future__ import annotations

from generator.quantities import shown
from generator.quantities.fact import Fact
from generator.quantities.units import Unit
from generator.quantities.working import MonthTable, Working
from generator.science.method import Method

Column = tuple[str, tuple[str, ...]]
"""Head with unit, and twelve cells."""


def series(
    fact_id: str, name: str, unit: Unit, method: Method, numbers: tuple[float, ...], columns: tuple[Column, ...], says: str,
    figures: int,
) -> Fact:  # fmt: skip
    """A computed series; its table ends with the series itself."""
    table = MonthTable((*columns, (head(name, unit), shown.series(numbers, figures))), says)
    return Fact(id=fact_id, name=name, value=numbers, unit=unit, working=table, method=method.id, figures=figures)


def months(fact_id: str, name: str, numbers: tuple[int, ...], working: Working, method: Method) -> Fact:
    """A list of months, with what shows why."""
    return Fact(id=fact_id, name=name, value=numbers, months=True, working=working, method=method.id)


def undefined(fact_id: str, name: str, method: Method, because: str, unit: Unit | None = None) -> Fact:
    """A fact that cannot be computed."""
    return Fact(id=fact_id, name=name, value=None, unit=unit, method=method.id, undefined_because=because)


def column(fact: Fact) -> Column:
    """A series as a column of another one's table."""
    return head(fact.name, fact.unit), fact.shown_members


def head(name: str, unit: Unit | None) -> str:
    """The head of a column: the name in small letters with its unit."""
    return f"{name[:1].lower()}{name[1:]} ({unit.shown})" if unit else f"{name[:1].lower()}{name[1:]}"


def marks(name: str, found: tuple[int, ...]) -> Column:
    """A column that says yes in some months."""
    return name, tuple("yes" if month in found else "no" for month in range(1, 13))
