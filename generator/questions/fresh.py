"""Fresh numbers: the same sum again with other inputs, drawn once and for all, each with its own key, slips and working."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from generator.quantities import shown
from generator.quantities.expression import ExpressionError
from generator.quantities.fact import Fact, computed
from generator.quantities.working import Substitution
from generator.questions.misconception import Catalogue
from generator.questions.mistake import accepted, slips, tolerance
from generator.questions.question import Choice, Interval, Mistake, NumberEntry, Slip

WANTED = 8
"""Variants of one item."""
DRAWS = 2000
"""Before giving up; most items need a dozen, a small difference of two large numbers a thousand."""
LEAST, MOST = 0.6, 1.7
"""The range of the factor between the record's number and a drawn one: wide enough to change the sum, narrow enough for nature."""
SHIFT = 2.5
"""The most that a temperature on a scale with a zero of its own is moved [K]."""
APART = 0.15
"""The share by which a member of a series that keeps its months is moved by itself, at most."""
SPAN = 3.0
"""A drawn result lies within this factor of the record's own."""
FEWEST_FIGURES = 2
"""Of a drawn number."""
FEWEST_SLIPS = 2
"""That can still be told apart, where the record's own sum has as many."""
_READINGS = ("degC", "degF")


@dataclass(frozen=True, kw_only=True)
class Variant:
    """One sum with drawn numbers."""

    given: tuple[Fact, ...]
    right: Fact
    accepted: Interval
    slips: tuple[Slip, ...]
    known: Mapping[str, Fact]
    """What the mistakes were worked out from, by the names in them."""
    usable: tuple[Mistake, ...]

    @property
    def working(self) -> Substitution:
        """The expression with the drawn numbers put in, as it is printed."""
        assert isinstance(self.right.worked, Substitution)
        return self.right.worked


Sum = NumberEntry | Choice
"""Questions whose answer may be a sum."""


def variants(item: Sum, catalogue: Catalogue, salt: str, wanted: int = WANTED) -> tuple[Variant, ...]:
    """So many variants of a sum, or fewer where fair draws run out; none of an item that is no sum of numbers.

    A draw is fair if every number keeps its count of digits, inputs of one unit keep their order, the result stays near that
    of the record and on its side of zero and of 100 %, no input is a bare power of ten, and the usual slips can still be told
    from the key and from each other.
    """
    if item.fact is None or not isinstance(item.fact.working, Substitution) or not item.fact.is_number or not item.fact.number:
        return ()
    found: dict[tuple[str, ...], Variant] = {}
    for attempt in range(DRAWS):
        variant = _drawn(item, item.fact, item.fact.working, catalogue, f"{salt}/{item.id}/{attempt}")
        if variant is not None:
            found.setdefault(tuple(fact.shown_exactly for fact in variant.given), variant)
        if len(found) == wanted:
            break
    return tuple(found.values())


def _drawn(item: Sum, right: Fact, working: Substitution, catalogue: Catalogue, salt: str) -> Variant | None:
    inputs = {fact.id: fact for fact in inputs_of(item)}
    fresh = {fact.id: fact if fact.id in item.kept else fresh_fact(fact, f"{salt}/{fact.id}") for fact in inputs.values()}
    fresh |= _made_one([inputs[part] for part in item.parts], fresh)
    if any(new is None for new in fresh.values()) or not same_order(inputs, fresh):
        return None
    try:
        answer = _again(right, working, fresh)
        if answer is None or not near(right, answer) or not (item.likely is None or item.likely.meets(Interval(answer.number, answer.number))):
            return None
        given = {name: followed(fact, {right.id: answer, **fresh}) for name, fact in item.given.items()}
        known = {name: replace(new, unit=item.given[name].unit) for name, new in given.items() if new is not None}
        usable = tuple(mistake for mistake in item.mistakes if set(mistake.names) <= set(known))
        wrong = slips(answer, known, usable, catalogue)
    except ExpressionError:
        return None
    told = len(item.slips) if isinstance(item, NumberEntry) else len(item.options) - 1
    if len(wrong) < min(FEWEST_SLIPS, told, len(usable)):
        return None
    within = accepted(answer.number, answer.figures, tolerance(answer))
    return Variant(given=tuple(fresh[key] for key in inputs), right=answer, accepted=within, slips=wrong, known=known, usable=usable)


