"""A site from a project folder: complete, reproducible, without dates, and only where it was asked for."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from generator.diagnostics import ContentErrors
from generator.publish import plugin
from generator.publish.site import Published, build_site
from generator.publish.swap import SiteRefused
from tests.publish.fake_pages import PAGES, find_wrong
from tests.publish.site_tree import differences, link_problems, tree

ROOT = Path(__file__).parents[2]


def test_the_outcome_says_where_the_site_stands_and_how_many_pages_it_has(project: Path) -> None:
    assert Published(project / "site", len(PAGES), ()) == build_site(project)


def test_content_site_and_work_may_stand_anywhere(project: Path, tmp_path: Path) -> None:
    content, out, work = tmp_path / "mine", tmp_path / "a" / "out", tmp_path / "w"
    content.mkdir()
    (content / "title.txt").write_text("Elsewhere")
    (project / "content").rmdir()
    build_site(project, content=content, out=out, work=work)
    assert "Elsewhere" in (out / "index.html").read_text("utf-8")
    assert (work / "pages" / "index.md").is_file()
    assert ["mkdocs.yml"] == [entry.name for entry in project.iterdir()]


def test_relative_paths_are_meant_from_the_current_folder(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(project)
    build_site(Path("."), out=Path("out"), work=Path("w"))
    assert ["content", "mkdocs.yml", "out", "w"] == sorted(entry.name for entry in project.iterdir())


def test_every_link_leads_somewhere_and_every_id_is_unique(project: Path) -> None:
    build_site(project)
    assert [] == link_problems(project / "site")


def test_the_site_holds_no_date_no_version_and_no_absolute_link(project: Path) -> None:
    site = build_site(project).site
    assert [] == [name for name in tree(site) if re.fullmatch(r"404\.html|sitemap\.xml.*|.*\.map|charts/.*", name)]
    text = "\n".join(page.read_text("utf-8") for page in site.rglob("*.html"))
    assert [] == re.findall(r"mkdocs-\d|\b20\d\d-\d\d-\d\d\b|(?:href|src)=\"(?:https?:|/)[^\"]*", text)


def test_the_index_of_the_search_holds_text_and_tables_but_no_answers_and_no_chart_labels(project: Path) -> None:
    build_site(project)
    docs = json.loads((project / "site" / "search" / "search_index.js").read_text("utf-8").removeprefix("var __index = "))["docs"]
    text = " ".join(entry["title"] + " " + entry["text"] for entry in docs)
    assert [True] * 4 == [word in text for word in ("haymaking", "CO2", "NH4+", "Harrow Plain")]
    assert [False] * 4 == [word in text for word in ("quagga", "Added month by month", "Stores and flows", "set aside")]


def test_answers_and_charts_are_in_the_page_all_the_same(project: Path) -> None:
    build_site(project)
    page = (project / "site" / "biome" / "temperate-grassland.html").read_text("utf-8")
    assert "The quagga answer is 327 mm." in page
    assert "var(--chart-water)" in page
    assert "set aside" not in page


def test_a_second_build_without_a_change_gives_the_same_bytes(project: Path, tmp_path: Path) -> None:
    build_site(project, out=tmp_path / "one")
    build_site(project, out=tmp_path / "two")
    assert [] == differences(tmp_path / "one", tmp_path / "two")
    assert len(tree(tmp_path / "one")) > len(PAGES)


def test_two_processes_with_different_hash_seeds_and_work_folders_give_the_same_bytes(tmp_path: Path) -> None:
    program = (
        "import sys; from pathlib import Path; from generator.publish.site import build_site;"
        "build_site(Path('.'), out=Path(sys.argv[1]), work=Path(sys.argv[2]))"
    )
    for seed in ("1", "2"):
        subprocess.run(
            [sys.executable, "-c", program, str(tmp_path / f"site{seed}"), str(tmp_path / f"work{seed}")],
            cwd=ROOT,
            env=os.environ | {"PYTHONHASHSEED": seed},
            check=True,
        )
    assert [] == differences(tmp_path / "site1", tmp_path / "site2")
    assert [] == differences(tmp_path / "work1" / "pages", tmp_path / "work2" / "pages")
    assert len(list((tmp_path / "site1").rglob("*.html"))) > 3
    assert len(list((tmp_path / "work1").rglob("*.svg"))) > 2


def test_a_change_of_the_content_shows_in_the_compared_files(project: Path, tmp_path: Path) -> None:
    build_site(project, out=tmp_path / "one")
    (project / "content" / "title.txt").write_text("Another title")
    build_site(project, out=tmp_path / "two")
    assert "index.html" in differences(tmp_path / "one", tmp_path / "two")


def test_wrong_content_is_raised_whole_and_the_old_site_stays(
    project: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    site = build_site(project).site
    before = tree(site)
    monkeypatch.setattr(plugin, "write_pages", find_wrong)
    with pytest.raises(ContentErrors, match="expected -90 to 90"):
        build_site(project)
    assert before == tree(site)
    assert ("", "") == capsys.readouterr()


def test_a_failure_of_our_own_keeps_the_old_site_and_its_exception(
    project: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    site = build_site(project).site
    before = tree(site)

    def broken(html: str) -> str:
        raise ZeroDivisionError

    monkeypatch.setattr(plugin.accessibility, "mended", broken)
    with pytest.raises(ZeroDivisionError):
        build_site(project)
    assert before == tree(site)
    assert ["build", "content", "mkdocs.yml", "site"] == sorted(entry.name for entry in project.iterdir())


def test_a_good_build_prints_nothing(project: Path, capfd: pytest.CaptureFixture[str]) -> None:
    build_site(project)
    assert ("", "") == capfd.readouterr()


def test_a_plain_mkdocs_site_can_be_replaced(project: Path) -> None:
    subprocess.run(
        [
            sys.executable, "-c",
            "from generator.publish import plugin; from tests.publish.fake_pages import write_fake_pages;"
            "plugin.write_pages = write_fake_pages; from mkdocs.__main__ import cli; cli()",
            "build", "-q", "-f", str(project / "mkdocs.yml"),
        ],
        cwd=ROOT, check=True,
    )  # fmt: skip
    before = tree(project / "site")
    assert before == tree(build_site(project).site)


@pytest.mark.parametrize("out", [".", "content", "content/site", "build", "build/pages", "build/pages/site"])
def test_a_site_among_what_it_is_made_from_is_refused(project: Path, out: str) -> None:
    (project / "content" / "title.txt").write_text("Kept")
    with pytest.raises(SiteRefused):
        build_site(project, out=project / out)
    assert "Kept" == (project / "content" / "title.txt").read_text()
    assert ["content", "mkdocs.yml"] == sorted(entry.name for entry in project.iterdir())


def test_a_folder_above_the_project_is_refused(project: Path, tmp_path: Path) -> None:
    with pytest.raises(SiteRefused):
        build_site(project, out=tmp_path)
    assert ["project"] == [entry.name for entry in tmp_path.iterdir()]


@pytest.mark.parametrize("work", ["content", "content/build", "."])
def test_work_among_the_content_is_refused(project: Path, work: str) -> None:
    with pytest.raises(SiteRefused):
        build_site(project, work=project / work)
    assert ["content", "mkdocs.yml"] == sorted(entry.name for entry in project.iterdir())


def test_a_project_without_mkdocs_yml_is_told(tmp_path: Path) -> None:
    with pytest.raises(SiteRefused, match=r"mkdocs\.yml"):
        build_site(tmp_path)


def test_a_project_whose_mkdocs_yml_lacks_the_plugin_is_told(project: Path) -> None:
    (project / "mkdocs.yml").write_text("site_name: a\ndocs_dir: content\ntheme: {name: material}\n")
    with pytest.raises(SiteRefused, match="expected studyguide under plugins"):
        build_site(project)
