"""Charts for a preview: waited for a moment, else shown as they were, and announced when they are done."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from figures import Chart
from figures.chart import DataTable
from figures.drawing import draw
from generator.build import kept_at
from generator.publish import late_charts
from generator.publish.late_charts import LateCharts
from tests.figures.specimens import PYRAMIDS


class Quick(Chart):
    """A chart."""


class Slow(Chart):
    """Another sort of chart."""


class Processes:
    """A pool that draws when it is told to."""

    def __init__(self, *_: object) -> None:
        self.asked: list[tuple[Chart, Callable[[str], None], Callable[[BaseException], None]]] = []
        self.at_once = False
        self.ended = False

    def Pool(self, *_: object) -> Processes:
        return self

    def apply_async(self, _: object, chart: tuple[Chart], callback: Callable[[str], None], error_callback: Callable[[BaseException], None]) -> None:
        self.asked.append((chart[0], callback, error_callback))
        if self.at_once:
            self.draw(chart[0].name)

    def draw(self, name: str) -> None:
        (found,) = [one for one in self.asked if one[0].name == name]
        self.asked.remove(found)
        found[1](f"<svg>{name}</svg>")

    def fail(self, name: str) -> None:
        next(one for one in self.asked if one[0].name == name)[2](ZeroDivisionError(name))

    def terminate(self) -> None:
        self.ended = True

    def join(self) -> None:
        assert self.ended


def chart(name: str, sort: type[Chart] = Quick) -> Chart:
    return sort(name=name, title="T", description="D", reading=(), table=DataTable(caption="C", columns=("a",), rows=()))


@pytest.fixture
def pool(monkeypatch: pytest.MonkeyPatch) -> Processes:
    found = Processes()
    monkeypatch.setattr(late_charts, "get_context", lambda _: found)
    monkeypatch.setattr(late_charts, "PATIENCE", 0.01)
    return found


@pytest.fixture
def drawings(pool: Processes, tmp_path: Path) -> Iterator[LateCharts]:
    """Drawings, whose `done` is counted in `times`."""
    times: list[None] = []
    (tmp_path / "charts").mkdir()
    with LateCharts(tmp_path, lambda: times.append(None)) as found:
        vars(found)["times"] = times
        yield found


def shown(drawings: LateCharts, folder: Path, *charts: Chart) -> dict[str, Any]:
    return {name: data.decode() for name, data in drawings(charts, folder / "drawn").items()}


def before(folder: Path, *names: str) -> None:
    for name in names:
        (folder / "charts" / f"{name}.svg").write_text("old")


def test_what_is_drawn_in_time_is_shown(drawings: LateCharts, pool: Processes, tmp_path: Path) -> None:
    before(tmp_path, "a")
    pool.at_once = True
    assert {"charts/a.svg": "<svg>a</svg>"} == shown(drawings, tmp_path, chart("a"))
    assert (0, []) == (drawings.late, vars(drawings)["times"])


def test_what_is_late_is_shown_as_it_was_and_announced_when_all_is_there(drawings: LateCharts, pool: Processes, tmp_path: Path) -> None:
    before(tmp_path, "a", "b")
    assert {"charts/a.svg": "old", "charts/b.svg": "old"} == shown(drawings, tmp_path, chart("a"), chart("b"))
    assert 2 == drawings.late
    pool.draw("a")
    assert [] == vars(drawings)["times"]
    pool.draw("b")
    assert [None] == vars(drawings)["times"]
    assert {"charts/a.svg": "<svg>a</svg>", "charts/b.svg": "<svg>b</svg>"} == shown(drawings, tmp_path, chart("a"), chart("b"))
    assert 0 == drawings.late


def test_what_was_never_drawn_is_waited_for(drawings: LateCharts, pool: Processes, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(late_charts, "LONGEST", 0.01)
    with pytest.raises(TimeoutError, match="a: the chart was not drawn"):
        shown(drawings, tmp_path, chart("a"))


def test_what_is_not_wanted_any_more_is_not_drawn(drawings: LateCharts, pool: Processes, tmp_path: Path) -> None:
    """Two processes: c waits, and the next save wants d in its place."""
    before(tmp_path, "a", "b", "c", "d")
    shown(drawings, tmp_path, chart("a"), chart("b"), chart("c"))
    shown(drawings, tmp_path, chart("a"), chart("b"), chart("d"))
    pool.draw("a")
    pool.draw("b")
    assert ["d"] == [one[0].name for one in pool.asked]


def test_a_process_stays_free_of_slow_charts(drawings: LateCharts, pool: Processes, tmp_path: Path) -> None:
    before(tmp_path, "a", "b", "c")
    drawings._took[Slow] = 5.0
    shown(drawings, tmp_path, chart("a", Slow), chart("b", Slow))
    assert ["a"] == [one[0].name for one in pool.asked]
    shown(drawings, tmp_path, chart("a", Slow), chart("b", Slow), chart("c"))
    assert ["a", "c"] == [one[0].name for one in pool.asked]


def test_a_drawing_that_fails_is_told_at_the_next_call(drawings: LateCharts, pool: Processes, tmp_path: Path) -> None:
    before(tmp_path, "a")
    shown(drawings, tmp_path, chart("a"))
    pool.fail("a")
    assert [None] == vars(drawings)["times"]
    with pytest.raises(ZeroDivisionError):
        pool_fails(drawings, pool, tmp_path)


def pool_fails(drawings: LateCharts, pool: Processes, folder: Path) -> None:
    """The chart is tried again, and fails again before anyone waits for long."""
    original = pool.apply_async
    vars(pool)["apply_async"] = lambda work, chart, callback, error_callback: error_callback(ZeroDivisionError("again"))
    try:
        shown(drawings, folder, chart("a"))
    finally:
        vars(pool)["apply_async"] = original


def test_real_processes_draw_what_this_one_would(tmp_path: Path) -> None:
    specimen = PYRAMIDS[0]
    with LateCharts(tmp_path, lambda: None) as found:
        (data,) = found([specimen], tmp_path / "drawn").values()
    assert draw(specimen) == data.decode() == kept_at(tmp_path / "drawn", specimen).read_text("utf-8")
