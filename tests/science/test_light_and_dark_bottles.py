"""Properties of generator/science/light_and_dark_bottles.py; outside values are in test_checks.py."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.substances import molar_mass

oxygen = st.floats(0, 20)
rates = st.floats(-1, 1)
hours = st.floats(0.5, 24)
quotients = st.floats(0.5, 2)
errors = st.floats(0, 0.5)
MASSES = {"molar_mass_carbon": molar_mass("C"), "molar_mass_oxygen": molar_mass("O2")}


def compute(method: str, **given_values: float) -> Any:
    return METHODS[method].compute(**given_values)


@given(oxygen, oxygen, oxygen, hours)
def test_gross_production_is_net_production_and_respiration(initial: float, light: float, dark: float, time: float) -> None:
    """The initial bottle cancels out, whatever it held."""
    gross = compute("bottle_gross_production", light=light, dark=dark, incubation=time)
    net = compute("bottle_net_production", light=light, initial=initial, incubation=time)
    respiration = compute("bottle_respiration", initial=initial, dark=dark, incubation=time)
    assert gross == pytest.approx(net + respiration, abs=1e-9)


@given(oxygen, oxygen, hours)
def test_a_light_bottle_in_the_dark_gives_no_gross_production(initial: float, dark: float, time: float) -> None:
    """Then light and dark bottles end alike, and net production is the respiration lost."""
    assert 0.0 == compute("bottle_gross_production", light=dark, dark=dark, incubation=time)
    net = compute("bottle_net_production", light=dark, initial=initial, incubation=time)
    assert net == pytest.approx(-compute("bottle_respiration", initial=initial, dark=dark, incubation=time))


@given(rates, rates)
def test_a_day_of_24_hours_of_light_has_the_net_production_of_the_bottles(gross: float, respiration: float) -> None:
    daily_gross = compute("daily_gross_production", gross_production=gross, light_hours=24.0)
    daily_respiration = compute("daily_respiration", respiration=respiration, hours_of_a_day=24.0)
    net = compute("daily_net_production", daily_gross_production=daily_gross, daily_respiration=daily_respiration)
    assert net == pytest.approx(24 * (gross - respiration), abs=1e-9)


@given(hours, errors, errors, errors, hours)
def test_error_of_a_day_agrees_with_small_changes_of_each_mean(light_hours: float, light: float, dark: float, initial: float, time: float) -> None:
    """Source: the law of propagation, with differences in the place of derivatives."""
    def net(l: float, d: float, i: float) -> float:
        return (l - d) / time * light_hours - (i - d) / time * 24

    start = (9.0, 8.0, 8.5)
    steps = ((light, 0.0, 0.0), (0.0, dark, 0.0), (0.0, 0.0, initial))
    squares = sum((net(*(a + b for a, b in zip(start, step, strict=True))) - net(*start)) ** 2 for step in steps)
    found = compute(
        "daily_net_error", light_hours=light_hours, hours_of_a_day=24.0, light_error=light, dark_error=dark, initial_error=initial, incubation=time
    )
    assert found == pytest.approx(squares**0.5, rel=1e-6, abs=1e-9)


@given(st.floats(0, 100), st.floats(0, 100), quotients, quotients)
def test_carbon_follows_oxygen(made: float, used: float, photosynthetic: float, respiratory: float) -> None:
    """More oxygen made for each carbon means less carbon; more carbon dioxide given off means more."""
    fixed = compute("carbon_from_oxygen", oxygen=made, photosynthetic_quotient=photosynthetic, **MASSES)
    lost = compute("carbon_of_respiration", oxygen=used, respiratory_quotient=respiratory, **MASSES)
    assert fixed * photosynthetic == pytest.approx(made * 12.011 / 31.998)
    assert lost / respiratory == pytest.approx(used * 12.011 / 31.998)
    assert fixed - lost == pytest.approx(compute("net_carbon", gross_carbon=fixed, respired_carbon=lost))


@given(st.floats(0, 100), st.floats(0, 100), quotients)
def test_net_carbon_is_net_oxygen_over_the_quotient_only_where_both_processes_share_it(made: float, used: float, quotient: float) -> None:
    fixed = compute("carbon_from_oxygen", oxygen=made, photosynthetic_quotient=quotient, **MASSES)
    lost = compute("carbon_of_respiration", oxygen=used, respiratory_quotient=1 / quotient, **MASSES)
    net = compute("carbon_from_oxygen", oxygen=made - used, photosynthetic_quotient=quotient, **MASSES)
    assert net == pytest.approx(fixed - lost, abs=1e-9)


@pytest.mark.parametrize(
    ("method", "given_values"),
    [
        ("bottle_gross_production", {"light": 9.0, "dark": 8.0}), ("bottle_net_production", {"light": 9.0, "initial": 8.0}),
        ("bottle_respiration", {"initial": 9.0, "dark": 8.0}),
        ("daily_net_error", {"light_hours": 12.0, "hours_of_a_day": 24.0, "light_error": 0.1, "dark_error": 0.1, "initial_error": 0.1}),
    ],
)  # fmt: skip
def test_no_time_gives_no_rate(method: str, given_values: dict[str, float]) -> None:
    with pytest.raises(ZeroDivisionError):
        compute(method, incubation=0.0, **given_values)


def test_day_of_polar_night_and_bottles_that_end_alike() -> None:
    assert 0.0 == compute("daily_gross_production", gross_production=0.3, light_hours=0.0)
    assert 0.0 == compute("daily_respiration", respiration=0.0, hours_of_a_day=24.0)
    assert -2.0 == compute("daily_net_production", daily_gross_production=0.0, daily_respiration=2.0)
    assert 0.0 == compute("carbon_from_oxygen", oxygen=0.0, photosynthetic_quotient=1.2, **MASSES)
    assert 0.0 == compute("carbon_of_respiration", oxygen=0.0, respiratory_quotient=1.0, **MASSES)
    assert 0.0 == compute("net_carbon", gross_carbon=1.5, respired_carbon=1.5)
