"""Sheets: two widths from one spec, axes that leave room for their labels, notes that stay on the sheet."""

from __future__ import annotations

from dataclasses import replace

from figures.drawing.sheet import NARROW, WIDE, Sheet
from figures.drawing.text import SMALLEST, text_width
from tests.figures.water_specimens import BOTTLES

SHEETS = [Sheet.of(replace(BOTTLES, narrow=narrow), wide=(70, 24), narrow=(40, 10)) for narrow in (False, True)]


def test_a_spec_is_drawn_wide_or_narrow_with_the_margins_of_its_shape() -> None:
    assert [(WIDE, 70, 676), (NARROW, 40, 390)] == [(sheet.width, sheet.left, sheet.right) for sheet in SHEETS]
    assert [606, 350] == [sheet.room for sheet in SHEETS]


def test_axes_move_for_wide_labels_only() -> None:
    _, narrow = SHEETS
    assert narrow == narrow.beside(["5"], 14.5)
    assert narrow.beside(["0.00025"], 14.5).left > text_width("0.00025", 14.5) + 9


def test_notes_and_headings_find_room_on_the_sheet() -> None:
    words = "Bars: mean ± two standard errors. Small dots: single readings."
    for sheet in SHEETS:
        lines = sheet.lines([words, ""])
        assert words == " ".join(lines)
        assert all(sheet.left + text_width(line, SMALLEST) <= sheet.width for line in lines)
    assert 1 == len(SHEETS[0].lines([words])) < len(SHEETS[1].lines([words]))


def test_a_heading_keeps_a_number_and_its_unit_together() -> None:
    heading = SHEETS[1].heading("Change of dissolved oxygen since the start, mg L⁻¹", 14.5)
    assert 2 == len(heading)
    assert heading[-1].endswith("mg\xa0L⁻¹")
