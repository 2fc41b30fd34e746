"""Command words whose models and near misses name facts: checked, and with the facts put in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.course.glossaries import CommandWord
from generator.course.written_questions import Around, known_names
from generator.diagnostics import Diagnostic
from generator.quantities.text import filled, references, stray_braces
from generator.records.field_path import FieldPath
from generator.records.finding import Finding, located_finding
from generator.records.located import Located
from generator.written.known import Known, wrong_fact

WITH_FACTS = ("model", "near_miss")


def with_facts(words: Mapping[str, CommandWord], file: Located, around: Around) -> tuple[Mapping[str, CommandWord], tuple[Diagnostic, ...]]:
    """The entries as students read them, and what is wrong with their facts; with an error they stay as they are."""
    known = known_names(around)
    wrong = tuple(
        located_finding(file, finding) for index, word in enumerate(words.values()) for field in WITH_FACTS
        for finding in _wrong(("command_words", index, field), getattr(word, field), known)
    )  # fmt: skip
    if wrong:
        return words, wrong
    return {name: word.model_copy(update={field: filled(getattr(word, field), around.facts) for field in WITH_FACTS}) for name, word in words.items()}, ()


def _wrong(path: FieldPath, text: str, known: Known) -> Iterator[Finding]:
    if stray_braces(text):
        yield Finding(path=path, expected="a fact between braces", found="a brace that stands alone", mend="close the brace, or remove it")
    for reference in references(text):
        yield from wrong_fact(path, reference.key, known, reference.text)
