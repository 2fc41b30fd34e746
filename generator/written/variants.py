"""Parallel variants of a written question: its calculations again with other numbers, which all its parts, texts and tables share.

Numbers are drawn by the engine of the self-check (`questions/fresh.py`), under the same rules of fairness. They are drawn once for the
whole question and written into the records' files, and everything else follows as it does from any file: text, table, set-up, key and
range agree. Numbers of a chart come as its table. A budget that closes is closed again, what is doubtful in no file is not made so, and
the real Earth, places and days stay as they are. Parts that are marked by ideas are left out: whether an idea still holds, only its
author knows. Where nothing can be drawn, `because` says why.
"""

from __future__ import annotations

import re
from collections import ChainMap
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal

from figures import DataTable

from generator.quantities.fact import Fact
from generator.quantities.text import references
from generator.quantities.working import Substitution
from generator.questions.fresh import DRAWS, FEWEST_SLIPS, LEAST, MOST, WANTED, fresh_fact, near, same_order
from generator.written.guide import Guided, guided
from generator.written.materials import Rewritten, Unchangeable
from generator.written.record import Stimulus, WrittenPart, part_named

STAYING = ("deg", "d")
"""Units of what a name or a date in the text depends on: where a place lies, and on which day something was measured."""


TRIES = 6
"""Draws of one number, to find out whether its file can state another one."""
_OF_CHARTS = re.compile(r"\b(charts?|curves?|diagrams?|graphs?|pyramids?|tables?)\b", re.IGNORECASE)
_SENTENCES = re.compile(r"(?<=[.!?])\s+(?=[A-Z])")


class _NoVariants(Exception):
    """Why a question has no variants."""


@dataclass(frozen=True)
class Variant:
    """A question of calculations with drawn numbers."""

    stimulus: tuple[str | DataTable, ...]
    """What the calculations need, with the drawn numbers in it: texts, and tables in place of charts."""
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
            found.setdefault(tuple(map(str, drawn.stimulus)), drawn)
        if len(found) == wanted:
            break
    return Variants(tuple(found.values()), "" if found else "No draw of other numbers is fair.")


