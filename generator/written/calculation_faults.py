"""What is wrong with the numbers that a written question asks for: names without a fact, units that do not fit, marks that do not add up."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from generator.diagnostics import did_you_mean
from generator.quantities.expression import Expression, ExpressionError
from generator.quantities.fact import Fact
from generator.quantities.text import references
from generator.records.field_path import FieldPath
from generator.records.finding import Finding
from generator.written.calculation import Worked, named_number, read_off, work_out
from generator.written.known import Known, unknown, wrong_fact
from generator.written.materials import Materials
from generator.written.record import Calculation, NamedNumber, Reading, WrittenPart, part_named


def calculation_faults(
    part: WrittenPart, calculation: Calculation, path: FieldPath, earlier: Sequence[str], known: Known, materials: Materials, results: dict[str, Fact]
) -> Iterator[Finding]:  # fmt: skip
    """Everything wrong with a calculation; where nothing is, what it gives is noted in `results` for later parts."""
    if part.award.rule or (part.award.setup or 0) + (part.award.answer or 0) != part.marks:
        found = f"rule: {part.award.rule}" if part.award.rule else str((part.award.setup or 0) + (part.award.answer or 0))
        mend = "write `award: {setup: 1, answer: 1}`, or as many as the part has marks"
        yield Finding(path=(*path, "award"), expected=f"marks for set-up and answer that make {part.marks}", found=found, mend=mend)
    here = (*path, "calculate")
    wrong = [*_given(calculation, here, earlier, known), *_slips(calculation, here, known), *_readable((*here, "expression"), calculation.expression, calculation.given)]
    yield from wrong
    yield from _carried_on(part, calculation, path, results)
    if wrong or any(part_named(key) and part_named(key) not in results for key in calculation.given.values()):
        return
    try:
        worked = work_out(part, calculation, materials, results)
    except ValueError as error:
        yield _no_answer((*here, "expression"), error)
        return
    results[part.id] = worked.result
    yield from _slips_in_texts(part, worked, path)


def number_faults(name: str, number: NamedNumber, path: FieldPath, known: Known, materials: Materials) -> Iterator[Finding]:
    """Everything wrong with a number of the question's own."""
    wrong = [*_given(number, path, (), known), *_readable((*path, "expression"), number.expression, number.given)]
    yield from wrong
    if not wrong:
        try:
            named_number(name, number, materials)
        except ValueError as error:
            yield _no_answer((*path, "expression"), error)


def _no_answer(path: FieldPath, error: ValueError) -> Finding:
    mend = "check the facts under `given:` and their units"
    return Finding(path=path, expected="an expression with a number for an answer", found=str(error), mend=mend)


def reading_faults(part: WrittenPart, reading: Reading, path: FieldPath, known: Known, materials: Materials, results: dict[str, Fact]) -> Iterator[Finding]:
    """Everything wrong with a value to read off."""
    if part.award.rule or part.award.setup or part.award.answer != part.marks:
        yield Finding(path=(*path, "award"), expected=f"`award: {{answer: {part.marks}}}`", found="another award", mend="a reading has no set-up and no ideas")
    wrong = list(wrong_fact((*path, "read", "fact"), reading.fact, known, ""))
    yield from wrong
    if not wrong:
        try:
            results[part.id] = read_off(part, reading, materials).result
        except (TypeError, ValueError) as error:
            yield Finding(path=(*path, "read", "fact"), expected="a fact that is one known number", found=str(error), mend="name another fact")


def _given(number: NamedNumber, path: FieldPath, earlier: Sequence[str], known: Known) -> Iterator[Finding]:
    for name, key in number.given.items():
        place = (*path, "given", name)
        if not (part := part_named(key)):
            yield from wrong_fact(place, key, known, "")
        elif part not in earlier:
            mend = did_you_mean(part, earlier, "name a part that stands above") if earlier else "name a fact"
            yield Finding(path=place, expected="an earlier part", found=f'"{part}"', mend=mend)


def _carried_on(part: WrittenPart, calculation: Calculation, path: FieldPath, results: Mapping[str, Fact]) -> Iterator[Finding]:
    """A part that rests on another's number takes it from there, or no wrong one could be followed up."""
    for one in part.depends_on:
        if one in results and one not in calculation.carries_on:
            mend = f"put `part:{one}` in the place of the fact, as in `given: {{{one}: 'part:{one}'}}`, so that a wrong result can be carried on"
            yield Finding(path=(*path, "calculate", "given"), expected=f"the result of part {one}", found="facts alone", mend=mend)


def _slips(calculation: Calculation, path: FieldPath, known: Known) -> Iterator[Finding]:
    for index, slip in enumerate(calculation.slips):
        if slip.misconception not in known.misconceptions:
            place = (*path, "slips", index, "misconception")
            yield unknown(place, "an entry of misconceptions.yaml", slip.misconception, known.misconceptions)
        yield from _readable((*path, "slips", index, "expression"), slip.expression, calculation.given)


def _readable(path: FieldPath, source: str, given: Collection[str]) -> Iterator[Finding]:
    try:
        names = Expression(source).names
    except ExpressionError as error:
        yield Finding(path=path, expected="an expression", found=f'"{source}"', mend=str(error))
        return
    if missing := [name for name in names if name not in given]:
        mend = did_you_mean(missing[0], given, f'say under `given:` which fact "{missing[0]}" is')
        yield Finding(path=path, expected="names that stand under `given:`", found=f'"{missing[0]}"', mend=mend)


def _slips_in_texts(part: WrittenPart, worked: Worked, path: FieldPath) -> Iterator[Finding]:
    """A sample that names a slip whose number is, as it happens, right, or that of another slip."""
    for index, sample in enumerate(part.samples):
        for name in ("text", "comment"):
            for reference in references(getattr(sample, name)):
                if reference.key.startswith("slip.") and reference.key not in worked.words:
                    mend = "with these numbers it comes too near to the answer or to another slip: name another slip"
                    yield Finding(
                        path=(*path, "samples", index, name), expected="a slip with a number of its own", found=reference.text, mend=mend, fragment=reference.text
                    )  # fmt: skip
