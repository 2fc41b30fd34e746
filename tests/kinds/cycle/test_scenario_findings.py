"""What is told about scenarios: changes of what is not there, that say nothing or two things, outside their years, or below zero."""

from __future__ import annotations

import pytest

from generator.diagnostics import Severity
from tests.kinds.cycle.test_facts import text
from tests.kinds.cycle.test_model import LOOP
from tests.kinds.small_records import doubts, findings


def told(change: str, more: str = "", years: str = "10") -> list[tuple[object, ...]]:
    scenario = f"scenarios: [{{id: s, name: S, change: [{change}], years: {years}, assumes: a{more}}}]\n"
    return [(found.path[2:], found.found) for found in findings("cycle", LOOP.format(uptake="") + scenario)]


def test_good_scenarios_have_no_findings() -> None:
    for change in (
        "", "{flux: leaching, times: 0}", "{flux: rainfall, rate: 9, from: 2, until: 10}", "{into: soil, add: 3, at: 9.5}",
        "{flux: leaching, times: 2, until: 5}, {flux: leaching, times: 3, from: 5}",
    ):  # fmt: skip
        assert [] == told(change)


@pytest.mark.parametrize(
    ("change", "where", "found"),
    [
        ("{flux: leeching, times: 2}", ("change", 0, "flux"), '"leeching"'),
        ("{into: sol, add: 2}", ("change", 0, "into"), '"sol"'),
        ("{times: 2}", ("change", 0), "neither"),
        ("{flux: leaching, times: 2, into: soil, add: 2}", ("change", 0), "both"),
        ("{flux: leaching}", ("change", 0), "neither"),
        ("{flux: rainfall, times: 2, rate: 3}", ("change", 0), "both"),
        ("{into: soil}", ("change", 0), "none"),
        ("{into: soil, add: 2, until: 4}", ("change", 0, "until"), "until"),
        ("{flux: leaching, times: 2, at: 4}", ("change", 0, "at"), "at"),
        ("{flux: leaching, rate: 2}", ("change", 0, "rate"), "2"),
        ("{flux: leaching, times: 2, from: 10}", ("change", 0, "from"), "10"),
        ("{into: soil, add: 2, at: 12}", ("change", 0, "at"), "12"),
        ("{flux: leaching, times: 2, until: 11}", ("change", 0, "until"), "11"),
        ("{flux: leaching, times: 2, from: 4, until: 4}", ("change", 0, "until"), "4"),
        ("{flux: leaching, times: 2}, {flux: leaching, times: 3, from: 5}", ("change", 1, "flux"), '"leaching" again in the same years'),
    ],
)
def test_change_that_cannot_be_meant_is_told_at_its_place(change: str, where: tuple[object, ...], found: str) -> None:
    assert [(where, found)] == told(change)


def test_year_to_tell_beyond_the_scenario_is_told() -> None:
    assert [(("tell", 1), "11")] == told("", ", tell: [5, 11]")


def test_misspelt_flux_gets_a_suggestion() -> None:
    scenario = "scenarios: [{id: s, name: S, change: [{flux: leeching, times: 2}], years: 10, assumes: a}]\n"
    (found,) = findings("cycle", LOOP.format(uptake="") + scenario)
    assert 'did you mean "leaching"?' == found.mend


def doubted(fluxes: str, scenario: str, reservoir: str = "stock: 10") -> list[tuple[object, ...]]:
    scenarios = f"scenarios: [{{id: s, name: S, {scenario}, assumes: a}}]\n"
    return [(one.severity, one.path, one.found) for one in doubts("cycle", text(fluxes, reservoir) + scenarios)]


def test_stock_that_would_fall_below_nothing_is_an_error() -> None:
    """Source: arithmetic; 10 less 3 a year is gone in the fourth year."""
    found = doubted("a pool sink 3, constant: true", "years: 5")
    assert [(Severity.ERROR, ("scenarios", 0), "−5.00 Gt C of pool after 5.00 years")] == found
    assert [] == doubted("a pool sink 3, constant: true", "years: 3")


def test_scenario_that_nothing_is_known_of_is_an_error() -> None:
    found = doubted("a source pool unknown", "years: 5")
    assert [(Severity.ERROR, ("scenarios", 0), "not known: the rate of a is not known")] == found
