"""What a file in `written/` says: a stimulus, parts with a command word and marks, ideas that earn them, sample answers."""

from __future__ import annotations

from typing import Annotated, Any, ClassVar, Literal

from pydantic import AfterValidator, BeforeValidator, Field

from generator.records.asked import FactKey
from generator.records.fields import ID, Bounds, Id, Many, MisconceptionId, Number, RecordId, Some, Text, UnitLabel, Whole, different, spelled
from generator.records.parts import AcceptedWarnings, Idea, Part

ChainKey = spelled(rf"{ID}/{ID}#{ID}", "a chain of a record", "biome/temperate_grassland#few_trees", lambda text: text.replace(":", "#"))
ChartKey = spelled(
    rf"{ID}/{ID}#{ID}(?:\.{ID})*", "a chart of a record", "biome/temperate_grassland#climate_diagram.harrow_plain", lambda text: text.replace(":", "#")
)
_EARLIER = "part:"
GivenKey = spelled(
    rf"{_EARLIER}{ID}|(?:{ID}/{ID}:)?{ID}(?:\.{ID})*", "a fact of a record, or the result of an earlier part",
    "pyramid/sill_lake:pike.production or part:a", lambda text: text.strip("{} "),
)  # fmt: skip
"""What stands for a name of an expression; `part:a` is what part a gives, unrounded."""


def part_named(key: str) -> str:
    """The earlier part in a key such as `part:a`; empty for the key of a fact."""
    return key.removeprefix(_EARLIER) if key.startswith(_EARLIER) else ""


def _one_or_many(value: Any) -> Any:
    return [value] if isinstance(value, str) else value


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


class NamedNumber(Part):
    """A number that texts need and that no record has as a fact."""

    given: dict[Id, GivenKey]
    """The facts, and the results of earlier parts, that stand for the names of the expression."""
    expression: Text
    unit: UnitLabel = ""
    figures: Annotated[Whole, AfterValidator(Bounds(1, 6, mend="three is usual"))] | None = None
    """Significant figures, where they are not the usual three; of a calculation, where its prompt asks for a number of them."""


class Calculation(NamedNumber):
    """A sum whose set-up, answer and accepted range come from one expression."""

    slips: Many[Slip] = ()

    @property
    def carries_on(self) -> tuple[str, ...]:
        """The earlier parts whose results it uses."""
        return tuple(part for key in self.given.values() if (part := part_named(key)))


class Reading(Part):
    """A value to read off a scale; half the distance of its marks either way is accepted."""

    fact: FactKey
    gridline: Annotated[Number, AfterValidator(Bounds(0, above=True))]
    """From one mark of the scale to the next, in the unit of the fact."""


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
    read: Reading | None = None
    award: Award
    minutes: Annotated[Number, AfterValidator(Bounds(0, 120, "minutes", above=True))] | None = None
    """Where it takes more or less time than its marks tell."""
    depends_on: Annotated[Many[Id], BeforeValidator(_one_or_many), different()] = ()
    """Earlier parts whose answers are carried on, one id or several; a calculation says so under `given:`."""
    samples: Many[SampleAnswer] = ()
    see: RecordId | None = None
    """The record that teaches what the part needs, where its chain or its facts do not tell it."""
    cautions: Many[Text] = ()
    """What to mind where the part asks to plan or do something in the field or the laboratory."""

    @property
    def carries_on(self) -> tuple[str, ...]:
        """The earlier parts that it rests on."""
        return tuple(dict.fromkeys((*self.depends_on, *(self.calculate.carries_on if self.calculate else ()))))


class WrittenQuestion(Part):
    """A whole file."""

    FOLDER: ClassVar[str] = "written"
    title: Text
    topic: Id
    shape: Literal["investigation", "data_and_decision", "calculation"] | None = None
    """Which of the usual shapes it has, where it has one."""
    see: RecordId | None = None
    """The record that teaches what its ideas need, where no part, chain or fact tells it."""
    numbers: dict[Id, NamedNumber] = {}
    """Numbers that its ideas and samples name between braces, each worked out from facts."""
    stimulus: Some[Stimulus]
    parts: Annotated[Some[WrittenPart], different()]
    accepted_warnings: AcceptedWarnings = ()

    @property
    def marks(self) -> int:
        """Of all parts together."""
        return sum(part.marks for part in self.parts)

