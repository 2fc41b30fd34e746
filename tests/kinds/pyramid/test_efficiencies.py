"""Consumption, assimilation and production efficiency of each level, and the flows that follow from the others."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo

THREE = ("consumption_efficiency", "assimilation_efficiency", "production_efficiency")


def test_efficiencies_of_the_example() -> None:
    """Source: arithmetic on the record: 2400/5800, 1440/2400 and 580/1440 of the zooplankton, and so on up."""
    facts = demo("pyramid/sill_lake").facts
    expected = {
        "zooplankton": [240000 / 5800, 144000 / 2400, 58000 / 1440], "perch": [26000 / 580, 20000 / 260, 5000 / 200],
        "pike": [2000 / 50, 1600 / 20, 400 / 16],
    }  # fmt: skip
    for level, shares in expected.items():
        assert shares == pytest.approx([facts[f"{level}.{name}"].value for name in THREE])


amounts = st.integers(1, 10**5)


@settings(max_examples=30, deadline=None)
@given(amounts, amounts, amounts, amounts)
def test_their_product_is_the_transfer_efficiency(below: int, egested: int, respired: int, built: int) -> None:
    level = f"eaten: {egested + respired + built}, egested: {egested}, respired: {respired}, production: {built}"
    facts = pyramid(f"production: {below}", level).facts
    product = 1.0
    for name in THREE:
        product *= facts[f"l1.{name}"].number / 100
    assert facts["l1.transfer_efficiency"].number == pytest.approx(100 * product)


@settings(max_examples=30, deadline=None)
@given(amounts, amounts, amounts, st.sampled_from(["eaten", "egested", "respired", "production"]))
def test_the_flow_left_out_follows_from_the_other_three(egested: int, respired: int, built: int, left_out: str) -> None:
    flows = {"eaten": egested + respired + built, "egested": egested, "respired": respired, "production": built}
    stated = ", ".join(f"{name}: {value}" for name, value in flows.items() if name != left_out)
    assert float(flows[left_out]) == pytest.approx(pyramid("production: 500", stated).facts[f"l1.{left_out}"].number)


def test_gross_production_and_respiration_follow_from_each_other() -> None:
    """Source: arithmetic, 5 + 4 and 9 - 5."""
    assert 9.0 == pyramid("respiration: 4, production: 5", "production: 1").facts["l0.gross_production"].value
    assert 4.0 == pyramid("gross_production: 9, production: 5", "production: 1").facts["l0.respiration"].value


def test_producers_have_none_of_them() -> None:
    facts = demo("pyramid/sill_lake").facts
    assert {(None, "not defined: producers eat nothing")} == {
        (facts[f"phytoplankton.{name}"].value, facts[f"phytoplankton.{name}"].undefined_because) for name in THREE
    }


@pytest.mark.parametrize(
    ("level", "reasons"),
    [
        ("production: 5", ("eaten", "eaten", "respired")),
        ("eaten: 40, production: 5", (None, "egested", "respired")),
        ("respired: 15, production: 5", ("eaten", "eaten", None)),
        ("egested: 20, production: 5", ("eaten", "eaten", "respired")),
    ],
)
def test_what_the_record_does_not_give_is_the_reason(level: str, reasons: tuple[str | None, ...]) -> None:
    facts = pyramid("production: 500", level).facts
    expected = [reason and f"not known: the record does not state what is {reason}" for reason in reasons]
    assert expected == [facts[f"l1.{name}"].undefined_because or None for name in THREE]


def test_production_efficiency_needs_only_what_becomes_of_the_food_taken_up() -> None:
    """Source: arithmetic, 5 of 15 + 5; as in surveys that count what is taken up and not what is eaten."""
    fact = pyramid("production: 500", "respired: 15, production: 5").facts["l1.production_efficiency"]
    assert (25.0, "production_efficiency") == (pytest.approx(fact.number), fact.method)


def test_nothing_eaten_leaves_them_undefined() -> None:
    facts = pyramid("production: 500", "eaten: 0, egested: 0, respired: 0, production: 0").facts
    assert [0.0, None, None] == [facts[f"l1.{name}"].value for name in THREE]
    assert "not defined: it would divide by zero" == facts["l1.assimilation_efficiency"].undefined_because
