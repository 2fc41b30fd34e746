"""Evaluation: steps that are not finite and real, values that do not suit, and units."""

from __future__ import annotations

import math
import operator
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.expression import Expression, ExpressionError
from generator.quantities.units import unit

RAIN = unit("mm").quantity([12, 10, 16, 26, 48, 66, 42, 34, 26, 20, 15, 12])


def amount(number: float, label: str) -> Any:
    return unit(label).quantity(number)


def told(source: str, **given: Any) -> str:
    """What is said about an expression that must be refused."""
    with pytest.raises(ExpressionError) as refused:
        Expression(source).evaluate(given)
    return str(refused.value)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 1j, None, object(), [1.0, math.nan], 10**400, amount(math.nan, "mm")])
def test_value_that_is_no_finite_number_is_refused(value: Any) -> None:
    assert told("a + 1", a=value).startswith("a + 1: ")


@pytest.mark.parametrize(
    ("source", "words"),
    [
        ("(-8) ** 0.5", "not a real number"), ("abs((-8) ** 0.5)", "not a real number"), ("1e308 * 10 > 1", "too large"),
        ("1 / (1e308 * 10)", "too large"), ("sqrt(-1)", "not defined below 0"), ("log(0)", "log is not defined for 0"),
        ("log(-1)", "log is not defined for -1"), ("arccos(2)", "arccos is not defined for 2"), ("exp(1000)", "too large"),
    ],
)  # fmt: skip
def test_step_that_is_not_finite_and_real_is_refused(source: str, words: str) -> None:
    assert words in told(source)


@pytest.mark.parametrize("source", ["1 / 0", "0 ** -1", "1 / (a - a)", "1 / (m - m)"])
def test_zero_divisor_is_left_to_the_caller(source: str) -> None:
    with pytest.raises(ZeroDivisionError):
        Expression(source).evaluate({"a": 3.0, "m": amount(3.0, "mm")})


@given(st.sampled_from(["a + b", "a - b", "a * b", "a / b", "a ** b", "max(a, b)", "a * 1e200 * b"]), st.floats(), st.floats())
def test_value_is_finite_whatever_is_given(source: str, a: float, b: float) -> None:
    try:
        assert math.isfinite(Expression(source).value(a=a, b=b))
    except (ExpressionError, ZeroDivisionError) as refused:
        assert str(refused)


@pytest.mark.parametrize(
    ("source", "words"),
    [
        ("t + 1", "a condition cannot be added"), ("-t", "a condition cannot be negated"), ("t < 1", "cannot be compared"),
        ("(a < 2) * 3", "a condition cannot be multiplied"), ("not a", "expected a condition such as a < b beside `not`"),
        ("a and t", "beside `and`"), ("t and a", "beside `and`"), ("a or t", "beside `or`"), ("w + w", 'the text "dry" cannot be added'),
        ("w * 3", 'the text "dry"'), ("w < 'wet'", "cannot be compared"), ("w == 1", "cannot be compared"),
        ("'r' in w", "`in` asks for a month among months"), ("m == 7", "write 7 in dry_months"), ("s * 2", "a series cannot be multiplied"),
        ("s > 1", "a series cannot be compared"), ("abs(s)", "a series cannot be given to abs"), ("sum(a)", "expected a series"),
        ("max(s, 1)", "beside others"), ("sum(e)", "the series is empty"), ("sum_months(s, 0, 3)", "months from 1 to 12"),
        ("sum_months(s, 1.5, 3)", "months from 1 to 12"), ("sum_months(m, 1, 2)", "a series of twelve months"), ("a in a", "`in` asks"), ("w in m", "`in` asks"), ("t in m", "`in` asks"), ("s in m", "`in` asks"), ("m in m", "`in` asks"),
    ],
)  # fmt: skip
def test_what_does_not_suit_an_operation_is_refused(source: str, words: str) -> None:
    assert words in told(source, t=True, a=1.0, w="dry", m=(7, 8), s=RAIN, e=())


def test_truths_texts_and_months_have_their_own_comparisons() -> None:
    given_facts = {"t": True, "w": "dry", "m": (7, 8), "n": (7, 8)}
    assert Expression("t and w == 'dry' and 7 in m and 9 not in m and m == n").evaluate(given_facts)


def test_condition_that_is_not_needed_is_not_worked_out() -> None:
    """A claim may guard a divisor."""
    assert Expression("a == 0 or 1 / a > 2").value(a=0.0)


