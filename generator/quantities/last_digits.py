"""Last digits: how far down the data behind a number go, so that what is shown of it claims no more."""

from __future__ import annotations

from generator.quantities import shown
from generator.quantities.units import Unit
from generator.quantities.working import Given, Substitution

MOST_WHOLE_DIGITS = 7
"""Beyond this many digits before the decimal point even a sum is rounded."""


def place(fact: Given) -> int | None:
    """The power of ten of the last digit that the data have; None where nothing but the significant figures sets it.

    A sum ends where the roughest of its terms does: common practice. But what is stated is taken as it is, so a sum of stated
    numbers keeps what is left behind that place, other than zeros: 30 less 2.5 is 27.5, and 50 less 2.0 is 48.
    """
    if fact.written:
        return max((found for text in fact.written.split() if (found := shown.place_written(text)) is not None), default=None)
    if fact.working is None:
        return shown.place_of(fact.number) if fact.is_number and None not in (fact.low, fact.high) else None
    if fact.asked_figures:
        return None
    places = [found for term in _terms(fact) if term.value and (found := _shown_place(term)) is not None]
    if not places or not fact.is_number:
        return None
    if not is_stated(fact):
        return max(*places, _by_figures(fact) or 0)
    return max(min(max(places), shown.place_of(fact.number)), shown.whole_digits(fact.number) - MOST_WHOLE_DIGITS)


def is_stated(fact: Given) -> bool:
    """Whether a record states it, or each term that it is the sum of: then nothing was rounded."""
    return fact.working is None or bool(_terms(fact)) and all(map(is_stated, _terms(fact)))


def is_even(fact: Given) -> bool:
    """Whether it is one stated whole number, or sum of such, over another, and its figures leave nothing off: 4 of 50 are 8 %, and not 8.00 %."""
    if fact.asked_figures or not isinstance(fact.working, Substitution) or not fact.working.expression.is_share:
        return False
    inputs = [one for _, one in fact.working.given]
    if not all(is_stated(one) and place(one) == 0 for one in inputs):
        return False
    return shown.is_all(fact.number, fact.figures)


def _shown_place(fact: Given) -> int | None:
    """The power of ten of the last digit that is shown; None of nothing, and of what is no number."""
    found = place(fact)
    return _by_figures(fact) if found is None else found


def _by_figures(fact: Given) -> int | None:
    largest = max(map(abs, fact.series), default=0.0) if fact.is_series else abs(fact.number) if fact.is_number else 0.0
    return shown.last_place(largest, fact.figures) if largest else None


def _terms(fact: Given) -> tuple[Given, ...]:
    """What it is the sum of, or was picked from; nothing where the last digits of these say nothing about its own.

    A term in another unit has another last digit, though a kelvin is as large as a degree Celsius. A unit turned into another is no sum.
    """
    if not isinstance(fact.working, Substitution) or not fact.working.expression.is_sum:
        return ()
    expression, given = fact.working.expression, tuple(one for _, one in fact.working.given)
    if any(_step(one.unit) != _step(fact.unit) or expression.is_name and one.unit != fact.unit for one in given):
        return ()
    return tuple(one for one in given if one.is_series or one.value == fact.value) if expression.is_pick else given


def _step(of: Unit | None) -> str:
    """The unit of a difference: of two readings in degrees Celsius it is the kelvin."""
    label = of.label if of else ""
    return "K" if label == "degC" else label
