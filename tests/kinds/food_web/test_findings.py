"""What is told about a food web: strangers, closed loops, consumers without food, shares that do not add up."""

from __future__ import annotations

import pytest

from generator.diagnostics import Severity
from tests.kinds.food_web.test_facts import text
from tests.kinds.small_records import doubts, findings

GRASS = "  - {id: grass, feeding: producer}\n"


def told(more: str = "", **diets: str) -> list[tuple[object, ...]]:
    return [(found.path, found.found) for found in findings("food_web", text(more, **diets)) if found.severity is Severity.ERROR]


def listed(*lines: str) -> list[tuple[object, ...]]:
    """What is told of species written out, below a producer."""
    return [(found.path, found.found) for found in findings("food_web", "species:\n" + GRASS + "".join(f"  - {{{line}}}\n" for line in lines))]


def test_whole_web_is_not_told_of() -> None:
    assert [] == told(grass="", vole="grass", owl="vole 0.9, owl 0.1")


def test_unknown_food_is_told_with_the_nearest_name() -> None:
    (found,) = findings("food_web", text(grass="", vole="gras"))
    assert (("species", 1, "eats", 0, "food"), '"gras"', 'did you mean "grass"?') == (found.path, found.found, found.mend)


def test_unknown_species_under_if_gone_is_told() -> None:
    assert [(("if_gone", 1), '"wolf"')] == told("if_gone: [vole, wolf]\n", grass="", vole="grass")


def test_species_that_eats_only_itself_is_told_by_name() -> None:
    assert [(("species", 1, "eats"), '"pike", which eats only itself')] == told(grass="", pike="pike", vole="grass")


def test_cannibal_with_other_food_is_welcome() -> None:
    assert [] == told(grass="", perch="grass 0.5, perch 0.5")


def test_closed_loop_without_a_source_is_told_by_names_with_all_that_live_on_it() -> None:
    ((path, found),) = told(grass="", vole="grass", a="b", b="a", hawk="a")
    assert (("species", 2, "eats"), "none for a, b, hawk: the arrows to them begin nowhere") == (path, found)


def test_consumer_without_food_is_told_by_name() -> None:
    assert (("species", 1), '"vole", which eats nothing') in listed("id: vole, feeding: consumer", "id: owl, feeding: consumer, eats: [{food: grass}]")


@pytest.mark.parametrize("feeding", ["producer", "detritus"])
def test_producer_or_dead_matter_that_eats_is_told_by_name(feeding: str) -> None:
    assert [(("species", 1, "eats"), '"moss", which eats grass')] == listed(f"id: moss, feeding: {feeding}, eats: [{{food: grass}}]")


@pytest.mark.parametrize(("diet", "sum_"), [("grass 0.5, moss 0.4", "0.9"), ("grass 0.7, moss 0.4", "1.1"), ("grass 0.33333, moss 0.66666", "0.99999")])
def test_shares_that_do_not_add_up_are_told_with_their_sum(diet: str, sum_: str) -> None:
    assert [(("species", 2, "eats"), sum_)] == told(grass="", moss="", vole=diet)


def test_only_food_with_a_share_below_one_is_told() -> None:
    assert [(("species", 1, "eats"), "0.8")] == told(grass="", vole="grass 0.8")


def test_thirds_that_add_up_in_decimals_are_welcome() -> None:
    assert [] == told(grass="", moss="", fern="", vole="grass 0.333, moss 0.333, fern 0.334")


def test_share_that_is_missing_beside_others_is_told_at_its_food() -> None:
    assert [(("species", 2, "eats", 1), 'no share of "moss"')] == told(grass="", moss="", vole="grass 0.5, moss")


def test_web_in_which_nobody_eats_is_told() -> None:
    assert (("species",), "none") in told(grass="", moss="")


def test_more_chains_than_can_be_followed_are_told_at_a_species() -> None:
    crowd = {f"s{n}": ", ".join(["grass", *(f"s{other}" for other in range(12) if other != n)]) for n in range(12)}
    ((path, found),) = told(grass="", **crowd)
    assert (("species", 1), 'too many that lead to "s0"') == (path, found)


def test_more_species_than_can_be_drawn_are_told() -> None:
    assert (("species",), "25") in told(grass="", **{f"s{n}": "grass" for n in range(24)})


def test_foods_whose_levels_do_not_fit_into_one_formula_are_told() -> None:
    plants = {f"{'long_' * 20}{n}": "" for n in range(20)}
    diet = ", ".join(f"{name} 0.05" for name in plants)
    assert [(("species", 20, "eats"), "20 of deer")] == told(**plants, deer=diet)


@pytest.mark.parametrize("unit", ["g", "bananas", "kJ/m2"])
def test_unit_of_biomass_that_does_not_fit_is_an_error(unit: str) -> None:
    more = f"units: {{biomass: {unit}}}\n"
    assert [(("units", "biomass"), f'"{unit}"')] == told(more, grass="", vole="grass")


def test_several_contradictions_are_told_at_once() -> None:
    assert 3 == len(told("if_gone: [wolf]\n", grass="", moss="", vole="grass 0.5, moss 0.6", owl="voles"))


def test_species_that_stands_alone_is_a_warning() -> None:
    (found,) = doubts("food_web", text(grass="", moss="", vole="grass"))
    assert (("species", 1), "stands_alone", Severity.WARNING) == (found.path, found.rule, found.severity)


def test_level_out_of_reach_is_a_warning_with_the_level() -> None:
    chain = {"l1": ""} | {f"l{n}": f"l{n - 1}" for n in range(2, 7)}
    (found,) = doubts("food_web", text(**chain))
    assert (("species", 5, "eats"), "6.00", "level_out_of_reach") == (found.path, found.found, found.rule)


def test_web_that_would_be_hard_to_read_is_a_warning() -> None:
    plants = {f"p{n}": "" for n in range(6)}
    assert ["crowded_chart"] == [found.rule for found in doubts("food_web", text(**plants, deer=", ".join(plants)))]
