"""Kind: the one protocol that every folder in `kinds/` fulfils, and what goes through it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Generic, TypeVar

from figures import Chart

from generator.quantities.fact import Fact, Facts, stated
from generator.quantities.units import unit
from generator.questions.misconception import Catalogue
from generator.questions.question import Made
from generator.records.fields import Use
from generator.records.finding import Finding
from generator.records.record import Record
from generator.records.tables import Imported, Table
from generator.science.method import Method

R = TypeVar("R", bound=Record)
NUMBERS = "numbers"
"""What the ids of facts begin with that a record states for its sentences; no part may be called so."""


@dataclass(frozen=True)
class PartOf:
    """A thing that facts are about: a station, a reservoir, a level."""

    label: str
    use: Use = "page"
    """Where its numbers may appear; `paper` never reaches the students' site."""


def in_sentence(label: str) -> str:
    """A label as it stands inside a sentence: `Living plants` loses its capital, `CO2 in the air` keeps them.

    >>> in_sentence("Living plants"), in_sentence("CO2 in the air")
    ('living plants', 'CO2 in the air')
    """
    first = label.partition(" ")[0]
    return label if first[1:] != first[1:].lower() or any(c.isdigit() for c in first) else label[:1].lower() + label[1:]


@dataclass(frozen=True, kw_only=True, eq=False)
class Subject(Generic[R]):
    """A checked record with everything computed from it; told apart by identity."""

    kind: str
    name: str
    """The record's file name without its ending."""
    record: R
    facts: Facts

    @property
    def id(self) -> str:
        """As other records name it: `biome/temperate_grassland`."""
        return f"{self.kind}/{self.name}"


@dataclass(frozen=True, kw_only=True)
class ComparisonRow:
    """One line of a comparison."""

    subject: str
    """Id of the record that the line links to."""
    label: str
    cells: tuple[Fact | str, ...]
    of: str = ""
    """A head under which it stands with the lines beside it that have the same."""


@dataclass(frozen=True, kw_only=True)
class Comparison:
    """The records of one kind side by side."""

    heads: tuple[str, ...]
    rows: tuple[ComparisonRow, ...]
    charts: tuple[Chart, ...] = ()

    def __post_init__(self) -> None:
        for row in self.rows:
            if len(row.cells) != len(self.heads):
                raise ValueError(f"{row.label}: expected {len(self.heads)} cells, found {len(row.cells)}")


@dataclass(frozen=True, kw_only=True, eq=False)
class Kind(Generic[R]):
    """What one kind of concept hands to the pipeline. All its functions are pure."""

    name: str
    """The folder's name, in `kinds/` and in the content."""
    title: str
    """Many of them, as a heading: "Biomes"."""
    record: type[R]
    """What a YAML file is checked against."""
    parts: Callable[[R], Mapping[str, PartOf]]
    """The things that facts are about, by the id that their facts begin with."""
    facts: Callable[[R], Facts]
    """Every number of the record. Must cope with anything that `record` lets through."""
    findings: Callable[[R], Iterable[Finding]]
    """Contradictions that make facts meaningless; with an error among them, facts are not computed."""
    doubts: Callable[[R, Facts], Iterable[Finding]]
    """Warnings (and errors) that need the facts."""
    charts: Callable[[Subject[R]], Sequence[Chart]]
    """Those of its page: nothing is drawn in them that another `use` keeps from it."""
    questions: Callable[[Subject[R], Catalogue], Sequence[Made]]
    compare: Callable[[Sequence[Subject[R]]], Comparison]
    methods: Mapping[str, Method]
    """The methods that its facts may name."""
    remarks: Callable[[Subject[R], str], Sequence[str]] = lambda subject, part: ()
    """Sentences that pages say beside the numbers of a part, with facts in braces: where methods fail or disagree."""
    practice_charts: Callable[[Subject[R]], Sequence[Chart]] = lambda subject: ()
    """Of the parts with `use: practice`: written questions show them, the record's page does not."""
    computes: bool = True
    """Whether its records have numbers of their own, and so parts, facts, charts, questions made from them, and a comparison."""
    folder: Path
    """Where `page.md.j2`, `compare.md.j2` and `new.yaml.j2` stand."""
    import_table: Callable[[Table], Imported] | None = None
    """What a table of numbers becomes in `new.yaml.j2`; none for a kind that has no place for a table."""

    def named_charts(self, subject: Subject[R]) -> dict[str, Chart]:
        """Its charts, those for practice too, by the names under which other files know them, `climate_diagram.harrow_plain`."""
        if subject.record.use == "paper":
            return {}
        return {chart.name.partition(".")[2]: chart for chart in (*self.charts(subject), *self.practice_charts(subject))}

    def subject(self, name: str, record: R) -> Subject[Any]:
        """The record with its facts: those of its kind, then the numbers that it states for its sentences."""
        facts = Facts([*self.facts(record).values(), *_stated_numbers(record)])
        return Subject(kind=self.name, name=name, record=record, facts=facts)


def _stated_numbers(record: Record) -> Iterator[Fact]:
    for number in record.numbers:
        yield stated(f"{NUMBERS}.{number.id}", number.name, number.value, unit(number.unit), sources=(number.source,))
