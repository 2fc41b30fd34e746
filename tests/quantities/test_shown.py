"""How numbers are shown: three figures, halves up, and what is shown can be read back."""

from __future__ import annotations

import math
from decimal import ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities import shown

FINITE = st.floats(allow_nan=False, allow_infinity=False)
USUAL = st.floats(-1e12, 1e12).filter(lambda x: x == 0 or abs(x) > 1e-12)
FIGURES = st.integers(1, 8)
SUPERSCRIPT = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")


def read(text: str) -> Decimal:
    """A shown number as a reader takes it."""
    plain, _, power = text.replace(shown.THIN, "").replace(shown.MINUS, "-").partition(" × 10")
    return Decimal(plain).scaleb(int(power.translate(SUPERSCRIPT) or 0))


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0.0, "0"), (-0.0, "0"), (327.0, "327"), (7.083333, "7.08"), (31.0, "31.0"), (24000.0, "24 000"), (0.0536, "0.0536"),
        (2.675, "2.68"), (1.005, "1.01"), (9.1425 - 9.32, "−0.178"), (100 - 99.8925, "0.108"), (0.125, "0.125"), (9.995, "10.0"), (9.996, "10.0"), (9.994999, "9.99"), (99.95, "100"),
        (999.5, "1000"), (-2.675, "−2.68"), (1234.0, "1230"), (9999.5, "10 000"), (123456.0, "123 000"), (-1234567.0, "−1 230 000"),
        (9994999.0, "9 990 000"), (9995000.0, "1.00 × 10⁷"), (1.34e7, "1.34 × 10⁷"), (0.0001, "0.000100"), (9.99e-05, "9.99 × 10⁻⁵"),
        (9.995e-05, "0.000100"), (6.022e23, "6.02 × 10²³"), (-1.5e-9, "−1.50 × 10⁻⁹"), (5e-324, "5.00 × 10⁻³²⁴"), (1.79e308, "1.79 × 10³⁰⁸"),
    ],
)  # fmt: skip
def test_number_has_three_figures_with_halves_up(value: float, text: str) -> None:
    assert text == shown.number(value).replace(shown.THIN, " ")


@pytest.mark.parametrize(("figures", "text"), [(1, "0.1"), (2, "0.13"), (3, "0.125"), (5, "0.12500")])
def test_figures_may_be_asked_for(figures: int, text: str) -> None:
    assert text == shown.number(0.125, figures)


def test_groups_are_parted_by_a_narrow_space_from_five_digits_on() -> None:
    assert ("1230", "12\u202f300", "1\u202f230\u202f000") == (shown.number(1234), shown.number(12345), shown.number(1234567))


def test_minus_is_a_minus_sign() -> None:
    assert "\u22125.00" == shown.number(-5.0)


@given(FINITE, FIGURES)
def test_rounding_moves_a_value_by_half_a_figure_at_most(value: float, figures: int) -> None:
    """Half a unit in the last of n figures is at most 0.5 × 10^(1-n) of the value; a twelfth figure more is what floats are off by."""
    exact = Decimal(repr(value))
    assert abs(shown.rounded(value, figures) - exact) <= (Decimal("0.5").scaleb(1 - figures) + Decimal("1e-11")) * abs(exact)


@given(FINITE.filter(bool), FIGURES)
def test_rounding_agrees_with_decimal(value: float, figures: int) -> None:
    """Decimal's own rounding to n figures of the shortest text that stands for the float, or of a number that floats cannot tell from it."""
    exact = Decimal(repr(value))
    near = (exact, exact * (1 + Decimal("1e-11")))
    assert shown.rounded(value, figures) in [one.quantize(Decimal(1).scaleb(one.adjusted() - figures + 1), ROUND_HALF_UP) for one in near]


@given(FINITE, FIGURES)
def test_what_is_shown_reads_back_as_the_rounded_value(value: float, figures: int) -> None:
    assert shown.rounded(value, figures) == read(shown.number(value, figures))


@given(USUAL.filter(bool), FIGURES)
def test_number_shows_so_many_figures(value: float, figures: int) -> None:
    """Without leading zeros and, in whole numbers, filled up with zeros."""
    mantissa = shown.number(value, figures).partition(" × ")[0]
    digits = "".join(filter(str.isdecimal, mantissa)).lstrip("0")
    assert len(digits) == figures or ("." not in mantissa and len(digits) > figures and not digits[figures:].strip("0"))


@given(USUAL, FIGURES)
def test_program_reads_a_shown_number_as_a_reader_does(value: float, figures: int) -> None:
    text = shown.number(value, figures)
    assert float(read(text)) == shown.read(text)


