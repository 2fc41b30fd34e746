"""Facts: what they show, and how one comes of others."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.amount import Amount
from generator.quantities.expression import Expression, ExpressionError
from generator.quantities.fact import Fact, Facts, computed, in_proportion, in_unit, stated
from generator.quantities.units import unit
from generator.quantities.working import Substitution

MM, DEGC, K, FLOW = unit("mm"), unit("degC"), unit("K"), unit("kg N/ha/yr")


class Written(float):
    """A number that knows how its author wrote it."""

    text: str

    def __new__(cls, text: str) -> Written:
        number = super().__new__(cls, text)
        number.text = text
        return number


def fact(value: Any, label: str | None = "mm", **more: Any) -> Fact:
    return Fact(id="site.x", name="Depth", value=value, unit=None if label is None else unit(label), **more)


def work_out(source: str, label: str, **given_facts: Fact) -> Fact:
    return computed("site.y", "Result", Expression(source), given_facts, unit(label))


@pytest.mark.parametrize(
    ("one", "text"),
    [
        (fact(327.4), "327 mm"), (fact(-0.0), "0 mm"), (fact(12.5, written="12.50"), "12.50 mm"), (fact(46.5, "deg", written="46.5"), "46.5°"),
        (fact(0.53, ""), "0.530"), (fact(24000.0, figures=2), "24\u202f000 mm"), (fact("dry", None), "dry"), (fact(True, None), "yes"),
        (fact(False, None), "no"), (fact((5, 6, 7), None, months=True), "May to July"), (fact((), None, months=True), "no month"),
        (fact(None), "not defined"), (fact(None, undefined_because="not known"), "not known"), (fact((1.0, 2.25, 10.0)), "1.0, 2.3, 10.0 mm"),
        (fact((1.5, 2.0), written="1.50 2"), "1.50, 2 mm"),
    ],
)  # fmt: skip
def test_fact_is_shown_with_its_unit(one: Fact, text: str) -> None:
    assert text == one.shown


@pytest.mark.parametrize(
    ("value", "spread", "written", "text"),
    [
        # A stated spread stays as it was written; a computed one has two figures, the value the same place (common practice).
        (12.0, Written("4"), "12", "12 ± 4 mm"), (12.5, Written("0.40"), "12.50", "12.50 ± 0.40 mm"), (12.0, 1234567.0, "12", "12 ± 1\u202f234\u202f567 mm"),
        (4.0, 13.04, "", "4 ± 13 mm"), (98.0, 8.0623, "", "98.0 ± 8.1 mm"), (12.0, 0.0, "", "12.0 ± 0 mm"), (4.0, 0.0, "4", "4 ± 0 mm"),
    ],
)  # fmt: skip
def test_spread_stands_behind_the_value(value: float, spread: float, written: str, text: str) -> None:
    assert text == fact(value, plus_minus=spread, written=written).shown


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [
        (12.0, 24.0, "12 to 24 mm"), (0.05, 24.0, "0.05 to 24 mm"), (Written("1.50"), Written("3"), "1.50 to 3 mm"), (-5.0, -2.0, "−5 to −2 mm"),
        (0.155844, 0.311688, "0.156 to 0.312 mm"), (0.0, 1e7, "0 to 1.00 × 10⁷ mm"),
    ],
)  # fmt: skip
def test_range_is_shown_by_its_ends(low: float, high: float, text: str) -> None:
    assert text == fact((low + high) / 2, low=low, high=high).shown


@pytest.mark.parametrize(
    ("of", "bare"),
    [
        (fact(327.0), "327"),
        (fact(12.0, plus_minus=4.0, written="12"), "12 ± 4"),
        (fact(18.0, low=12.0, high=24.0), "12 to 24"),
        (fact(None, undefined_because="not known"), "not known"),
        (fact("semi-arid", None), "semi-arid"),
        (fact((5, 6, 7), None, months=True), "May to July"),
    ],
)
def test_bare_text_is_what_is_shown_without_the_unit(of: Fact, bare: str) -> None:
    """For a column whose head names the unit: spread and range stay."""
    assert bare == of.shown_bare
    assert of.shown in (bare, f"{bare} mm")


def test_working_takes_the_value_without_its_spread() -> None:
    assert "98.0 mm" == fact(98.0, plus_minus=8.0).shown_exactly


@pytest.mark.parametrize("field", ["value", "plus_minus", "low", "high"])
@pytest.mark.parametrize("number", [math.nan, math.inf])
def test_fact_holds_no_number_that_is_not_finite(field: str, number: float) -> None:
    with pytest.raises(ValueError, match="site.x: expected finite numbers"):
        fact(**{"value": 1.0, field: number})


def test_series_holds_no_number_that_is_not_finite() -> None:
    with pytest.raises(ValueError, match="expected finite numbers, found nan"):
        fact((1.0, math.nan))


@pytest.mark.parametrize("value", [True, "dry", None, (1.0,), 3])
def test_number_of_a_fact_that_is_none_is_refused(value: Any) -> None:
    assert not fact(value).is_number
    with pytest.raises(TypeError, match="site.x: expected a number"):
        str(fact(value).number)


@pytest.mark.parametrize("one", [fact(1.0), fact("dry"), fact((1, 2), None, months=True)])
def test_series_of_a_fact_that_is_none_is_refused(one: Fact) -> None:
    with pytest.raises(TypeError, match="site.x: expected a series"):
        str(one.series)


def test_two_facts_of_one_id_are_refused() -> None:
    with pytest.raises(ValueError, match="site.x is made twice"):
        Facts([fact(1.0), fact(2.0)])


def test_facts_keep_their_order() -> None:
    facts = Facts([Fact(id=name, name=name, value=1.0) for name in ("b", "a", "c")])
    assert (["b", "a", "c"], 3, "a") == (list(facts), len(facts), facts["a"].id)


def test_stated_fact_says_that_it_is_stated() -> None:
    one = stated("site.x", "Depth", Amount(value=12.5, written="12.50"), MM, sources=["A"])
    assert ("12.50 mm (stated in the record)", ("A",)) == (one.shown_working, one.sources)


def test_stated_unknown_is_not_known() -> None:
    one = stated("site.x", "Depth", Amount.unknown(), MM)
    assert (None, "not known", "not known") == (one.value, one.shown, one.shown_working)


# --- computed facts --------------------------------------------------------------------------------------------------


def test_computed_fact_is_converted_into_its_unit() -> None:
    assert pytest.approx(2.54) == work_out("a", "cm", a=fact(1.0, "in")).number


def test_fact_in_another_unit_shows_the_step_and_keeps_its_figures() -> None:
    """Source: arithmetic, 3 / 0.3048 ft."""
    found = in_unit(fact(3.0, "m", written="3", figures=4), unit("ft"))
    assert ("site.x", "9.843 ft") == (found.id, found.shown)
    assert "3 m = 9.843 ft" in found.shown_working


def test_fact_that_has_the_unit_stays_as_it_is_stated() -> None:
    depth = fact(12.5, written="12.50")
    assert depth is in_unit(depth, MM)


def test_computed_fact_shows_formula_numbers_and_result() -> None:
    one = work_out("stock / outflow", "yr", stock=fact(4800.0, "kg N/ha", written="4800"), outflow=fact(94.0, "kg N/ha/yr"))
    assert "stock ÷ outflow = 4800 kg N ha⁻¹ ÷ 94.0 kg N ha⁻¹ yr⁻¹ = 51.1 yr" == one.shown_working


def test_bare_formula_takes_numbers_without_units() -> None:
    """Lieth's curve for precipitation at 327 mm: exp(-0.217128) = 0.804827 by its power series, on paper; 3000 × 0.195173 = 585.52."""
    npp = Expression("3000 * (1 - exp(-0.000664 * p))")
    one = computed("site.y", "Production", npp, {"p": fact(327.0, written="327")}, unit("g/m2/yr"), bare=True)
    assert pytest.approx(585.52, abs=0.01) == one.number
    assert "3000 × (1 − exp(−0.000664 × 327)) = 586 g m⁻² yr⁻¹" in one.shown_working


