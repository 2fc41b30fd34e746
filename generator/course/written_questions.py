"""The files in `written/`: each checked against the records that it draws on, and given its marking guide."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any

from generator.course.course_file import MarkingRules
from generator.course.glossaries import CommandWord
from generator.course.references import FactTable, facts_kept_for_tests, texts_in
from generator.course.rewritten import Rewriting
from generator.diagnostics import Diagnostic
from generator.kind import Kind, Subject
from generator.quantities.fact import Facts
from generator.quantities.text import filled
from generator.questions.misconception import Catalogue
from generator.records.folder import RecordFile, read_folder
from generator.records.checking import check
from generator.records.finding import located_finding, without_accepted
from generator.records.parts import Idea
from generator.written.doubts import doubts
from generator.written.faults import faults
from generator.written.guide import Guided, guided, with_facts
from generator.written.known import Known
from generator.written.materials import Materials
from generator.written.record import WrittenQuestion

FOLDER = WrittenQuestion.FOLDER


@dataclass(frozen=True, kw_only=True)
class Around:
    """What the course has besides its written questions."""

    subjects: Mapping[str, Subject[Any]]
    kinds: Mapping[str, Kind[Any]]
    records: tuple[str, ...]
    """Ids of all records, broken ones included."""
    topics: tuple[str, ...]
    command_words: Mapping[str, CommandWord]
    catalogue: Catalogue
    files: Mapping[str, RecordFile]
    """The files of the records, by id."""
    rules: MarkingRules = MarkingRules()

    @cached_property
    def rewriting(self) -> Rewriting:
        """The records with other numbers in their files."""
        return Rewriting(self.files, self.subjects, self.kinds)

    @cached_property
    def facts(self) -> FactTable:
        """The facts of all records, each by its record and its id."""
        return FactTable(Facts([]), self.subjects)

    @cached_property
    def kept(self) -> frozenset[str]:
        """Facts of places that are kept for class tests."""
        return frozenset(f"{record}:{fact}" for record, of in self.subjects.items() for fact in facts_kept_for_tests(self.kinds[of.kind], of))


def written_files(content: Path, name: str) -> tuple[RecordFile, ...]:
    """The files of the folder; what is wrong with file names of records is told where records are read."""
    return tuple(file for file in read_folder(content, (FOLDER,), (), name).files if file.kind == FOLDER)


def read_written(file: RecordFile, around: Around) -> tuple[Guided | None, tuple[Diagnostic, ...]]:
    """The question with its guide, or None where something is wrong with it; and everything that is."""
    question, problems = check(file.located, WrittenQuestion)
    if question is None:
        return None, problems
    materials = _materials(around)
    known = known_names(around, {key.partition("#")[0] for one in question.stimulus for key in (one.chart, one.table) if key})
    wrong = tuple(located_finding(file.located, one) for one in faults(question, _texts(file.located.value), known, materials))
    if wrong:
        return None, wrong
    doubtful = [located_finding(file.located, one) for one in doubts(question, known, materials)]
    return guided(file.name, question, materials), without_accepted(file.located, question.accepted_warnings, doubtful)


def _materials(around: Around) -> Materials:
    rules = around.rules
    return Materials(
        around.facts, around.catalogue, lambda key: _chain(key, around), around.rewriting, follow_through=rules.follow_through,
        unit_needed=rules.unit_missing_loses_answer_mark, minutes_per_mark=rules.minutes_per_mark,
    )  # fmt: skip


def _chain(key: str, around: Around) -> tuple[Idea, ...]:
    record, _, name = key.partition("#")
    subject = around.subjects[record]
    chain = next(one for one in subject.record.explanations if one.id == name).chain
    facts = FactTable(subject.facts, around.subjects)
    return tuple(with_facts(idea, lambda text: filled(text, facts)) for idea in chain)


def _texts(value: Any) -> list[tuple[tuple[str | int, ...], str]]:
    """The texts that students or markers read; keys of charts, chains and facts are checked as such."""
    keys = ("chart", "table", "from", "expression", "unit")
    return [(path, text) for path, text in texts_in(value) if path[-1] not in keys and "given" not in path]


def known_names(around: Around, named: Collection[str] = ()) -> Known:
    """What a written question may name; the charts of the named records among it."""
    return Known(
        command_words=around.command_words, topics=around.topics, misconceptions=tuple(around.catalogue), records=around.records,
        charts={record: tuple(around.kinds[(of := around.subjects[record]).kind].named_charts(of)) for record in named if record in around.subjects},
        chains={record: _chains_of(subject) for record, subject in around.subjects.items()},
        facts=around.facts, kept=around.kept, usual_marks={word.id: word.marks for word in around.command_words.values() if word.marks},
    )  # fmt: skip


def _chains_of(subject: Subject[Any]) -> tuple[str, ...]:
    return () if subject.record.use == "paper" else tuple(one.id for one in subject.record.explanations)
