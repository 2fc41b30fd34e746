"""The styles and scripts that pages need, as they are copied into the site."""

from __future__ import annotations

from collections.abc import Mapping
from importlib.resources import files


def assets() -> Mapping[str, bytes]:
    """Every asset by its path below the pages folder."""
    folder = files("generator.pages") / "assets"
    found = sorted((entry for entry in folder.iterdir() if entry.name.endswith((".css", ".js"))), key=lambda entry: entry.name)
    return {f"assets/{entry.name}": entry.read_bytes() for entry in found}
