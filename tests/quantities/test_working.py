"""Working: what a reader sees of how a fact came about."""

from __future__ import annotations

import pytest

from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.quantities.working import Listing, MonthTable, Rule, RulePath, Substitution, ValueTable

RAIN = Fact(id="s.rain", name="Monthly rain", value=(12.0, 10.5, 16.0), unit=unit("mm"), written="12 10.50 16")
TEMP = Fact(id="s.temp", name="Mean temperature", value=(-9.0, 4.0, 22.0), unit=unit("degC"), written="-9 4 22")
BALANCE = Fact(id="s.balance", name="Balance", value=-3.0, unit=unit("mm"), written="-3")


def put_in(source: str, *, bare: bool = False, **facts: Fact) -> str:
    return Substitution(Expression(source), tuple(facts.items()), bare).put_in


@pytest.mark.parametrize(
    ("source", "text"),
    [
        ("sum(rain)", "12 + 10.50 + 16"), ("mean(rain)", "(12 + 10.50 + 16) ÷ 3"), ("2 * sum(rain)", "2 × (12 + 10.50 + 16)"),
        ("max(temp) - min(temp)", "22 °C − (−9 °C)"), ("sum(temp)", "(−9) + 4 + 22"), ("count(rain)", "count(monthly rain)"),
        ("sum_months(rain, 1, 3)", "sum(monthly rain from January to March)"), ("2 - balance", "2 − (−3 mm)"), ("balance ** 2", "(−3 mm)²"),
    ],
)  # fmt: skip
def test_numbers_are_put_in(source: str, text: str) -> None:
    named = {"rain": RAIN, "temp": TEMP, "balance": BALANCE}
    assert text == put_in(source, **{name: fact for name, fact in named.items() if name in source})


def test_bare_numbers_have_no_unit() -> None:
    assert "2 − (−3)" == put_in("2 - balance", balance=BALANCE, bare=True)


def test_stated_digits_stand_in_the_working() -> None:
    rate = Fact(id="s.rate", name="Rate", value=12.5, unit=unit("mm"), written="12.50")
    assert "2 × 12.50 mm" == put_in("2 * rate", rate=rate)


def test_formula_is_in_words() -> None:
    assert "annual precipitation ÷ monthly potential evapotranspiration" == Substitution(Expression("annual_precip / monthly_pet"), ()).formula


def test_line_does_not_say_the_same_twice() -> None:
    height = Fact(id="s.h", name="Height", value=310.0, unit=unit("m"))
    assert "elevation = 310 m" == computed("s.e", "Height", Expression("elevation"), {"elevation": height}, unit("m")).shown_working


def month_table(cells: int = 12) -> MonthTable:
    return MonthTable((("rain (mm)", tuple(map(str, range(cells)))),), "the largest value stands in December")


def test_table_has_a_line_for_each_month() -> None:
    lines = month_table().text("unused").split("\n")
    assert ("month | rain (mm)", "January | 0", "December | 11", "the largest value stands in December") == (*lines[:2], *lines[-2:])
    assert list(shown.MONTHS) == [row[0] for row in month_table().rows]


def test_table_of_other_than_twelve_months_is_refused() -> None:
    with pytest.raises(ValueError, match=r"rain \(mm\): expected 12 months, found 11"):
        month_table(11)


def test_table_without_conclusion_ends_in_the_result() -> None:
    assert "327 mm" == MonthTable((), "").text("327 mm").split("\n")[-1]


def test_table_of_values_tells_its_rows_what_they_say_and_the_result() -> None:
    table = ValueTable(("Year", "Stock"), (("0", "10"), ("5", "12")), "It grows.")
    assert "Year | Stock\n0 | 10\n5 | 12\nIt grows.\n12 kg" == table.text("12 kg")


def test_table_of_values_whose_row_is_too_short_is_refused() -> None:
    with pytest.raises(ValueError, match="expected 2 cells, found 1: 5"):
        ValueTable(("Year", "Stock"), (("0", "10"), ("5",)), "")


def test_path_tells_each_answer_and_the_result() -> None:
    path = RulePath((Rule("Is it below 0.2?", "0.53 < 0.2", False), Rule("Is it below 0.65?", "0.53 < 0.65", True)))
    assert "Is it below 0.2? 0.53 < 0.2: no\nIs it below 0.65? 0.53 < 0.65: yes\ndry" == path.text("dry")


def test_list_tells_its_heading_its_lines_and_the_result() -> None:
    assert "Foods:\ngrass\nmoss\n2" == Listing("Foods", ("grass", "moss")).text("2")


def test_empty_list_says_that_there_is_nothing() -> None:
    assert "Foods:\nnone\n0" == Listing("Foods", ()).text("0")
