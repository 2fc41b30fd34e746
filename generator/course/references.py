"""Everything in a record that points elsewhere: words, misconceptions, sources, pictures, facts in text, and claims."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from generator.diagnostics import did_you_mean, few_of, listed
from generator.kind import Kind, Subject
from generator.quantities.expression import ExpressionError
from generator.quantities.fact import Fact, Facts
from generator.quantities.text import Claim, references, stray_braces
from generator.records.field_path import FieldPath
from generator.records.finding import Finding
from generator.records.record import Record

MOST_EXAMPLES = 3
PLAIN = ("title", "name", "question", "asks", "problem", "who", "alt", "credit", "purpose", "process", "starts_as", "ends_as", "done_by", "scene")
"""Fields that stand where a fact cannot: in headings and the navigation, on charts, in row names."""


class FactTable(Mapping[str, Fact]):
    """The facts that a record's texts may name: its own by id, those of others as `kind/record:id`."""

    def __init__(self, own: Facts, subjects: Mapping[str, Subject[Any]]) -> None:
        self.own, self.subjects = own, subjects

    def __getitem__(self, key: str) -> Fact:
        record, colon, fact = key.partition(":")
        return self.subjects[record].facts[fact] if colon else self.own[key]

    def __iter__(self) -> Iterator[str]:
        yield from self.own
        for record, subject in self.subjects.items():
            yield from (f"{record}:{fact}" for fact in subject.facts)

    def __len__(self) -> int:
        return len(self.own) + sum(len(subject.facts) for subject in self.subjects.values())


def facts_kept_for_tests(kind: Kind[Any], subject: Subject[Any]) -> frozenset[str]:
    """The facts that no page may show: all of a record that serves class tests alone, or those of its parts that do."""
    parts = {name for name, part in kind.parts(subject.record).items() if part.use == "paper"}
    return frozenset(fact for fact in subject.facts if subject.record.use == "paper" or fact.partition(".")[0] in parts)


def unknown_names(
    record: Record, texts: Any, *, words: Mapping[str, Any] | None, misconceptions: Mapping[str, Any] | None,
    sources: Mapping[str, Any] | None,
) -> Iterator[Finding]:  # fmt: skip
    """Words, misconceptions and sources that no shared file has; a file that is broken (None) is not asked.

    `texts` is the record as read.
    """
    for field, named, known, file in (
        ("vocabulary", record.vocabulary, words, "vocabulary.yaml"),
        ("misconceptions", record.misconceptions, misconceptions, "misconceptions.yaml"),
        ("sources", record.sources, sources, "sources.yaml"),
    ):
        for index, name in enumerate(named):
            if known is not None and name not in known:
                yield _unknown((field, index), name, known, file)
    for field, known, file in (("source", sources, "sources.yaml"), ("misconception", misconceptions, "misconceptions.yaml")):
        for path, key in _named(texts, field):
            if known is not None and key not in known:
                yield _unknown(path, key, known, file)


def _unknown(path: FieldPath, name: str, known: Mapping[str, Any], file: str) -> Finding:
    mend = did_you_mean(name, known, f"add it to {file}, or remove it here")
    return Finding(path=path, expected=f"an entry of {file}", found=f'"{name}"', mend=mend)


def _named(value: Any, field: str, path: FieldPath = ()) -> Iterator[tuple[FieldPath, str]]:
    """Every text in a field of this name, at any depth."""
    if isinstance(value, dict):
        for key, inner in value.items():
            if key == field and isinstance(inner, str):
                yield (*path, key), inner
            else:
                yield from _named(inner, field, (*path, key))
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from _named(inner, field, (*path, index))


def missing_pictures(record: Record, content: Path) -> Iterator[Finding]:
    """Pictures that are not there."""
    for index, picture in enumerate(record.pictures):
        if not (content / picture.file).is_file():
            yield Finding(
                path=("pictures", index, "file"), expected="a file below the content folder", found=f'no "{picture.file}"',
                mend="copy the picture there, or correct the name",
            )  # fmt: skip


