"""The three files that all records share: words, misconceptions, sources."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from pydantic import AfterValidator

from generator.records.expectation import expected
from generator.records.fields import Id, Many, MisconceptionId, Sentence, Some, SourceKey, Text, Whole, different, spelled
from generator.records.parts import Part

Asked = spelled(r"[A-Z].*\?", "a question that begins with a capital letter", "By which process?", lambda text: text.strip().rstrip(".!?")[:1].upper() + text.strip().rstrip(".!?")[1:] + "?")

class Word(Part):
    """A term of the subject."""

    id: Id
    word: Text
    means: Text
    also: Many[Text] = ()
    """Everyday words by which a student would look for it."""

class VocabularyFile(Part):
    """vocabulary.yaml"""

    NAMED_BY: ClassVar[str] = "id"
    """By which field messages call an entry."""
    words: Annotated[Many[Word], different()]

class MisconceptionEntry(Part):
    """A wrong idea that is known to be common, and its refutation: "Some think: idea That does not hold: because Instead: instead"."""

    id: MisconceptionId
    idea: Sentence
    because: Sentence
    """The fact, principle or counter-example that breaks it."""
    instead: Sentence
    """What does hold, or what to do."""
    source: Text | None = None
    """Who found it, as author and year; none for a slip that follows from the arithmetic."""
    status: Literal["read", "from a summary", "from memory"]
    """How sure the entry's source is."""

class MisconceptionsFile(Part):
    """misconceptions.yaml"""

    NAMED_BY: ClassVar[str] = "id"
    misconceptions: Annotated[Many[MisconceptionEntry], different()]

class Source(Part):
    """A published work that numbers or statements rest on."""

    key: SourceKey
    authors: Text
    year: Whole | None = None
    title: Text
    where: Text
    """Journal or publisher, volume and pages."""
    doi: Text | None = None
    licence: Text | None = None
    note: Text | None = None
    read: Literal["text", "abstract", "secondary", "memory", "run"] = "text"
    """Whether the work itself was read, its abstract, another work that quotes it, or none; `run` for a program."""

class SourcesFile(Part):
    """sources.yaml"""

    NAMED_BY: ClassVar[str] = "key"
    sources: Annotated[Many[Source], different("key")]

def _fewest_and_most(marks: tuple[int, ...]) -> tuple[int, int]:
    if len(marks) != 2 or not 1 <= marks[0] <= marks[1]:
        raise expected("fewest and most marks", "write them like [2, 3]", found=str(list(marks)))
    return marks[0], marks[1]

class CommandWord(Part):
    """A verb that a question begins with, and what an answer to it must contain."""

    id: Id
    word: Text
    asks: Text
    """What the answer must contain."""
    not_enough: Text
    ideas: Text
    """How many ideas are usually needed, in words: common practice, which a school may set otherwise."""
    marks: Annotated[Some[Whole], AfterValidator(_fewest_and_most)] | None = None
    """Fewest and most marks of a part with this word, where it asks for one thing; without them nothing is checked."""
    model: Text
    """An answer, or the beginning of one, that does what is asked."""
    near_miss: Text
    """One that does not."""
    outline: Many[Asked] = ()
    """A plan for an answer: questions to answer one after the other, what is easiest first, for these fade first."""

class CommandWordsFile(Part):
    """command_words.yaml"""

    NAMED_BY: ClassVar[str] = "id"
    command_words: Annotated[Many[CommandWord], different()]
