"""A lock on a file that one process holds at a time and that the system lets go when the process ends, however it ends."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

try:
    import fcntl
except ModuleNotFoundError:  # Windows
    import msvcrt

    def _take(descriptor: int) -> None:
        msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)

else:

    def _take(descriptor: int) -> None:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)


class Busy(Exception):
    """Another process holds the lock."""


@contextmanager
def locked(path: Path) -> Iterator[None]:
    """Hold the lock at `path` during the block; the file is there only meanwhile.

    Raises
    ------
    Busy
        If another process, or another block of this one, holds it.
    """
    descriptor = os.open(path, os.O_RDWR | os.O_CREAT, 0o644)
    try:
        try:
            _take(descriptor)
        except (BlockingIOError, PermissionError) as error:
            raise Busy(path) from error
        except OSError:
            pass  # some network drives know no locks; a build there goes on without one
        # The holder before us removes the file when it ends: a lock on a file that has no name any more guards nothing.
        if not _is_named(descriptor, path):
            raise Busy(path)
        try:
            yield
        finally:
            with suppress(OSError):  # Windows keeps a file that is open; it is taken again by the next holder
                path.unlink()
    finally:
        os.close(descriptor)


def _is_named(descriptor: int, path: Path) -> bool:
    try:
        return os.path.samestat(os.fstat(descriptor), path.stat())
    except FileNotFoundError:
        return False
