"""Expressions: the one language for formulas, wrong answers and claims, on Python's own parser.

An expression holds numbers, names (dotted ones too), `+ - * / **`, a few named functions, and for claims comparisons
with `and`, `or`, `not`. Nothing else parses, so an expression out of a record can neither run code nor take long.
"""

from __future__ import annotations

import ast
import math
import operator
from collections.abc import Callable, Mapping, Sequence
from functools import cached_property
from itertools import pairwise
from typing import Any

from generator.quantities.units import Quantity

LONGEST = 400
DEEPEST = 40

_BINARY: dict[type[ast.operator], Callable[[Any, Any], Any]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
}
_COMPARE: dict[type[ast.cmpop], Callable[[Any, Any], bool]] = {
    ast.Lt: operator.lt,
    ast.LtE: operator.le,
    ast.Gt: operator.gt,
    ast.GtE: operator.ge,
    ast.Eq: operator.eq,
    ast.NotEq: operator.ne,
    ast.In: lambda item, many: item in many,
    ast.NotIn: lambda item, many: item not in many,
}


class ExpressionError(ValueError):
    """An expression that cannot be read or worked out; `column` counts from 0 within its text."""

    def __init__(self, message: str, column: int = 0) -> None:
        self.column = column
        super().__init__(message)


def _on_series(function: Callable[[Sequence[float]], float]) -> Callable[..., Any]:
    """Lift a function of numbers to one series, or to several values, with or without units."""

    def lifted(*arguments: Any) -> Any:
        if len(arguments) > 1:
            units = next((a.units for a in arguments if isinstance(a, Quantity)), None)
            numbers = [a.m_as(units) if isinstance(a, Quantity) else float(a) for a in arguments]
            return function(numbers) if units is None else Quantity(function(numbers), units)
        (series,) = arguments
        if isinstance(series, Quantity):
            return Quantity(float(function(list(series.magnitude))), series.units)
        return function(list(series))

    return lifted


def _on_plain(function: Callable[[float], float]) -> Callable[[Any], float]:
    """A function of a bare number; a quantity must be dimensionless."""
    return lambda x: function(x.m_as("") if isinstance(x, Quantity) else float(x))


def _sum_months(series: Any, first: float, last: float) -> Any:
    """The sum over the months first to last, both counted, past December if need be."""
    months = [(int(first) - 1 + step) % 12 for step in range((int(last) - int(first)) % 12 + 1)]
    if isinstance(series, Quantity):
        return Quantity(float(sum(series.magnitude[m] for m in months)), series.units)
    return float(sum(series[m] for m in months))


FUNCTIONS: dict[str, Callable[..., Any]] = {
    "sum": _on_series(lambda numbers: float(math.fsum(numbers))),
    "mean": _on_series(lambda numbers: float(math.fsum(numbers) / len(numbers))),
    "max": _on_series(lambda numbers: float(max(numbers))),
    "min": _on_series(lambda numbers: float(min(numbers))),
    "sum_months": _sum_months,
    "count": lambda series: float(len(series)),
    "exp": _on_plain(math.exp),
    "log": _on_plain(math.log),
    "sin": _on_plain(math.sin),
    "tan": _on_plain(math.tan),
    "arccos": _on_plain(math.acos),
    "sqrt": lambda x: x**0.5,
    "abs": abs,
}
"""Every function that an expression may call."""


class Expression:
    """A parsed expression. Equal text makes equal expressions."""

    def __init__(self, source: str) -> None:
        self.source = source
        self.tree = _parse(source)

    def __repr__(self) -> str:
        return f"Expression({self.source!r})"

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Expression) and self.source == other.source

    def __hash__(self) -> int:
        return hash(self.source)

    @cached_property
    def names(self) -> tuple[str, ...]:
        """The names that must be given, in order of first appearance."""
        found: dict[str, None] = {}
        _collect(self.tree, found)
        return tuple(found)

    def value(self, **given: Any) -> Any:
        """The value for the given numbers, series or quantities; names that are not used are refused.

        Raises
        ------
        ExpressionError
            If a name is missing or unknown, a unit does not fit, or the value is not a finite number.
        ZeroDivisionError
            If a divisor is zero: the caller says what undefined means there.
        """
        if unused := set(given) - set(self.names):
            raise ExpressionError(f"{self.source}: expected values for {', '.join(self.names)}, found {', '.join(sorted(unused))}")
        return self.evaluate(given)

    def evaluate(self, given: Mapping[str, Any]) -> Any:
        """As `value`, from a mapping that may hold more (and dotted) names."""
        if missing := [name for name in self.names if name not in given]:
            raise ExpressionError(f"{self.source}: no value for {', '.join(missing)}")
        try:
            result = _evaluate(self.tree, given)
        except OverflowError:
            raise ExpressionError(f"{self.source}: the value is too large") from None
        except ZeroDivisionError:
            raise
        except ExpressionError:
            raise
        except (ValueError, TypeError, AttributeError) as error:
            raise ExpressionError(f"{self.source}: {error}") from None
        number = result.magnitude if isinstance(result, Quantity) else result
        if isinstance(number, complex) or (isinstance(number, float) and not math.isfinite(number)):
            raise ExpressionError(f"{self.source}: the value is not a real number")
        return result


