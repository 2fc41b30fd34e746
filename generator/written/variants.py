"""Parallel variants of a written question: its calculations again with other numbers, which all its parts and texts share.

Numbers are drawn by the engine of the self-check (`questions/fresh.py`), under the same rules of fairness. They are drawn once for the
whole question, where a record states them, and everything else follows by the records' own workings, so that text, set-up, key and range
agree. What stands only in a chart cannot follow, nor can a value that is worked out in steps other than one formula, nor a balance of which
the calculations use a part alone; then there are no variants, and `because` says why. Parts that are marked by ideas are left out: whether an idea still holds, only its author knows.
"""

from __future__ import annotations

from collections import ChainMap
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from generator.quantities.fact import Fact
from generator.quantities.text import references
from generator.quantities.working import Given, Substitution
from generator.questions.fresh import DRAWS, FEWEST_SLIPS, WANTED, followed, fresh_fact, near, same_order
from generator.written.guide import Guided, guided
from generator.written.record import Stimulus, WrittenPart, part_named


class _NoVariants(Exception):
    """Why a question has no variants."""


@dataclass(frozen=True)
class Variant:
    """A question of calculations with drawn numbers."""

    stimulus: tuple[str, ...]
    """The texts that the calculations need, with the drawn numbers in them."""
    question: Guided
    """The parts that calculate, with their guides and samples."""


@dataclass(frozen=True)
class Variants:
    """What could be drawn."""

    drawn: tuple[Variant, ...]
    because: str = ""
    """Why there are none."""


def variants(question: Guided, wanted: int = WANTED) -> Variants:
    """So many variants of the question's calculations, or fewer where fair draws run out; the same at each call."""
    try:
        plan = _Plan(question)
    except _NoVariants as none:
        return Variants((), str(none))
    found: dict[tuple[str, ...], Variant] = {}
    for attempt in range(DRAWS):
        drawn = plan.drawn(f"{question.name}/variant/{attempt}")
        if drawn is not None:
            found.setdefault(drawn.stimulus, drawn)
        if len(found) == wanted:
            break
    return Variants(tuple(found.values()), "" if found else "No draw of other numbers is fair.")