def inputs_of(item: Sum) -> tuple[Fact, ...]:
    """What a sum is worked out from, each once; then what its prompt tells besides and only mistakes use, such as a third sort of bottles."""
    working = item.fact.working if item.fact else None
    used = {fact.id: fact for _, fact in working.given if isinstance(fact, Fact)} if isinstance(working, Substitution) else {}
    known = {fact.shown_exactly for fact in used.values()}
    told = {
        fact.id: fact for fact in item.given.values()
        if fact.is_number and fact.shown_exactly not in known and tells(item.prompt, fact.shown_exactly) and followed(fact, used) is None
    }  # fmt: skip
    return (*used.values(), *told.values())


def tells(text: str, shown_exactly: str) -> bool:
    """Whether a number with its unit stands in the text, and not only as the end or the beginning of another."""
    return re.search(rf"(?<![\d.,\u202f]){re.escape(shown_exactly)}(?![\w⁻²³\u202f]|[.,]\d)", text) is not None


def _made_one(parts: Sequence[Fact], fresh: Mapping[str, Fact | None]) -> dict[str, Fact | None]:
    """The largest of the parts as what the others leave of one; None where they leave too little or too much for its digits."""
    if not parts:
        return {}
    largest = max(parts, key=lambda fact: fact.number)
    others = [fresh[part.id] for part in parts if part is not largest]
    rest = 1 - sum((Decimal(fact.written) for fact in others if fact is not None), Decimal(0))
    fits = rest > 0 and rest.adjusted() == Decimal(repr(largest.number)).adjusted()
    return {largest.id: _with(largest, float(rest), _plain(rest)) if fits else None}


def _again(fact: Fact, working: Substitution, fresh: Mapping[str, Fact]) -> Fact | None:
    """The same computation with other inputs; None where an input is not among them."""
    given = {name: followed(one, fresh) for name, one in working.given if isinstance(one, Fact)}
    if fact.unit is None or any(one is None for one in given.values()):
        return None
    known = {name: one for name, one in given.items() if one is not None}
    made = computed(
        fact.id, fact.name, working.expression, known, fact.unit, method=fact.method, figures=fact.figures, bare=working.bare
    )  # fmt: skip
    return replace(made, asked_figures=fact.asked_figures) if made.is_number or made.is_series else None


def followed(fact: Fact, fresh: Mapping[str, Fact]) -> Fact | None:
    """The fact as it follows from the drawn numbers; None where it hangs on others."""
    if fact.id in fresh:
        return fresh[fact.id]
    return _again(fact, fact.working, fresh) if isinstance(fact.working, Substitution) else None


def fresh_fact(fact: Fact, salt: str, *, turned: bool = True) -> Fact | None:
    """The fact with a drawn value, written with as many digits as before; None if the draw changed their number.

    A series is turned to begin in another month, or keeps its months where what is around it speaks of them.
    """
    lot = _lots(salt)
    if fact.is_series:
        values = _series(fact, lot) if turned else _series_in_place(fact, lot)
        members = [_plain(value) for value in values]
        return _with(fact, tuple(float(value) for value in values), " ".join(members))
    if not fact.is_number:
        return None
    value = _one(Decimal(repr(fact.number)), _figures_shown(fact), fact, next(lot))
    return None if value is None else _with(fact, float(value), _plain(value))


def _with(fact: Fact, value: float | tuple[float, ...], written: str) -> Fact:
    return replace(fact, value=value, written=written, working=None, plus_minus=None, low=None, high=None)


def _one(value: Decimal, figures: int, fact: Fact, lot: float) -> Decimal | None:
    if fact.unit and fact.unit.label in _READINGS:
        moved = value + Decimal(repr((2 * lot - 1) * SHIFT))
        return None if moved.is_signed() != value.is_signed() else moved.quantize(Decimal(1).scaleb(-_places(fact)))
    if value == 0:
        return value
    drawn = shown.rounded(float(value) * LEAST * (MOST / LEAST) ** lot, figures)
    is_share = fact.unit is not None and fact.unit.label == "percent" or (fact.unit is None or not fact.unit.label) and abs(value) < 1
    most = 1 if is_share and abs(value) < 1 and (fact.unit is None or not fact.unit.label) else 100
    if is_share and abs(drawn) >= most or drawn.adjusted() != value.adjusted() or _is_shortcut(drawn) and not _is_shortcut(value):
        return None
    return drawn


