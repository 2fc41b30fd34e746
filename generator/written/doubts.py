"""What is doubtful in a written question, as far as a program can tell: warnings for its author, who can accept each with a reason.

The ranges and rules are common practice in written tests and defaults of this project; none of them is a proof of quality.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import NamedTuple

from generator.diagnostics import Severity
from generator.quantities.text import references
from generator.records.field_path import FieldPath
from generator.records.finding import Finding
from generator.records.parts import Idea
from generator.written.asking import NAMING, asks_for_data, content_words, so_many
from generator.written.guide import ideas_of, sort_of
from generator.written.known import Known
from generator.written.materials import Materials
from generator.written.record import FromChain, Stimulus, WrittenPart, WrittenQuestion

FEWEST_SAMPLES = 3
"""Of a part with two marks or more: a strong, a partial one, and one off the focus."""
FEWEST_WORDINGS = 2
"""Accepted beside the idea's own, a plain one among them."""
LEAST_TIME, MOST_TIME = 0.65, 1.75
"""Of the minutes that so many marks usually take: 1.5 and 4 minutes a mark where a mark takes 2.3. A default of this project."""
REASONS = ("explain", "give_a_reason")
"""Command words whose answers need a mechanism."""
_VAGUE = re.compile(r"\b(effects?|impacts?)\b(?!\s+(?:of|on|that|which)\b)|\b(any|some)\b(?=\s*(?:[.,;:?]|$))", re.IGNORECASE)
_POINTS = re.compile(r"\b(diagrams?|charts?|graphs?|tables?|pyramids?|bars?|curves?|lines?|profile|shown|list)\b", re.IGNORECASE)
"""Words of a part that point to a drawing or a table."""


class _Seen(NamedTuple):
    """A part with what a check needs to know of it."""

    part: WrittenPart
    path: FieldPath
    ideas: tuple[Idea, ...]
    """With facts put in."""
    known: Known
    materials: Materials


def doubts(question: WrittenQuestion, known: Known, materials: Materials) -> Iterator[Finding]:
    """Everything doubtful in a question that is free of faults."""
    for index, stimulus in enumerate(question.stimulus):
        yield from _unused(question, index, stimulus)
    for index, part in enumerate(question.parts):
        ideas = () if part.calculate or part.read else _ideas(part, materials)
        for check in _CHECKS:
            yield from check(_Seen(part, ("parts", index), ideas, known, materials))


def _ideas(part: WrittenPart, materials: Materials) -> tuple[Idea, ...]:
    """Own ideas as they are written, so that what they quote can be seen; those of a chain in words."""
    return ideas_of(part, materials) if isinstance(part.ideas, FromChain) else part.ideas


def _doubt(path: FieldPath, rule: str, expected: str, found: str, mend: str) -> Finding:
    return Finding(path=path, expected=expected, found=found, mend=f"{mend}, or accept the warning with a reason", severity=Severity.WARNING, rule=rule)


def _samples(seen: _Seen) -> Iterator[Finding]:
    part, path = seen.part, seen.path
    if part.marks >= 2 and len(part.samples) < FEWEST_SAMPLES:
        where = (*path, "samples") if part.samples else path
        yield _doubt(where, "few_samples", f"{FEWEST_SAMPLES} sample answers or more", str(len(part.samples)), "add a strong one, a partial one and one off the focus")
    elif part.marks >= 2 and all(sample.earns for sample in part.samples):
        mend = "add one that is off the focus or says too little"
        yield _doubt((*path, "samples"), "few_samples", "a sample answer that earns nothing", "none", mend)


def _marks(seen: _Seen) -> Iterator[Finding]:
    part = seen.part
    if part.command_word not in seen.known.usual_marks:
        return
    least, most = seen.known.usual_marks[part.command_word]
    times = _asked(part)
    if not least <= part.marks <= most * times:
        usual = f"{least}" if least == most * times else f"{least} to {most * times}"
        mend = "change the marks or the command word, or say how many things are asked for"
        yield _doubt((*seen.path, "marks"), "unusual_marks", f"{usual}, as is usual for this command word", str(part.marks), mend)


def _asked(part: WrittenPart) -> int:
    """How many things a prompt asks for: as it says; or two where it names two."""
    return so_many(part.prompt) or (2 if re.search(r"\b(both|and)\b", part.prompt) else 1)


def _count(seen: _Seen) -> Iterator[Finding]:
    part = seen.part
    if part.command_word in NAMING and part.marks > 1 and not part.read and so_many(part.prompt) is None and _asked(part) == 1:
        yield _doubt((*seen.path, "prompt"), "no_count", "how many are asked for", "no number", "say it, as in “Give two …”")


