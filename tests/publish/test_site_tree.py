"""The checks of a finished site find what they look for."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.publish.site_tree import differences, link_problems

OTHER = '<h1 id="top">Other</h1>'


@pytest.mark.parametrize(
    ("body", "problem"),
    [
        ('<a href="gone.html">a</a>', "a/page.html: href=gone.html: no such file"),
        ('<img alt="" src="../x.png">', "a/page.html: src=../x.png: no such file"),
        ('<a href="#gone">a</a>', "a/page.html: href=#gone: no such id"),
        ('<a href="../other.html#gone">a</a>', "a/page.html: href=../other.html#gone: no such id"),
        ('<a href="/other.html">a</a>', "a/page.html: href=/other.html: not relative"),
        ('<a href="../../other.html">a</a>', "a/page.html: href=../../other.html: leaves the site"),
        ('<script src="//host/x.js"></script>', "a/page.html: src=//host/x.js: not relative"),
        ('<a href="..">a</a>', "a/page.html: href=..: no such file"),
        ('<p id="a"></p><p id="a"></p>', "a/page.html: id a 2 times"),
        ('<label for="gone">a</label>', "a/page.html: for=gone: no such id"),
        ('<svg aria-labelledby="gone"></svg>', "a/page.html: aria-labelledby=gone: no such id"),
    ],
)
def test_a_link_that_leads_nowhere_is_told(tmp_path: Path, body: str, problem: str) -> None:
    (tmp_path / "a").mkdir()
    (tmp_path / "other.html").write_text(OTHER)
    (tmp_path / "a" / "page.html").write_text(body)
    assert [problem] == link_problems(tmp_path)


@pytest.mark.parametrize(
    "body",
    ['<a href="other.html#top">a</a>', '<a href="https://example.org/x">a</a>', '<p id="a"></p><a href="#a">a</a>'],
)
def test_a_link_that_leads_somewhere_is_not_told(tmp_path: Path, body: str) -> None:
    (tmp_path / "other.html").write_text(OTHER)
    (tmp_path / "page.html").write_text(body)
    assert [] == link_problems(tmp_path)


def test_differences_are_files_in_one_place_only_and_files_that_differ(tmp_path: Path) -> None:
    for name, files in {"one": {"same": "a", "changed": "a", "gone": "a"}, "two": {"same": "a", "changed": "b", "new": "a"}}.items():
        (tmp_path / name).mkdir()
        for file, text in files.items():
            (tmp_path / name / file).write_text(text)
    assert ["changed", "gone", "new"] == differences(tmp_path / "one", tmp_path / "two")