def test_series_functions_keep_the_unit() -> None:
    assert amount(327.0, "mm") == Expression("sum(rain)").value(rain=RAIN)
    assert amount(27.25, "mm") == Expression("mean(rain)").value(rain=RAIN)
    assert amount(56.0, "mm") == Expression("max(rain) - min(rain)").value(rain=RAIN)
    assert 12.0 == Expression("count(rain)").value(rain=RAIN)


@pytest.mark.parametrize(("first", "last", "total"), [(4, 9, 242.0), (12, 2, 34.0), (1, 12, 327.0), (7, 7, 42.0), (7, 6, 327.0)])
def test_sum_over_months_runs_past_december(first: int, last: int, total: float) -> None:
    assert amount(total, "mm") == Expression(f"sum_months(rain, {first}, {last})").value(rain=RAIN)


@given(st.lists(st.floats(-1e6, 1e6), min_size=1, max_size=12))
def test_series_functions_agree_with_python(numbers: list[float]) -> None:
    values = {name: Expression(f"{name}(x)").value(x=numbers) for name in ("sum", "max", "min")}
    assert {"sum": math.fsum(numbers), "max": max(numbers), "min": min(numbers)} == values


@pytest.mark.parametrize(
    ("source", "words"),
    [
        ("mm + kelvin", "mm + kelvin: mm and K cannot be added"), ("mm - kelvin", "mm and K cannot be subtracted"),
        ("mm < kelvin", "mm and K cannot be compared"), ("max(mm, kelvin)", "mm and K cannot be compared"),
        ("carbon + nitrogen", "kg C and kg N cannot be added"), ("mm + 1", "mm and a bare number cannot be added"),
        ("sum(mm, 2)", "a bare number stands beside values with a unit"), ("exp(mm)", "must have no unit, found mm"),
        ("2 ** mm", "an exponent must have no unit, found mm"), ("mm ** 10", "powers up to 9 only"), ("mm ** 1e308", "powers up to 9"),
        ("sum(temps)", "temperatures in °C cannot be added"), ("temp + temp", "temperatures in °C cannot be added"),
        ("2 * temp", "temperatures in °C cannot be multiplied"), ("temp / 2", "temperatures in °C cannot be divided"),
        ("-temp", "temperatures in °C cannot be negated"), ("temp ** 2", "temperatures in °C cannot be raised"),
        ("abs(temp)", "temperatures in °C"), ("temp + mm", "°C and mm cannot be added"), ("temp + 3", "°C and a bare number cannot"), ("3 + temp", "a bare number and °C cannot be added"),
        ("mm + temp", "mm and °C cannot be added"), ("exp(temp)", "must have no unit, found °C"), ("sqrt(temp)", "temperatures in °C"),
        ("kelvin - temp", "K and °C cannot be subtracted"), ("sum(temp, temp)", "temperatures in °C cannot be added"),
        ("sum_months(temps, 1, 2)", "temperatures in °C cannot be added"),
    ],
)  # fmt: skip
def test_units_that_do_not_fit_are_refused_in_plain_words(source: str, words: str) -> None:
    said = told(
        source, mm=amount(2.0, "mm"), kelvin=amount(3.0, "K"), carbon=amount(1.0, "kg C"), nitrogen=amount(1.0, "kg N"),
        temp=amount(9.0, "degC"), temps=unit("degC").quantity([1.0] * 12),
    )  # fmt: skip
    assert words in said
    assert not any(jargon in said for jargon in ("pint", "offset", "dimension", "millimeter", "convert", "degree_"))


def test_units_multiply_and_cancel() -> None:
    turnover = Expression("stock / outflow").value(stock=amount(4800.0, "kg N/ha"), outflow=amount(94.0, "kg N/ha/yr"))
    assert pytest.approx(4800 / 94) == turnover.m_as(unit("yr").pint)


def test_difference_and_mean_of_readings_have_a_meaning() -> None:
    temps = unit("degC").quantity([-9.0, 22.0])
    assert 31.0 == Expression("max(t) - min(t)").value(t=temps).m_as(unit("K").pint)
    assert 6.5 == Expression("mean(t)").value(t=temps).m_as(unit("degC").pint)


@pytest.mark.parametrize(("source", "reading"), [("t - rate * rise", 7.0), ("t + step", 23.0), ("step + t", 23.0), ("t - step", 17.0)])
def test_reading_may_move_by_a_difference(source: str, reading: float) -> None:
    """20 degC, 2 km higher at 6.5 K/km, are 7 degC."""
    given_facts = {"t": amount(20.0, "degC"), "rate": amount(6.5, "degC/km"), "rise": amount(2.0, "km"), "step": amount(3.0, "K")}
    assert pytest.approx(reading) == Expression(source).evaluate(given_facts).m_as(unit("degC").pint)


