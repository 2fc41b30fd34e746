"""Work that carries a wrong result on: what a later part gives then, and where it is not followed up.

Follow-through is common practice: one slip costs one mark, not one in every part that rests on it. It stops where the wrong number
makes the step easier than the right one, or where it leads to what cannot be.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal

from generator.quantities.fact import Fact
from generator.written.calculation import Worked
from generator.written.guide import Guided, guided
from generator.written.record import WrittenQuestion


@dataclass(frozen=True)
class CarriedOn:
    """A calculation as it follows from wrong results of earlier parts."""

    worked: Worked | None
    """Set-up, answer and accepted range for this work; None where it is not followed up."""
    because: str = ""
    """Why it is not."""


def carried_on(question: Guided, part: str, wrong: Mapping[str, float]) -> CarriedOn:
    """How to mark a part whose author got these numbers in earlier parts, each in the unit of that part's own answer.

    Results between them that are not given follow in their turn. The same expression makes the set-up, the answer and the range.

    Raises
    ------
    ValueError
        If the part does not calculate with results of these parts.
    """
    asked = question[part]
    if asked.worked is None or not set(wrong) & _rests_on(question, part):
        raise ValueError(f"part {part} carries on no number of {', '.join(sorted(wrong)) or 'no part'}")
    if not question.materials.follow_through:
        return CarriedOn(None, "The course does not follow wrong results up.")
    results = {one: _wrong_result(question[one].number, number) for one, number in wrong.items()}
    try:
        followed = guided(question.name, _without_samples(question.question), question.materials, results)
    except (ValueError, ZeroDivisionError):
        return CarriedOn(None, "With this number there is no answer.")
    worked = followed[part].worked
    assert worked is not None
    reasons = (*_easier(asked.worked, worked), *_absurd(asked.worked.result, worked.result))
    return CarriedOn(None, reasons[0]) if reasons else CarriedOn(worked)


def _without_samples(question: WrittenQuestion) -> WrittenQuestion:
    """Samples may name slips whose numbers, from a wrong beginning, can no longer be told apart."""
    return question.model_copy(update={"parts": tuple(part.model_copy(update={"samples": ()}) for part in question.parts)})


def _rests_on(question: Guided, part: str) -> set[str]:
    """The parts whose results a part carries on, directly or through others."""
    direct = set(question[part].part.calculate.carries_on) if question[part].part.calculate else set()
    return direct.union(*(_rests_on(question, one) for one in direct))


def _wrong_result(asked: Worked | None, number: float) -> Fact:
    if asked is None:
        raise ValueError("a part that is marked by ideas has no number to carry on")
    return replace(asked.result, value=float(number), working=None, written=f"{Decimal(repr(float(number))).normalize():f}")


def _easier(right: Worked, followed: Worked) -> Iterator[str]:
    """Numbers with which the step tests less than it did: nothing, one or a power of ten, or two that are equal."""
    before, now = dict(right.entry.given), dict(followed.entry.given)
    for name, fact in now.items():
        if not fact.is_number or fact == before[name]:
            continue
        if _is_trivial(fact.number) and not _is_trivial(before[name].number):
            yield f"With {fact.shown_exactly} the step is easier than it was."
        for other, value in now.items():
            if other != name and value.is_number and value.unit == fact.unit and value.number == fact.number and before[other].number != before[name].number:
                yield f"With {fact.shown_exactly} twice the step is easier than it was."


def _is_trivial(number: float) -> bool:
    return Decimal(repr(number)).normalize().copy_abs().as_tuple().digits in ((0,), (1,))


def _absurd(right: Fact, followed: Fact) -> Iterator[str]:
    if _sign(right.number) != _sign(followed.number):
        yield f"{followed.shown_exactly} cannot be: the answer has another sign."
    if right.unit is not None and right.unit.label == "percent" and 0 <= right.number <= 100 < followed.number:
        yield f"{followed.shown_exactly} cannot be: a part is no more than its whole."


def _sign(number: float) -> int:
    return (number > 0) - (number < 0)
