"""Evaluation: working out an expression's tree for numbers, series and quantities, in steps that must all be finite and real."""

from __future__ import annotations

import ast
import math
import operator
from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import pairwise
from typing import Any

import pint

from generator.quantities.grammar import ExpressionError, dotted
from generator.quantities.units import DIFFERENCE, Quantity, is_reading, shown_unit

HIGHEST_POWER = 9
"""Of a value with a unit; bare numbers may have any exponent."""
MONTHS = 12
_ARITHMETIC: dict[type[ast.operator], tuple[Callable[[Any, Any], Any], str]] = {
    ast.Add: (operator.add, "added"),
    ast.Sub: (operator.sub, "subtracted"),
    ast.Mult: (operator.mul, "multiplied"),
    ast.Div: (operator.truediv, "divided"),
    ast.Pow: (operator.pow, "raised to a power"),
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


def evaluated(node: ast.expr, given: Mapping[str, Any]) -> Any:
    """The value of a tree that `grammar.parse` has made: a float, a quantity, a series, a text, or true or false.

    Raises
    ------
    ExpressionError
        If an operation does not suit its values, or a step is not a finite real number.
    ZeroDivisionError
        If a divisor is zero.
    """
    match node:
        case ast.Constant(value=str() as text):
            return text
        case ast.Constant(value=int() | float() as constant):
            return float(constant)
        case ast.Name() | ast.Attribute():
            name = str(dotted(node))
            return _taken(name, given[name])
        case ast.UnaryOp(op=ast.USub()):
            return -_measured(evaluated(node.operand, given), "negated")
        case ast.UnaryOp():
            return not _truth(evaluated(node.operand, given), "not")
        case ast.BinOp():
            return _arithmetic(node.op, evaluated(node.left, given), evaluated(node.right, given))
        case ast.BoolOp(op=ast.And()):
            return all(_truth(evaluated(value, given), "and") for value in node.values)
        case ast.BoolOp():
            return any(_truth(evaluated(value, given), "or") for value in node.values)
        case ast.Compare():
            values = [evaluated(part, given) for part in (node.left, *node.comparators)]
            return all(_compared(op, a, b) for op, (a, b) in zip(node.ops, pairwise(values), strict=True))
        case ast.Call(func=ast.Name(id=name)):
            return _finite(FUNCTIONS[name](name, *(evaluated(argument, given) for argument in node.args)))
    raise TypeError(f"{type(node).__name__} was not refused when the expression was read")


def _taken(name: str, value: Any) -> Any:
    """A given value in the few shapes that evaluation knows; whole numbers become floats, so that no power can grow long."""
    if isinstance(value, (bool, str)):
        return value
    try:
        if not isinstance(value, Quantity):
            return tuple(map(_number, value)) if isinstance(value, Iterable) else _number(value)
        if isinstance(value.magnitude, Iterable):
            return Quantity([_number(member) for member in value.magnitude], value.units)
        return Quantity(_number(value.magnitude), value.units)
    except (TypeError, ValueError):
        raise ExpressionError(f"{name} is not a finite number") from None


def _number(value: Any) -> float:
    number = float(value)
    if not math.isfinite(number):
        raise ValueError("not finite")
    return number


def _finite(value: Any) -> Any:
    number = value.magnitude if isinstance(value, Quantity) else value
    if isinstance(number, complex) or (isinstance(number, float) and math.isnan(number)):
        raise ExpressionError("the value is not a real number")
    if isinstance(number, float) and math.isinf(number):
        raise OverflowError
    return value


def _is_series(value: Any) -> bool:
    return isinstance(value, tuple) or (isinstance(value, Quantity) and not isinstance(value.magnitude, float))


def _measured(value: Any, done: str, *, readings: bool = False) -> Any:
    """A single number or quantity, or the reason why this cannot be done with what is there."""
    if isinstance(value, (bool, str)) or _is_series(value):
        raise ExpressionError(f"{_named(value)} cannot be {done}")
    if not readings and is_reading(value):
        why = "only their difference or their mean has a meaning"
        raise ExpressionError(f"temperatures in {shown_unit(value)} cannot be {done}: {why}")
    return value


def _named(value: Any) -> str:
    if isinstance(value, bool):
        return "a condition"
    if isinstance(value, str):
        return f'the text "{value}"'
    if _is_series(value):
        return "a series"
    return shown_unit(value) or "a bare number" if isinstance(value, Quantity) else "a bare number"


def _truth(value: Any, word: str) -> bool:
    if not isinstance(value, bool):
        raise ExpressionError(f"expected a condition such as a < b beside `{word}`, found {_named(value)}")
    return value


def _plain(value: Any, expected: str) -> float:
    """The number of a value without a unit; a share in percent counts as its fraction."""
    if not isinstance(value, Quantity):
        return float(value)
    if not value.dimensionless:
        raise ExpressionError(f"{expected} must have no unit, found {shown_unit(value)}")
    return float(value.m_as(""))


def _arithmetic(op: ast.operator, left: Any, right: Any) -> Any:
    function, done = _ARITHMETIC[type(op)]
    additive = isinstance(op, (ast.Add, ast.Sub))
    a, b = (_measured(value, done, readings=additive) for value in (left, right))
    if isinstance(op, ast.Pow):
        return _finite(_power(a, b))
    if additive:
        a, b = _temperatures(op, a, b, done)
    try:
        return _finite(function(a, b))
    except pint.PintError:
        raise ExpressionError(f"{_named(a)} and {_named(b)} cannot be {done}") from None


def _temperatures(op: ast.operator, a: Any, b: Any, done: str) -> tuple[Any, Any]:
    """A reading less a reading is a difference; a reading more or less a difference is a reading; no other sum has a meaning."""
    if not is_reading(a) and not is_reading(b):
        return a, b
    if is_reading(a) and is_reading(b):
        return (a, b) if isinstance(op, ast.Sub) else (_measured(a, done), b)
    if is_reading(a) and isinstance(b, Quantity) and b.dimensionality == DIFFERENCE.dimensionality:
        return a, b.to(DIFFERENCE)
    if is_reading(b) and isinstance(op, ast.Add) and isinstance(a, Quantity) and a.dimensionality == DIFFERENCE.dimensionality:
        return a.to(DIFFERENCE), b
    raise ExpressionError(f"{_named(a)} and {_named(b)} cannot be {done}")


def _power(base: Any, exponent: Any) -> Any:
    power = _plain(exponent, "an exponent")
    if not isinstance(base, Quantity) or base.dimensionless:
        return _plain(base, "a base") ** power
    if abs(power) > HIGHEST_POWER:
        raise ExpressionError(f"{shown_unit(base)} can be raised to powers up to {HIGHEST_POWER} only")
    return base**power


def _compared(op: ast.cmpop, a: Any, b: Any) -> bool:
    """Two quantities are compared in one unit; a bare number is read in the unit of the other side."""
    if isinstance(op, (ast.In, ast.NotIn)):
        if not isinstance(b, tuple) or isinstance(a, (bool, str)) or _is_series(a):
            raise ExpressionError(f"`in` asks for a month among months, as in 7 in dry_months; found {_named(a)} in {_named(b)}")
        return _COMPARE[type(op)](_plain(a, "a month"), b)
    alike = type(a) is type(b) and isinstance(a, (bool, str, tuple))
    if isinstance(a, (bool, str, tuple)) or isinstance(b, (bool, str, tuple)):
        if not (alike and isinstance(op, (ast.Eq, ast.NotEq))):
            months = " (write 7 in dry_months for a month)" if tuple in (type(a), type(b)) else ""
            raise ExpressionError(f"{_named(a)} and {_named(b)} cannot be compared in this way{months}")
        return _COMPARE[type(op)](a, b)
    a, b = (_measured(value, "compared", readings=True) for value in (a, b))
    return bool(_COMPARE[type(op)](*_in_one_unit([a, b])[0]))


def _in_one_unit(values: Sequence[Any]) -> tuple[list[float], Any]:
    """The numbers of several values in the unit of the first that has one, and that unit, None where all are bare."""
    first = next((value for value in values if isinstance(value, Quantity)), None)
    if first is None:
        return [float(value) for value in values], None
    try:
        return [_number(v.m_as(first.units)) if isinstance(v, Quantity) else float(v) for v in values], first.units
    except pint.PintError:
        other = next(v for v in values if isinstance(v, Quantity) and v.dimensionality != first.dimensionality)
        raise ExpressionError(f"{_named(first)} and {_named(other)} cannot be compared") from None


def _over(function: Callable[[Sequence[float]], float], *, adds: bool = False) -> Callable[..., Any]:
    """Lift a function of numbers to one series, or to several values, with or without units."""

    def lifted(name: str, *arguments: Any) -> Any:
        if len(arguments) == 1:
            numbers, units = _series(name, arguments[0])
        else:
            beside = f"given to {name} beside others"
            numbers, units = _in_one_unit([_measured(value, beside, readings=True) for value in arguments])
            if adds and units is not None and not all(isinstance(value, Quantity) for value in arguments):
                raise ExpressionError(f"{name}: a bare number stands beside values with a unit")
        if adds and units is not None and is_reading(Quantity(0.0, units)):
            _measured(Quantity(0.0, units), "added")
        if not numbers:
            raise ExpressionError(f"{name}: the series is empty")
        result = float(function(numbers))
        return result if units is None else Quantity(result, units)

    return lifted


def _series(name: str, value: Any) -> tuple[list[float], Any]:
    if not _is_series(value):
        raise ExpressionError(f"{name}: expected a series, or several values, found {_named(value)}")
    if isinstance(value, tuple):
        return list(value), None
    return [float(member) for member in value.magnitude], value.units


def _mean(numbers: Sequence[float]) -> float:
    return math.fsum(numbers) / len(numbers)


def _sum_months(name: str, series: Any, first: Any, last: Any) -> Any:
    """The sum over the months first to last, both counted, past December if need be."""
    numbers, units = _series(name, series)
    ends = [_plain(_measured(month, "a month"), "a month") for month in (first, last)]
    if len(numbers) != MONTHS or any(month != int(month) or not 1 <= month <= MONTHS for month in ends):
        raise ExpressionError(f"{name}: expected a series of twelve months, and months from 1 to 12")
    start, end = (int(month) - 1 for month in ends)
    chosen = [numbers[(start + step) % MONTHS] for step in range((end - start) % MONTHS + 1)]
    return FUNCTIONS["sum"](name, tuple(chosen) if units is None else Quantity(chosen, units))


def _count(name: str, series: Any) -> float:
    return float(len(_series(name, series)[0]))


def _of_plain(function: Callable[[float], float]) -> Callable[..., float]:
    """A function of a bare number; a quantity must be dimensionless."""

    def lifted(name: str, value: Any) -> float:
        number = _plain(_measured(value, f"given to {name}", readings=True), f"what is given to {name}")
        try:
            return function(number)
        except ValueError:
            raise ExpressionError(f"{name} is not defined for {number:g}") from None

    return lifted


def _square_root(name: str, value: Any) -> Any:
    number = _measured(value, f"given to {name}")
    if (number.magnitude if isinstance(number, Quantity) else number) < 0:
        raise ExpressionError(f"{name} is not defined below 0")
    return number**0.5


FUNCTIONS: dict[str, Callable[..., Any]] = {
    "sum": _over(math.fsum, adds=True),
    "mean": _over(_mean),
    "max": _over(max),
    "min": _over(min),
    "sum_months": _sum_months,
    "count": _count,
    "exp": _of_plain(math.exp),
    "ln": _of_plain(math.log),
    "log": _of_plain(math.log),
    "sin": _of_plain(math.sin),
    "tan": _of_plain(math.tan),
    "arccos": _of_plain(math.acos),
    "sqrt": _square_root,
    "abs": lambda name, value: abs(_measured(value, f"given to {name}")),
}
"""Every function that an expression may call, by name; each takes its own name first, for what it may have to say."""
