"""Mistakes as models: the wrong values that they give, and which of them a question may use."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import unit
from generator.quantities.working import Substitution
from generator.questions.misconception import Catalogue, Misconception, UnknownMisconception
from generator.questions.mistake import EXACT, ROUNDED, Mistake, accepted, apart, options, slips, tolerance, wrong_values
from generator.questions.question import Interval

CATALOGUE = Catalogue({"t.slip": Misconception(id="t.slip", idea="An idea.", because="the reason.", instead="the remedy.")})


def fact(name: str, value: float | None, label: str = "") -> Fact:
    amount = Amount.unknown() if value is None else Amount(value=float(value), written=f"{value:g}")
    return stated(name, name.capitalize(), amount, unit(label))


def right(expression: str, given_facts: dict[str, Fact], label: str = "", figures: int = 3) -> Fact:
    return computed("right", "Right", Expression(expression), given_facts, unit(label), figures=figures)


def mistakes(*expressions: str) -> list[Mistake]:
    return [Mistake("t.slip", expression, "slipping") for expression in expressions]


def values(of: Fact, given_facts: dict[str, Fact], *expressions: str) -> list[float]:
    return [wrong.value for wrong in wrong_values(of, given_facts, mistakes(*expressions))]


def chain(e0: float = 20000, k: float = 0.1, n: float = 3) -> dict[str, Fact]:
    return {"e0": fact("e0", e0, "kJ/m2/yr"), "k": fact("k", k), "n": fact("n", n)}


def test_energy_along_a_chain_goes_wrong_in_the_known_ways() -> None:
    """Source: arithmetic, 20 000 kJ, a tenth passed on, three transfers: 20 is right.

    One step too few gives 200, one too many 2, a tenth lost each time 14 580, a straight line 6000,
    equal parts 6666.67, all levels together 22 220, once only 2000.
    """
    given_facts = chain()
    of = right("e0 * k ** 3", given_facts, "kJ/m2/yr")
    models = {
        "e0 * k ** 2": 200, "e0 * k ** 4": 2, "e0 * (1 - k) ** 3": 14580, "e0 * k * n": 6000,
        "e0 / n": 20000 / 3, "e0 * (1 + k + k ** 2 + k ** 3)": 22220, "e0 * k": 2000,
    }  # fmt: skip
    assert 20 == pytest.approx(of.number)
    assert list(models.values()) == pytest.approx(values(of, given_facts, *models))


def test_mistakes_that_meet_are_used_once() -> None:
    """With two transfers, once only and one step too few are the same number."""
    given_facts = chain(n=2)
    of = right("e0 * k ** 2", given_facts, "kJ/m2/yr")
    assert [2000] == pytest.approx(values(of, given_facts, "e0 * k ** 1", "e0 * k"))


def test_mistakes_nearer_than_a_twentieth_cannot_be_told_apart() -> None:
    """Losing a tenth three times leaves 14 580, losing three tenths 14 000: 4 % less, so the later one is not used."""
    given_facts = chain()
    of = right("e0 * k ** 3", given_facts, "kJ/m2/yr")
    assert [14580] == pytest.approx(values(of, given_facts, "e0 * (1 - k) ** 3", "e0 * (1 - k * n)"))


def test_mistake_that_meets_the_key_is_not_used() -> None:
    given_facts = {"a": fact("a", 2), "b": fact("b", 2)}
    assert [] == values(right("a + b", given_facts), given_facts, "a * b", "b ** a")


@pytest.mark.parametrize(
    ("expression", "wrong", "value"),
    [("stock / out", "out / stock", 0.5), ("stock / out", "stock * out", 50.0), ("stock / out", "stock / (out + out)", 1.0)],
)
def test_a_wrong_dimension_gives_its_bare_number(expression: str, wrong: str, value: float) -> None:
    """Source: arithmetic, stock 10 Gt C, outflow 5 Gt C a year: 2 years."""
    given_facts = {"stock": fact("stock", 10, "Gt C"), "out": fact("out", 5, "Gt C/yr")}
    assert [value] == pytest.approx(values(right(expression, given_facts, "yr"), given_facts, wrong))


def test_a_wrong_number_comes_in_the_unit_of_the_answer() -> None:
    """2 m and 30 cm: the sum is 230 cm, forgetting the metres leaves 30 cm, forgetting the centimetres 200 cm."""
    given_facts = {"a": fact("a", 2, "m"), "b": fact("b", 30, "cm")}
    assert [30.0, 200.0] == pytest.approx(values(right("a + b", given_facts, "cm"), given_facts, "b", "a"))


def test_a_reading_of_a_thermometer_is_not_shifted_to_kelvin() -> None:
    """The range of -9 and 22 degrees is 31 K; giving the warmest reading is 22, not 295.15."""
    series = Fact(id="t", name="T", value=(-9.0, 22.0), unit=unit("degC"))
    of = right("max(t) - min(t)", {"t": series}, "K")
    assert (31.0, [22.0, 13.0]) == (pytest.approx(of.number), pytest.approx(values(of, {"t": series}, "max(t)", "max(t) + min(t)")))


def test_a_fraction_given_as_percent_is_a_slip_by_a_hundred() -> None:
    """4 of 50 is 8 %; leaving out the factor gives 0.08 %, leaving out the division gives no percentage."""
    given_facts = {"part": fact("part", 4, "kJ/m2/yr"), "whole": fact("whole", 50, "kJ/m2/yr")}
    of = right("part / whole", given_facts, "percent")
    assert [0.08, 92.0, 1250.0] == pytest.approx(values(of, given_facts, "part / whole / 100", "1 - part / whole", "whole / part"))


def test_mistake_that_divides_by_zero_is_left_out() -> None:
    given_facts = {"a": fact("a", 0.0), "b": fact("b", 3)}
    assert [] == values(right("a + b", given_facts), given_facts, "b / a")


def test_mistake_with_an_unknown_number_is_left_out() -> None:
    given_facts = {"a": fact("a", 2), "b": fact("b", 3), "c": fact("c", None)}
    assert [6.0] == values(right("a + b", given_facts), given_facts, "a * b", "a * c")


def test_answers_that_look_the_same_when_shown_are_not_told_apart() -> None:
    """With one figure, 118 and 140 are both shown as 100; a plain difference would be shown to the unit."""
    given_facts = {"gross": fact("gross", 140), "used": fact("used", 22)}
    assert [140.0, 22.0] == values(right("1 * gross - used", given_facts), given_facts, "gross", "used")
    assert [22.0] == values(right("1 * gross - used", given_facts, figures=1), given_facts, "gross", "used")


def test_a_sum_has_no_tolerance_and_a_quotient_has() -> None:
    given_facts = {"gross": fact("gross", 140), "used": fact("used", 22)}
    assert (replace(EXACT, place=0), ROUNDED) == tuple(tolerance(right(text, given_facts)) for text in ("gross - used", "gross / used"))


def of_a_year(*months: float) -> tuple[Fact, dict[str, Fact]]:
    series = Fact(id="t", name="T", value=months, unit=unit("degC"))
    return right("mean(t)", {"t": series}, "degC"), {"t": series}


def test_a_mean_temperature_is_accepted_within_half_a_tenth_of_a_degree_whatever_the_scale_begins_with() -> None:
    """At 26 °C, 2 % would be half a degree, and at 0.1 °C nearly nothing."""
    for months in ((25.0, 27.0, 26.3), (-1.0, 1.0, 0.3)):
        mean, _ = of_a_year(*months)
        found = accepted(mean.number, mean.figures, tolerance(mean))
        assert (0.05, 0.05) == pytest.approx((mean.number - found.low, found.high - mean.number))


def test_temperature_of_several_steps_may_be_a_tenth_of_a_degree_off() -> None:
    given_facts = {"low": Fact(id="low", name="Low", value=0.4, unit=unit("degC")), "rate": fact("rate", 6.5, "K/km"), "climb": fact("climb", 0.1, "km")}
    above = right("low - rate * climb", given_facts, "degC")
    found = accepted(above.number, above.figures, tolerance(above))
    assert (-0.35, -0.15) == pytest.approx((found.low, found.high))


def test_mean_of_the_extremes_is_told_from_the_mean_of_the_year_by_less_than_a_twentieth() -> None:
    """11.03 and 10.9 °C lie 0.13 degrees apart; of 11.0 and 10.9 one would be taken for the other."""
    mean, monthly = of_a_year(6.2, 15.6, 11.29)
    assert [10.9] == pytest.approx(values(mean, monthly, "(max(t) + min(t)) / 2"))
    mean, monthly = of_a_year(6.2, 15.6, 11.08)
    assert [] == values(mean, monthly, "(max(t) + min(t)) / 2")


@pytest.mark.parametrize(("a", "b", "are_apart"), [(100, 94, True), (100, 95.5, False), (-100, -94, True), (0, 1, True), (5, -5, True), (0, 0, False)])
def test_answers_are_apart_by_more_than_a_twentieth_of_the_larger(a: float, b: float, are_apart: bool) -> None:
    """The design's rule: no two answers within 5 % of the larger."""
    assert are_apart == apart(a, b) == apart(b, a)