def _series(fact: Fact, lot: Iterator[float]) -> tuple[Decimal, ...]:
    """The year moved by some months and made warmer, cooler, wetter or drier as a whole, with the decimals that it has."""
    places, turned, by = _places(fact), int(next(lot) * len(fact.series)), next(lot)
    step = Decimal(1).scaleb(-places)
    year = [Decimal(repr(value)) for value in (*fact.series[turned:], *fact.series[:turned])]
    if fact.unit and fact.unit.label in _READINGS:
        return tuple((value + Decimal(repr((2 * by - 1) * SHIFT))).quantize(step) for value in year)
    factor = Decimal(repr(LEAST * (MOST / LEAST) ** by))
    return tuple((value * factor).quantize(step) for value in year)


def _series_in_place(fact: Fact, lot: Iterator[float]) -> tuple[Decimal, ...]:
    """The year made warmer, cooler, wetter or drier as a whole, and each month of water a little by itself; what is 0 stays 0."""
    step, by = Decimal(1).scaleb(-_places(fact)), next(lot)
    year = [Decimal(repr(value)) for value in fact.series]
    if fact.unit and fact.unit.label in _READINGS:
        return tuple((value + Decimal(repr((2 * by - 1) * SHIFT))).quantize(step) for value in year)
    factor = LEAST * (MOST / LEAST) ** by
    return tuple((value * Decimal(repr(factor * (1 + (2 * next(lot) - 1) * APART)))).quantize(step) for value in year)


def _figures_shown(fact: Fact) -> int:
    """Digits that say something: zeros behind the last other digit count only behind a decimal point."""
    written = "".join(character for character in fact.shown_number if character.isdigit() or character == ".").lstrip("0.")
    digits = written.replace(".", "") if "." in fact.shown_number else written.rstrip("0")
    return max(FEWEST_FIGURES, min(len(digits.lstrip("0")), fact.figures))


def _places(fact: Fact) -> int:
    """Decimals that the fact is shown with."""
    members = fact.shown_members if fact.is_series else (fact.shown_number,)
    return max(shown.decimals(member) for member in members)


def _plain(value: Decimal) -> str:
    return f"{value:f}"


def _is_shortcut(value: Decimal) -> bool:
    """1, 10, 0.1 ...: a sum with such a number tests nothing."""
    return value.normalize().copy_abs().as_tuple().digits == (1,)


def same_order(inputs: Mapping[str, Fact], fresh: Mapping[str, Fact | None]) -> bool:
    """Whether numbers of one unit stay larger and smaller than each other, and different ones different."""
    numbers = [(fact, fresh[key]) for key, fact in inputs.items() if fact.is_number]
    return all(
        _sign(a.number - b.number) == _sign(new_a.number - new_b.number)
        for n, (a, new_a) in enumerate(numbers) for b, new_b in numbers[:n]
        if a.unit == b.unit and new_a is not None and new_b is not None
    )  # fmt: skip


def near(right: Fact, answer: Fact) -> bool:
    """Whether a drawn result is of the size of the record's own, and on its side of zero and of 100 %."""
    old, new = right.number, answer.number
    if _sign(old) != _sign(new) or not 1 / SPAN <= abs(new / old) <= SPAN:
        return False
    return right.unit is None or right.unit.label != "percent" or (abs(old) < 100) == (abs(new) < 100)


def _sign(value: float) -> int:
    return (value > 0) - (value < 0)


def _lots(salt: str) -> Iterator[float]:
    """Numbers from 0 to 1 that hang on the salt alone."""
    digest = hashlib.sha256(salt.encode()).digest()
    while True:
        for start in range(0, len(digest), 4):
            yield int.from_bytes(digest[start : start + 4], "big") / 2**32
        digest = hashlib.sha256(digest).digest()


def listing(variant: Variant, label: Callable[[Fact], str]) -> str:
    """The drawn numbers in words: `stock 5200 kg N ha⁻¹; outflow 103 kg N ha⁻¹ yr⁻¹`; a series month by month."""
    return "; ".join(f"{label(fact)}: {_listed(fact)}" for fact in variant.given)


def _listed(fact: Fact) -> str:
    if not fact.is_series:
        return fact.shown_exactly
    months: Sequence[str] = shown.MONTHS if len(fact.series) == len(shown.MONTHS) else [str(n + 1) for n in range(len(fact.series))]
    members = ", ".join(f"{month} {member}" for month, member in zip(months, fact.shown_members, strict=True))
    return f"{members} ({fact.unit.shown})" if fact.unit and fact.unit.shown else members
