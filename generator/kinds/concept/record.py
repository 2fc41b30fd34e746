"""What a record of a concept says."""

from __future__ import annotations

import re
from typing import Annotated, Literal

from generator.records.asked import AskedQuestion
from generator.records.fields import Some, Text, different
from generator.records.parts import Part
from generator.records.record import Record

_BLANK_LINE = re.compile(r"\n[ \t]*\n\s*")
_AFTER_SENTENCE = re.compile(r"(?<=[.?!:)\"'”’}])\n")


def paragraphs(text: str) -> list[str]:
    """The paragraphs of a block of text, which blank lines part.

    YAML leaves a single line break of a blank line in a block marked `>`; there a break behind the end of a sentence
    begins a paragraph. Where blank lines are left, as in a block marked `|`, only they do.

    >>> paragraphs("A sentence\\nover two lines.\\n\\nThe next.")
    ['A sentence\\nover two lines.', 'The next.']
    >>> paragraphs("A folded sentence.\\nThe next.")
    ['A folded sentence.', 'The next.']
    """
    parts = _BLANK_LINE.split(text) if _BLANK_LINE.search(text) else _AFTER_SENTENCE.split(text)
    return [part.strip() for part in parts if part.strip()]


class Section(Part):
    """A heading with its paragraphs."""

    title: Text
    text: Text
    """Paragraphs parted by blank lines; may hold facts of any record."""

    @property
    def paragraphs(self) -> list[str]:
        """The text, paragraph by paragraph."""
        return paragraphs(self.text)


class Table(Part):
    """A simple table: a row begins with what it is about."""

    caption: Text
    columns: Some[Text]
    rows: Some[Some[Text]]


class ConceptRecord(Record):
    """A concept: any topic of the year, without a fixed set of numbers and without Python."""

    data: Literal["invented", "published", "measured"] | None = None
    """Where the numbers in its texts come from; left out where it has none."""
    question: Text | None = None
    """The question that the page answers, in words alone."""
    sections: Annotated[Some[Section], different("title")]
    table: Table | None = None
    questions: Annotated[Some[AskedQuestion], different()]
    """At least one: a page that asks nothing is not studied."""
