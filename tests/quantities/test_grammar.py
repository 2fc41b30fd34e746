"""Grammar: what may not stand in an expression, and in which words it is refused."""

from __future__ import annotations

import time
import warnings

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.evaluation import FUNCTIONS
from generator.quantities.expression import Expression, ExpressionError
from generator.quantities.grammar import ARGUMENTS, DEEPEST, LONGEST


def told(source: str, **given: float) -> str:
    """What is said about an expression that must be refused."""
    with pytest.raises(ExpressionError) as refused:
        Expression(source).evaluate(given)
    return str(refused.value)


REFUSED = [
    ("", "expected an expression, found nothing"),
    (" \n ", "found nothing"),
    ("__import__('os').system('true')", "__import__('os').system is not a function"),
    ("a.__class__()", "a.__class__ is not a function"),
    ("(1).real", "has no place"),
    ("''.join('a')", "is not a function"),
    ("open('x')", "open is not a function here"),
    ("eval('1')", "eval is not a function here"),
    ("f'{a}'", "f'{a}' has no place in an expression"),
    ("f''", "f'' has no place"),
    ("b'x'", "b'x' has no place"),
    ("a[0]", "[ has no place"),
    ("[1, 2]", "[ has no place"),
    ("{1: 2}", "{ has no place"),
    ("lambda: 1", ": has no place"),
    ("(a := 1)", ": has no place"),
    ("a if b else c", 'if b else c" cannot be read'),
    ("[x for x in y]", "[ has no place"),
    ("sum(x for x in y)", "cannot be read"),
    ("await a", '"a" cannot be read'),
    ("...", "... has no place"),
    ("1j", "1j is neither a number"),
    ("0x10", "0x10 is neither a number"),
    ("1_000", "1_000 is neither a number"),
    ("2a", "2a is neither a number"),
    ("1or 2", "1or is neither a number"),
    ("1e999", "too large for a number"),
    ("9" * 400, "too large for a number"),
    ("True", "True is not needed"),
    ("None", "None is not needed"),
    ("+a", "leave out the + that begins +a"),
    ("~a", "~ has no place"),
    ("a % b", "% has no place"),
    ("a // b", "write / to divide"),
    ("a @ b", "@ has no place"),
    ("a << 2", "has no place"),
    ("a & b", "& is written and here"),
    ("a ^ 2", "^ is written ** here"),
    ("a × b", "× is written * here"),
    ("a − b", "− is written - here"),
    ("a ≤ b", "≤ is written <= here"),
    ("a²", "² is written **2 here"),
    ("a = b", "write == to ask"),
    ("!a", "! is written not here"),
    ("a is b", "write == or != instead of `is`"),
    ("a < b > c", "compare two at a time and join them with `and`"),
    ("a != b != c", "compare two at a time"),
    ("a, b", "a comma stands only between"),
    ("a < 0,65", "decimals have a point"),
    ("a # b", "# has no place"),
    ("a; b", "; has no place"),
    ("a\\\n+ b", "\\ has no place"),
    ("'\\d'", "\\ has no place"),
    ("a b", '"b" cannot be read'),
    ("a +", "cannot be read|breaks off"),
    ("(a", "there are more ( than )"),
    ("a)", "there are more ) than ("),
    ("'a", "cannot be read"),
    ("a\x00", "cannot be read"),
    ("sum()", "expected a series, or values to add between the brackets of sum"),
    ("sum(*a)", "expected a series"),
    ("sum_months(a, 4)", "the first month and the last"),
    ("abs(a, b)", "expected one number"),
    ("1" + "+1" * LONGEST, f"at most {LONGEST} characters"),
    ("-" * (DEEPEST + 1) + "1", "nested too deep"),
    ("(" * 900 + "1" + ")" * 900, "cannot be read"),
    ("a" + ".b" * 500, ""),
]


@pytest.mark.parametrize(("source", "words"), REFUSED, ids=[source[:20] for source, _ in REFUSED])
def test_hostile_or_foreign_text_is_refused_in_words(source: str, words: str) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        said = told(source)
    assert any(word in said for word in words.split("|"))
    assert not any(jargon in said for jargon in ("joinedstr", "binop", "NoneType", "object", "_ast"))


@pytest.mark.parametrize(("source", "piece"), [("  a + f'x'", "f'x'"), ("α + 0x1", "0x1"), ("ä * g(1)", "g(1)"), ("a ≤ 1", "≤ 1")])
def test_column_points_at_the_piece(source: str, piece: str) -> None:
    with pytest.raises(ExpressionError) as refused:
        Expression(source)
    assert source.index(piece) == refused.value.column


@given(st.text(alphabet="ab01.+-*/()<>=! 'andort,_e[]{}:\\\"fsum", max_size=40))
def test_any_text_is_read_or_refused(text: str) -> None:
    """Nothing but a refusal gets out of reading."""
    try:
        assert text == Expression(text).source
    except ExpressionError as refused:
        assert str(refused)


@pytest.mark.parametrize("source", ["9**9**9**9", "(((9**9)**9)**9)**9", "a**a**a", "*".join(["9**99"] * 40)])
def test_no_power_takes_long(source: str) -> None:
    """In whole numbers the first would not end; a second is thousands of times what it takes."""
    begun = time.perf_counter()
    assert "too large" in told(source, **({"a": 10**6} if "a" in source else {}))
    assert 1.0 > time.perf_counter() - begun


def test_functions_and_their_arguments_are_the_same_list() -> None:
    assert list(ARGUMENTS) == list(FUNCTIONS)