@pytest.mark.parametrize("source", ["a / zero", "a / (zero * a)", "zero ** -1", "a / (a - a)"])
def test_zero_divisor_makes_the_fact_undefined(source: str) -> None:
    one = work_out(source, "", **{name: f for name, f in (("a", fact(1.0, "")), ("zero", fact(0.0, ""))) if name in source})
    assert (None, "not defined: it would divide by zero") == (one.value, one.shown)


def test_unknown_input_makes_the_fact_undefined_and_says_why() -> None:
    unknown = Fact(id="site.u", name="Stock", value=None, unit=MM)
    because = Fact(id="site.v", name="Stock", value=None, unit=MM, undefined_because="no level stands above")
    assert ["stock is not known", "no level stands above"] == [work_out("a", "mm", a=one).shown for one in (unknown, because)]


def test_unknown_input_that_is_not_used_does_no_harm() -> None:
    assert 1.0 == work_out("a", "mm", a=fact(1.0), b=fact(None)).number


@pytest.mark.parametrize(
    ("source", "label", "words"),
    [
        ("a", "K", "a: expected a value in K, found mm"), ("a + b", "mm", "a \\+ b: mm and K cannot be added"), ("a + c", "mm", "no value for c"),
        ("a > 1", "mm", "a single number"), ("s", "mm", "a single number"), ("w", "mm", "a single number"), ("t - u", "degC", "given in K"),
        ("a / a", "mm", "found a bare number"),
    ],
)  # fmt: skip
def test_result_that_does_not_fit_is_refused(source: str, label: str, words: str) -> None:
    facts = {"a": fact(1.0), "b": fact(1.0, "K"), "s": fact((1.0, 2.0)), "w": fact("dry", None), "t": fact(5.0, "degC"), "u": fact(2.0, "degC")}
    with pytest.raises(ExpressionError, match=words):
        work_out(source, label, **facts)


