"""The three files that all records share: words, misconceptions, sources."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from generator.records.fields import Id, Many, MisconceptionId, Sentence, SourceKey, Text, Whole, different, spelled
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

class CommandWord(Part):
    """A verb that a question begins with, and what an answer to it must contain."""

    id: Id
    word: Text
    asks: Text
    """What the answer must contain."""
    not_enough: Text
    ideas: Text
    """How many ideas are usually needed, in words: common practice, which a school may set otherwise."""
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
