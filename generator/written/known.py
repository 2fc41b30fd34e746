"""What a written question may name, and what is said where it names something else."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field

from generator.diagnostics import did_you_mean, few_of, listed
from generator.quantities.fact import Fact
from generator.records.field_path import FieldPath
from generator.records.finding import Finding


@dataclass(frozen=True)
class Known:
    """What a written question may name."""

    command_words: Collection[str]
    topics: Collection[str]
    misconceptions: Collection[str]
    records: Collection[str]
    charts: Mapping[str, Collection[str]]
    """The names of the charts of each record."""
    chains: Mapping[str, Collection[str]]
    """The explanations of each record."""
    facts: Mapping[str, Fact]
    kept: Collection[str]
    """Keys of facts that are kept for class tests."""
    usual_marks: Mapping[str, tuple[int, int]] = field(default_factory=dict)
    """Fewest and most marks that a part with this command word usually has."""


def unknown(path: FieldPath, expected: str, found: str, known: Collection[str]) -> Finding:
    """A name that leads nowhere."""
    return Finding(path=path, expected=expected, found=f'"{found}"', mend=did_you_mean(found, known, few_of(found, known, "names")))


def unknown_in(key: str, path: FieldPath, what: str, names: Mapping[str, Collection[str]], known: Known) -> Iterator[Finding]:
    """What is wrong with a name in a record, such as that of a chart: `biome/savanna#climate_diagram.teva_crossing`."""
    record, _, name = key.partition("#")
    if record not in known.records:
        yield unknown(path, "a record", record, known.records)
    elif record in names and name not in names[record]:
        there = names[record]
        mend = did_you_mean(name, there, f"it has {listed(there, 'and')}" if there else "it has none")
        yield Finding(path=path, expected=f"{what} of {record}", found=f'"{name}"', mend=mend)


def wrong_fact(path: FieldPath, key: str, known: Known, fragment: str) -> Iterator[Finding]:
    """What is wrong with the key of a fact; each is named with its record, for a written question has none of its own."""
    record, colon, name = key.partition(":")
    if not colon:
        mend = "name its record too, as in biome/savanna:teva_crossing.annual_precip"
        yield Finding(path=path, expected="a fact of a record", found=f'"{key}"', mend=mend, fragment=fragment)
    elif record not in known.records:
        mend = did_you_mean(record, known.records, few_of(record, known.records, "records"))
        yield Finding(path=path, expected="a record", found=f'"{record}"', mend=mend, fragment=fragment)
    elif key in known.kept:
        mend = "name another place: this one is kept for class tests by `use: paper`"
        yield Finding(path=path, expected="a fact that students may see", found=f'"{key}"', mend=mend, fragment=fragment)
    elif key not in known.facts:
        own = [one.partition(":")[2] for one in known.facts if one.startswith(f"{record}:")]
        mend = did_you_mean(name, own, f"its facts are listed by: studyguide facts {record}")
        yield Finding(path=path, expected=f"a fact of {record}", found=f'"{name}"', mend=mend, fragment=fragment)