@given(FINITE)
def test_sign_is_shown_for_negative_numbers_only(value: float) -> None:
    assert (value < 0) == shown.number(value).startswith(shown.MINUS)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_not_finite_cannot_be_shown(value: float) -> None:
    for show in (shown.number, shown.rounded, lambda v: shown.series([v]), lambda v: shown.with_spread(1.0, abs(v))):
        with pytest.raises(ValueError, match="cannot be shown as a number"):
            show(value)


def test_no_figures_cannot_be_shown() -> None:
    with pytest.raises(ValueError, match="one significant figure or more, found 0"):
        shown.number(1.0, 0)


@pytest.mark.parametrize(
    ("value", "spread", "text"),
    # Uncertainty to two figures, the value to the same place: common practice. 100.021 47 g with u_c = 0.35 mg is
    # NIST's example 1 of uncertainty statements (physics.nist.gov/cuu/Uncertainty/examples.html), here all in grams.
    [
        (4.0, 13.0, "4 ± 13"), (98.0, 8.06, "98.0 ± 8.1"), (100.02147, 0.00035, "100.02147 ± 0.00035"), (0.0, 5.0, "0.0 ± 5.0"),
        (1234.5, 99.6, "1230 ± 100"), (123456.0, 7.0, "123 456.0 ± 7.0"), (-0.04, 13.0, "0 ± 13"), (9.996, 0.0996, "10.00 ± 0.10"),
        (-4.0, 13.0, "−4 ± 13"), (5.0, 0.001, "5.0000 ± 0.0010"), (4.234, 0.0, "4.23 ± 0"), (1e9, 1e8, "(1.00 ± 0.10) × 10⁹"),
        (-1e-9, 1e-10, "(−1.00 ± 0.10) × 10⁻⁹"), (1e30, 1.0, "(1." + "0" * 31 + " ± 0." + "0" * 29 + "10) × 10³⁰"),
    ],
)  # fmt: skip
def test_value_ends_where_its_spread_ends(value: float, spread: float, text: str) -> None:
    assert text == shown.with_spread(value, spread).replace(shown.THIN, " ")


@given(st.floats(-1e6, 1e6), st.floats(1e-3, 1e6))
def test_spread_is_never_shown_as_nothing(value: float, spread: float) -> None:
    text = shown.with_spread(value, spread)
    number, plus_minus = text.partition(") ×")[0].lstrip("(").split(" ± ")
    assert read(plus_minus) > 0
    assert shown.decimals(number) == shown.decimals(plus_minus)


def test_negative_spread_is_refused() -> None:
    with pytest.raises(ValueError, match="a spread of 0 or more"):
        shown.with_spread(1.0, -1.0)


@pytest.mark.parametrize(
    ("values", "texts"),
    [
        ([8.94, 10.12, 15.6], ("8.9", "10.1", "15.6")), ([0.0, 39.4, 144.2], ("0", "39", "144")), ([0, 0], ("0", "0")), ([], ()),
        ([9.996, 1.0], ("10.0", "1.0")), ([1234.5, 0.01], ("1235", "0")), ([-0.04, 99.0], ("0.0", "99.0")), ([None, 1.5], ("–", "1.50")),
        ([None], ("–",)), ([-12.34, 1.0], ("−12.3", "1.0")), ([1e-9, 2e-9], ("1.00 × 10⁻⁹", "2.00 × 10⁻⁹")),
        ([1e30, None, 0.0], ("1.00 × 10³⁰", "–", "0")), ([12345.0, 2.5], ("12 345", "3")),
    ],
)  # fmt: skip
def test_members_of_a_series_share_their_decimals(values: list[float | None], texts: tuple[str, ...]) -> None:
    assert texts == tuple(text.replace(shown.THIN, " ") for text in shown.series(values))


