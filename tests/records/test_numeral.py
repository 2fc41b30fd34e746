"""Plain words as values, and numbers that were meant."""

from __future__ import annotations

import copy
import pickle

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.records.numeral import WrittenFloat, WrittenInt, number_mend, plain_value


@pytest.mark.parametrize(
    ("text", "value"), [("0", 0), ("-7", -7), ("46.5", 46.5), ("1e3", 1000.0), ("-2.5E-3", -0.0025)]
)
def test_plain_number_is_a_number_with_its_text(text: str, value: float) -> None:
    number = plain_value(text)
    assert (value, text) == (number, number.text)


@given(st.text("0123456789.eE+-_xn ", max_size=12))
def test_whatever_is_read_as_a_number_is_that_number(text: str) -> None:
    """The language's own reading agrees with ours wherever ours is a number."""
    value = plain_value(text)
    assert isinstance(value, str) or value is None or float(text) == value


@pytest.mark.parametrize("number", [WrittenFloat("12.50"), WrittenInt("12")])
def test_written_number_survives_copying(number: WrittenFloat | WrittenInt) -> None:
    copies = [copy.deepcopy(number), pickle.loads(pickle.dumps(number))]
    assert [(number, number.text)] * 2 == [(one, one.text) for one in copies]


@pytest.mark.parametrize(
    ("text", "mend"),
    [
        ("thirty", "write 30"),
        ("Zero", "write 0"),
        ("46.5", "write 46.5 without quotes"),
        ("46.5\u00a0", "write 46.5, without other characters around it"),
        ("46,5", "write 46.5, with a point"),
        ("1,000", "write 1000, without separators"),
        ("24 000", "write 24000, without separators"),
        ("\u22125", "write -5, with the hyphen of the keyboard"),
        ("+5", "write 5"),
        ("010", "write 10"),
        ("-010.50", "write -10.50"),
        (".5", "write 0.5"),
        ("12 mm", "write 12 alone; units are declared once, in units"),
        ("0x1F", "write 0 alone; units are declared once, in units"),
        ("12:30", "write a number in digits, with a point for decimals"),
        ("10-25", "write a number in digits, with a point for decimals"),
        ("9" * 40, "write a number of at most 18 digits"),
        ("true", "write a number in digits, with a point for decimals"),
        ("dry", "write a number in digits, with a point for decimals"),
    ],
)
def test_mend_names_the_number_that_was_meant(text: str, mend: str) -> None:
    assert mend == number_mend(text)


@pytest.mark.parametrize(
    ("text", "mend"),
    [
        ("60\u00b115", "write {value: 60, plus_minus: 15}"),
        ("60 +- 15", "write {value: 60, plus_minus: 15}"),
        ("10 to 25", "write {low: 10, high: 25}"),
        ("10\u201325", "write {low: 10, high: 25}"),
        ("-5 - -2", "write {low: -5, high: -2}"),
        ("n/a", "write the number, or unknown"),
    ],
)
def test_mend_of_an_amount_names_ranges_and_uncertainties(text: str, mend: str) -> None:
    assert mend == number_mend(text, amount=True)
