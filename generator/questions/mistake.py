"""Mistakes as models: a wrong answer is the right expression gone wrong in a named way, worked out from the same facts."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from generator.quantities import shown
from generator.quantities.expression import Expression, ExpressionError
from generator.quantities.fact import Fact, as_shown, computed
from generator.quantities.last_digits import MOST_WHOLE_DIGITS, is_even, place
from generator.quantities.units import UnitError, is_reading, number_in
from generator.quantities.working import Substitution
from generator.questions.misconception import Catalogue, Misconception
from generator.questions.question import Interval, Mistake, Option, Slip

__all__ = ["EXACT", "ROUNDED", "Mistake", "Within", "WrongValue", "accepted", "apart", "as_shown", "comes_out", "done_over", "got_by", "of_rounding", "options", "shown_like", "slips", "told_apart", "tolerance", "wrong_values"]

TOLERANCE = 0.02
"""Relative distance from the exact value that still counts as right: covers rounding each step to three figures."""
APART = 0.05
"""Relative distance that two answers must keep from each other, or feedback could not tell them apart."""
DEGREES, DEGREES_OF_A_MEAN = 0.1, 0.05
"""The same of a temperature on a scale with a zero of its own, in its degrees: rounded steps, and the one step of a mean.

A part of the reading would say nothing there: 2 % of 26 °C is half a degree, of 0 °C nothing, and of 299 K six degrees.
"""


@dataclass(frozen=True)
class Within:
    """How far from the exact value a number may lie: by a part of it, or by so much; and down to which power of ten it is shown."""

    share: float = TOLERANCE
    much: float = 0.0
    place: int | None = None
    """None where significant figures set it."""

    @property
    def is_exact(self) -> bool:
        return not (self.share or self.much)

    def around(self, value: float) -> float:
        return abs(value) * self.share + self.much


EXACT, ROUNDED = Within(share=0.0), Within()


@dataclass(frozen=True)
class WrongValue:
    """The value that a mistake gives, in the unit of the right answer."""

    value: float
    mistake: Mistake


def wrong_values(right: Fact, given: Mapping[str, Fact], mistakes: Iterable[Mistake]) -> tuple[WrongValue, ...]:
    """What each mistake gives; one that cannot be worked out, or meets the key or an earlier one, is left out."""
    kept: list[WrongValue] = []
    for mistake in mistakes:
        value = _value(right, given, mistake)
        if value is not None and all(told_apart(value, other, right.figures, tolerance(right)) for other in (right.number, *(k.value for k in kept))):
            kept.append(WrongValue(value, mistake))
    return tuple(kept)


def apart(a: float, b: float) -> bool:
    """Whether two answers differ by more than tolerance and rounding can explain."""
    return abs(a - b) > max(2 * TOLERANCE, APART) * max(abs(a), abs(b))


def told_apart(a: float, b: float, figures: int, within: Within = ROUNDED) -> bool:
    """Whether the answers are apart, and still so when they are shown: with one figure, 1.2 and 1.4 are both 1.

    Temperatures are apart where they are not accepted for each other, however small they are.
    """
    within = within if within.much else replace(ROUNDED, place=within.place)
    return (bool(within.much) or apart(a, b)) and not accepted(a, figures, within).meets(accepted(b, figures, within))


def tolerance(right: Fact) -> Within:
    """None for sums and differences of stated numbers, which come out exactly; so much of a temperature; otherwise that of rounded steps."""
    expression = right.working.expression if isinstance(right.working, Substitution) else None
    if expression is not None and expression.is_sum:
        return replace(EXACT, place=place(right))
    if right.unit is not None and is_reading(right.unit.quantity(0.0)):
        return Within(share=0.0, much=DEGREES_OF_A_MEAN if expression is not None and expression.is_mean else DEGREES)
    return ROUNDED


def accepted(value: float, figures: int = shown.FIGURES, within: Within = ROUNDED) -> Interval:
    """The numbers that count as this value: within the tolerance, and in any case the value as shown."""
    near = within.around(value)
    texts = [shown.number(value, figures), *([shown.to_place(value, within.place)] if within.place is not None else [])]
    ends = (value - near, value + near, *map(shown.read, texts))
    return Interval(min(ends), max(ends))


def comes_out(right: Fact) -> bool:
    """Whether the numbers as they are shown give the right answer, so that nobody who calculates with them is told to be wrong.

    What is no sum of numbers comes out in any case: nobody can do it over.
    """
    again = done_over(right)
    if again is None:
        return True
    within = accepted(right.number, right.figures, tolerance(right))
    return again.is_number and within.meets(Interval(again.number, again.number))


def done_over(right: Fact) -> Fact | None:
    """The same result from the numbers as they are shown; None of what is no sum of numbers."""
    working = right.working
    if not isinstance(working, Substitution) or not right.is_number or right.unit is None:
        return None
    given = {name: as_shown(fact) for name, fact in working.given if isinstance(fact, Fact)}
    again = computed(right.id, right.name, working.expression, given, right.unit, figures=right.figures, bare=working.bare)
    return replace(again, asked_figures=right.asked_figures)


def of_rounding(right: Fact) -> str:
    """What to say where the numbers as they are shown give another last digit; empty where they do not."""
    again = done_over(right)
    if again is None or not again.is_number or again.shown_number == right.shown_number:
        return ""
    return f" With the numbers as shown it comes to {again.shown_exactly}, which is right too: here nothing was rounded before the end."


def slips(right: Fact, given: Mapping[str, Fact], mistakes: Iterable[Mistake], catalogue: Catalogue) -> tuple[Slip, ...]:
    """What a number box must recognise besides the right answer."""
    return tuple(
        Slip(
            accepted=accepted(wrong.value, right.figures, tolerance(right)),
            shown=shown_like(_in_whole_digits(right, wrong), _as_printed(right, given, wrong)),
            **got_by(wrong.mistake.how, catalogue[wrong.mistake.misconception], wrong.mistake.instead),
        )
        for wrong in wrong_values(right, given, mistakes)
    )


def options(right: Fact, given: Mapping[str, Fact], mistakes: Iterable[Mistake], catalogue: Catalogue, why: str) -> tuple[Option, ...]:
    """The right value and the wrong ones as options in rising order; `why` is the feedback to the right one."""
    found = [(right.number, Option(text=right.shown_exactly, feedback=why, right=True))]
    found += [
        (w.value, Option(text=shown_like(_in_whole_digits(right, w), w.value), **got_by(w.mistake.how, catalogue[w.mistake.misconception], w.mistake.instead)))
        for w in wrong_values(right, given, mistakes)
    ]
    return tuple(option for _, option in sorted(found, key=lambda pair: pair[0]))


def got_by(how: str, slip: Misconception, instead: str = "") -> dict[str, str]:
    """What is said to a wrong number, as `Misconception.answers`: how one gets it, never what the reader must have thought."""
    return slip.answers(f"You get this number by {how}.", instead)


def _in_whole_digits(right: Fact, wrong: WrongValue) -> Fact:
    """The right answer as the pattern of a wrong one; where that is a bare sum, as 1581 less 566, it keeps the digits that readers get."""
    if not Expression(wrong.mistake.expression).is_sum:
        return right
    return replace(right, figures=max(right.figures, min(shown.whole_digits(wrong.value), MOST_WHOLE_DIGITS)))


def shown_like(right: Fact, value: float) -> str:
    """Spelled as the right answer is: of a sum to the same place, otherwise with as many figures, and no more zeros behind the decimal point.

    A slip of a sum that needs no rounding keeps its digits: 32.7, where a decimal point was lost of 327.
    """
    within, places = tolerance(right), shown.decimals(right.shown_number)
    figures = max(right.figures, min(shown.whole_digits(value) + places, MOST_WHOLE_DIGITS)) if within.is_exact else right.figures
    is_all = shown.is_all(value, figures)
    if within.place is not None:
        return _with_unit(right, shown.to_place(value, min(within.place, shown.place_of(value)) if is_all else within.place))
    text = shown.number(value, figures)
    if is_even(right):
        return _with_unit(right, shown.without_zeros(text, 0) if is_all else text)
    return _with_unit(right, shown.without_zeros(text, places) if is_all and abs(value) >= 1 else text)


def _with_unit(right: Fact, number: str) -> str:
    return right.unit.after(number) if right.unit else number


def _as_printed(right: Fact, given: Mapping[str, Fact], wrong: WrongValue) -> float:
    """What the mistake gives with the numbers as a reader sees them, where that is still within reach of the unrounded result."""
    again = _value(right, {name: as_shown(fact) for name, fact in given.items()}, wrong.mistake)
    near = again is not None and accepted(wrong.value, right.figures, tolerance(right)).meets(Interval(again, again))
    return again if again is not None and near else wrong.value


def _value(right: Fact, given: Mapping[str, Fact], mistake: Mistake) -> float | None:
    """In the unit of the right answer; where the wrong expression has another dimension, its bare number."""
    expression = Expression(mistake.expression)
    facts = {name: given[name] for name in expression.names}
    if right.unit is None or any(fact.value is None for fact in facts.values()):
        return None
    try:
        result = expression.evaluate({name: fact.quantity for name, fact in facts.items()})
        if is_reading(result):  # of a thermometer: turned into another unit it would be another number
            return float(result.magnitude)
        return number_in(right.unit, result)
    except (ZeroDivisionError, ExpressionError, UnitError):
        return _bare(expression, facts)


def _bare(expression: Expression, facts: Mapping[str, Fact]) -> float | None:
    try:
        return float(expression.evaluate({name: fact.value for name, fact in facts.items()}))
    except (ZeroDivisionError, ExpressionError):
        return None
