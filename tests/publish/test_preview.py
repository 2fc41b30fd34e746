"""The preview: what a save renders anew, and wrong content over the last good version."""

from __future__ import annotations

import inspect
import json
import re
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

import pytest
from mkdocs.commands import build as building

from figures import Chart
from generator.pages.figures import chart_uri
from generator.publish import preview as module
from generator.publish.preview import LAST_GOOD, PRIVATE_NAMES, Preview
from generator.publish.site import build_site, quiet_log
from tests.content.patches import BIOME, ROOT, substitute
from tests.publish.fake_pages import CHART
from tests.test_cli import make_project

SHOWN = "biome/temperate-grassland.html"
RAIN, MORE_RAIN, WRONG = "66, 42, 34", "66, 52, 34", "66, wet, 34"


class StillCharts:
    """One drawing for all charts, at once."""

    late = 0

    def __call__(self, charts: Iterable[Chart], drawn: Path) -> Mapping[str, bytes]:
        return {chart_uri(chart): f"{CHART}<!-- {chart.description} -->".encode() for chart in charts}


@pytest.fixture
def project(tmp_path: Path) -> Path:
    return make_project(tmp_path / "project")


@pytest.fixture
def preview(project: Path) -> Iterator[Preview]:
    """A preview that shows the small course."""
    with quiet_log():
        found = Preview(project, project / "content", project / "build", project / "shown", "content", StillCharts())
        found.update()
        yield found


def save(project: Path, old: str, new: str) -> None:
    substitute(project / "content" / BIOME, old, new)


def page(preview: Preview, uri: str = SHOWN) -> str:
    """A page as a reader gets it."""
    preview.freshen(uri)
    return (preview.site / uri).read_text("utf-8")


def stamps(preview: Preview) -> dict[str, int]:
    return {path.relative_to(preview.site).as_posix(): path.stat().st_mtime_ns for path in preview.site.rglob("*") if path.is_file()}


def pages_newer_than(before: dict[str, int], preview: Preview) -> list[str]:
    now = stamps(preview)
    return sorted(name for name in now if name.endswith(".html") and now[name] != before.get(name))


def renewed(before: dict[str, int], preview: Preview) -> set[str]:
    """What has changed once a reader has asked for every page."""
    for uri in sorted(before):
        preview.freshen(uri)
    now = stamps(preview)
    return {name for name in before.keys() | now.keys() if before.get(name) != now.get(name)}


def test_private_names_of_mkdocs_are_still_there() -> None:
    """MkDocs promises nothing about these; where this fails, `render_page` in generator/publish/preview.py needs another way."""
    gone = [name for name in PRIVATE_NAMES if not callable(getattr(building, name, None))]
    assert [] == gone, f"mkdocs.commands.build has lost {gone}, by which the preview renders single pages: see render_page"
    takes = {name: list(inspect.signature(getattr(building, name)).parameters) for name in PRIVATE_NAMES}
    assert ["page", "config", "files"] == takes["_populate_page"][:3]
    assert ["page", "config", "doc_files", "nav", "env"] == takes["_build_page"][:5]


def test_no_other_private_name_of_mkdocs_is_used() -> None:
    found = {
        name
        for path in sorted((ROOT / "generator" / "publish").glob("*.py"))
        for name in re.findall(r"\b(?:building|build|server|page|files|nav|config)\.(_[a-z]\w+)", path.read_text("utf-8"))
    }
    assert set(PRIVATE_NAMES) == found


def test_a_save_renders_the_pages_that_it_changes_and_no_other(preview: Preview, project: Path) -> None:
    before = stamps(preview)
    save(project, RAIN, MORE_RAIN)
    preview.update()
    scripts = {f"assets/{sort}/biome/temperate-grassland.js" for sort in ("fresh", "practice")}
    kept = {name for name in renewed(before, preview) if name.startswith("files/")}
    assert {f"files/temperate_grassland.climate_diagram.harrow_plain.{ending}" for ending in ("csv", "svg")} <= kept
    assert {SHOWN, "biome/compared.html", "index.html", *scripts} == renewed(before, preview) - kept
    assert "337\u00a0mm" in page(preview) and "327\u00a0mm" not in page(preview)


def test_a_page_is_rendered_when_a_reader_asks_for_it(preview: Preview, project: Path) -> None:
    before = stamps(preview)
    save(project, RAIN, MORE_RAIN)
    preview.update()
    assert [] == pages_newer_than(before, preview)
    assert "337\u00a0mm" in page(preview)
    assert [SHOWN] == pages_newer_than(before, preview)
    shown = stamps(preview)
    preview.freshen(SHOWN)
    assert shown == stamps(preview)


def test_a_page_rendered_alone_is_the_page_of_a_whole_site(preview: Preview, project: Path) -> None:
    """But for the marks that a whole build sets anew in every page, of which there are none."""
    save(project, RAIN, MORE_RAIN)
    preview.update()
    alone = page(preview)
    whole = Preview(project, project / "content", project / "build2", project / "shown2", "content", StillCharts())
    whole.update()
    assert page(whole) == alone


