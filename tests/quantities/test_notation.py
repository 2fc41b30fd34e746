"""Notation: what is written means what was read, with the brackets that this needs and no others."""

from __future__ import annotations

import ast
import operator
import re
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.notation import PlainText, Terms, write
from generator.quantities.units import unit

NUMBERS = {"a": -3.0, "b": 0.25, "c": 2.0, "d": -1.5e8}
OPERATORS: dict[type[ast.operator], Callable[[Fraction, Fraction], Fraction]] = {
    ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul, ast.Div: operator.truediv, ast.Pow: operator.pow,
}  # fmt: skip
SUPERSCRIPT = "⁰¹²³⁴⁵⁶⁷⁸⁹"


def plain(source: str, **stands_for: str) -> str:
    return write(Expression(source), PlainText(stands_for))


def read_back(text: str) -> str:
    """Plain text in the spelling of expressions again; a power of ten stays the product that it is written as."""
    text = text.replace(shown.THIN, "").replace("×", "*").replace("÷", "/").replace(shown.MINUS, "-").replace("^", "**")
    text = re.sub(f"⁻[{SUPERSCRIPT}]+", lambda found: f"**(-{_digits(found[0][1:])})", text)
    return re.sub(f"[{SUPERSCRIPT}]+", lambda found: f"**{_digits(found[0])}", text)


def _digits(superscripts: str) -> str:
    return "".join(str(SUPERSCRIPT.index(sign)) for sign in superscripts)


LEAF = st.one_of(st.sampled_from(sorted(NUMBERS)), st.integers(0, 20).map(str), st.sampled_from(["2.5", "0.125", "1e-7", "3e9"]))
ARITHMETIC = st.recursive(
    LEAF,
    lambda inner: st.one_of(
        st.builds("({}) {} ({})".format, inner, st.sampled_from("+-*/"), inner),
        st.builds("({}) ** {}".format, inner, st.sampled_from(["2", "3", "(-1)", "c", "(1 + 1)"])),
        st.builds("-({})".format, inner), st.builds("max({}, {})".format, inner, inner), st.builds("abs({})".format, inner),
    ),
    max_leaves=8,
)  # fmt: skip


def exactly(source: str) -> Fraction:
    """The value in fractions, worked out here on Python's own tree, so that no rounding can hide or feign a difference."""
    return _exact(ast.parse(source, mode="eval").body)


def _exact(node: ast.expr) -> Fraction:
    match node:
        case ast.Constant():
            return Fraction(str(node.value))
        case ast.Name():
            return Fraction(str(NUMBERS[node.id]))
        case ast.UnaryOp():
            return -_exact(node.operand)
        case ast.BinOp():
            return OPERATORS[type(node.op)](_exact(node.left), _exact(node.right))
        case ast.Call(func=ast.Name(id="abs")):
            return abs(_exact(node.args[0]))
        case ast.Call():
            return max(map(_exact, node.args))
    raise TypeError(node)


@given(ARITHMETIC, st.booleans())
def test_what_is_written_means_what_was_read(source: str, numbers_put_in: bool) -> None:
    """Names or numbers (negative and with powers of ten among them): read as anybody reads, the line has the same value."""
    try:
        value = exactly(source)
    except ZeroDivisionError:
        assume(False)
    stands_for = {name: shown.number(number) for name, number in NUMBERS.items()} if numbers_put_in else {}
    assert value == exactly(read_back(write(Expression(source), PlainText(stands_for))))


@given(ARITHMETIC)
def test_two_signs_never_meet(source: str) -> None:
    assert not re.search(rf"[+×÷{shown.MINUS}^] ?{shown.MINUS}", plain(source, a="−3", b="0.25", c="7", d="−1.5 × 10⁸"))


