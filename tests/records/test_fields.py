"""Types of fields."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Any

import pytest
from pydantic import AfterValidator, TypeAdapter, ValidationError

from generator.quantities.amount import Amount
from generator.records.fields import (
    Bounds,
    Day,
    Id,
    MisconceptionId,
    Number,
    RecordId,
    Series12,
    SourceKey,
    StatedAmount,
    Text,
)
from generator.records.numeral import WrittenFloat, WrittenInt


def taken(kind: Any, value: Any) -> Any:
    return TypeAdapter(kind).validate_python(value)


def refused(kind: Any, value: Any) -> list[tuple[Any, ...]]:
    with pytest.raises(ValidationError) as caught:
        taken(kind, value)
    return [(one["loc"], one["ctx"]["expected"], one["ctx"]["found"]) for one in caught.value.errors()]


def test_text_is_kept_without_white_space_around_it() -> None:
    assert "Grasses hold" == taken(Text, " Grasses hold\n")


def test_number_keeps_its_digits() -> None:
    number = taken(Number, WrittenFloat("12.50"))
    assert (12.5, "12.50") == (number, number.text)


def test_whole_number_is_taken_as_a_number() -> None:
    number = taken(Number, WrittenInt("12"))
    assert (WrittenFloat, 12.0, "12") == (type(number), number, number.text)


@pytest.mark.parametrize("value", [True, float("nan"), float("inf"), "12", [1], None])
def test_number_refuses_what_only_looks_like_one(value: Any) -> None:
    assert [((), "a number", "")] == refused(Number, value)


@pytest.mark.parametrize(
    ("value", "amount"),
    [
        (WrittenFloat("12.50"), Amount(value=12.5, written="12.50")),
        ({"value": WrittenInt("60"), "plus_minus": WrittenInt("15")}, Amount(value=60, plus_minus=15, written="60")),
        ({"low": WrittenInt("10"), "high": WrittenInt("25")}, Amount(value=17.5, low=10, high=25)),
        ("unknown", Amount(value=None)),
    ],
)
def test_amount_is_taken_in_each_of_its_forms(value: Any, amount: Amount) -> None:
    assert amount == taken(StatedAmount, value)


@pytest.mark.parametrize(
    ("value", "told"),
    [
        ({"low": 3, "high": 2}, [(("low",), "no more than high (2)", "3")]),
        ({"value": 3, "plus_minus": -1}, [(("plus_minus",), "0 or more", "-1")]),
        ({"value": "x", "plus_minus": "y"}, [(("value",), "a number", ""), (("plus_minus",), "a number", "")]),
        ({"value": 3, "low": 1}, [(("low",), "value and plus_minus", "another field")]),
        ({}, [((), "value and plus_minus", "")]),
    ],
)
def test_amount_refuses_fields_that_do_not_go_together(value: Any, told: list[tuple[Any, ...]]) -> None:
    assert told == refused(StatedAmount, value)


@pytest.mark.parametrize(("value", "found"), [(-91, "-91"), (90.5, "90.5")])
def test_bounds_are_named_with_the_value_outside_them(value: float, found: str) -> None:
    latitude = Annotated[Number, AfterValidator(Bounds(-90, 90, "degrees"))]
    assert [((), "-90 to 90 degrees", found)] == refused(latitude, value)


@pytest.mark.parametrize("value", [-90, 0, 90])
def test_bounds_belong_to_what_they_allow(value: float) -> None:
    assert value == taken(Annotated[Number, AfterValidator(Bounds(-90, 90))], value)


def test_bound_that_is_not_allowed_itself_is_refused() -> None:
    assert [((), "more than 0 m", "0")] == refused(
        Annotated[Number, AfterValidator(Bounds(0, unit="m", above=True))], 0
    )


def test_bounds_hold_for_the_ends_of_a_range() -> None:
    stock = Annotated[StatedAmount, AfterValidator(Bounds(0))]
    assert [((), "0 or more", "-1")] == refused(stock, {"low": -1, "high": 5})


def test_unknown_amount_is_within_all_bounds() -> None:
    assert Amount.unknown() == taken(Annotated[StatedAmount, AfterValidator(Bounds(0))], "unknown")


def test_series_of_twelve_is_kept_with_its_digits() -> None:
    assert ["0.50"] * 12 == [number.text for number in taken(Series12, [WrittenFloat("0.50")] * 12)]


def test_series_tells_its_length_and_each_wrong_month() -> None:
    told = refused(Series12, [1, "x", 3, None])
    assert [((1,), "a number"), ((3,), "a number"), ((), "12 values, January to December")] == [one[:2] for one in told]


@pytest.mark.parametrize(
    ("kind", "good", "bad"),
    [
        (Id, "harrow_plain2", ["Harrow", "2nd", "a__b", "a_", "a-b", "ä", ""]),
        (MisconceptionId, "clim.desert-hot", ["desert-hot", "clim.", "clim.Hot", "clim.a--b"]),
        (SourceKey, "RICKLEFS2008", ["Ricklefs 2008", "2008", ""]),
        (RecordId, "biome/temperate_grassland", ["biome", "biome/x.yaml", "biome/x/y"]),
    ],
)
def test_spelling_is_checked(kind: Any, good: str, bad: list[str]) -> None:
    assert good == taken(kind, good)
    assert [1] * len(bad) == [len(refused(kind, text)) for text in bad]


def test_a_day_is_read_as_iso_8601_writes_it() -> None:
    """Source: ISO 8601, calendar date."""
    assert date(2027, 1, 22) == taken(Day, "2027-01-22")


@pytest.mark.parametrize(
    ("value", "what"),
    [("22.1.2027", "a day as year-month-day"), ("2027-W03-5", "a day as year-month-day"), (20270122, "a day as year-month-day"), ("2027-02-30", "a day of the calendar")],
)
def test_other_spellings_and_days_that_do_not_exist_are_refused(value: Any, what: str) -> None:
    ((_, expected, _),) = refused(Day, value)
    assert what == expected
