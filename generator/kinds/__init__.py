"""All kinds, found by their folders: a new kind is one new folder that exports `KIND`."""

from __future__ import annotations

import pkgutil
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache, lru_cache
from importlib import import_module
from types import MappingProxyType
from typing import Any

from figures import Chart

from generator.kind import Comparison, Kind, Subject
from generator.records.located import FILES_KEPT


@cache
def all_kinds() -> MappingProxyType[str, Kind[Any]]:
    """Every kind by name, in alphabetical order."""
    names = sorted(module.name for module in pkgutil.iter_modules(__path__) if module.ispkg)
    return MappingProxyType({name: _remembering(import_module(f"{__name__}.{name}").KIND) for name in names})


def _remembering(kind: Kind[Any]) -> Kind[Any]:
    """The kind, which makes charts and comparisons once for the same records: pages and drawings both ask, a preview at every save."""

    def remembered(make: Callable[[Subject[Any]], Sequence[Chart]]) -> Callable[[Subject[Any]], Sequence[Chart]]:
        return lru_cache(maxsize=FILES_KEPT)(lambda subject: tuple(make(subject)))

    compare: Callable[[tuple[Subject[Any], ...]], Comparison] = lru_cache(maxsize=FILES_KEPT)(kind.compare)
    charts, practice_charts = remembered(kind.charts), remembered(kind.practice_charts)
    return replace(kind, charts=charts, practice_charts=practice_charts, compare=lambda subjects: compare(tuple(subjects)))
