"""What is told about a cycle: units that do not fit, ends that lead nowhere, budgets that do not close, crowded drawings."""

from __future__ import annotations

import pytest

from generator.diagnostics import Severity
from tests.kinds.cycle.test_facts import UNITS, text
from tests.kinds.small_records import doubts, findings

FLUX = "a source pool 5"


def told(fluxes: str = FLUX, **more: str) -> list[tuple[object, ...]]:
    return [(f.path, f.found) for f in findings("cycle", text(fluxes, **more))]


def test_good_cycle_has_no_findings() -> None:
    assert [] == told()


@pytest.mark.parametrize(
    ("stock", "flux", "field"),
    [("Gt C", "Gt C", "flux"), ("Gt C", "kg N/ha/yr", "flux"), ("kg N/ha", "kg N/yr", "flux"), ("bananas", "Gt C/yr", "stock"), ("Gt C", "Gt C/month", "flux")],
)
def test_units_that_do_not_fit_are_errors(stock: str, flux: str, field: str) -> None:
    found = findings("cycle", text(FLUX, head=f"units: {{stock: {stock}, flux: {flux}}}\n"))
    assert [(("units", field), Severity.ERROR)] == [(f.path, f.severity) for f in found]
    assert found[0].mend


def test_end_of_a_flux_that_nobody_knows_is_told_with_a_suggestion() -> None:
    (found,) = findings("cycle", text("a source pol 5"))
    assert (("fluxes", 0, "to"), '"pol"', 'did you mean "pool"?') == (found.path, found.found, found.mend)


def test_flux_from_a_reservoir_to_itself_is_told() -> None:
    assert [(("fluxes", 0, "to"), '"pool" twice')] == told("a pool pool 5")


def test_flux_outside_the_budget_is_told() -> None:
    assert [(("fluxes", 0), "source to sink, both outside")] == told("a source sink 5")


def test_end_that_is_reservoir_and_outside_is_told() -> None:
    record = text(FLUX).replace("outside: [source, sink]", "outside: [source, pool]")
    assert [("outside", 1)] == [f.path for f in findings("cycle", record)]


def test_residual_without_a_change_is_told() -> None:
    assert [(("reservoirs", 0, "residual"), "none")] == told(reservoir="stock: 10, residual: true")


def test_scenario_of_an_unknown_flux_is_told() -> None:
    scenario = "scenarios: [{id: s, name: S, change: [{flux: b, times: 2}], years: 5, assumes: nothing}]\n"
    assert [("scenarios", 0, "change", 0, "flux")] == [f.path for f in findings("cycle", text(FLUX) + scenario)]


def test_fluxes_whose_names_fill_more_than_one_formula_are_told_and_do_not_crash() -> None:
    long = "a_very_" + "long_" * 20 + "name"
    many = "\n".join(f"{long}_{number} source pool 1" for number in range(30))
    assert [(("fluxes",), "30 into pool")] == told(many)


def test_budget_that_does_not_close_is_a_warning_with_both_numbers() -> None:
    (found,) = doubts("cycle", text("a source pool 9\nb pool sink 4", "stock: 10, change: {value: 1, plus_minus: 1}"))
    assert (("reservoirs", 0, "change"), Severity.WARNING, "budget_does_not_close") == (found.path, found.severity, found.rule)
    assert "5 Gt C yr⁻¹" in found.expected
    assert "1 ± 1 Gt C yr⁻¹" == found.found


def test_crowded_drawing_is_a_warning() -> None:
    fluxes = "\n".join(f"f{number} source pool 1" for number in range(10))
    (found,) = doubts("cycle", text(fluxes))
    assert (("fluxes",), Severity.WARNING, "crowded_chart") == (found.path, found.severity, found.rule)
    assert "10 arrows meet at Pool" in found.found


def test_cycle_of_the_units_alone_has_units_that_fit() -> None:
    """Guards the tests above: what they change is all that is wrong."""
    assert [] == findings("cycle", text(FLUX, head=UNITS))


def test_more_fluxes_than_a_drawing_can_hold_are_an_error() -> None:
    fluxes = ", ".join(f"{{id: f{n}, from: air, to: plants, rate: 1}}" for n in range(31))
    text = f"units: {{stock: kg N/ha, flux: kg N/ha/yr}}\noutside: [air]\nreservoirs: [{{id: plants, stock: 1}}]\nfluxes: [{fluxes}]\n"
    (finding,) = findings("cycle", text)
    assert ("at most 30 fluxes", "31") == (finding.expected, finding.found)


def test_scene_of_a_process_that_does_not_say_its_forms_is_told() -> None:
    scene = "scene: A field stands under water"
    assert [] == told(f"a source pool 5, process: rot, starts_as: NO3-, ends_as: N2, {scene}")
    assert [(("fluxes", 0, "scene"), "no `starts_as` and `ends_as`")] == told(f"a source pool 5, process: rot, {scene}")


def test_scene_that_names_its_process_is_a_warning() -> None:
    forms = "process: decay, starts_as: NO3-, ends_as: N2"
    assert [] == doubts("cycle", text(f"a source pool 5, {forms}, scene: Fungi live on a root"))
    (found,) = doubts("cycle", text(f"a source pool 5, {forms}, scene: A root decays"))
    assert (("fluxes", 0, "scene"), Severity.WARNING, "scene_tells", '"decay…" in "A root decays"') == (found.path, found.severity, found.rule, found.found)
