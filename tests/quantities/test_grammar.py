"""Grammar: what may not stand in an expression, and in which words it is refused."""

from __future__ import annotations

import keyword
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
    ("a < b is c", "write == or != instead of `is`"),
    ("a is not b", "write == or != instead of `is`"),
    ("a in b in c", "compare two at a time"),
    ("sum(a, *b)", "expected a series, or values to add"),
    ("sum(a, **b)", "expected a series, or values to add"),
    ("a == 'x' and b ^ 2", "^ is written ** here"),
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


@pytest.mark.parametrize(("source", "piece"), [("  a + f'x'", "f'x'"), ("α + 0x1", "0x1"), ("ä * g(1)", "g(1)"), ("a ≤ 1", "≤ 1"), ("a == 'x' and b ^ 2", "^ 2"), ("a == 'x' and b < 0x1", "0x1")])
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


@pytest.mark.parametrize("source", ["a < b <= c", "a >= b > c", "a == b == c", "a != b", "a in m", "a not in m", "not a < b"])
def test_comparisons_that_can_be_read(source: str) -> None:
    assert source == Expression(source).source


def test_longest_and_deepest_expressions_are_read_and_the_next_ones_are_not() -> None:
    assert Expression("a" * 2000).evaluate({"a" * 2000: 1.0}) == 1.0
    assert "at most 2000 characters, found 2001" in told("a" * 2001)
    assert Expression("-" * 99 + "a").evaluate({"a": 1.0}) == -1.0
    assert "nested too deep" in told("-" * 100 + "a")


MOST = {"sum": 99, "mean": 99, "max": 99, "min": 99, "sum_months": 3}
"""How many arguments a function takes at most; all others take one."""


@pytest.mark.parametrize("name", ARGUMENTS)
def test_function_takes_neither_fewer_nor_more_arguments_than_it_can_use(name: str) -> None:
    most = MOST.get(name, 1)
    fewest = 3 if name == "sum_months" else 1
    for count in {fewest, most}:
        assert Expression(f"{name}({', '.join(['a'] * count)})").names == ("a",)
    for count in (fewest - 1, most + 1):
        assert f"between the brackets of {name}" in told(f"{name}({', '.join(['a'] * count)})")


RESERVED = [word for word in keyword.kwlist if word not in {"and", "or", "not", "in", "is", "True", "False", "None"}]


@pytest.mark.parametrize("word", RESERVED)
def test_fact_may_have_a_name_that_python_reserves(word: str) -> None:
    """Also with an owner before it, and inside a longer name."""
    given_facts = {word: 3.0, f"soil.{word}": 4.0, f"{word}_a": 5.0}
    assert Expression(f"{word} + soil.{word} * {word}_a").evaluate(given_facts) == 23.0
    assert Expression(word).names == (word,)


def test_signs_between_quotes_are_part_of_the_text() -> None:
    assert Expression("w == 'wet' or w == 'hot & dry = bare'").evaluate({"w": "hot & dry = bare"})


def test_what_is_wrong_as_a_whole_is_told_at_its_beginning() -> None:
    with pytest.raises(ExpressionError) as refused:
        Expression("")
    assert 0 == refused.value.column