@given(st.lists(st.floats(-1e6, 1e6).filter(lambda x: x == 0 or abs(x) > 1e-3), min_size=1, max_size=12), st.integers(2, 6))
def test_every_member_is_within_half_its_last_decimal(values: list[float], figures: int) -> None:
    texts = shown.series(values, figures)
    assert 1 == len({shown.decimals(text) for text in texts})
    step = Decimal(1).scaleb(-shown.decimals(texts[0]))
    assert all(abs(read(text) - Decimal(repr(value))) <= step / 2 for text, value in zip(texts, values, strict=True))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("12.50", "12.50"), ("-3", "−3"), ("0.00", "0.00"), ("-0", "0"), ("+5", "5"), ("1e3", "1000"), ("1.50e3", "1500"),
        ("1.50e8", "1.50 × 10⁸"), ("1e-7", "1 × 10⁻⁷"), ("1234567", "1 234 567"), ("12345678901234567890123456789.5",) * 2,
        ("nan", "nan"), ("inf", "inf"), ("unknown", "unknown"), ("", ""), ("1e400", "1 × 10⁴⁰⁰"), ("1e401", "1e401"), ("1e-400", "1 × 10⁻⁴⁰⁰"), ("1e-401", "1e-401"), ("1e-9999999", "1e-9999999"),
    ],
)  # fmt: skip
def test_stated_number_keeps_its_digits(text: str, expected: str) -> None:
    assert expected.replace(" ", "") == shown.written(text).replace(shown.THIN, "").replace(" ", "")


@given(st.decimals(-(10**9), 10**9, places=4))
def test_stated_number_reads_back_digit_by_digit(number: Decimal) -> None:
    assert f"{abs(number):f}" == f"{abs(read(shown.written(f'{number:f}'))):f}"


@pytest.mark.parametrize(
    ("numbers", "text"),
    [
        ([], "no month"), ([1], "January"), ([5, 6], "May and June"), ([5, 6, 8], "May, June and August"), ([7, 8, 9], "July to September"),
        ([12, 1, 2], "December to February"), ([1, 12], "December and January"), ([11, 12, 1, 2], "November to February"),
        ([1, 3, 5], "January, March and May"), ([1, 2, 3, 7, 9, 10, 11], "January to March, July and September to November"),
        ([6, 5, 6], "May and June"), (range(1, 13), "all twelve months"), ([1, 2, 3, 4, 5, 7, 8, 9, 10, 11, 12], "July to May"),
    ],
)  # fmt: skip
def test_months_are_named_in_runs(numbers: list[int], text: str) -> None:
    assert text == shown.months(numbers)


@pytest.mark.parametrize("month", [0, 13, -1])
def test_month_outside_the_year_is_refused(month: int) -> None:
    with pytest.raises(ValueError, match="months from 1 to 12"):
        shown.months([month])


@given(st.sets(st.integers(1, 12)))
def test_months_named_are_the_months_meant(numbers: set[int]) -> None:
    """Runs read back, round the end of the year, name each month once."""
    text = shown.months(numbers)
    if text in ("no month", "all twelve months"):
        assert len(numbers) == (0 if text == "no month" else 12)
        return
    found: list[int] = []
    for part in text.replace(" and ", ", ").split(", "):
        first, _, last = part.partition(" to ")
        start, end = shown.MONTHS.index(first), shown.MONTHS.index(last or first)
        found += [(start + step) % 12 + 1 for step in range((end - start) % 12 + 1)]
    assert sorted(numbers) == sorted(found)


@pytest.mark.parametrize(("text", "count"), [("12.50", 2), ("12", 0), ("0.125", 3), ("12 300", 0)])
def test_decimals_are_counted(text: str, count: int) -> None:
    assert count == shown.decimals(text)


@pytest.mark.parametrize(
    ("value", "count"), [(0.0, 0), (0.5, 0), (-0.999, 0), (1.0, 1), (-1.0, 1), (9.999, 1), (10.0, 2), (-12.3, 2), (1234567.0, 7), (1e21, 22), (1e-7, 0)]
)
def test_digits_before_the_point_are_counted(value: float, count: int) -> None:
    assert count == shown.whole_digits(value)


@pytest.mark.parametrize(
    ("values", "total", "texts"),
    [
        ((0.4, 1.4, 10.4), "12", ("0.4", "1.4", "10.4")), ((1.1, 2.2), "3", ("1", "2")), ((0.0, 1.5), "1.5", ("0.0", "1.5")),
        ((1.0, 2.0), "9", ("1", "2")),  # nothing helps
    ],
)  # fmt: skip
def test_members_have_the_digits_with_which_they_add_up(values: tuple[float, ...], total: str, texts: tuple[str, ...]) -> None:
    assert texts == shown.adding_up(values, total, 1 + (total == "1.5"))


@pytest.mark.parametrize(("value", "figures", "is_all"), [(12.5, 3, True), (12.5, 2, False), (1 / 3, 3, False), (0.1 + 0.2, 1, True), (8.0, 1, True), (10001.0, 3, False)])
def test_figures_are_all_that_a_number_has(value: float, figures: int, is_all: bool) -> None:
    assert is_all == shown.is_all(value, figures)
