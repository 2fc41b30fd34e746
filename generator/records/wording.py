"""How a value that stands in a file is called in a message."""

from __future__ import annotations

from typing import Any

from generator.records.field_path import visible
from generator.records.numeral import WrittenFloat, WrittenInt

LONGEST = 40


def shown(value: Any) -> str:
    """The sort of the value and, in short, the value.

    >>> shown("thirty"), shown([1, 2]), shown(None), shown(True)
    ('the text "thirty"', 'a list of 2', 'nothing', 'true')
    """
    if value is None:
        return "nothing"
    if isinstance(value, bool):
        return written(value)
    if isinstance(value, (int, float)):
        return f"the number {written(value)}"
    if isinstance(value, str):
        return f'the text "{excerpt(value)}"' if value.strip() else "an empty text"
    if isinstance(value, (list, tuple)):
        return f"a list of {len(value)}" if value else "an empty list"
    if isinstance(value, dict):
        return f"fields ({excerpt(', '.join(map(str, value)))})" if value else "no fields"
    return "something else"


def written(value: Any) -> str:
    """A scalar as it stands in the file."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, (WrittenInt, WrittenFloat)):
        return value.text
    if isinstance(value, (int, float)):
        return f"{value:g}"
    return visible(str(value))


def excerpt(text: str) -> str:
    """The text on one line, cut where it is long."""
    line = visible(text)
    return line if len(line) <= LONGEST else f"{line[: LONGEST - 1].rstrip()}…"