def test_a_save_that_changes_nothing_renders_nothing(preview: Preview, project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = stamps(preview)
    save(project, "use: page   ", "use: page #  ")
    preview.update()
    assert set() == renewed(before, preview)
    assert capsys.readouterr().out.splitlines()[-1].startswith("0 pages in ")


def test_a_change_of_the_text_leaves_the_rest_of_the_site(preview: Preview, project: Path) -> None:
    before = stamps(preview)
    save(project, "asks: why few", "asks: why so few")
    preview.update()
    assert "cycle/wend-hollow-nitrogen.html" not in renewed(before, preview)
    assert "Why so few" in page(preview)


def test_a_new_title_stands_in_the_navigation_of_other_pages_without_a_new_site(
    preview: Preview, project: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    save(project, "title: Temperate grassland", "title: Steppe")
    preview.update()
    assert re.match(r"\d pages in ", capsys.readouterr().out.splitlines()[-1])
    assert "Steppe" in page(preview) and "Steppe" in page(preview, "topics/cycles/index.html")
    whole = Preview(project, project / "content", project / "build2", project / "shown2", "content", StillCharts())
    whole.update()
    assert [] == [uri for uri in stamps(whole) if uri.endswith(".html") and page(whole, uri) != page(preview, uri)]


def test_the_search_still_finds_all_pages_after_single_ones(preview: Preview, project: Path) -> None:
    def found() -> set[str]:
        index = json.loads(page(preview, "search/search_index.js").removeprefix("var __index = "))
        return {entry["location"].partition("#")[0] for entry in index["docs"]}

    before = found()
    save(project, RAIN, MORE_RAIN)
    preview.update()
    assert "337\u00a0mm" in page(preview)
    assert before == found()


def test_a_new_record_and_one_that_goes_take_the_whole_site(preview: Preview, project: Path) -> None:
    course = project / "content" / "course.yaml"
    substitute(course, "[biome/temperate_grassland]", "[]")
    preview.update()
    assert not (preview.site / SHOWN).exists()
    substitute(course, "[]", "[biome/temperate_grassland]")
    preview.update()
    assert "Temperate grassland" in page(preview)


def test_a_chart_that_comes_late_renews_its_page_and_the_file_to_keep_only(preview: Preview, monkeypatch: pytest.MonkeyPatch) -> None:
    before = stamps(preview)
    drawn = preview.charts

    def one_differs(charts: Iterable[Chart], folder: Path) -> Mapping[str, bytes]:
        files = dict(drawn(charts, folder))
        name = next(name for name in files if "wend_hollow" in name)
        return files | {name: files[name].replace(b"June", b"May")}

    monkeypatch.setattr(preview, "charts", one_differs)
    monkeypatch.setattr(one_differs, "late", 0, raising=False)
    preview.update()
    assert {"cycle/wend-hollow-nitrogen.html", "files/wend_hollow_nitrogen.flux_diagram.svg"} == renewed(before, preview)


def test_wrong_content_is_told_over_the_last_good_version_until_it_is_mended(preview: Preview, project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = stamps(preview)
    save(project, RAIN, WRONG)
    preview.update()
    told = 'content/biome/temperate_grassland.yaml:20:46: stations[0].monthly_precip[6] (July): expected a number, found the text "wet"'
    assert told in capsys.readouterr().err
    assert told.replace('"', "&quot;") in preview.notice and LAST_GOOD in preview.notice
    assert set() == renewed(before, preview)
    save(project, WRONG, MORE_RAIN)
    preview.update()
    assert ("", True) == (preview.notice, "337\u00a0mm" in page(preview))


def test_content_that_is_wrong_from_the_start_shows_nothing_yet_and_then_the_site(project: Path) -> None:
    save(project, RAIN, WRONG)
    with quiet_log():
        found = Preview(project, project / "content", project / "build", project / "shown", "content", StillCharts())
        found.update()
        assert ("Nothing to show yet." in page(found, "index.html"), bool(found.notice)) == (True, True)
        save(project, WRONG, RAIN)
        found.update()
    assert ("Living world" in page(found, "index.html"), found.notice) == (True, "")


def test_a_fault_of_the_generator_is_told_too_and_nothing_is_lost_by_it(preview: Preview, project: Path) -> None:
    save(project, RAIN, MORE_RAIN)
    with pytest.MonkeyPatch.context() as broken:
        broken.setattr(module, "write_pages", lambda *_: 1 / 0)
        preview.update()
    assert "The generator failed." in preview.notice and "ZeroDivisionError" in preview.notice
    preview.update()
    assert ("", True) == (preview.notice, "337\u00a0mm" in page(preview))


def test_a_page_that_cannot_be_rendered_is_told_over_its_last_good_version(preview: Preview, project: Path) -> None:
    save(project, RAIN, MORE_RAIN)
    preview.update()
    with pytest.MonkeyPatch.context() as broken:
        broken.setattr(module, "render_page", lambda *_: 1 / 0)
        assert "327\u00a0mm" in page(preview)
    assert "The generator failed." in preview.notice
    preview.update()
    assert ("", True) == (preview.notice, "337\u00a0mm" in page(preview))


def test_warnings_are_told_when_they_are_new(preview: Preview, project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    save(project, "annual_mean_temp: [-10, 18]", "annual_mean_temp: [10, 18]")
    preview.update()
    assert "outside_usual_range" in capsys.readouterr().err
    save(project, RAIN, MORE_RAIN)
    preview.update()
    assert "" == capsys.readouterr().err


def test_a_preview_has_no_policy_and_a_site_built_after_it_has(preview: Preview, project: Path) -> None:
    assert "Content-Security-Policy" not in page(preview)
    save(project, RAIN, MORE_RAIN)
    preview.update()
    assert "Content-Security-Policy" not in page(preview)
    site = build_site(project, work=project / "other").site
    assert "Content-Security-Policy" in (site / SHOWN).read_text("utf-8")
