"""A whole site from a project folder: MkDocs run in this process, its output swapped in when it is complete."""

from __future__ import annotations

import logging
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import MkDocsException

from generator.diagnostics import Diagnostic
from generator.publish.plugin import StudyGuidePlugin, WrongContent
from generator.publish.swap import SiteRefused, replacing

PLUGIN = "studyguide"


@dataclass(frozen=True)
class Published:
    """A site that stands in its place."""

    site: Path
    pages: int
    """Number of HTML pages."""
    warnings: tuple[Diagnostic, ...]
    """What the content could do better; told by the caller."""


def build_site(
    project: Path, *, content: Path | None = None, out: Path | None = None, work: Path | None = None
) -> Published:
    """Build the site of a project and put it in its place; on any error the place keeps what it had.

    Parameters
    ----------
    project
        The folder with `mkdocs.yml`.
    content
        The folder of records; `docs_dir` of `mkdocs.yml` if not given.
    out
        The folder that becomes the site; `site/` in the project if not given.
    work
        The folder for pages and charts on their way; the plugin's `work` option, `build/`, if not given.

    Raises
    ------
    ContentErrors
        If the content is wrong.
    SiteRefused
        If `mkdocs.yml` cannot be used, a folder cannot be written, or `out` holds something else than a site of ours.
    """
    with quiet_log():
        config = configuration(project.resolve(), content)
        plugin = studyguide(config, project)
        if work is not None:
            plugin.config.work = str(work.resolve())
        target = (out or project / "site").resolve()
        _refuse_overlap(target, Path(config.docs_dir), (project / plugin.config.work).resolve())
        with replacing(target) as fresh:
            config.site_dir = str(fresh)
            plugin.quiet = True
            try:
                build(config)
            except WrongContent as wrong:
                raise wrong.errors from None
            finally:
                plugin.quiet = False
    return Published(target, len(list(target.rglob("*.html"))), tuple(plugin.written.warnings))


def configuration(project: Path, content: Path | None) -> MkDocsConfig:
    """The configuration of a project, with another content folder if one is given; raises SiteRefused if it is wrong."""
    file = project / "mkdocs.yml"
    try:
        return load_config(
            str(file),
            config_file_path=str(file),
            docs_dir=None if content is None else str(content.resolve()),
            watch=[],
        )
    except MkDocsException as error:
        raise SiteRefused(f"{file}: {error.format_message()}") from error


def studyguide(config: MkDocsConfig, project: Path) -> StudyGuidePlugin:
    """Our plugin in a configuration; raises SiteRefused if it is not there."""
    plugin = config.plugins.get(PLUGIN)
    if not isinstance(plugin, StudyGuidePlugin):
        raise SiteRefused(f"{project / 'mkdocs.yml'}: expected {PLUGIN} under plugins, found {', '.join(config.plugins)}")
    return plugin


def _refuse_overlap(target: Path, content: Path, work: Path) -> None:
    """Raise SiteRefused if writing the site would overwrite what it is made from, or the other way round."""
    for name, folder in (("content", content), ("work", work)):
        if target == folder or target in folder.parents or (name == "content" and folder in target.parents):
            raise SiteRefused(f"{target}: the site cannot share a folder with {name} ({folder})")
    if target == work / "pages" or work / "pages" in target.parents:
        raise SiteRefused(f"{target}: the site cannot stand among the pages that it is made from")
    if work == content or content in work.parents or work in content.parents:
        raise SiteRefused(f"{work}: work and content ({content}) cannot share a folder")


@contextmanager
def quiet_log() -> Iterator[None]:
    """Let MkDocs tell warnings and errors only."""
    log = logging.getLogger("mkdocs")
    before = log.level
    log.setLevel(logging.WARNING)
    try:
        yield
    finally:
        log.setLevel(before)
