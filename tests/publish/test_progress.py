"""Drawing that takes long says so, and drawing that does not is silent."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from figures import Chart
from generator import build
from generator.build import check, draw
from generator.kinds import all_kinds
from generator.pages.site import Site
from generator.publish import progress
from generator.publish.progress import draw_and_tell
from tests.content.patches import write_course


class Terminal(io.StringIO):
    """A stream that somebody watches."""

    def isatty(self) -> bool:
        return True


@pytest.fixture
def charts(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> tuple[Chart, ...]:
    """Three charts, which are many here, and drawn at once."""
    monkeypatch.setattr(progress, "FEW", 2)
    monkeypatch.setattr(build, "_draw", lambda chart: f"<svg>{chart.name}</svg>")
    return Site(library=check(write_course(tmp_path / "content")), kinds=all_kinds()).charts[:3]


def test_a_terminal_is_told_of_each_chart(charts: tuple[Chart, ...], tmp_path: Path) -> None:
    told = Terminal()
    assert draw(charts, tmp_path / "a") == draw_and_tell(charts, tmp_path / "b", told)
    assert "\rDrawing charts: 1 of 3 \rDrawing charts: 2 of 3 \rDrawing charts: 3 of 3 \n" == told.getvalue()


def test_elsewhere_there_is_one_line(charts: tuple[Chart, ...], tmp_path: Path) -> None:
    told = io.StringIO()
    draw_and_tell(charts, tmp_path, told)
    assert ["Drawing 3 charts; those that stay as they are will not be drawn again."] == told.getvalue().splitlines()


@pytest.mark.parametrize("stream", [Terminal, io.StringIO])
def test_what_is_drawn_already_and_a_few_charts_are_not_worth_a_word(
    charts: tuple[Chart, ...], tmp_path: Path, stream: type[io.StringIO]
) -> None:
    told = stream()
    draw_and_tell(charts[:2], tmp_path, told)
    draw_and_tell(charts, tmp_path, told)
    assert "" == told.getvalue()