def _mechanism(seen: _Seen) -> Iterator[Finding]:
    if seen.part.command_word in REASONS and seen.ideas and all(sort_of(idea) != "mechanism" for idea in seen.ideas):
        mend = "add the step by which the cause works, or mark it `gives: mechanism`"
        yield _doubt((*seen.path, "ideas"), "no_mechanism", "an idea that gives a mechanism", "none", mend)


def _data(seen: _Seen) -> Iterator[Finding]:
    part = seen.part
    names = part.command_word in NAMING  # what is named may be read off the data without a number
    asks = part.needs == "data" and not names or asks_for_data(part.prompt, part.condition or "")
    if asks and seen.ideas and not any(_quotes(text) for idea in seen.ideas for text in (idea.says, *idea.accept)):
        mend = "quote a value in an idea, or ask for no data"
        yield _doubt((*seen.path, "ideas"), "no_data_quoted", "a number or a fact in an idea, for the part asks for data", "none", mend)


def _quotes(text: str) -> bool:
    return any(references(text)) or any(letter.isdigit() for letter in text)


def _object(seen: _Seen) -> Iterator[Finding]:
    if found := _VAGUE.search(seen.part.prompt):
        yield _doubt((*seen.path, "prompt"), "no_object", f"“{found[0]}” with its object", "none", "say of what, or on what")


def _focus(seen: _Seen) -> Iterator[Finding]:
    """Where more is asked for than a name, which need not say again what it is the name of."""
    focus = content_words(seen.part.focus or "")
    said = set().union(*(content_words(text) for idea in seen.ideas for text in (idea.says, idea.gives or "", *idea.accept)))
    if focus and seen.ideas and seen.part.command_word not in NAMING and not focus & said:
        yield _doubt((*seen.path, "focus"), "off_focus", "a word of the focus in an idea", f'"{seen.part.focus}"', "name it in an idea, or mend the focus")


def _time(seen: _Seen) -> Iterator[Finding]:
    part = seen.part
    usual = part.marks * seen.materials.minutes_per_mark
    if part.minutes is not None and not LEAST_TIME * usual <= part.minutes <= MOST_TIME * usual:
        yield _doubt((*seen.path, "minutes"), "unusual_time", f"about {usual:.0f} minutes for {part.marks} marks", f"{part.minutes:g}", "change the minutes or the marks")


def _wordings(seen: _Seen) -> Iterator[Finding]:
    """Of own ideas; those of a chain are mended in their record."""
    if isinstance(seen.part.ideas, FromChain):
        return
    for index, idea in enumerate(seen.part.ideas):
        place = (*seen.path, "ideas", index)
        if len(idea.accept) < FEWEST_WORDINGS:
            mend = "add other wordings that earn the mark, a plain one among them"
            yield _doubt(place, "few_wordings", f"{FEWEST_WORDINGS} accepted wordings or more", str(len(idea.accept)), mend)
        if not idea.not_enough:
            yield _doubt(place, "no_near_miss", "an answer that is not enough", "none", "add a near miss under `not_enough:`")


def _unused(question: WrittenQuestion, index: int, stimulus: Stimulus) -> Iterator[Finding]:
    """A text whose facts and words no part takes up; a chart or table of which no part names the record, and to which none points."""
    path: FieldPath = ("stimulus", index)
    if stimulus.text:
        keys = {one.key for one in references(stimulus.text)}
        used = keys & {key for part in question.parts for key in _keys(part)} or content_words(stimulus.text) & set().union(*(content_words(_words(part)) for part in question.parts))
    else:
        record = (stimulus.chart or stimulus.table or "").partition("#")[0]
        used = any(_POINTS.search(_words(part)) or any(re.split("[:#]", key)[0] == record for key in _keys(part)) for part in question.parts)
    if not used:
        yield _doubt(path, "stimulus_not_used", "a part that uses it", "none", "leave it out, or ask something about it")


def _words(part: WrittenPart) -> str:
    own = () if isinstance(part.ideas, FromChain) else part.ideas
    return " ".join([part.prompt, part.focus or "", part.condition or "", *(text for idea in own for text in (idea.says, *idea.accept))])


def _keys(part: WrittenPart) -> Iterator[str]:
    """Facts and chains that a part names."""
    yield from (one.key for one in references(_words(part)))
    yield from part.calculate.given.values() if part.calculate else ()
    yield from [part.read.fact] if part.read else ()
    yield from [part.ideas.chain] if isinstance(part.ideas, FromChain) else ()


_CHECKS: tuple[Callable[[_Seen], Iterator[Finding]], ...] = (_samples, _marks, _count, _mechanism, _data, _object, _focus, _time, _wordings)
