"""Habits of the source: files of a readable length, a docstring for everything public, no loose ends."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.conventions.project import ROOT, files, modules, named, undocumented

LONGEST = 350
BINARY = {".png", ".jpg", ".ico", ".woff2"}
LOOSE_ENDS = ["TO" + "DO", "FIX" + "ME", "no" + "qa", "type: ign" + "ore", "pragma: no co" + "ver"]
"""Parted, so that this very file does not hold them."""
PLACES = ["/wo" + "rk/", "/tm" + "p/", "../sha" + "red", "/ho" + "me/", "/ro" + "ot/"]


def text_files() -> list[Path]:
    return [path for path in files() if path.suffix not in BINARY]


def holding(words: list[str]) -> list[str]:
    """`file:line` of every occurrence; bytes that are no text, as in files that test wrong encodings, are read as they come."""
    pattern = re.compile("|".join(map(re.escape, words)))
    return [
        f"{named(path)}:{number}"
        for path in text_files()
        for number, line in enumerate(path.read_text("utf-8", errors="replace").splitlines(), start=1)
        if pattern.search(line)
    ]


def test_files_are_found_at_all() -> None:
    """Guards the scans below: none of them passes because there was nothing to scan."""
    found = {named(path) for path in text_files()}
    assert {"pyproject.toml", ".ci/run", "README.md", "generator/build.py", "content/course.yaml", "tests/conventions/project.py"} <= found


def test_no_source_file_is_too_long_to_read() -> None:
    lengths = {named(path): len(path.read_text("utf-8").splitlines()) for path in modules("generator", "figures", "tests")}
    assert {} == {name: length for name, length in lengths.items() if length > LONGEST}


def test_everything_public_has_a_docstring() -> None:
    lacking = {named(path): undocumented(path.read_text("utf-8")) for path in modules("generator", "figures")}
    assert {} == {name: found for name, found in lacking.items() if found}


def test_every_test_module_says_what_it_is_about() -> None:
    assert [] == [named(path) for path in modules("tests") if "the module" in undocumented(path.read_text("utf-8"))]


def test_undocumented_names_are_noticed() -> None:
    assert ["the module", "f", "C"] == undocumented("def f(): ...\nclass C: ...\ndef _g(): ...\n")


def test_no_loose_ends() -> None:
    assert [] == holding(LOOSE_ENDS)


def test_no_file_names_a_folder_of_one_machine() -> None:
    assert [] == holding(PLACES)


@pytest.mark.parametrize("folder", ["build", "site", "teacher"])
def test_ignored_folders_are_anchored(folder: str) -> None:
    """An unanchored rule would hide a folder of the same name inside a package."""
    assert f"/{folder}/" in (ROOT / ".gitignore").read_text("utf-8").splitlines()
