"""An expression's tree written out, with precedence settled once for every way of writing it."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Generic, NamedTuple, Protocol, TypeVar

from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.grammar import dotted
from generator.quantities.units import Unit

W = TypeVar("W")


class Notation(Protocol[W]):
    """One way of writing expressions: as plain text, as MathML."""

    def name(self, name: str) -> W: ...
    def number(self, text: str) -> W: ...
    def negated(self, inner: W) -> W: ...
    def sum(self, left: W, sign: str, right: W) -> W: ...
    def product(self, left: W, right: W) -> W: ...
    def quotient(self, above: W, below: W) -> W: ...
    def power(self, base: W, exponent: W) -> W: ...
    def call(self, function: str, arguments: list[W]) -> W: ...
    def bracketed(self, inner: W) -> W: ...
    def comparison(self, left: W, sign: str, right: W) -> W: ...

    @property
    def fractions_bracket(self) -> bool:
        """Whether a fraction's parts need brackets: on one line they do, one above the other they do not."""

    @property
    def stands_for(self) -> Mapping[str, str]:
        """What is put in for names, in plain text: it may begin with a minus, or carry a unit, and then need brackets."""

    @property
    def terms(self) -> Mapping[W, Terms]:
        """Series that a call writes out term by term, by their written names."""


_OR, _AND, _NOT, _COMPARISON, _SUM, _PRODUCT, _NEGATED, _MEASURED, _POWER, _ATOM = range(10)
_SIGNS = {ast.Lt: "<", ast.LtE: "≤", ast.Gt: ">", ast.GtE: "≥", ast.Eq: "=", ast.NotEq: "≠", ast.In: "in", ast.NotIn: "not in"}
_WORDS = {
    "temp": "temperature", "precip": "precipitation", "pet": "potential evapotranspiration", "npp": "net primary production",
    "secchi": "Secchi", "pi": "π",
}  # fmt: skip
"""What formulas shorten in their symbols, or write without capitals."""
_DIGITS = re.compile(rf"[\d.{shown.THIN}]+")
_HOLDS_WRITTEN_OUT = {"sum": _SUM, "mean": _PRODUCT}


class _Written(NamedTuple, Generic[W]):
    """What is written, how tightly it holds together, and whether a minus begins it: two signs never meet without a bracket."""

    text: W
    holds: int
    minus: bool = False


def in_words(name: str) -> str:
    """A symbol as it is read: `annual_precip` as "annual precipitation"."""
    return " ".join(_WORDS.get(part, part) for part in name.split("_"))


def write(expression: Expression, notation: Notation[W]) -> W:
    """The expression in the given notation, with the brackets that its meaning needs."""
    return _write(expression.tree, notation).text


def _write(node: ast.expr, n: Notation[W]) -> _Written[W]:
    if name := dotted(node):
        return _Written(n.name(name), *_holds(n.stands_for[name]) if name in n.stands_for else (_ATOM,))
    match node:
        case ast.Constant(value=str() as text):
            return _Written(n.number(text), _ATOM)
        case ast.Constant():
            number = shown.written(str(node.value))
            return _Written(n.number(number), *_holds(number))
        case ast.UnaryOp(op=ast.USub()):
            return _Written(n.negated(_right(_NEGATED, node.operand, n)), _NEGATED, minus=True)
        case ast.UnaryOp():
            return _Written(n.call("not", [_write(node.operand, n).text]), _NOT)
        case ast.BinOp():
            return _binary(node, n)
        case ast.Call(func=ast.Name(id=function)):
            return _call(function, [_write(argument, n) for argument in node.args], n)
        case ast.Compare():
            written = _at_least(_SUM, node.left, n)
            for op, part in zip(node.ops, node.comparators, strict=True):
                written = n.comparison(written, _SIGNS[type(op)], _at_least(_SUM, part, n))
            return _Written(written, _COMPARISON)
        case ast.BoolOp(op=op, values=[first, *others]):
            word, holds = ("and", _AND) if isinstance(op, ast.And) else ("or", _OR)
            written = _at_least(holds + 1, first, n)
            for part in others:
                written = n.comparison(written, word, _at_least(holds + 1, part, n))
            return _Written(written, holds)
    raise TypeError(f"{type(node).__name__} has no notation")


def _binary(node: ast.BinOp, n: Notation[W]) -> _Written[W]:
    in_line = n.fractions_bracket
    match node.op:
        case ast.Add() | ast.Sub() as op:
            minus = isinstance(op, ast.Sub)
            right = _right(_PRODUCT if minus else _SUM, node.right, n)
            left = _write(node.left, n)
            return _Written(n.sum(_bracketed(_SUM, left, n), shown.MINUS if minus else "+", right), _SUM, left.minus)
        case ast.Mult():
            left = _write(node.left, n)
            return _Written(n.product(_bracketed(_PRODUCT, left, n), _right(_PRODUCT, node.right, n)), _PRODUCT, left.minus)
        case ast.Div() if in_line:
            left = _write(node.left, n)
            return _Written(n.quotient(_bracketed(_PRODUCT, left, n), _right(_NEGATED, node.right, n)), _PRODUCT, left.minus)
        case ast.Div():
            return _Written(n.quotient(_write(node.left, n).text, _write(node.right, n).text), _PRODUCT)
        case _:
            exponent = _at_least(_ATOM, node.right, n) if in_line else _write(node.right, n).text
            return _Written(n.power(_at_least(_ATOM, node.left, n), exponent), _POWER)


