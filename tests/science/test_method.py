"""The two sorts of Method, and the register of all of them."""

from __future__ import annotations

import operator

import pytest

from generator.quantities.expression import Expression, ExpressionError
from generator.quantities.notation import in_words
from generator.science import METHODS, Method


def made(**changes: object) -> Method:
    fields: dict[str, object] = {
        "id": "speed",
        "name": "Speed",
        "formula": ("speed = distance / time",),
        "symbols": (("speed", "speed", "m/s"), ("distance", "distance", "m"), ("time", "time", "s")),
        "sources": (),
        "limits": "None.",
    }
    return Method(**{**fields, **changes})


def test_one_formula_line_is_what_is_computed() -> None:
    """The expression is the right-hand side of the line, and compute works it out."""
    assert Expression("distance / time") == made().expression
    assert 4.0 == made().compute(distance=12.0, time=3.0)


def test_function_is_what_is_computed_where_there_is_one() -> None:
    """A function method calls its function, and has no expression to offer."""
    method = made(function=lambda distance, time: distance * time)
    assert 36.0 == method.compute(distance=12.0, time=3.0)
    with pytest.raises(TypeError, match="speed: expected a method of one formula line"):
        str(method.expression)


def test_two_lines_need_a_function() -> None:
    """Which of two lines to compute cannot be guessed."""
    with pytest.raises(ValueError, match="speed: expected one formula line or a function, found 2 lines"):
        made(formula=("a = b", "b = c"))


def test_method_without_words_is_refused() -> None:
    """A function alone would leave a page with nothing to say."""
    with pytest.raises(ValueError, match="speed: expected a formula or a rule, found neither"):
        made(formula=(), function=lambda: 0.0)


def test_missing_value_is_told() -> None:
    """An expression that lacks a value names it."""
    with pytest.raises(ExpressionError, match="no value for time"):
        made().compute(distance=12.0)


def test_register_is_sorted_and_keyed_by_id() -> None:
    """METHODS holds each method once, under its own id, in order, and cannot be changed."""
    assert sorted(METHODS) == list(METHODS)
    assert list(METHODS) == [method.id for method in METHODS.values()]
    with pytest.raises(TypeError):
        operator.setitem(METHODS, "balance", METHODS["closes"])


@pytest.mark.parametrize("method", [m for m in METHODS.values() if m.function is None], ids=lambda m: m.id)
def test_expression_method_computes_the_symbol_it_is_about(method: Method) -> None:
    """The names of the expression are the symbols other than the one on the left."""
    left = method.formula[0].partition(" = ")[0]
    assert {symbol for symbol, _, _ in method.symbols} - {left} == set(method.expression.names)


@pytest.mark.parametrize("method", METHODS.values(), ids=lambda m: m.id)
def test_symbols_are_told_in_other_words_than_their_own(method: Method) -> None:
    """“Aridity index: aridity index” would tell nothing."""
    assert [] == [name for name, meaning, _ in method.symbols if in_words(name).casefold() == meaning.casefold().removeprefix("the ")]
