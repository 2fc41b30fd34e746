"""Expressions: their names, what they give, and that they agree with Python."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.expression import Expression, ExpressionError

NAMES = {"a": 2.5, "b": -0.75, "c": 4.0, "soil.depth": 0.5}


def python_text() -> st.SearchStrategy[str]:
    """Random arithmetic in the spelling that Python shares, dotted names written as `soil.depth`."""
    leaf = st.one_of(
        st.sampled_from(sorted(NAMES)), st.integers(0, 12).map(str), st.decimals("0.01", "99", places=2).map(str)
    )
    return st.recursive(
        leaf,
        lambda inner: st.one_of(
            st.builds("{}{}{}".format, inner, st.sampled_from([" + ", " - ", "*", " / "]), inner),
            st.builds("({} {} {})".format, inner, st.sampled_from("+-*/"), inner),
            st.builds("{}**{}".format, inner, st.integers(0, 2)),
            st.builds("-{}".format, inner), st.builds("({})".format, inner),
        ),
        max_leaves=8,
    )  # fmt: skip


def by_python(text: str) -> float | str:
    """Python's own answer, or the name of the error that it ends in."""
    names = {**{name: value for name, value in NAMES.items() if "." not in name}, "soil": type("Soil", (), {"depth": NAMES["soil.depth"]})}
    floats = "".join(f"{piece}.0" if piece.isdecimal() else piece for piece in _pieces(text))
    try:
        result = eval(floats, {"__builtins__": {}}, names)
    except (ZeroDivisionError, OverflowError) as error:
        return type(error).__name__
    return result if math.isfinite(result) else "OverflowError"


def _pieces(text: str) -> list[str]:
    pieces, word = [], ""
    for character in text:
        if character.isalnum() or character in "._":
            word += character
        else:
            pieces += [word, character]
            word = ""
    return [*pieces, word]


def by_us(text: str) -> float | str:
    try:
        return float(Expression(text).evaluate(NAMES))
    except ZeroDivisionError:
        return "ZeroDivisionError"
    except ExpressionError as error:
        assert "too large" in str(error)
        return "OverflowError"


@given(python_text())
def test_arithmetic_agrees_with_python(text: str) -> None:
    """Precedence, association, unary minus before a power: our value is the one of Python's own evaluation."""
    assert by_python(text) == by_us(text)


@pytest.mark.parametrize(
    ("source", "value"),
    [
        ("1 - 2 - 3", -4.0), ("2 ** 3 ** 2", 512.0), ("-2 ** 2", -4.0), ("8 / 4 / 2", 1.0), ("2 * 3 + 4", 10.0), (" 7 ", 7.0),
        ("1e3", 1000.0), (".5 + 1.", 1.5), ("sqrt(16)", 4.0), ("abs(-3)", 3.0), ("max(1, 5, 3)", 5.0), ("mean(1, 2)", 1.5),
        ("log(exp(2))", 2.0), ("(1\n + 2)", 3.0), ("1 < 2 <= 2", True), ("3 > 2 > 2", False), ("not 1 > 2", True),
        ("1 > 2 or 2 > 1 and 3 > 2", True), ("'arid' == 'arid'", True), ("1 != 2", True),
    ],
)  # fmt: skip
def test_value_of_plain_expression(source: str, value: float | bool) -> None:
    assert value == Expression(source).value()


def test_names_come_in_order_of_appearance_and_once() -> None:
    assert ("b", "a", "site.c") == Expression("b + a * max(b, site.c)").names


def test_function_is_not_among_the_names() -> None:
    assert ("x",) == Expression("sum(x) + exp(1)").names


@pytest.mark.parametrize("word", ["yield", "import", "return", "from", "class", "lambda"])
def test_fact_may_have_a_name_that_python_reserves(word: str) -> None:
    expression = Expression(f"2 * {word} + wood.{word}")
    assert (word, f"wood.{word}") == expression.names
    assert 7.0 == expression.evaluate({word: 3.0, f"wood.{word}": 1.0})


def test_text_between_quotes_is_kept_as_written() -> None:
    assert Expression("use == 'import, yield = 2'").evaluate({"use": "import, yield = 2"})


def test_equal_text_makes_equal_expressions() -> None:
    assert Expression("a + b") == Expression("a + b") != Expression("b + a")
    assert 1 == len({Expression("a"), Expression("a")})


def test_value_refuses_what_is_not_used() -> None:
    with pytest.raises(ExpressionError, match="expected values for a, found b"):
        Expression("a").value(b=1.0)


def test_evaluate_takes_a_mapping_that_holds_more() -> None:
    assert 1.0 == Expression("a").evaluate({"a": 1.0, "b": None})


def test_missing_name_is_told() -> None:
    with pytest.raises(ExpressionError, match=r"a \+ b: no value for a, b"):
        Expression("a + b").evaluate({})


@pytest.mark.parametrize(
    ("source", "is_sum"),
    [
        ("a", True), ("a + b", True), ("a - b - c", True), ("-a + b", True), ("sum(s)", True), ("max(a, b) - min(a, c)", True), ("-sum(a, b)", True),
        ("a * b", False), ("a + b * c", False), ("a * b + c", False), ("-(a / b)", False), ("sum(a, 2 * b)", False), ("sum(2 * b, a)", False),
        ("mean(s)", False), ("sqrt(a)", False), ("a ** 2", False),
    ],
)  # fmt: skip
def test_sums_and_differences_of_facts_are_known_from_other_expressions(source: str, is_sum: bool) -> None:
    assert is_sum is Expression(source).is_sum


def test_expressions_of_the_same_text_are_equal_and_say_their_text() -> None:
    assert 1 == len({Expression("a + b"), Expression("a + b")})
    assert "Expression('a + b')" == repr(Expression("a + b"))
    assert Expression("a + b") != "a + b"
