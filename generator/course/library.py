"""Reading a whole content folder: every record checked, every fact computed, every problem told at once."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import Any, TypeVar

from generator.course.command_words import with_facts
from generator.course.course_file import CourseFile, MarkingRules
from generator.course.definitions import doubtful_definitions
from generator.course.glossaries import CommandWord, CommandWordsFile, MisconceptionsFile, Source, SourcesFile, VocabularyFile, Word, method_sources
from generator.course.magnitude import beyond_measure
from generator.course.objectives import repeated_objectives, unknown_objectives
from generator.course.reading import hard_to_read
from generator.course.references import FactTable, missing_pictures, unknown_names, wrong_texts
from generator.course.unwritten import unwritten
from generator.course.vague_words import VagueWord, VagueWordsFile, wrong_vague_words
from generator.course.written_questions import FOLDER, Around, read_written, written_files
from generator.diagnostics import ContentErrors, Diagnostic, Place, Severity, did_you_mean, few_of, has_errors, in_order, listed
from generator.kind import NUMBERS, Kind, Subject
from generator.quantities.fact import Fact
from generator.quantities.text import filled
from generator.questions.authored import Authored
from generator.questions.authored_faults import faults
from generator.questions.item_writing import doubts_about, doubts_about_features, false_steps_amiss
from generator.questions.misconception import Catalogue, Misconception, UnknownMisconception
from generator.questions.qualitative import Qualitative, Term
from generator.questions.question import Made, Question, Rejected
from generator.questions.supposed import supposed
from generator.records import Finding, Located, Record, RecordFile, check, located_finding, read, read_folder, without_accepted
from generator.records.finding import IDLE_ACCEPTANCE
from generator.records.located import FILES_KEPT
from generator.written.guide import Guided

COURSE, VOCABULARY, MISCONCEPTIONS, SOURCES = "course.yaml", "vocabulary.yaml", "misconceptions.yaml", "sources.yaml"
COMMAND_WORDS, VAGUE_WORDS = "command_words.yaml", "vague_words.yaml"
OTHERS = (COURSE, VOCABULARY, MISCONCEPTIONS, SOURCES, COMMAND_WORDS, VAGUE_WORDS, FOLDER, "papers", "pictures")
RESERVED = ("compared", "index")
"""No record can have these names: pages of the kind as a whole do."""
Model = TypeVar("Model")
Item = TypeVar("Item")


@dataclass(frozen=True, kw_only=True)
class Library:
    """A content folder without errors."""

    course: CourseFile
    subjects: Mapping[str, Subject[Any]]
    """Every record with its facts, by id, in alphabetical order."""
    questions: Mapping[str, tuple[Question, ...]]
    """The questions of each record, by its id."""
    vocabulary: Mapping[str, Word]
    catalogue: Catalogue
    sources: Mapping[str, Source]
    """By key; the methods' own sources among them."""
    command_words: Mapping[str, CommandWord] = field(default_factory=dict)
    vague_words: tuple[VagueWord, ...] = ()
    written: tuple[Guided, ...] = ()
    """The written questions with their guides, by file name."""
    warnings: tuple[Diagnostic, ...]

    def facts_for(self, subject: Subject[Any]) -> FactTable:
        """What the texts of a record may name."""
        return FactTable(subject.facts, self.subjects)


def load(content: Path, kinds: Mapping[str, Kind[Any]], name: str = "") -> Library:
    """The library of a content folder; `name` is what messages call the folder.

    Raises
    ------
    ContentErrors
        With everything that is wrong in all files, warnings included.
    """
    reading = _Reading(content, kinds, name or content.name)
    return reading.library()


def load_subject(file: RecordFile, kinds: Mapping[str, Kind[Any]]) -> Subject[Any]:
    """One record with its facts, read by itself.

    Raises
    ------
    ContentErrors
        If the record is wrong.
    """
    kind = kinds[file.kind]
    record, problems = _record(file, kind)
    if record is None or has_errors(problems):
        raise ContentErrors(problems)
    return _subject(file, kind)


@lru_cache(maxsize=FILES_KEPT)
def _record(file: RecordFile, kind: Kind[Any]) -> tuple[Record | None, tuple[Diagnostic, ...]]:
    """The record if its fields are right, and what is wrong with it; with an error its numbers mean nothing."""
    record, problems = check(file.located, kind.record)
    if record is None:
        return None, problems
    found = list(beyond_measure(file.located.value)) or [*_reserved_parts(kind, record), *kind.findings(record)]
    return record, tuple(located_finding(file.located, finding) for finding in found)