class _Plan:
    """What has to be drawn for a question, and what follows from it."""

    def __init__(self, question: Guided) -> None:
        self.whole, self.materials = question, question.materials
        parts = tuple(part for part in question.question.parts if part.calculate is not None)
        if not parts:
            raise _NoVariants("It has no calculation.")
        texts = [one.text for one in question.question.stimulus if one.text] + [part.prompt for part in parts]
        told = dict.fromkeys(reference.key for text in texts for reference in references(text))
        given = dict.fromkeys(key for part in parts for key in _given(part))
        if missing := [key for key in given if key not in told]:
            raise _NoVariants(f"{self._name(missing[0])} stands in no text of the question, only in a chart or a table.")
        self.sources = {key: fact for one in given for key, fact in self._sources(one)}
        numbers = (key for number in question.question.numbers.values() for key in number.given.values())
        followed = {key: self._touched(key) for key in dict.fromkeys((*given, *told, *numbers))}
        if unknown := [key for key, touched in followed.items() if touched is None]:
            raise _NoVariants(f"{self._name(unknown[0])} cannot follow: it is worked out in other steps than one formula.")
        self._require_whole_sums([key for key, touched in followed.items() if not touched and key in told])
        self.parts = tuple(self._with_samples_that_follow(part) for part in parts)
        quoted = (one.key for part in self.parts for sample in part.samples for text in (sample.text, sample.comment) for one in references(text))
        self.changing = [key for key in dict.fromkeys((*followed, *(key for key in quoted if ":" in key))) if self._touched(key)]
        self.stimulus = tuple(_needed(question.question.stimulus, self.changing))

    def _require_whole_sums(self, staying: Sequence[str]) -> None:
        """A number that the text gives and that stays must not be added to one that is drawn: a balance that a reader can check would break."""
        for key in staying:
            record = key.partition(":")[0]
            for sum_key in (one for one in self.materials.facts if one.startswith(f"{record}:")):
                working = self.materials.facts[sum_key].working
                if not isinstance(working, Substitution) or not working.expression.is_sum:
                    continue
                inputs = [_beside(key, one) for _, one in working.given]
                if key in inputs and any(self._touched(one) for one in inputs if one in self.materials.facts):
                    raise _NoVariants(f"{self._name(key)} would stay as it is, and no longer add up with the drawn numbers.")

    def drawn(self, salt: str) -> Variant | None:
        """One variant, or None where the draw is not fair."""
        fresh = {key: new for key, fact in self.sources.items() if (new := fresh_fact(fact, f"{salt}/{key}")) is not None}
        if len(fresh) < len(self.sources):
            return None
        try:
            changed = fresh | {key: self._followed(key, fresh) for key in self.changing}
            if not same_order({key: self.materials.facts[key] for key in changed}, changed):  # most draws fall here, before the costly guide is made
                return None
            materials = replace(self.materials, facts=ChainMap(changed, self.materials.facts))
            made = guided(self.whole.name, self.whole.question.model_copy(update={"parts": self.parts}), materials)
        except (KeyError, ValueError, ZeroDivisionError):
            return None
        return Variant(tuple(materials.filled(text) for text in self.stimulus), made) if self._is_fair(made, changed) else None

    def _is_fair(self, made: Guided, changed: Mapping[str, Fact]) -> bool:
        """Results near the record's own, slips that can still be told apart, and the same order of all numbers of one unit."""
        before, after = {key: self.materials.facts[key] for key in changed}, dict(changed)
        for guide in made.guides:
            old, new = self.whole[guide.part.id].worked, guide.worked
            assert old is not None and new is not None
            if not near(old.result, new.result) or len(new.entry.slips) < min(FEWEST_SLIPS, len(old.entry.slips)):
                return False
            before[guide.part.id], after[guide.part.id] = old.result, new.result
        return same_order(before, after)

    def _sources(self, key: str) -> Iterator[tuple[str, Fact]]:
        """The stated facts that a fact rests on, by key; constants of a formula are no facts of a record, and stay."""
        fact = self.materials.facts[key]
        if fact.working is None:
            yield key, fact
        elif not isinstance(fact.working, Substitution):
            raise _NoVariants(f"{self._name(key)} cannot be drawn: it is worked out in other steps than one formula.")
        else:
            for _, one in fact.working.given:
                if (beside := _beside(key, one)) in self.materials.facts:
                    yield from self._sources(beside)

    def _touched(self, key: str) -> bool | None:
        """Whether a fact changes with the drawn ones; None where that cannot be told."""
        if key in self.sources or key not in self.materials.facts:
            return key in self.sources
        working = self.materials.facts[key].working
        if not isinstance(working, Substitution):
            return False if working is None else None
        touched = [self._touched(_beside(key, one)) for _, one in working.given]
        return None if None in touched else any(touched)

    def _followed(self, key: str, fresh: Mapping[str, Fact]) -> Fact:
        """A fact as it follows from the drawn ones and from all that stays as it is."""
        found = followed(self.materials.facts[key], dict(self._inputs(key, fresh)))
        if found is None:
            raise KeyError(key)
        return found

    def _inputs(self, key: str, fresh: Mapping[str, Fact]) -> Iterator[tuple[str, Fact]]:
        """What a changing fact rests on in the end, by the ids in its workings: drawn facts, and those that stay."""
        fact = self.materials.facts[key]
        if key in fresh:
            yield fact.id, fresh[key]
        elif isinstance(fact.working, Substitution):
            for _, one in fact.working.given:
                beside = _beside(key, one)
                if self._touched(beside):
                    yield from self._inputs(beside, fresh)
                elif isinstance(one, Fact):
                    yield one.id, one

    def _with_samples_that_follow(self, part: WrittenPart) -> WrittenPart:
        """Without the samples that quote what cannot follow."""
        kept = tuple(
            sample for sample in part.samples
            if all(self._touched(one.key) is not None for text in (sample.text, sample.comment) for one in references(text) if one.record)
        )  # fmt: skip
        return part.model_copy(update={"samples": kept})

    def _name(self, key: str) -> str:
        return f"“{self.materials.facts[key].name}” ({key})"


def _beside(key: str, fact: Given) -> str:
    """The key of another fact of the same record."""
    return f"{key.partition(':')[0]}:{fact.id}"


def _given(part: WrittenPart) -> Iterator[str]:
    assert part.calculate is not None
    yield from (key for key in part.calculate.given.values() if not part_named(key))


def _needed(stimulus: Sequence[Stimulus], changing: Collection[str]) -> Iterator[str]:
    """The texts but for those that only lead to a chart or a table."""
    for n, one in enumerate(stimulus):
        leads_on = n + 1 < len(stimulus) and not stimulus[n + 1].text
        if one.text and (not leads_on or any(reference.key in changing for reference in references(one.text))):
            yield one.text
