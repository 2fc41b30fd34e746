"""What a folder in `generator/kinds/` must hold to be a whole kind; told in words, so that a new one says what it lacks."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

FILES = ("__init__.py", "record.py", "facts.py", "charts.py", "questions.py", "compare.py", "page.md.j2", "compare.md.j2", "new.yaml.j2")
TESTS = ("test_facts.py", "test_findings.py", "test_charts.py", "test_questions.py", "test_compare.py")
FILES_WITHOUT_NUMBERS, TESTS_WITHOUT_NUMBERS = ("__init__.py", "record.py", "page.md.j2", "new.yaml.j2"), ("test_record.py", "test_findings.py")
"""Of a kind that computes nothing: its questions are its authors', and there is nothing to compare."""
GOLDEN = ("record.yaml", "page.md")


def lacks(project: Path, kind: str, computes: bool = True) -> list[str]:
    """Everything that a kind of this name still lacks in a project, in the order in which one would write it."""
    return list(_lacks(project, kind, computes))


def _lacks(project: Path, kind: str, computes: bool) -> Iterator[str]:
    for folder, files in (
        (f"generator/kinds/{kind}", FILES if computes else FILES_WITHOUT_NUMBERS),
        (f"tests/kinds/{kind}", TESTS if computes else TESTS_WITHOUT_NUMBERS),
        (f"tests/golden/{kind}", GOLDEN),
    ):
        yield from (f"{folder}/{file} is missing" for file in files if not (project / folder / file).is_file())
    if not list((project / "content" / kind).glob("*.yaml")):
        yield f"content/{kind}/ has no record"
    lines = [line for line in _read(project / "DEVELOPERS.md") if line.startswith("The kinds so far:")]
    if not any(f"`{kind}`" in line for line in lines):
        yield f'DEVELOPERS.md does not name `{kind}` in the line "The kinds so far:"'


def _read(path: Path) -> list[str]:
    return path.read_text("utf-8").splitlines() if path.is_file() else []
