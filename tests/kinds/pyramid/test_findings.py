"""What is told about a pyramid: sums that do not add up, levels out of order, units that do not fit."""

from __future__ import annotations

import pytest

from generator.diagnostics import Severity
from tests.kinds.pyramid.test_facts import UNITS, text
from tests.kinds.small_records import doubts, findings

TOP = "top_consumer: {{level: {level}, needs: {{value: 5, unit: {unit}}}, measured_as: {measured_as}}}\n"


def told(*levels: str, **more: str) -> list[tuple[object, ...]]:
    return [(f.path, f.found) for f in findings("pyramid", text(*levels, **more)) if f.severity is Severity.ERROR]


def test_eaten_must_be_what_is_egested_respired_and_produced() -> None:
    (found,) = findings("pyramid", text("production: 500", "eaten: 40, egested: 10, respired: 20, production: 5"))
    assert (("levels", 1, "eaten"), "egested + respired + production = 35", "40", Severity.ERROR) == (
        found.path, found.expected, found.found, found.severity,
    )  # fmt: skip


def test_gross_production_must_be_what_is_respired_and_produced() -> None:
    assert [(("levels", 0, "gross_production"), "900")] == told("gross_production: 900, respiration: 300, production: 500", "production: 5")


def test_rounding_in_a_sum_is_no_contradiction() -> None:
    assert [] == told("production: 500", "eaten: 1000, egested: 333, respired: 333, production: 333")


def test_levels_in_the_wrong_order_are_refused() -> None:
    assert (("levels", 0, "eaten"), '"l0", which eats') in told("eaten: 40, egested: 10, respired: 20, production: 10", "production: 500")


def test_one_level_is_no_pyramid() -> None:
    assert [(("levels",), "one")] == told("production: 500")


@pytest.mark.parametrize("level", ["biomass: 3", "production: unknown", "eaten: 4, egested: 2"])
def test_level_without_a_production_is_told(level: str) -> None:
    assert [(("levels", 1), "neither")] == told("production: 500", level)


def test_producers_cannot_have_an_efficiency_instead_of_a_production() -> None:
    assert [(("levels", 0), "neither")] == told("transfer_efficiency: 0.1", "production: 5")


def test_production_and_efficiency_together_are_told() -> None:
    assert [(("levels", 1, "transfer_efficiency"), "both")] == told("production: 500", "production: 5, transfer_efficiency: 0.1")


@pytest.mark.parametrize(
    ("units", "field"),
    [
        ("{energy_flow: kJ/m2}", "energy_flow"),
        ("{energy_flow: W/kg}", "energy_flow"),
        ("{energy_flow: bananas}", "energy_flow"),
        ("{energy_flow: kJ/m2/yr, biomass: g}", "biomass"),
        ("{energy_flow: kJ/m2/yr, energy_content: kJ}", "energy_content"),
    ],
)
def test_units_that_do_not_fit_are_errors(units: str, field: str) -> None:
    assert [("units", field)] == [path for path, _ in told("production: 500", "production: 5", head=f"units: {units}\n")]


def test_other_units_of_the_same_kind_are_welcome() -> None:
    assert [] == told("production: 500", "production: 5", head="units: {energy_flow: MJ/ha/yr, biomass: kg/ha, energy_content: kcal/g}\n")


@pytest.mark.parametrize(
    ("level", "unit", "measured_as", "path"),
    [
        ("l9", "kJ/yr", "production", ("top_consumer", "level")),
        ("l1", "kJ", "production", ("top_consumer", "needs", "unit")),
        ("l1", "bananas", "production", ("top_consumer", "needs", "unit")),
        ("l1", "kJ/yr", "eaten", ("top_consumer", "measured_as")),
    ],
)
def test_top_consumer_that_does_not_fit_is_told(level: str, unit: str, measured_as: str, path: tuple[str, ...]) -> None:
    top = TOP.format(level=level, unit=unit, measured_as=measured_as)
    assert [path] == [f.path for f in findings("pyramid", text("production: 500", "production: 5", more=top))]


@pytest.mark.parametrize(("level", "field"), [("production: 600", "production"), ("eaten: 700, production: 40", "eaten")])
def test_more_than_the_level_below_has_is_a_warning_with_both_numbers(level: str, field: str) -> None:
    (found,) = doubts("pyramid", text("production: 500", level))
    assert (("levels", 1), Severity.WARNING, "more_than_below") == (found.path, found.severity, found.rule)
    assert f"no more {field} than 500 kJ m⁻² yr⁻¹" in found.expected


