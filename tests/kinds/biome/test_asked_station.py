"""Months as questions speak of them: in the order of the diagram, beside each other, half a year away."""

from __future__ import annotations

from generator.kinds.biome.asked_station import beside, name, opposite
from tests.kinds.biome.asked import of_demo, small
from tests.kinds.biome.test_facts import SOUTH


def test_year_begins_in_july_where_the_diagram_does() -> None:
    assert (1, 12) == (small().year[0], small().year[-1])
    assert (7, 6) == (small(SOUTH, latitude="latitude: -46.5").year[0], small(SOUTH, latitude="latitude: -46.5").year[-1])
    assert 1 == small(SOUTH, latitude="latitude: -10").year[0]


def test_months_run_on_over_the_turn_of_the_year() -> None:
    assert (12, 2, 11, 1) == beside(1, 12)
    assert (7, 6) == opposite(1, 12)
    assert ("December", "January") == (name(0), name(13))


def test_month_is_none_where_several_share_it() -> None:
    assert (None, 1) == (of_demo("mediterranean_shrubland").one_month("warmest_month"), of_demo("mediterranean_shrubland").one_month("coldest_month"))


def test_value_of_a_month_is_told_as_the_record_has_it() -> None:
    assert ("−9 °C", "66 mm") == (of_demo("temperate_grassland").told("monthly_mean_temp", 1), of_demo("temperate_grassland").told("monthly_precip", 6))


def test_water_balance_is_not_asked_without_latitude_or_beyond_the_formula() -> None:
    assert "" == small().no_balance
    assert "latitude" in small(latitude="").no_balance
    assert "cold" in of_demo("tundra").no_balance
