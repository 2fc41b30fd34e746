"""What is wrong with a written question: names that lead nowhere, marks that do not add up, work without cautions."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence

from generator.diagnostics import did_you_mean, few_of, listed
from generator.quantities.expression import ExpressionError
from generator.quantities.fact import Fact
from generator.quantities.text import Claim, references, stray_braces
from generator.records.field_path import FieldPath
from generator.records.finding import Finding
from generator.records.parts import Idea
from generator.written.calculation import own_words
from generator.written.calculation_faults import calculation_faults, number_faults, reading_faults
from generator.written.guide import ANSWER, SETUP
from generator.written.known import Known, unknown, unknown_in, wrong_fact
from generator.written.materials import Materials
from generator.written.record import Award, FromChain, Stimulus, WrittenPart, WrittenQuestion

_WORK = re.compile(r"\b(collect|heat|burn|mix|pour|dissolve|dig|wade|sample|boil|light a|grow bacteria|culture|plan|design|carry out)\b", re.IGNORECASE)
"""Verbs of a part that has students do or plan work in field or laboratory."""


def faults(question: WrittenQuestion, texts: Sequence[tuple[FieldPath, str]], known: Known, materials: Materials) -> Iterator[Finding]:
    """Everything that is wrong; `texts` are all texts of the file with their places."""
    if question.topic not in known.topics:
        yield unknown(("topic",), "a topic of course.yaml", question.topic, known.topics)
    yield from _see(question.see, ("see",), known)
    yield from _texts(texts, question, known)
    for name, number in question.numbers.items():
        yield from number_faults(name, number, ("numbers", name), known, materials)
    for index, stimulus in enumerate(question.stimulus):
        yield from _stimulus(stimulus, ("stimulus", index), known)
    earlier: list[str] = []
    results: dict[str, Fact] = {}
    for index, part in enumerate(question.parts):
        yield from _part(part, ("parts", index), earlier, known, materials, results)
        earlier.append(part.id)


def _see(record: str | None, path: FieldPath, known: Known) -> Iterator[Finding]:
    if record is not None and record not in known.records:
        yield unknown(path, "a record", record, known.records)


def _texts(texts: Sequence[tuple[FieldPath, str]], question: WrittenQuestion, known: Known) -> Iterator[Finding]:
    """Facts in text, and what the question's own calculations give."""
    for path, text in texts:
        if stray_braces(text):
            yield Finding(path=path, expected="a fact between braces", found="a brace that stands alone", mend="close the brace, or remove it")
        own = list(_own_words(path, question))
        for reference in references(text):
            if reference.key in own:
                continue
            if own and not reference.record:
                mend = did_you_mean(reference.key, own, few_of(reference.key, own, "words"))
                yield Finding(path=path, expected="a fact of a record, or what a calculation gives", found=reference.text, mend=mend, fragment=reference.text)
            else:
                yield from wrong_fact(path, reference.key, known, reference.text)


def _own_words(path: FieldPath, question: WrittenQuestion) -> Iterator[str]:
    """What ideas and samples may name besides facts: the question's own numbers, those of earlier parts, and a sample those of its part."""
    match path:
        case ("parts", int(index), "samples" | "ideas", *_):
            yield from question.numbers
            for part in question.parts[:index]:
                if part.calculate or part.read:
                    yield from (f"{part.id}.{word}" for word in ("answer", "setup")[: 2 if part.calculate else 1])
            yield from own_words(question.parts[index])


def _stimulus(stimulus: Stimulus, path: FieldPath, known: Known) -> Iterator[Finding]:
    given = [field for field in ("text", "chart", "table") if getattr(stimulus, field) is not None]
    if len(given) != 1:
        found = listed((f"`{field}`" for field in given), "and") if given else "none of them"
        yield Finding(path=path, expected="one of `text`, `chart` or `table`", found=found, mend="write an entry for each")
    for field in ("chart", "table"):
        if key := getattr(stimulus, field):
            yield from unknown_in(key, (*path, field), "a chart", known.charts, known)


