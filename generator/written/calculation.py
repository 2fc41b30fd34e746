"""Sums of written questions: set-up, answer, accepted range and known slips from one expression over facts and earlier results."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.quantities.working import Substitution
from generator.questions.making import Draft, number_entry
from generator.questions.mistake import accepted, as_shown, shown_like, tolerance, wrong_values
from generator.questions.question import Interval, Mistake, Needs, NumberEntry
from generator.written.materials import Materials
from generator.written.record import Calculation, NamedNumber, Reading, WrittenPart, part_named

Results = Mapping[str, Fact]
"""What earlier parts give, by their ids; unrounded."""
OWN_WORDS = ("answer", "setup", "tenth", "ten_times")
"""What texts of a part may name between braces besides its slips: a tenth and ten times the answer are what a lost decimal point gives."""


@dataclass(frozen=True)
class Worked:
    """A calculation: its set-up with the numbers in it, and what counts as its answer."""

    setup: str
    """Empty where a value is only read off."""
    entry: NumberEntry
    """Knows the answer, the accepted range and the known slips, and can be set again with other numbers."""
    words: Mapping[str, str] = field(default_factory=dict, compare=False)
    """What texts of the part name between braces: `answer`, `setup`, `slip.1`, `slip.1.setup`."""

    @property
    def result(self) -> Fact:
        """The answer as later parts carry it on: unrounded."""
        assert self.entry.fact is not None
        return self.entry.fact

    @property
    def range_shown(self) -> str:
        """The accepted range in words: `72.5 to 75.5 %`, or the one value where the sum comes out exactly."""
        figures = max(self.result.figures, shown.FIGURES)
        low, high = (shown.number(end, figures) for end in (self.entry.accepted.low, self.entry.accepted.high))
        ends = f"{low} to {high}"
        return self.entry.answer if low == high else self.result.unit.after(ends) if self.result.unit else ends

    @property
    def is_exact(self) -> bool:
        """Whether only one value counts."""
        return self.range_shown == self.entry.answer

    def counts(self, number: float) -> bool:
        """Whether a number, in the unit of the answer, lies in the accepted range."""
        near = 1e-9 * abs(number)
        return self.entry.accepted.low - near <= number <= self.entry.accepted.high + near


def own_words(part: WrittenPart) -> tuple[str, ...]:
    """What samples of the part may name between braces, besides facts."""
    slips = [name for place, _ in enumerate(part.calculate.slips if part.calculate else (), start=1) for name in (f"slip.{place}", f"slip.{place}.setup")]
    return (*OWN_WORDS, *slips) if part.calculate else tuple(word for word in OWN_WORDS if word != "setup") if part.read else ()


def work_out(part: WrittenPart, calculation: Calculation, materials: Materials, results: Results) -> Worked:
    """The calculation with the facts and the earlier results that it names.

    Raises
    ------
    ExpressionError
        If a name has no fact, or units do not fit.
    UnitError
        If the unit is not known.
    ValueError
        If there is no answer, such as a share of nothing.
    """
    fact = _computed(part.id, calculation, materials, results)
    given = _given(calculation, materials, results)
    mistakes = [Mistake(slip.misconception, slip.expression, slip.how) for slip in calculation.slips]
    within = _range(fact, given) if fact.is_number else None
    entry = number_entry(_draft(part), fact, given, mistakes, materials.catalogue, otherwise="", asks_unit=True, within=within)
    if not isinstance(entry, NumberEntry):
        raise ValueError(entry.because)
    assert isinstance(fact.worked, Substitution)
    setup = fact.worked.set_up
    return Worked(setup, entry, {**_words(fact), "setup": setup, **_slip_words(entry, given, mistakes)})


def named_number(name: str, number: NamedNumber, materials: Materials) -> Fact:
    """A number of the question's own, from facts alone; it raises what `work_out` does."""
    fact = _computed(name, number, materials, {})
    if not fact.is_number:
        raise ValueError(fact.shown)
    return fact


def _computed(name: str, number: NamedNumber, materials: Materials, results: Results) -> Fact:
    given = _given(number, materials, results)
    made = computed(name, f"Result of part {name}", Expression(number.expression), given, unit(number.unit), figures=number.figures or shown.FIGURES)
    return replace(made, asked_figures=number.figures is not None)


def _given(number: NamedNumber, materials: Materials, results: Results) -> dict[str, Fact]:
    return {symbol: results[earlier] if (earlier := part_named(key)) else materials.facts[key] for symbol, key in number.given.items()}


def read_off(part: WrittenPart, reading: Reading, materials: Materials) -> Worked:
    """A value read off a scale: right within half the distance of the scale's marks, with its unit.

    Raises
    ------
    TypeError
        If the fact is no single known number.
    """
    fact = materials.facts[reading.fact]
    half = reading.gridline / 2
    within = Interval(fact.number - half, fact.number + half)
    entry = number_entry(_draft(part), fact, {}, (), materials.catalogue, otherwise="", asks_unit=True, within=within)
    if not isinstance(entry, NumberEntry):
        raise ValueError(entry.because)
    return Worked("", entry, _words(fact))


def _draft(part: WrittenPart) -> Draft:
    """With the prompt as it was written; the guide puts facts in, when all that texts name is known to be there."""
    return Draft(id=part.id, prompt=part.prompt, solution="", needs=Needs(part.needs))


def _range(right: Fact, given: Mapping[str, Fact]) -> Interval:
    """The numbers that count: near the exact value, and near what the numbers give as they are printed, rounded."""
    assert isinstance(right.working, Substitution) and right.unit is not None
    printed = computed(right.id, right.name, right.working.expression, {name: as_shown(fact) for name, fact in given.items()}, right.unit)
    ranges = [accepted(value.number, right.figures, tolerance(right)) for value in (right, printed) if value.is_number]
    return Interval(min(one.low for one in ranges), max(one.high for one in ranges))


def _words(fact: Fact) -> dict[str, str]:
    """The answer, and what a decimal point at the wrong place makes of it."""
    return {"answer": fact.shown_exactly, "tenth": shown_like(fact, fact.number / 10), "ten_times": shown_like(fact, fact.number * 10)}


def _slip_words(entry: NumberEntry, given: Mapping[str, Fact], mistakes: Iterable[Mistake]) -> dict[str, str]:
    """The number of each slip that can be told from the answer, by its place in the record, and the set-up that leads to it."""
    places = {mistake: place for place, mistake in enumerate(mistakes, start=1)}
    assert entry.fact is not None
    told_apart = wrong_values(entry.fact, given, places)
    words: dict[str, str] = {}
    for wrong, slip in zip(told_apart, entry.slips, strict=True):
        expression = Expression(wrong.mistake.expression)
        place = places[wrong.mistake]
        words[f"slip.{place}"] = slip.shown
        words[f"slip.{place}.setup"] = Substitution(expression, tuple((name, given[name]) for name in expression.names)).set_up
    return words
