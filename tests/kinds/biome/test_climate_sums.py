"""Sums on a climate: right answers and recognised slips. Sources: arithmetic on the records."""

from __future__ import annotations

import pytest

from generator.kinds.biome import climate_sums as sums
from generator.questions.question import NumberEntry, Rejected
from tests.kinds.biome.asked import of_demo, number, small


def test_annual_precipitation_knows_the_mean_and_the_slip_of_centimetres() -> None:
    """327 / 12 = 27.25, 327 / 10 = 32.7, wettest month 66."""
    answer, slips = number(sums.annual_precip(of_demo("temperate_grassland")))
    assert ("327 mm", ["27.3 mm", "32.7 mm", "66 mm"]) == (answer, list(slips.values()))


def test_mean_month_is_asked_from_the_table_without_telling_the_total() -> None:
    """12 months of 90 mm; the slips are 1080 and 1080 times 12 = 12 960."""
    question = sums.mean_precip(small(precip=[90] * 12))
    assert isinstance(question, NumberEntry)
    assert ("90.0 mm", ["1080 mm", "13\u202f000 mm"]) == (question.answer, [slip.shown for slip in question.slips])
    assert "1080" not in question.prompt


def test_share_of_the_wettest_month_knows_a_twelfth_the_rest_and_the_inverse() -> None:
    """66 / 327 = 20.2 %, 66 / 261 = 25.3 %, 327 / 66 = 495 %."""
    answer, slips = number(sums.wettest_share(of_demo("temperate_grassland")))
    assert ("20.2 %", "8.33 %", "25.3 %", "495 %") == (answer, slips["clim.even-rain"], slips["cyc.share-of-rest"], slips["clim.share-inverse"])


@pytest.mark.parametrize("precip", [[90] * 12, [0] * 12, [100, 100, *[50] * 10]])
def test_share_of_even_rain_of_none_or_of_two_wettest_months_is_not_asked_for(precip: list[float]) -> None:
    assert isinstance(sums.wettest_share(small(precip=precip)), Rejected)


def test_what_does_not_evaporate_runs_off_and_its_unit_is_asked_for() -> None:
    """Deciduous forest: 990 - 639 = 351 mm; 990 - 675 = 315; 990 + 639 = 1629."""
    question = sums.water_left(of_demo("temperate_deciduous_forest"))
    answer, slips = number(question)
    assert ("351 mm", "315 mm", "1630 mm", "−351 mm") == (answer, slips["clim.could-is-does"], slips["nit.budget-add"], slips["clim.lack-sign"])
    assert isinstance(question, NumberEntry) and question.asks_unit and "water_surplus" == question.id


def test_what_plants_lack_is_not_what_falls_short_of_demand() -> None:
    """Savanna: 1547 - 752 = 795 mm, and 1547 - 920 = 627."""
    question = sums.water_left(of_demo("savanna"))
    answer, slips = number(question)
    assert ("water_deficit", "795 mm", "627 mm") == (question.id, answer, slips["clim.rain-all-used"])


@pytest.mark.parametrize("name", ["hot_desert", "tundra", "boreal_forest"])
def test_water_of_a_desert_of_the_cold_or_of_a_balanced_year_is_no_sum(name: str) -> None:
    """In a desert all that falls evaporates; in the boreal forest 98 mm are lacking and 145 mm left, of 576 mm."""
    assert isinstance(sums.water_left(of_demo(name)), Rejected)


def test_water_is_not_asked_for_without_latitude() -> None:
    assert isinstance(sums.water_left(small(latitude="")), Rejected)
    assert isinstance(sums.aridity_index(small(latitude="")), Rejected)


def test_range_of_frost_knows_the_lost_sign() -> None:
    """22 - -9 = 31 K; 22 + -9 = 13."""
    answer, slips = number(sums.annual_temp_range(of_demo("temperate_grassland")))
    assert ("31.0 K", "13.0 K") == (answer, slips["clim.range-sign"])
