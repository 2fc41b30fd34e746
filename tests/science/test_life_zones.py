"""Properties and edges of generator/science/life_zones.py; outside values are in test_checks.py."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science.life_zones import BELTS, ZONES, belt_of, biotemperature, life_zone, pet_ratio

temperatures = st.lists(st.floats(-60, 50), min_size=12, max_size=12)
biotemperatures = st.floats(0, 30)
precipitations = st.floats(0, 12000)
COLD_TO_WARM = [belt for _, belt in BELTS]


@given(temperatures)
def test_biotemperature_lies_between_0_and_30(temp: list[float]) -> None:
    assert 0 <= biotemperature(temp) <= 30


@given(temperatures, st.permutations(range(12)))
def test_order_of_the_months_does_not_matter(temp: list[float], order: list[int]) -> None:
    assert biotemperature(temp) == pytest.approx(biotemperature([temp[month] for month in order]))


@given(st.lists(st.floats(0, 30), min_size=12, max_size=12))
def test_biotemperature_of_useful_months_is_their_mean(temp: list[float]) -> None:
    assert math.fsum(temp) / 12 == pytest.approx(biotemperature(temp), abs=1e-9)


@given(biotemperatures, precipitations)
def test_every_climate_has_a_zone_of_its_belt(warmth: float, precip: float) -> None:
    belt = belt_of(warmth)
    assert life_zone(warmth, precip) in {f"{belt} {zone}" for _, zone in ZONES[belt]}


@given(biotemperatures, biotemperatures)
def test_warmer_is_never_a_colder_belt(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert COLD_TO_WARM.index(belt_of(low)) <= COLD_TO_WARM.index(belt_of(high))


@given(biotemperatures, precipitations, precipitations)
def test_wetter_is_never_a_drier_zone(warmth: float, one: float, other: float) -> None:
    names = [zone for _, zone in ZONES[belt_of(warmth)]]
    dry, wet = (life_zone(warmth, precip).removeprefix(f"{belt_of(warmth)} ") for precip in sorted((one, other)))
    assert names.index(wet) <= names.index(dry)


def test_limits_of_each_belt_rise_to_the_open_end() -> None:
    for zones in (BELTS, *ZONES.values()):
        limits = [limit for limit, _ in zones]
        assert limits == sorted(set(limits))
        assert math.inf == limits[-1]


def test_all_frozen_is_polar_desert_however_much_falls() -> None:
    assert 0.0 == biotemperature([-30.0] * 12)
    assert ["polar desert"] * 2 == [life_zone(0.0, precip) for precip in (0.0, 3000.0)]


def test_no_rain_is_the_driest_zone() -> None:
    assert math.inf == pet_ratio(20.0, 0.0)
    assert ["tropical desert", "boreal desert"] == [life_zone(27.0, 0.0), life_zone(4.0, 0.0)]


@pytest.mark.parametrize(("warmth", "belt"), [(12.0, "warm temperate"), (17.9999999999, "subtropical"), (18.0, "subtropical"), (17.99, "warm temperate")])
def test_limit_belongs_to_the_warmer_belt_and_rounding_is_forgiven(warmth: float, belt: str) -> None:
    assert belt == belt_of(warmth)


def test_ends_of_the_biotemperature_have_a_belt() -> None:
    assert ["polar", "tropical"] == [belt_of(warmth) for warmth in (0.0, 30.0)]


def test_demand_equal_to_rain_is_dry() -> None:
    """Exactly as much demand as rain belongs to the drier zone."""
    assert "cool temperate steppe" == life_zone(10.0, 589.3)


def test_values_out_of_reach_are_refused() -> None:
    with pytest.raises(ValueError, match=r"biotemperature: expected 0 to 30 \[degC\], found 31"):
        life_zone(31.0, 100.0)
    with pytest.raises(ValueError, match=r"annual_precip: expected a finite number from 0 \[mm\], found -1"):
        life_zone(10.0, -1.0)
    with pytest.raises(ValueError, match="annual_precip: expected a finite number from 0"):
        life_zone(10.0, math.inf)
