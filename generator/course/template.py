"""A kind's `new.yaml.j2`: the text of a new record, and the sentences in it that wait for an author's own."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from generator.kind import Kind
from generator.records.numeral import plain_value
from generator.records.tables import is_number

TEMPLATE = "new.yaml.j2"
_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9_/-]*(?: [A-Za-z0-9_/-]+)*", re.ASCII)


def rendered(kind: Kind[Any], title: str, table: Mapping[str, Any] | None = None) -> str:
    """The text of a new record, with the numbers of a table if there is one."""
    return _rendered(kind, title, table)[0]


@lru_cache(maxsize=32)
def placeholders(kind: Kind[Any]) -> tuple[str, ...]:
    """What the template writes with `| yours`: texts that an author puts others in the place of, in the template's order."""
    return _rendered(kind, "A title", None)[1]


def _rendered(kind: Kind[Any], title: str, table: Mapping[str, Any] | None) -> tuple[str, tuple[str, ...]]:
    marked: list[str] = []

    def yours(text: str) -> str:
        marked.append(text)
        return text

    made = Environment(
        loader=FileSystemLoader(kind.folder), undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True, keep_trailing_newline=True
    )  # fmt: skip
    made.filters |= {"text": text_scalar, "flow": flow, "yours": yours}
    text = made.get_template(TEMPLATE).render(title=title, table=table)
    return text, tuple(dict.fromkeys(marked))


def text_scalar(text: str) -> str:
    """A text in the way YAML writes it, in quotes where it would mean something else without.

    >>> text_scalar("Harrow Plain"), text_scalar("12"), text_scalar("no: never")
    ('Harrow Plain', '"12"', '"no: never"')
    """
    plain = _PLAIN.fullmatch(text) and isinstance(plain_value(text), str)
    return text if plain else json.dumps(text, ensure_ascii=False)


def flow(value: str | Mapping[str, Any] | Sequence[Any]) -> str:
    """Fields, lists and cells on one line, as YAML writes them; a cell that is a number is one.

    >>> flow({"id": "litter", "rate": {"low": "10", "high": "25"}, "at": ["1", "0"]})
    '{id: litter, rate: {low: 10, high: 25}, at: [1, 0]}'
    """
    if isinstance(value, str):
        return value if is_number(value) else text_scalar(value)
    if isinstance(value, Mapping):
        return f"{{{', '.join(f'{name}: {flow(inner)}' for name, inner in value.items())}}}"
    return f"[{', '.join(map(flow, value))}]"
