"""How hard a text is to read, by a published formula, and which sentences of a record are harder than the course allows."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from generator.course.syllables import syllables
from generator.diagnostics import Severity
from generator.records.field_path import FieldPath
from generator.records.finding import Finding

HARD_TO_READ = "hard_to_read"
FEWEST_WORDS = 12
"""A shorter sentence is never told: its grade hangs on one or two words, which may be the very terms to be learned."""
MARGIN = 3.0
"""School years that a single sentence may lie above the course's grade. Our own rule. The formula was made for passages of a
hundred words; in a sentence of 15 the mean of syllables per word scatters by 0.9/√15, which is 2.7 years of chance."""
PASSAGE = 100
"""Words that make a passage, long enough for the formula to be taken at its word."""
NOT_JUDGED = ("holds_if", "file", "credit", "source", "units", "accept", "not_enough", "accepted_warnings", "where")
"""Fields that hold no running text for students, and lists of places, whose names are as they are."""
_FACT = re.compile(r"\{[^{}]*\}")
_END = re.compile(r"""(?<=[.?!])(?<![A-Za-z]\.[a-z]\.)["'”’)]*\s+(?=["'“‘(]*[A-Z\d{])|\n\s*\n""")
_WORD = re.compile(r"[^\W_]+(?:['’.,–-][^\W_]+)*")


@dataclass(frozen=True)
class Count:
    """What the formula needs to know of a text."""

    words: int
    sentences: int
    syllables: int

    @property
    def grade(self) -> float:
        """Flesch-Kincaid grade [school years]; 0 for a text without words, below 0 for a very simple one.

        0.39 words per sentence + 11.8 syllables per word - 15.59. Source: Kincaid, J. P., Fishburne, R. P., Rogers, R. L. and
        Chissom, B. S. (1975), Research Branch Report 8-75, Naval Technical Training Command.
        """
        if not self.words:
            return 0.0
        return 0.39 * self.words / self.sentences + 11.8 * self.syllables / self.words - 15.59


def sentences(text: str) -> list[str]:
    """The sentences of a text; a blank line ends one too, a point inside a number or an abbreviation does not."""
    return [one.strip() for one in _END.split(text) if _words(one)]


def counted(text: str) -> Count:
    """The text's words, sentences and syllables; a fact in braces, like any number, is one word of one syllable."""
    words = _words(text)
    return Count(len(words), len(sentences(text)), sum(map(syllables, words)))


def _words(text: str) -> list[str]:
    return _WORD.findall(_FACT.sub(" 0 ", text))


def hard_to_read(record: Any, grade: float) -> Iterator[Finding]:
    """A warning for each text with a sentence that lies too far above the course's grade, at the hardest of its sentences.

    `record` is the record as read. Where no sentence does, but all its whole sentences together are a passage above the
    grade, there is one warning at the hardest of them.
    """
    found = [(path, sentence) for path, text in _running_texts(record) if (sentence := _hardest(text))]
    hard = [(path, sentence) for path, sentence in found if round(counted(sentence).grade, 1) > grade + MARGIN]
    for path, sentence in hard:
        count = counted(sentence)
        yield _warning(
            path, sentence, f"sentences up to grade {grade + MARGIN:g}, for a course of grade {grade:g}",
            f"one of grade {count.grade:.1f} ({count.words} words, {count.syllables} syllables)",
        )  # fmt: skip
    passage = counted("\n\n".join(text for _, text in _running_texts(record) if text.rstrip().endswith((".", "?", "!"))))
    if found and not hard and passage.words >= PASSAGE and round(passage.grade, 1) > grade:
        path, sentence = max(found, key=lambda one: counted(one[1]).grade)
        yield _warning(
            path, sentence, f"whole sentences that together read up to grade {grade:g}",
            f"{passage.words} words of grade {passage.grade:.1f}; this sentence is the hardest",
        )  # fmt: skip


def _hardest(text: str) -> str:
    """Of the sentences that are long enough to be judged."""
    return max((one for one in sentences(text) if counted(one).words >= FEWEST_WORDS), key=lambda one: counted(one).grade, default="")


def _warning(path: FieldPath, sentence: str, expected: str, found: str) -> Finding:
    return Finding(
        path=path, expected=expected, found=found, mend="part it in two, or choose shorter words", severity=Severity.WARNING,
        rule=HARD_TO_READ, fragment=sentence,
    )  # fmt: skip


def _running_texts(value: Any, path: FieldPath = ()) -> Iterator[tuple[FieldPath, str]]:
    if isinstance(value, dict):
        for key, inner in value.items():
            if key not in NOT_JUDGED:
                yield from _running_texts(inner, (*path, key))
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from _running_texts(inner, (*path, index))
    elif isinstance(value, str):
        yield path, value