def _part(
    part: WrittenPart, path: FieldPath, earlier: Sequence[str], known: Known, materials: Materials, results: dict[str, Fact]
) -> Iterator[Finding]:  # fmt: skip
    yield from _see(part.see, (*path, "see"), known)
    if part.command_word not in known.command_words:
        yield unknown((*path, "command_word"), "a word of command_words.yaml", part.command_word, known.command_words)
    for one in part.depends_on:
        if one not in earlier:
            mend = did_you_mean(one, earlier, "name a part that stands above, or remove it")
            yield Finding(path=(*path, "depends_on"), expected="an earlier part", found=f'"{one}"', mend=mend)
    if _WORK.search(part.prompt) and not part.cautions:
        mend = "say under `cautions:` what to mind, and that local rules and qualified supervision come first"
        yield Finding(path=path, expected="cautions beside work in field or laboratory", found="none", mend=mend)
    given = [name for name in ("ideas", "calculate", "read") if getattr(part, name)]
    if len(given) != 1:
        found = listed((f"`{name}`" for name in given), "and") if given else "none of them"
        mend = "a part is marked by its ideas, by set-up and answer, or by a reading"
        yield Finding(path=path, expected="one of `ideas`, `calculate` and `read`", found=found, mend=mend)
        return
    creditable: tuple[str, ...]
    if part.calculate is not None:
        yield from calculation_faults(part, part.calculate, path, earlier, known, materials, results)
        creditable = (SETUP, ANSWER)
    elif part.read is not None:
        yield from reading_faults(part, part.read, path, known, materials, results)
        creditable = (ANSWER,)
    else:
        if isinstance(part.ideas, FromChain):
            wrong = list(unknown_in(part.ideas.chain, (*path, "ideas", "from"), "an explanation", known.chains, known))
            yield from wrong
            if wrong or part.ideas.chain.partition("#")[0] not in known.chains:
                return
        else:
            yield from _claims(part.ideas, path, known)
        creditable = tuple(_idea_ids(part, materials))
        yield from _award_of_ideas(part.award, part.marks, len(creditable), path) if creditable else ()
    yield from _samples(part, creditable, path)


def _claims(ideas: Sequence[Idea], path: FieldPath, known: Known) -> Iterator[Finding]:
    """Ideas that are no longer true; those of a chain are checked with their record."""
    for index, idea in enumerate(ideas):
        if idea.holds_if is None:
            continue
        claim, place = Claim(idea.holds_if), (*path, "ideas", index, "holds_if")
        try:
            holds = claim.holds(known.facts)
        except ExpressionError as error:
            mend = "compare facts, each named with its record, by <, <=, >, >=, == or !="
            yield Finding(path=place, expected="a comparison of facts", found=str(error), mend=mend)
        else:
            if not holds:
                found = claim.numbers(known.facts) or "a fact that is not there"
                yield Finding(path=place, expected=f"{idea.holds_if}, for the idea says so", found=found, mend="mend the idea, or the numbers")


def _idea_ids(part: WrittenPart, materials: Materials) -> Iterator[str]:
    ideas = materials.chain(part.ideas.chain) if isinstance(part.ideas, FromChain) else part.ideas
    yield from (idea.id for idea in ideas)


def _award_of_ideas(award: Award, marks: int, ideas: int, path: FieldPath) -> Iterator[Finding]:
    if award.setup or award.answer or award.rule is None:
        mend = "set-up and answer belong to `calculate:`"
        yield Finding(path=(*path, "award"), expected="`rule: each`, `all` or `any` beside ideas", found="another award", mend=mend)
    elif (award.rule == "any") != (award.of is not None):
        yield Finding(path=(*path, "award"), expected="`of:` with `rule: any`, and only there", found=f"`rule: {award.rule}`", mend="write how many ideas earn all marks")
    elif award.rule == "any" and award.of != marks:
        yield Finding(path=(*path, "award", "of"), expected=f"{marks}, one idea for each mark", found=str(award.of), mend="change it, or the marks")
    elif award.rule == "each" and ideas != marks:
        mend = "change the marks, write `rule: any` with `of:`, or add an idea"
        yield Finding(path=(*path, "marks"), expected=f"{ideas}, one for each idea", found=str(marks), mend=mend)
    elif award.rule == "any" and ideas <= marks:
        yield Finding(path=(*path, "award"), expected=f"more than {marks} ideas to choose from", found=str(ideas), mend="write `rule: each`, or add an idea")


def _samples(part: WrittenPart, creditable: Collection[str], path: FieldPath) -> Iterator[Finding]:
    for index, sample in enumerate(part.samples):
        for n, idea in enumerate(sample.earns):
            if creditable and idea not in creditable:
                yield unknown((*path, "samples", index, "earns", n), "an idea of this part", idea, creditable)