def test_eaten_that_follows_from_the_other_flows_serves_a_top_consumer() -> None:
    top = TOP.format(level="l1", unit="kJ/yr", measured_as="eaten")
    assert [] == told("production: 500", "egested: 10, respired: 20, production: 5", more=top)


@pytest.mark.parametrize(
    ("levels", "path"),
    [
        (("production: 500", "eaten: 20, egested: 15, respired: 10"), ("levels", 1, "eaten")),
        (("production: 500", "eaten: 20, egested: 18, production: 5"), ("levels", 1, "eaten")),
        (("gross_production: 300, respiration: 400", "production: 5"), ("levels", 0, "gross_production")),
    ],
)
def test_parts_cannot_be_more_than_the_whole(levels: tuple[str, ...], path: tuple[object, ...]) -> None:
    assert [path] == [found for found, _ in told(*levels)]


@pytest.mark.parametrize(
    ("head", "path"),
    [
        ("units: {energy_flow: g C/m2/yr}\n", ("units", "energy_flow")),
        ("units: {energy_flow: g C/m2/yr}\nconversions: {energy_per_dry_matter: 20}\n", ("units", "energy_flow")),
        ("units: {energy_flow: g/m2/yr}\n", ("units", "energy_flow")),
        ("units: {energy_flow: g/m2/yr}\nconversions: {carbon_per_dry_matter: 0.45}\n", ("units", "energy_flow")),
        ("units: {energy_flow: kcal/m2/yr}\nconversions: {to: g/m2/yr}\n", ("conversions", "to")),
        ("units: {energy_flow: kcal/m2/yr}\nconversions: {to: bananas}\n", ("conversions", "to")),
        (
            "units: {energy_flow: g/m2/yr}\nconversions: {energy_per_dry_matter: 20, energy_per_carbon: 45, carbon_per_dry_matter: 0.45}\n",
            ("conversions", "energy_per_dry_matter"),
        ),
    ],
)
def test_conversions_that_do_not_fit_are_told(head: str, path: tuple[str, ...]) -> None:
    assert [path] == [found for found, _ in told("production: 500", "production: 5", head=head)]


@pytest.mark.parametrize(
    "head",
    [
        "units: {energy_flow: kcal/m2/yr}\nconversions: {to: kJ/m2/yr}\n",
        "units: {energy_flow: g C/m2/yr}\nconversions: {energy_per_carbon: 45}\n",
        "units: {energy_flow: g/m2/yr}\nconversions: {energy_per_dry_matter: 20}\n",
        "units: {energy_flow: g/m2/yr}\nconversions: {energy_per_carbon: 45, carbon_per_dry_matter: 0.45}\n",
    ],
)
def test_conversions_that_fit_are_welcome(head: str) -> None:
    levels = ("production: 500", "production: 5")
    assert [] == told(*levels, head=head)
    assert [] == doubts("pyramid", text(*levels, head=head))


def test_factor_that_nothing_uses_is_a_warning() -> None:
    head = "units: {energy_flow: kJ/m2/yr}\nconversions: {energy_per_carbon: 45}\n"
    (found,) = doubts("pyramid", text("production: 500", "production: 5", head=head))
    assert ("unused_factor", ("conversions", "energy_per_carbon")) == (found.rule, found.path)
    catch = "catch: {taken: [{level: l1, amount: 1}]}\n"
    assert [] == doubts("pyramid", text("production: 500", "production: 5", head=head, more=catch))


@pytest.mark.parametrize(
    ("head", "catch", "path"),
    [
        (UNITS, "{level: l9, amount: 1}", ("catch", "taken", 0, "level")),
        ("units: {energy_flow: kJ/m2/yr, catch: kJ/yr}\n", "{level: l1, amount: 1}", ("units", "catch")),
        ("units: {energy_flow: kJ/m2/yr, catch: bananas}\n", "{level: l1, amount: 1}", ("units", "catch")),
    ],
)
def test_catch_that_does_not_fit_is_told(head: str, catch: str, path: tuple[object, ...]) -> None:
    assert [path] == [found for found, _ in told("production: 500", "production: 5", head=head, more=f"catch: {{taken: [{catch}]}}\n")]
