"""The MkDocs plugin: writes the pages before MkDocs reads them, and finishes what MkDocs makes of them."""

from __future__ import annotations

import sys
from collections.abc import Callable
from html import escape
from pathlib import Path
from typing import Literal

from mkdocs.config import base, config_options
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import Files
from mkdocs.structure.pages import Page

from generator.build import Written, write_pages
from generator.diagnostics import ContentErrors, report, shown_path
from generator.publish import accessibility, charts, policy, search, swap, theme, weight
from generator.publish.progress import draw_and_tell

AFTER_ALL_OTHERS = -100


class WrongContent(Abort):
    """Ends MkDocs with exit code 1 and the report of what is wrong, without a traceback."""

    def __init__(self, errors: ContentErrors) -> None:
        super().__init__(str(errors))
        self.errors = errors

    def show(self, *_: object, **__: object) -> None:
        """Print the report on standard error."""
        print(self.format_message(), file=sys.stderr)


class StudyGuideConfig(base.Config):
    """Options of the plugin in mkdocs.yml."""

    work = config_options.Type(str, default="build")
    """Folder for what is made on the way, from the folder of mkdocs.yml."""


class StudyGuidePlugin(BasePlugin[StudyGuideConfig]):
    """Puts the generator before MkDocs and the site's promises behind it."""

    written: Written
    """What the generator wrote for the build under way."""
    pages: Path
    serving = False
    ready: Written | None = None
    """What a preview has written already; it is then not written again."""
    quiet = False
    """Whether warnings about the content are left to the caller to tell."""

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Remember whether pages are for a preview."""
        self.serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Write all pages, and point MkDocs at them; raise WrongContent if the content is wrong."""
        project = Path(config.config_file_path).resolve().parent
        work = project / self.config.work
        try:
            content = Path(config.docs_dir)
            self.written = self.ready or write_pages(content, work, shown_path(content, project), draw_and_tell)
        except ContentErrors as errors:
            raise WrongContent(errors) from errors
        if not self.quiet and (told := report(self.written.warnings)):
            print(told, file=sys.stderr)
        self.pages = work / "pages"
        self._aside: dict[str, tuple[str, ...]] = {}
        config.docs_dir = str(self.pages)
        name_site(config, self.written)
        theme.configure(config)
        return config

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Mark a new site as ours, so that a later build may replace it."""
        site = Path(config.site_dir)
        site.mkdir(parents=True, exist_ok=True)
        if not any(site.iterdir()):
            swap.mark(site)

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Add our styles and scripts, leave out what no page needs."""
        return theme.adjust(files, config)

    @event_priority(AFTER_ALL_OTHERS)
    def on_page_content(self, html: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        """Keep from the search what is not to be found, charts and answers; let it read tables cell by cell."""
        policy.refuse_scripts(html, page.file.src_uri)
        html, self._aside[page.file.src_uri] = search.set_aside(html)
        return search.cells_apart(html)

    @event_priority(AFTER_ALL_OTHERS)
    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> str:
        """Complete a page: hidden parts back, charts inline, accessible, and under its policy."""
        output = search.put_back(output, self._aside.pop(page.file.src_uri))
        output = charts.inline_charts(output, self.pages / "charts", page.file.src_uri)
        output = theme.without_versions(accessibility.mended(output))
        output = weight.without_indents(weight.without_unseen_signs(weight.without_idle_scripts(output)))
        return output if self.serving else policy.with_policy(output)

    @event_priority(AFTER_ALL_OTHERS)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Make the search work without a server, and find pages by the words that readers have."""
        search.write_offline_search(Path(config.site_dir), self.written.search)

    def on_serve(
        self, server: LiveReloadServer, *, config: MkDocsConfig, builder: Callable[..., None]
    ) -> LiveReloadServer:
        """Build once for a change of the content, and keep the last good site while the content is wrong."""
        server.unwatch(config.docs_dir)  # written by ourselves: watching it would build twice
        server.builder = keeping_last_good_site(server.builder)
        return server


def name_site(config: MkDocsConfig, written: Written) -> None:
    """Give the site its title and its navigation."""
    config.nav = written.nav
    config.site_name = escape(written.title)  # the theme's templates put it into HTML as it is


def keeping_last_good_site(build: Callable[[], None]) -> Callable[[], None]:
    """A builder that tells wrong content and returns, since MkDocs answers no request after one that raises."""

    def guarded() -> None:
        try:
            build()
        except WrongContent as wrong:
            wrong.show()

    return guarded
