"""Facts of light and of the spread of rain over the year."""

from __future__ import annotations

from tests.kinds.biome.test_facts import biome
from tests.kinds.small_records import demo


def test_seasonality_is_the_sum_of_what_the_months_are_off() -> None:
    """Source: arithmetic by hand; six months of 20 and six of 0 are each 10 off the mean, 120 in all."""
    fact = biome(precip=[20] * 6 + [0] * 6).facts["here.precipitation_seasonality"]
    assert 1.0 == fact.number
    assert "together they are off by 120 mm, over a total of 120 mm" in fact.shown_working


def test_seasonality_without_rain_is_not_defined() -> None:
    fact = biome(precip=[0] * 12).facts["here.precipitation_seasonality"]
    assert (None, "not defined: nothing falls in any month") == (fact.value, fact.shown)


def test_beyond_the_polar_circle_months_of_polar_day_and_night_are_listed() -> None:
    """Source: pyet 1.5.0 counts 11, 30 and 22 days of 24 h at 70° N, and 12, 31 and 21 of 0 h."""
    facts = biome(latitude="latitude: 70").facts
    assert ((5, 6, 7), (1, 11, 12)) == (facts["here.polar_day_months"].value, facts["here.polar_night_months"].value)
    assert "63 days in all" in facts["here.polar_day_months"].shown_working
    assert "64 days in all" in facts["here.polar_night_months"].shown_working


def test_south_of_the_equator_polar_day_falls_in_december() -> None:
    facts = biome(latitude="latitude: -70").facts
    assert ((1, 11, 12), (5, 6, 7)) == (facts["here.polar_day_months"].value, facts["here.polar_night_months"].value)


def test_tropics_have_neither_polar_day_nor_night() -> None:
    facts = demo("biome/tropical_rain_forest").facts
    assert ((), ()) == (facts["maro_landing.polar_day_months"].value, facts["maro_landing.polar_night_months"].value)
    assert "no month" == facts["maro_landing.polar_day_months"].shown


def test_without_latitude_the_light_is_not_known() -> None:
    facts = biome(latitude="").facts
    for name in ("monthly_day_length", "polar_day_months", "polar_night_months"):
        assert (None, "not known: the station states no latitude") == (facts[f"here.{name}"].value, facts[f"here.{name}"].shown)
