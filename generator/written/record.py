"""What a file in `written/` says: a stimulus, parts with a command word and marks, ideas that earn them, sample answers."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from pydantic import AfterValidator, Field

from generator.records.asked import FactKey
from generator.records.fields import ID, Bounds, Id, Many, MisconceptionId, RecordId, Some, Text, UnitLabel, Whole, different, spelled
from generator.records.parts import Idea, Part

ChainKey = spelled(rf"{ID}/{ID}#{ID}", "a chain of a record", "biome/temperate_grassland#few_trees", lambda text: text.replace(":", "#"))
ChartKey = spelled(
    rf"{ID}/{ID}#{ID}(?:\.{ID})*", "a chart of a record", "biome/temperate_grassland#climate_diagram.harrow_plain", lambda text: text.replace(":", "#")
)
Marks = Annotated[Whole, AfterValidator(Bounds(1, 10, "marks"))]


class Stimulus(Part):
    """Something to look at before answering: a text, or a chart of a record, drawn or as its table."""

    text: Text | None = None
    chart: ChartKey | None = None
    table: ChartKey | None = None


class FromChain(Part):
    """The ideas of a record's explanation."""

    chain: ChainKey = Field(alias="from")


class Slip(Part):
    """A known mistake: the expression gone wrong, over the same names."""

    expression: Text
    misconception: MisconceptionId
    how: Text
    """As it goes on after "You get this number by": `taking the half of the year that is colder`."""


class Calculation(Part):
    """A sum whose prompt, set-up, answer and accepted range come from one expression."""

    given: dict[Id, FactKey]
    """The facts that stand for the names of the expression."""
    expression: Text
    unit: UnitLabel = ""
    slips: Many[Slip] = ()


class Award(Part):
    """How marks are given: for each idea, for all together, for any so many of them; or for set-up and answer."""

    rule: Literal["each", "all", "any"] | None = None
    of: Marks | None = None
    """With `any`: how many ideas earn all marks."""
    setup: Marks | None = None
    answer: Marks | None = None


class SampleAnswer(Part):
    """An answer that students mark before they write; the page compares with the teacher's own marking."""

    text: Text
    earns: Annotated[Many[Id], different()] = ()
    """The ideas that it earns; `setup` and `answer` of a calculation."""
    comment: Text
    """Why it earns these and no others."""


class WrittenPart(Part):
    """One part of a question."""

    id: Id
    command_word: Id
    marks: Marks
    needs: Literal["data", "knowledge", "both"]
    prompt: Text
    focus: Text | None = None
    """What the answer must be about."""
    condition: Text | None = None
    """A limit that it must keep to."""
    ideas: Annotated[Many[Idea], different()] | FromChain = ()
    calculate: Calculation | None = None
    award: Award
    depends_on: Id | None = None
    """An earlier part whose result is carried on; a wrong one that is carried on rightly loses no mark again."""
    samples: Many[SampleAnswer] = ()
    see: RecordId | None = None
    """The record that teaches what the part needs, where its chain or its facts do not tell it."""
    cautions: Many[Text] = ()
    """What to mind where the part asks to plan or do something in the field or the laboratory."""


class WrittenQuestion(Part):
    """A whole file."""

    FOLDER: ClassVar[str] = "written"
    title: Text
    topic: Id
    shape: Literal["investigation", "data_and_decision", "calculation"] | None = None
    """Which of the usual shapes it has, where it has one."""
    see: RecordId | None = None
    """The record that teaches what its ideas need, where no part, chain or fact tells it."""
    stimulus: Some[Stimulus]
    parts: Annotated[Some[WrittenPart], different()]

    @property
    def marks(self) -> int:
        """Of all parts together."""
        return sum(part.marks for part in self.parts)