def test_temperature_range_is_given_in_kelvin() -> None:
    temps = fact((-9.0, -6.0, 22.0), "degC", written="-9 -6 22")
    assert "31 K" == work_out("max(t) - min(t)", "K", t=temps).shown


@pytest.mark.parametrize(
    ("expression", "a", "b", "found"),
    [("a - b", "383", "285", "98 mm"), ("a + b", "1.0", "0.25", "1.25 mm"), ("a - b", "27.0", "26.2", "0.8 mm"), ("a * b / b", "98", "2", "98.0 mm")],
)
def test_a_difference_of_stated_numbers_has_no_digits_that_they_do_not_have(expression: str, a: str, b: str, found: str) -> None:
    assert found == work_out(expression, "mm", a=fact(float(a), "mm", written=a), b=fact(float(b), "mm", written=b)).shown


def test_term_in_another_unit_says_nothing_of_decimals() -> None:
    """250 m are 0.250 km to three figures, though 250 has no decimals."""
    assert "0.250 km" == work_out("a", "km", a=fact(250.0, "m", written="250")).shown


@given(st.floats(-1e150, 1e150), st.floats(-1e150, 1e150))
def test_quotient_is_a_number_or_undefined_but_never_nan(a: float, b: float) -> None:
    try:
        one = work_out("a / b", "", a=fact(a, ""), b=fact(b, ""))
    except ExpressionError as refused:
        assert "too large" in str(refused)
        return
    assert (one.value is None) == (b == 0)
    assert one.value is None or math.isfinite(one.number)


def test_fact_in_proportion_takes_spread_and_range_along() -> None:
    spread, ranged = fact(10.0, plus_minus=2.0), fact(10.0, low=8.0, high=12.0)
    assert 0.5 == in_proportion(fact(2.5), spread).plus_minus
    assert (2.0, 3.0) == ((taken := in_proportion(fact(2.5), ranged)).low, taken.high)


@pytest.mark.parametrize(("own", "other"), [(None, 10.0), (2.5, 0.0), (2.5, None)])
def test_proportion_to_nothing_leaves_a_fact_as_it_is(own: float | None, other: float | None) -> None:
    assert fact(own) == in_proportion(fact(own), fact(other, plus_minus=2.0))


