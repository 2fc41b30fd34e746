"""Marking guides for the teacher to look through: what each number rests on, which sorts of idea are asked for, what is doubtful or said twice."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Any

from generator.course.library import Library
from generator.diagnostics import Diagnostic
from generator.kind import Kind
from generator.quantities.text import references
from generator.records.parts import AcceptedWarning
from generator.written.asking import content_words
from generator.written.guide import GuideLine, Guided, PartGuide
from generator.written.record import FromChain, WrittenPart, part_named
from generator.written.variants import Variant, variants

ALIKE, FEWEST_WORDS = 0.6, 4
"""Which share of all words that carry meaning two ideas have in common, and how many each must have, to be taken for the same idea."""


@dataclass(frozen=True)
class Origin:
    """A number of a question, and where it comes from."""

    key: str
    name: str
    shown: str
    working: str
    sources: tuple[str, ...]
    """Authors and year."""


@dataclass(frozen=True)
class Reviewed:
    """One written question with all that a teacher wants to judge."""

    guided: Guided
    topic: str
    minutes: float
    sorts: Mapping[str, int]
    """How many ideas of each sort earn marks; those whose sort is not known stand under an empty name."""
    origins: tuple[Origin, ...]
    warnings: tuple[Diagnostic, ...]
    accepted: tuple[AcceptedWarning, ...]
    without_near_miss: tuple[str, ...]
    """Parts some idea of which has no near miss, or whose calculation has no known slip."""
    other_numbers: str
    """How many sets of other numbers can be drawn, or why none."""
    drawn: tuple[Variant, ...] = ()
    """The sets."""


@dataclass(frozen=True)
class Shared:
    """Two parts that give marks for much the same idea."""

    one: str
    other: str
    says: str


@dataclass(frozen=True)
class Review:
    """All written questions of a course, those of topics that are not shown too."""

    title: str
    questions: tuple[Reviewed, ...]
    shared: tuple[Shared, ...]
    sorts: Mapping[str, int]


def review(library: Library, kinds: Mapping[str, Kind[Any]]) -> Review:
    """Everything that is known of the course's written questions, in taught order."""
    order = {topic.id: place for place, topic in enumerate(library.course.topics)}
    written = sorted(library.written, key=lambda guided: order.get(guided.question.topic, len(order)))
    questions = tuple(_reviewed(guided, library, kinds) for guided in written)
    return Review(library.course.title, questions, tuple(_shared(written)), _added(one.sorts for one in questions))


def _reviewed(guided: Guided, library: Library, kinds: Mapping[str, Kind[Any]]) -> Reviewed:
    topic = next(topic.title for topic in library.course.topics if topic.id == guided.question.topic)
    drawn = variants(guided)
    number = len(drawn.drawn)
    return Reviewed(
        guided=guided, topic=topic, minutes=sum(guide.minutes for guide in guided.guides),
        sorts=Counter(line.gives for guide in guided.guides if guide.number is None for line in guide.lines),
        origins=tuple(_origin(key, library, kinds) for key in dict.fromkeys(_keys(guided))),
        warnings=tuple(one for one in library.warnings if one.place.file.endswith(f"written/{guided.name}.yaml")),
        accepted=guided.question.accepted_warnings, without_near_miss=tuple(guide.part.id for guide in guided.guides if _lacks_near_miss(guide)),
        other_numbers=drawn.because or f"{number} set{'' if number == 1 else 's'} of other numbers can be drawn for its calculations.", drawn=drawn.drawn,
    )  # fmt: skip


def _lacks_near_miss(guide: PartGuide) -> bool:
    if guide.reading is not None:
        return False
    return not guide.worked.entry.slips if guide.worked else any(not line.not_enough for line in guide.lines)


def _keys(guided: Guided) -> Iterator[str]:
    """Facts in the order in which a reader meets them."""
    for text in (one.text for one in guided.question.stimulus if one.text):
        yield from _named(text)
    numbers = guided.question.numbers.values()
    yield from (key for number in numbers for key in number.given.values())
    for part in guided.question.parts:
        yield from _keys_of_part(part)


def _keys_of_part(part: WrittenPart) -> Iterator[str]:
    own = () if isinstance(part.ideas, FromChain) else part.ideas
    yield from _named(part.prompt)
    yield from (key for key in (part.calculate.given.values() if part.calculate else ()) if not part_named(key))
    yield from [part.read.fact] if part.read else ()
    for text in (text for idea in own for text in (idea.says, *idea.accept, *idea.not_enough)):
        yield from _named(text)
    for text in (text for sample in part.samples for text in (sample.text, sample.comment)):
        yield from _named(text)


def _named(text: str) -> Iterator[str]:
    return (one.key for one in references(text) if one.record)


def _origin(key: str, library: Library, kinds: Mapping[str, Kind[Any]]) -> Origin:
    record, _, name = key.partition(":")
    subject = library.subjects[record]
    fact = subject.facts[name]
    methods = kinds[subject.kind].methods
    cited = dict.fromkeys((*fact.sources, *(methods[fact.method].sources if fact.method in methods else ())))
    works = tuple(f"{source.authors} ({source.year})" if source.year else source.authors for one in cited if (source := library.sources.get(one)))
    return Origin(key, fact.name, fact.shown, fact.shown_working, works)


def _shared(written: Sequence[Guided]) -> Iterator[Shared]:
    """Ideas of two parts with most words in common: marks would be given twice, or one part tells another's answer."""
    lines = [(f"{guided.question.title}, part {guide.part.id}", line) for guided in written for guide in guided.guides if guide.number is None for line in guide.lines]
    for (one, first), (other, second) in combinations(lines, 2):
        if one != other and _alike(first, second):
            yield Shared(one, other, first.says)


def _alike(one: GuideLine, other: GuideLine) -> bool:
    words, others = content_words(one.says), content_words(other.says)
    return min(len(words), len(others)) >= FEWEST_WORDS and len(words & others) >= ALIKE * len(words | others)


def _added(counts: Iterator[Mapping[str, int]]) -> Mapping[str, int]:
    return sum((Counter(one) for one in counts), Counter())