def test_quantities_are_compared_in_one_unit_and_bare_numbers_in_the_unit_beside_them() -> None:
    one, other = amount(1.0, "m"), amount(999.0, "mm")
    assert Expression("one > other and one < 2 and 998 < other").value(one=one, other=other)


def test_share_counts_as_its_fraction() -> None:
    share = amount(50.0, "percent")
    assert 1.5 == Expression("1 + share").value(share=share).m_as("")
    assert pytest.approx(math.exp(0.5)) == Expression("exp(share)").value(share=share)
    assert 0.25 == Expression("share ** 2").value(share=share)
    assert 2.0 == Expression("4 ** share").value(share=share)


@given(st.sampled_from("+-*/"), st.floats(0.001, 1e6), st.floats(0.001, 1e6), st.sampled_from([("m", "mm"), ("t C", "kg C"), ("yr", "d")]))
def test_value_does_not_depend_on_the_unit_that_is_stated(sign: str, a: float, b: float, labels: tuple[str, str]) -> None:
    """Stated in the larger or in the smaller unit, the result is the same quantity."""
    large, small = map(unit, labels)
    factor = large.quantity(1.0).m_as(small.pint)
    expression = Expression(f"a {sign} b")
    one = expression.value(a=large.quantity(a), b=large.quantity(b)).to_base_units().magnitude
    other = expression.value(a=small.quantity(a * factor), b=small.quantity(b * factor)).to_base_units().magnitude
    size = large.quantity(max(a, b)).to_base_units().magnitude
    assert pytest.approx(one, rel=1e-9, abs=1e-9 * size) == other


@given(st.floats(0.1, 10.0), st.integers(-9, 9))
def test_power_raises_number_and_unit(base: float, exponent: int) -> None:
    raised = Expression(f"x ** {exponent}" if exponent >= 0 else f"x ** (-{-exponent})").value(x=amount(base, "m"))
    assert pytest.approx(operator.pow(base, exponent)) == raised.m_as(unit("m").pint ** exponent)


def test_several_bare_values_are_added_and_averaged() -> None:
    assert (6.0, 2.0) == (Expression("sum(1, 2, 3)").value(), Expression("mean(1, 2, 3)").value())


def test_bare_number_is_compared_in_the_unit_beside_it_also_within_max_and_min() -> None:
    """Nothing, or a cap, beside a quantity is the usual way to keep it within bounds."""
    assert (amount(3.0, "mm"), amount(0.0, "mm")) == tuple(Expression(f"{name}(0, rain)").value(rain=amount(3.0, "mm")) for name in ("max", "min"))


def test_readings_are_compared_with_each_other_and_with_bare_degrees() -> None:
    given_facts = {"cold": amount(-3.0, "degC"), "warm": amount(68.0, "degF")}
    assert Expression("cold < warm and cold < 0 and warm > 67").evaluate(given_facts)


def test_square_root_of_nothing_of_a_number_and_of_an_area() -> None:
    assert (0.0, 3.0) == (Expression("sqrt(0)").value(), Expression("sqrt(9)").value())
    assert 5.0 == Expression("sqrt(area)").value(area=amount(25.0, "m2")).m_as(unit("m").pint)


@pytest.mark.parametrize(("source", "value"), [("exp(0)", 1.0), ("log(1)", 0.0), ("sin(0)", 0.0), ("tan(0)", 0.0), ("arccos(1)", 0.0), ("abs(-2)", 2.0)])
def test_functions_of_one_number_at_their_well_known_places(source: str, value: float) -> None:
    assert value == Expression(source).value()


@pytest.mark.parametrize(("a", "b", "c", "holds"), [(1.0, 2.0, 3.0, True), (2.0, 1.0, 3.0, False), (1.0, 3.0, 2.0, False), (3.0, 2.0, 1.0, False)])
def test_chain_of_comparisons_holds_where_each_of_them_does(a: float, b: float, c: float, holds: bool) -> None:
    assert holds is Expression("a < b < c").value(a=a, b=b, c=c)


def test_not_turns_a_condition_round() -> None:
    assert (False, True) == tuple(Expression("not a < b").value(a=a, b=2.0) for a in (1.0, 2.0))
