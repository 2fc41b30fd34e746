"""How far the drawing of charts has come, told while it takes long: a line that counts on a terminal, one plain line elsewhere."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TextIO

from figures import Chart

from generator.build import draw, kept_at

FEW = 20
"""So many charts are drawn before anybody wonders."""


def draw_and_tell(charts: Iterable[Chart], drawn: Path, stream: TextIO | None = None) -> Mapping[str, bytes]:
    """The drawings for `write_pages`, as `draw` makes them; `stream` is standard error where none is given."""
    told = stream or sys.stderr
    charts = tuple(charts)
    lacking = [chart for chart in charts if not kept_at(drawn, chart).is_file()]
    if len(lacking) > FEW and not told.isatty():
        print(f"Drawing {len(lacking)} charts; those that stay as they are will not be drawn again.", file=told, flush=True)
    elif len(lacking) > FEW:
        for number, chart in enumerate(lacking, start=1):
            print(f"\rDrawing charts: {number} of {len(lacking)} ", end="", file=told, flush=True)
            draw([chart], drawn)
        print(file=told)
    return draw(charts, drawn)