def dotted(node: ast.expr) -> str | None:
    """The dotted name that a node spells, or None when it is something else."""
    if isinstance(node, ast.Name):
        return node.id
    if isinstance(node, ast.Attribute) and (owner := dotted(node.value)):
        return f"{owner}.{node.attr}"
    return None


def _parse(source: str) -> ast.expr:
    if len(source) > LONGEST:
        raise ExpressionError(f"expected at most {LONGEST} characters, found {len(source)}")
    try:
        tree = ast.parse(source.strip(), mode="eval").body
    except SyntaxError as error:
        raise ExpressionError("this is not an expression that can be read", max(0, (error.offset or 1) - 1)) from None
    except (ValueError, RecursionError, MemoryError):
        raise ExpressionError("this is not an expression that can be read") from None
    _refuse_foreign(tree, DEEPEST)
    return tree


def _refuse_foreign(node: ast.AST, depth: int) -> None:
    if depth == 0:
        raise ExpressionError("the expression is nested too deep")
    column = getattr(node, "col_offset", 0)
    match node:
        case ast.Constant(value=bool() | None):
            raise ExpressionError("a number or a name was expected", column)
        case ast.Constant(value=int() | float() | str()):
            return
        case ast.Name() | ast.Attribute() if dotted(node):
            return
        case ast.BinOp(op=op) if type(op) in _BINARY:
            parts: list[ast.AST] = [node.left, node.right]
        case ast.UnaryOp(op=ast.USub() | ast.Not()):
            parts = [node.operand]
        case ast.BoolOp():
            parts = list(node.values)
        case ast.Compare() if all(type(op) in _COMPARE for op in node.ops):
            parts = [node.left, *node.comparators]
        case ast.Call(func=ast.Name(id=name), keywords=[]) if name in FUNCTIONS and node.args:
            parts = list(node.args)
        case ast.Call(func=ast.Name(id=name)):
            raise ExpressionError(f"{name}: expected one of the functions {', '.join(FUNCTIONS)}", column)
        case _:
            raise ExpressionError(f"{type(node).__name__.lower()} has no place in an expression", column)
    for part in parts:
        _refuse_foreign(part, depth - 1)


def _collect(node: ast.AST, found: dict[str, None]) -> None:
    if name := dotted(node) if isinstance(node, ast.expr) else None:
        found[name] = None
        return
    for child in ast.iter_child_nodes(node):
        if not (isinstance(node, ast.Call) and child is node.func):
            _collect(child, found)


def _evaluate(node: ast.expr, given: Mapping[str, Any]) -> Any:
    match node:
        case ast.Constant(value=str() as text):
            return text
        case ast.Constant():
            return float(node.value)  # type of the constant was checked when it was parsed
        case ast.Name() | ast.Attribute():
            return given[str(dotted(node))]
        case ast.UnaryOp(op=ast.USub()):
            return -_evaluate(node.operand, given)
        case ast.UnaryOp():
            return not _evaluate(node.operand, given)
        case ast.BinOp():
            return _BINARY[type(node.op)](_evaluate(node.left, given), _evaluate(node.right, given))
        case ast.BoolOp(op=ast.And()):
            return all(_evaluate(value, given) for value in node.values)
        case ast.BoolOp():
            return any(_evaluate(value, given) for value in node.values)
        case ast.Compare():
            values = [_evaluate(part, given) for part in (node.left, *node.comparators)]
            return all(_compare(op, a, b) for op, (a, b) in zip(node.ops, pairwise(values), strict=True))
        case ast.Call(func=ast.Name(id=name)):
            return FUNCTIONS[name](*(_evaluate(argument, given) for argument in node.args))
    raise ExpressionError(f"{type(node).__name__.lower()} has no place in an expression")


def _compare(op: ast.cmpop, a: Any, b: Any) -> bool:
    """Two quantities are compared in one unit; a bare number is read in the unit of the other side."""
    if isinstance(a, Quantity) and not isinstance(b, Quantity):
        a = a.magnitude
    elif isinstance(b, Quantity) and not isinstance(a, Quantity):
        b = b.magnitude
    elif isinstance(a, Quantity) and isinstance(b, Quantity):
        a, b = a.magnitude, b.m_as(a.units)
    return bool(_COMPARE[type(op)](a, b))
