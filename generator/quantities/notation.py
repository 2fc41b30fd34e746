"""An expression's tree written out, with precedence settled once for every way of writing it."""

from __future__ import annotations

import ast
from dataclasses import dataclass
from typing import Protocol, TypeVar

from generator.quantities import shown
from generator.quantities.expression import Expression, dotted
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

    fractions_bracket: bool
    """Whether a fraction's parts need brackets: on one line they do, one above the other they do not."""


_SUM, _PRODUCT, _NEGATED, _POWER, _ATOM = 1, 2, 3, 4, 5
_SIGNS = {ast.Lt: "<", ast.LtE: "≤", ast.Gt: ">", ast.GtE: "≥", ast.Eq: "=", ast.NotEq: "≠", ast.In: "in", ast.NotIn: "not in"}


def write(expression: Expression, notation: Notation[W]) -> W:
    """The expression in the given notation."""
    return _write(expression.tree, notation)[0]


def _write(node: ast.expr, n: Notation[W]) -> tuple[W, int]:
    """What is written, and how tightly it holds together."""
    if name := dotted(node):
        return n.name(name), _ATOM
    match node:
        case ast.Constant(value=str() as text):
            return n.number(text), _ATOM
        case ast.Constant():
            return n.number(shown.written(str(node.value))), _ATOM
        case ast.UnaryOp(op=ast.USub()):
            return n.negated(_at_least(_NEGATED, node.operand, n)), _NEGATED
        case ast.BinOp(op=ast.Add() | ast.Sub() as op):
            minus = isinstance(op, ast.Sub)
            left, right = _at_least(_SUM, node.left, n), _at_least(_PRODUCT if minus else _SUM, node.right, n)
            return n.sum(left, shown.MINUS if minus else "+", right), _SUM
        case ast.BinOp(op=ast.Mult()):
            return n.product(_at_least(_PRODUCT, node.left, n), _at_least(_PRODUCT, node.right, n)), _PRODUCT
        case ast.BinOp(op=ast.Div()):
            above, below = (_PRODUCT, _NEGATED) if n.fractions_bracket else (_SUM, _SUM)
            return n.quotient(_at_least(above, node.left, n), _at_least(below, node.right, n)), _PRODUCT
        case ast.BinOp():
            exponent = _at_least(_ATOM if n.fractions_bracket else _SUM, node.right, n)
            return n.power(_at_least(_ATOM, node.left, n), exponent), _POWER
        case ast.Call(func=ast.Name(id=function)):
            return n.call(function, [_write(argument, n)[0] for argument in node.args]), _ATOM
        case ast.Compare():
            written = _write(node.left, n)[0]
            for op, part in zip(node.ops, node.comparators, strict=True):
                written = n.comparison(written, _SIGNS[type(op)], _write(part, n)[0])
            return written, 0
        case ast.BoolOp(op=op):
            word = "and" if isinstance(op, ast.And) else "or"
            written = _write(node.values[0], n)[0]
            for part in node.values[1:]:
                written = n.comparison(written, word, _write(part, n)[0])
            return written, 0
        case ast.UnaryOp():
            return n.call("not", [_write(node.operand, n)[0]]), _ATOM
    raise TypeError(f"{type(node).__name__} has no notation")


def _at_least(tightness: int, node: ast.expr, n: Notation[W]) -> W:
    written, holds = _write(node, n)
    return n.bracketed(written) if holds < tightness else written


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
            return (_signed(self.unit.after(member) if self.unit else member),)
        return None


class PlainText:
    """One line of text; names are replaced by what stands for them (a number with its unit), or by words."""

    fractions_bracket = True

    def __init__(self, stands_for: dict[str, str] | None = None, terms: dict[str, Terms] | None = None) -> None:
        self.stands_for = stands_for or {}
        self.terms = terms or {}
        """Series by the name they go by, so that a sum over one can be written out term by term."""

    def name(self, name: str) -> str:
        return self.stands_for.get(name, name.replace("_", " "))

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
            together = members[0] if len(members) == 1 else f"({' + '.join(members)})"
            return f"{together} ÷ {len(members)}" if function == "mean" else together
        if function == "sum_months":
            return f"{first} from {_month(rest[0])} to {_month(rest[1])}"
        return f"{function}({', '.join(arguments)})"

    def bracketed(self, inner: str) -> str:
        return f"({inner})"

    def comparison(self, left: str, sign: str, right: str) -> str:
        return f"{left} {sign} {right}"


def _signed(term: str) -> str:
    return f"({term})" if term.startswith(shown.MINUS) else term


def _month(number: str) -> str:
    return shown.MONTHS[int(number) - 1] if number.isdecimal() and 1 <= int(number) <= 12 else number
