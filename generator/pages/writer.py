"""Pages, charts and assets on disk: a file is written only when its bytes change, and what is no longer made is removed."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path, PurePosixPath


def write_tree(folder: Path, files: Mapping[str, bytes]) -> frozenset[str]:
    """Make a folder hold exactly these files, and return those that were written or removed.

    `files` goes from paths below the folder, with `/`, to their bytes. Nothing is written through a symbolic link: one
    inside the folder is removed like any file that is not wanted. A folder that cannot be written raises OSError.
    """
    removed = _remove_others(folder, files)
    written = {path for path, data in files.items() if _write_changed(folder / path, data)}
    return frozenset(removed | written)


def _remove_others(folder: Path, files: Mapping[str, bytes]) -> set[str]:
    """Remove all but the files and the folders that hold them, from the leaves up."""
    holders = {parent.as_posix() for path in files for parent in PurePosixPath(path).parents}
    removed = set()
    for path in sorted(folder.rglob("*"), reverse=True):
        name = path.relative_to(folder).as_posix()
        if path.is_symlink() or (not path.is_dir() and name not in files):
            path.unlink()
            removed.add(name)
        elif path.is_dir() and name not in holders:
            path.rmdir()
    return removed


def _write_changed(path: Path, data: bytes) -> bool:
    if path.is_file() and path.read_bytes() == data:
        return False
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(data)
    return True
