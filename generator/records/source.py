"""The text of a content file: decoded, bounded, its odd characters told and replaced one for one: places stay true."""

from __future__ import annotations

import re
from bisect import bisect_right
from dataclasses import dataclass
from functools import cached_property

from generator.diagnostics import Diagnostic, Place
from generator.records.field_path import INVISIBLE

LARGEST_FILE = 400_000
"""Bytes; the longest example record has some 4000."""
_TOLD_PER_SORT = 10
_LINE_BREAK = re.compile(r"\r\n|\r|\n")
UNREADABLE = re.compile("[^\t\n\r\x20-\x7e\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]|[\u2028\u2029\ufeff\ufffc]")
"""Characters that have no place in a text file, and those that look like a line break to some programs only."""
_INVISIBLE_CLASS = "".join(INVISIBLE)
_INVISIBLE_INDENT = re.compile(rf"^[ \t]*([{_INVISIBLE_CLASS}][ \t{_INVISIBLE_CLASS}]*)(?=[^\s{_INVISIBLE_CLASS}])")
_INVISIBLE_AFTER_COLON = re.compile(rf"^[ ]*(?:- )*[^\s:#\"'\[{{]+:([{_INVISIBLE_CLASS}])")
_TAB_INDENT = re.compile(r"^ *(\t)[ \t]*(?=[^\s#])")


@dataclass(frozen=True)
class Source:
    """A file's text, with line breaks as they stand in the file."""

    file: str
    text: str
    problems: tuple[Diagnostic, ...] = ()
    tab_lines: tuple[int, ...] = ()
    """Where a line is indented with tabs, as positions in the text: the structure around them is unknown."""

    @cached_property
    def line_starts(self) -> tuple[int, ...]:
        """Positions in the text."""
        return (0, *(match.end() for match in _LINE_BREAK.finditer(self.text)))

    @cached_property
    def lines(self) -> tuple[str, ...]:
        """The lines without their line breaks."""
        return tuple(_LINE_BREAK.split(self.text))

    def place(self, position: int) -> Place:
        """The place of a position in the text; positions behind the end stand at the end of the last line."""
        if position >= len(self.text):
            position = len(self.text.rstrip("\r\n"))
        line = bisect_right(self.line_starts, max(position, 0))
        return Place(self.file, line, max(position, 0) - self.line_starts[line - 1] + 1)

    def line(self, number: int) -> str:
        """A line's text without its line break; lines count from 1."""
        return self.lines[number - 1]

    def line_from(self, position: int) -> str:
        """The rest of a position's line."""
        place = self.place(position)
        return self.line(place.line)[place.column - 1 :]

    def problem(self, position: int, expected: str, found: str, mend: str, field: str = "") -> Diagnostic:
        return Diagnostic(self.place(position), field, expected, found, mend)


def decoded(data: bytes, file: str) -> Source:
    """The bytes of a file as text for the parser, with every problem of its characters.

    A text that cannot be told from its bytes, or is too long, comes back empty.
    """
    raw = as_it_stands(data, file)
    if not raw.text:
        return raw
    problems = [*raw.problems, *_invisible(raw)]
    tabs = tuple(start + m.start(1) for start, m in _matches(raw, _TAB_INDENT))
    problems += _few(
        [
            raw.problem(at, "spaces at the start of the line", "a tab", "indent with spaces, two for each step")
            for at in tabs
        ]
    )
    return Source(file, _replaced(raw), tuple(problems), tabs)


def as_it_stands(data: bytes, file: str) -> Source:
    """The bytes of a file as text without a sign replaced, and the problems of its characters; empty like `decoded`."""
    refusal = _refusal(data)
    if refusal:
        return Source(file, "", (Diagnostic(Place(file, 1, 1), "", *refusal),))
    raw = Source(file, data.decode("utf-8-sig", errors="replace"))
    return Source(file, raw.text, (*_undecodable(data, raw), *_unreadable(raw)))


def _refusal(data: bytes) -> tuple[str, str, str] | None:
    if len(data) > LARGEST_FILE:
        found = "a longer one"
        return (
            f"a file of at most {LARGEST_FILE // 1000} kB",
            found,
            "split the record, or check that this is the right file",
        )
    if data.startswith((b"\xff\xfe", b"\xfe\xff")) or data.count(0) > len(data) // 4:
        return "text saved as UTF-8", "UTF-16 or a file that is not text", "save the file again with the encoding UTF-8"
    return None


def _undecodable(data: bytes, raw: Source) -> list[Diagnostic]:
    if "\ufffd" not in raw.text:
        return []
    problems, start = [], 0
    for match in re.finditer(rb"\r\n|\r|\n|\Z", data):
        line, begin, start = data[start : match.start()], start, match.end()
        try:
            line.decode("utf-8-sig" if begin == 0 else "utf-8")
        except UnicodeDecodeError as error:
            before = data[: begin + error.start].decode("utf-8-sig", errors="replace")
            found = f"a byte that is not (0x{line[error.start]:02X})"
            problems.append(
                raw.problem(len(before), "text saved as UTF-8", found, "save the file again with the encoding UTF-8")
            )
    return _few(problems)


def _unreadable(raw: Source) -> list[Diagnostic]:
    problems = []
    for match in UNREADABLE.finditer(raw.text):
        place = raw.place(match.start())
        if not problems or problems[-1].place.line != place.line:
            name = INVISIBLE.get(match[0], f"the character U+{ord(match[0]):04X}")
            found = name if name.startswith("the") else f"a {name}"
            problems.append(
                Diagnostic(place, "", "characters that can be read", found, "delete it, or type a space instead")
            )
    return _few(problems)


def _invisible(raw: Source) -> list[Diagnostic]:
    indents = [(start + m.start(1), m[1]) for start, m in _matches(raw, _INVISIBLE_INDENT) if "\ufeff" not in m[1]]
    colons = [(start + m.start(1), m[1]) for start, m in _matches(raw, _INVISIBLE_AFTER_COLON) if m[1] != "\ufeff"]
    mend = "delete it and type a space"
    told = [raw.problem(at, "spaces at the start of the line", f"a {INVISIBLE[t[0]]}", mend) for at, t in indents]
    told += [raw.problem(at, "a space after the colon", f"a {INVISIBLE[t]}", mend) for at, t in colons]
    return _few(told)


def _matches(raw: Source, pattern: re.Pattern[str]) -> list[tuple[int, re.Match[str]]]:
    lines = zip(raw.line_starts, raw.lines, strict=True)
    return [(start, match) for start, line in lines if (match := pattern.search(line))]


def _replaced(raw: Source) -> str:
    """The text for the parser: as long as the original, with spaces for tabs, unseen and unreadable characters."""
    text = list(UNREADABLE.sub(" ", raw.text).replace("\t", " "))
    for pattern in (_INVISIBLE_INDENT, _INVISIBLE_AFTER_COLON):
        for start, match in _matches(raw, pattern):
            text[start + match.start(1) : start + match.end(1)] = " " * len(match[1])
    return "".join(text)


def _few(problems: list[Diagnostic]) -> list[Diagnostic]:
    """The first problems of a sort; the last of them says how many more there are."""
    more = len(problems) - _TOLD_PER_SORT
    if more <= 0:
        return problems
    *first, last = problems[:_TOLD_PER_SORT]
    found = f"{last.found}, and the same in {more} more {'line' if more == 1 else 'lines'}"
    return [*first, Diagnostic(last.place, last.field, last.expected, found, last.mend)]
