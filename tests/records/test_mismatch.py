"""pydantic's errors in an author's words."""

from __future__ import annotations

from typing import Any, get_args

import pytest
from pydantic_core.core_schema import ErrorType

from generator.records.mismatch import Mismatch, worded

CONTEXT = {
    "expected": "'page' or 'paper'",
    "expected_tags": "'pond', 'stream'",
    "discriminator": "'sort'",
    "error": ValueError("x"),
}
CONTEXT |= {
    "ge": 1,
    "gt": 1,
    "le": 1,
    "lt": 1,
    "min_length": 1,
    "max_length": 1,
    "multiple_of": 2,
    "class": "Pond",
    "pattern": "a",
}


@pytest.mark.parametrize("sort", sorted(get_args(ErrorType)))
def test_wording_of_pydantic_never_gets_through(sort: str) -> None:
    """Every error that pydantic knows, today's or tomorrow's, is told in our words."""
    told = worded(Mismatch(sort, "x", CONTEXT))
    ours = f"{told.expected} {told.found} {told.mend}"
    assert told.expected and told.found and told.mend
    assert [] == [word for word in ("Input", "should", "instance", "string", "None", "Pond", "'") if word in ours]


@pytest.mark.parametrize(
    ("sort", "value", "context", "expected", "found", "mend"),
    [
        ("string_type", 2024, {}, "text", "the number 2024", 'put it in quotes: "2024"'),
        ("string_type", {"a.b": None}, {}, "text", "fields (a.b)", "put the text in quotes: '{a.b}'"),
        ("tuple_type", "fire", {}, "a list", 'the text "fire"', "write it in brackets: [fire]"),
        (
            "bool_type",
            "yes",
            {},
            "true or false",
            'the text "yes"',
            "write true or false, in small letters and without quotes",
        ),
        ("greater_than_equal", -1, {"ge": 0}, "0 or more", "the number -1", "check the digits"),
        ("too_short", [], {"min_length": 2}, "at least 2 items", "an empty list", "add what is missing"),
        (
            "literal_error",
            "pagee",
            {"expected": "'page' or 'paper'"},
            "page or paper",
            'the text "pagee"',
            'did you mean "page"?',
        ),
        ("int_from_float", 2.5, {}, "a whole number", "the number 2.5", "write a number without decimals"),
    ],
)
def test_mismatch_is_told_with_what_was_expected_found_and_how_to_mend_it(
    sort: str, value: Any, context: dict[str, Any], expected: str, found: str, mend: str
) -> None:
    told = worded(Mismatch(sort, value, context))
    assert (expected, found, mend) == (told.expected, told.found, told.mend)


def test_fields_without_values_are_not_taken_for_text() -> None:
    """Only names with points or spaces can be a fact or a text whose quotes were left out."""
    context = {"expected": "low and high", "mend": "write both", "found": ""}
    assert "write both" == worded(Mismatch("told", {"low": None, "high": None}, context)).mend


def test_group_is_expected_with_its_fields() -> None:
    told = worded(Mismatch("model_type", "dark", {}, ("type", "why")))
    assert ("fields (type, why)", "write {type: ..., why: ...}, or one field in each line") == (
        told.expected,
        told.mend,
    )
