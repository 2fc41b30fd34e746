"""Facts in text: references, filling, and claims that hold or do not."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.expression import ExpressionError
from generator.quantities.fact import Fact
from generator.quantities.text import Claim, filled, references, sentence, stray_braces
from generator.quantities.units import unit

IDENTIFIER = st.from_regex(r"[a-z][a-z0-9_]{0,8}", fullmatch=True)


def fact(name: str, value: Any, label: str | None = None, **more: Any) -> tuple[str, Fact]:
    return name, Fact(id=name, name=name, value=value, unit=None if label is None else unit(label), **more)


FACTS = dict(
    [
        fact("site.rain", 327.0, "mm"), fact("site.pet", 617.0, "mm"), fact("site.index", 0.53, ""), fact("site.aridity", "arid"),
        fact("site.dry_months", (7, 8, 9), months=True), fact("site.closes", True), fact("site.open", False), fact("site.gap", None, "mm"),
        fact("site.temp", 7.0, "degC"), fact("overall", 0.069, "percent"), fact("site.zero", 0.0, ""),
        fact("biome/tundra:site.rain", 250.0, "mm"), fact("biome/rain_forest:site.rain", 2.5, "m"),
    ]
)  # fmt: skip


@pytest.mark.parametrize(
    ("text", "keys"),
    [
        ("rain {site.rain} and {overall}", ["site.rain", "overall"]), ("{biome/tundra:site.rain}", ["biome/tundra:site.rain"]),
        ("{ site.rain }", ["site.rain"]), ("{a.b.c}", ["a.b.c"]), ("no fact", []), ("{}", [""]), ("{Site.Rain}", [""]), ("{two words}", [""]),
        ("{biome/:x}", [""]), ("{site.}", [""]), ("{a..b}", [""]), ("{x:y}", [""]), ("{a/b:c:d}", [""]),
    ],
)  # fmt: skip
def test_references_are_found_in_order(text: str, keys: list[str]) -> None:
    assert keys == [reference.key for reference in references(text)]


def test_reference_knows_record_and_fact() -> None:
    (one,) = references("in {biome/tundra:site.rain}")
    assert ("{biome/tundra:site.rain}", "biome/tundra", "site.rain") == (one.text, one.record, one.fact)


@pytest.mark.parametrize(
    ("text", "stray"),
    [("a {b} c", False), ("", False), ("a { b", True), ("a } b", True), ("{{a}}", True), ("{a} }", True), ("}{", True), ("{a{b}", True)],
)
def test_brace_alone_is_told(text: str, stray: bool) -> None:
    assert stray == stray_braces(text)


@given(st.text(alphabet="ab{}. :/", max_size=30))
def test_braces_pair_up_or_are_stray(text: str) -> None:
    """Where none is stray, every brace belongs to one reference."""
    found = list(references(text))
    assert stray_braces(text) == (text.count("{") != len(found) or text.count("}") != len(found))


def test_text_is_filled_with_facts_as_shown() -> None:
    assert "327 mm of 617 mm, 0.0690 %" == filled("{site.rain} of { site.pet }, {overall}", FACTS)


def test_fact_may_be_written_in_another_way() -> None:
    assert "<site.rain>" == filled("{site.rain}", FACTS, lambda one: f"<{one.id}>")


@pytest.mark.parametrize(("text", "named"), [("{site.snow}", "{site.snow}"), ("{Not One}", "{Not One}")])
def test_reference_to_nothing_cannot_be_filled(text: str, named: str) -> None:
    with pytest.raises(KeyError, match=f"{named} names no fact"):
        filled(text, FACTS)


@given(st.lists(IDENTIFIER, min_size=1, max_size=5), st.text(alphabet="xyz .,\n", max_size=10))
def test_text_around_references_is_kept(names: list[str], between: str) -> None:
    facts = dict(fact(name, name.upper()) for name in names)
    text = between.join(f"{{{name}}}" for name in names)
    assert between.join(name.upper() for name in names) == filled(text, facts)


# --- claims ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("claim", "holds"),
    [
        ("site.index < 0.65", True), ("site.index < 0.5", False), ("0.5 < site.index < 0.65", True), ("site.rain < site.pet", True),
        ("site.rain > 300 and site.rain < 350", True), ("site.rain > 350 or site.aridity == 'arid'", True), ("not site.rain > 300", False),
        ("site.aridity != 'humid'", True), ("7 in site.dry_months", True), ("1 in site.dry_months", False), ("1 not in site.dry_months", True),
        ("site.closes", True), ("not site.open and site.closes", True), ("site.rain / site.pet < 0.6", True), ("site.temp > 5", True),
        ("count(site.dry_months) == 3", True), ("overall < 0.1", True), ("biome/tundra:site.rain < site.rain", True),
        ("biome/rain_forest:site.rain > 5 * biome/tundra:site.rain", True), ("site.rain>biome/tundra:site.rain", True),
    ],
)  # fmt: skip
def test_claim_holds_while_its_numbers_do(claim: str, holds: bool) -> None:
    assert holds == Claim(claim).holds(FACTS)


@pytest.mark.parametrize("claim", ["site.gap > 0", "not site.gap > 0", "site.gap < 1 or site.rain > 1", "1 / site.zero > 2"])
def test_claim_about_what_is_undefined_does_not_hold(claim: str) -> None:
    assert not Claim(claim).holds(FACTS)


@pytest.mark.parametrize(
    ("claim", "words"),
    [
        ("site.rain", "site.rain: expected a comparison such as a < b, found a value"), ("site.snow > 1", "no value for site.snow"),
        ("site.rain > site.temp", "mm and °C cannot be compared"), ("site.rain = 3", "write == "), ("site.rain <", "cannot be read"),
        ("site.rain and site.pet", "expected a condition"), ("site.aridity < 3", "cannot be compared"), ("'arid'", "found a value"),
        ("site.dry_months == 7", "write 7 in dry_months"), ("biome/tundra:site.rain > site.temp", "biome/tundra:site.rain > site.temp: "),
        ("biome/tundra:site.snow > 1", "no value for biome/tundra:site.snow"), ("biome/tundra:site.rain()", "biome/tundra:site.rain is not a"),
    ],
)  # fmt: skip
def test_claim_that_makes_no_sense_is_refused_in_the_authors_own_names(claim: str, words: str) -> None:
    with pytest.raises(ExpressionError) as refused:
        Claim(claim).holds(FACTS)
    assert words in str(refused.value)
    assert "far_record" not in str(refused.value)


def test_sentence_begins_with_a_capital() -> None:
    assert ["Few trees", "CO2 rises", ""] == [sentence(text) for text in ("few trees", "CO2 rises", "")]


def test_keys_are_the_facts_as_written() -> None:
    claim = Claim("site.rain < biome/tundra:site.rain or biome/rain_forest:site.rain > site.rain")
    assert ("site.rain", "biome/tundra:site.rain", "biome/rain_forest:site.rain") == claim.keys


def test_records_whose_names_look_alike_are_told_apart() -> None:
    """`a_b/c` and `a/b_c` are two records."""
    facts = dict([fact("a_b/c:x", 1.0, ""), fact("a/b_c:x", 2.0, "")])
    assert Claim("a_b/c:x < a/b_c:x").holds(facts)


def test_numbers_of_a_claim_are_told() -> None:
    assert "site.rain is 327 mm and site.gap is not defined" == Claim("site.rain > 1 and site.gap > site.rain").numbers(FACTS)


@given(st.floats(-1e6, 1e6), st.floats(-1e6, 1e6), st.sampled_from(["<", "<=", ">", ">=", "==", "!="]))
def test_claim_and_its_denial_never_hold_together(a: float, b: float, sign: str) -> None:
    facts = dict([fact("s.a", a, "mm"), fact("s.b", b, "mm")])
    assert Claim(f"s.a {sign} s.b").holds(facts) != Claim(f"not s.a {sign} s.b").holds(facts)
