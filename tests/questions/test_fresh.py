"""Fresh numbers are fair: as many digits, the same order, a result that nature allows, and slips that can be told apart."""

from __future__ import annotations

from decimal import Decimal
from itertools import combinations

import pytest

from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.amount import Amount
from generator.quantities.units import unit
from generator.questions.fresh import WANTED, Variant, inputs_of, listing, variants
from generator.questions.making import Draft, number_entry
from generator.questions.misconception import Catalogue, Misconception
from generator.questions.mistake import Mistake
from generator.questions.question import NumberEntry
from tests.kinds.small_records import library

CATALOGUE = Catalogue({"a.b": Misconception(id="a.b", idea="Idea.", because="reason.", instead="remedy.")})
STOCK = stated("soil.stock", "Stock", Amount(value=4800.0, written="4800"), unit("kg N/ha"))
OUTFLOW = stated("soil.outflow", "Outflow", Amount(value=94.0, written="94"), unit("kg N/ha/yr"))
ENTRIES = [
    pytest.param(record, item, id=f"{record}/{item.id}")
    for record, items in library().questions.items()
    for item in items
    if isinstance(item, NumberEntry) and variants(item, library().catalogue, record)
]


def turnover(stock: Fact = STOCK, outflow: Fact = OUTFLOW) -> NumberEntry:
    time = computed("soil.turnover_time", "Turnover time", Expression("stock / outflow"), {"stock": stock, "outflow": outflow}, unit("yr"))
    made = number_entry(
        Draft(id="turnover", prompt="How long?", solution="So long."), time, {"stock": stock, "outflow": outflow},
        (Mistake("a.b", "outflow / stock", "turning it round"), Mistake("a.b", "stock * outflow", "multiplying")), CATALOGUE, otherwise="Divide.",
    )  # fmt: skip
    assert isinstance(made, NumberEntry)
    return made


def made(item: NumberEntry | None = None, salt: str = "salt") -> tuple[Variant, ...]:
    return variants(item or turnover(), CATALOGUE, salt)


def test_the_key_follows_from_the_numbers_that_are_shown() -> None:
    """The quotient is worked out again in decimals from the text that a reader sees."""
    for variant in made():
        stock, outflow = (Decimal(fact.shown_number.replace("\u202f", "")) for fact in variant.given)
        assert float(stock / outflow) == pytest.approx(variant.right.number, rel=1e-12)
        assert variant.accepted.low <= float(stock / outflow) <= variant.accepted.high


def test_slips_are_worked_out_from_the_same_numbers() -> None:
    for variant in made():
        stock, outflow = (fact.number for fact in variant.given)
        assert [True, True] == [slip.accepted.low <= wrong <= slip.accepted.high for slip, wrong in zip(variant.slips, (outflow / stock, stock * outflow), strict=True)]


def test_eight_different_sums_that_are_the_same_each_time() -> None:
    asked = [listing(variant, lambda fact: fact.name) for variant in made()]
    assert WANTED == len(set(asked))
    assert asked == [listing(variant, lambda fact: fact.name) for variant in made()]
    assert asked != [listing(variant, lambda fact: fact.name) for variant in made(salt="other")]


def test_the_record_s_own_numbers_are_not_touched() -> None:
    item = turnover()
    made(item)
    assert (4800.0, 94.0) == (item.given["stock"].value, item.given["outflow"].value)


def test_a_number_that_the_record_only_states_has_no_fresh_sum() -> None:
    item = number_entry(Draft(id="t", prompt="?", solution="."), STOCK, {}, (), CATALOGUE, otherwise=".")
    assert isinstance(item, NumberEntry)
    assert () == made(item)


def test_a_result_of_zero_gives_no_fresh_sum() -> None:
    nothing = stated("soil.stock", "Stock", Amount(value=0.0, written="0"), unit("kg N/ha"))
    assert () == made(turnover(stock=nothing))


def diet(*shares: str) -> NumberEntry:
    """A trophic level from shares of food at levels 1, 2, 3 ..."""
    given = {f"s{n}": stated(f"x.s{n}", f"Share {n}", Amount(value=float(text), written=text), unit("")) for n, text in enumerate(shares)}
    given |= {f"l{n}": stated(f"l{n}.level", f"Level {n}", Amount(value=n + 1.0, written=f"{n + 1}"), unit("")) for n in range(len(shares))}
    level = computed("x.level", "Level", Expression(" + ".join(["1", *(f"s{n} * l{n}" for n in range(len(shares)))])), given, unit(""))
    item = number_entry(
        Draft(id="level", prompt="Which?", solution="So."), level, given, (Mistake("a.b", "1 + max(l0, l1)", "taking the highest"),), CATALOGUE,
        otherwise="Add.", kept=tuple(f"l{n}.level" for n in range(len(shares))), parts=tuple(f"x.s{n}" for n in range(len(shares))),
    )  # fmt: skip
    assert isinstance(item, NumberEntry)
    return item


def test_parts_of_a_whole_still_make_one_and_what_is_kept_stays() -> None:
    found = made(diet("0.25", "0.15", "0.6"))
    assert WANTED == len(found)
    for variant in found:
        written = {fact.id: Decimal(fact.shown_number) for fact in variant.given}
        assert (1, [1, 2, 3]) == (sum(written[f"x.s{n}"] for n in range(3)), [written[f"l{n}.level"] for n in range(3)])


@pytest.mark.parametrize(("record", "item"), ENTRIES)
def test_each_sum_of_the_course_has_eight_fair_variants(record: str, item: NumberEntry) -> None:
    found = variants(item, library().catalogue, record)
    assert WANTED == len(found)
    for variant in found:
        intervals = [variant.accepted, *(slip.accepted for slip in variant.slips)]
        assert not any(a.meets(b) for a, b in combinations(intervals, 2))
        assert variant.right.number * item.fact.number > 0 if item.fact else False
        assert all(slip.feedback for slip in variant.slips)


@pytest.mark.parametrize(("record", "item"), ENTRIES)
def test_numbers_keep_their_digits_and_their_order(record: str, item: NumberEntry) -> None:
    assert item.fact is not None
    own = {fact.id: fact for fact in inputs_of(item)}
    for variant in variants(item, library().catalogue, record):
        scalars = [(own[fact.id], fact) for fact in variant.given if fact.is_number and fact.unit and fact.unit.label not in ("degC", "degF")]
        assert [Decimal(repr(old.number)).adjusted() for old, _ in scalars] == [Decimal(repr(new.number)).adjusted() for _, new in scalars]
        for (old_a, a), (old_b, b) in combinations(scalars, 2):
            if old_a.unit == old_b.unit:
                assert (old_a.number > old_b.number) == (a.number > b.number)
        assert all(fact.number <= 100 for _, fact in scalars if fact.unit and fact.unit.label == "percent")
