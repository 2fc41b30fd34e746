"""All kinds, found by their folders: a new kind is one new folder that exports `KIND`."""

from __future__ import annotations

import pkgutil
from functools import cache
from importlib import import_module
from types import MappingProxyType
from typing import Any

from generator.kind import Kind


@cache
def all_kinds() -> MappingProxyType[str, Kind[Any]]:
    """Every kind by name, in alphabetical order."""
    names = sorted(module.name for module in pkgutil.iter_modules(__path__) if module.ispkg)
    return MappingProxyType({name: import_module(f"{__name__}.{name}").KIND for name in names})
