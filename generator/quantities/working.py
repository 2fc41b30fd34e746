"""Working: how a fact came about: an expression with its numbers put in, a table by month or of other values, a path of rules, or a list."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Protocol

from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.notation import PlainText, SetUpText, Terms, write
from generator.quantities.units import Unit


class Given(Protocol):
    """What a working shows of a quantity that goes into it, and what tells how many digits it has; every `Fact` offers it."""

    @property
    def id(self) -> str: ...
    @property
    def value(self) -> float | str | bool | tuple[float, ...] | tuple[int, ...] | None: ...
    @property
    def working(self) -> Working | None: ...
    @property
    def written(self) -> str: ...
    @property
    def figures(self) -> int: ...
    @property
    def asked_figures(self) -> bool: ...
    @property
    def low(self) -> float | None: ...
    @property
    def high(self) -> float | None: ...
    @property
    def is_number(self) -> bool: ...
    @property
    def number(self) -> float: ...
    @property
    def name(self) -> str: ...
    @property
    def unit(self) -> Unit | None: ...
    @property
    def is_series(self) -> bool: ...
    @property
    def series(self) -> tuple[float, ...]: ...
    @property
    def shown_members(self) -> tuple[str, ...]: ...
    @property
    def shown_number(self) -> str: ...
    @property
    def shown_exactly(self) -> str: ...
    def finer(self, more: int) -> Given: ...


@dataclass(frozen=True)
class Substitution:
    """An expression and what stands for its names."""

    expression: Expression
    given: tuple[tuple[str, Given], ...]
    bare: bool = False
    """An empirical formula takes the numbers without their units."""

    @property
    def formula(self) -> str:
        """The expression in words: `stock ÷ outflow`."""
        return write(self.expression, PlainText())

    @property
    def put_in(self) -> str:
        """The expression with the numbers put in: `4800 kg N ha⁻¹ ÷ 94.0 kg N ha⁻¹ yr⁻¹`."""
        return write(self.expression, PlainText(self.stands_for, self.terms))

    @property
    def set_up(self) -> str:
        """As `put_in`, and every series with its numbers too: `(26 + 48 + 66) mm ÷ 327 mm`."""
        return write(self.expression, SetUpText(self.stands_for, self.terms))

    @property
    def stands_for(self) -> dict[str, str]:
        """What each symbol is written as; a series goes by its name."""
        return {symbol: self._numbers(fact) for symbol, fact in self.given}

    @property
    def terms(self) -> dict[str, Terms]:
        """The members of each series, by the name that it goes by."""
        return {self._numbers(fact): Terms(fact.series, fact.shown_members, fact.unit) for _, fact in self.given if fact.is_series}

    def text(self, result: str) -> str:
        """One line: formula, numbers, result."""
        return " = ".join(dict.fromkeys([self.formula, self.put_in, result]))

    def coming_out(self, comes_out: Callable[[Substitution], bool]) -> Substitution:
        """The same with the fewest more digits with which its numbers give the result as it is shown; as it is where none do."""
        names = [name for name, _ in self.given]
        found = next(filter(comes_out, (self._with(dict.fromkeys(names, more)) for more in range(shown.MOST_MORE + 1))), self)
        for name in names if found != self else ():
            found = next(filter(comes_out, (found._with({name: more}) for more in range(shown.MOST_MORE + 1))))
        return found

    def _with(self, more: Mapping[str, int]) -> Substitution:
        """The same with so many more digits of the numbers that are named."""
        return replace(self, given=tuple((name, fact.finer(more[name]) if name in more else fact) for name, fact in self.given))

    def _numbers(self, fact: Given) -> str:
        return fact.name.lower() if fact.is_series else fact.shown_number if self.bare else fact.shown_exactly


@dataclass(frozen=True)
class MonthTable:
    """Twelve lines, January first, and what they say together."""

    columns: tuple[tuple[str, tuple[str, ...]], ...]
    """Heads (with units) and twelve cells each."""
    conclusion: str

    def __post_init__(self) -> None:
        for head, cells in self.columns:
            if len(cells) != 12:
                raise ValueError(f"{head}: expected 12 months, found {len(cells)}")

    @property
    def rows(self) -> tuple[tuple[str, ...], ...]:
        """The lines of the table, the month's name first."""
        cells = [column for _, column in self.columns]
        return tuple((month, *(c[m] for c in cells)) for m, month in enumerate(shown.MONTHS))

    def text(self, result: str) -> str:
        """Several lines: the table, then the conclusion."""
        heads = " | ".join(["month", *(head for head, _ in self.columns)])
        return "\n".join([heads, *(" | ".join(row) for row in self.rows), self.conclusion or result])


@dataclass(frozen=True)
class ValueTable:
    """A table of values and what they say together; the first cell of a row names it."""

    columns: tuple[str, ...]
    """Heads, with units."""
    rows: tuple[tuple[str, ...], ...]
    conclusion: str

    def __post_init__(self) -> None:
        for row in self.rows:
            if len(row) != len(self.columns):
                raise ValueError(f"expected {len(self.columns)} cells, found {len(row)}: {', '.join(row)}")

    def text(self, result: str) -> str:
        """Several lines: the table, then the conclusion and the result."""
        return "\n".join([" | ".join(row) for row in (self.columns, *self.rows)] + [self.conclusion, result])


@dataclass(frozen=True)
class Rule:
    """One question on a path, with the numbers put in, and whether it was answered yes."""

    asks: str
    numbers: str
    holds: bool


@dataclass(frozen=True)
class RulePath:
    """Questions in order, up to the one that decides."""

    rules: tuple[Rule, ...]

    def text(self, result: str) -> str:
        """One line a rule, then the result."""
        lines = [f"{rule.asks} {rule.numbers}: {'yes' if rule.holds else 'no'}" for rule in self.rules]
        return "\n".join([*lines, result])


@dataclass(frozen=True)
class Listing:
    """What was counted or followed, line by line."""

    heading: str
    """What the lines are: "Foods"."""
    lines: tuple[str, ...]

    def text(self, result: str) -> str:
        """The heading, a line each, then the result."""
        return "\n".join([f"{self.heading}:", *(self.lines or ("none",)), result])


Working = Substitution | MonthTable | ValueTable | RulePath | Listing