@given(st.floats(-1e6, 1e6), st.floats(-1e6, 1e6))
def test_numbers_apart_are_never_accepted_for_each_other(a: float, b: float) -> None:
    assume(apart(a, b))
    assert not accepted(a).meets(accepted(b))


@given(st.floats(-1e9, 1e9).filter(lambda x: x == 0 or abs(x) > 1e-9))
def test_a_number_is_accepted_for_itself_and_up_to_the_tolerance(value: float) -> None:
    found = accepted(value)
    assert found.low <= value <= found.high
    assert min(0.981 * value, 1.019 * value) >= found.low and max(0.981 * value, 1.019 * value) <= found.high


@pytest.mark.parametrize(("value", "figures", "typed"), [(1.4, 1, 1.0), (0.0536, 1, 0.05), (245, 1, 200), (1.666, 3, 1.67)])
def test_the_value_as_shown_is_accepted_whatever_its_figures(value: float, figures: int, typed: float) -> None:
    found = accepted(value, figures)
    assert found.low <= typed <= found.high


def test_slips_say_what_was_done_and_what_holds() -> None:
    given_facts = {"a": fact("a", 2), "b": fact("b", 5)}
    (slip,) = slips(right("a - b", given_facts), given_facts, [Mistake("t.slip", "a + b", "adding")], CATALOGUE)
    assert ("7", "You get this number by adding. The reason. The remedy.", "t.slip") == (slip.shown, slip.feedback, slip.misconception)


