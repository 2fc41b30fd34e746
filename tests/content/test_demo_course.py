"""What a teacher is promised of the demo course: how much of everything, and that each record is complete."""

from __future__ import annotations

from typing import Any

import pytest

from generator.questions.item_writing import flaws_of_set
from generator.questions.question import Needs
from generator.records.parts import Explanation
from tests.kinds.small_records import library

PRINTED = {"biome/temperate_grassland", "cycle/wend_hollow_nitrogen", "pyramid/sill_lake"}
"""Examples of the shortest complete records; what they leave out, others show."""
SHOWN = sorted(name for name, subject in library().subjects.items() if subject.record.use == "page")
"""Records that students see; of the others only written questions show parts."""
RECORDS = sorted(set(SHOWN) - PRINTED)


def record(name: str) -> Any:
    return library().subjects[name].record


def of_kind(kind: str) -> list[Any]:
    return [record(name) for name in SHOWN if name.startswith(f"{kind}/")]


def explanations(name: str) -> tuple[Explanation, ...]:
    return tuple(record(name).explanations)


def test_ten_biomes_stand_beside_five_waters_and_four_pyramids_and_cycles() -> None:
    counts = {kind: len(of_kind(kind)) for kind in ("biome", "aquatic_biome", "pyramid", "cycle")}
    least = {"biome": 10, "aquatic_biome": 5, "pyramid": 4, "cycle": 4}
    assert {} == {kind: count for kind, count in counts.items() if count < least[kind]}


def test_examples_of_the_record_format_stay_in_the_shortest_complete_form() -> None:
    """They are what documents print; fields that came later are shown by other records."""
    assert set() == PRINTED - set(library().subjects)
    assert () == record("biome/temperate_grassland").usual_class
    assert {1} == {len(record(name).explanations) for name in PRINTED}


def test_six_stations_or_more_are_kept_for_practice() -> None:
    assert len([station for biome in of_kind("biome") for station in biome.stations if station.use == "practice"]) >= 6


def test_one_biome_shows_a_station_on_either_side_of_the_equator() -> None:
    def sides(biome: Any) -> set[bool]:
        return {station.latitude < 0 for station in biome.stations if station.use == "page" and station.latitude is not None}

    assert [True, False] in [sorted(sides(biome), reverse=True) for biome in of_kind("biome")]


def test_there_are_eighty_words_forty_sources_and_eighty_misconceptions() -> None:
    held = library()
    assert (len(held.vocabulary) >= 80, len(held.sources) >= 40, len(held.catalogue) >= 80) == (True, True, True)


def test_every_word_has_an_example_but_those_whose_examples_are_those_of_a_word_beside_them() -> None:
    """Each trophic cascade is an indirect effect as well, and each pyramid of numbers an ecological pyramid."""
    assert {"trophic_cascade", "pyramid_of_numbers"} == {word.id for word in library().vocabulary.values() if word.example is None}


@pytest.mark.parametrize("name", [name for name in RECORDS if name.startswith("biome/")])
def test_every_biome_tells_adaptations_soil_disturbance_people_and_where_it_is_found(name: str) -> None:
    biome = record(name)
    assert len(biome.adaptations) >= 2
    assert biome.soil and biome.disturbance and biome.found and biome.people


@pytest.mark.parametrize("name", RECORDS)
def test_chains_have_three_to_five_ideas_each_with_other_wordings_and_near_misses(name: str) -> None:
    lacking = [
        f"{explanation.id}.{idea.id}" for explanation in explanations(name) for idea in explanation.chain
        if len(idea.accept) < (1 if name.startswith("concept/") else 2) or not idea.not_enough
    ]  # fmt: skip
    assert [] == lacking
    assert {} == {explanation.id: len(explanation.chain) for explanation in explanations(name) if not 3 <= len(explanation.chain) <= 5}


@pytest.mark.parametrize("name", [name for name in RECORDS if not name.startswith("concept/")])
def test_every_record_weighs_what_people_do_about_a_problem(name: str) -> None:
    assert record(name).people


def test_tundra_is_dry_and_cold_as_tundra_usually_is() -> None:
    """From memory: much of the Arctic gets 100 to 300 mm a year."""
    facts = library().subjects["biome/tundra"].facts
    assert 100 <= facts["lantern_bluff.annual_precip"].number <= 300
    assert "cold" == facts["lantern_bluff.aridity_class"].value


@pytest.mark.parametrize("record", SHOWN)
def test_every_record_asks_twelve_questions_of_four_types_half_of_them_from_data(record: str) -> None:
    items = library().questions[record]
    assert len(items) >= 12
    assert len({type(item) for item in items}) >= 4
    assert 2 * sum(item.needs is not Needs.KNOWLEDGE for item in items) >= len(items)


def test_right_options_are_not_longer_than_the_others_more_often_than_chance() -> None:
    everything = [item for items in library().questions.values() for item in items]
    assert [] == list(flaws_of_set(everything))
