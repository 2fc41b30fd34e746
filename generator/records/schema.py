"""What a model lets a file say at a path: the field names that exist there, and where a misplaced one belongs."""

from __future__ import annotations

import types
from collections.abc import Iterator
from functools import lru_cache
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from generator.records.field_path import FieldPath


def known_fields(model: Any, path: FieldPath, group: Any) -> dict[str, FieldInfo]:
    """The fields, by their names in files, that the group at the path may have; empty where any may stand."""
    models = groups_at(model, path)
    fitting = [one for one in models if isinstance(group, dict) and _fits(one, group)] or models
    return {name: info for one in fitting for name, info in _spelled_fields(one).items()}


def _fits(model: type[BaseModel], group: dict[str, Any]) -> bool:
    """Whether no field of the group that is one of a few words has a word of another model."""
    words = {
        name: get_args(info.annotation)
        for name, info in _spelled_fields(model).items()
        if get_origin(info.annotation) is Literal
    }
    return all(group.get(name, allowed[0]) in allowed for name, allowed in words.items())


def groups_at(model: Any, path: FieldPath) -> tuple[type[BaseModel], ...]:
    """The models that may stand at the path; more than one where the schema leaves a choice."""
    reached = list(_plain_types(model))
    for step in path:
        reached = [inner for annotation in reached for inner in _inside(annotation, step)]
    return tuple(kind for kind in reached if isinstance(kind, type) and issubclass(kind, BaseModel))


@lru_cache(maxsize=256)
def homes(model: Any, name: str) -> tuple[str, ...]:
    """The fields at the top of the model below which a field of this name exists."""
    tops = [(top, info) for group in groups_at(model, ()) for top, info in _spelled_fields(group).items()]
    return tuple(top for top, info in tops if name in _names_below(info.annotation))


def _names_below(annotation: Any) -> Iterator[str]:
    for kind in _plain_types(annotation):
        if isinstance(kind, type) and issubclass(kind, BaseModel):
            for name, info in _spelled_fields(kind).items():
                yield name
                yield from _names_below(info.annotation)
        elif get_origin(kind) in (tuple, list, dict):
            for inner in get_args(kind):
                yield from _names_below(inner)


def _spelled_fields(group: type[BaseModel]) -> dict[str, FieldInfo]:
    return {info.alias or name: info for name, info in group.model_fields.items()}


def choices(info: FieldInfo | None) -> tuple[str, ...]:
    """The words that a field may have, if it may have nothing else; `true` and `false` are words too."""
    words: list[str] = []
    for kind in _plain_types(info.annotation) if info else ():
        words += ["true", "false"] if kind is bool else get_args(kind) if get_origin(kind) is Literal else [""]
    return tuple(words) if all(words) else ()


def _plain_types(annotation: Any) -> Iterator[Any]:
    origin = get_origin(annotation)
    if origin is Annotated:
        yield from _plain_types(get_args(annotation)[0])
    elif origin in (Union, types.UnionType):
        for choice in get_args(annotation):
            yield from _plain_types(choice)
    elif hasattr(annotation, "__value__"):
        yield from _plain_types(annotation.__value__)
    else:
        yield annotation


def _inside(annotation: Any, step: str | int) -> Iterator[Any]:
    origin, arguments = get_origin(annotation), get_args(annotation)
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        info = _spelled_fields(annotation).get(str(step))
        if info:
            yield from _plain_types(info.annotation)
    elif origin is dict:
        yield from _plain_types(arguments[1])
    elif origin in (tuple, list) and isinstance(step, int):
        fixed = origin is tuple and Ellipsis not in arguments
        if not fixed or step < len(arguments):
            yield from _plain_types(arguments[step] if fixed else arguments[0])
