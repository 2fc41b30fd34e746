"""Pages on disk: only what changed is written, what is stale is removed, nothing is written through a symbolic link."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from generator.pages.writer import write_tree


def tree(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}


FILES = {"index.md": b"home", "biome/a.md": b"a", "biome/b.md": b"b", "assets/deep/x.css": b"x"}


def test_fresh_folder_gets_everything(tmp_path: Path) -> None:
    assert frozenset(FILES) == write_tree(tmp_path / "pages", FILES)
    assert FILES == tree(tmp_path / "pages")


def test_second_run_writes_nothing(tmp_path: Path) -> None:
    write_tree(tmp_path, FILES)
    for path in tmp_path.rglob("*"):
        os.utime(path, (1, 1))
    assert frozenset() == write_tree(tmp_path, FILES)
    assert {1.0} == {path.stat().st_mtime for path in tmp_path.rglob("*") if path.is_file()}


def test_only_what_changed_is_written_and_named(tmp_path: Path) -> None:
    write_tree(tmp_path, FILES)
    changed = {**FILES, "biome/a.md": b"other", "new/c.md": b"c"}
    assert {"biome/a.md", "new/c.md"} == write_tree(tmp_path, changed)
    assert changed == tree(tmp_path)


def test_stale_files_and_empty_folders_are_removed(tmp_path: Path) -> None:
    write_tree(tmp_path, FILES)
    (tmp_path / "empty/inner").mkdir(parents=True)
    left = {"index.md": b"home"}
    assert {"biome/a.md", "biome/b.md", "assets/deep/x.css"} == write_tree(tmp_path, left)
    assert [tmp_path / "index.md"] == list(tmp_path.rglob("*"))


@pytest.mark.parametrize("name", ["index.md", "stray.md"])
def test_link_to_a_file_is_removed_and_its_target_left_alone(tmp_path: Path, name: str) -> None:
    outside = tmp_path / "outside.txt"
    outside.write_bytes(b"precious")
    pages = tmp_path / "pages"
    pages.mkdir()
    (pages / name).symlink_to(outside)
    write_tree(pages, FILES)
    assert b"precious" == outside.read_bytes()
    assert FILES == tree(pages)
    assert not any(path.is_symlink() for path in pages.rglob("*"))


@pytest.mark.parametrize("name", ["biome", "stray"])
def test_link_to_a_folder_is_removed_and_its_target_left_alone(tmp_path: Path, name: str) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "a.md").write_bytes(b"precious")
    pages = tmp_path / "pages"
    pages.mkdir()
    (pages / name).symlink_to(outside, target_is_directory=True)
    write_tree(pages, FILES)
    assert {"a.md": b"precious"} == tree(outside)
    assert FILES == tree(pages)


def test_broken_link_is_removed(tmp_path: Path) -> None:
    (tmp_path / "index.md").symlink_to(tmp_path / "nowhere")
    write_tree(tmp_path, FILES)
    assert FILES == tree(tmp_path)
    assert not (tmp_path / "nowhere").exists()


def test_folder_gives_way_to_a_file_and_a_file_to_a_folder(tmp_path: Path) -> None:
    write_tree(tmp_path, {"index.md/x": b"x", "biome": b"y"})
    write_tree(tmp_path, FILES)
    assert FILES == tree(tmp_path)


def test_folder_that_cannot_be_made_raises(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    with pytest.raises(OSError, match="file"):
        write_tree(tmp_path / "file/pages", FILES)
