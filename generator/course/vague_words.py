"""vague_words.yaml: words that say less than a science answer needs, and the question that a page asks instead."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Iterator
from typing import Annotated, Literal

from pydantic import AfterValidator

from generator.diagnostics import did_you_mean, few_of
from generator.records.expectation import expected
from generator.records.fields import Id, Many, Sentence, Some, Text, different, spelled
from generator.records.finding import Finding
from generator.records.parts import Part

JUDGING = re.compile(r"\b(?:right|wrong|correct|incorrect|good|score|marks?)\b", re.IGNORECASE)
"""What no hint may say: it cannot know."""
_WORD = r"[A-Za-z]+(?:['-][A-Za-z]+)*"
_CONTEXT = r"(?:#|[A-Za-z0-9°%'-]+\*?)"


def _tidy(text: str) -> str:
    """With plain signs in place of indices and curly apostrophes, and none at the ends."""
    return unicodedata.normalize("NFKC", text).replace("’", "'").strip(" .,;:!?\"")


Spelling = spelled(rf"{_WORD}(?: {_WORD})*", "a word or words in letters, as students write them", "bad for the environment", _tidy)
Context = spelled(rf"{_CONTEXT}(?: {_CONTEXT})*", "words, with * for any ending and # for any number", "nitr*", _tidy)



def _asking(value: str) -> str:
    if found := JUDGING.search(value):
        raise expected("a question that judges nothing", f'ask for what is missing, without "{found[0]}": a hint gives no mark')
    return value


class VagueWord(Part):
    """Spellings that mean the same, and what to ask where one of them stands."""

    words: Annotated[Some[Spelling], different()]
    ask: Annotated[Sentence, AfterValidator(_asking)]
    unless: Annotated[Many[Context], different()] = ()
    """Where one of these stands in the same sentence, the word is precise enough."""
    topics: Annotated[Many[Id], different()] = ()
    """The topics in which it is asked; none for all of them."""
    source: Text | None = None
    """Who described the wording, as author and year; none for common practice of teachers."""
    status: Literal["read", "from a summary", "from memory"] = "from memory"


class VagueWordsFile(Part):
    """vague_words.yaml"""

    vague_words: Many[VagueWord]


def wrong_vague_words(words: tuple[VagueWord, ...], topics: Collection[str]) -> Iterator[Finding]:
    """Topics that the course does not have, and spellings for which two questions would be asked."""
    first: dict[str, list[int]] = {}
    for at, entry in enumerate(words):
        for n, topic in enumerate(entry.topics):
            if topic not in topics:
                mend = did_you_mean(topic, topics, few_of(topic, topics, "topics"))
                yield Finding(path=("vague_words", at, "topics", n), expected="a topic of course.yaml", found=f'"{topic}"', mend=mend)
        for n, spelling in enumerate(entry.words):
            before = first.setdefault(spelling.casefold(), [])
            if again := [one for one in before if one != at and _meet(words[one], entry)]:
                found = f'"{spelling}" again (first in [{again[0]}])'
                yield Finding(path=("vague_words", at, "words", n), expected="each spelling in one entry", found=found, mend="remove one of them, or give each entry topics of its own")
            before.append(at)


def _meet(one: VagueWord, other: VagueWord) -> bool:
    return not one.topics or not other.topics or bool(set(one.topics) & set(other.topics))
