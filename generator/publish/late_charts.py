"""Charts drawn beside the preview: what takes long is shown as it was before, and as it is now when it is done."""

from __future__ import annotations

import signal
import time
from collections.abc import Callable, Iterable, Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass, field
from multiprocessing import get_context
from multiprocessing.pool import AsyncResult
from pathlib import Path
from threading import Lock
from types import TracebackType

from figures import Chart
from figures.drawing import draw

from generator.build import keep, kept_at
from generator.pages.figures import chart_uri

PATIENCE = 0.4
"""Seconds that a save waits for its charts."""
LONGEST = 120.0
"""Seconds that a chart without an earlier drawing may take; longer means that the process which draws it has died."""
PROCESSES = 2


@dataclass
class _Job:
    """A chart on its way."""

    sort: type[Chart]
    since: float = field(default_factory=time.perf_counter)
    drawn: AsyncResult[str] = field(init=False)
    late: bool = False
    """Whether an earlier drawing was shown in its place."""


class LateCharts(AbstractContextManager["LateCharts"]):
    """Drawings for `write_pages`, made in processes of their own; `done` is called whenever one has come too late."""

    def __init__(self, pages: Path, done: Callable[[], None]) -> None:
        self.pages, self.done = pages, done
        self.late = 0
        """How many drawings of the last call were old ones."""
        self._jobs: dict[Path, _Job] = {}
        self._handing_over = Lock()
        self._took: dict[type[Chart], float] = {}
        self._pool = get_context("spawn").Pool(PROCESSES, signal.signal, (signal.SIGINT, signal.SIG_IGN))

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self._pool.terminate()
        self._pool.join()

    def __call__(self, charts: Iterable[Chart], drawn: Path) -> Mapping[str, bytes]:
        """The drawings by their path, waited for as long as a reader hardly notices."""
        wanted = [(chart, kept_at(drawn, chart)) for chart in charts]
        self._jobs = {path: job for path, job in self._jobs.items() if not path.is_file()}
        for chart, path in wanted:
            if not path.is_file() and path not in self._jobs:
                self._begin(chart, path)
        self._wait([self._jobs[path] for _, path in wanted if path in self._jobs])
        self.late = 0
        return {chart_uri(chart): self._bytes(chart, path) for chart, path in wanted}

    def _begin(self, chart: Chart, path: Path) -> None:
        job = self._jobs[path] = _Job(type(chart))

        def arrived(svg: str) -> None:
            self._took[job.sort] = time.perf_counter() - job.since
            with self._handing_over:
                keep(path, svg)
                late = job.late
            if late:
                self.done()

        job.drawn = self._pool.apply_async(draw, (chart,), callback=arrived, error_callback=lambda _: self.done())

    def _wait(self, jobs: list[_Job]) -> None:
        """Wait for drawings of a sort that was quick the last time."""
        until = time.perf_counter() + PATIENCE
        for job in jobs:
            if self._took.get(job.sort, 0.0) < PATIENCE:
                job.drawn.wait(max(0.0, until - time.perf_counter()))

    def _bytes(self, chart: Chart, path: Path) -> bytes:
        before = self.pages / chart_uri(chart)
        with self._handing_over:
            if path.is_file():
                return path.read_bytes()
            job = self._jobs[path]
            if before.is_file() and not job.drawn.ready():
                job.late = True
                self.late += 1
                return before.read_bytes()
        job.drawn.get(LONGEST)
        return path.read_bytes()
