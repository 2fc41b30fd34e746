"""Questions on biomes: right answers, recognised slips, and what is left out where the record says too little."""

from __future__ import annotations

from generator.questions.question import Choice, NumberEntry
from tests.kinds.biome.test_facts import SOUTH, biome
from tests.kinds.biome.test_findings import station
from tests.kinds.small_records import demo, made, rejected, subject


def test_annual_precipitation_knows_the_mean_and_the_slip_of_centimetres() -> None:
    """Source: arithmetic on the record; 327 / 12 = 27.25, 327 / 10 = 32.7, wettest month 66."""
    question = made(demo("biome/temperate_grassland"))["annual_precip"]
    assert isinstance(question, NumberEntry)
    assert question.accepted.low <= 327 <= question.accepted.high
    assert ["27.3 mm", "32.7 mm", "66.0 mm"] == [slip.shown for slip in question.slips]


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


def test_no_latitude_leaves_out_what_rests_on_it() -> None:
    because = "not known: the station states no latitude"
    assert {"aridity_index": f"aridity index is {because}", "why_dry": f"the aridity class is {because}"} == rejected(biome(latitude=""))


def test_wetness_question_follows_the_balance_of_rain_and_demand() -> None:
    wet, dry = made(biome(precip=[200] * 12))["why_dry"], made(biome())["why_dry"]
    assert isinstance(wet, Choice) and isinstance(dry, Choice)
    assert [True, True] == [
        next(option for option in question.options if option.right).text.startswith(begin)
        for question, begin in ((wet, "As much falls (2400 mm)"), (dry, "Less falls (327 mm)"))
    ]


def test_no_question_uses_a_station_kept_for_papers() -> None:
    text = f"region: none\nstations: [{station(use='paper', name='secret')}, {station(name='open')}]\n"
    assert not any("Secret" in repr(question) for question in made(subject("biome", text)).values())
