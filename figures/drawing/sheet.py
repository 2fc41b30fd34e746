"""The two sizes in which a chart is drawn from one spec: as wide as the text of a page, and as wide as a phone."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Self

from figures.chart import Chart
from figures.drawing.canvas import Canvas
from figures.drawing.text import SMALLEST, glued, text_width, wrap, wrap_evenly

WIDE, NARROW = 700.0, 400.0
"""Width of a sheet [px]; a page shows the wide one at 560 px or more, the narrow one at 314 px or more, its letters at 11 px."""
_NOTE = 19.0
"""From line to line of notes [px]."""


@dataclass(frozen=True)
class Sheet:
    """How wide a chart is drawn, and from where to where the area between its axes reaches across it [px]."""

    width: float
    left: float
    right: float
    narrow: bool

    @classmethod
    def of(cls, chart: Chart, wide: tuple[float, float], narrow: tuple[float, float]) -> Self:
        """The sheet of a chart, from the margins left and right that its shape has on either size."""
        width, (left, right) = (NARROW, narrow) if chart.narrow else (WIDE, wide)
        return cls(width, left, width - right, chart.narrow)

    def beside(self, labels: Iterable[str], size: float) -> Self:
        """The sheet with its axes moved right as far as the labels of the upright axis need."""
        return replace(self, left=max(self.left, 14 + max(text_width(label, size) for label in labels)))

    @property
    def room(self) -> float:
        """Width of the area between the axes [px]."""
        return self.right - self.left

    def heading(self, text: str, size: float) -> tuple[str, ...]:
        """The words above a chart as lines that find room on the sheet, no number parted from its unit."""
        return wrap_evenly(glued(text), size, self.width - 24)

    def lines(self, notes: Iterable[str], left: float | None = None) -> list[str]:
        """Notes as lines that find room from `left`, or the edge of the axes, to the end of the sheet."""
        begin = self.left if left is None else left
        return [line for note in notes if note for line in wrap(note, SMALLEST, self.width - begin - 8)]


def notes_height(lines: list[str]) -> float:
    """Room that lines of notes take [px]."""
    return _NOTE * len(lines)


def draw_notes(canvas: Canvas, lines: list[str], left: float, top: float) -> None:
    """Notes below a chart, muted, the first line's letters ending at `top` [px]."""
    for number, line in enumerate(lines):
        canvas.text(left, top + _NOTE * number, line, size=SMALLEST, role="muted")