def _reserved_parts(kind: Kind[Any], record: Record) -> Iterator[Finding]:
    if NUMBERS in kind.parts(record):
        mend = f"facts called {NUMBERS}.… are those under `numbers:`"
        yield Finding(path=(), expected=f"parts with other ids than {NUMBERS}", found=f'"{NUMBERS}"', mend=mend)


@lru_cache(maxsize=FILES_KEPT)
def _subject(file: RecordFile, kind: Kind[Any]) -> Subject[Any]:
    """The facts of a record that has no error."""
    return kind.subject(file.name, _record(file, kind)[0])


@lru_cache(maxsize=FILES_KEPT)
def _doubts_of_its_own(file: RecordFile, kind: Kind[Any], grade: float | None) -> tuple[Finding, ...]:
    """What is doubtful in a record whatever other files say."""
    subject, text = _subject(file, kind), file.located.value
    return (*kind.doubts(subject.record, subject.facts), *unwritten(kind, text), *(() if grade is None else hard_to_read(text, grade)))


@lru_cache(maxsize=FILES_KEPT)
def _made(kind: Kind[Any], subject: Subject[Any], entries: tuple[Misconception, ...]) -> tuple[Made, ...]:
    catalogue = Catalogue({entry.id: entry for entry in entries})
    shown = {fact.shown_exactly for fact in subject.facts.values() if fact.is_number}
    return tuple(supposed(item, catalogue, subject.id, shown) for item in kind.questions(subject, catalogue))


