"""A project whose pages come from the stand-in of the page writer."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from generator.publish import plugin
from tests.publish.fake_pages import write_fake_pages

ROOT = Path(__file__).parents[2]


@pytest.fixture
def project(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A project folder with this project's own mkdocs.yml and an empty content folder."""
    monkeypatch.setattr(plugin, "write_pages", write_fake_pages)
    folder = tmp_path / "project"
    (folder / "content").mkdir(parents=True)
    shutil.copy(ROOT / "mkdocs.yml", folder)
    return folder