def _call(function: str, arguments: list[_Written[W]], n: Notation[W]) -> _Written[W]:
    text = n.call(function, [argument.text for argument in arguments])
    first = arguments[0].text
    members = n.terms[first].written_out(function) if len(arguments) == 1 and first in n.terms else None
    if members is None:
        return _Written(text, _ATOM)
    if function in _HOLDS_WRITTEN_OUT:
        return _Written(text, _HOLDS_WRITTEN_OUT[function])
    return _Written(text, *_holds(members[0]))


def _holds(text: str) -> tuple[int, bool]:
    """How tightly a number with its unit holds together, and whether a minus begins it."""
    minus = text.startswith(shown.MINUS)
    if "×" in text:
        return _PRODUCT, minus
    return _NEGATED if minus else _ATOM if _DIGITS.fullmatch(text) else _MEASURED, minus


def _at_least(tightness: int, node: ast.expr, n: Notation[W]) -> W:
    return _bracketed(tightness, _write(node, n), n)


def _right(tightness: int, node: ast.expr, n: Notation[W]) -> W:
    """What follows a sign: it stands in brackets also where it begins with a minus."""
    written = _write(node, n)
    return n.bracketed(written.text) if written.minus else _bracketed(tightness, written, n)


def _bracketed(tightness: int, written: _Written[W], n: Notation[W]) -> W:
    return n.bracketed(written.text) if written.holds < tightness else written.text


@dataclass(frozen=True)
class Terms:
    """A series whose members can be written out."""

    values: tuple[float, ...]
    shown: tuple[str, ...]
    unit: Unit | None

    def written_out(self, function: str) -> tuple[str, ...] | None:
        """The members that the function works on: all for a sum or a mean, one with its unit for an extreme."""
        if function in ("sum", "mean"):
            return tuple(map(_signed, self.shown))
        if function in ("max", "min"):
            value = (max if function == "max" else min)(self.values)
            member = self.shown[self.values.index(value)]
            return (self.unit.after(member) if self.unit else member,)
        return None

    def in_full(self, function: str, arguments: list[str]) -> str:
        """A function of the series with its members and their unit: `(26 + 48) mm`; empty for one that has no such form."""
        if function == "sum_months" and all(one.isdecimal() for one in arguments):
            start, end = (int(month) - 1 for month in arguments)
            return self._together(self.shown[(start + step) % len(self.shown)] for step in range((end - start) % len(self.shown) + 1))
        if function in ("sum", "mean"):
            together = self._together(self.shown)
            return together if function == "sum" else f"({together} ÷ {len(self.shown)})"
        if function == "count":
            return str(len(self.shown))
        return (self.written_out(function) or ("",))[0]

    def _together(self, members: Iterable[str]) -> str:
        added = f"({' + '.join(map(_signed, members))})"
        return self.unit.after(added) if self.unit else added


class PlainText:
    """One line of text; names are replaced by what stands for them (a number with its unit), or by words."""

    fractions_bracket = True

    def __init__(self, stands_for: dict[str, str] | None = None, terms: dict[str, Terms] | None = None) -> None:
        self.stands_for = stands_for or {}
        self.terms = terms or {}
        """Series by the name they go by, so that a sum over one can be written out term by term."""

    def name(self, name: str) -> str:
        return self.stands_for.get(name, in_words(name))

    def number(self, text: str) -> str:
        return text

    def negated(self, inner: str) -> str:
        return f"{shown.MINUS}{inner}"

    def sum(self, left: str, sign: str, right: str) -> str:
        return f"{left} {sign} {right}"

    def product(self, left: str, right: str) -> str:
        return f"{left} × {right}"

    def quotient(self, above: str, below: str) -> str:
        return f"{above} ÷ {below}"

    def power(self, base: str, exponent: str) -> str:
        if exponent.isdecimal():
            return f"{base}{exponent.translate(str.maketrans('0123456789', '⁰¹²³⁴⁵⁶⁷⁸⁹'))}"
        return f"{base}^{exponent}"

    def call(self, function: str, arguments: list[str]) -> str:
        (first, *rest) = arguments
        members = self.terms[first].written_out(function) if first in self.terms and not rest else None
        if members is not None:
            together = " + ".join(members)
            return f"({together}) ÷ {len(members)}" if function == "mean" else together
        if function == "sum_months":
            return f"sum({first} from {_month(rest[0])} to {_month(rest[1])})"
        return f"{function}({', '.join(arguments)})"

    def bracketed(self, inner: str) -> str:
        return f"({inner})"

    def comparison(self, left: str, sign: str, right: str) -> str:
        return f"{left} {sign} {right}"


class SetUpText(PlainText):
    """As plain text, but every series with its numbers and their unit, as the set-up of a sum on paper wants it."""

    def __init__(self, stands_for: dict[str, str], members: dict[str, Terms]) -> None:
        super().__init__(stands_for)
        self.members = members

    def power(self, base: str, exponent: str) -> str:
        return super().power(f"({base})" if " " in base and not base.endswith(")") else base, exponent)

    def call(self, function: str, arguments: list[str]) -> str:
        first, *rest = arguments
        written = self.members[first].in_full(function, rest) if first in self.members else ""
        return written or super().call(function, arguments)


def _signed(term: str) -> str:
    return f"({term})" if term.startswith(shown.MINUS) else term


def _month(number: str) -> str:
    return shown.MONTHS[int(number) - 1] if number.isdecimal() and 1 <= int(number) <= 12 else number
