"""What the page that coaches a writer is told about a part: what is asked, what may be missing, and an outline that fades."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Any, Protocol

from generator.written.asking import NAMING, asks_for_data, first_count, so_many
from generator.written.guide import PartGuide


class Verb(Protocol):
    """An entry of the command words."""

    @property
    def id(self) -> str:
        """By which parts name it."""

    @property
    def word(self) -> str:
        """As it is written."""

    @property
    def ideas(self) -> str:
        """How many ideas it usually takes, in words."""

    @property
    def outline(self) -> Sequence[str]:
        """Questions to answer one after the other."""


class Term(Protocol):
    """An entry of the vocabulary."""

    @property
    def word(self) -> str:
        """The term."""

    @property
    def also(self) -> Sequence[str]:
        """Everyday words for it."""


def task_of(guide: PartGuide, topic: str, verb: Verb, vocabulary: Iterable[Term]) -> dict[str, Any]:
    """What `studyCoaching.hints` needs to know of a part, as plain data; the ideas of its guide are not in it."""
    part, words = guide.part, tuple(vocabulary)
    return {
        "command": verb.id, "verb": verb.word, "topic": topic, "prompt": guide.prompt, "needs": part.needs, "condition": part.condition or "",
        "data": verb.id not in NAMING and asks_for_data(guide.prompt, part.condition or ""), "asked": _asked(guide),
        "fewest": min(fewest(verb.ideas), part.marks), "terms": [{"term": one.word, "also": list(one.also)} for one in bank_of(guide, words)],
    }  # fmt: skip


def fewest(ideas: str) -> int:
    """The number of ideas that a command word usually takes at least: the first number in the words of its entry, or one.

    >>> fewest("two joined ideas in about two sentences"), fewest("three to six"), fewest("as the prompt says")
    (2, 3, 1)
    """
    return first_count(ideas) or 1


def _asked(guide: PartGuide) -> int:
    """How many things the prompt asks for: so many as it says behind its verb; else, where things are named, one for each mark."""
    if (said := so_many(guide.prompt)) is not None:
        return said
    award = guide.part.award
    return guide.part.marks if guide.part.command_word in ("identify", "state", "list", "label") and award.rule in ("each", "any") else 1


def bank_of(guide: PartGuide, vocabulary: Iterable[Term]) -> list[Term]:
    """Words of the course that stand in the guide's ideas or accepted wordings, in their order there.

    Not those of the prompt, for they are given; and of terms that lie in one another, as in “potential evapotranspiration”, the longest.
    """
    if guide.number is not None:
        return []
    text = " . ".join(wording for line in guide.lines for wording in (line.says, *line.accept))
    found: list[tuple[int, Term]] = []
    for term in sorted(vocabulary, key=lambda one: (-len(one.word), one.word)):
        pattern = _inflected(term.word)
        if place := pattern.search(text):
            text = pattern.sub(lambda hit: "." * len(hit[0]), text)
            if not pattern.search(guide.prompt):
                found.append((place.start(), term))
    return [term for _, term in sorted(found, key=lambda one: one[0])]


def _inflected(term: str) -> re.Pattern[str]:
    """The term as whole words, or its plural."""
    plural = rf"(?:{re.escape(term)}(?:s|es)?" + (rf"|{re.escape(term[:-1])}ies)" if term.endswith("y") else ")")
    return re.compile(rf"(?<![\w-]){plural}(?![\w-])", re.IGNORECASE)


def outline_of(verb: Verb, place: int) -> tuple[str, ...]:
    """The outline of an answer for a written question at this place of the course, counted from 0.

    The first written question of the course shows all questions of the outline. At each next one the first of those that are left
    falls away, until there are none. Prompts that fade leave students with better explanations of their own than prompts that stay
    (McNeill, Lizotte, Krajcik and Marx 2006, on claim, evidence and reasoning). Outlines begin with what comes easiest, to say what is so,
    and end with the reasoning, which is the part that students need longest.
    """
    return tuple(verb.outline[max(place, 0) :])
