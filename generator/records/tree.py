"""The parser's events as plain values, each with its place; what plain YAML has no need of is refused here."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

import yaml

from generator.diagnostics import Diagnostic
from generator.records.field_path import FieldPath, pointed
from generator.records.numeral import plain_value
from generator.records.source import UNREADABLE, Source
from generator.records.wording import excerpt

DEEPEST = 20
MOST_EVENTS = 20_000

QUESTION_MARK = "\ufffc"
"""Stands for `?` while the parser works: the two parsers differ over it inside brackets, and texts do hold it."""
_CURLY = "\u201c\u201d\u201e\u00ab\u00bb\u2018\u2019\u201a"
_UNSEEN_IN_KEY = "\u00a0\u00ad\u2007\u200b\u200c\u200d\u200e\u200f\u202f\u2060"


@dataclass(frozen=True)
class Spot:
    """Where a value begins, as a position in the text, and how it is quoted: `"`, `'`, `|`, `>` or empty."""

    position: int
    style: str = ""


@dataclass
class Tree:
    """What a file says, and where."""

    value: Any = None
    values: dict[FieldPath, Spot] = field(default_factory=dict)
    keys: dict[FieldPath, int] = field(default_factory=dict)
    problems: list[Diagnostic] = field(default_factory=list)
    unread: set[FieldPath] = field(default_factory=set)
    """Values that a problem already stands for, so that nothing more is said of them."""


class TooMuch(Exception):
    """The file goes beyond the bounds; carries the one diagnostic that says so."""

    def __init__(self, problem: Diagnostic) -> None:
        self.problem = problem
        super().__init__(str(problem))


def grown(events: Iterator[yaml.Event], source: Source) -> Tree:
    """The tree of the first document among the parser's events.

    Raises
    ------
    TooMuch
        If the file is nested too deeply or holds too many values.
    yaml.YAMLError
        If the parser, which works while its events are taken, finds that the text is not YAML.
    """
    return _Growth(events, source).document()


class _Growth:
    def __init__(self, events: Iterator[yaml.Event], source: Source) -> None:
        self.source = source
        self.tree = Tree()
        self.events = self._counted(events)

    def _counted(self, events: Iterator[yaml.Event]) -> Iterator[yaml.Event]:
        for count, event in enumerate(events, 1):
            if count > MOST_EVENTS:
                found = "more than that"
                raise TooMuch(
                    self._problem((), event, f"at most {MOST_EVENTS} values in a file", found, "split the record")
                )
            yield event

    def _problem(self, path: FieldPath, event: yaml.Event, expected: str, found: str, mend: str) -> Diagnostic:
        return self.source.problem(event.start_mark.index, expected, found, mend, pointed(path))

    def _tell(self, path: FieldPath, event: yaml.Event, expected: str, found: str, mend: str) -> None:
        self.tree.problems.append(self._problem(path, event, expected, found, mend))

    def document(self) -> Tree:
        documents = 0
        for event in self.events:
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents == 2:
                    self._tell((), event, "one document", 'a second one after "---"', "keep one record in a file")
            elif documents == 1 and not isinstance(event, (yaml.StreamEndEvent, yaml.DocumentEndEvent)):
                self.tree.value = self._value(event, ())
        return self.tree

    def _value(self, event: yaml.Event, path: FieldPath) -> Any:
        self._refuse_references(event, path)
        if isinstance(event, yaml.AliasEvent):
            self._place(event, path)
            return None
        if isinstance(event, yaml.ScalarEvent):
            return self._scalar(event, path)
        if len(path) >= DEEPEST:
            raise TooMuch(
                self._problem(path[:1], event, f"at most {DEEPEST} levels", "more", "put text with brackets in quotes")
            )
        self._place(event, path)
        return self._list(path) if isinstance(event, yaml.SequenceStartEvent) else self._fields(path)

    def _place(self, event: yaml.Event, path: FieldPath, style: str = "") -> None:
        position = event.start_mark.index
        if not style and getattr(event, "value", None) == "":
            position = self._before_space(position)
        self.tree.values[path] = Spot(position, style)

    def _before_space(self, position: int) -> int:
        """Right behind the sign before an empty value: the parsers differ in how much white space they pass over."""
        while position > 0 and self.source.text[position - 1] in " \r\n":
            position -= 1
        return position

    def _refuse_references(self, event: yaml.Event, path: FieldPath) -> None:
        quote = "put the text in quotes"
        if isinstance(event, yaml.AliasEvent):
            self.tree.unread.add(path)
            mend = f"{quote}, or write the value out"
            self._tell(path, event, "a value", f"a reference to an anchor (*{excerpt(event.anchor)})", mend)
        elif event.anchor is not None:
            self._tell(
                path, event, "a value", f"an anchor (&{excerpt(event.anchor)})", f"{quote}, or leave the anchor out"
            )
        elif event.tag is not None:
            # In a list a mark swallows the comma behind it, so the items after it are not what the author meant.
            self.tree.unread.add(path[:-1] if path and isinstance(path[-1], int) else path)
            found = f"a type mark ({excerpt(self.source.line_from(event.start_mark.index).split(' ')[0])})"
            self._tell(path, event, "a value", found, f"{quote}, or leave the mark out")

    def _scalar(self, event: yaml.ScalarEvent, path: FieldPath) -> Any:
        style = event.style or ""
        self._place(event, path, style)
        value = self._readable(event, path)
        return value if style else plain_value(value)

    def _readable(self, event: yaml.ScalarEvent, path: FieldPath) -> str:
        """The scalar's text; characters that only an escape can have brought in are told and left out."""
        text = event.value.replace(QUESTION_MARK, "?")
        bad = UNREADABLE.search(text)
        if not bad:
            return text
        self.tree.unread.add(path)
        found = f"an escape for the character U+{ord(bad[0]):04X}"
        self._tell(path, event, "characters that can be read", found, "leave it out, or write two backslashes for one")
        return UNREADABLE.sub("", text)

    def _list(self, path: FieldPath) -> list[Any]:
        items: list[Any] = []
        while not isinstance(event := next(self.events), yaml.SequenceEndEvent):
            items.append(self._value(event, (*path, len(items))))
        return items

    def _fields(self, path: FieldPath) -> dict[str, Any]:
        fields: dict[str, Any] = {}
        while not isinstance(event := next(self.events), yaml.MappingEndEvent):
            if isinstance(event, yaml.ScalarEvent):
                self._field(event, path, fields)
            else:
                self._refuse_key(event, path)
        return fields

    def _field(self, event: yaml.ScalarEvent, path: FieldPath, fields: dict[str, Any]) -> None:
        self._refuse_references(event, path)
        name = self._name(event, path)
        inner = (*path, name)
        if name in fields:
            first = self.source.place(self.tree.keys[inner]).line
            found = f'"{excerpt(name)}" a second time (first on line {first})'
            self._tell(inner, event, "each field once", found, "keep one of the two, or rename it")
            self._skip(next(self.events), inner)
        else:
            self.tree.keys[inner] = event.start_mark.index
            fields[name] = self._value(next(self.events), inner)

    def _name(self, event: yaml.ScalarEvent, path: FieldPath) -> str:
        name = self._readable(event, path)
        if event.style:
            return name
        unseen = [ch for ch in name if ch in _UNSEEN_IN_KEY]
        curly = name[:1] in _CURLY or name[-1:] in _CURLY
        clean = "".join(ch for ch in name if ch not in _UNSEEN_IN_KEY).strip(_CURLY + " ") or name
        if curly and name != clean:
            mend = f"write {excerpt(clean)} without quotes"
            self._tell((*path, clean), event, "a field name", f"one in curly quotes ({excerpt(name)})", mend)
        elif unseen and name != clean:
            found = f"one with an unseen character ({excerpt(name)})"
            self._tell((*path, clean), event, "a field name", found, f"type {excerpt(clean)} anew")
        return clean

    def _refuse_key(self, event: yaml.Event, path: FieldPath) -> None:
        """A list, a group or a reference where a field name belongs: most often text that begins with a brace."""
        if isinstance(event, yaml.AliasEvent):
            self._refuse_references(event, path)
        else:
            what = "a list" if isinstance(event, yaml.SequenceStartEvent) else "more braces"
            self._tell(path, event, "a field name", what, "put text with braces or brackets in quotes")
            self.tree.unread.add(path)
            self._skip(event, path)
        self._skip(next(self.events), path)

    def _skip(self, event: yaml.Event, path: FieldPath) -> None:
        """Reads over a value that has no place in the tree, within the same bounds."""
        kept, self.tree = self.tree, Tree()
        try:
            self._value(event, path)
        finally:
            self.tree = kept
