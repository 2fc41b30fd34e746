"""A located file against a model: the record, or everything that is wrong with it, in an author's words."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any, TypeVar

from pydantic import TypeAdapter, ValidationError

from generator.diagnostics import Diagnostic, in_order, listed, nearest
from generator.records.expectation import TOLD
from generator.records.field_path import FieldPath, pointed, visible
from generator.records.located import Located
from generator.records.numeral import comma_mend, decimal_mend
from generator.records.mismatch import Mismatch, worded
from generator.records.schema import choices, homes, known_fields
from generator.records.wording import excerpt

Checked = TypeVar("Checked")
_LENGTHS = {"too_short", "too_long"}
_MOST_LISTED = 12


def check(located: Located, model: type[Checked]) -> tuple[Checked | None, tuple[Diagnostic, ...]]:
    """The file as an instance of the model, and every problem of its text and of its content, in order.

    The instance is None exactly where there is a problem. A missing field is told at the group without it, an unknown
    one at its name, all else at the value; each problem once. `model` is a `Part`, or any type that pydantic knows.
    Entries of a model with `NAMED_BY`, which is one long list, are called by that field.
    """
    record, problems = _checked(located, model)
    by = getattr(model, "NAMED_BY", "")
    return record, tuple(_named(one, located, by) for one in problems) if by else problems


def _checked(located: Located, model: type[Checked]) -> tuple[Checked | None, tuple[Diagnostic, ...]]:
    if located.value is None:
        return None, located.problems
    try:
        record = _adapter(model).validate_python(located.value)
    except ValidationError as error:
        problems = _told(located, model, error)
    else:
        if not located.problems:
            return record, ()
        problems = []
    return None, in_order([*located.problems, *problems])


def _named(one: Diagnostic, located: Located, by: str) -> Diagnostic:
    """The diagnostic with `words[151]` as `words[biome]`, where the entry says what it is called."""
    found = re.match(r"(\w+)\[(\d+)\]", one.field)
    name = located.at((found[1], int(found[2]), by)) if found else None
    if found is None or not isinstance(name, str) or not name.strip():
        return one
    called = f"{found[1]}[{excerpt(name)}]"
    first = re.sub(r"\(first at \[(\d+)\]\)", lambda at: f"(first on line {located.place((found[1], int(at[1]))).line})", one.found)
    return replace(one, field=one.field.replace(found[0], called, 1), found=first, mend=one.mend.replace(found[0], called))


@lru_cache(maxsize=64)
def _adapter(model: Any) -> TypeAdapter[Any]:
    return TypeAdapter(model)


@dataclass(frozen=True)
class _Error:
    """One of pydantic's errors on the path that the file knows."""

    path: FieldPath
    sort: str
    value: Any
    context: dict[str, Any]
    at_key: bool

    @property
    def parent(self) -> FieldPath:
        return self.path[:-1]


def _told(located: Located, model: Any, error: ValidationError) -> list[Diagnostic]:
    errors = [_placed(located, one) for one in error.errors(include_url=False)]
    errors = [one for one in _once(errors) if not located.is_unread(one.path)]
    unknown = {one.path: _suggested(located, model, one) for one in errors if one.sort == "extra_forbidden"}
    meant = {(*path[:-1], name) for path, name in unknown.items() if name}
    told = [_unknown(located, model, path, name) for path, name in _without_echoes(located, unknown).items()]
    for one in errors:
        if one.sort == "missing":
            told += [] if one.path in meant else [_missing(located, model, one)]
        elif one.sort != "extra_forbidden":
            told.append(_mismatch(located, model, one))
    return told


def _placed(located: Located, error: Any) -> _Error:
    """The error with its path freed of the steps that pydantic adds for choices and keys."""
    path: FieldPath = ()
    value = located.value
    for step in error["loc"]:
        in_fields = isinstance(value, dict) and step in value
        if in_fields or (isinstance(value, list) and step in range(len(value))):
            path, value = (*path, step), value[step]
    if error["type"] == "missing":
        path = (*path, error["loc"][-1])
    return _Error(path, error["type"], error["input"], error.get("ctx", {}), error["loc"][-1:] == ("[key]",))


