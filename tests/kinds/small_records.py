"""Records of a few lines, as tests of the kinds write them: the text of a file in, what the kind makes of it out."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from generator.course.library import Library, load
from generator.kind import Kind, Subject
from generator.kinds import all_kinds
from generator.questions.question import Made, Rejected
from generator.records.checking import check
from generator.records.finding import Finding
from generator.records.folder import RecordFile, read_folder
from generator.records.located import located

CONTENT = Path(__file__).parents[2] / "content"
HEAD = "title: A title\ndata: invented\nsummary: A summary.\n"


def kind(name: str) -> Kind[Any]:
    """The kind of this name."""
    return all_kinds()[name]


def record(name: str, text: str) -> Any:
    """The record of this kind that the text below the shared fields holds."""
    found, problems = check(located(f"{HEAD}{text}".encode(), "small.yaml"), kind(name).record)
    assert () == problems
    return found


def subject(name: str, text: str) -> Subject[Any]:
    """The same with its facts; the record must be free of contradictions."""
    found = record(name, text)
    assert [] == list(kind(name).findings(found))
    return kind(name).subject("small", found)


def findings(name: str, text: str) -> list[Finding]:
    """What contradicts itself in the record."""
    return list(kind(name).findings(record(name, text)))


def doubts(name: str, text: str) -> list[Finding]:
    """What a careful reader would question in the record."""
    of = subject(name, text)
    return list(kind(name).doubts(of.record, of.facts))


@cache
def library() -> Library:
    """The project's own content."""
    return load(CONTENT, all_kinds())


@cache
def files() -> Mapping[str, RecordFile]:
    """The files of its records, by id."""
    return {file.id: file for file in read_folder(CONTENT, tuple(all_kinds())).files}


def demo(record_id: str) -> Subject[Any]:
    """A record of the project's own content."""
    return library().subjects[record_id]


def made_of(name: str, text: str) -> dict[str, Made]:
    """The questions of a small record by id, rejected ones too."""
    return made(subject(name, text))


def made(of: Subject[Any]) -> dict[str, Made]:
    """The questions of a subject by id, rejected ones too."""
    return {question.id: question for question in kind(of.kind).questions(of, library().catalogue)}


def rejected(of: Subject[Any]) -> dict[str, str]:
    """Why questions of a subject were left out, by id."""
    return {name: question.because for name, question in made(of).items() if isinstance(question, Rejected)}
