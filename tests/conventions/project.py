"""The project's own files, as the tests of this folder look at them."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[2]
NOT_OURS = {".git", "build", "site", "teacher", "dist", ".venv", "__pycache__", ".pytest_cache", ".hypothesis", ".import_linter_cache"}


def files() -> Iterator[Path]:
    """Every file that belongs to the project, in order; what is made by running it is left out."""
    for path in sorted(ROOT.iterdir()):
        if path.name not in NOT_OURS and not path.name.endswith(".egg-info"):
            yield from [path] if path.is_file() else _inside(path)


def _inside(folder: Path) -> Iterator[Path]:
    for path in sorted(folder.rglob("*")):
        if path.is_file() and "__pycache__" not in path.parts:
            yield path


def named(path: Path) -> str:
    """The path below the project's folder, with `/`."""
    return path.relative_to(ROOT).as_posix()


def modules(*rooms: str) -> list[Path]:
    """The Python files of these folders."""
    return [path for path in files() if path.suffix == ".py" and named(path).partition("/")[0] in rooms]


def undocumented(source: str) -> list[str]:
    """The module and its public classes and functions, as far as they have no docstring; methods may lean on their class."""
    tree = ast.parse(source)
    found = [] if ast.get_docstring(tree) else ["the module"]
    for node in tree.body:
        if isinstance(node, (ast.FunctionDef, ast.ClassDef)) and not node.name.startswith("_") and not ast.get_docstring(node):
            found.append(node.name)
    return found
