"""What is doubtful in vocabulary.yaml: a definition that says its word again, and a word for searching that is another entry's own."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from generator.course.glossaries import Word
from generator.diagnostics import Severity
from generator.records.finding import Finding

_ARTICLE = re.compile(r"^(?:an?|the) ", re.IGNORECASE)


def doubtful_definitions(words: Sequence[Word]) -> Iterator[Finding]:
    """Warnings, each at its place."""
    entries = {word.word.casefold() for word in words}
    for at, word in enumerate(words):
        if _repeats(word):
            yield Finding(
                path=("words", at, "means"), expected="what the word means, in other words", found=f'"{word.word}" again',
                mend="say what it is, by what one can see or measure", severity=Severity.WARNING, rule="repeated_word",
            )  # fmt: skip
        for n, other in enumerate(word.also):
            if other.casefold() in entries:
                yield Finding(
                    path=("words", at, "also", n), expected="a word without an entry of its own", found=f'"{other}", which has one',
                    mend="remove it: who looks for it finds its own entry", severity=Severity.WARNING, rule="two_entries",
                )  # fmt: skip


def _repeats(word: Word) -> bool:
    """Whether the definition begins with the word itself, or has no other."""
    said = _ARTICLE.sub("", word.means.casefold()).strip(" .")
    return re.match(rf"{re.escape(word.word.casefold())}(?!\w)", said) is not None
