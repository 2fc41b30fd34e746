"""The three files that all records share: words, misconceptions, sources."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from typing import Annotated, ClassVar, Literal

from pydantic import AfterValidator, ValidationInfo, field_validator

from generator.questions.item_writing import told_by
from generator.records.expectation import expected
from generator.records.fields import Id, Many, MisconceptionId, Sentence, Some, SourceKey, Text, Whole, different, spelled
from generator.records.located import located
from generator.records.parts import Part

Asked = spelled(r"[A-Z].*\?", "a question that begins with a capital letter", "By which process?", lambda text: text.strip().rstrip(".!?")[:1].upper() + text.strip().rstrip(".!?")[1:] + "?")

class Word(Part):
    """A term of the subject."""

    id: Id
    word: Text
    means: Text
    also: Many[Text] = ()
    """Everyday words that say the same, by which a student would look for it."""
    search_only: Many[Text] = ()
    """What students look for when they mean it, though it is no everyday word for it: it says something else, or is a term too. No page tells it."""
    example: Text | None = None
    """A case in which a student should recognise it, as questions ask; no page tells it, and it fits no other word of the word's pages."""

    @property
    def looked_for_as(self) -> tuple[str, ...]:
        """All words by which the search finds it."""
        return (*self.also, *self.search_only)

    @field_validator("example")
    @classmethod
    def _tells_nothing(cls, example: str | None, info: ValidationInfo) -> str | None:
        if example and (told := told_by(example, info.data.get("word", ""))):
            raise expected("an example without the word or a part of it", "say it in other words: who sees the word there need not know what it means", found=f'"{told}…" in "{example}"')
        return example

class VocabularyFile(Part):
    """vocabulary.yaml"""

    NAMED_BY: ClassVar[str] = "id"
    """By which field messages call an entry."""
    words: Annotated[Many[Word], different(), different("example")]

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
    """An answer, or the beginning of one, that does what is asked; it may name facts, as `{biome/savanna:teva_crossing.annual_precip}`."""
    near_miss: Text
    """One that does not; it may name facts too."""
    outline: Many[Asked] = ()
    """A plan for an answer: questions to answer one after the other, what is easiest first, for these fade first."""

class CommandWordsFile(Part):
    """command_words.yaml"""

    NAMED_BY: ClassVar[str] = "id"
    command_words: Annotated[Many[CommandWord], different()]


@cache
def method_sources() -> Mapping[str, Source]:
    """The bibliography that comes with the methods."""
    data = files("generator.science").joinpath("sources.yaml").read_bytes()
    found = located(data, "science/sources.yaml")
    return {key: Source.model_validate({"key": key} | entry) for key, entry in (found.value or {}).items()}
