"""Each sort of error that pydantic finds in a file, in an author's words; its own wording never gets through."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from generator.diagnostics import did_you_mean, listed
from generator.records.expectation import TOLD
from generator.records.numeral import number_mend
from generator.records.wording import excerpt, shown, written


@dataclass(frozen=True)
class Mismatch:
    """A value that does not fit."""

    sort: str
    """pydantic's name for the error, such as `string_type`."""
    value: Any
    context: dict[str, Any] = field(default_factory=dict)
    fields: tuple[str, ...] = ()
    """The fields that a group at this place has, the required ones where there are any."""


@dataclass(frozen=True)
class Told:
    """What is said of a mismatch."""

    expected: str
    found: str
    mend: str


def worded(mismatch: Mismatch) -> Told:
    """The mismatch in an author's words."""
    if mismatch.sort == TOLD:
        context = mismatch.context
        mend = _mend_of_group(mismatch.value) or context["mend"]
        return Told(context["expected"], context["found"] or shown(mismatch.value), mend)
    words = _WORDS.get(mismatch.sort)
    if words is None:
        return Told(
            "a value that fits this field", shown(mismatch.value), "compare with the same field of another record"
        )
    what, mend = words(mismatch)
    return Told(what, shown(mismatch.value), mend)


def _mend_of_group(value: Any) -> str:
    """For `{harrow_plain.annual_precip}` without quotes, which YAML reads as a group of fields without values."""
    if not isinstance(value, dict) or any(inner is not None for inner in value.values()):
        return ""
    like_text = any(re.search(r"[. ]", name) for name in value)
    return f"put the text in quotes: '{{{excerpt(', '.join(value))}}}'" if like_text else ""


def _text(mismatch: Mismatch) -> tuple[str, str]:
    value = mismatch.value
    if value is None:
        return "text", "write the text after the colon"
    if isinstance(value, (list, dict)):
        return "text", _mend_of_group(value) or "write one text; put it in quotes if it has brackets or a colon in it"
    return "text", f'put it in quotes: "{written(value)}"'


def _list(mismatch: Mismatch) -> tuple[str, str]:
    value = mismatch.value
    if value is None:
        return "a list", "write the items as [a, b], or remove the line where the field is optional"
    if isinstance(value, dict):
        return "a list", 'start each item with "- " on its own line'
    return "a list", f"write it in brackets: [{excerpt(written(value))}]"


def _fields(mismatch: Mismatch) -> tuple[str, str]:
    names = mismatch.fields
    what = f"fields ({', '.join(names)})" if names else "fields"
    if isinstance(mismatch.value, list):
        return what, 'write the fields without "- " or brackets before them'
    return what, f"write {{{', '.join(f'{name}: ...' for name in names or ('name',))}}}, or one field in each line"


def _true_or_false(mismatch: Mismatch) -> tuple[str, str]:
    return "true or false", "write true or false, in small letters and without quotes"


def _number(mismatch: Mismatch) -> tuple[str, str]:
    value = mismatch.value
    return "a number", number_mend(value) if isinstance(value, str) else "write one number"


def _whole(mismatch: Mismatch) -> tuple[str, str]:
    return "a whole number", _number(mismatch)[1] if isinstance(
        mismatch.value, str
    ) else "write a number without decimals"


def _limit(words: str, key: str) -> Callable[[Mismatch], tuple[str, str]]:
    return lambda mismatch: (words.format(written(mismatch.context.get(key, ""))), "check the digits")


def _one_of(mismatch: Mismatch) -> tuple[str, str]:
    words = re.findall(r"'([^']*)'", str(mismatch.context.get("expected", "")))
    value = written(mismatch.value) if isinstance(mismatch.value, (str, int, float)) else ""
    return listed(words), did_you_mean(value.lower(), words, "write one of them")


def _length(words: str, key: str, mend: str) -> Callable[[Mismatch], tuple[str, str]]:
    def length(mismatch: Mismatch) -> tuple[str, str]:
        number = mismatch.context.get(key, 0)
        return f"{words} {number} {'item' if number == 1 else 'items'}", mend

    return length


def _always(what: str, mend: str) -> Callable[[Mismatch], tuple[str, str]]:
    return lambda mismatch: (what, mend)


def _tag(mismatch: Mismatch) -> tuple[str, str]:
    name = str(mismatch.context.get("discriminator", "")).strip("'")
    words = re.findall(r"'([^']*)'", str(mismatch.context.get("expected_tags", "")))
    return f"{name}: {listed(words)}" if words else f"a field {name}", f"write {name} with the right word"


_WORDS: dict[str, Callable[[Mismatch], tuple[str, str]]] = {
    "string_type": _text,
    "string_too_short": _always("a longer text", "write the text in full"),
    "string_too_long": _always("a shorter text", "cut it"),
    "string_pattern_mismatch": _always("another spelling", "compare with the same field of another record"),
    "tuple_type": _list,
    "list_type": _list,
    "too_short": _length("at least", "min_length", "add what is missing"),
    "too_long": _length("at most", "max_length", "remove what is too much"),
    "dict_type": _fields,
    "model_type": _fields,
    "model_attributes_type": _fields,
    "bool_type": _true_or_false,
    "float_type": _number,
    "finite_number": _number,
    "int_type": _whole,
    "int_from_float": _whole,
    "greater_than": _limit("more than {}", "gt"),
    "greater_than_equal": _limit("{} or more", "ge"),
    "less_than": _limit("less than {}", "lt"),
    "less_than_equal": _limit("at most {}", "le"),
    "multiple_of": _limit("a multiple of {}", "multiple_of"),
    "literal_error": _one_of,
    "enum": _one_of,
    "union_tag_invalid": _tag,
    "union_tag_not_found": _tag,
    "none_required": _always("nothing", "remove the value"),
}
