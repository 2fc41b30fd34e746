"""What is told about an aquatic biome: contradictions, slips of unit, and what is unusual."""

from __future__ import annotations

import pytest

from generator.diagnostics import Severity
from generator.records.checking import check
from generator.records.located import located
from tests.kinds.aquatic_biome.test_facts import text
from tests.kinds.small_records import HEAD, doubts, findings, kind

USUAL = "usual_range: [{extinction: [0.03, 0.3], source: KIRK1994}]\n"


def told(*stations: str, **more: str) -> list[tuple[object, str]]:
    return [(f.path, f.found) for f in findings("aquatic_biome", text(*stations, **more))]


def refused(fields: str) -> list[str]:
    """What the record's model says of a station's field."""
    _, problems = check(located(f"{HEAD}{text(fields)}".encode(), "small.yaml"), kind("aquatic_biome").record)
    return [problem.expected for problem in problems]


@pytest.mark.parametrize(("light", "found"), [("{extinction: 1, secchi_depth: 2}", "both"), ("{}", "neither")])
def test_light_is_one_of_two_measures(light: str, found: str) -> None:
    assert [(("stations", 0, "light"), found)] == told(f"light: {light}")


@pytest.mark.parametrize("secchi", ["10", "12"])
def test_disk_seen_on_the_bottom_is_no_secchi_depth(secchi: str) -> None:
    assert [(("stations", 0, "light", "secchi_depth"), secchi)] == told(f"light: {{secchi_depth: {secchi}}}")


def test_sample_from_below_the_bottom_is_told() -> None:
    assert [(("stations", 0, "sample_depth"), "11")] == told("sample_depth: 11")
    assert [] == told("sample_depth: 10")


def test_temperature_outside_its_own_year_is_told() -> None:
    assert [(("stations", 0, "temperature"), "20")] == told("yearly_temperature: {low: 2, high: 18}")


@pytest.mark.parametrize(("temperature", "head"), [("-4", ""), ("101", ""), ("20", "units: {temperature: degF}\n")])
def test_ice_and_steam_are_no_water(temperature: str, head: str) -> None:
    assert [("stations", 0, "temperature")] == [path for path, _ in told(f"temperature: {temperature}", head=head)]


def test_only_paper_stations_leave_no_page() -> None:
    assert [(("stations",), "only `use: paper`")] == told("use: paper", "use: paper")
    assert [] == told("use: paper", "use: practice")


@pytest.mark.parametrize(
    "fields",
    ["depth: 0", "depth: -3", "salinity: -1", "dissolved_oxygen: 90", "light: {extinction: 0}", "volume: 0", "discharge: -2",
     "latitude: 95", "yearly_temperature: 12", "yearly_temperature: {low: 9, high: 2}"],
)  # fmt: skip
def test_numbers_out_of_bounds_are_refused_with_what_was_expected(fields: str) -> None:
    assert 1 == len(refused(fields))


def test_yearly_temperature_asks_for_both_ends() -> None:
    assert ["low and high"] == refused("yearly_temperature: 12")


def test_extinction_outside_the_usual_range_is_a_warning_with_its_source() -> None:
    (found,) = doubts("aquatic_biome", text("light: {extinction: 0.7}", "light: {extinction: 0.1}", head=USUAL))
    assert (("stations", 0, "light"), Severity.WARNING, "outside_usual_range") == (found.path, found.severity, found.rule)
    assert "from 0.03 to 0.3 m⁻¹, as KIRK1994" in found.expected


def test_more_oxygen_than_algae_can_make_is_a_warning() -> None:
    """At 20 °C water holds 9.1 mg/L, so 14 mg/L is 154 %."""
    (found,) = doubts("aquatic_biome", text("dissolved_oxygen: 14"))
    assert ("much_oxygen", "154 %") == (found.rule, found.found)
    assert [] == doubts("aquatic_biome", text("dissolved_oxygen: 13"))
