"""The item types: choice of one or several, number, order, match, chart-reading. Each carries feedback for every answer and a worked solution."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from generator.quantities.expression import Expression
from generator.quantities.fact import Fact


class Needs(StrEnum):
    """What an answer rests on."""

    DATA = "data"
    KNOWLEDGE = "knowledge"
    BOTH = "both"
    MAP = "map"
    """A map of another page, which the prompt names, and else what the prompt tells."""


@dataclass(frozen=True, kw_only=True)
class Question:
    """Base of all item types."""

    id: str
    """Unique within its record; never changes once published, for saved answers hang on it."""
    prompt: str
    needs: Needs
    solution: str
    """Why the answer is what it is, in a sentence or two; the fact's own working stands below it."""
    fact: Fact | None = None
    """The fact that the answer is, whose working the solution shows."""
    hints: tuple[str, ...] = ()
    """From a nudge to nearly all of the way; each opens after the one before. None of them is the answer."""
    supposed: bool = False
    """Whether its numbers are others than the record's, and all of them in the prompt."""


@dataclass(frozen=True)
class Mistake:
    """One way to go wrong."""

    misconception: str
    expression: str
    """The expression gone wrong, over the names of the right one (and others that the caller gives)."""
    how: str
    """What was done, to follow "You get this number by ...": "dividing the outflow by the stock"."""
    instead: str = ""
    """What to say in place of the misconception's correction, where that would not fit this number."""

    @property
    def names(self) -> tuple[str, ...]:
        """What must be given to work it out."""
        return Expression(self.expression).names


@dataclass(frozen=True)
class Interval:
    """Numbers from `low` to `high`, both counted."""

    low: float
    high: float

    def meets(self, other: Interval) -> bool:
        """Whether some number lies in both."""
        return self.low <= other.high and other.low <= self.high


@dataclass(frozen=True, kw_only=True)
class Reckoned(Question):
    """A question whose answer may be a number that is worked out, with what is needed to set the sum again with other numbers."""

    given: Mapping[str, Fact] = field(default_factory=dict, compare=False)
    """What the mistakes are worked out from, by the names in them."""
    mistakes: tuple[Mistake, ...] = ()
    kept: tuple[str, ...] = ()
    """Ids of inputs that stay as they are when the sum is set again, such as the trophic level of a producer."""
    parts: tuple[str, ...] = ()
    """Ids of inputs that make one together, such as the shares of a diet, and still do when the sum is set again."""
    likely: Interval | None = None
    """Where a drawn result must lie, in the unit of the answer, for nature to know it; None where being near the record's own is enough."""


@dataclass(frozen=True, kw_only=True)
class Option:
    """One option of a choice."""

    text: str
    feedback: str
    right: bool = False
    misconception: str = ""
    """Id of the wrong idea that leads here; empty for the right option."""
    refutation: str = ""
    """What is said before `feedback` to a reader who was sure of a wrong option: the idea quoted, and denied."""


@dataclass(frozen=True, kw_only=True)
class Choice(Reckoned):
    """Pick the one right option."""

    options: tuple[Option, ...]

    def __post_init__(self) -> None:
        if sum(option.right for option in self.options) != 1:
            raise ValueError(f"{self.id}: expected one right option, found {sum(o.right for o in self.options)}")
        _require_fair(self.id, self.options)


@dataclass(frozen=True, kw_only=True)
class SeveralChoice(Question):
    """Pick all the right options; their number is told, so that nobody has to guess what "all" means."""

    options: tuple[Option, ...]

    def __post_init__(self) -> None:
        if not 2 <= sum(option.right for option in self.options) < len(self.options):
            raise ValueError(f"{self.id}: expected two right options or more, and a wrong one")
        _require_fair(self.id, self.options)


def _require_fair(item: str, options: tuple[Option, ...]) -> None:
    if len({option.text.casefold() for option in options}) != len(options):
        raise ValueError(f"{item}: two options say the same")
    if nameless := [o.text for o in options if not o.right and not o.misconception]:
        raise ValueError(f"{item}: no misconception is named for {nameless[0]!r}")