def wrong_texts(
    subject: Subject[Any], kind: Kind[Any], texts: Any, subjects: Mapping[str, Subject[Any]], kinds: Mapping[str, Kind[Any]],
    ids: tuple[str, ...],
) -> Iterator[Finding]:  # fmt: skip
    """References in texts that lead nowhere, or to numbers that are kept for class tests.

    `texts` is the record as read; `subjects` are the records whose facts are known, `ids` all that exist, broken ones included.
    """
    facts = FactTable(subject.facts, subjects)
    for path, text in texts_in(texts):
        if path[-1] == "holds_if":
            yield from _claim(path, text, subject, kind, facts, ids)
            continue
        if path[0] == "questions" and path[-1] == "fact":
            finding = _wrong_reference(path, text, text, subject, facts, ids) or _kept_for_tests(path, text, text, subject, kind, subjects, kinds)
            yield from [finding] if finding else []
            continue
        if stray_braces(text):
            yield Finding(
                path=path, expected="a fact between braces, such as {harrow_plain.annual_precip}", found="a brace that stands alone",
                mend="close the brace, or remove it",
            )  # fmt: skip
        if path[-1] in PLAIN and any(references(text)):
            mend = "write the number into a text such as the summary"
            yield Finding(path=path, expected="words without a fact", found=f'"{text}"', mend=mend)
            continue
        for reference in references(text):
            key, found = reference.key, f"{reference.text}"
            if not reference.fact:
                expected, mend = "the id of a fact between braces", f"write one such as {_examples(subject.facts)}"
                yield Finding(path=path, expected=expected, found=found, mend=mend, fragment=reference.text)
            elif finding := _wrong_reference(path, key, found, subject, facts, ids):
                yield finding
            elif finding := _kept_for_tests(path, key, found, subject, kind, subjects, kinds):
                yield finding


def texts_in(value: Any, path: FieldPath = ()) -> Iterator[tuple[FieldPath, str]]:
    """Every text of a record as read, with its path."""
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from texts_in(inner, (*path, key))
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from texts_in(inner, (*path, index))
    elif isinstance(value, str):
        yield path, value


def _wrong_reference(
    path: FieldPath, key: str, found: str, subject: Subject[Any], facts: FactTable, ids: tuple[str, ...]
) -> Finding | None:
    record, colon, fact = key.partition(":")
    if colon and record not in ids:
        mend = did_you_mean(record, ids, few_of(record, ids, "records"))
        return Finding(path=path, expected="a record", found=f'"{record}"', mend=mend, fragment=found)
    if key in facts or (colon and record not in facts.subjects):
        return None
    own = facts.subjects[record].facts if colon else subject.facts
    name, of = (fact, record) if colon else (key, "this record")
    mend = did_you_mean(name, own, f"its facts are listed by: studyguide facts {record if colon else subject.id}")
    return Finding(path=path, expected=f"a fact of {of}", found=f'"{name}"', mend=mend, fragment=found)


def _kept_for_tests(
    path: FieldPath, key: str, found: str, subject: Subject[Any], kind: Kind[Any], subjects: Mapping[str, Subject[Any]],
    kinds: Mapping[str, Kind[Any]],
) -> Finding | None:  # fmt: skip
    """A text of a record that is itself kept for tests reaches no page, so it may say what it likes."""
    record, colon, fact = key.partition(":")
    if subject.record.use == "paper" or (colon and record not in subjects):
        return None
    of, its_kind = (subjects[record], kinds[subjects[record].kind]) if colon else (subject, kind)
    if (fact if colon else key) not in facts_kept_for_tests(its_kind, of):
        return None
    return Finding(
        path=path, expected="a fact that students may see", found=f"{found}, kept for class tests by `use: paper`",
        mend="name another place, or let its data be seen with `use: page`", fragment=found,
    )  # fmt: skip


def _claim(
    path: FieldPath, source: str, subject: Subject[Any], kind: Kind[Any], facts: FactTable, ids: tuple[str, ...]
) -> Iterator[Finding]:
    claim = Claim(source)
    try:
        keys = claim.keys
    except ExpressionError:
        yield _unreadable(path, source, "compare facts and numbers with <, <=, >, >=, == or !=; join comparisons with and, or, not")
        return
    wrong = [finding for key in keys if (finding := _wrong_reference(path, key, key, subject, facts, ids))]
    yield from wrong
    if wrong or any(key not in facts for key in keys):
        return
    try:
        holds = claim.holds(facts)
    except ExpressionError:
        yield _unreadable(path, source, "compare with <, <=, >, >=, == or != what has the same kind of unit on both sides")
        return
    if not holds:
        yield Finding(
            path=path, expected=f"{source}, for the sentence says so", found=claim.numbers(facts),
            mend="the sentence is no longer true: mend it, or the numbers",
        )  # fmt: skip


def _unreadable(path: FieldPath, source: str, because: str) -> Finding:
    return Finding(
        path=path, expected="a comparison of facts, such as harrow_plain.aridity_index < 0.65", found=f'"{source}"', mend=because
    )  # fmt: skip


def _examples(facts: Facts) -> str:
    return listed([f"{{{fact}}}" for fact in list(facts)[:MOST_EXAMPLES]]) if facts else "a fact of this record"
