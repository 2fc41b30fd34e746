"""A new site takes the place of the old one as a whole, or not at all.

A folder that this program did not write is never replaced: our sites carry a marker file, and a folder with anything
in it but no marker is refused.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path

from generator.publish.lock import Busy, locked

MARKER = ".studyguide-site"
MARKER_TEXT = "This folder is written by studyguide. The next build replaces everything in it.\n"


class SiteRefused(Exception):
    """The site cannot be written where it was asked for; says why, and how to mend it."""


@contextmanager
def replacing(target: Path) -> Iterator[Path]:
    """A fresh folder beside `target`, which takes its place when the block ends without an exception.

    First puts right what an earlier run left when it was killed. On an exception the fresh folder is removed and
    `target` stays as it was. A symbolic link stays; the folder that it points to is replaced.

    Raises
    ------
    SiteRefused
        If `target` is a file, a folder of somebody else's, cannot be written, or is being built by another process.
    """
    target = target.resolve()
    with ExitStack() as held:
        with _telling(target):
            target.parent.mkdir(parents=True, exist_ok=True)
            held.enter_context(locked(_beside(target, "lock")))
            recover(target)
            refuse_what_is_not_ours(target)
            fresh = _beside(target, "new")
            fresh.mkdir()
            mark(fresh)
        try:
            yield fresh
            with _telling(target):
                swap(fresh, target)
        finally:
            remove(fresh)


def refuse_what_is_not_ours(target: Path) -> None:
    """Raise SiteRefused unless `target` is absent, an empty folder, or a site of ours."""
    if target.exists() and not target.is_dir():
        raise SiteRefused(f"{target}: expected a folder, found a file; choose another folder with --out")
    if target.is_dir() and not _is_ours(target):
        raise SiteRefused(
            f"{target}: this folder holds files, and studyguide did not write them; it will not replace them\n"
            "    mend: choose another folder with --out, or empty this one yourself"
        )


def mark(site: Path) -> None:
    """Write into a folder that it is a site of ours."""
    (site / MARKER).write_bytes(MARKER_TEXT.encode())


def swap(fresh: Path, target: Path) -> None:
    """Put `fresh` in the place of `target`; if that fails, `target` is back where it was and OSError is raised."""
    backup = _beside(target, "old")
    if target.exists():
        os.rename(target, backup)
    try:
        os.rename(fresh, target)
    except OSError:
        if backup.exists():
            os.rename(backup, target)
        raise
    with suppress(OSError):  # the new site stands; what could not be removed now is removed by the next run
        remove(backup)


def recover(target: Path) -> None:
    """Put right what a killed run left beside `target`: restore the old site if its place is empty, remove the rest."""
    backup = _beside(target, "old")
    if backup.exists() and not target.exists():
        os.rename(backup, target)
    for leftover in (backup, _beside(target, "new")):
        remove(leftover)


def remove(site: Path) -> None:
    """Remove a folder of ours, the marker last, so that a half-removed folder is still known as ours."""
    if not site.exists():
        return
    if not _is_ours(site):
        raise SiteRefused(f"{site}: this folder is in the way, and studyguide did not write it; remove it yourself")
    for entry in site.iterdir():
        if entry.name == MARKER:
            continue
        if entry.is_dir() and not entry.is_symlink():
            shutil.rmtree(entry)
        else:
            entry.unlink()
    (site / MARKER).unlink(missing_ok=True)
    site.rmdir()


def _is_ours(folder: Path) -> bool:
    return (folder / MARKER).is_file() or not any(folder.iterdir())


def _beside(target: Path, state: str) -> Path:
    return target.with_name(f".{target.name}.{state}")


@contextmanager
def _telling(target: Path) -> Iterator[None]:
    """Turn what the file system refuses into words for the person who named the folder."""
    try:
        yield
    except Busy as busy:
        raise SiteRefused(f"{target}: another build is writing this site; wait until it is done") from busy
    except OSError as error:
        raise SiteRefused(
            f"{target}: cannot be written ({error.strerror}: {error.filename})\n    mend: choose another folder with --out"
        ) from error
