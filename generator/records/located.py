"""A YAML file as plain values, each with its file, line and column, and with everything that is wrong with its text."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import Any

import yaml

from generator.diagnostics import Diagnostic, Place, in_order
from generator.records.field_path import FieldPath
from generator.records.scalar_text import positions
from generator.records.source import LARGEST_FILE, Source, decoded
from generator.records.syntax import Complaint, complaint, without_colon, without_section
from generator.records.tree import QUESTION_MARK, Spot, TooMuch, Tree, grown

FAST_PARSER: type = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
"""Some builds of PyYAML lack the C parser; it reads the same, ten times as fast."""
_DISPUTED = re.compile(r"(?<!\S)[|>][-+0-9]*#|(?<![^\s\[{,:])!\S")
"""Where the two parsers differ: in a `#` right behind the mark of a block of text, and in where a type mark ends."""
_MOST_REPAIRS = 20
FILES_KEPT = 1000
"""How many files, with what is made of each, a process remembers."""


@dataclass(frozen=True, eq=False)
class Located:
    """What a file says and where it says it; told apart by identity, and one and the same while the file stays as it is.

    Values are text, `WrittenInt`, `WrittenFloat`, True, False, None, lists and dicts.
    """

    file: str
    value: Any
    """None where nothing could be read; then `problems` says why."""
    problems: tuple[Diagnostic, ...] = ()
    source: Source = field(default_factory=lambda: Source("", ""), repr=False)
    values: dict[FieldPath, Spot] = field(default_factory=dict, repr=False)
    keys: dict[FieldPath, int] = field(default_factory=dict, repr=False)
    unread: frozenset[FieldPath] = frozenset()
    """Values that a problem already stands for: whatever else is said about them or about their absence is no news."""

    def place(self, path: FieldPath) -> Place:
        """Where the value begins; for a path that the file does not have, where its nearest known ancestor begins."""
        for length in range(len(path), -1, -1):
            spot = self.values.get(path[:length])
            if spot:
                return self.source.place(spot.position)
        return Place(self.file, 1, 1)

    def key_place(self, path: FieldPath) -> Place:
        """Where the field's name begins; where the value begins if it has none, as the items of a list."""
        position = self.keys.get(path)
        return self.place(path) if position is None else self.source.place(position)

    def place_in_text(self, path: FieldPath, fragment: str, after: int = 0) -> Place:
        """Where a piece of a text begins, be the text quoted, folded or neither.

        `after` leaves out the first characters of the text's value, for a fragment that occurs more than once.
        Where the fragment is not in the text, the place of the text.
        """
        text, spot = self.at(path), self.values.get(path)
        begin = text.find(fragment, after) if isinstance(text, str) and fragment.strip() else -1
        if begin < 0 or spot is None:
            return self.place(path)
        begin += len(fragment) - len(fragment.lstrip(" \t\r\n"))
        found = positions(self.source.text, spot.position, spot.style, text)
        return self.source.place(found[begin]) if found else self.place(path)

    def at(self, path: FieldPath) -> Any:
        """The value at a path, or None."""
        value = self.value
        for step in path:
            if isinstance(value, dict) and step in value:
                value = value[step]
            elif isinstance(value, list) and isinstance(step, int) and 0 <= step < len(value):
                value = value[step]
            else:
                return None
        return value

    def brackets(self, path: FieldPath) -> str:
        """A list as it stands in the file, if it stands in brackets; otherwise nothing."""
        spot, text = self.values.get(path), self.source.text
        if spot is None or text[spot.position : spot.position + 1] != "[":
            return ""
        return text[spot.position : text.find("]", spot.position)]

    def is_unread(self, path: FieldPath) -> bool:
        """Whether a problem of the text already stands for the value, or for one around it."""
        return any(path[:length] in self.unread for length in range(len(path) + 1))


def read(path: Path, name: str) -> Located:
    """The file at the path, called `name` in every message; never raises for what is in the file or for its absence."""
    try:
        if not path.is_file():
            return _unreadable(name, "a folder" if path.is_dir() else "none that can be opened", "rename or remove it")
        with path.open("rb") as file:
            data = file.read(LARGEST_FILE + 1)
    except OSError as error:
        return _unreadable(name, f"one that cannot be opened ({error.strerror})", "check who may read the file")
    return _read_before(data, name)


@lru_cache(maxsize=FILES_KEPT)
def _read_before(data: bytes, name: str) -> Located:
    """A file that has not changed is not read again: a preview reads all of them at every save."""
    return located(data, name)


def _unreadable(name: str, found: str, mend: str) -> Located:
    return Located(name, None, (Diagnostic(Place(name, 1, 1), "", "a file", found, mend),))


def located(data: bytes, name: str, parser: type = FAST_PARSER) -> Located:
    """The bytes of a file as values with places.

    Reading goes on behind a problem where the rest is still clear: a wrong line costs at most its field at the margin.
    """
    source = decoded(data, name)
    problems, text, unread = list(source.problems), source.text, set()
    if not text.strip():
        if not problems:
            problems.append(
                source.problem(0, "fields such as title and summary", "an empty file", "write the record's fields")
            )
        return Located(name, None, in_order(problems), source)
    for tab in source.tab_lines:
        text = _set_aside(text, tab, unread)
    for _ in range(_MOST_REPAIRS):
        if text is None:
            break
        try:
            tree = _tree(text, source, parser)
        except TooMuch as refusal:
            problems.append(refusal.problem)
            break
        except NotYaml as error:
            problem = error.complaint
            problems.append(source.problem(problem.position, problem.expected, problem.found, problem.mend))
            text = _repaired(text, problem, unread)
        else:
            problems += tree.problems
            return _whole(name, source, tree, problems, unread)
    return Located(name, None, in_order(problems), source)


def _whole(name: str, source: Source, tree: Tree, problems: list[Diagnostic], unread: set[FieldPath]) -> Located:
    if tree.value is None and not problems:
        problems.append(source.problem(0, "fields such as title and summary", "nothing", "write the record's fields"))
    return Located(
        name, tree.value, in_order(problems), source, tree.values, tree.keys, frozenset(unread | tree.unread)
    )


class NotYaml(Exception):
    """The parser cannot read the text; carries what to tell."""

    def __init__(self, told: Complaint) -> None:
        self.complaint = told
        super().__init__(told.expected)


def _tree(text: str, source: Source, parser: type) -> Tree:
    """The tree by the given parser, or by the Python parser where that one stops: only its complaints are known."""
    text = text.replace("?", QUESTION_MARK)
    if parser is not yaml.SafeLoader and not _DISPUTED.search(text):
        try:
            return grown(yaml.parse(text, Loader=parser), source)
        except yaml.YAMLError:
            pass
    loader = yaml.SafeLoader(text)
    try:
        return grown(_events(loader), source)
    except (yaml.YAMLError, ValueError, OverflowError) as error:
        raise NotYaml(complaint(error, loader.index, source)) from error


def _events(loader: yaml.SafeLoader) -> Iterator[yaml.Event]:
    while loader.check_event():
        yield loader.get_event()


def _repaired(text: str, problem: Complaint, unread: set[FieldPath]) -> str | None:
    if problem.colon_in_text:
        return without_colon(text, problem.position)
    return _set_aside(text, problem.position, unread)


def _set_aside(text: str | None, position: int, unread: set[FieldPath]) -> str | None:
    """The text without the field at the margin that holds the position; None if that cannot be told or did not help."""
    outcome = without_section(text, position) if text is not None else None
    if outcome is None or outcome[0] == text:
        return None
    unread.add((outcome[1],))
    return outcome[0]
