"""What is wrong with a written question: names that lead nowhere, marks that do not add up, samples that do not help, work without cautions."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from generator.diagnostics import Severity, did_you_mean, few_of, listed
from generator.quantities.expression import Expression, ExpressionError
from generator.quantities.fact import Fact
from generator.quantities.text import Claim, references, stray_braces
from generator.records.field_path import FieldPath
from generator.records.finding import Finding
from generator.records.parts import Idea
from generator.written.guide import ANSWER, SETUP, Materials, ideas_of, work_out
from generator.written.record import Award, Calculation, FromChain, Stimulus, WrittenPart, WrittenQuestion

FEWEST_SAMPLES = 3
"""Of a part with two marks or more: a strong, a partial one, and one off the focus."""
_WORK = re.compile(r"\b(collect|heat|burn|mix|pour|dissolve|dig|wade|sample|boil|light a|grow bacteria|culture|plan|design|carry out)\b", re.IGNORECASE)
"""Verbs of a part that has students do or plan work in field or laboratory."""


@dataclass(frozen=True)
class Known:
    """What a written question may name."""

    command_words: Collection[str]
    topics: Collection[str]
    misconceptions: Collection[str]
    records: Collection[str]
    charts: Mapping[str, Collection[str]]
    """The names of the charts of each record."""
    chains: Mapping[str, Collection[str]]
    """The explanations of each record."""
    facts: Mapping[str, Fact]
    kept: Collection[str]
    """Keys of facts that are kept for class tests."""


def faults(question: WrittenQuestion, texts: Sequence[tuple[FieldPath, str]], known: Known, materials: Materials) -> Iterator[Finding]:
    """Everything that is wrong; `texts` are all texts of the file with their places."""
    if question.topic not in known.topics:
        yield _unknown(("topic",), "a topic of course.yaml", question.topic, known.topics)
    yield from _see(question.see, ("see",), known)
    yield from _texts(texts, known)
    for index, stimulus in enumerate(question.stimulus):
        yield from _stimulus(stimulus, ("stimulus", index), known)
    earlier: list[str] = []
    for index, part in enumerate(question.parts):
        yield from _part(part, ("parts", index), earlier, known, materials)
        earlier.append(part.id)


def _unknown(path: FieldPath, expected: str, found: str, known: Collection[str]) -> Finding:
    return Finding(path=path, expected=expected, found=f'"{found}"', mend=did_you_mean(found, known, few_of(found, known, "names")))


def _see(record: str | None, path: FieldPath, known: Known) -> Iterator[Finding]:
    if record is not None and record not in known.records:
        yield _unknown(path, "a record", record, known.records)


def _texts(texts: Sequence[tuple[FieldPath, str]], known: Known) -> Iterator[Finding]:
    """Facts in text; a written question has none of its own, so each is named with its record."""
    for path, text in texts:
        if stray_braces(text):
            yield Finding(path=path, expected="a fact between braces", found="a brace that stands alone", mend="close the brace, or remove it")
        for reference in references(text):
            yield from _fact(path, reference.key, known, reference.text)


def _fact(path: FieldPath, key: str, known: Known, fragment: str) -> Iterator[Finding]:
    record, colon, name = key.partition(":")
    if not colon:
        mend = "name its record too, as in biome/savanna:teva_crossing.annual_precip"
        yield Finding(path=path, expected="a fact of a record", found=f'"{key}"', mend=mend, fragment=fragment)
    elif record not in known.records:
        mend = did_you_mean(record, known.records, few_of(record, known.records, "records"))
        yield Finding(path=path, expected="a record", found=f'"{record}"', mend=mend, fragment=fragment)
    elif key in known.kept:
        mend = "name another place: this one is kept for class tests by `use: paper`"
        yield Finding(path=path, expected="a fact that students may see", found=f'"{key}"', mend=mend, fragment=fragment)
    elif key not in known.facts:
        own = [one.partition(":")[2] for one in known.facts if one.startswith(f"{record}:")]
        mend = did_you_mean(name, own, f"its facts are listed by: studyguide facts {record}")
        yield Finding(path=path, expected=f"a fact of {record}", found=f'"{name}"', mend=mend, fragment=fragment)


def _stimulus(stimulus: Stimulus, path: FieldPath, known: Known) -> Iterator[Finding]:
    given = [field for field in ("text", "chart", "table") if getattr(stimulus, field) is not None]
    if len(given) != 1:
        found = listed((f"`{field}`" for field in given), "and") if given else "none of them"
        yield Finding(path=path, expected="one of `text`, `chart` or `table`", found=found, mend="write an entry for each")
    for field in ("chart", "table"):
        if key := getattr(stimulus, field):
            yield from _name_in(key, (*path, field), "a chart", known.charts, known)


def _name_in(key: str, path: FieldPath, what: str, names: Mapping[str, Collection[str]], known: Known) -> Iterator[Finding]:
    record, _, name = key.partition("#")
    if record not in known.records:
        yield _unknown(path, "a record", record, known.records)
    elif record in names and name not in names[record]:
        there = names[record]
        mend = did_you_mean(name, there, f"it has {listed(there, 'and')}" if there else "it has none")
        yield Finding(path=path, expected=f"{what} of {record}", found=f'"{name}"', mend=mend)


def _part(part: WrittenPart, path: FieldPath, earlier: Sequence[str], known: Known, materials: Materials) -> Iterator[Finding]:
    yield from _see(part.see, (*path, "see"), known)
    if part.command_word not in known.command_words:
        yield _unknown((*path, "command_word"), "a word of command_words.yaml", part.command_word, known.command_words)
    if part.depends_on is not None and part.depends_on not in earlier:
        mend = did_you_mean(part.depends_on, earlier, "name a part that stands above, or remove it")
        yield Finding(path=(*path, "depends_on"), expected="an earlier part", found=f'"{part.depends_on}"', mend=mend)
    if _WORK.search(part.prompt) and not part.cautions:
        mend = "say under `cautions:` what to mind, and that local rules and qualified supervision come first"
        yield Finding(path=path, expected="cautions beside work in field or laboratory", found="none", mend=mend)
    if (part.calculate is None) == (not part.ideas):
        found = "neither" if part.calculate is None else "both"
        yield Finding(path=path, expected="either `ideas` or `calculate`", found=found, mend="a part is marked by its ideas, or by set-up and answer")
        return
    if part.calculate is not None:
        yield from _calculation(part, part.calculate, path, known, materials)
        creditable: tuple[str, ...] = (SETUP, ANSWER)
    else:
        if isinstance(part.ideas, FromChain):
            wrong = list(_name_in(part.ideas.chain, (*path, "ideas", "from"), "an explanation", known.chains, known))
            yield from wrong
            if wrong or part.ideas.chain.partition("#")[0] not in known.chains:
                return
        else:
            yield from _claims(part.ideas, path, known)
        creditable = tuple(idea.id for idea in ideas_of(part, materials)) if _texts_are_sound(part, known) else ()
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


def _texts_are_sound(part: WrittenPart, known: Known) -> bool:
    own = () if isinstance(part.ideas, FromChain) else part.ideas
    texts = [text for idea in own for text in (idea.says, *idea.accept, *idea.not_enough)]
    return all(reference.key in known.facts for text in texts for reference in references(text))


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


def _calculation(part: WrittenPart, calculation: Calculation, path: FieldPath, known: Known, materials: Materials) -> Iterator[Finding]:
    if part.award.rule or (part.award.setup or 0) + (part.award.answer or 0) != part.marks:
        found = f"rule: {part.award.rule}" if part.award.rule else str((part.award.setup or 0) + (part.award.answer or 0))
        mend = "write `award: {setup: 1, answer: 1}`, or as many as the part has marks"
        yield Finding(path=(*path, "award"), expected=f"marks for set-up and answer that make {part.marks}", found=found, mend=mend)
    wrong = [one for name, key in calculation.given.items() for one in _fact((*path, "calculate", "given", name), key, known, "")]
    yield from wrong
    for index, slip in enumerate(calculation.slips):
        if slip.misconception not in known.misconceptions:
            place = (*path, "calculate", "slips", index, "misconception")
            wrong.append(_unknown(place, "an entry of misconceptions.yaml", slip.misconception, known.misconceptions))
            yield wrong[-1]
        if isinstance(finding := _readable((*path, "calculate", "slips", index, "expression"), slip.expression, calculation.given), Finding):
            wrong.append(finding)
            yield finding
    if isinstance(finding := _readable((*path, "calculate", "expression"), calculation.expression, calculation.given), Finding):
        wrong.append(finding)
        yield finding
    if wrong:
        return
    try:
        work_out(part, calculation, materials)
    except ValueError as error:
        mend = "check the facts under `given:` and their units"
        yield Finding(path=(*path, "calculate", "expression"), expected="an expression with a number for an answer", found=str(error), mend=mend)


def _readable(path: FieldPath, source: str, given: Collection[str]) -> Finding | None:
    try:
        names = Expression(source).names
    except ExpressionError as error:
        return Finding(path=path, expected="an expression", found=f'"{source}"', mend=str(error))
    if missing := [name for name in names if name not in given]:
        mend = did_you_mean(missing[0], given, f'say under `given:` which fact "{missing[0]}" is')
        return Finding(path=path, expected="names that stand under `given:`", found=f'"{missing[0]}"', mend=mend)
    return None


def _samples(part: WrittenPart, creditable: Collection[str], path: FieldPath) -> Iterator[Finding]:
    for index, sample in enumerate(part.samples):
        for n, idea in enumerate(sample.earns):
            if creditable and idea not in creditable:
                yield _unknown((*path, "samples", index, "earns", n), "an idea of this part", idea, creditable)
    if part.marks >= 2 and len(part.samples) < FEWEST_SAMPLES:
        where = (*path, "samples") if part.samples else path
        yield Finding(
            path=where, expected=f"{FEWEST_SAMPLES} sample answers or more", found=str(len(part.samples)), severity=Severity.WARNING,
            rule="few_samples", mend="add a strong one, a partial one and one off the focus",
        )  # fmt: skip
    elif part.marks >= 2 and not any(not sample.earns for sample in part.samples):
        yield Finding(
            path=(*path, "samples"), expected="a sample answer that earns nothing", found="none", severity=Severity.WARNING, rule="few_samples",
            mend="add one that is off the focus or says too little",
        )  # fmt: skip
