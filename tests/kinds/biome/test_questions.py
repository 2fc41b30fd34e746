"""Questions on biomes: which are asked of which record, and what is left out where it says too little."""

from __future__ import annotations

import pytest

from generator.quantities.shown import MONTHS
from generator.questions.question import ChartReading, Choice, NumberEntry, Rejected, SeveralChoice
from tests.kinds.biome.test_facts import biome
from tests.kinds.biome.test_findings import station
from tests.kinds.small_records import demo, library, made, rejected, subject

BIOMES = sorted(name for name in library().subjects if name.startswith("biome/"))


def test_without_latitude_other_questions_stand_in() -> None:
    """More than six come out without those that rest on it, so nobody need be told that these are missing."""
    of = biome(latitude="")
    assert {"dry_months", "annual_temp_range", "wettest_share", "limiting_factor", "fastest_warming"} <= set(made(of))
    assert not {"aridity_index", "lack_of_water", "driest_soil"} & set(made(of))
    assert {} == rejected(of)


def test_where_too_few_are_left_each_says_why_it_is_left_out() -> None:
    """Without latitude, and with a year that is the same all through: no month is warmer than another, nor dry."""
    of, because = biome([20] * 12, [90] * 12, latitude=""), "not known: the station states no latitude"
    assert {"annual_temp_range", "mean_precip", "limiting_factor"} == set(made(of)) - set(rejected(of))
    assert {
        "dry_months": "by the rule of the diagram there is no single dry season: no month", "aridity_index": because, "why_dry": because,
        "which_climate": "the map does not show Here in the region of its biome",
        "diagram_shows": "too little can be said of its year that is plainly right or plainly wrong",
        "wettest_months_share": "the year has no three wettest months that stand apart from the next",
        "wettest_share": "no month brings a large part of the year's precipitation",
        "annual_mean_temp": "one month, or the mean of the warmest and the coldest, is nearly the same",
    } == rejected(of)  # fmt: skip


def test_limits_and_the_range_are_asked_of_a_station_that_the_page_does_not_show() -> None:
    """The page of the desert says of Salt Ladder which limit counts, and prints its range."""
    asked = made(demo("biome/hot_desert"))
    assert all("Fog Pier" in asked[item].prompt for item in ("limiting_factor", "annual_temp_range"))


def test_cold_climate_is_not_asked_how_dry_it_is() -> None:
    """Eight months below 0 °C and two above 6 °C."""
    tundra = biome([-20, -18, -15, -10, -2, 4, 9, 7, 2, -6, -12, -17])
    assert "cold" == tundra.facts["here.aridity_class"].value
    assert not {"why_dry", "aridity_index", "lack_of_water"} & set(made(tundra))


@pytest.mark.parametrize("record", BIOMES)
def test_every_biome_is_asked_by_four_types_and_mostly_from_its_data(record: str) -> None:
    questions = list(made(demo(record)).values())
    assert {ChartReading, NumberEntry, SeveralChoice, Choice} <= {type(question) for question in questions}
    assert 8 <= len(questions) <= 9
    assert 7 <= sum(question.needs != "knowledge" for question in questions)
    assert sum(isinstance(question, NumberEntry) for question in questions) <= 4


def test_no_two_biomes_are_asked_the_same() -> None:
    assert len({frozenset(made(demo(record))) for record in BIOMES}) >= 9


@pytest.mark.parametrize("record", BIOMES)
def test_no_prompt_tells_the_answer_to_another_question(record: str) -> None:
    questions = made(demo(record)).values()
    answers = [question.answer for question in questions if isinstance(question, NumberEntry)]
    assert [] == [(answer, question.id) for answer in answers for question in questions if answer in question.prompt]


@pytest.mark.parametrize("record", BIOMES)
def test_wettest_month_that_a_sum_asks_for_is_not_asked_for_by_itself(record: str) -> None:
    questions = made(demo(record))
    assert not {"wettest_share", "wettest_month"} <= set(questions)
    assert not any(month in questions["wettest_share"].prompt for month in MONTHS if "wettest_share" in questions)


def test_steady_year_and_frost_are_asked_for_the_range_others_for_a_mean_where_little_else_is_worked_out() -> None:
    """Ranges of the records: rain forest 0.8 K, temperate rain forest 10.6 K without frost, boreal forest 31.5 K with five months below 0 °C."""
    asked = {name: set(made(demo(f"biome/{name}"))) for name in ("tropical_rain_forest", "temperate_rain_forest", "boreal_forest")}
    assert [True, False, True] == ["annual_temp_range" in asked[name] for name in asked]
    assert "annual_mean_temp" in asked["temperate_rain_forest"]


@pytest.mark.parametrize("record", BIOMES)
def test_mean_and_total_are_asked_of_a_station_whose_diagram_does_not_print_them(record: str) -> None:
    of = demo(record)
    shown_on_page = [station.label for station in of.record.stations if station.use == "page"]
    asked = [question for name, question in made(of).items() if name in ("annual_mean_temp", "wettest_months_share")]
    assert [] == [question.prompt for question in asked for label in shown_on_page if label in question.prompt]


def test_southern_station_beside_a_northern_one_is_asked_for_its_winter() -> None:
    assert "Amber Head" in made(demo("biome/mediterranean_shrubland"))["coldest_in_the_south"].prompt


def test_diagram_that_no_page_shows_is_not_read() -> None:
    text = f"region: none\nstations: [{station(use='practice')}]\n"
    found = made(subject("biome", text))
    assert not {"diagram_shows", "year_order", "dry_months", "fastest_warming"} & set(found)
    assert not any(isinstance(question, ChartReading) for question in found.values())


def test_no_question_uses_a_station_kept_for_papers() -> None:
    text = f"region: none\nstations: [{station(use='paper', name='secret')}, {station(name='open')}]\n"
    questions = [question for question in made(subject("biome", text)).values() if not isinstance(question, Rejected)]
    assert questions and not any("Secret" in repr(question) for question in questions)
