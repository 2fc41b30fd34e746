"""The two item types so far: choice and number. Each carries feedback for every answer and a worked solution."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from generator.quantities.fact import Fact


class Needs(StrEnum):
    """What an answer rests on."""

    DATA = "data"
    KNOWLEDGE = "knowledge"
    BOTH = "both"


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


@dataclass(frozen=True, kw_only=True)
class Option:
    """One option of a choice."""

    text: str
    feedback: str
    right: bool = False
    misconception: str = ""
    """Id of the wrong idea that leads here; empty for the right option."""


@dataclass(frozen=True, kw_only=True)
class Choice(Question):
    """Pick the one right option."""

    options: tuple[Option, ...]

    def __post_init__(self) -> None:
        if sum(option.right for option in self.options) != 1:
            raise ValueError(f"{self.id}: expected one right option, found {sum(o.right for o in self.options)}")
        if len({option.text.casefold() for option in self.options}) != len(self.options):
            raise ValueError(f"{self.id}: two options say the same")
        if nameless := [o.text for o in self.options if not o.right and not o.misconception]:
            raise ValueError(f"{self.id}: no misconception is named for {nameless[0]!r}")


@dataclass(frozen=True)
class Interval:
    """Numbers from `low` to `high`, both counted."""

    low: float
    high: float

    def meets(self, other: Interval) -> bool:
        """Whether some number lies in both."""
        return self.low <= other.high and other.low <= self.high


@dataclass(frozen=True, kw_only=True)
class Slip:
    """A wrong number that a known mistake gives, and what to say to it."""

    accepted: Interval
    shown: str
    feedback: str
    misconception: str


@dataclass(frozen=True, kw_only=True)
class NumberEntry(Question):
    """Type a number; its unit stands beside the box."""

    unit: str
    """As shown; empty for a bare number."""
    answer: str
    """The right answer as shown, with its unit."""
    accepted: Interval
    right_feedback: str
    slips: tuple[Slip, ...]
    otherwise: str
    """What to say to a wrong number that no known mistake explains: the next step, not the answer."""


@dataclass(frozen=True)
class Rejected:
    """A question that could not be made fairly from these numbers, and why; the build tells the author."""

    id: str
    because: str


Made = Choice | NumberEntry | Rejected
