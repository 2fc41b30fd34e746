"""What a drawing depends on besides its spec: the code that draws, and the versions of what it draws with."""

from __future__ import annotations

import hashlib
from functools import cache
from importlib.metadata import version
from importlib.resources import files
from importlib.resources.abc import Traversable

from figures.chart import Chart


def fingerprint(chart: Chart) -> str:
    """A hash that differs whenever the drawing of the chart might; stable between processes."""
    return hashlib.sha256(f"{chart.fingerprint()}\n{_code()}".encode()).hexdigest()


@cache
def _code() -> str:
    """A hash of this package's own modules and of the drawing library's version."""
    found = hashlib.sha256(version("matplotlib").encode())
    for module in sorted(_modules(files("figures")), key=lambda pair: pair[0]):
        found.update(module[0].encode())
        found.update(module[1].read_bytes())
    return found.hexdigest()


def _modules(folder: Traversable, path: str = "") -> list[tuple[str, Traversable]]:
    found: list[tuple[str, Traversable]] = []
    for entry in folder.iterdir():
        if entry.is_dir():
            found += _modules(entry, f"{path}{entry.name}/")
        elif entry.name.endswith(".py"):
            found.append((f"{path}{entry.name}", entry))
    return found