def _once(errors: list[_Error]) -> list[_Error]:
    """Without the length of a list whose items are wrong, and without a second choice's view of one value."""
    around = {one.path[:length] for one in errors for length in range(len(one.path))}
    kept: dict[Any, _Error] = {}
    for one in errors:
        if not (one.sort in _LENGTHS and one.path in around):
            key = (one.path, one.context.get("expected")) if one.sort == TOLD else one.path
            kept.setdefault(key, one)
    return list(kept.values())


def _suggested(located: Located, model: Any, error: _Error) -> str:
    """The known field that the unknown one seems to mean, first among those that the file does not have yet."""
    present = located.at(error.parent)
    known = known_fields(model, error.parent, present)
    name = str(error.path[-1]).lower()
    new = [field for field in known if field not in present]
    return nearest(name, new) or nearest(name, known)


def _without_echoes(located: Located, unknown: dict[FieldPath, str]) -> dict[FieldPath, str]:
    """Of names without values in one group only the first: they are the rest of one text with commas."""
    seen: set[FieldPath] = set()
    kept = {}
    for path, name in unknown.items():
        echo = not name and located.at(path) is None
        if not (echo and path[:-1] in seen):
            kept[path] = name
        if echo:
            seen.add(path[:-1])
    return kept


def _unknown(located: Located, model: Any, path: FieldPath, suggestion: str) -> Diagnostic:
    place, name = located.key_place(path), str(path[-1])
    present = located.at(path[:-1])
    known = [field for field in known_fields(model, path[:-1], present) if field not in present]
    inside = [top for top in homes(model, name) if top != path[0]] if len(path) == 1 else []
    if suggestion:
        mend = f'did you mean "{suggestion}"?'
    elif inside:
        mend = f"move it inside {listed(inside)}"
    elif located.at(path) is None and (comma := decimal_mend(present, name)):
        mend = comma
    elif located.at(path) is None and " " in name:
        mend = "a comma ends a text inside { }; put the text in quotes"
    else:
        few = 0 < len(known) <= _MOST_LISTED
        mend = f"remove it, or use {listed(known)}" if few else "remove it, or compare with another record of its kind"
    return Diagnostic(place, pointed(path), "a known field", "an unknown one", mend)


def _missing(located: Located, model: Any, error: _Error) -> Diagnostic:
    name = visible(str(error.path[-1]))
    words = choices(known_fields(model, error.parent, located.at(error.parent)).get(str(error.path[-1])))
    mend = f'add "{name}: ..." to {excerpt(pointed(error.parent)) if error.parent else "the file"}'
    mend += f"; choose {listed(words)}" if words else ""
    return Diagnostic(located.place(error.parent), pointed(error.path), "this field", "none", mend)


def _mismatch(located: Located, model: Any, error: _Error) -> Diagnostic:
    fields = known_fields(model, error.path, error.value)
    names = [name for name, info in fields.items() if info.is_required()] or fields
    told = worded(Mismatch(error.sort, error.value, error.context, tuple(names)))
    place = located.key_place(error.path) if error.at_key else located.place(error.path)
    mend = _mend_of_commas(located, error) or told.mend
    return Diagnostic(place, pointed(error.path, error.context.get("note", "")), told.expected, told.found, mend)


def _mend_of_commas(located: Located, error: _Error) -> str:
    """For a list that is longer than it should be because of decimal commas."""
    wanted = error.context.get("length") or error.context.get("max_length")
    if not isinstance(error.value, (list, tuple)) or not isinstance(wanted, int):
        return ""
    return comma_mend(located.brackets(error.path), len(error.value) - wanted)
