"""Facts of investigations of production: worked out by hand from small records, and beside the standard library."""

from __future__ import annotations

import math
import statistics

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.kind import Subject
from tests.kinds.productivity.small_series import DEEP, GRAZED, GREW, TOP, bottles, harvest, of
from tests.kinds.small_records import demo

BOTTLES, HARVEST = "productivity/halden_water_bottles", "productivity/harrow_plain_harvest"


def numbers(subject: Subject, *ids: str) -> list[float]:
    return [subject.facts[fact].number for fact in ids]


def test_bottles_give_gross_net_and_respiration_by_the_hour() -> None:
    """Source: arithmetic, (9.2 - 7.5) / 4, (9.2 - 8.1) / 4 and (8.1 - 7.5) / 4."""
    assert [0.425, 0.275, 0.15] == pytest.approx(numbers(of(bottles()), "d0.gross_production", "d0.net_production", "d0.respiration"))


def test_means_have_one_more_digit_than_the_readings_and_their_error_behind_them() -> None:
    facts = of(bottles({"light": "[9.82, 9.91, 9.87, 9.84]"})).facts
    assert "9.860 ± 0.020 mg O₂ L⁻¹" == facts["d0.light_oxygen"].shown
    assert "10.015 mg O₂ L⁻¹" == of(bottles({"light": "[10.02, 10.01]"})).facts["d0.light_oxygen"].shown_exactly


def test_errors_of_rates_combine_those_of_both_bottles() -> None:
    """Source: arithmetic, sqrt(0.2² + 0.1²) / 4 twice and sqrt(0.1² + 0.1²) / 4."""
    found = numbers(of(bottles()), "d0.gross_error", "d0.net_error", "d0.respiration_error")
    assert [math.sqrt(0.05) / 4, math.sqrt(0.05) / 4, math.sqrt(0.02) / 4] == pytest.approx(found)


def test_changes_are_what_the_rates_divide() -> None:
    assert [1.1, -0.6] == pytest.approx(numbers(of(bottles()), "d0.light_change", "d0.dark_change"))


def test_a_day_has_hours_of_light_for_production_and_all_hours_for_respiration() -> None:
    """Source: arithmetic, 0.425 × 10, 0.15 × 24 and their difference."""
    found = numbers(of(bottles()), "d0.daily_gross_production", "d0.daily_respiration", "d0.daily_net_production")
    assert [4.25, 3.6, 0.65] == pytest.approx(found)


def test_error_of_the_day_knows_that_the_dark_bottles_count_twice() -> None:
    """Source: arithmetic, sqrt((10 × 0.2)² + (14 × 0.1)² + (24 × 0.1)²) / 4."""
    assert math.sqrt(4 + 1.96 + 5.76) / 4 == pytest.approx(of(bottles()).facts["d0.daily_net_error"].number)


@pytest.mark.parametrize(("units", "incubation"), [("min", "240"), ("d", "0.16666666666666666"), ("h", "4")])
def test_time_of_incubation_may_be_in_minutes_or_days(units: str, incubation: str) -> None:
    found = of(bottles(head=f"units: {{incubation: {units}}}\n", incubation=incubation)).facts
    assert 0.425 == pytest.approx(found["d0.gross_production"].number)
    assert (found["incubation"].working is None) == (units == "h")


def test_single_depth_has_carbon_by_volume_and_no_column() -> None:
    """Source: arithmetic with 12.011 g and 31.998 g in a mole: 4.25 / 1.2, 3.6 × 1 and their difference."""
    subject = of(bottles())
    part = 12.011 / 31.998
    expected = [4.25 * part / 1.2, 3.6 * part, 4.25 * part / 1.2 - 3.6 * part]
    assert expected == pytest.approx(numbers(subject, "d0.gross_carbon", "d0.respired_carbon", "d0.net_carbon"))
    assert not any(fact.startswith("water_column") for fact in subject.facts)


def test_several_depths_are_summed_below_one_square_metre() -> None:
    """Source: arithmetic, 4 m × the mean of 0.425 and 0.1, of 0.15 and 0.15; times 10 and 24 hours."""
    subject = of(bottles(TOP, DEEP))
    expected = {
        "gross_rate": 1.05, "respiration_rate": 0.6, "gross_production": 10.5, "respiration": 14.4, "net_production": -3.9,
    }  # fmt: skip
    assert expected == pytest.approx({name: subject.facts[f"water_column.{name}"].number for name in expected})
    assert "d1.gross_carbon" not in subject.facts


def test_error_of_the_column_weighs_each_depth_by_the_water_it_stands_for() -> None:
    """Source: arithmetic, each depth stands for 2 m."""
    subject = of(bottles(TOP, DEEP))
    errors = numbers(subject, "d0.daily_net_error", "d1.daily_net_error")
    assert math.hypot(*(2 * error for error in errors)) == pytest.approx(subject.facts["water_column.net_error"].number)


