"""Sums on a climate: right answers and recognised slips. Sources: arithmetic on the records."""

from __future__ import annotations

import pytest

from generator.kinds.biome import climate_sums as sums
from generator.questions.question import NumberEntry, Rejected
from tests.kinds.biome.asked import of_demo, number, small


def test_share_of_three_wettest_months_knows_a_quarter_the_rest_and_a_single_month() -> None:
    """48 + 66 + 42 = 156 of 327 mm: 47.7 %; 3/12, 156/171 = 91.2 %, 66/327 = 20.2 %."""
    item = sums.wettest_months_share(of_demo("temperate_grassland"))
    answer, slips = number(item)
    assert ("47.7 %", ["25.0 %", "91.2 %", "20.2 %", "0.477 %"]) == (answer, list(slips.values()))
    assert "156 mm ÷ 327 mm" in item.solution


def test_three_wettest_months_are_not_asked_where_a_fourth_is_as_wet() -> None:
    assert isinstance(sums.wettest_months_share(small(precip=[100, 100, 100, 100, *[20] * 8])), Rejected)


def test_mean_of_the_year_is_told_from_the_mean_of_its_extremes() -> None:
    """Fern Water: 132.5 / 12 = 11.04 and (15.6 + 6.2) / 2 = 10.9 °C, 0.14 degrees apart."""
    item = sums.annual_mean_temp(of_demo("temperate_rain_forest", 1))
    answer, slips = number(item)
    assert ("11.0 °C", "10.9 °C") == (answer, slips["clim.mean-of-extremes"])
    assert not item.accepted.low <= 10.9 <= item.accepted.high and "132.5 ÷ 12" in item.solution


@pytest.mark.parametrize("temp", [[0, 20] * 6, [26, 26, 26.5, 26.5, 26, 26, 25.5, 25.5, 26, 26, 26, 26]])
def test_mean_is_not_asked_where_its_extremes_or_a_single_month_give_it(temp: list[float]) -> None:
    """Six months of 0 and of 20 °C have the mean of their extremes; where months differ by 1 K, any of them nearly is the mean."""
    assert isinstance(sums.annual_mean_temp(small(temp)), Rejected)


def test_index_leaves_open_which_number_stands_above_the_line() -> None:
    prompt = sums.aridity_index(of_demo("temperate_grassland")).prompt
    assert "327 mm" in prompt and "617 mm" in prompt and "ivide" not in prompt


def test_driest_month_is_set_beside_a_twelfth_of_the_year_without_telling_the_total() -> None:
    """11 months of 90 mm and one of 45: 1035 / 12 = 86.25, and 45 of that are 52.2 %; 45 / 1035, 86.25 / 45 and 45 / 90 are slips."""
    question = sums.driest_beside_average(small(precip=[90] * 11 + [45]))
    assert isinstance(question, NumberEntry)
    assert ("52.2 %", {"4.35 %", "192 %"}) == (question.answer, {slip.shown for slip in question.slips})  # half of the wettest is too near to be told apart
    assert "1035" not in question.prompt and isinstance(sums.driest_beside_average(small(precip=[90] * 12)), Rejected)


def test_share_of_the_wettest_month_knows_a_twelfth_the_rest_and_the_inverse() -> None:
    """66 / 327 = 20.2 %, 66 / 261 = 25.3 %, 327 / 66 = 495 %."""
    answer, slips = number(sums.wettest_share(of_demo("temperate_grassland")))
    assert ("20.2 %", "8.33 %", "25.3 %", "495 %") == (answer, slips["clim.even-rain"], slips["cyc.share-of-rest"], slips["clim.share-inverse"])


@pytest.mark.parametrize("precip", [[90] * 12, [0] * 12, [100, 100, *[50] * 10]])
def test_share_of_even_rain_of_none_or_of_two_wettest_months_is_not_asked_for(precip: list[float]) -> None:
    assert isinstance(sums.wettest_share(small(precip=precip)), Rejected)


def test_lack_of_the_first_dry_months_is_added_up_from_the_table_and_its_unit_is_asked_for() -> None:
    """Shrubland, April to June: 51 + 83 + 119 = 253 mm could evaporate, 38 + 20 + 6 = 64 mm fall; of the year 833 - 533 = 300 mm."""
    question = sums.lack_of_water(of_demo("mediterranean_shrubland"))
    answer, slips = number(question)
    assert ("189 mm", "253 mm", "317 mm", "300 mm", "−189 mm") == (
        answer, slips["num.one-for-difference"], slips["num.sum-for-difference"], slips["clim.year-for-part"], slips["clim.lack-sign"],
    )  # fmt: skip
    assert isinstance(question, NumberEntry) and question.asks_unit and "from April to June" in question.prompt


def test_dry_time_over_the_turn_of_the_year_is_named_by_its_ends() -> None:
    """Savanna, October to December: 138 + 110 + 90 = 338 mm, 58 + 5 + 0 = 63 mm."""
    question = sums.lack_of_water(of_demo("savanna"))
    assert ("275 mm", True) == (number(question)[0], "from October to December" in question.prompt)


@pytest.mark.parametrize("name", ["hot_desert", "tundra", "alpine", "temperate_grassland"])
def test_lack_is_no_sum_without_a_dry_time_behind_a_wet_one(name: str) -> None:
    """In a desert and in the grassland nothing ever runs off; on the saddle more falls each month than could evaporate."""
    assert isinstance(sums.lack_of_water(of_demo(name)), Rejected)


def test_water_is_not_asked_for_without_latitude() -> None:
    assert isinstance(sums.lack_of_water(small(latitude="")), Rejected)
    assert isinstance(sums.aridity_index(small(latitude="")), Rejected)


def test_range_of_frost_knows_the_lost_sign() -> None:
    """22 - -9 = 31 K; 22 + -9 = 13, and the other way round -31."""
    question = sums.annual_temp_range(of_demo("temperate_grassland"))
    answer, slips = number(question)
    assert isinstance(question, NumberEntry) and question.solution.startswith("22 °C − (−9 °C) = 31 K")
    assert "31 K" == answer and "clim.range-sign" in slips
    assert ("13 K", "−31 K") == (slips["clim.range-sign"], slips["inv.start-less-end"])
