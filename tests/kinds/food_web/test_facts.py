"""Facts of food webs: levels worked out by hand, places, chains, and what is known where a diet is not."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from generator.kind import Subject
from generator.quantities.working import Listing
from generator.science.food_webs import trophic_levels
from tests.kinds.small_records import demo, subject
from tests.science.webs import Diets, webs

LAKE = "food_web/sill_lake_web"


def text(more: str = "", **diets: str) -> str:
    """Species by id, each with what it eats as `food share, food share` or `food, food`; without food a producer."""
    lines = "".join(f"  - {{id: {name}, {_fields(diet)}}}\n" for name, diet in diets.items())
    return f"species:\n{lines}{more}"


def _fields(diet: str) -> str:
    if not diet:
        return "feeding: producer"
    parts = [part.split() for part in diet.split(",")]
    foods = [f"{{food: {food}, share: {share[0]}}}" if share else f"{{food: {food}}}" for food, *share in parts]
    return f"feeding: consumer, eats: [{', '.join(foods)}]"


def web(more: str = "", **diets: str) -> Subject:
    """The record that `text` writes, with its facts."""
    return subject("food_web", text(more, **diets))


def test_levels_of_the_example() -> None:
    """Source: arithmetic on the record; of pike (1 + 0.55 * 3 + 0.4 * 2.4) / 0.95."""
    facts = demo(LAKE).facts
    expected = {
        "phytoplankton": 1, "pondweed": 1, "dead_matter": 1, "zooplankton": 2, "midge_larvae": 2, "roach": 1 + 0.25 * 2 + 0.15 * 2 + 0.6,
        "perch": 3, "pike": (1 + 0.55 * 3 + 0.4 * 2.4) / 0.95,
    }  # fmt: skip
    assert expected == pytest.approx({name: facts[f"{name}.trophic_level"].value for name in expected})


def test_working_of_a_level_is_one_plus_shares_times_levels() -> None:
    working = demo(LAKE).facts["roach.trophic_level"].shown_working
    assert "1 + 0.25 × 2.00 + 0.15 × 2.00 + 0.6 × 1 = 2.40" in working
    assert working.startswith("1 + share of zooplankton × level of zooplankton + share of midge larvae")


def test_working_of_a_cannibal_divides_by_the_rest_of_its_diet() -> None:
    assert "(1 + 0.55 × 3.00 + 0.4 × 2.40) ÷ (1 − 0.05) = 3.80" in demo(LAKE).facts["pike.trophic_level"].shown_working


@settings(max_examples=30, deadline=None)
@given(webs())
def test_shown_expressions_give_the_levels_of_the_solution(diets: Diets) -> None:
    """However loops and cannibals mix, each formula with its numbers gives what solving for all levels at once gives."""
    shares = {name: ", ".join(f"{food} {share!r}" for food, share in diet.items()) for name, diet in diets.items()}
    kept = {name: diet for name, diet in shares.items() if abs(sum(diets[name].values()) - 1) < 1e-9}
    facts = web(plant="", dead="", **kept).facts
    assert {name: facts[f"{name}.trophic_level"].value for name in diets} == pytest.approx({n: trophic_levels(diets)[n] for n in diets})


def test_only_food_needs_no_share() -> None:
    assert 2.0 == web(grass="", vole="grass").facts["vole.trophic_level"].value


def test_without_shares_the_level_and_those_that_build_on_it_are_not_known() -> None:
    facts = web(grass="", vole="grass", bear="grass, vole", hunter="bear").facts
    assert "not known: the record does not state how much of each food it eats" == facts["bear.trophic_level"].shown
    assert "not known: the level of bear is not known" == facts["hunter.trophic_level"].shown
    assert [1, 2] == [facts[f"bear.{which}_chain"].value for which in ("shortest", "longest")]


def test_shares_do_not_matter_where_all_foods_stand_at_one_level() -> None:
    facts = web(grass="", moss="", vole="grass, moss", hare="grass", owl="vole, hare", eagle="owl, hare").facts
    assert [2.0, 3.0, None] == [facts[f"{name}.trophic_level"].value for name in ("vole", "owl", "eagle")]
    assert "so that any shares give the same? vole 2.00, hare 2.00: yes" in facts["owl.trophic_level"].shown_working


def test_level_of_a_food_in_a_loop_that_nobody_weighed_is_not_known() -> None:
    facts = web(grass="", a="grass, b", b="a").facts
    assert [None, None] == [facts[f"{name}.trophic_level"].value for name in ("a", "b")]


def test_counts_of_food_and_eaters_are_whole_and_name_them() -> None:
    facts = demo(LAKE).facts
    assert ["3", "1", "0"] == [facts[name].shown for name in ("pike.eats_count", "roach.eaten_by_count", "pondweed.eats_count")]
    assert Listing("Arrows that start at it lead to", ("pike",)) == facts["pike.eaten_by_count"].working


def test_places_are_bottom_between_and_top_and_a_cannibal_can_stand_at_the_top() -> None:
    facts = demo(LAKE).facts
    assert ["at the bottom", "between", "at the top"] == [facts[f"{name}.place"].value for name in ("dead_matter", "perch", "pike")]


def test_chains_of_the_example() -> None:
    """Source: counted by hand; pike over roach over pondweed is the shortest, and none is longer than three arrows."""
    facts = demo(LAKE).facts
    assert [2, 3, 3] == [facts[name].value for name in ("pike.shortest_chain", "pike.longest_chain", "longest_chain")]
    assert "pondweed → roach → pike" in facts["pike.shortest_chain"].shown_working
    assert "7" == facts["chain_count"].shown


def test_web_without_a_top_has_no_number_of_chains() -> None:
    fact = web(algae="", a="algae 0.5, b 0.5", b="a").facts["chain_count"]
    assert fact.shown.startswith("not defined: nothing stands at the top")


def test_connectance_is_links_over_species_squared() -> None:
    """Source: arithmetic, 3 links of 3 species."""
    assert 3 / 9 == pytest.approx(web(grass="", vole="grass", owl="vole 0.9, grass 0.1").facts["connectance"].value)


def test_omnivores_and_loops_are_named() -> None:
    facts = demo(LAKE).facts
    assert ("roach, pike", "pike (its own kind)") == (facts["omnivores"].value, facts["feeding_loops"].value)
    assert "Roach: zooplankton (1), midge larvae (1), pondweed (0)" in facts["omnivores"].shown_working


def test_two_that_eat_each_other_are_named_together() -> None:
    facts = web(algae="", a="algae 0.5, b 0.5", b="a").facts
    assert ("a", "a and b") == (facts["omnivores"].value, facts["feeding_loops"].value)


def test_long_lists_of_chains_end_with_how_many_more_there_are() -> None:
    plants = {f"p{n}": "" for n in range(15)}
    working = web(**plants, deer=", ".join(plants)).facts["deer.longest_chain"].shown_working
    assert "and 3 more" in working and 12 == working.count("→ deer")


def test_biomass_is_a_fact_in_the_records_unit() -> None:
    found = subject("food_web", "units: {biomass: kg/ha}\nspecies:\n  - {id: a, feeding: producer, biomass: 30}\n  - {id: b, feeding: consumer, eats: [{food: a}]}\n")
    assert ("30 kg ha⁻¹", False) == (found.facts["a.biomass"].shown, "b.biomass" in found.facts)