def test_compensation_depth_lies_where_the_day_leaves_nothing_over() -> None:
    """Source: arithmetic: a gain of 0.65 at the surface and a loss of 2.6 at 4 m; 4 × 0.65 / 3.25."""
    assert 0.8 == pytest.approx(of(bottles(TOP, DEEP)).facts["water_column.compensation_depth"].number)


@pytest.mark.parametrize(
    ("depths", "because"),
    [((TOP, TOP | {"depth": "4"}), "not reached: at every depth a day leaves a gain"), ((DEEP, DEEP | {"depth": "6"}), "not defined: a day leaves a gain")],
)
def test_compensation_depth_is_undefined_with_a_reason_where_gain_and_loss_do_not_meet(depths: tuple[dict[str, str], ...], because: str) -> None:
    fact = of(bottles(*depths)).facts["water_column.compensation_depth"]
    assert (None, True) == (fact.value, fact.undefined_because.startswith(because))


def test_loss_of_a_light_bottle_is_a_negative_net_production() -> None:
    subject = of(bottles(DEEP))
    assert [0.1, -0.05, 0.15] == pytest.approx(numbers(subject, "d0.gross_production", "d0.net_production", "d0.respiration"))


def test_one_reading_has_a_mean_and_no_spread() -> None:
    facts = of(bottles({"light": "[9.2]"})).facts
    assert "9.20 mg O₂ L⁻¹" == facts["d0.light_oxygen"].shown
    without = ("light_spread", "light_error", "net_error", "gross_error", "net_told_apart", "daily_net_error", "daily_gross_error", "light_change_error")
    assert dict.fromkeys(without, (None, "not defined: one reading has no spread")) == {
        name: (facts[f"d0.{name}"].value, facts[f"d0.{name}"].undefined_because) for name in without
    }
    assert facts["d0.respiration_error"].is_number
    assert None is facts["d0.net_production"].plus_minus


@pytest.mark.parametrize(("light", "verdict"), [("[9, 9.4]", True), ("[8.1, 8.3]", False)])
def test_net_production_is_told_apart_beyond_twice_its_error(light: str, verdict: bool) -> None:
    fact = of(bottles({"light": light})).facts["d0.net_told_apart"]
    assert verdict is fact.value
    assert f"error? {'0.275' if verdict else '0.0250'} mg O₂ L⁻¹ h⁻¹ > 2 × {'0.0559' if verdict else '0.0354'}" in fact.shown_working


def test_spread_shows_every_deviation() -> None:
    working = of(bottles({"initial": "[8, 9, 10]"})).facts["d0.initial_spread"].shown_working.splitlines()
    assert ["Replicate | Reading (mg O₂ L⁻¹) | Less the mean | Squared", "1 | 8 | −1.00 | 1.00", "2 | 9 | 0.00 | 0.00"] == working[:3]
    assert ["the squares add up to 2.00; divide by 3 − 1, and take the root", "1.00 mg O₂ L⁻¹"] == working[-2:]


def test_harvests_give_biomass_and_net_production() -> None:
    """Source: arithmetic, 11 / 0.25, 32 / 0.25 and 84 / 50; errors 1 / 0.25, 2 / 0.25 and sqrt(4² + 8²) / 50."""
    found = of(harvest(("", GREW)))
    expected = [44, 128, 4, 8, 84, 50, 1.68, math.sqrt(80) / 50]
    names = ("biomass_h0", "biomass_h1", "area_error_h0", "area_error_h1", "gain", "duration", "net_production", "net_error")
    assert expected == pytest.approx(numbers(found, *(f"p0.{name}" for name in names)))


def test_net_production_by_harvest_becomes_carbon_and_energy() -> None:
    """Source: arithmetic, 1.68 × 0.4 and 1.68 × 18."""
    found = of(harvest(("", GREW), carbon_fraction="0.4", energy_content="18"))
    assert [0.672, 30.24] == pytest.approx(numbers(found, "p0.net_carbon", "p0.net_energy"))


def test_gross_production_needs_respiration_and_says_so() -> None:
    facts = of(harvest(("", GREW))).facts
    because = {facts[f"p0.{name}"].undefined_because for name in ("respiration", "gross_production", "gross_error")}
    assert {"not known: a harvest does not show what the plants respired"} == because


def test_gross_production_adds_respiration_with_its_uncertainty() -> None:
    """Source: arithmetic, 1.68 + 1.2 and sqrt(80 / 2500 + 0.3²)."""
    found = of(harvest(("respiration: {value: 1.2, plus_minus: 0.3}", GREW)))
    assert [2.88, math.sqrt(80 / 2500 + 0.09)] == pytest.approx(numbers(found, "p0.gross_production", "p0.gross_error"))
    assert "2.88 ± 0.35 g m⁻² d⁻¹" == found.facts["p0.gross_production"].shown


