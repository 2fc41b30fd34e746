"""Facts of pyramids: energy worked out by hand from the record, and every way in which a level may state its production."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.kind import Subject
from tests.kinds.small_records import demo, subject

UNITS = "units: {energy_flow: kJ/m2/yr}\n"


def pyramid(*levels: str, more: str = "", head: str = UNITS) -> Subject:
    """Levels `l0`, `l1`, ... from producers up, each with these fields."""
    return subject("pyramid", text(*levels, more=more, head=head))


def text(*levels: str, more: str = "", head: str = UNITS) -> str:
    """The record that `pyramid` reads."""
    lines = "".join(f"  - {{id: l{number}, {level}}}\n" for number, level in enumerate(levels))
    return f"{head}levels:\n{lines}{more}"


def test_production_of_the_example() -> None:
    """Source: arithmetic on the record, 9400 - 3600 for the algae; the others are stated."""
    facts = demo("pyramid/sill_lake").facts
    assert [9400 - 3600, 580, 50, 4] == [facts[f"{level}.production"].value for level in ("phytoplankton", "zooplankton", "perch", "pike")]


def test_transfer_efficiencies_of_the_example() -> None:
    """Source: arithmetic on the record."""
    facts = demo("pyramid/sill_lake").facts
    expected = {"phytoplankton": None, "zooplankton": 100 * 580 / 5800, "perch": 100 * 50 / 580, "pike": 100 * 4 / 50}
    assert expected == pytest.approx({level: facts[f"{level}.transfer_efficiency"].value for level in expected})
    assert 100 * 4 / 5800 == pytest.approx(facts["overall_efficiency"].value)


def test_what_does_not_pass_on_in_the_example() -> None:
    """Source: arithmetic on the record."""
    facts = demo("pyramid/sill_lake").facts
    assert [5800 - 580, 580 - 50, 50 - 4, None] == [
        facts[f"{level}.not_passed_on"].value for level in ("phytoplankton", "zooplankton", "perch", "pike")
    ]


def test_production_to_biomass_of_the_example() -> None:
    """Source: arithmetic on the record; production over biomass times energy content."""
    facts = demo("pyramid/sill_lake").facts
    expected = {"phytoplankton": 5800 / (6 * 20), "zooplankton": 580 / (3.1 * 22), "perch": 50 / (2.2 * 23), "pike": 4 / (0.35 * 24)}
    assert expected == pytest.approx({level: facts[f"{level}.production_to_biomass"].value for level in expected})


def test_supporting_area_of_the_example() -> None:
    """Source: arithmetic on the record; 38 000 kJ per year over 20 kJ eaten per square metre is 1900 m2, or 0.19 ha."""
    assert 0.19 == pytest.approx(demo("pyramid/sill_lake").facts["pike.supporting_area"].value)


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(1, 10**6), min_size=2, max_size=5), st.integers(2, 50))
def test_efficiencies_do_not_depend_on_the_size_of_the_flows(flows: list[int], times: int) -> None:
    once, more = (pyramid(*(f"production: {factor * flow}" for flow in flows)).facts for factor in (1, times))
    for name in ("l1.transfer_efficiency", "overall_efficiency"):
        assert once[name].number == pytest.approx(more[name].number)
    assert times * once["l0.not_passed_on"].number == pytest.approx(more["l0.not_passed_on"].number)


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(1, 10**6), min_size=2, max_size=5))
def test_steps_multiply_to_the_overall_efficiency(flows: list[int]) -> None:
    facts = pyramid(*(f"production: {flow}" for flow in flows)).facts
    product = 1.0
    for number in range(1, len(flows)):
        product *= facts[f"l{number}.transfer_efficiency"].number / 100
    assert 100 * product == pytest.approx(facts["overall_efficiency"].number)


def test_consumer_production_is_what_is_left_of_the_intake() -> None:
    """Source: arithmetic, 30 - 12 - 10."""
    fact = pyramid("production: 500", "eaten: 30, egested: 12, respired: 10").facts["l1.production"]
    assert (8.0, "consumer_production") == (fact.value, fact.method)


def test_efficiency_in_place_of_production_gives_the_production() -> None:
    """Source: arithmetic, 500 * 0.12 = 60 and 60 * 0.1 = 6."""
    facts = pyramid("production: 500", "transfer_efficiency: 0.12", "transfer_efficiency: 0.1").facts
    assert (60, 6, 10, 1.2) == pytest.approx(
        (facts["l1.production"].value, facts["l2.production"].value, facts["l2.transfer_efficiency"].value, facts["overall_efficiency"].value)
    )


@pytest.mark.parametrize(("measured_as", "hectares", "word"), [("eaten", 20000 / 40 / 10000, "eats"), ("production", 20000 / 5 / 10000, "produces")])
def test_supporting_area_follows_the_stated_convention_and_says_it(measured_as: str, hectares: float, word: str) -> None:
    """Source: arithmetic, 20 000 kJ over 40 eaten or over 5 produced."""
    top = f"top_consumer: {{level: l1, needs: {{value: 20000, unit: kJ/yr}}, measured_as: {measured_as}}}\n"
    fact = pyramid("production: 500", "eaten: 40, production: 5", more=top).facts["l1.supporting_area"]
    assert hectares == pytest.approx(fact.number)
    assert word in fact.name


def test_supporting_area_takes_another_unit_of_energy() -> None:
    """20 MJ is 20 000 kJ."""
    top = "top_consumer: {level: l1, needs: {value: 20, unit: MJ/yr}, measured_as: production}\n"
    assert 0.4 == pytest.approx(pyramid("production: 500", "production: 5", more=top).facts["l1.supporting_area"].number)


def test_nothing_produced_below_leaves_the_efficiency_undefined() -> None:
    facts = pyramid("production: 0", "production: 0").facts
    assert (None, None) == (facts["l1.transfer_efficiency"].value, facts["overall_efficiency"].value)
    assert facts["l1.transfer_efficiency"].shown.startswith("not defined")


def test_missing_biomass_is_named_as_the_reason() -> None:
    facts = pyramid("production: 500", "production: 5, biomass: 2").facts
    assert [
        "not known: the record states no biomass of this level", "not known: the record states no energy content of this level",
    ] == [facts[f"{level}.production_to_biomass"].shown for level in ("l0", "l1")]  # fmt: skip


def test_respiration_is_a_fact_only_where_it_is_given() -> None:
    facts = pyramid("gross_production: 9, respiration: 4", "eaten: 3, egested: 1, respired: 1").facts
    assert (4.0, 1.0, False) == (facts["l0.respiration"].value, facts["l1.respired"].value, "l1.respiration" in facts)
