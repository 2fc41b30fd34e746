"""Numbers that no measurement gives: a slip in an exponent, told before anything is computed from it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from generator.records import Finding
from generator.records.field_path import FieldPath

SMALLEST, LARGEST = 1e-15, 1e24
"""Our own limits, wide on purpose: the carbon in all rocks is roughly 1e23 g."""


def beyond_measure(value: Any, path: FieldPath = ()) -> Iterator[Finding]:
    """Every number of a record as read that is neither 0 nor of a size that occurs."""
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from beyond_measure(inner, (*path, key))
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from beyond_measure(inner, (*path, index))
    elif isinstance(value, (int, float)) and not isinstance(value, bool) and value and not SMALLEST <= abs(value) <= LARGEST:
        yield Finding(
            path=path, expected=f"0, or a number of a size from {SMALLEST:g} to {LARGEST:g}",
            found=getattr(value, "text", f"{value:g}"), mend="check the exponent, or choose another unit under `units:`",
        )  # fmt: skip
