"""Classes of climate as facts: letters with their reading, the path that leads there, what suits the biome."""

from __future__ import annotations

import pytest

from generator.quantities.working import RulePath
from generator.science.climate_class import Question
from tests.kinds.biome.test_facts import SOUTH, biome
from tests.kinds.small_records import demo

USUAL = "usual_class: [{{classes: {classes}, source: RICKLEFS2008}}]\n"


def rules(of: object, fact: str) -> list[tuple[str, str, bool]]:
    working = of.facts[fact].working
    assert isinstance(working, RulePath)
    return [(rule.asks, rule.numbers, rule.holds) for rule in working.rules]


def test_grassland_is_a_dry_steppe_by_its_own_numbers() -> None:
    """Source: arithmetic on the record; 242 of 327 mm fall in the warmer half-year, so the limit is 20 × 7.083 + 280."""
    fact = demo("biome/temperate_grassland").facts["harrow_plain.climate_class"]
    assert ("BSk", "BSk (dry steppe, cold winters)") == (fact.value, fact.shown)
    asked = {asks.partition(":")[0]: (numbers, holds) for asks, numbers, holds in rules(demo("biome/temperate_grassland"), fact.id)}
    assert {
        "Summer half-year": ("16.5 ≥ −2.33 °C", True),
        "Wet winters": ("85.0 ≥ 229 mm", False),
        "Wet summers": ("242 ≥ 229 mm", True),
        "Dry (B)": ("327 < 422 mm", True),
        "Desert (W), not steppe (S)": ("327 < 211 mm", False),
        "Hot (h), not cool (k)": ("7.08 ≥ 18.0 °C", False),
    } == asked


def test_southern_station_has_the_class_of_its_northern_twin() -> None:
    twin = "[42, 34, 26, 20, 15, 12, 12, 10, 16, 26, 48, 66]"
    south = biome(SOUTH, twin, latitude="latitude: -46.5").facts["here.climate_class"]
    assert biome().facts["here.climate_class"].value == south.value


def test_numbers_of_a_question_show_its_answer() -> None:
    """Three figures would show 18.0 ≥ 18.0 and call it false."""
    path = biome("[17.99, 23, 23, 23, 23, 23, 23, 23, 23, 23, 23, 23]", [200] * 12)
    shown = next(numbers for asks, numbers, _ in rules(path, "here.climate_class") if asks.startswith("Hot all year"))
    assert "17.99 ≥ 18.00 °C" == shown


def test_count_of_months_is_a_whole_number_without_unit() -> None:
    path = rules(biome([11] * 5 + [5] * 7, [200] * 12), "here.climate_class")
    assert ("5 ≥ 4", True) == next((numbers, holds) for asks, numbers, holds in path if asks.startswith("Warm summer"))


@pytest.mark.parametrize(("coldest", "older", "changes"), [(-2, "Cfa", True), (-3, "Dfa", False), (5, "Cfa", False)])
def test_older_limit_of_cold_winters_is_named_and_tried(coldest: int, older: str, changes: bool) -> None:
    last = rules(biome([coldest] + [23] * 11, [200] * 12), "here.climate_class")[-1]
    assert ("Older maps part C from D at −3 °C. Would that give another class?", older, changes) == last


def test_hot_dry_and_icy_climates_are_not_asked_about_cold_winters() -> None:
    for temp in ([27] * 12, [-20] * 12):
        assert not any("Older maps" in asks for asks, _, _ in rules(biome(temp, [200] * 12), "here.climate_class"))


def test_every_question_has_a_sign_that_can_be_asked() -> None:
    assert Question("", 1, "≤", 1, "").holds
    assert not Question("", 1, ">", 1, "").holds


def test_life_zone_goes_through_its_belts_and_zones_to_the_one_that_holds() -> None:
    """Source: arithmetic on the record; biotemperature (8 + 14 + 19 + 22 + 21 + 15 + 8) / 12, times 58.93, over 327."""
    facts = demo("biome/temperate_grassland").facts
    warmth = (8 + 14 + 19 + 22 + 21 + 15 + 8) / 12
    assert warmth == pytest.approx(facts["harrow_plain.biotemperature"].number)
    assert 1 < 58.93 * warmth / 327 < 2
    assert "cool temperate steppe" == facts["harrow_plain.life_zone"].value
    path = rules(demo("biome/temperate_grassland"), "harrow_plain.life_zone")
    assert ["polar", "subpolar", "boreal", "cool temperate", "rain forest", "wet forest", "moist forest", "steppe"] == [
        asks.partition(":")[0] for asks, _, _ in path
    ]
    assert ("steppe: is demand over precipitation below 2?", "58.93 × 8.92 ÷ 327 = 1.61", True) == path[-1]


def test_life_zone_without_rain_and_in_the_cold_have_a_path_too() -> None:
    dry, polar = biome([25] * 12, [0] * 12), biome([-5] * 12)
    assert ("tropical desert", "polar desert") == (dry.facts["here.life_zone"].value, polar.facts["here.life_zone"].value)
    assert ("desert scrub: is demand over precipitation below 16?", "nothing falls", False) == rules(dry, "here.life_zone")[-1]
    assert ("polar: is the biotemperature below 1.5 °C?", "0 °C", True) == rules(polar, "here.life_zone")[-1]


def test_limiting_factor_is_what_allows_less_production() -> None:
    facts = demo("biome/temperate_grassland").facts
    assert facts["harrow_plain.npp_by_precipitation"].number < facts["harrow_plain.npp_by_temperature"].number
    assert "precipitation" == facts["harrow_plain.limiting_factor"].value
    assert [False, True] == [holds for _, _, holds in rules(demo("biome/temperate_grassland"), "harrow_plain.limiting_factor")]
    assert [("temperature", 1)] == [
        (fact.value, len(fact.working.rules)) for fact in [biome([-5] * 12, [200] * 12).facts["here.limiting_factor"]]
    ]


@pytest.mark.parametrize(("classes", "expected"), [("[BS]", True), ("[BSk, Dfb]", True), ("[BSh]", False), ("[B]", True)])
def test_usual_class_counts_by_its_first_letters(classes: str, expected: bool) -> None:
    assert expected is biome(head=USUAL.format(classes=classes)).facts["here.in_usual_class"].value


def test_one_work_that_names_the_class_is_enough() -> None:
    head = "usual_class: [{classes: [Af], source: RICKLEFS2008}, {classes: [BS], source: WHITTAKER1975}]\n"
    fact = biome(head=head).facts["here.in_usual_class"]
    assert (True, ("RICKLEFS2008", "WHITTAKER1975")) == (fact.value, fact.sources)


def test_no_usual_class_gives_null_and_a_reason() -> None:
    fact = biome().facts["here.in_usual_class"]
    assert (None, "not known: the record cites no usual classes") == (fact.value, fact.shown)