class _Reading:
    """One run over a content folder, gathering problems as it goes."""

    def __init__(self, content: Path, kinds: Mapping[str, Kind[Any]], name: str) -> None:
        self.content, self.kinds, self.name = content, kinds, name
        self.problems: list[Diagnostic] = []
        self.missing: dict[str, dict[str, None]] = {}
        """Misconceptions that the catalogue lacks, by the kind whose questions name them."""
        self.folder = read_folder(content, tuple(kinds), OTHERS, name)
        self.problems += self.folder.problems
        if not content.is_dir():
            raise ContentErrors(self.problems)
        self.course_place = read(content / COURSE, f"{name}/{COURSE}")
        self.course = self._course()
        words = self._shared(VOCABULARY, VocabularyFile)
        slips = self._shared(MISCONCEPTIONS, MisconceptionsFile)
        works = self._shared(SOURCES, SourcesFile)
        verbs = self._shared(COMMAND_WORDS, CommandWordsFile)
        self.command_words = None if verbs is None else {word.id: word for word in verbs.command_words}
        self.vague_words = self._vague_words()
        self.words = None if words is None else {word.id: word for word in words.words}
        if words and words.words:
            place = read(content / VOCABULARY, f"{name}/{VOCABULARY}")
            self.problems += [located_finding(place, finding) for finding in doubtful_definitions(words.words)]
        self.catalogue = None if slips is None else Catalogue(
            {e.id: Misconception(id=e.id, idea=e.idea, because=e.because, instead=e.instead) for e in slips.misconceptions}
        )  # fmt: skip
        self.sources = None if works is None else method_sources() | {work.key: work for work in works.sources}

    def library(self) -> Library:
        subjects: dict[str, Subject[Any]] = {}
        told: dict[str, list[Diagnostic]] = {}
        for file in self.folder.files:
            kind = self.kinds[file.kind]
            record, problems = _record(file, kind)
            told[file.id] = list(problems)
            if record is not None:
                if not has_errors(problems):
                    subjects[file.id] = _subject(file, kind)
                told[file.id] += [located_finding(file.located, f) for f in self._wrong_names(file, record)]
        questions = {file.id: self._asked(file, subjects, told[file.id]) for file in self.folder.files if file.id in subjects}
        for file in self.folder.files:
            accepted = subjects[file.id].record.accepted_warnings if file.id in subjects else ()
            left = without_accepted(file.located, accepted, told[file.id])
            self.problems += left if self.catalogue is not None else [one for one in left if one.rule != IDLE_ACCEPTANCE]
        self.problems += [*self._reserved_names(), *self._missing_misconceptions(), *self._course_problems(subjects)]
        written = tuple(self._written(subjects))
        if has_errors(self.problems) or self.course is None:
            raise ContentErrors(self.problems)
        return Library(
            course=self.course, subjects=subjects, questions=questions, vocabulary=self.words or {},
            catalogue=self.catalogue or Catalogue(), sources=self.sources or {}, command_words=self.command_words or {}, vague_words=self.vague_words, written=written,
            warnings=in_order(self.problems),
        )  # fmt: skip

    def _course(self) -> CourseFile | None:
        if (self.content / COURSE).exists():
            return self._checked(self.course_place, CourseFile)
        mend = "write one, with a title and with topics that list the records"
        self.problems.append(Diagnostic(Place(f"{self.name}/{COURSE}", 1, 1), "", "the course's own file", "none", mend))
        return None

    def _checked(self, found: Located, model: type[Model]) -> Model | None:
        checked, problems = check(found, model)
        self.problems += problems
        return checked

    def _shared(self, file: str, model: type[Model]) -> Model | None:
        """A shared file; one that is not there has nothing in it."""
        if not (self.content / file).exists():
            (field,) = model.model_fields  # type of each shared file: one list
            return model(**{field: ()})
        return self._checked(read(self.content / file, f"{self.name}/{file}"), model)

    def _vague_words(self) -> tuple[VagueWord, ...]:
        found = self._shared(VAGUE_WORDS, VagueWordsFile)
        words = found.vague_words if found else ()
        wrong = () if self.course is None else wrong_vague_words(words, [topic.id for topic in self.course.topics])
        place = read(self.content / VAGUE_WORDS, f"{self.name}/{VAGUE_WORDS}") if words else None
        self.problems += [located_finding(place, finding) for finding in wrong if place]
        return words

    def _wrong_names(self, file: RecordFile, record: Record) -> Iterator[Finding]:
        """What can be said of a record even if its numbers do not add up."""
        yield from unknown_names(record, file.located.value, words=self.words, misconceptions=self.catalogue, sources=self.sources)
        yield from missing_pictures(record, self.content)
        if self.course is not None:
            yield from unknown_objectives(self.course, record)

    def _doubts(self, file: RecordFile, subjects: Mapping[str, Subject[Any]]) -> Iterator[Finding]:
        kind = self.kinds[file.kind]
        yield from _doubts_of_its_own(file, kind, self.course.reading_grade if self.course else None)
        yield from wrong_texts(subjects[file.id], kind, file.located.value, subjects, self.kinds, self.folder.ids)

    def _asked(self, file: RecordFile, subjects: Mapping[str, Subject[Any]], told: list[Diagnostic]) -> tuple[Question, ...]:
        """The questions of a record, its author's own last; what is doubtful or wrong now that all facts are known is noted in `told`.

        An author's questions may name facts of any record, so they are only made where every record is sound.
        """
        subject = subjects[file.id]
        facts = FactTable(subject.facts, subjects)
        made = [] if self.catalogue is None else self._made(self.kinds[file.kind], subject)
        left_out = _left_out(made) if subject.record.use == "page" else ()
        found = [*self._doubts(file, subjects), *left_out, *false_steps_amiss(getattr(subject.record, "explanations", ())), *faults(subject.record.questions, facts, [item.id for item in made])]
        told += [located_finding(file.located, finding) for finding in found]
        generated = tuple(item for item in made if isinstance(item, Question))
        if self.catalogue is None or has_errors(told) or len(subjects) < len(self.folder.files):
            return generated
        worded = self._with_catalogue(subject.kind, lambda catalogue: self._worded(catalogue, subject, facts))
        questions = generated + worded + Authored(facts, self.catalogue, file.id).questions(subject.record.questions)
        doubts = (*doubts_about(questions, subject.record.questions), *doubts_about_features(getattr(subject.record, "adaptations", ())))
        told += [located_finding(file.located, finding) for finding in doubts]
        return questions

    def _made(self, kind: Kind[Any], subject: Subject[Any]) -> Sequence[Made]:
        return self._with_catalogue(kind.name, lambda catalogue: _made(kind, subject, tuple(catalogue.values())))

    def _with_catalogue(self, kind: str, make: Callable[[Catalogue], tuple[Item, ...]]) -> tuple[Item, ...]:
        """What is made with the catalogue; a misconception that is missing is noted, and stood in for, so that the next one is found too."""
        catalogue = Catalogue(self.catalogue or {})
        while True:
            try:
                return make(catalogue)
            except UnknownMisconception as unknown:
                (name,) = unknown.args
                self.missing.setdefault(kind, {})[name] = None
                catalogue[name] = Misconception(id=name, idea="", because="", instead="")

    def _worded(self, catalogue: Catalogue, subject: Subject[Any], facts: Mapping[str, Fact]) -> tuple[Question, ...]:
        """The questions from what a record says in words; only some kinds speak of adaptations."""
        record = subject.record
        known = [self.words[key] for key in record.vocabulary if self.words and key in self.words]
        terms = [Term(word.id, word.word, word.means, word.also, word.example) for word in known]
        return Qualitative(catalogue, subject.id, lambda text: filled(text, facts)).questions(
            record.explanations, getattr(record, "adaptations", ()), record.people, terms, matched=sum(bool(asked.pairs) for asked in record.questions)
        )

    def _written(self, subjects: Mapping[str, Subject[Any]]) -> Iterator[Guided]:
        """The written questions; what they draw on must be sound before anything can be said of them."""
        around = Around(
            subjects=subjects, kinds=self.kinds, records=self.folder.ids, topics=tuple(t.id for t in self.course.topics) if self.course else (),
            command_words=self.command_words or {}, catalogue=self.catalogue or Catalogue(), rules=self.course.marking_rules if self.course else MarkingRules(), files={file.id: file for file in self.folder.files},
        )  # fmt: skip
        sound = self.course is not None and self.catalogue is not None and self.command_words is not None and len(subjects) == len(self.folder.files)
        self.command_words, told = with_facts(around.command_words, read(self.content / COMMAND_WORDS, f"{self.name}/{COMMAND_WORDS}"), around) if sound else (self.command_words, ())
        self.problems += told
        for file in written_files(self.content, self.name) if sound else ():
            found, problems = read_written(file, around)
            self.problems += problems
            if found is not None:
                yield found

    def _missing_misconceptions(self) -> Iterator[Diagnostic]:
        place = Place(f"{self.name}/{MISCONCEPTIONS}", 1, 1)
        for kind, names in self.missing.items():
            entries = listed((f'"{name}"' for name in sorted(names)), "and")
            expected = f"{'an entry' if len(names) == 1 else 'entries'} {entries}, which questions of {kind} records name"
            yield Diagnostic(place, "misconceptions", expected, "none", "add what is missing, with its idea, why it does not hold, and what does")

    def _reserved_names(self) -> Iterator[Diagnostic]:
        for file in self.folder.files:
            if file.name in RESERVED:
                mend = "rename it: a page of that name compares all records of the kind, or leads to them"
                expected = "a name that says what the record is about"
                yield Diagnostic(Place(file.located.file, 1, 1), "", expected, f'"{file.name}"', mend)

    def _course_problems(self, subjects: Mapping[str, Subject[Any]]) -> Iterator[Diagnostic]:
        if self.course is None:
            return
        place = self.course_place
        seen: dict[str, str] = {}
        for t, topic in enumerate(self.course.topics):
            for r, record in enumerate(topic.records):
                path = ("topics", t, "records", r)
                if record not in self.folder.ids:
                    mend = did_you_mean(record, self.folder.ids, few_of(record, self.folder.ids, "records"))
                    yield located_finding(place, Finding(path=path, expected="a record", found=f'"{record}"', mend=mend))
                elif record in seen:
                    mend = f"leave it in one topic; it stands in {seen[record]} already"
                    yield located_finding(place, Finding(path=path, expected="a record once", found=f'"{record}" again', mend=mend))
                elif record in subjects and (use := subjects[record].record.use) != "page":
                    mend = "take it out of the topic, or the `use:` out of the record"
                    yield located_finding(place, Finding(path=path, expected="a record with a page", found=f'"{record}" with `use: {use}`', mend=mend))
                seen.setdefault(record, topic.id)
        yield from (located_finding(place, finding) for finding in repeated_objectives(self.course))
        topics = [topic.id for topic in self.course.topics]
        for t, test in enumerate(self.course.tests):
            for c, covered in enumerate(test.covers):
                if covered not in topics:
                    mend = did_you_mean(covered, topics, few_of(covered, topics, "topics"))
                    path = ("tests", t, "covers", c)
                    yield located_finding(place, Finding(path=path, expected="a topic", found=f'"{covered}"', mend=mend))
        for record, subject in subjects.items():
            if record not in seen and subject.record.use == "page":
                yield located_finding(
                    place,
                    Finding(
                        path=("topics",), expected=f"{record} in one of the topics", found="none that lists it",
                        mend="add it to the `records:` of a topic; until then it is on no page. Or say what it is for: `use: practice` or `use: paper`", severity=Severity.WARNING,
                        rule="not_in_course",
                    ),
                )  # fmt: skip


def _left_out(made: Sequence[Made]) -> Iterator[Finding]:
    for item in made:
        if isinstance(item, Rejected):
            yield Finding(
                path=("title",), expected=f'numbers that give a fair question "{item.id}"', found=item.because,
                mend="nothing need be done: the question is left out", severity=Severity.WARNING, rule="question_left_out",
            )  # fmt: skip


def taught(library: Library) -> Sequence[str]:
    """The records of all shown topics, in taught order."""
    return [record for topic in library.course.topics if topic.show for record in topic.records]