@pytest.mark.parametrize(
    ("one", "exactly", "shown"),
    [
        (fact("humid", None), "humid", "humid"), (fact(None, undefined_because="not known: no depth"), "not known: no depth", "not known: no depth"),
        (fact(None, None), "not defined", "not defined"), (fact(3.0, None), "3.00", "3.00"), (fact(3.0), "3.00 mm", "3.00 mm"),
        (fact(3.0, low=2.0), "3.00 mm", "3.00 mm"), (fact(3.0, high=4.0), "3.00 mm", "3.00 mm"), (fact(3.0, low=2.0, high=4.0), "3 mm", "2 to 4 mm"),  # the middle of a range is exact, as its ends are
    ],
)  # fmt: skip
def test_unit_stands_only_behind_a_number_and_a_range_has_two_ends(one: Fact, exactly: str, shown: str) -> None:
    assert (exactly, shown) == (one.shown_exactly, one.shown)


def test_sum_is_shown_to_the_unit_up_to_seven_digits() -> None:
    """Beyond them the last digits of a sum mean nothing."""
    thin = "\u202f"
    assert f"1{thin}234{thin}567 mm" == work_out("a + b", "mm", a=fact(1234000.0), b=fact(567.0)).shown
    assert "1.234568 × 10⁷ mm" == work_out("a + b", "mm", a=fact(12345000.0), b=fact(678.0)).shown


def test_first_of_several_unknown_facts_is_the_reason() -> None:
    made = work_out("a + b", "mm", a=fact(None, undefined_because="a is lost"), b=fact(None, undefined_because="b is lost"))
    assert "a is lost" == made.undefined_because


def in_between(value: Any, label: str = "mm", **more: Any) -> Fact:
    """A fact that was worked out, by no sum: its digits were rounded off."""
    return fact(value, label, working=Substitution(Expression("a * b"), ()), **more)


@pytest.mark.parametrize(
    ("source", "given_facts", "label", "text"),
    [
        ("a * b", {"a": in_between(1.4), "b": in_between(1600 / 3, "")}, "mm", "1.40 mm × 533.3 = 747 mm"),  # a digit that says nothing is not shown
        ("a - b", {"a": in_between(226.6), "b": in_between(221.4)}, "mm", "226.6 mm − 221.4 mm = 5 mm"),
        ("a - b", {"a": in_between(227.4), "b": in_between(25.2, figures=2)}, "mm", "227 mm − 25 mm = 202 mm"),  # comes out as it is
        ("a / b", {"a": fact(7.4, written="7.4"), "b": in_between(9.2086)}, "percent", "7.4 mm ÷ 9.209 mm = 80.4 %"),
        ("sum(a)", {"a": in_between((0.4, 1.4, 10.4), figures=2)}, "mm", "0.4 + 1.4 + 10.4 = 12 mm"),
        ("a * b", {"a": in_between(0.1 / 3), "b": fact(3000.0000001, "", written="3000")}, "mm", "0.03333 mm × 3000 = 100 mm"),
    ],
)  # fmt: skip
def test_numbers_in_between_have_the_digits_that_their_working_takes(source: str, given_facts: dict[str, Fact], label: str, text: str) -> None:
    assert text == work_out(source, label, **given_facts).shown_working.partition(" = ")[2]


def test_stated_number_has_its_own_digits_in_a_working_that_does_not_come_out() -> None:
    """`written` are the digits of the record; a value beside them, as a drawn case could have it, is not shown."""
    assert "1.2 mm × 2 mm = 2.48 mm²" == work_out("a * b", "mm2", a=fact(1.24, written="1.2"), b=fact(2.0, written="2")).shown_working.partition(" = ")[2]


def test_fact_itself_keeps_its_figures_where_its_working_has_more() -> None:
    given_facts = {"a": in_between(226.6), "b": in_between(221.4)}
    found = work_out("a - b", "mm", **given_facts)
    assert found.worked != found.working
    assert ["227", "221"] == [one.shown_number for _, one in found.working.given] == [one.shown_number for one in given_facts.values()]
