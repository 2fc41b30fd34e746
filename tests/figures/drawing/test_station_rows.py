"""Rows of stations on a narrow sheet: room for every line of a name, letters in their order."""

from __future__ import annotations

from dataclasses import replace

from figures.drawing.station_rows import letter, rows_height
from tests.figures.transect_specimens import TRANSECTS

STATIONS = TRANSECTS[0].stations


def test_letters_follow_the_stations() -> None:
    assert "ABCDEFGH" == "".join(map(letter, range(8)))


def test_a_row_is_as_high_as_its_name_has_lines() -> None:
    long = replace(STATIONS[0], label="A station with a name that is much too long for one line")
    assert rows_height(STATIONS) < rows_height((long, *STATIONS[1:])) < 2 * rows_height(STATIONS)
    assert rows_height(STATIONS) - rows_height(STATIONS[1:]) == rows_height(STATIONS[1:]) - rows_height(STATIONS[2:])
