"""Replicates as facts: the mean with its standard error behind it, the spread with its table, and whether a difference is told apart."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from generator.kind import in_sentence
from generator.quantities import shown
from generator.quantities.fact import Fact, computed
from generator.quantities.units import Unit, unit
from generator.quantities.working import Rule, RulePath, ValueTable
from generator.records.numeral import WrittenFloat
from generator.science import replicates
from generator.science.method import Method

ONE_READING = "not defined: one reading has no spread"


@dataclass(frozen=True)
class Sample:
    """What follows from the readings of one sort of bottle, or from the quadrats of one harvest."""

    mean: Fact
    spread: Fact
    """Sample standard deviation."""
    error: Fact
    """Standard error of the mean."""

    @property
    def facts(self) -> Iterator[Fact]:
        """Mean, spread and error."""
        return iter((self.mean, self.spread, self.error))


def sample(ids: tuple[str, str, str], title: str, readings: Sequence[float], of: Unit, figures: int) -> Sample:
    """The replicates under the ids of mean, spread and error; `title` says what was read, as "Oxygen in the light bottles"."""
    named = in_sentence(title)
    series = Fact(id=f"{ids[0]}_readings", name="readings", value=tuple(map(float, readings)), unit=of, written=" ".join(map(_text, readings)))
    mean = computed(ids[0], f"{title}, mean", replicates.REPLICATE_MEAN.expression, {"readings": series}, of, method="replicate_mean")
    mean = replace(mean, figures=max(figures, shown.whole_digits(mean.number) + max(map(shown.decimals, map(_text, readings))) + 1))
    spread = _spread(ids[1], f"Standard deviation of {named}", readings, of, figures)
    count = Fact(id="replicates", name="Replicates", value=float(len(readings)), unit=unit(""), written=str(len(readings)))
    given = {"sample_standard_deviation": spread, "replicates": count}
    error = made(ids[2], f"Standard error of the mean {named}", replicates.STANDARD_ERROR, given, of, figures)
    return Sample(within(mean, error), spread, error)


def _spread(fact_id: str, title: str, readings: Sequence[float], of: Unit, figures: int) -> Fact:
    value = replicates.sample_standard_deviation(readings)
    method = replicates.SAMPLE_STANDARD_DEVIATION.id
    if value is None:
        return Fact(id=fact_id, name=title, value=None, unit=of, method=method, undefined_because=ONE_READING)
    deviations = replicates.deviations(readings)
    squares = [deviation**2 for deviation in deviations]
    columns = (
        tuple(str(n) for n in range(1, len(readings) + 1)), tuple(shown.written(_text(reading)) for reading in readings),
        shown.series(deviations, figures), shown.series(squares, figures),
    )  # fmt: skip
    total = shown.number(sum(squares), figures)
    working = ValueTable(
        ("Replicate", f"Reading ({of.shown})", "Less the mean", "Squared"), tuple(zip(*columns, strict=True)),
        f"the squares add up to {total}; divide by {len(readings)} {shown.MINUS} 1, and take the root",
    )  # fmt: skip
    return Fact(id=fact_id, name=title, value=value, unit=of, working=working, method=method, figures=figures)


def _text(reading: float) -> str:
    return reading.text if isinstance(reading, WrittenFloat) else repr(reading).removesuffix(".0")


def made(fact_id: str, title: str, method: Method, given: Mapping[str, Fact], of: Unit, figures: int) -> Fact:
    """The fact that a method of one formula line makes of others."""
    return computed(fact_id, title, method.expression, given, of, method=method.id, figures=figures)


def within(fact: Fact, error: Fact) -> Fact:
    """The fact with its standard error shown behind it, where both are known."""
    return replace(fact, plus_minus=error.number) if fact.is_number and error.is_number else fact


def told_apart(fact_id: str, title: str, difference: Fact, error: Fact) -> Fact:
    """Whether a difference is larger than twice its standard error."""
    method = replicates.TOLD_APART.id
    if not difference.is_number or not error.is_number:
        because = difference.undefined_because or error.undefined_because
        return Fact(id=fact_id, name=title, value=None, method=method, undefined_because=because)
    verdict = replicates.told_apart(difference.number, error.number)
    size = difference.shown_exactly.removeprefix(shown.MINUS)
    numbers = f"{size} > {replicates.TIMES_THE_ERROR:g} × {error.shown_exactly}"
    rule = Rule("Is the difference more than twice its standard error?", numbers, bool(verdict))
    return Fact(id=fact_id, name=title, value=verdict, working=RulePath((rule,)), method=method)
