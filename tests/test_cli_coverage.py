"""`studyguide coverage` on the command line."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.test_cli import BROKEN, Run, make_project, project, run

__all__ = ["project", "run"]  # the fixtures of this module's tests


def test_coverage_is_printed_and_written_for_teachers(project: Path, run: Run) -> None:
    code, out, err = run("coverage")
    assert (0, "") == (code, err)
    assert out.startswith("Biomes and climate (tested in First test)\n  read_climate: ")
    assert out.endswith("\n4 gaps. With every prompt in teacher/coverage.md\n")
    assert ["content", "mkdocs.yml", "teacher"] == sorted(path.name for path in project.iterdir())
    assert ["coverage.md"] == [path.name for path in (project / "teacher").iterdir()]


def test_coverage_of_the_same_content_has_the_same_bytes(project: Path, run: Run) -> None:
    outputs = []
    for _ in range(2):
        outputs.append((run("coverage"), (project / "teacher" / "coverage.md").read_bytes()))
    assert outputs[0] == outputs[1]


def test_no_site_holds_the_coverage(project: Path, run: Run) -> None:
    run("coverage")
    assert 0 == run("build")[0]
    assert [] == [path for path in (project / "site").rglob("*") if "coverage" in path.name]


def test_wrong_content_is_told_and_no_coverage_written(tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = make_project(tmp_path / "project", BROKEN)
    monkeypatch.chdir(folder)
    code, out, err = run("coverage")
    assert (1, "", True) == (code, out, "expected a closing quote" in err)
    assert not (folder / "teacher").exists()


def test_coverage_of_another_folder_stands_beside_that_folder(tmp_path: Path, project: Path, run: Run) -> None:
    other = tmp_path / "other" / "records"
    shutil.copytree(project / "content", other)
    run("coverage", "--content", str(other))
    assert (tmp_path / "other" / "teacher" / "coverage.md").is_file() and not (project / "teacher").exists()
