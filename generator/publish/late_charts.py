"""Charts drawn beside the preview: what takes long is shown as it was before, and as it is now when it is done."""

from __future__ import annotations

import os
import signal
import time
from collections.abc import Callable, Iterable, Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass, field
from multiprocessing import get_context
from pathlib import Path
from threading import Event, RLock
from types import TracebackType

from figures import Chart
from figures.drawing import draw

from generator.build import keep, kept_at
from generator.pages.figures import chart_uri

PATIENCE = 0.15
"""Seconds that a save waits for its charts."""
LONGEST = 120.0
"""Seconds that a chart without an earlier drawing may take; longer means that the process which draws it has died."""
PROCESSES = 2


@dataclass
class _Job:
    """A chart on its way."""

    chart: Chart
    path: Path
    """Where its drawing will be kept."""
    over: Event = field(default_factory=Event)
    error: BaseException | None = None
    late: bool = False
    """Whether an earlier drawing was shown in its place."""


def _stand_back() -> None:
    """Leave Ctrl-C to the preview, and the processor too while it makes the page that a reader waits for."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if hasattr(os, "nice"):
        os.nice(10)


class LateCharts(AbstractContextManager["LateCharts"]):
    """Drawings for `write_pages`, made in processes of their own; `done` is called when all that came too late are there."""

    def __init__(self, pages: Path, done: Callable[[], None]) -> None:
        self.pages, self.done = pages, done
        self.late = 0
        """How many drawings of the last call were old ones."""
        self._lock = RLock()
        self._waiting: list[_Job] = []
        self._running: list[_Job] = []
        self._took: dict[type[Chart], float] = {}
        """Seconds that the last chart of a sort took."""
        self._pool = get_context("spawn").Pool(PROCESSES, _stand_back)

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self._pool.terminate()
        self._pool.join()

    def __call__(self, charts: Iterable[Chart], drawn: Path) -> Mapping[str, bytes]:
        """The drawings by their path, waited for as long as a reader hardly notices."""
        wanted = [(chart, kept_at(drawn, chart)) for chart in charts]
        jobs = self._order([(chart, path) for chart, path in wanted if not path.is_file()])
        until = time.perf_counter() + PATIENCE
        for job in jobs.values():
            if not self._is_slow(job.chart):
                job.over.wait(max(0.0, until - time.perf_counter()))
        files = {chart_uri(chart): self._bytes(chart, path, jobs.get(path)) for chart, path in wanted}
        self.late = sum(job.late for job in jobs.values())
        return files

    def _order(self, lacking: list[tuple[Chart, Path]]) -> dict[Path, _Job]:
        """The jobs that are wanted now, the quick ones first; what waited for an earlier call and is not wanted any more is dropped."""
        with self._lock:
            known = {job.path: job for job in (*self._running, *self._waiting)}
            jobs = {path: known.get(path) or _Job(chart, path) for chart, path in lacking}
            for job in known.values():
                job.late = False
            self._waiting = sorted((job for job in jobs.values() if job not in self._running), key=lambda job: self._took.get(type(job.chart), 0.0))
            self._start()
        return jobs

    def _start(self) -> None:
        """Start what there is room for; one process stays free of slow charts, for those of the next save."""
        for job in list(self._waiting):
            slow = self._is_slow(job.chart) and any(self._is_slow(other.chart) for other in self._running)
            if len(self._running) < PROCESSES and not slow:
                self._waiting.remove(job)
                self._running.append(job)
                self._draw(job)

    def _draw(self, job: _Job) -> None:
        begun = time.perf_counter()

        def arrived(svg: str) -> None:
            self._took[type(job.chart)] = time.perf_counter() - begun
            keep(job.path, svg)
            self._end(job)

        def failed(error: BaseException) -> None:
            job.error = error
            self._end(job)

        self._pool.apply_async(draw, (job.chart,), callback=arrived, error_callback=failed)

    def _end(self, job: _Job) -> None:
        with self._lock:
            self._running.remove(job)
            job.over.set()
            self._start()
            last = job.late and not any(other.late for other in (*self._running, *self._waiting))
        if last:
            self.done()

    def _is_slow(self, chart: Chart) -> bool:
        return self._took.get(type(chart), 0.0) > PATIENCE

    def _bytes(self, chart: Chart, path: Path, job: _Job | None) -> bytes:
        before = self.pages / chart_uri(chart)
        if job is not None:
            with self._lock:
                job.late = not job.over.is_set() and before.is_file()
            if job.late:
                return before.read_bytes()
            if not job.over.wait(LONGEST):
                raise TimeoutError(f"{chart.name}: the chart was not drawn within {LONGEST:g} s")
            if job.error:
                raise job.error
        return path.read_bytes()
