"""The marking guide of a written question, worked out from the facts and chains that its record names."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.text import references
from generator.quantities.units import unit
from generator.quantities.working import Substitution
from generator.questions.making import Draft, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.question import Mistake, Needs, NumberEntry
from generator.records.parts import Idea
from generator.written.record import Calculation, FromChain, WrittenPart, WrittenQuestion

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
_JOINS = re.compile(r"\b(because|so|so that|therefore|thus|hence)\b", re.IGNORECASE)
FOLLOWS = "A wrong result of part {part} that is carried on rightly loses no mark here."


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
class Worked:
    """A calculation: its set-up with the numbers in it, and what counts as its answer."""

    setup: str
    entry: NumberEntry
    """Knows the answer, the accepted range and the known slips, and can be set again with other numbers."""


@dataclass(frozen=True)
class PartGuide:
    """How one part is marked."""

    part: WrittenPart
    prompt: str
    lines: tuple[GuideLine, ...]
    rules: tuple[str, ...]
    """In sentences, for whoever marks."""
    worked: Worked | None = None


@dataclass(frozen=True)
class Guided:
    """A written question with its guide."""

    name: str
    question: WrittenQuestion
    guides: tuple[PartGuide, ...]


@dataclass(frozen=True)
class Materials:
    """What a guide is made of."""

    facts: Mapping[str, Fact]
    """By key: `biome/savanna:teva_crossing.annual_precip`."""
    catalogue: Catalogue
    chain: Callable[[str], tuple[Idea, ...]]
    """The ideas of a record's explanation, by its key, with the record's facts put in."""
    filled: Callable[[str], str]
    """Puts facts into a text of the question."""


def guided(name: str, question: WrittenQuestion, materials: Materials) -> Guided:
    """The question with its guide; nothing in it may be at fault."""
    return Guided(name, question, tuple(_part_guide(part, question.see, materials) for part in question.parts))


def _part_guide(part: WrittenPart, see: str | None, materials: Materials) -> PartGuide:
    prompt = materials.filled(part.prompt)
    follows = (FOLLOWS.format(part=part.depends_on),) if part.depends_on else ()
    if part.calculate is not None:
        worked = work_out(part, part.calculate, materials)
        taught = part.see or next(map(_record_of, part.calculate.given.values()), see or "")
        lines = [
            GuideLine(SETUP, f"Set-up: {worked.setup}", marks=part.award.setup or 0, teaches=taught),
            GuideLine(ANSWER, f"Answer: {worked.entry.answer}", marks=part.award.answer or 0, teaches=taught),
        ]
        return PartGuide(part, prompt, tuple(line for line in lines if line.marks), (SETUP_RULE, *follows), worked)
    taught = _taught_by(part, see or "")
    lines = [GuideLine(idea.id, idea.says, idea.accept, idea.not_enough, gives=idea.gives or "", teaches=taught(idea.id)) for idea in ideas_of(part, materials)]
    rule = RULES[part.award.rule or "each"].format(marks=part.marks, of=part.award.of)
    return PartGuide(part, prompt, tuple(lines), (rule, *follows))


def ideas_of(part: WrittenPart, materials: Materials) -> tuple[Idea, ...]:
    """The ideas of a part in words, its own or those of the chain that it names."""
    if isinstance(part.ideas, FromChain):
        return materials.chain(part.ideas.chain)
    return tuple(with_facts(idea, materials.filled) for idea in part.ideas)


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
    quoted = {idea.id: next((one.record for text in (idea.says, *idea.accept) for one in references(text)), otherwise) for idea in part.ideas}
    return lambda idea: part.see or quoted[idea]


def _record_of(key: str) -> str:
    """The record in the key of a fact or a chain."""
    return re.split("[:#]", key)[0]


def work_out(part: WrittenPart, calculation: Calculation, materials: Materials) -> Worked:
    """The calculation with the facts that it names.

    Raises
    ------
    ExpressionError
        If a name has no fact, or units do not fit.
    UnitError
        If the unit is not known.
    ValueError
        If there is no answer, such as a share of nothing.
    """
    given = {symbol: materials.facts[key] for symbol, key in calculation.given.items()}
    fact = computed(part.id, "Answer", Expression(calculation.expression), given, unit(calculation.unit))
    mistakes = [Mistake(slip.misconception, slip.expression, slip.how) for slip in calculation.slips]
    draft = Draft(id=part.id, prompt=materials.filled(part.prompt), solution="", needs=Needs(part.needs))
    entry = number_entry(draft, fact, given, mistakes, materials.catalogue, otherwise="", asks_unit=True)
    if not isinstance(entry, NumberEntry):
        raise ValueError(entry.because)
    assert isinstance(fact.working, Substitution)
    return Worked(fact.working.put_in, entry)
