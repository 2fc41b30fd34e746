"""The questions that authors write, made: every form that `AskedQuestion` has."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from generator.quantities import shown
from generator.quantities.amount import Amount
from generator.quantities.fact import Fact, stated
from generator.quantities.text import filled
from generator.quantities.units import UnitError, number_in, unit
from generator.questions.making import Draft, Sound, Wrong, choice, matching, ordering, reading, several
from generator.questions.misconception import Catalogue
from generator.questions.mistake import accepted, got_by, tolerance
from generator.questions.question import Made, Needs, NumberEntry, Pair, Question, Rejected, Slip
from generator.questions.qualitative import FIRST_STEP, next_step
from generator.records.asked import AskedNumber, AskedQuestion, WrongNumber

HINT = "No usual slip leads to this number: read again what is asked for, then check each step and its unit."
READ_AGAIN = "Go back to the chart, and read its labels and axes before you pick."


def asked_number(question: AskedQuestion, number: AskedNumber, facts: Mapping[str, Fact]) -> Fact | None:
    """The fact that is asked for, or the typed number as one; None for a fact that is not there.

    Raises
    ------
    UnitError
        For a unit that is not known.
    """
    if number.fact is not None:
        return facts.get(number.fact)
    written = getattr(number.value, "text", "")
    return stated(question.id, "Answer", Amount(value=number.value, written=written), unit(number.unit) if number.unit else None)


def wrong_value(mistake: WrongNumber, right: Fact, facts: Mapping[str, Fact]) -> float | None:
    """In the unit of the right answer; of a fact with a unit of another kind the bare number."""
    if mistake.fact is None:
        return mistake.value
    fact = facts.get(mistake.fact)
    if fact is None or not fact.is_number:
        return None
    try:
        return number_in(right.unit, fact.quantity) if right.unit else fact.number
    except UnitError:
        return fact.number


@dataclass(frozen=True)
class Authored:
    """What the questions of one record are made with; nothing in it may be at fault."""

    facts: Mapping[str, Fact]
    catalogue: Catalogue
    salt: str
    """The record's id, from which every order is drawn."""

    def questions(self, asked: Sequence[AskedQuestion]) -> tuple[Question, ...]:
        """The questions in the order in which they were written."""
        return tuple(self._question(one) for one in asked)

    def _question(self, question: AskedQuestion) -> Question:
        made = self._made(question)
        if isinstance(made, Rejected):
            raise ValueError(f"{question.id}: {made.because}")
        return made

    def _made(self, question: AskedQuestion) -> Made:
        draft = Draft(
            id=question.id, prompt=self._filled(question.ask), solution=self._filled(question.because), needs=Needs.DATA if question.needs == "question" else Needs(question.needs), supposed=question.needs == "question",
            hints=tuple(self._filled(hint) for hint in question.hints),
        )  # fmt: skip
        wrong = [Wrong(self._filled(one.text), one.misconception, self._filled(one.because), self._filled(one.instead)) for one in question.wrong]
        if question.number:
            return self._entry(question, question.number, draft)
        if question.steps:
            return ordering(draft, [self._filled(step) for step in question.steps], starts_with=FIRST_STEP, leads_on=next_step, salt=self.salt)
        if question.pairs:
            pairs = [Pair(self._filled(one.text), self._filled(one.partner), self._filled(one.because)) for one in question.pairs]
            return matching(draft, pairs, [self._filled(other) for other in question.others], salt=self.salt)
        right = [self._filled(question.answer)] if question.answer else [self._filled(one.text) for one in question.answers]
        if question.labels:
            slips = [((one.text,), one) for one in wrong]
            labels = [self._filled(label) for label in question.labels]
            return reading(draft, labels, right, slips, self.catalogue, otherwise=self._filled(question.hint) or READ_AGAIN)
        if question.answers:
            sound = [Sound(text, self._filled(one.because) or draft.solution) for text, one in zip(right, question.answers, strict=True)]
            return several(draft, sound, wrong, self.catalogue, salt=self.salt)
        return choice(draft, right[0], wrong, self.catalogue, salt=self.salt)

    def _filled(self, text: str | None) -> str:
        return filled(text or "", self.facts)

    def _entry(self, question: AskedQuestion, number: AskedNumber, draft: Draft) -> NumberEntry:
        right = asked_number(question, number, self.facts)
        if right is None:
            raise ValueError(f"{question.id}: {number.fact} is no fact")
        slips = [self._slip(one, value, right) for one in question.mistakes if (value := wrong_value(one, right, self.facts)) is not None]
        return NumberEntry(
            id=draft.id, prompt=draft.prompt, needs=draft.needs, supposed=draft.supposed, solution=draft.solution, fact=right if number.fact else None, hints=draft.hints,
            unit=right.unit.shown if right.unit else "", answer=right.shown_exactly, accepted=accepted(right.number, right.figures, tolerance(right)),
            right_feedback=draft.solution, slips=tuple(slips), otherwise=self._filled(question.hint) or HINT,
        )  # fmt: skip

    def _slip(self, mistake: WrongNumber, value: float, right: Fact) -> Slip:
        number = shown.written(getattr(mistake.value, "text", "")) if mistake.value is not None else shown.number(value, right.figures)
        return Slip(
            accepted=accepted(value, right.figures, tolerance(right)), shown=right.unit.after(number) if right.unit else number,
            **got_by(self._filled(mistake.how), self.catalogue[mistake.misconception], self._filled(mistake.instead)),
        )  # fmt: skip
