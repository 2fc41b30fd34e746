"""A small course in a fresh folder, with changes: what tests of whole content folders start from."""

from __future__ import annotations

import shutil
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml

ROOT = Path(__file__).parents[2]
COURSE = Path(__file__).parent / "course"
MISCONCEPTIONS = ROOT / "content" / "misconceptions.yaml"
"""The demo's own catalogue, since it must hold whatever generated questions name."""
BIOME, CYCLE, PYRAMID = "biome/temperate_grassland.yaml", "cycle/wend_hollow_nitrogen.yaml", "pyramid/sill_lake.yaml"


@dataclass(frozen=True)
class Patch:
    """What is done to the small course, in this order."""

    change: Mapping[str, Sequence[tuple[str, str]]] = field(default_factory=dict)
    """Old and new text, by the file's path; the old text must stand there exactly once."""
    remove: Sequence[str] = ()
    move: Mapping[str, str] = field(default_factory=dict)
    add: Mapping[str, str] = field(default_factory=dict)
    """Texts of new files by path."""


def write_course(folder: Path, patch: Patch = Patch()) -> Path:
    """The small course in a new folder, patched."""
    shutil.copytree(COURSE, folder)
    shutil.copy(MISCONCEPTIONS, folder)
    for name, changes in patch.change.items():
        for old, new in changes:
            substitute(folder / name, old, new)
    for name in patch.remove:
        path = folder / name
        shutil.rmtree(path) if path.is_dir() else path.unlink()
    for name, target in patch.move.items():
        (folder / target).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).rename(folder / target)
    for name, text in patch.add.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, "utf-8")
    return folder


def substitute(file: Path, old: str, new: str) -> None:
    """Replace a text that stands in a file exactly once."""
    text = file.read_text("utf-8")
    assert 1 == text.count(old), f"{old!r} stands {text.count(old)} times in {file.name}"
    file.write_text(text.replace(old, new), "utf-8")


def patch_of(data: Mapping[str, Any]) -> Patch:
    """A patch as a YAML file writes it: `change: {file: [{old: ..., new: ...}]}`, `remove:`, `move:`, `add:`."""
    changes = {name: [(one["old"], one["new"]) for one in pairs] for name, pairs in data.get("change", {}).items()}
    return Patch(changes, data.get("remove", ()), data.get("move", {}), data.get("add", {}))


def read_case(path: Path) -> tuple[Patch, str]:
    """The patch of a case and the report that it expects."""
    data = yaml.safe_load(path.read_text("utf-8"))
    assert set(data) <= {"change", "add", "move", "remove", "expect"}
    return patch_of(data), data["expect"].rstrip("\n")
