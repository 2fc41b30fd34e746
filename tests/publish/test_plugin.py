"""The plugin under plain MkDocs: pages written first, wrong content told without a traceback, previews kept alive."""

from __future__ import annotations

from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig

from generator.diagnostics import Diagnostic, Place, Severity
from generator.publish import plugin
from generator.publish.plugin import StudyGuidePlugin, WrongContent, keeping_last_good_site
from generator.publish.swap import MARKER
from tests.publish.fake_pages import find_wrong

WARNING = Diagnostic(
    Place("content/biome/x.yaml", 5, 1), "station", "8 to 15", "16", "say why", Severity.WARNING, "usual_range"
)


def configured(project: Path) -> MkDocsConfig:
    file = str(project / "mkdocs.yml")
    return load_config(file, config_file_path=file)


def test_plain_mkdocs_builds_the_pages_with_title_and_navigation_of_the_course(project: Path) -> None:
    (project / "content" / "title.txt").write_text("Water and life")
    build(configured(project))
    page = (project / "site" / "biome" / "temperate-grassland.html").read_text("utf-8")
    assert "<title>Temperate grassland - Water and life</title>" in page
    assert "Cycles of matter" in page


def test_pages_and_charts_are_made_in_the_work_folder_beside_mkdocs_yml(project: Path) -> None:
    build(configured(project))
    assert (project / "build" / "pages" / "index.md").is_file()
    assert ["build", "content", "mkdocs.yml", "site"] == sorted(entry.name for entry in project.iterdir())


def test_a_plain_build_into_an_empty_place_is_marked_as_ours(project: Path) -> None:
    build(configured(project))
    assert (project / "site" / MARKER).is_file()


def test_a_plain_build_does_not_mark_a_folder_that_held_something_hidden(project: Path) -> None:
    (project / "site").mkdir()
    (project / "site" / ".git").write_text("gitdir: elsewhere")
    build(configured(project))
    assert not (project / "site" / MARKER).exists()


def test_wrong_content_ends_mkdocs_with_exit_code_1_and_the_report_on_standard_error(
    project: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(plugin, "write_pages", find_wrong)
    with pytest.raises(WrongContent) as raised:
        build(configured(project))
    raised.value.show()
    told = capsys.readouterr()
    assert 1 == raised.value.exit_code
    assert "" == told.out
    assert told.err.startswith("content/biome/x.yaml:4:15: latitude: expected -90 to 90, found 146.5\n")
    assert not (project / "site").exists()


def test_warnings_are_told_once(
    project: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    writes = plugin.write_pages

    def warned(content: Path, work: Path, name: str, drawings: object) -> object:
        written = writes(content, work, name)
        written.warnings = (WARNING,)
        return written

    monkeypatch.setattr(plugin, "write_pages", warned)
    build(configured(project))
    assert 1 == capsys.readouterr().err.count("station: expected 8 to 15, found 16")


def test_a_preview_carries_no_policy_since_its_reload_script_is_inline(project: Path) -> None:
    config = configured(project)
    config.plugins.on_startup(command="serve", dirty=False)
    try:
        build(config)
    finally:
        config.plugins.on_startup(command="build", dirty=False)
    assert "Content-Security-Policy" not in (project / "site" / "index.html").read_text("utf-8")


def test_a_preview_keeps_the_last_good_site_while_the_content_is_wrong(
    project: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    rebuild = keeping_last_good_site(lambda: build(configured(project)))
    rebuild()
    before = (project / "site" / "index.html").read_text("utf-8")
    with monkeypatch.context() as broken:
        broken.setattr(plugin, "write_pages", find_wrong)
        rebuild()
    assert "expected -90 to 90" in capsys.readouterr().err
    assert before == (project / "site" / "index.html").read_text("utf-8")


def test_a_preview_shows_the_mended_content_again(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    rebuild = keeping_last_good_site(lambda: build(configured(project)))
    with monkeypatch.context() as broken:
        broken.setattr(plugin, "write_pages", find_wrong)
        rebuild()
    (project / "content" / "title.txt").write_text("Mended")
    rebuild()
    assert "Mended" in (project / "site" / "index.html").read_text("utf-8")


class Server:
    """What the plugin touches of MkDocs' preview server."""

    def __init__(self, builder: object) -> None:
        self.builder = builder
        self.unwatched: list[str] = []

    def unwatch(self, path: str) -> None:
        self.unwatched.append(path)


def test_a_preview_does_not_watch_the_pages_that_it_writes(project: Path) -> None:
    config = configured(project)
    build(config)
    server = Server(builder=lambda: None)
    studyguide = config.plugins["studyguide"]
    assert isinstance(studyguide, StudyGuidePlugin)
    studyguide.on_serve(server, config=config, builder=server.builder)
    assert [str(project / "build" / "pages")] == server.unwatched
    assert [str(project / "content")] == config.watch
