"""What keeps the questions that authors write from being fair, told at its place."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from itertools import pairwise

from generator.diagnostics import Severity, listed
from generator.quantities import shown
from generator.quantities.fact import Fact
from generator.quantities.text import filled
from generator.quantities.units import UnitError
from generator.questions.authored import asked_number, wrong_value
from generator.questions.making import FEWEST_DISTRACTORS, FEWEST_PAIRS, FEWEST_SOUND, FEWEST_STEPS, MOST_STEPS
from generator.questions.mistake import told_apart, tolerance
from generator.records.asked import AskedNumber, AskedQuestion, WrongNumber
from generator.records.field_path import FieldPath
from generator.records.finding import Finding

FORMS: Mapping[str, tuple[str, ...]] = {
    "answer": ("wrong", "labels", "hint"), "answers": ("wrong", "labels", "hint"), "number": ("mistakes", "hint"), "steps": (), "pairs": ("others",),
}  # fmt: skip
"""What gives a question its form, and the fields that may stand beside it."""
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
        yield from _torn(question, path)
        form = list(_form(question, path))
        yield from form or _sense(question, facts, path)


def _torn(question: AskedQuestion, path: FieldPath) -> Iterator[Finding]:
    """A text that a comma between brackets has cut in two: it begins small behind one without an end."""
    for field in ("steps", "hints"):
        texts = getattr(question, field)
        for n, (before, text) in enumerate(pairwise(texts), start=1):
            if text[:1].islower() and before[-1:] not in ".?!":
                yield Finding(
                    path=(*path, field, n), expected="a text that is whole", found=f'"{text}"', severity=Severity.WARNING, rule="torn_text",
                    mend="a comma ends a text inside [ ]: put the text in quotes, or each on a line of its own behind a dash",
                )  # fmt: skip


def _form(question: AskedQuestion, path: FieldPath) -> Iterator[Finding]:
    """One form, and beside it only what belongs to it."""
    forms = [field for field in FORMS if getattr(question, field)]
    if len(forms) != 1:
        names = listed((f"`{field}`" for field in FORMS), "or")
        found = listed((f"`{field}`" for field in forms), "and") if forms else "none of them"
        mend = "write `answer:` for a choice, `answers:` for several right ones, `number:`, `steps:` for an order, `pairs:` to match"
        yield Finding(path=path, expected=f"one of {names}", found=found, mend=mend)
        return
    for field in dict.fromkeys(beside for fields in FORMS.values() for beside in fields):
        if getattr(question, field) and field not in FORMS[forms[0]]:
            owners = [form for form, fields in FORMS.items() if field in fields]
            wanted = listed((f"`{owner}:`" for owner in owners), "or")
            yield Finding(
                path=(*path, field), expected=f"this field only with {wanted}", found=f"it with `{forms[0]}:`",
                mend=f"remove it, or write {wanted} in place of `{forms[0]}:`", at_key=True,
            )  # fmt: skip
    if question.hint and not (question.number or question.labels):
        mend = "write it under `hints:`, or name the `labels:` of the chart"
        yield Finding(path=(*path, "hint"), expected="this field only with a number or labels", found="it with a choice", mend=mend, at_key=True)
    if question.number:
        yield from _one_value(question.number, (*path, "number"))
        if question.number.fact and question.number.unit:
            mend = "remove it: the number is asked for in the unit of the fact"
            yield Finding(path=(*path, "number", "unit"), expected="no unit beside a fact", found=f'"{question.number.unit}"', mend=mend)
    for index, mistake in enumerate(question.mistakes):
        yield from _one_value(mistake, (*path, "mistakes", index))


def _one_value(of: AskedNumber | WrongNumber, path: FieldPath) -> Iterator[Finding]:
    if (of.value is None) == (of.fact is None):
        found = "neither" if of.value is None else "both"
        yield Finding(path=path, expected="either `value` or `fact`", found=found, mend="write the number, or the fact that it is")


def _sense(question: AskedQuestion, facts: Mapping[str, Fact], path: FieldPath) -> Iterator[Finding]:
    if question.number:
        yield from _number(question, question.number, facts, path)
    elif question.steps:
        yield from _steps(question, facts, path)
    elif question.pairs:
        yield from _pairs(question, facts, path)
    elif question.labels:
        yield from _labels(question, facts, path)
    else:
        yield from _options(question, facts, path)


def _steps(question: AskedQuestion, facts: Mapping[str, Fact], path: FieldPath) -> Iterator[Finding]:
    if not FEWEST_STEPS <= len(question.steps) <= MOST_STEPS:
        mend = "an order of three is guessed too soon, one of eight is a puzzle: split a step, or join two"
        yield Finding(path=(*path, "steps"), expected=f"{FEWEST_STEPS} to {MOST_STEPS} steps", found=str(len(question.steps)), mend=mend)
    yield from _repeated([((*path, "steps", n), step) for n, step in enumerate(question.steps)], facts, "a step")


def _pairs(question: AskedQuestion, facts: Mapping[str, Fact], path: FieldPath) -> Iterator[Finding]:
    if len(question.pairs) < FEWEST_PAIRS:
        mend = "add a pair: two are guessed with one throw of a coin"
        yield Finding(path=(*path, "pairs"), expected=f"{FEWEST_PAIRS} pairs or more", found=str(len(question.pairs)), mend=mend)
    partners = [((*path, "pairs", n, "partner"), pair.partner) for n, pair in enumerate(question.pairs)]
    yield from _repeated([((*path, "pairs", n, "text"), pair.text) for n, pair in enumerate(question.pairs)], facts, "a text")
    yield from _repeated([*partners, *(((*path, "others", n), other) for n, other in enumerate(question.others))], facts, "a partner")


def _labels(question: AskedQuestion, facts: Mapping[str, Fact], path: FieldPath) -> Iterator[Finding]:
    yield from _repeated([((*path, "labels", n), label) for n, label in enumerate(question.labels)], facts, "a label")
    known = {_said(label, facts) for label in question.labels}
    picked = [*_right_places(question, path), *(((*path, "wrong", n, "text"), one.text) for n, one in enumerate(question.wrong))]
    for place, text in picked:
        if _said(text, facts) not in known:
            yield Finding(path=place, expected="one of the labels", found=f'"{text}"', mend="write it as it stands under `labels:`, or add it there")
    yield from _repeated(picked, facts, "a label")
    if len(question.answers or (1,)) >= len(known):
        yield Finding(path=(*path, "labels"), expected="a label that is not right", found="none", mend="list all that can be picked on the chart")


def _right_places(question: AskedQuestion, path: FieldPath) -> list[tuple[FieldPath, str]]:
    if question.answer is not None:
        return [((*path, "answer"), question.answer)]
    return [((*path, "answers", n, "text"), one.text) for n, one in enumerate(question.answers)]


def _options(question: AskedQuestion, facts: Mapping[str, Fact], path: FieldPath) -> Iterator[Finding]:
    if question.answers and len(question.answers) < FEWEST_SOUND:
        mend = "write `answer:` for one right option, or add another"
        yield Finding(path=(*path, "answers"), expected="two right options or more", found="one", mend=mend)
    if len(question.wrong) < FEWEST_DISTRACTORS:
        where = (*path, "wrong") if question.wrong else path
        found = "one" if question.wrong else "none"
        yield Finding(path=where, expected="two wrong options or more", found=found, mend="add what students get wrong, with the misconception behind it")
    places = [*_right_places(question, path), *(((*path, "wrong", n, "text"), one.text) for n, one in enumerate(question.wrong))]
    yield from _repeated(places, facts, "an option")
    for place, text in places:
        if _POINTS_AT_OTHERS.search(text):
            mend = "options stand in an order of their own: write an option that can be read by itself"
            yield Finding(path=place, expected="an option that does not point at others", found=f'"{text}"', mend=mend)


def _repeated(places: Sequence[tuple[FieldPath, str]], facts: Mapping[str, Fact], what: str) -> Iterator[Finding]:
    seen: set[str] = set()
    for place, text in places:
        said = " ".join(_said(text, facts).casefold().split()).rstrip(".")
        if said in seen:
            yield Finding(path=place, expected=f"{what} that says something else", found=f'"{text}" again', mend="change or remove it")
        seen.add(said)


def _number(question: AskedQuestion, number: AskedNumber, facts: Mapping[str, Fact], path: FieldPath) -> Iterator[Finding]:
    try:
        right = asked_number(question, number, facts)
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
        value = wrong_value(mistake, right, facts)
        if value is None:
            continue
        for other, what in before:
            if not told_apart(value, other, right.figures, tolerance(right)):
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
