"""Records with other numbers in their files: read and checked like any file, so that facts, texts and tables of charts follow.

A number's place in a file is found by its value, and taken only if another value there changes this fact and no other that is stated.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import cached_property
from typing import Any

from generator.kind import Kind, Subject
from generator.quantities.fact import Fact
from generator.records.checking import check
from generator.records.field_path import FieldPath
from generator.records.finding import Finding
from generator.records.folder import RecordFile
from generator.records.numeral import plain_value
from generator.written.materials import Rewritten, Unchangeable

PUBLISHED = "comes from nature and its source, and must not be changed."
NOT_STATED = "is not stated as one number in a file."


class Rewriting:
    """The records of a course, each with other numbers on request."""

    def __init__(self, files: Mapping[str, RecordFile], subjects: Mapping[str, Subject[Any]], kinds: Mapping[str, Kind[Any]]) -> None:
        self._files, self._subjects, self._kinds = files, subjects, kinds
        self._records: dict[str, _Record] = {}

    def __call__(self, record: str, numbers: Mapping[str, Fact | None]) -> Rewritten | None:
        """The record with these numbers for facts that it states, by their ids, or without them; None where they contradict each other.

        Raises
        ------
        Unchangeable
            If a fact is not stated as one number, or is no invention.
        """
        if record not in self._records:
            subject = self._subjects[record]
            self._records[record] = _Record(self._files[record], self._kinds[subject.kind], subject)
        return self._records[record].with_numbers(numbers)


@dataclass(frozen=True)
class _Record:
    file: RecordFile
    kind: Kind[Any]
    subject: Subject[Any]

    @cached_property
    def _places(self) -> dict[str, FieldPath]:
        return {}

    @cached_property
    def _findings(self) -> frozenset[object]:
        return _sorts(self.kind.findings(self.subject.record))

    @cached_property
    def _doubts(self) -> frozenset[object]:
        return self._sorts_of_doubt(self.subject)

    def with_numbers(self, numbers: Mapping[str, Fact | None]) -> Rewritten | None:
        value = self.file.located.value
        for name, fact in numbers.items():
            value = _without(value, self._place(name)) if fact is None else _put(value, self._place(name), _numbers(fact))
        record = self._read(value)
        if record is None or not _sorts(self.kind.findings(record)) <= self._findings:
            return None
        made = self.kind.subject(self.file.name, record)
        return Rewritten(made.facts, lambda name: self.kind.named_charts(made)[name].table, lambda: self._sorts_of_doubt(made) <= self._doubts)

    def _read(self, value: Any) -> Any:
        """The record of a file with these values; None where a field cannot have its own."""
        return check(replace(self.file.located, value=value), self.kind.record)[0]

    def _sorts_of_doubt(self, made: Subject[Any]) -> frozenset[object]:
        return _sorts(self.kind.doubts(made.record, made.facts))

    def _place(self, name: str) -> FieldPath:
        """Where the file states a fact."""
        fact = self.subject.facts[name]
        if self.subject.record.data != "invented" or fact.sources:
            raise Unchangeable(PUBLISHED)
        if name not in self._places:
            found = self._search(fact) if fact.working is None and (fact.is_number or fact.is_series) else None
            if found is None:
                raise Unchangeable(NOT_STATED)
            self._places[name] = found
        return self._places[name]

    def _search(self, fact: Fact) -> FieldPath | None:
        """The first place, those near the fact's name before others, where another number changes the fact and no other."""
        part, _, name = fact.id.rpartition(".")
        value = self.file.located.value
        fits = [(path, parts) for path, parts, found in _stated(value) if found == _values(fact)]
        nudged = _nudged(fact)
        for path, _ in sorted(fits, key=lambda one: (part not in one[1], name not in one[0])):
            record = self._read(_put(value, path, _numbers(nudged)))
            if record is not None and self._stated_by(record) == {**self._stated_by(self.subject.record), fact.id: nudged.value}:
                return path
        return None

    def _stated_by(self, record: Any) -> dict[str, object]:
        return {fact.id: fact.value for fact in self.kind.facts(record).values() if fact.working is None}


def _stated(value: Any, path: FieldPath = (), parts: tuple[str, ...] = ()) -> Iterator[tuple[FieldPath, tuple[str, ...], tuple[float, ...]]]:
    """Each number, and each list of numbers, with its place and the ids of the parts around it."""
    if isinstance(value, dict):
        own = (*parts, value["id"]) if isinstance(value.get("id"), str) else parts
        for key, inner in value.items():
            yield from _stated(inner, (*path, key), (*own, key))
    elif isinstance(value, list):
        if value and all(map(_is_number, value)):
            yield path, parts, tuple(map(float, value))
        for index, inner in enumerate(value):
            yield from _stated(inner, (*path, index), parts)
    elif _is_number(value):
        yield path, parts, (float(value),)


def _is_number(value: Any) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def _put(value: Any, path: FieldPath, numbers: list[Any]) -> Any:
    """The values of a file with others at one place."""
    if not path:
        return numbers if isinstance(value, list) else numbers[0]
    if isinstance(value, list):
        return [_put(inner, path[1:], numbers) if index == path[0] else inner for index, inner in enumerate(value)]
    return {key: _put(inner, path[1:], numbers) if key == path[0] else inner for key, inner in value.items()}


def _without(value: Any, path: FieldPath) -> Any:
    """The values of a file without the field at a place; an amount of several fields goes as a whole."""
    if len(path) == 1 or path[1:] == ("value",):
        return {key: inner for key, inner in value.items() if key != path[0]}
    if isinstance(value, list):
        return [_without(inner, path[1:]) if index == path[0] else inner for index, inner in enumerate(value)]
    return {key: _without(inner, path[1:]) if key == path[0] else inner for key, inner in value.items()}


def _numbers(fact: Fact) -> list[Any]:
    """The digits of a stated fact, as a file has them."""
    return [plain_value(text) for text in fact.written.split()] or [plain_value(f"{Decimal(repr(value)):f}") for value in _values(fact)]


def _values(fact: Fact) -> tuple[float, ...]:
    return fact.series if fact.is_series else (fact.number,) if fact.is_number else ()


def _nudged(fact: Fact) -> Fact:
    """The fact with its first number changed by little."""
    first, *rest = _values(fact)
    changed = first + (1 if first.is_integer() else 0.01)
    return replace(fact, value=(changed, *rest) if fact.is_series else changed, written="", plus_minus=None, low=None, high=None)


def _sorts(findings: Iterable[Finding]) -> frozenset[object]:
    """What is told, apart from its numbers."""
    return frozenset((finding.path, finding.rule) for finding in findings)
