"""Properties and edges of generator/science/day_length.py; outside values are in test_checks.py."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science.day_length import (
    fao_day_length,
    monthly_day_length,
    polar_day_days,
    polar_night_days,
)
from generator.science.months import MONTH_LENGTHS

latitudes = st.floats(-90, 90)
days = st.integers(1, 366)


@given(latitudes, days)
def test_day_length_lies_between_none_and_all_day(latitude: float, day: int) -> None:
    """No day is longer than 24 h or shorter than none."""
    assert 0.0 <= fao_day_length(latitude, day) <= 24.0


@given(latitudes, days)
def test_day_here_is_night_on_the_other_side(latitude: float, day: int) -> None:
    """North and south of the equator the two day lengths of one date make 24 h."""
    assert 24.0 == pytest.approx(fao_day_length(latitude, day) + fao_day_length(-latitude, day), abs=1e-9)


@given(days)
def test_equator_has_twelve_hours_all_year(day: int) -> None:
    """At the equator every day has 12 h."""
    assert 12.0 == pytest.approx(fao_day_length(0.0, day), abs=1e-12)


@given(st.floats(0, 89), st.floats(0, 1))
def test_midsummer_days_grow_towards_the_pole(latitude: float, step: float) -> None:
    """On 21 June the day is never shorter further north."""
    assert fao_day_length(latitude + step, 172) >= fao_day_length(latitude, 172) - 1e-12


@given(latitudes)
def test_monthly_means_are_means_of_their_days(latitude: float) -> None:
    """January and December hold the mean of their own 31 days."""
    means = monthly_day_length(latitude)
    assert 12 == len(means)
    assert sum(fao_day_length(latitude, day) for day in range(1, 32)) / 31 == pytest.approx(means[0], abs=1e-9)
    assert sum(fao_day_length(latitude, day) for day in range(335, 366)) / 31 == pytest.approx(means[11], abs=1e-9)


@given(latitudes)
def test_daylight_of_a_year_differs_little_between_places(latitude: float) -> None:
    """Every latitude has about half a year of daylight: the formula's mean stays near 12 h."""
    mean = sum(hours * n for hours, n in zip(monthly_day_length(latitude), MONTH_LENGTHS, strict=True)) / 365
    assert 12.0 == pytest.approx(mean, abs=0.25)


@pytest.mark.parametrize(("latitude", "june", "december"), [(90, 24.0, 0.0), (-90, 0.0, 24.0), (70, 24.0, 0.0)])
def test_sun_neither_sets_nor_rises_near_the_poles(latitude: float, june: float, december: float) -> None:
    """At the poles and within the polar circles the day is exactly 24 or 0 h at the solstices."""
    assert (june, december) == (fao_day_length(latitude, 172), fao_day_length(latitude, 355))


@pytest.mark.parametrize("latitude", [90.1, -90.1, float("nan")])
def test_latitude_off_the_globe_is_refused(latitude: float) -> None:
    """A latitude beyond the poles is named with its limits."""
    with pytest.raises(ValueError, match=r"latitude: expected -90 to 90 \[deg\], found"):
        monthly_day_length(latitude)
    with pytest.raises(ValueError, match="latitude"):
        fao_day_length(latitude, 1)


@pytest.mark.parametrize("day", [0, 367, 1.5])
def test_day_outside_the_year_is_refused(day: int) -> None:
    """Days count from 1 to 366 and are whole."""
    with pytest.raises(ValueError, match="day_of_year: expected a whole number from 1 to 366, found"):
        fao_day_length(10.0, day)


@given(st.floats(-66, 66))
def test_between_the_polar_circles_the_sun_rises_and_sets_every_day(latitude: float) -> None:
    assert (0,) * 12 == polar_day_days(latitude) == polar_night_days(latitude)


@given(latitudes)
def test_polar_night_here_is_polar_day_on_the_other_side(latitude: float) -> None:
    assert polar_day_days(latitude) == polar_night_days(-latitude)


@given(latitudes)
def test_days_of_a_month_are_not_counted_twice(latitude: float) -> None:
    counted = zip(polar_day_days(latitude), polar_night_days(latitude), MONTH_LENGTHS, strict=True)
    assert all(0 <= day + night <= length for day, night, length in counted)


@given(st.floats(60, 89), st.floats(0, 1))
def test_midnight_sun_lasts_longer_towards_the_pole(latitude: float, step: float) -> None:
    assert sum(polar_day_days(latitude + step)) >= sum(polar_day_days(latitude))


@pytest.mark.parametrize("latitude", [90, -90])
def test_at_the_pole_each_day_is_one_or_the_other(latitude: float) -> None:
    """No day has both: the sun is up for about half the year and down for the rest."""
    up, down = sum(polar_day_days(latitude)), sum(polar_night_days(latitude))
    assert 365 == up + down
    assert 178 <= up <= 187


def test_equator_never_has_a_polar_day() -> None:
    assert 0 == sum(polar_day_days(0.0)) + sum(polar_night_days(0.0))


def test_months_of_24_hours_are_those_whose_every_day_counts() -> None:
    for latitude in (71.3, -80.0, 90.0):
        whole = [hours == 24.0 for hours in monthly_day_length(latitude)]
        assert whole == [days == length for days, length in zip(polar_day_days(latitude), MONTH_LENGTHS, strict=True)]
