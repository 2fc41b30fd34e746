"""Expressions: the one language for formulas, wrong answers and claims, on Python's own parser.

An expression holds numbers, names (dotted ones too), `+ - * / **`, a few named functions, and for claims comparisons
with `and`, `or`, `not`. Nothing else parses, so an expression out of a record can neither run code nor take long.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from functools import cached_property
from typing import Any

from generator.quantities.evaluation import FUNCTIONS, evaluated
from generator.quantities.grammar import ExpressionError, dotted, parse

__all__ = ["FUNCTIONS", "Expression", "ExpressionError", "dotted"]


class Expression:
    """A parsed expression. Equal text makes equal expressions.

    Raises
    ------
    ExpressionError
        If the text cannot be read; the message says which piece of it.
    """

    def __init__(self, source: str) -> None:
        self.source = source
        self.tree = parse(source)

    def __repr__(self) -> str:
        return f"Expression({self.source!r})"

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Expression) and self.source == other.source

    def __hash__(self) -> int:
        return hash(self.source)

    @cached_property
    def names(self) -> tuple[str, ...]:
        """The names that must be given, in order of first appearance."""
        return tuple(dict.fromkeys(_names(self.tree)))

    @cached_property
    def is_sum(self) -> bool:
        """Whether it only adds and subtracts, so that its value is as sure as the last place of its terms."""
        return _only_adds(self.tree)

    @cached_property
    def is_share(self) -> bool:
        """Whether it is one sum over another: a share, or how many times one holds the other."""
        match self.tree:
            case ast.BinOp(op=ast.Div(), left=above, right=below):
                return _only_adds(above) and _only_adds(below)
        return False

    @cached_property
    def is_name(self) -> bool:
        """Whether it is one name and nothing else, as of a number that is turned into another unit."""
        return dotted(self.tree) is not None

    @cached_property
    def is_pick(self) -> bool:
        """Whether it is the largest or the smallest of what is given, and no sum of it."""
        match self.tree:
            case ast.Call(func=ast.Name(id="max" | "min")):
                return True
        return False

    @cached_property
    def is_mean(self) -> bool:
        """Whether it is the mean of one series and nothing else: there is no step on the way that could be rounded."""
        match self.tree:
            case ast.Call(func=ast.Name(id="mean"), args=[series]):
                return dotted(series) is not None
        return False

    def value(self, **given: Any) -> Any:
        """The value for the given numbers, series or quantities; names that are not used are refused.

        Raises
        ------
        ExpressionError
            If a name is missing or unknown, a unit does not fit, or the value is not a finite real number.
        ZeroDivisionError
            If a divisor is zero: the caller says what undefined means there.
        """
        if unused := set(given) - set(self.names):
            found = ", ".join(sorted(unused))
            raise ExpressionError(f"{self.source}: expected values for {', '.join(self.names)}, found {found}")
        return self.evaluate(given)

    def evaluate(self, given: Mapping[str, Any]) -> Any:
        """As `value`, from a mapping that may hold more (and dotted) names."""
        if missing := [name for name in self.names if name not in given]:
            raise ExpressionError(f"{self.source}: no value for {', '.join(missing)}")
        try:
            return evaluated(self.tree, given)
        except OverflowError:
            raise ExpressionError(f"{self.source}: the value is too large") from None
        except ExpressionError as error:
            raise ExpressionError(f"{self.source}: {error}") from None


def _names(node: ast.AST) -> Iterator[str]:
    if name := dotted(node):
        yield name
        return
    for child in ast.iter_child_nodes(node):
        if not (isinstance(node, ast.Call) and child is node.func):
            yield from _names(child)


def _only_adds(node: ast.expr) -> bool:
    match node:
        case ast.BinOp(op=ast.Add() | ast.Sub()):
            return _only_adds(node.left) and _only_adds(node.right)
        case ast.UnaryOp(op=ast.USub()):
            return _only_adds(node.operand)
        case ast.Call(func=ast.Name(id="sum" | "max" | "min")):
            return all(map(_only_adds, node.args))
    return dotted(node) is not None
