"""The record files of a content folder: what is there, what is named wrongly, and what each file says."""

from __future__ import annotations

import os
import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path

from generator.diagnostics import Diagnostic, Place, did_you_mean, in_order, listed, nearest
from generator.records.fields import ID
from generator.records.located import Located, read


@dataclass(frozen=True)
class RecordFile:
    """One file and what it says."""

    kind: str
    name: str
    """The file's name without `.yaml`; a record's id within its kind."""
    located: Located

    @property
    def id(self) -> str:
        """`biome/temperate_grassland`, as other files refer to it."""
        return f"{self.kind}/{self.name}"


@dataclass(frozen=True)
class RecordFolder:
    """All record files, by kind in the order given and then by name, those with a wrong name last."""

    files: tuple[RecordFile, ...]
    problems: tuple[Diagnostic, ...]
    """Of folders and file names; those inside the files are in each file's `located`."""

    @property
    def ids(self) -> tuple[str, ...]:
        """Of every record that the folder seems to hold, broken and wrongly named ones included: none is "unknown"."""
        return tuple(file.id for file in self.files)


def read_folder(content: Path, kinds: Collection[str], others: Collection[str] = (), name: str = "") -> RecordFolder:
    """The records in `content/<kind>/*.yaml`.

    `others` are the folders and YAML files in `content` that are read elsewhere (`written`, `course.yaml`); any other
    folder or YAML file is told. `name` is what messages call the folder, by default its own name.
    """
    shown = name or content.name
    if not content.is_dir():
        problem = _problem(shown, "a folder with the course's content", "none", "create it, or give its path")
        return RecordFolder((), (problem,))
    problems = list(_strangers(content, kinds, others, shown))
    files: list[RecordFile] = []
    for kind in kinds:
        entries = _entries(content / kind, f"{shown}/{kind}", problems)
        taken: set[str] = set()
        for path in sorted(entries, key=lambda path: (bool(_stem(path)[1]), path.name)):
            label = f"{shown}/{kind}/{_printable(path.name)}"
            stem, mend = _stem(path)
            if stem is None:
                problems += _stray_folder(path, label, kind)
                continue
            if mend:
                what = "a name in small letters, digits and _ that ends in .yaml"
                problems.append(_problem(label, what, f'"{_printable(path.name)}"', mend))
            if stem not in taken:
                taken.add(stem)
                files.append(RecordFile(kind, stem, read(path, label)))
    return RecordFolder(tuple(files), in_order(problems))


def _entries(folder: Path, shown: str, problems: list[Diagnostic]) -> list[Path]:
    """What stands in a folder, sorted, hidden files aside; a folder that is not there has nothing in it."""
    if not os.path.lexists(folder):
        return []
    try:
        return sorted(path for path in folder.iterdir() if not path.name.startswith((".", "~", "#")))
    except OSError as error:
        problems.append(
            _problem(shown, "a folder of records", f"none that can be opened ({error.strerror})", "mend it")
        )
        return []


def _strangers(content: Path, kinds: Collection[str], others: Collection[str], shown: str) -> Iterator[Diagnostic]:
    problems: list[Diagnostic] = []
    for path in _entries(content, shown, problems):
        if path.name in kinds or path.name in others:
            continue
        label = f"{shown}/{_printable(path.name)}"
        if path.is_dir():
            folders = [*kinds, *(other for other in others if "." not in other)]
            mend = did_you_mean(path.name, folders, f"rename or remove it; known are {listed(folders, 'and')}")
            yield _problem(label, "a folder for a kind of record", "an unknown folder", mend)
        elif re.search(r"\.ya?ml$", path.name, re.IGNORECASE):
            near = nearest(path.stem.lower(), (other.removesuffix(".yaml") for other in others if "." in other))
            mend = f'did you mean "{near}.yaml"?' if near else "move a record into the folder of its kind"
            yield _problem(label, "a file of the course", "an unknown one", mend)
    yield from problems


def _stem(path: Path) -> tuple[str | None, str]:
    """The record's name that a file seems to mean, None where it is no record; and how to rename it if it must be."""
    match = re.match(r"(.+?)\.ya?ml(\.txt)?$", path.name, re.IGNORECASE)
    if not match:
        return None, ""
    if re.fullmatch(ID + r"\.yaml", path.name, re.ASCII):
        return match[1], ""
    tidy = re.sub(r"[^a-z0-9]+", "_", match[1].lower()).strip("_")
    if not re.fullmatch(ID, tidy, re.ASCII):
        return _printable(match[1]), "rename it, beginning with a letter"
    return tidy, f"rename to {tidy}.yaml"


def _stray_folder(path: Path, label: str, kind: str) -> Iterator[Diagnostic]:
    """A folder inside a kind's folder is fine for pictures, but records in it would not be read."""
    problems: list[Diagnostic] = []
    if path.is_dir() and any(_stem(inner)[0] for inner in _entries(path, label, problems)):
        yield _problem(
            label, f"records directly in {kind}", "records in a folder of their own", f"move them up into {kind}"
        )
    yield from problems


def _problem(file: str, expected: str, found: str, mend: str) -> Diagnostic:
    return Diagnostic(Place(file, 1, 1), "", expected, found, mend)


def _printable(name: str) -> str:
    """A file name that any terminal can print, even if its bytes are not UTF-8."""
    return "".join(ch if ch.isprintable() else "?" for ch in os.fsencode(name).decode("utf-8", "replace"))