@dataclass(frozen=True, kw_only=True)
class Slip:
    """A wrong number that a known mistake gives, and what to say to it."""

    accepted: Interval
    shown: str
    feedback: str
    misconception: str
    refutation: str = ""
    """As of an `Option`."""


@dataclass(frozen=True, kw_only=True)
class NumberEntry(Reckoned):
    """Type a number; its unit stands beside the box, unless to know the unit is part of the answer."""

    unit: str
    """As shown; empty for a bare number."""
    asks_unit: bool = False
    """Whether the unit is left for the reader to write."""
    answer: str
    """The right answer as shown, with its unit."""
    accepted: Interval
    right_feedback: str
    slips: tuple[Slip, ...]
    otherwise: str
    """What to say to a wrong number that no known mistake explains: the next step, not the answer."""


@dataclass(frozen=True)
class Step:
    """One step of an order, and why what follows it does."""

    text: str
    leads_on: str
    """What to say where something else than the next step was put behind this one; of the last step, nothing."""


@dataclass(frozen=True, kw_only=True)
class Ordering(Question):
    """Put steps in the only order in which they can happen."""

    steps: tuple[Step, ...]
    """In the right order."""
    start: tuple[int, ...]
    """The order in which they are first shown, as places in `steps`."""
    starts_with: str
    """What to say where another step than the first was put first."""

    def __post_init__(self) -> None:
        if sorted(self.start) != list(range(len(self.steps))) or list(self.start) == sorted(self.start):
            raise ValueError(f"{self.id}: expected the steps in another order than the right one, found {self.start}")
        if len({step.text.casefold() for step in self.steps}) != len(self.steps):
            raise ValueError(f"{self.id}: two steps say the same")


@dataclass(frozen=True)
class Pair:
    """Two things that belong together, and why."""

    text: str
    partner: str
    because: str
    """What to say where another partner was picked."""


@dataclass(frozen=True, kw_only=True)
class Matching(Question):
    """Find the partner of each thing; each partner fits once."""

    pairs: tuple[Pair, ...]
    partners: tuple[str, ...]
    """All partners as they are listed, with some that fit nothing, so that the last one is no gift."""

    def __post_init__(self) -> None:
        for said in ([pair.text for pair in self.pairs], list(self.partners)):
            if len({text.casefold() for text in said}) != len(said):
                raise ValueError(f"{self.id}: two of its texts say the same")
        if missing := [pair.partner for pair in self.pairs if pair.partner not in self.partners]:
            raise ValueError(f"{self.id}: {missing[0]!r} is not listed")


@dataclass(frozen=True)
class LabelSlip:
    """Wrong labels that a known slip of reading leads to, and what to say to them."""

    labels: tuple[str, ...]
    feedback: str
    misconception: str
    refutation: str = ""
    """As of an `Option`."""


@dataclass(frozen=True, kw_only=True)
class ChartReading(Question):
    """Read the answer off a chart or its table, and pick it by its label: a month, a reservoir, a level."""

    labels: tuple[str, ...]
    """Everything that can be picked, in the order of the chart."""
    right: tuple[str, ...]
    """More than one where the data are tied; each is right alone."""
    slips: tuple[LabelSlip, ...]
    otherwise: str
    """What to say to any other label."""

    def __post_init__(self) -> None:
        if not self.right or not {*self.right, *(label for slip in self.slips for label in slip.labels)} <= {*self.labels}:
            raise ValueError(f"{self.id}: expected right and wrong labels among {self.labels}")
        if len({*self.labels}) != len(self.labels):
            raise ValueError(f"{self.id}: two labels are the same")
        wrong = [label for slip in self.slips for label in slip.labels]
        if len({*wrong}) != len(wrong) or {*wrong} & {*self.right}:
            raise ValueError(f"{self.id}: a label has two verdicts")


@dataclass(frozen=True)
class Rejected:
    """A question that could not be made fairly from these numbers, and why; the build tells the author."""

    id: str
    because: str


Made = Choice | SeveralChoice | NumberEntry | Ordering | Matching | ChartReading | Rejected