@pytest.mark.parametrize(
    ("source", "text"),
    [
        ("stock / outflow", "stock ÷ outflow"), ("annual_precip - 2", "annual precipitation − 2"), ("a - (b - c)", "a − (b − c)"),
        ("a - b - c", "a − b − c"), ("a / (b * c)", "a ÷ (b × c)"), ("a / b / c", "a ÷ b ÷ c"), ("a / (b / c)", "a ÷ (b ÷ c)"),
        ("(a + b) * c", "(a + b) × c"), ("a + (b + c)", "a + b + c"), ("-(a * b)", "−(a × b)"), ("(-a) ** 2", "(−a)²"),
        ("-a ** 2", "−a²"), ("(a ** 2) ** 3", "(a²)³"), ("a ** (b + 1)", "a^(b + 1)"), ("a ** 12", "a¹²"), ("a ** -1", "a^(−1)"),
        ("a - -b", "a − (−b)"), ("--a", "−(−a)"), ("a * -b", "a × (−b)"), ("a + (-b + c)", "a + (−b + c)"), ("a ** 0.5", "a^0.5"),
        ("2 * sqrt(a + b)", "2 × sqrt(a + b)"), ("a / 3e9", "a ÷ 3 000 000 000.0"), ("a / 1e-7", "a ÷ (1 × 10⁻⁷)"),
        ("a < 1 and b >= 2", "a < 1 and b ≥ 2"), ("(a < 1 or b < 1) and c < 1", "(a < 1 or b < 1) and c < 1"),
        ("a < 1 or b < 1 and c < 1", "a < 1 or b < 1 and c < 1"), ("not a < 1", "not(a < 1)"), ("1 < a <= b", "1 < a ≤ b"),
        ("7 in site.dry", "7 in site.dry"), ("w == 'dry'", "w = dry"), ("sum_months(rain, 4, 9)", "sum(rain from April to September)"),
        ("sum_months(rain, 1, 12)", "sum(rain from January to December)"), ("sum_months(rain, 0, 13)", "sum(rain from 0 to 13)"),
        ("sum_months(rain, a, 9)", "sum(rain from a to September)"), ("not (a < 1 and b < 1)", "not(a < 1 and b < 1)"),
        ("a < 1 and (b < 1 and c < 1)", "a < 1 and (b < 1 and c < 1)"), ("a < 1 or (b < 1 or c < 1)", "a < 1 or (b < 1 or c < 1)"),
        ("a < 1 and not b < 1", "a < 1 and not(b < 1)"), ("(a < 1 and b < 1) and c < 1", "(a < 1 and b < 1) and c < 1"),
        ("a < 1 and b < 1 or c < 1", "a < 1 and b < 1 or c < 1"), ("a - b < c * 2", "a − b < c × 2"),
    ],
)  # fmt: skip
def test_brackets_stand_where_the_meaning_needs_them(source: str, text: str) -> None:
    assert text == plain(source).replace(shown.THIN, " ")


@pytest.mark.parametrize(
    ("source", "text"),
    [
        ("a - b", "5 mm − (−3 mm)"), ("b - a", "−3 mm − 5 mm"), ("a ** 2", "(5 mm)²"), ("b ** 2", "(−3 mm)²"),
        ("a / g", "5 mm ÷ (1.34 × 10⁷ g)"), ("a * s ** 2", "5 mm × 0.10²"), ("s ** n", "0.10²"), ("b", "−3 mm"),
    ],
)  # fmt: skip
def test_numbers_put_in_get_brackets_by_what_they_look_like(source: str, text: str) -> None:
    assert text == plain(source, a="5 mm", b="−3 mm", g="1.34 × 10⁷ g", s="0.10", n="2")


SERIES = Terms((12.0, -4.0, 7.0), ("12", "−4", "7"), unit("degC"))


@pytest.mark.parametrize(
    ("source", "text"),
    [
        ("sum(s)", "12 + (−4) + 7"), ("2 * sum(s)", "2 × (12 + (−4) + 7)"), ("mean(s)", "(12 + (−4) + 7) ÷ 3"),
        ("1 / mean(s)", "1 ÷ ((12 + (−4) + 7) ÷ 3)"), ("mean(s) ** 2", "((12 + (−4) + 7) ÷ 3)²"),
        ("max(s) - min(s)", "12 °C − (−4 °C)"), ("max(s) ** 2", "(12 °C)²"), ("2 - min(s)", "2 − (−4 °C)"), ("min(s) ** 2", "(−4 °C)²"), ("count(s)", "count(the series)"), ("max(s, t)", "max(the series, t)"),
    ],
)  # fmt: skip
def test_series_is_written_out_with_brackets_around_it_where_needed(source: str, text: str) -> None:
    assert text == write(Expression(source), PlainText({"s": "the series"}, {"the series": SERIES}))
