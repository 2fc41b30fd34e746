"""What marking guides are made of: facts and chains of records, the catalogue of mistakes, and how a school marks."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from figures import DataTable

from generator.quantities.fact import Fact
from generator.quantities.text import filled
from generator.questions.misconception import Catalogue
from generator.records.parts import Idea

NO_WORDS: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True)
class Rewritten:
    """What follows from a record whose file states other numbers."""

    facts: Mapping[str, Fact]
    """By id."""
    table: Callable[[str], DataTable]
    """The numbers of one of its charts, by the chart's name."""
    is_sound: Callable[[], bool]
    """Whether nothing is doubtful in it that was not before; a draw is asked last, for it takes time."""


class Unchangeable(Exception):
    """A record's file cannot state another number there; carries why, as it goes on after the number's name."""


@dataclass(frozen=True)
class Materials:
    """What a guide is made of."""

    facts: Mapping[str, Fact]
    """By key: `biome/savanna:teva_crossing.annual_precip`."""
    catalogue: Catalogue
    chain: Callable[[str], tuple[Idea, ...]]
    """The ideas of a record's explanation, by its key, with the record's facts put in."""
    rewritten: Callable[[str, Mapping[str, Fact | None]], Rewritten | None]
    """A record by its id, with other numbers for some stated facts by theirs, or without them; None where they contradict each other.
    Raises `Unchangeable`."""
    follow_through: bool = True
    """Whether a wrong result that is carried on rightly loses no mark again."""
    unit_needed: bool = True
    """Whether an answer without its unit loses its mark."""
    minutes_per_mark: float = 2.0

    def filled(self, text: str, words: Mapping[str, str] = NO_WORDS) -> str:
        """The text with facts put in, and what calculations of the question give, by the names of `words`."""
        for name, found in words.items():
            text = text.replace(f"{{{name}}}", found)
        return filled(text, self.facts)
