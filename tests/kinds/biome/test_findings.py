"""What is told about a biome: numbers that cannot be, and stations that differ from what the record cites."""

from __future__ import annotations

from generator.diagnostics import Severity
from tests.kinds.biome.test_facts import PRECIP, TEMP
from tests.kinds.small_records import doubts, findings

RANGE = "usual_range: [{{annual_mean_temp: {temp}, annual_precip: {precip}, source: RICKLEFS2008}}]\n"


def station(temp: object = TEMP, use: str = "page", name: str = "here") -> str:
    return f"{{id: {name}, use: {use}, monthly_mean_temp: {temp}, monthly_precip: {PRECIP}}}"


def told(*stations: str, head: str = "") -> list[tuple[object, ...]]:
    text = f"{head}region: none\nstations: [{', '.join(stations)}]\n"
    return [(f.path, f.found, f.severity) for f in findings("biome", text)]


def test_monthly_mean_that_no_place_has_is_an_error_with_the_value() -> None:
    assert [(("stations", 0, "monthly_mean_temp", 6), "220 °C", Severity.ERROR)] == told(station(TEMP.replace("22", "220")))


def test_fahrenheit_read_as_celsius_is_noticed() -> None:
    """72 °F is a summer day; 72 °C is nowhere on Earth's surface."""
    assert 12 == len(told(station([72] * 12)))
    assert [] == told(station([72] * 12), head="units: {temperature: degF}\n")


def test_all_stations_for_papers_leave_nothing_for_the_page() -> None:
    assert [(("stations",), "only `use: paper`", Severity.ERROR)] == told(station(use="paper"), station(use="paper", name="there"))


def test_one_station_for_practice_is_enough() -> None:
    assert [] == told(station(use="paper"), station(use="practice", name="there"))


def test_station_outside_the_usual_range_is_a_warning_with_both_numbers() -> None:
    text = RANGE.format(temp="[8, 18]", precip="[400, 530]") + f"region: none\nstations: [{station()}]\n"
    found = doubts("biome", text)
    assert [("monthly_mean_temp", "7.08 °C"), ("monthly_precip", "327 mm")] == [(f.path[-1], f.found) for f in found]
    assert {(Severity.WARNING, "outside_usual_range")} == {(f.severity, f.rule) for f in found}
    assert "the annual mean temperature to be from 8 to 18 °C, as RICKLEFS2008 gives for this biome" == found[0].expected


def test_station_at_the_edge_of_the_usual_range_is_inside() -> None:
    text = RANGE.format(temp="[-10, 18]", precip="[327, 327]") + f"region: none\nstations: [{station()}]\n"
    assert [] == doubts("biome", text)


CLASS = "usual_class: [{{classes: {classes}, source: RICKLEFS2008}}]\n"


def test_station_of_another_climate_class_is_a_warning_with_its_numbers() -> None:
    text = CLASS.format(classes="[Csa, Csb]") + f"region: none\nstations: [{station()}]\n"
    found = doubts("biome", text)
    assert [("outside_usual_class", Severity.WARNING, ("stations", 0))] == [(f.rule, f.severity, f.path) for f in found]
    assert "a climate class that RICKLEFS2008 gives for this biome: Csa, Csb" == found[0].expected
    assert "BSk (dry steppe, cold winters), with 327 mm and months of −9 °C to 22 °C" == found[0].found


def test_station_of_a_usual_class_is_no_warning() -> None:
    assert [] == doubts("biome", CLASS.format(classes="[BS]") + f"region: none\nstations: [{station()}]\n")


def test_each_work_that_names_other_classes_is_told() -> None:
    head = "usual_class: [{classes: [Af], source: RICKLEFS2008}, {classes: [Cf], source: WHITTAKER1975}]\n"
    found = doubts("biome", f"{head}region: none\nstations: [{station()}]\n")
    assert ["RICKLEFS2008", "WHITTAKER1975"] == [f.expected.split(" gives")[0].split()[-1] for f in found]


def test_station_in_another_region_than_the_records_is_a_warning() -> None:
    found = doubts("biome", f"region: tropical_rain_forest\nstations: [{station()}]\n")
    assert ["outside_region"] == [f.rule for f in found]
    assert "Temperate grassland/desert, with 327 mm and months of −9 °C to 22 °C" == found[0].found
    assert "the region of the temperature-rainfall map that the record names, Tropical rain forest" == found[0].expected


def test_station_in_no_region_is_no_contradiction() -> None:
    """Many real places lie in none."""
    assert [] == doubts("biome", f"region: tundra\nstations: [{station([-30] * 12)}]\n")


def test_one_mistake_is_not_told_by_range_and_region_alike() -> None:
    text = RANGE.format(temp="[18, 28]", precip="[300, 400]") + f"region: tropical_rain_forest\nstations: [{station()}]\n"
    assert ["outside_usual_range"] == [f.rule for f in doubts("biome", text)]
