"""A problem in the content: where it stands, what was expected, what was found, how to mend it.

Nothing here reads files or knows what a record is; every room above reports its problems in these words.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

FEW = 3
"""So many names are listed where none is close to the one that was written."""


class Severity(StrEnum):
    """Errors stop the build; warnings are told and do not."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, order=True)
class Place:
    """A point in a content file; line and column count from 1."""

    file: str
    line: int
    column: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True)
class Diagnostic:
    """One problem, told in full."""

    place: Place
    field: str
    """The field as an author would point at it, e.g. `stations[0].monthly_precip[1] (February)`; empty for a whole file."""
    expected: str
    found: str
    mend: str
    severity: Severity = Severity.ERROR
    rule: str = ""
    """The name by which a record may accept a warning; empty for errors, which cannot be accepted."""

    def __str__(self) -> str:
        kind = "warning: " if self.severity is Severity.WARNING else ""
        field = f"{self.field}: " if self.field else ""
        rule = f" [{self.rule}]" if self.rule else ""
        return f"{self.place}: {kind}{field}expected {self.expected}, found {self.found}{rule}\n    mend: {self.mend}"


class ContentErrors(Exception):
    """The content is wrong; carries every diagnostic of the run, warnings included."""

    def __init__(self, diagnostics: Iterable[Diagnostic]) -> None:
        self.diagnostics = in_order(diagnostics)
        super().__init__(report(self.diagnostics, written=False))


def in_order(diagnostics: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """The diagnostics by file, line and column, without repetitions."""
    return tuple(sorted(set(diagnostics), key=lambda d: (d.place, d.field, d.expected, d.found)))


def has_errors(diagnostics: Iterable[Diagnostic]) -> bool:
    """Whether any of the diagnostics stops the build."""
    return any(d.severity is Severity.ERROR for d in diagnostics)


def report(diagnostics: Sequence[Diagnostic], *, written: bool = True) -> str:
    """All diagnostics as text, ending with a line that counts them; empty when there are none.

    `written` says whether the run went on to write anything; with errors it never does.
    """
    if not diagnostics:
        return ""
    errors = sum(d.severity is Severity.ERROR for d in diagnostics)
    warnings = len(diagnostics) - errors
    counts = [_count(errors, "problem")] if errors else []
    counts += [_count(warnings, "warning")] if warnings else []
    files = _count(len({d.place.file for d in diagnostics}), "file")
    end = "" if written else "; nothing was written"
    return "\n".join([*map(str, diagnostics), f"{' and '.join(counts)} in {files}{end}."])


def shown_path(path: Path, project: Path) -> str:
    """What messages call a file or folder: its path below the project, or its whole path elsewhere, with / on every system."""
    whole = path.resolve()
    return whole.relative_to(project.resolve()).as_posix() if whole.is_relative_to(project.resolve()) else whole.as_posix()


def did_you_mean(word: str, known: Iterable[str], otherwise: str = "") -> str:
    """A suggestion of the nearest known word, or `otherwise` when nothing is near."""
    near = nearest(word, known)
    return f'did you mean "{near}"?' if near else otherwise


def nearest(word: str, known: Iterable[str]) -> str:
    """The known word that is spelled most like the given one, or nothing when none is near."""
    return next(iter(difflib.get_close_matches(word, sorted(known), n=1, cutoff=0.6)), "")


def few_of(word: str, known: Iterable[str], what: str) -> str:
    """What there is to choose from: all of a few, else those that are spelled most like the given word.

    >>> few_of("tundr", ["biome/tundra", "biome/savanna"], "records")
    'known records are biome/tundra and biome/savanna'
    """
    known = list(known)
    if len(known) <= FEW:
        return f"known {what} are {listed(known, 'and')}" if known else f"there are no {what}"
    near = sorted(sorted(known), key=lambda one: -max(_likeness(word, part) for part in (one, one.rpartition("/")[2])))[:FEW]
    return f"there are {len(known)} {what}, the nearest of them {listed(near, 'and')}"


def _likeness(one: str, other: str) -> float:
    return difflib.SequenceMatcher(None, one, other).ratio()


def listed(words: Iterable[str], last: str = "or") -> str:
    """Words as a person would list them: `a, b or c`."""
    words = list(words)
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {last} {words[-1]}" if words else "nothing"


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
