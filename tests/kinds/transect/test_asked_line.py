"""What stands out on a line."""

from __future__ import annotations

from tests.kinds.transect.asked import of_demo, small


def test_stretches_that_hardly_climb_are_no_climbs() -> None:
    assert [("s1", "s2")] == [(before.id, station.id) for before, station in small((0, 300, 12), (5, 400, 11.5), (9, 900, 9)).climbs]


def test_highest_and_wettest_station_are_found() -> None:
    line = of_demo("coastal_range")
    assert ("Kestrel Pass", "Lichen Shelf") == (line.top.label, line.wettest.label)
