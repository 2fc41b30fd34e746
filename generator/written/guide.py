"""The marking guide of a written question, worked out from the facts and chains that its record names."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace

from generator.diagnostics import listed
from generator.quantities.fact import Fact
from generator.quantities.text import references
from generator.records.parts import Idea
from generator.written.calculation import Results, Worked, named_number, read_off, work_out
from generator.written.materials import NO_WORDS, Materials
from generator.written.record import FromChain, SampleAnswer, WrittenPart, WrittenQuestion, part_named

SETUP, ANSWER = "setup", "answer"
RULES = {
    "each": "One mark for each idea, {marks} at most.",
    "all": "{marks} for all ideas together; some of them earn none.",
    "any": "One mark for each idea; any {of} of them earn all {marks}.",
}
SETUP_RULE = (
    "The set-up earns its mark with the right numbers in the right places, each with its unit, even where the sum goes wrong after that. "
    "A right answer with its unit implies the set-up."
)
RANGE_RULE = "The answer counts from {range}: that takes in steps that were rounded to three figures. Carry numbers on unrounded."
EXACT_RULE = "The answer is {answer}: with the numbers as they are shown the sum comes out exactly."
READ_RULE = "A reading counts from {range}: half the distance of the marks of the scale to either side."
UNIT_RULES = {
    True: "Without its unit, or with a wrong one, the answer earns no mark.",
    False: "A missing unit costs no mark here; a wrong one does.",
}
FIGURES_RULE = "{figures} significant figures are asked for. One more or one fewer is accepted; for other numbers of figures take off a mark once in a paper, no more."
FOLLOWS = "A wrong result of {parts} that is carried on rightly loses no mark here, unless it makes the step easier or gives what cannot be, such as a share above 100 %."
FOLLOWS_IN_WORDS = "What follows rightly from a wrong answer to {parts} loses no mark here."
STOPS = "A wrong result of {parts} is not followed up: the marks here need the right one."
_JOINS = re.compile(r"\b(because|so|so that|therefore|thus|hence)\b", re.IGNORECASE)


@dataclass(frozen=True)
class GuideLine:
    """One idea that earns credit."""

    id: str
    says: str
    accept: tuple[str, ...] = ()
    not_enough: tuple[str, ...] = ()
    marks: int = 1
    gives: str = ""
    """Which sort of idea it is, one of `SORTS`; empty where its words do not tell, and for set-up and answer."""
    teaches: str = ""
    """Id of the record that teaches it: that of its chain, or of the facts that it quotes; empty where none is known."""


@dataclass(frozen=True)
class PartGuide:
    """How one part is marked."""

    part: WrittenPart
    prompt: str
    lines: tuple[GuideLine, ...]
    rules: tuple[str, ...]
    """In sentences, for whoever marks."""
    worked: Worked | None = None
    """Of a calculation."""
    reading: Worked | None = None
    """Of a value that is read off a scale; it has no set-up."""
    samples: tuple[SampleAnswer, ...] = ()
    """With all numbers put in."""
    minutes: float = 0.0
    """As the part says, or as its marks tell."""

    @property
    def number(self) -> Worked | None:
        """What is known of the number that the part asks for; None where it asks for ideas."""
        return self.worked or self.reading


@dataclass(frozen=True)
class Guided:
    """A written question with its guide."""

    name: str
    question: WrittenQuestion
    guides: tuple[PartGuide, ...]
    materials: Materials = field(compare=False, repr=False)
    """What it was made of, so that it can be made again with other numbers."""

    def __getitem__(self, part: str) -> PartGuide:
        """The guide of a part by its id."""
        return next(guide for guide in self.guides if guide.part.id == part)


def guided(name: str, question: WrittenQuestion, materials: Materials, given: Mapping[str, Fact] | None = None) -> Guided:
    """The question with its guide; nothing in it may be at fault.

    `given` are results of parts that stand instead of what the parts really give, for work that carries a wrong one on.
    """
    guides: list[PartGuide] = []
    results: dict[str, Fact] = {}
    words = {name: named_number(name, number, materials).shown_exactly for name, number in question.numbers.items()}
    for part in question.parts:
        guide = _part_guide(part, question.see, materials, results, words)
        guides.append(guide)
        if guide.number is not None:
            results[part.id] = (given or {}).get(part.id, guide.number.result)
            words |= {f"{part.id}.{name}": found for name, found in guide.number.words.items()}
    return Guided(name, question, tuple(guides), materials)


def _part_guide(part: WrittenPart, see: str | None, materials: Materials, results: Results, earlier: Mapping[str, str]) -> PartGuide:
    prompt = materials.filled(part.prompt)
    if part.calculate is not None or part.read is not None:
        return _number_guide(part, see, materials, results, earlier)
    taught = _taught_by(part, see or "")
    lines = [GuideLine(idea.id, idea.says, idea.accept, idea.not_enough, gives=idea.gives or "", teaches=taught(idea.id)) for idea in ideas_of(part, materials, earlier)]
    rule = RULES[part.award.rule or "each"].format(marks=part.marks, of=part.award.of)
    return PartGuide(part, prompt, tuple(lines), (rule, *_follows(part, materials)), samples=_samples(part, materials, earlier), minutes=_minutes(part, materials))


def _number_guide(part: WrittenPart, see: str | None, materials: Materials, results: Results, earlier: Mapping[str, str]) -> PartGuide:
    if part.calculate is not None:
        worked = work_out(part, part.calculate, materials, results)
        facts = [key for key in part.calculate.given.values() if not part_named(key)]
    else:
        assert part.read is not None
        worked = read_off(part, part.read, materials)
        facts = [part.read.fact]
    prompt = materials.filled(part.prompt)
    worked = replace(worked, entry=replace(worked.entry, prompt=prompt))
    taught = part.see or next(map(_record_of, facts), see or "")
    lines = [
        GuideLine(SETUP, f"Set-up: {worked.setup}", marks=part.award.setup or 0, teaches=taught),
        GuideLine(ANSWER, f"Answer: {worked.entry.answer}", marks=part.award.answer or 0, teaches=taught),
    ]
    is_read = part.read is not None
    return PartGuide(
        part, prompt, tuple(line for line in lines if line.marks), tuple(_number_rules(part, worked, materials)),
        worked=None if is_read else worked, reading=worked if is_read else None, samples=_samples(part, materials, {**earlier, **worked.words}),
        minutes=_minutes(part, materials),
    )  # fmt: skip


def _number_rules(part: WrittenPart, worked: Worked, materials: Materials) -> list[str]:
    of_range = READ_RULE if part.read else EXACT_RULE if worked.is_exact else RANGE_RULE
    rules = [SETUP_RULE] if part.award.setup else []
    if part.award.answer:
        rules.append(of_range.format(range=worked.range_shown, answer=worked.entry.answer))
        rules += [UNIT_RULES[materials.unit_needed]] if worked.entry.unit else []
    if part.calculate and part.calculate.figures:
        rules.append(FIGURES_RULE.format(figures=part.calculate.figures))
    return [*rules, *_follows(part, materials)]


def _follows(part: WrittenPart, materials: Materials) -> tuple[str, ...]:
    """How a wrong answer to an earlier part is treated, in a sentence; nothing where the part rests on none."""
    if not part.carries_on:
        return ()
    sentence = STOPS if not materials.follow_through else FOLLOWS if part.calculate else FOLLOWS_IN_WORDS
    return (sentence.format(parts=listed((f"part {one}" for one in sorted(part.carries_on)), "or")),)


def _minutes(part: WrittenPart, materials: Materials) -> float:
    return part.marks * materials.minutes_per_mark if part.minutes is None else part.minutes


def _samples(part: WrittenPart, materials: Materials, words: Mapping[str, str]) -> tuple[SampleAnswer, ...]:
    return tuple(
        sample.model_copy(update={"text": materials.filled(sample.text, words), "comment": materials.filled(sample.comment, words)})
        for sample in part.samples
    )  # fmt: skip


def ideas_of(part: WrittenPart, materials: Materials, words: Mapping[str, str] = NO_WORDS) -> tuple[Idea, ...]:
    """The ideas of a part in words, its own or those of the chain that it names."""
    if isinstance(part.ideas, FromChain):
        return materials.chain(part.ideas.chain)
    return tuple(with_facts(idea, lambda text: materials.filled(text, words)) for idea in part.ideas)


def with_facts(idea: Idea, filled: Callable[[str], str]) -> Idea:
    """The idea with facts put into its wordings, and its sort named where its words tell it."""
    wordings = {"says": filled(idea.says), "accept": tuple(map(filled, idea.accept)), "not_enough": tuple(map(filled, idea.not_enough))}
    return idea.model_copy(update={**wordings, "gives": sort_of(idea)})


def sort_of(idea: Idea) -> str | None:
    """Which of the `SORTS` an idea is: as its author says; otherwise data where it quotes a fact, a mechanism where it joins cause and effect."""
    if idea.gives or any(references(idea.says)):
        return idea.gives or "data"
    return "mechanism" if _JOINS.search(idea.says) else None


def _taught_by(part: WrittenPart, otherwise: str) -> Callable[[str], str]:
    """Which record teaches each idea, by its id: that of the chain; else what the part says; else that of the facts it quotes."""
    if isinstance(part.ideas, FromChain):
        chain = _record_of(part.ideas.chain)
        return lambda _: chain
    quoted = {
        idea.id: next((one.record for text in (idea.says, *idea.accept) for one in references(text) if one.record), otherwise)
        for idea in part.ideas
    }  # fmt: skip
    return lambda idea: part.see or quoted[idea]


def _record_of(key: str) -> str:
    """The record in the key of a fact or a chain."""
    return re.split("[:#]", key)[0]
