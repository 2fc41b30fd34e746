"""How a validator says what it expected: these are the only messages of a validator that reach an author."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationError
from pydantic_core import InitErrorDetails, PydanticCustomError

from generator.records.field_path import FieldPath

TOLD = "told"


def expected(what: str, mend: str, *, found: str = "", note: str = "", length: int = 0) -> PydanticCustomError:
    """The exception by which a validator refuses a value: `raise expected("a month", "write a number from 1 to 12")`.

    `found` describes the value where its sort and text do not (`11` for the length of a list); `note` is put behind the
    field's name (`February`); `length` is how many items a list should have.
    """
    return PydanticCustomError(
        TOLD, "told by the validator", {"expected": what, "mend": mend, "found": found, "note": note, "length": length}
    )


@dataclass(frozen=True)
class Inner:
    """A refusal of a value inside the validated one."""

    path: FieldPath
    value: Any
    refusal: PydanticCustomError


def several(inner: Iterable[Inner]) -> ValidationError:
    """The exception by which a validator refuses several values inside the validated one at once."""
    return ValidationError.from_exception_data(
        TOLD, [InitErrorDetails(type=one.refusal, loc=one.path, input=one.value) for one in inner]
    )


def joined(error: ValidationError, inner: Iterable[Inner]) -> ValidationError:
    """The exception that refuses what the given one refuses, and more values besides."""
    before = [
        InitErrorDetails(type=_type(one), loc=one["loc"], input=one["input"], ctx=one.get("ctx", {}))
        for one in error.errors()
    ]
    after = [InitErrorDetails(type=one.refusal, loc=one.path, input=one.value) for one in inner]
    return ValidationError.from_exception_data(TOLD, before + after)


def _type(one: Any) -> str | PydanticCustomError:
    return PydanticCustomError(TOLD, "told by the validator", one["ctx"]) if one["type"] == TOLD else one["type"]