def test_a_slip_is_shown_as_the_printed_numbers_give_it() -> None:
    """12.3 / 2.1 = 5.857, but 12.28571 / 2.1 = 5.850."""
    full = computed("full", "Full", Expression("a * b"), {"a": fact("a", 2.457142), "b": fact("b", 5)}, unit(""))
    waters = {"oxygen": fact("oxygen", 2.1), "full": full}
    (slip,) = slips(right("oxygen / full", waters), waters, mistakes("full / oxygen"), CATALOGUE)
    assert ("12.3", "5.86") == (full.shown, slip.shown)


def test_options_stand_in_rising_order_with_one_right() -> None:
    given_facts = {"a": fact("a", 2, "mm"), "b": fact("b", 5, "mm")}
    found = options(right("a - b", given_facts, "mm"), given_facts, mistakes("a + b", "b - a", "a"), CATALOGUE, "Why.")
    assert ["−3 mm", "2 mm", "3 mm", "7 mm"] == [option.text for option in found]
    assert [(True, "Why.")] == [(option.right, option.feedback) for option in found if option.right]


def test_wrong_options_of_a_difference_have_as_many_decimals_as_the_right_one() -> None:
    """18 000 - 240 is 17 760; 240 and a tenth of 18 000 show no decimals either, however many figures the key has."""
    given_facts = {"made": fact("made", 18000), "taken": fact("taken", 240)}
    of = right("made - taken", given_facts)
    found = options(of, given_facts, mistakes("taken", "0.1 * made"), CATALOGUE, "")
    assert ["240", "1800", "17\u202f760"] == [option.text for option in found]


def test_mistake_that_the_catalogue_lacks_is_refused() -> None:
    given_facts = {"a": fact("a", 2), "b": fact("b", 5)}
    with pytest.raises(UnknownMisconception, match="t.other"):
        slips(right("a - b", given_facts), given_facts, [Mistake("t.other", "a + b", "adding")], CATALOGUE)


@pytest.mark.parametrize(("other", "meets"), [((1, 2), True), ((2, 3), True), ((2.1, 3), False), ((-1, 0.9), False), ((0, 5), True)])
def test_intervals_meet_where_they_share_a_number(other: tuple[float, float], meets: bool) -> None:
    assert meets == Interval(1, 2).meets(Interval(*other)) == Interval(*other).meets(Interval(1, 2))


def test_slips_are_spelled_as_the_answer_is() -> None:
    """4 of 50 is 8 %, and its slips have no zeros that carry nothing either; a slip that was rounded off has three figures."""
    given_facts = {"part": fact("part", 4, "kJ/m2/yr"), "whole": fact("whole", 50, "kJ/m2/yr")}
    of = right("part / whole", given_facts, "percent")
    found = slips(of, given_facts, mistakes("part / whole / 100", "1 - part / whole", "whole / part", "part / (part + whole)"), CATALOGUE)
    assert ("8 %", ["0.08 %", "92 %", "1250 %", "7.41 %"]) == (of.shown, [slip.shown for slip in found])


def test_a_sum_and_its_slips_end_at_one_place() -> None:
    """1.52 less 1.20 is 0.32 as they are printed; what was rounded off is accepted as before."""
    given_facts = {name: Fact(id=name, name=name, value=value, unit=unit("g"), working=Substitution(Expression("x"), ())) for name, value in (("a", 1.5166), ("b", 1.1974))}
    of = right("a - b", given_facts, "g")
    (slip,) = slips(of, given_facts, mistakes("a + b"), CATALOGUE)
    within = accepted(of.number, of.figures, tolerance(of))
    assert ("0.32 g", "2.71 g") == (of.shown, slip.shown)
    assert all(within.low <= number <= within.high for number in (0.3192, 0.319, 0.32))
