"""`studyguide handouts` on the command line."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.test_cli import Run, project, run

__all__ = ["project", "run"]  # the fixtures of this module's tests


def test_without_a_site_it_says_what_to_do_first(project: Path, run: Run) -> None:
    code, out, err = run("handouts")
    assert (2, "", True) == (code, out, "no site in site; run `studyguide build` first" in err)
    assert not (project / "handouts").exists()


def test_each_topic_is_a_file_and_its_size_is_told(project: Path, run: Run) -> None:
    assert 0 == run("build")[0]
    code, out, err = run("handouts", "--no-booklets")
    files = sorted((project / "handouts").iterdir())
    assert (0, "") == (code, err)
    assert files
    assert {".html"} == {file.suffix for file in files}
    assert sorted(f"handouts/{file.name}: {file.stat().st_size / 1e6:.2f} MB" for file in files) == sorted(out.splitlines())


def test_a_site_older_than_its_content_is_told(project: Path, run: Run) -> None:
    assert 0 == run("build")[0]
    (page,) = (project / "site" / "pyramid").glob("sill-lake.html")
    page.unlink()
    code, _, err = run("handouts", "--no-booklets")
    assert (2, True) == (code, "expected pyramid/sill-lake.html in the site, found no such file" in err)


def test_without_chromium_it_says_so_and_writes_the_files_for_phones(project: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    assert 0 == run("build")[0]
    monkeypatch.delenv("CHROMIUM", raising=False)
    monkeypatch.setenv("PATH", "")
    code, out, err = run("handouts")
    assert (0, True) == (code, "No Chromium found" in err)
    assert {".html"} == {file.suffix for file in (project / "handouts").iterdir()}


def test_a_chromium_that_prints_nothing_is_told(project: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    assert 0 == run("build")[0]
    monkeypatch.setenv("CHROMIUM", str(project / "no-such-program"))
    code, _, err = run("handouts")
    assert (2, True) == (code, "no-such-program printed nothing" in err)
