"""Fact: a quantity of a record that never travels without its unit, its working and its sources."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from generator.quantities import last_digits, shown
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression, ExpressionError
from generator.quantities.last_digits import MOST_WHOLE_DIGITS
from generator.quantities.units import Unit, UnitError, number_in
from generator.quantities.working import Substitution, Working

Value = float | str | bool | tuple[float, ...] | tuple[int, ...] | None


@dataclass(frozen=True, kw_only=True)
class Fact:
    """One computed or stated quantity; its value is unrounded, and rounding happens only in `shown`.

    Raises
    ------
    ValueError
        If a number in it is not finite: what is not known or not defined is None, with the reason beside it.
    """

    id: str
    """`<part>.<name>`, e.g. `harrow_plain.annual_precip`; never changes once published."""
    name: str
    """As in a table: "Annual precipitation"."""
    value: Value
    """A number, twelve numbers, month numbers, a class, true or false; None where it is undefined or unknown."""
    unit: Unit | None = None
    """None for classes, months and truths."""
    working: Working | None = None
    """None for a fact that the record states."""
    method: str = ""
    """Id of the method, empty for a stated fact."""
    sources: tuple[str, ...] = ()
    figures: int = shown.FIGURES
    asked_figures: bool = False
    """Whether just so many figures are asked for, as of an answer to two figures: then nothing else sets its last digit."""
    written: str = ""
    """A stated number as its author wrote it."""
    more: int = 0
    """Digits to show beside those that it has, in a working that would not come out without them."""
    plus_minus: float | None = None
    low: float | None = None
    high: float | None = None
    undefined_because: str = ""
    """Why the value is None, in a few words."""
    reading: str = ""
    """What a value in letters means, in plain words; shown beside it."""
    months: bool = False
    """Whether the value lists months."""

    def __post_init__(self) -> None:
        members = self.value if isinstance(self.value, tuple) else (self.value,)
        for number in (*members, self.plus_minus, self.low, self.high):
            if isinstance(number, float) and not math.isfinite(number):
                raise ValueError(f"{self.id}: expected finite numbers, found {number}")

    @property
    def is_series(self) -> bool:
        """Whether the value is one number for each month."""
        return isinstance(self.value, tuple) and not self.months

    @property
    def is_number(self) -> bool:
        """Whether the value is a single known number."""
        return isinstance(self.value, float)

    @property
    def number(self) -> float:
        """The value of a fact that is a single known number.

        Raises
        ------
        TypeError
            If it is anything else.
        """
        if not isinstance(self.value, float):
            raise TypeError(f"{self.id}: expected a number, found {self.value!r}")
        return self.value

    @property
    def series(self) -> tuple[float, ...]:
        """The twelve numbers of a monthly fact.

        Raises
        ------
        TypeError
            If it is anything else.
        """
        if not self.is_series:
            raise TypeError(f"{self.id}: expected a series, found {self.value!r}")
        return tuple(float(v) for v in self.value)  # type is settled by the line above

    @property
    def quantity(self) -> Any:
        """The value with its unit, for expressions; months, classes and truths as they are."""
        if self.unit is None or not (self.is_number or self.is_series):
            return self.value
        return self.unit.quantity(list(self.series) if self.is_series else self.value)

    @property
    def shown_members(self) -> tuple[str, ...]:
        """The members of a series as shown, without the unit."""
        if self.written:
            return tuple(shown.written(text) for text in self.written.split())
        return shown.series(self.series, self.figures + self.more)

    @property
    def shown_number(self) -> str:
        """The value as shown, without unit and spread."""
        if self.value is None:
            return self.undefined_because or "not defined"
        if isinstance(self.value, bool):
            return "yes" if self.value else "no"
        if isinstance(self.value, str):
            return f"{self.value} ({self.reading})" if self.reading else self.value
        if self.is_series:
            return ", ".join(self.shown_members)
        if isinstance(self.value, tuple):
            return shown.months(int(m) for m in self.value)
        if self.written:
            return shown.written(self.written)
        place = last_digits.place(self)
        if place is not None:
            return shown.to_place(self.value, place - self.more)
        text = shown.number(self.value, self.figures + self.more)
        return shown.without_zeros(text, 0) if last_digits.is_even(self) else text

    @property
    def shown_exactly(self) -> str:
        """The value with its unit and without its spread, as it stands in a working."""
        if self.unit is None or self.value is None:
            return self.shown_number
        return self.unit.after(self.shown_number)

    @property
    def shown(self) -> str:
        """The value as a reader sees it: `327 mm`, `12 ± 4 kg N ha⁻¹ yr⁻¹`, `12 to 24 kg N ha⁻¹`, `May to August`."""
        if self.unit is None or self.value is None:
            return self.shown_bare
        return self.unit.after(self.shown_bare)

    @property
    def shown_bare(self) -> str:
        """The same without the unit, for a column whose head names it: `12 ± 4`."""
        if self.low is not None and self.high is not None:
            return f"{self._shown_end(self.low)} to {self._shown_end(self.high)}"
        if self.plus_minus is not None and self.is_number:
            return self._shown_with_spread()
        return self.shown_number

    @property
    def shown_working(self) -> str:
        """The working in plain text; what stands there for a stated fact says so."""
        if self.worked:
            return self.worked.text(self.shown_exactly)
        return self.undefined_because or f"{self.shown} (stated in the record)"

    @cached_property
    def worked(self) -> Working | None:
        """The working as it is printed: the shown numbers give the shown result.

        A number in between, which was worked out itself, has more digits there where it takes them; a stated one never.
        """
        if isinstance(self.working, Substitution) and self.is_number:
            return self.working.coming_out(self._comes_of)
        return self.working

    def finer(self, more: int) -> Fact:
        """The fact with so many more digits, where these say anything more."""
        plain, finer = replace(self, more=0), replace(self, more=more)
        return plain if as_shown(plain).value == as_shown(finer).value else finer

    def _comes_of(self, working: Substitution) -> bool:
        """Whether the numbers as the working shows them give the result as it is shown."""
        given = {name: as_shown(fact) for name, fact in working.given if isinstance(fact, Fact)}
        assert self.unit is not None
        try:
            value, _ = _work_out(working.expression, given, self.unit, working.bare)
        except ExpressionError:
            return False
        return value is not None and replace(self, value=value).shown_number == self.shown_number

    def _shown_with_spread(self) -> str:
        """A stated spread as written; a computed one with two figures, and no digit of the value beyond it."""
        if self.written:
            spread = _own_text(self.plus_minus) or repr(self.plus_minus).removesuffix(".0")
            return f"{self.shown_number} ± {shown.written(spread)}"
        return shown.with_spread(self.number, self.plus_minus or 0.0, self.figures)

    def _shown_end(self, end: float) -> str:
        """An end of a range: as written where it is stated, otherwise without the zeros that only fill up decimals."""
        own = _own_text(end)
        return shown.written(own) if own else shown.without_zeros(shown.number(end, self.figures), 0)


class Facts(Mapping[str, Fact]):
    """The facts of one record by id, in the order they were made."""

    def __init__(self, facts: Iterable[Fact]) -> None:
        self._facts: dict[str, Fact] = {}
        for fact in facts:
            if fact.id in self._facts:
                raise ValueError(f"the fact {fact.id} is made twice")
            self._facts[fact.id] = fact

    def __getitem__(self, key: str) -> Fact:
        return self._facts[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self._facts)

    def __len__(self) -> int:
        return len(self._facts)


def stated(
    fact_id: str, name: str, amount: Amount, unit: Unit | None, *, figures: int = shown.FIGURES, sources: Sequence[str] = ()
) -> Fact:
    """The fact that a record states with this amount."""
    return Fact(
        id=fact_id, name=name, value=amount.value, unit=unit, figures=figures, written=amount.written, sources=tuple(sources),
        plus_minus=amount.plus_minus, low=amount.low, high=amount.high,
        undefined_because="not known" if amount.value is None else "",
    )  # fmt: skip


def computed(
    fact_id: str, name: str, expression: Expression, given: Mapping[str, Fact], unit: Unit, *,
    method: str = "", figures: int = shown.FIGURES, sources: Sequence[str] = (), bare: bool = False,
) -> Fact:  # fmt: skip
    """The fact that an expression makes of other facts, with its substitution as working.

    A fact that is not known, or a divisor of zero, makes the new fact undefined; it is never NaN.
    A sum or a difference is shown to the unit at least, for rounded further it would not add up on paper.
    With `bare` the numbers go in without their units, as an empirical formula wants them.

    Raises
    ------
    ExpressionError
        If a name has no fact, the units do not fit, or the result is no single finite number.
    """
    working = Substitution(expression, tuple((name, given[name]) for name in expression.names if name in given), bare)
    value, because = _work_out(expression, given, unit, bare)
    if expression.is_sum and value is not None:
        figures = max(figures, min(shown.whole_digits(value), MOST_WHOLE_DIGITS))
    return Fact(
        id=fact_id, name=name, value=value, unit=unit, working=working, method=method, sources=tuple(sources),
        figures=figures, undefined_because=because,
    )  # fmt: skip


def as_shown(fact: Fact) -> Fact:
    """With the number that a reader sees in place of the unrounded one."""
    if fact.is_series:
        return replace(fact, value=tuple(shown.read(member) for member in fact.shown_members))
    return replace(fact, value=shown.read(fact.shown_number)) if fact.is_number else fact


def in_proportion(fact: Fact, to: Fact) -> Fact:
    """The fact with the spread and the range of the one that it is in proportion to."""
    if fact.value is None or not to.value:
        return fact
    times = fact.number / to.number
    return replace(fact, **{name: end * times for name in ("plus_minus", "low", "high") if (end := getattr(to, name)) is not None})


def in_unit(fact: Fact, target: Unit) -> Fact:
    """The fact itself where it has this unit, otherwise converted with the step shown."""
    if fact.unit is None or fact.unit.label == target.label:
        return fact
    symbol = fact.id.rpartition(".")[2]
    return computed(fact.id, fact.name, Expression(symbol), {symbol: fact}, target, figures=fact.figures)


def _work_out(expression: Expression, given: Mapping[str, Fact], unit: Unit, bare: bool) -> tuple[float | None, str]:
    needed = [given[name] for name in expression.names if name in given]
    if unknown := [fact for fact in needed if fact.value is None]:
        return None, unknown[0].undefined_because or f"{unknown[0].name.lower()} is not known"
    values = {name: (fact.value if bare else fact.quantity) for name, fact in given.items()}
    try:
        result = expression.evaluate(values)
    except ZeroDivisionError:
        return None, "not defined: it would divide by zero"
    try:
        return number_in(Unit("", ()) if bare else unit, result), ""
    except UnitError as error:
        raise ExpressionError(f"{expression.source}: {error}") from None


def _own_text(number: float | None) -> str:
    """The digits as the author wrote them, where the number comes straight out of a record and still knows them."""
    return str(getattr(number, "text", ""))
