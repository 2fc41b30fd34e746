"""Questions that an author writes: what is wrong with them, told at its place, and the questions that they give."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from generator.quantities import shown
from generator.quantities.amount import Amount
from generator.quantities.fact import Fact, stated
from generator.quantities.text import filled
from generator.quantities.units import UnitError, number_in, unit
from generator.questions.making import FEWEST_DISTRACTORS, Draft, Wrong, choice
from generator.questions.misconception import Catalogue
from generator.questions.mistake import accepted, told_apart, tolerance
from generator.questions.question import Needs, NumberEntry, Question, Rejected, Slip
from generator.records.asked import AskedNumber, AskedQuestion, WrongNumber
from generator.records.field_path import FieldPath
from generator.records.finding import Finding

HINT = "No usual slip leads to this number: read again what is asked for, then check each step and its unit."
_POINTS_AT_OTHERS = re.compile(r"\b(?:all|none|both|neither|either) of (?:the above|these|them)\b", re.IGNORECASE)


def faults(asked: Sequence[AskedQuestion], facts: Mapping[str, Fact], taken: Collection[str] = ()) -> Iterator[Finding]:
    """Everything that keeps questions from being fair.

    `facts` are those that texts may name, `taken` the ids of the questions that the record's kind makes itself. A fact that
    is not there is told elsewhere.
    """
    for index, question in enumerate(asked):
        path: FieldPath = ("questions", index)
        if question.id in taken:
            yield Finding(
                path=(*path, "id"), expected="an id that no question made from the numbers of the record has",
                found=f'"{question.id}"', mend="choose another id",
            )  # fmt: skip
        form = list(_form(question, path))
        yield from form
        if not form:
            yield from _number(question, question.number, facts, path) if question.number else _options(question, facts, path)


def _form(question: AskedQuestion, path: FieldPath) -> Iterator[Finding]:
    """A choice has what a choice has, and a number what a number has."""
    if (question.answer is None) == (question.number is None):
        yield Finding(
            path=path, expected="either `answer`, for a choice, or `number`", found="neither" if question.answer is None else "both",
            mend="write `answer:` with `wrong:` options, or `number:` with the `mistakes:` that it should know",
        )  # fmt: skip
    elif question.answer is not None:
        yield from (_misplaced(path, field, "number", "answer") for field in ("mistakes", "hint") if getattr(question, field))
    elif question.wrong:
        yield _misplaced(path, "wrong", "answer", "number")
    if question.number:
        yield from _one_value(question.number, (*path, "number"))
        if question.number.fact and question.number.unit:
            mend = "remove it: the number is asked for in the unit of the fact"
            yield Finding(path=(*path, "number", "unit"), expected="no unit beside a fact", found=f'"{question.number.unit}"', mend=mend)
    for index, mistake in enumerate(question.mistakes):
        yield from _one_value(mistake, (*path, "mistakes", index))


def _misplaced(path: FieldPath, field: str, wanted: str, has: str) -> Finding:
    mend = f"remove it, or write `{wanted}:` in place of `{has}:`"
    return Finding(path=(*path, field), expected=f"this field only with `{wanted}:`", found=f"it with `{has}:`", mend=mend, at_key=True)


def _one_value(of: AskedNumber | WrongNumber, path: FieldPath) -> Iterator[Finding]:
    if (of.value is None) == (of.fact is None):
        found = "neither" if of.value is None else "both"
        yield Finding(path=path, expected="either `value` or `fact`", found=found, mend="write the number, or the fact that it is")


def _options(question: AskedQuestion, facts: Mapping[str, Fact], path: FieldPath) -> Iterator[Finding]:
    if len(question.wrong) < FEWEST_DISTRACTORS:
        where = (*path, "wrong") if question.wrong else path
        found = "one" if question.wrong else "none"
        yield Finding(path=where, expected="two wrong options or more", found=found, mend="add what students get wrong, with the misconception behind it")
    places = [((*path, "answer"), question.answer or ""), *(((*path, "wrong", n, "text"), one.text) for n, one in enumerate(question.wrong))]
    seen: set[str] = set()
    for place, text in places:
        said = " ".join(_said(text, facts).casefold().split()).rstrip(".")
        if said in seen:
            yield Finding(path=place, expected="an option that says something else", found=f'"{text}" again', mend="change or remove it")
        if _POINTS_AT_OTHERS.search(text):
            mend = "options stand in an order of their own: write an option that can be read by itself"
            yield Finding(path=place, expected="an option that does not point at others", found=f'"{text}"', mend=mend)
        seen.add(said)


def _number(question: AskedQuestion, number: AskedNumber, facts: Mapping[str, Fact], path: FieldPath) -> Iterator[Finding]:
    try:
        right = _right(question, number, facts)
    except UnitError as error:
        yield Finding(path=(*path, "number", "unit"), expected="a unit", found=f'"{number.unit}"', mend=str(error))
        return
    named = [((*path, "number", "fact"), number.fact), *(((*path, "mistakes", n, "fact"), one.fact) for n, one in enumerate(question.mistakes))]
    unfit = [(place, facts[key]) for place, key in named if key and key in facts and not facts[key].is_number]
    for place, fact in unfit:
        mend = "ask for another fact, or write the number"
        yield Finding(path=place, expected="a fact that is one number", found=f"{fact.id}: {_brief(fact)}", mend=mend)
    if right is None or unfit:
        return
    before = [(right.number, "the right one")]
    for index, mistake in enumerate(question.mistakes):
        value = _wrong_value(mistake, right, facts)
        if value is None:
            continue
        for other, what in before:
            if not told_apart(value, other, right.figures):
                yield Finding(
                    path=(*path, "mistakes", index), expected=f"a number that cannot be taken for {what}, {shown.number(other, right.figures)}",
                    found=shown.number(value, right.figures), mend="remove it, or change the numbers until they lie apart",
                )  # fmt: skip
                break
        before.append((value, "another mistake"))


def _brief(fact: Fact) -> str:
    return "a series" if fact.is_series else fact.shown


def _said(text: str, facts: Mapping[str, Fact]) -> str:
    try:
        return filled(text, facts)
    except KeyError:
        return text


def _right(question: AskedQuestion, number: AskedNumber, facts: Mapping[str, Fact]) -> Fact | None:
    """The fact that is asked for, or the typed number as one."""
    if number.fact is not None:
        return facts.get(number.fact)
    written = getattr(number.value, "text", "")
    return stated(question.id, "Answer", Amount(value=number.value, written=written), unit(number.unit) if number.unit else None)


def _wrong_value(mistake: WrongNumber, right: Fact, facts: Mapping[str, Fact]) -> float | None:
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
    """The record's id, from which the order of options is drawn."""

    def questions(self, asked: Sequence[AskedQuestion]) -> tuple[Question, ...]:
        """The questions in the order in which they were written."""
        return tuple(self._entry(one, one.number) if one.number else self._choice(one) for one in asked)

    def _draft(self, question: AskedQuestion) -> Draft:
        return Draft(id=question.id, prompt=self._filled(question.ask), solution=self._filled(question.because), needs=Needs(question.needs))

    def _filled(self, text: str | None) -> str:
        return filled(text or "", self.facts)

    def _choice(self, question: AskedQuestion) -> Question:
        wrong = [Wrong(self._filled(one.text), one.misconception, self._filled(one.because)) for one in question.wrong]
        made = choice(self._draft(question), self._filled(question.answer), wrong, self.catalogue, salt=self.salt)
        if isinstance(made, Rejected):
            raise ValueError(f"{question.id}: {made.because}")
        return made

    def _entry(self, question: AskedQuestion, number: AskedNumber) -> NumberEntry:
        right = _right(question, number, self.facts)
        if right is None:
            raise ValueError(f"{question.id}: {number.fact} is no fact")
        draft = self._draft(question)
        slips = [self._slip(one, value, right) for one in question.mistakes if (value := _wrong_value(one, right, self.facts)) is not None]
        return NumberEntry(
            id=draft.id, prompt=draft.prompt, needs=draft.needs, solution=draft.solution, fact=right if number.fact else None,
            unit=right.unit.shown if right.unit else "", answer=right.shown_exactly, accepted=accepted(right.number, right.figures, tolerance(right)),
            right_feedback=draft.solution, slips=tuple(slips), otherwise=self._filled(question.hint) or HINT,
        )  # fmt: skip

    def _slip(self, mistake: WrongNumber, value: float, right: Fact) -> Slip:
        number = shown.written(getattr(mistake.value, "text", "")) if mistake.value is not None else shown.number(value, right.figures)
        said = f"You get this number by {self._filled(mistake.how)}. {self.catalogue[mistake.misconception].correction}"
        return Slip(
            accepted=accepted(value, right.figures, tolerance(right)), shown=right.unit.after(number) if right.unit else number, feedback=said,
            misconception=mistake.misconception,
        )  # fmt: skip
