"""What is told about a transect: stations out of order, a crest that is none, air that cannot be."""

from __future__ import annotations

import pytest

from generator.diagnostics import Severity
from tests.kinds.small_records import doubts, findings
from tests.kinds.transect.test_facts import RIDGE, Station, text

AIR = "temperature: 20, dew_point: 12"


def told(*stations: Station, **more: str) -> list[tuple[object, ...]]:
    return [found.path for found in findings("transect", text(*stations, **more)) if found.severity is Severity.ERROR]


def test_a_whole_line_is_free_of_findings() -> None:
    assert [] == told(*RIDGE, air=AIR)


@pytest.mark.parametrize("distance", [40, 30])
def test_stations_out_of_order_are_told_with_the_one_before(distance: float) -> None:
    (found,) = findings("transect", text((0, 0, 20), (40, 3000, 2), (distance, 0, 21)))
    assert (("stations", 2, "distance"), "more than 40, that of S1 before it", str(distance)) == (found.path, found.expected, found.found)


@pytest.mark.parametrize("count", [1, 9])
def test_a_line_has_two_to_eight_stations(count: int) -> None:
    assert [("stations",)] == told(*((float(n), 10.0 * n, 10.0) for n in range(count)))


def test_the_name_of_the_air_is_kept() -> None:
    lines = "stations:\n  - {id: air, distance: 0, height: 5, annual_mean_temp: 9}\n  - {id: top, distance: 3, height: 900, annual_mean_temp: 3}\n"
    assert [("stations", 0, "id")] == [found.path for found in findings("transect", lines)]


@pytest.mark.parametrize(("station", "field"), [((90, 9200, 2), "height"), ((90, -600, 2), "height"), ((90, 0, 60), "annual_mean_temp"), ((90, 0, -80), "annual_mean_temp")])
def test_heights_and_means_that_are_not_on_earth_are_told(station: Station, field: str) -> None:
    assert [("stations", 1, field)] == told((0, 0, 20), station)


@pytest.mark.parametrize(
    ("air", "path"),
    [
        ("temperature: 20, dew_point: 22", ("rain_shadow", "dew_point")),
        ("temperature: 20", ("rain_shadow",)),
        ("temperature: 20, dew_point: 12, cloud_base: 900", ("rain_shadow",)),
        ("temperature: 20, cloud_base: 0.5, dry_lapse_rate: 6, moist_lapse_rate: 6", ("rain_shadow", "moist_lapse_rate")),
        ("temperature: 99, dew_point: 12", ("rain_shadow", "temperature")),
    ],
)
def test_air_that_cannot_be_is_told(air: str, path: tuple[str, ...]) -> None:
    assert [path] == told(*RIDGE, air=air)


def test_cloud_base_counted_from_the_start_is_told() -> None:
    assert [("rain_shadow", "cloud_base")] == told((0, 900, 20), (40, 3000, 2), (90, 0, 21), air="temperature: 20, cloud_base: 400")


def test_crest_must_lie_between_and_above() -> None:
    assert [("rain_shadow", "from"), ("rain_shadow", "to")] == told((0, 3000, 2), (40, 500, 15), (90, 3200, 1), air=AIR)
    lines = text(*RIDGE) + "rain_shadow: {from: s1, crest: s0, to: s2, temperature: 20, dew_point: 12}\n"
    assert ("rain_shadow", "crest") in [found.path for found in findings("transect", lines)]


def test_station_that_is_not_there_gets_a_mend() -> None:
    lines = text(*RIDGE) + "rain_shadow: {from: s0, crest: s11, to: s2, temperature: 20, dew_point: 12}\n"
    (found,) = findings("transect", lines)
    assert (("rain_shadow", "crest"), '"s11"') == (found.path, found.found)
    assert "s1" in found.mend


def test_a_rate_that_nature_hardly_has_is_a_warning() -> None:
    (found,) = doubts("transect", text((0, 0, 20), (9, 500, 10)))
    assert ("steep_lapse_rate", "20 K km⁻¹", Severity.WARNING) == (found.rule, found.found, found.severity)


def test_small_climbs_and_inversions_are_no_doubt() -> None:
    assert [] == doubts("transect", text((0, 0, 10), (9, 50, 9), (20, 600, 12)))