def test_respiration_without_its_uncertainty_leaves_gross_production_without_one() -> None:
    facts = of(harvest(("respiration: 1.2", GREW))).facts
    assert (2.88, None) == (pytest.approx(facts["p0.gross_production"].number), facts["p0.gross_error"].value)
    assert "without its uncertainty" in facts["p0.gross_error"].undefined_because


def test_what_grazers_ate_is_the_difference_of_two_plots() -> None:
    """Source: arithmetic, 84 / 50 - 40 / 50, its error and its part of 1.68."""
    found = of(harvest(("grazing: open", GRAZED), ("grazing: kept_out", GREW)))
    expected = [0.88, math.sqrt(80 + 32) / 50, 100 * 0.88 / 1.68]
    assert expected == pytest.approx(numbers(found, "grazing.eaten", "grazing.eaten_error", "grazing.eaten_share"))
    assert "grazing.eaten" not in of(harvest(("grazing: open", GRAZED), ("", GREW))).facts


def test_part_eaten_of_no_growth_is_not_asked_for() -> None:
    still = ((0.0, "[10, 12]"), (50.0, "[10, 12]"))
    facts = of(harvest(("grazing: kept_out", still), ("grazing: open", still))).facts
    assert (0.0, False) == (facts["grazing.eaten"].number, "grazing.eaten_share" in facts)


def test_three_harvests_have_production_in_between_too() -> None:
    """Source: arithmetic, 84 / 50 and (160 - 128) / 10."""
    found = of(harvest(("", (*GREW, (60.0, "[40, 40]")))))
    assert [1.68, 3.2, 116 / 60] == pytest.approx(numbers(found, "p0.growth_h1", "p0.growth_h2", "p0.net_production"))
    assert "p0.growth_h1" not in of(harvest(("", GREW))).facts


def test_quadrats_may_be_in_square_centimetres() -> None:
    found = of(harvest(("", GREW), head="units: {quadrat_area: cm2}\n", quadrat_area="2500"))
    assert [0.25, 44] == pytest.approx(numbers(found, "quadrat_area", "p0.biomass_h0"))


def test_bottles_of_the_demo_agree_with_the_standard_library() -> None:
    """Source: statistics.fmean and statistics.stdev on the readings of the record."""
    subject = demo(BOTTLES)
    for depth in subject.record.bottles.depths:
        for sort in ("initial", "light", "dark"):
            readings = [float(reading) for reading in getattr(depth, sort)]
            spread = statistics.stdev(readings)
            expected = [statistics.fmean(readings), spread, spread / math.sqrt(len(readings))]
            assert expected == pytest.approx(numbers(subject, *(f"{depth.id}.{sort}_{name}" for name in ("oxygen", "spread", "error"))))


def test_demo_agrees_with_the_records_that_it_speaks_of() -> None:
    """The lake's surface oxygen and light, and the plain's production: one world, described twice."""
    lake, plain, biome = (demo(name).facts for name in ("aquatic_biome/lake", "pyramid/harrow_plain_grassland", "biome/temperate_grassland"))
    bottles_facts, harvest_facts = demo(BOTTLES).facts, demo(HARVEST).facts
    assert lake["halden_water.dissolved_oxygen"].number == pytest.approx(bottles_facts["surface.initial_oxygen"].number, abs=0.05)
    assert bottles_facts["water_column.compensation_depth"].number < lake["halden_water.photic_depth"].number
    assert harvest_facts["energy_content"].number == plain["grasses.energy_content"].number
    assert harvest_facts["under_nets.gain"].number < biome["harrow_plain.potential_npp"].number
    shares = [of["respiration"] / of["gross"] for of in (
        {"respiration": plain["grasses.respiration"].number, "gross": plain["grasses.gross_production"].number},
        {"respiration": harvest_facts["under_nets.respiration"].number, "gross": harvest_facts["under_nets.gross_production"].number},
    )]  # fmt: skip
    assert shares[0] == pytest.approx(shares[1], abs=0.02)


readings = st.lists(st.integers(0, 2000), min_size=1, max_size=5).map(lambda found: [number / 100 for number in found])


@settings(max_examples=40, deadline=None)
@given(readings, readings, readings, st.integers(1, 48))
def test_gross_is_net_and_respiration_whatever_the_readings(initial: list[float], light: list[float], dark: list[float], hours: int) -> None:
    found = of(bottles({"initial": str(initial), "light": str(light), "dark": str(dark)}, incubation=str(hours)))
    gross, net, respiration = numbers(found, "d0.gross_production", "d0.net_production", "d0.respiration")
    assert gross == pytest.approx(net + respiration, abs=1e-9)
    assert (None in [found.facts[f"d0.{sort}_spread"].value for sort in ("light", "dark")]) == (found.facts["d0.gross_error"].value is None)
