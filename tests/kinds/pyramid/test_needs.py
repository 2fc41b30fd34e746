"""Areas under each way of counting, plant growth behind a catch, turnover of biomass, and the shape of the pyramids."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo

TOP = "top_consumer: {{level: l1, needs: {{value: 20000, unit: kJ/yr}}, measured_as: {0}}}\n"


def test_areas_of_the_example_by_each_way_of_counting() -> None:
    """Source: arithmetic on the record: 38 000 over 20 eaten, over 50 produced below, over 4 produced, in hectares."""
    facts = demo("pyramid/sill_lake").facts
    assert [0.19, 0.076, 0.95] == pytest.approx([facts[f"pike.supporting_area{way}"].value for way in ("", "_as_food", "_as_production")])


@settings(max_examples=30, deadline=None)
@given(st.integers(1, 10**5), st.integers(1, 10**5), st.integers(1, 10**5))
def test_food_and_production_differ_by_the_transfer_efficiency(below: int, lost: int, built: int) -> None:
    facts = pyramid(f"production: {below}", f"eaten: {lost + built}, production: {built}", more=TOP.format("eaten")).facts
    share = facts["l1.transfer_efficiency"].number / 100
    assert facts["l1.supporting_area_as_food"].number / share == pytest.approx(facts["l1.supporting_area_as_production"].number)


def test_each_area_says_what_the_need_is_compared_with() -> None:
    facts = pyramid("production: 500", "eaten: 40, production: 5", more=TOP.format("eaten")).facts
    names = [facts[f"l1.supporting_area{way}"].name for way in ("", "_as_food", "_as_production")]
    words = ("what its level eats", "all that the level below produces", "what its level produces")
    assert all(word in name for word, name in zip(words, names, strict=True))


def test_convention_that_the_record_states_is_not_told_twice() -> None:
    facts = pyramid("production: 500", "production: 5", more=TOP.format("production")).facts
    assert {"l1.supporting_area", "l1.supporting_area_as_food"} == {name for name in facts if "supporting_area" in name}


def test_turnover_time_is_the_ratio_turned_round() -> None:
    """Source: arithmetic on the record: 1.8 x 20 / 2600 years in days; 0.3 x 23 / 2.5 years."""
    facts = demo("pyramid/tillet_bay").facts
    times = [facts[f"{level}.biomass_turnover_time"] for level in ("phytoplankton", "bass")]
    assert [(pytest.approx(1.8 * 20 / 2600 * 365.25), "d"), (pytest.approx(0.3 * 23 / 2.5), "yr")] == [
        (fact.value, fact.unit.label) for fact in times if fact.unit
    ]


@settings(max_examples=30, deadline=None)
@given(*[st.integers(1, 1000)] * 4)
def test_more_biomass_is_production_times_turnover_time(low: int, more: int, below: int, above: int) -> None:
    """With one energy content on both levels: ratio of biomass = transfer efficiency times ratio of turnover times."""
    facts = pyramid(
        f"production: {below}, biomass: {low}, energy_content: 20", f"production: {above}, biomass: {low + more}, energy_content: 20"
    ).facts  # fmt: skip
    product = facts["l1.transfer_efficiency"].number / 100 * facts["l1.turnover_ratio"].number
    assert facts["l1.biomass_ratio"].number == pytest.approx(product)


def test_level_that_weighs_less_has_no_ratios() -> None:
    facts = demo("pyramid/tillet_bay").facts
    assert {"zooplankton.biomass_ratio", "zooplankton.turnover_ratio"} == {name for name in facts if name.endswith("_ratio")}


def test_shapes_say_which_step_is_wider_above() -> None:
    bay, wood = demo("pyramid/tillet_bay").facts, demo("pyramid/hollin_wood").facts
    assert ("partly inverted", "upright", "partly inverted") == (bay["biomass_pyramid"].value, wood["biomass_pyramid"].value, wood["numbers_pyramid"].value)
    assert "Is there more of zooplankton than of phytoplankton? 3.6 g m⁻² > 1.8 g m⁻²: yes" in bay["biomass_pyramid"].shown_working


def test_shape_needs_every_level() -> None:
    assert "numbers_pyramid" not in demo("pyramid/sill_lake").facts
    assert "biomass_pyramid" not in pyramid("production: 500, biomass: 1", "production: 5, biomass: unknown").facts


CATCH = "catch: {{taken: [{0}]}}\n"


def test_plant_growth_behind_the_catch_of_the_example() -> None:
    """Source: arithmetic on the record: 1.2/9 x 1000 and 4.5/9 x 100 kg C/ha; with 45 kJ/g, of 2600 kJ/m2."""
    facts = demo("pyramid/tillet_bay").facts
    parts = [1200 / 9, 450 / 9]
    assert parts == pytest.approx([facts[f"{level}.primary_production_required"].value for level in ("bass", "small_fish")])
    assert sum(parts) == pytest.approx(facts["primary_production_required"].number)
    assert 100 * sum(parts) / 10 * 45 / 2600 == pytest.approx(facts["primary_production_share"].number)
    assert "kg C/ha/yr" == facts["primary_production_required"].unit.label  # type is settled by the fact


def test_stated_trophic_level_goes_before_the_place_in_the_pyramid() -> None:
    """Source: arithmetic, 9/9 x 10^(2.5 - 1) and 9/9 x 10^(2 - 1)."""
    levels = ("production: 500", "production: 5")
    stated = pyramid(*levels, more=CATCH.format("{level: l1, amount: 9, trophic_level: 2.5}")).facts
    placed = pyramid(*levels, more=CATCH.format("{level: l1, amount: 9}")).facts
    assert [10**1.5, 10.0] == pytest.approx([facts["l1.primary_production_required"].value for facts in (stated, placed)])


@settings(max_examples=30, deadline=None)
@given(st.floats(0.05, 0.5), st.floats(1.0, 5.0))
def test_one_step_more_divides_by_the_efficiency_once_more(share: float, level: float) -> None:
    catch = f"catch: {{transfer_efficiency: {share!r}, taken: [{{level: l0, amount: 1, trophic_level: {level!r}}}, {{level: l1, amount: 1, trophic_level: {level + 1!r}}}]}}\n"
    facts = pyramid("production: 500", "production: 5", more=catch).facts
    lower, upper = (facts[f"{name}.primary_production_required"].number for name in ("l0", "l1"))
    assert lower / share == pytest.approx(upper)


@pytest.mark.parametrize(
    ("head", "because"),
    [
        ("units: {energy_flow: kJ/m2/yr}\n", "the record states no energy for a gram of carbon"),
        ("units: {energy_flow: kJ/m2/yr, catch: t/yr}\nconversions: {energy_per_carbon: 45}\n", "the catch is not stated for an area"),
    ],
)
def test_share_that_cannot_be_known_says_why(head: str, because: str) -> None:
    facts = pyramid("production: 500", "production: 5", head=head, more=CATCH.format("{level: l1, amount: 1}")).facts
    assert f"not known: {because}" == facts["primary_production_share"].undefined_because
