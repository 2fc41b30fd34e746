"""Questions on biomes: right answers, recognised slips, and what is left out where the record says too little."""

from __future__ import annotations

import pytest

from generator.questions.question import Choice, NumberEntry
from tests.kinds.biome.test_facts import SOUTH, biome
from tests.kinds.biome.test_findings import station
from tests.kinds.small_records import demo, library, made, rejected, subject


def test_annual_precipitation_knows_the_mean_and_the_slip_of_centimetres() -> None:
    """Source: arithmetic on the record; 327 / 12 = 27.25, 327 / 10 = 32.7, wettest month 66."""
    question = made(biome(latitude=""))["annual_precip"]
    assert isinstance(question, NumberEntry)
    assert question.accepted.low <= 327 <= question.accepted.high
    assert ["27.3 mm", "32.7 mm", "66 mm"] == [slip.shown for slip in question.slips]


def test_dry_months_are_told_from_the_driest_month() -> None:
    question = made(demo("biome/temperate_grassland"))["dry_months"]
    assert isinstance(question, Choice)
    assert ["July to September"] == [option.text for option in question.options if option.right]
    assert "February" in [option.text for option in question.options]


def test_season_of_the_other_hemisphere_is_a_wrong_option() -> None:
    """Six months from January to March are July to September."""
    question = made(biome(SOUTH, latitude="latitude: -46.5", precip="[42, 34, 26, 20, 15, 12, 12, 10, 16, 26, 48, 66]"))["dry_months"]
    assert isinstance(question, Choice)
    assert ["January to March"] == [option.text for option in question.options if option.right]
    assert ["July to September"] == [option.text for option in question.options if option.misconception == "clim.hemisphere"]


def test_without_latitude_other_questions_stand_in() -> None:
    """Six come out without the two that rest on it, so nobody need be told that these are missing."""
    of = biome(latitude="")
    assert {"dry_months", "annual_temp_range", "annual_precip", "annual_mean_temp", "warmest_month", "limiting_factor"} == set(made(of))
    assert {} == rejected(of)


def test_where_too_few_are_left_each_says_why_it_is_left_out() -> None:
    """Without latitude, and with a year that is the same all through: no month is warmer than another, nor dry."""
    of, because = biome([20] * 12, [90] * 12, latitude=""), "not known: the station states no latitude"
    few = "too few different wrong options are left"
    assert {"annual_precip", "annual_mean_temp", "annual_temp_range", "mean_precip", "limiting_factor"} == set(made(of)) - set(rejected(of))
    assert {
        "dry_months": few, "aridity_index": f"aridity index is {because}",
        "why_dry": f"the aridity class is {because}", "warmest_month": "the months are all nearly equally warm",
        "nutrients": "the record says nothing of soil",
        "which_climate": "no station is kept for practice",
    } == rejected(of)  # fmt: skip


def test_cold_climate_is_not_asked_how_dry_it_is() -> None:
    """Eight months below 0 °C and two above 6 °C; a question on another month stands in."""
    tundra = biome([-20, -18, -15, -10, -2, 4, 9, 7, 2, -6, -12, -17])
    assert "cold" == tundra.facts["here.aridity_class"].value
    assert "why_dry" not in made(tundra)
    assert "warmest_month" in made(tundra)


def test_too_few_questions_of_a_cold_climate_say_that_the_cold_is_why() -> None:
    """Precipitation never changes and three months are warmest; a mean of -0.083 °C and 54 mm allow nearly the same production."""
    of = biome([-9, -3, -3, -3, -3, -3, -3, 0, 9, 9, 9, 0], [30] * 12)
    assert "in a cold climate the formula gives far more evapotranspiration than there is" == rejected(of)["why_dry"]


def test_warmest_month_is_told_from_the_wettest_the_next_and_the_opposite_one() -> None:
    """Source: read off the record: warmest in July, wettest in June; asked for, as nothing rests on a latitude."""
    question = made(biome(latitude=""))["warmest_month"]
    assert isinstance(question, Choice)
    assert {"July": "", "January": "clim.hemisphere", "June": "clim.wrong-axis", "August": "clim.wrong-month"} == {
        option.text: option.misconception for option in question.options
    }


def test_month_that_is_one_of_the_warmest_is_no_wrong_option() -> None:
    """Warmest from June to August: the wettest month, July, is right in part, and so are the months after."""
    of = biome([5, 6, 8, 12, 16, 22, 22, 22, 15, 8, 6, 5], [90] * 6 + [99] + [90] * 5, latitude="")
    assert ("June to August", "July") == (of.facts["here.warmest_month"].shown, of.facts["here.wettest_month"].shown)
    assert "warmest_month" not in set(made(of)) - set(rejected(of))


def test_mean_month_is_asked_from_the_table_without_telling_the_total() -> None:
    """Source: arithmetic on the record, 12 months of 90 mm; the slips are 1080 and 1080 times 12 = 12 960."""
    question = made(biome([20] * 12, [90] * 12, latitude=""))["mean_precip"]
    assert isinstance(question, NumberEntry)
    assert ("90.0 mm", ["1080 mm", "13\u202f000 mm"]) == (question.answer, [slip.shown for slip in question.slips])
    assert "1080" not in question.prompt


def test_how_dry_a_place_is_follows_from_supply_and_demand() -> None:
    wet, dry = made(biome(precip=[200] * 12))["why_dry"], made(biome())["why_dry"]
    assert ["no less falls", "less falls"] == [question.solution.partition(": ")[2].partition(" there")[0] for question in (wet, dry)]


@pytest.mark.parametrize("record", sorted(name for name in library().subjects if name.startswith("biome/")))
def test_at_most_three_questions_are_sums(record: str) -> None:
    sums = {"dry_months", "annual_temp_range", "aridity_index", "annual_precip", "annual_mean_temp", "warmest_month", "mean_precip"}
    assert len(sums & set(made(demo(record)))) <= 3


@pytest.mark.parametrize("record", sorted(name for name in library().subjects if name.startswith("biome/")))
def test_no_prompt_tells_the_answer_to_another_question(record: str) -> None:
    questions = made(demo(record)).values()
    answers = [question.answer for question in questions if isinstance(question, NumberEntry)]
    assert [] == [(answer, question.id) for answer in answers for question in questions if answer in question.prompt]


def test_steady_year_and_frost_are_asked_for_the_range_others_for_the_mean() -> None:
    """Ranges of the records: rain forest 0.8 K, savanna 6 K without frost, boreal forest 31.5 K with five months below 0 °C."""
    asked = {name: set(made(demo(f"biome/{name}"))) for name in ("tropical_rain_forest", "savanna", "boreal_forest")}
    assert [True, False, True] == ["annual_temp_range" in asked[name] for name in asked]
    assert [False, True, False] == ["annual_mean_temp" in asked[name] for name in asked]


def test_no_question_uses_a_station_kept_for_papers() -> None:
    text = f"region: none\nstations: [{station(use='paper', name='secret')}, {station(name='open')}]\n"
    assert not any("Secret" in repr(question) for question in made(subject("biome", text)).values())
