"""Sums asked with supposed numbers: where all that a sum needs stands in its prompt, the page need not tell its result as well."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from dataclasses import replace

from generator.quantities.fact import Fact
from generator.quantities.working import Substitution
from generator.questions.fresh import Sum, Variant, inputs_of, tells, variants
from generator.questions.making import FEWEST_DISTRACTORS
from generator.questions.misconception import Catalogue
from generator.questions.mistake import comes_out, of_rounding, options
from generator.questions.question import Choice, Made, NumberEntry

SAID = "Suppose the numbers were different."
_NUMBER = r"(?<![\d.,\u202f])(?:{})(?![\u202f.,]?\d)"


def supposed(item: Made, catalogue: Catalogue, salt: str, shown: Collection[str] = ()) -> Made:
    """The question with drawn numbers, if it is a sum whose inputs all stand in its prompt; any other question as it is.

    A record's page prints each number that follows from its data, so the record's own sum could be copied from it. A sum
    that must be read off a chart first stays, for there the reading is what is asked. `shown` are the numbers of the page with
    their units: preferred is a draw whose result is none of them, cannot be taken for the record's own, and is no bare power of
    ten, which could be guessed; then one that meets none of them in its inputs; then one that tells more slips apart.
    """
    if not isinstance(item, NumberEntry | Choice) or item.supposed or not _stands_in_its_prompt(item):
        return item
    drawn = [one for one in variants(item, catalogue, f"{salt}/supposed") if comes_out(one.right)]
    told = {*shown, *(fact.shown_exactly for fact in _inputs(item))}

    def worth(one: Variant) -> tuple[bool, int, int]:
        result = one.right.shown_exactly
        assert item.fact is not None
        is_own = one.accepted.low <= item.fact.number <= one.accepted.high
        guessed = is_own or result in told or one.right.shown_number.strip("0.\u202f") == "1"
        return guessed, sum(fact.shown_exactly in told for fact in one.given if fact.id not in item.kept), -len(one.slips)

    return _with(item, min(drawn, key=worth), catalogue) if drawn else item


def _stands_in_its_prompt(item: Sum) -> bool:
    """Whether each input that would be drawn is in the prompt with its unit, and its number there once and of no other input."""
    inputs = _inputs(item)
    shown = [fact.shown_number for fact in inputs]
    return (
        bool(inputs) and all(fact.is_number and tells(item.prompt, fact.shown_exactly) for fact in inputs) and len(set(shown)) == len(shown)
        and all(len(re.findall(_NUMBER.format(re.escape(number)), item.prompt)) == 1 for number in shown)
    )  # fmt: skip


def _inputs(item: Sum) -> list[Fact]:
    """What would be drawn; none of an answer in words, or of a number that is stated."""
    is_sum = item.fact and item.fact.is_number and isinstance(item.fact.working, Substitution)
    return [fact for fact in inputs_of(item) if fact.id not in item.kept] if is_sum else []


def _with(item: Sum, drawn: Variant, catalogue: Catalogue) -> Sum:
    """The question about the drawn numbers, its texts as well; as it was if too few mistakes lead to answers of their own."""
    assert item.fact is not None
    again_known = [(item.given[name], new) for name, new in drawn.known.items()]
    pairs = [(item.fact, drawn.right), *again_known, *zip(inputs_of(item), drawn.given, strict=True)]
    told = {old.shown_number: new.shown_number for old, new in pairs if old.is_number}

    def again(text: str) -> str:
        return _replaced(text, told)

    solution = again(item.solution.removesuffix(of_rounding(item.fact))) + of_rounding(drawn.right)
    known = {"given": {**item.given, **drawn.known}, "fact": drawn.right, "solution": solution, "supposed": True}
    prompt, hints = f"{SAID} {again(item.prompt)}", tuple(again(hint) for hint in item.hints)
    if isinstance(item, NumberEntry):
        return replace(
            item, **known, prompt=prompt, hints=hints, answer=drawn.right.shown_exactly, accepted=drawn.accepted, right_feedback=solution, slips=drawn.slips,
        )  # fmt: skip
    found = options(drawn.right, drawn.known, drawn.usable, catalogue, solution)
    return replace(item, **known, prompt=prompt, hints=hints, options=found) if len(found) > FEWEST_DISTRACTORS else item


def _replaced(text: str, told: Mapping[str, str]) -> str:
    """The text with other numbers in the places of those that stand in it, all at once."""
    longest_first = sorted(told, key=len, reverse=True)
    return re.sub(_NUMBER.format("|".join(map(re.escape, longest_first))), lambda found: told[found[0]], text)