class _Plan:
    """What has to be drawn for a question, and what shows it."""

    def __init__(self, question: Guided) -> None:
        self.whole, self.materials = question, question.materials
        self.parts = tuple(part for part in question.question.parts if part.calculate is not None)
        if not self.parts:
            raise _NoVariants("It has no calculation.")
        if read := next((part for part in self.parts for one in part.carries_on if question[one].part.calculate is None), None):
            raise _NoVariants(f"Part {read.id} carries on what an earlier part reads off or says, and that cannot be drawn.")
        texts = [one.text for one in question.question.stimulus if one.text] + [part.prompt for part in self.parts]
        self.told = tuple(dict.fromkeys(reference.key for text in texts for reference in references(text)))
        self.given = tuple(dict.fromkeys(key for part in self.parts for key in _given(part)))
        self.asked: dict[str, tuple[str, ...] | None] = {}
        self.hindrances: dict[str, str] = {}
        self.sources = dict.fromkeys(source for key in self.given for source in self._sources(key))
        if not self.sources:
            raise _NoVariants(f"{self._name(self.given[0])} {next(iter(self.hindrances.values()), 'rests on no number that could be drawn.')}")
        self.gone: Mapping[str, None] = dict.fromkeys(one for key in self.sources for one in self.asked[key] or () if one not in self.sources)
        self.closing = tuple(self._closing())
        self.shown = tuple(self._shown())

    def _sources(self, key: str) -> Iterator[str]:
        """The stated numbers that a fact rests on and that a file can state otherwise; constants of nature stay."""
        record, _, name = key.partition(":")
        fact = self.materials.facts[key]
        if fact.working is None:
            if self._can_be_drawn(key):
                yield key
        elif isinstance(fact.working, Substitution):
            for _, one in fact.working.given:
                if isinstance(one, Fact) and (beside := f"{record}:{one.id}") in self.materials.facts:
                    yield from self._sources(beside)
        else:
            yield from self._tried(record, name)

    def _tried(self, record: str, name: str) -> Iterator[str]:
        """The stated numbers of the same part that bring about another value when they are drawn."""
        part = name.rpartition(".")[0]
        beside = [key for key in self.materials.facts if key.startswith(f"{record}:{part}.") and self._can_be_drawn(key)]
        for key in beside:
            new = fresh_fact(self.materials.facts[key], f"{key}/tried", turned=False)
            made = self.materials.rewritten(record, {key.partition(":")[2]: new}) if new else None
            if made and made.facts[name].value != self.materials.facts[f"{record}:{name}"].value:
                yield key

    def _can_be_drawn(self, key: str) -> bool:
        """Whether a file can state another number there; a number beside it that would contradict it, and that nobody is told, may go for that."""
        if key not in self.asked:
            self.asked[key] = self._way_of_drawing(key)
        return self.asked[key] is not None

    def _way_of_drawing(self, key: str) -> tuple[str, ...] | None:
        """What must go from the file when the number is drawn; None where it cannot be."""
        fact = self.materials.facts[key]
        if fact.working is not None or fact.unit and fact.unit.label in STAYING or not (fact.is_series or fact.is_number and fact.number):
            return None
        tried = [new for n in range(TRIES) if (new := fresh_fact(fact, f"{key}/{n}", turned=False)) and new.value != fact.value]
        ways = ((), *((one,) for one in self._untold_beside(key)))
        return next((way for way in ways if any(self._is_possible({key: new, **dict.fromkeys(way)}) for new in tried)), None)

    def _untold_beside(self, key: str) -> Iterator[str]:
        """The stated numbers of the same part that neither texts nor calculations name."""
        part = key.rpartition(".")[0]
        yield from (
            one for one, fact in self.materials.facts.items()
            if one.startswith(f"{part}.") and one not in (*self.told, *self.given) and fact.working is None and fact.is_number
        )  # fmt: skip

    def _is_possible(self, numbers: Mapping[str, Fact | None]) -> bool:
        try:
            made = self._rewritten(numbers)
        except Unchangeable as hindrance:
            self.hindrances.update(dict.fromkeys(numbers, str(hindrance)))
            return False
        return made is not None and all(made[record].facts[name].value is not None for key in self.given for record, _, name in [key.partition(":")] if record in made)

    def _closing(self) -> Iterator[tuple[str, str]]:
        """Each budget that is drawn in part and closes, with the number that takes up the rest: the largest that no calculation uses, if there is one."""
        sums = {key: working for record in dict.fromkeys(map(_record_of, self.sources)) for key, working in self._sums(record)}
        within = {f"{_record_of(key)}:{one.id}" for key, working in sums.items() for _, one in working.given if isinstance(one, Fact)}
        for key in sums:
            if key in within or self.materials.facts[key].value != 0:
                continue
            terms = dict.fromkeys(self._sources(key))
            if terms.keys() & self.sources.keys():
                rest = max(terms, key=lambda one: (one not in self.sources, self.materials.facts[one].number))
                yield key, rest

    def _sums(self, record: str) -> Iterator[tuple[str, Substitution]]:
        for key in (one for one in self.materials.facts if one.startswith(f"{record}:")):
            working = self.materials.facts[key].working
            if isinstance(working, Substitution) and working.expression.is_sum:
                yield key, working

    def _shown(self) -> Iterator[Stimulus]:
        """The texts, and the charts that show given numbers which stand in no text; sentences that lead to other charts are left out."""
        stimulus = self.whole.question.stimulus
        untold = [key for key in self.given if key not in self.told and self._is_needed(key)]
        kept = {n for n, one in enumerate(stimulus) if not one.text and any(self._shows(one, key) for key in untold)}
        if missing := [key for key in untold if not any(self._shows(stimulus[n], key) for n in kept)]:
            raise _NoVariants(f"{self._name(missing[0])} stands in no text and in no table of the question.")
        for n, one in enumerate(stimulus):
            leads_on = n + 1 < len(stimulus) and not stimulus[n + 1].text and n + 1 not in kept
            text = _without_charts(one.text or "") if leads_on else one.text
            if n in kept or text:
                yield one.model_copy(update={"text": text})

    def _is_needed(self, key: str) -> bool:
        """Whether a given number cannot be worked out from other given ones, as a year's precipitation can from its months."""
        working = self.materials.facts[key].working
        inputs = [f"{_record_of(key)}:{one.id}" for _, one in working.given if isinstance(one, Fact)] if isinstance(working, Substitution) else []
        return not inputs or not set(inputs) <= set(self.given)

    def _shows(self, stimulus: Stimulus, key: str) -> bool:
        """Whether the table of a chart has a number in it."""
        record, _, name = (stimulus.chart or stimulus.table or "").partition("#")
        fact = self.materials.facts[key]
        as_it_is = self.materials.rewritten(record, {}) if record == _record_of(key) else None
        if as_it_is is None:
            return False
        cells = {cell for row in as_it_is.table(name).rows for cell in row}
        return cells >= set(fact.shown_members) if fact.is_series else bool(cells & {fact.shown_number, fact.shown_bare, fact.shown})

    def drawn(self, salt: str) -> Variant | None:
        """One variant, or None where the draw is not fair."""
        fresh: dict[str, Fact] = {}
        for key in self.sources:
            new = fresh_fact(self.materials.facts[key], f"{salt}/{key}", turned=False)
            if new is None:
                return None
            fresh[key] = new
        if not same_order({key: self.materials.facts[key] for key in fresh}, fresh):  # most draws fall here, before a file is read
            return None
        made = self._closed({**fresh, **self.gone})
        if made is None:
            return None
        facts = {f"{record}:{name}": fact for record, one in made.items() for name, fact in one.facts.items()}
        try:
            materials = replace(self.materials, facts=ChainMap(facts, self.materials.facts))
            question = guided(self.whole.name, self.whole.question.model_copy(update={"parts": self.parts}), materials)
        except (KeyError, ValueError, ZeroDivisionError):
            return None
        if not self._is_fair(question, facts) or not all(one.is_sound() for one in made.values()):
            return None
        return Variant(tuple(self._filled(one, made, question) for one in self.shown), question)

    def _filled(self, stimulus: Stimulus, made: Mapping[str, Rewritten], question: Guided) -> str | DataTable:
        if stimulus.text:
            return question.materials.filled(stimulus.text)
        record, _, name = (stimulus.chart or stimulus.table or "").partition("#")
        table = made[record].table(name)
        return replace(table, caption=f"In place of the diagram: {table.caption}") if stimulus.chart else table

    def _closed(self, fresh: Mapping[str, Fact | None]) -> dict[str, Rewritten] | None:
        """The records with the drawn numbers, and with their budgets closed; None where that is not possible."""
        made = self._rewritten(fresh)
        for total, rest in self.closing:
            if made is None:
                return None
            gap = made[_record_of(total)].facts[total.partition(":")[2]].number
            old = fresh.get(rest) or self.materials.facts[rest]
            closings = [self._rewritten({**fresh, rest: new}) for sign in (1, -1) if (new := _moved(old, self.materials.facts[rest], sign * gap))]
            made = next((one for one in closings if one and abs(one[_record_of(total)].facts[total.partition(":")[2]].number) < 1e-9), None)
        return made

    def _rewritten(self, numbers: Mapping[str, Fact | None]) -> dict[str, Rewritten] | None:
        made: dict[str, Rewritten] = {}
        for record in dict.fromkeys(map(_record_of, numbers)):
            one = self.materials.rewritten(record, {key.partition(":")[2]: fact for key, fact in numbers.items() if _record_of(key) == record})
            if one is None:
                return None
            made[record] = one
        return made

    def _is_fair(self, made: Guided, facts: Mapping[str, Fact]) -> bool:
        """Results near the record's own, slips that can still be told apart, and the same order of all numbers of one unit."""
        changed = {key: facts[key] for key in (*self.told, *self.given) if key in facts}
        before, after = {key: self.materials.facts[key] for key in changed}, dict(changed)
        for guide in made.guides:
            old, new = self.whole[guide.part.id].worked, guide.worked
            assert old is not None and new is not None
            if not near(old.result, new.result) or len(new.entry.slips) < min(FEWEST_SLIPS, len(old.entry.slips)):
                return False
            before[guide.part.id], after[guide.part.id] = old.result, new.result
        return same_order(before, after)

    def _name(self, key: str) -> str:
        return f"“{self.materials.facts[key].name}” ({key})"


def _record_of(key: str) -> str:
    return key.partition(":")[0]


def _without_charts(text: str) -> str:
    """The text without the sentences that speak of a chart.

    >>> _without_charts("A bay on the coast. The pyramid below shows biomass.")
    'A bay on the coast.'
    """
    return " ".join(one for one in _SENTENCES.split(text) if not _OF_CHARTS.search(one))


def _moved(fact: Fact, own: Fact, by: float) -> Fact | None:
    """The fact moved by so much, with as many digits before the decimal point as its own, and not far from it."""
    value = round(fact.number + by, 9)
    if not LEAST <= value / own.number <= MOST or Decimal(repr(value)).adjusted() != Decimal(repr(own.number)).adjusted():
        return None
    return replace(fact, value=value, written=f"{Decimal(repr(value)).normalize():f}", working=None)


def _given(part: WrittenPart) -> Iterator[str]:
    assert part.calculate is not None
    yield from (key for key in part.calculate.given.values() if not part_named(key))
