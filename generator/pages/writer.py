"""Pages, charts and assets on disk: a file is written only when its bytes change, and what is no longer made is removed."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path


def write_tree(folder: Path, files: Mapping[str, bytes]) -> frozenset[str]:
    """Make a folder hold exactly these files, and return those that were written or removed.

    `files` goes from paths below the folder, with `/`, to their bytes. A folder that cannot be written raises OSError.
    """
    changed = {path for path, data in files.items() if _write_changed(folder / path, data)}
    stale = [path for path in sorted(folder.rglob("*"), reverse=True) if path.relative_to(folder).as_posix() not in files]
    for path in stale:
        if path.is_dir() and not path.is_symlink():
            if not any(path.iterdir()):
                path.rmdir()
        else:
            path.unlink()
            changed.add(path.relative_to(folder).as_posix())
    return frozenset(changed)


def _write_changed(path: Path, data: bytes) -> bool:
    if path.is_file() and not path.is_symlink() and path.read_bytes() == data:
        return False
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(data)
    return True
