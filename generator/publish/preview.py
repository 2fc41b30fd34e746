"""The site while it is being written: served on this computer, a save shown at once, wrong content told over the last good version."""

from __future__ import annotations

import errno
import os
import re
import shutil
import signal
import socket
import sys
import threading
import time
import traceback
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import RLock
from typing import Any

from jinja2 import Environment
from mkdocs.commands import build as building
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import Files
from mkdocs.structure.nav import Navigation, get_navigation
from mkdocs.structure.pages import Page
from watchdog.observers.polling import PollingObserverVFS

from generator.build import Written, write_pages
from generator.diagnostics import ContentErrors, report
from generator.publish.late_charts import LateCharts
from generator.publish.notice import notice, noticed
from generator.publish.plugin import name_site
from generator.publish.site import configuration, quiet_log, studyguide
from generator.publish.swap import SiteRefused

HOST = "127.0.0.1"
PRIVATE_NAMES = ("_populate_page", "_build_page")
"""What this module uses of `mkdocs.commands.build` though MkDocs does not promise it; `mkdocs` is pinned for that reason."""
LOOKS_EVERY, QUIET_FOR = 0.1, 0.03
"""Seconds between two looks at the content, and without a change before pages are made."""
SEARCH = "material/search"
"""The theme's search among the plugins."""
NOT_CONTENT = re.compile(r"[.~#].*|.*(?:~|\.sw[a-z]|\.tmp|\.bak)")
"""Files that editors keep beside the one that is edited."""
NOTHING_YET = "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Preview</title></head>\n<body><p>Nothing to show yet.</p></body></html>\n"
LAST_GOOD = "What you see below is the last good version."
StartResponse = Callable[..., Any]
App = Callable[[dict[str, Any], StartResponse], Iterable[bytes]]


@dataclass(frozen=True)
class Rendered:
    """What a whole build leaves behind for rendering single pages again."""

    config: MkDocsConfig
    files: Files
    nav: Navigation
    env: Environment

    @cached_property
    def sources(self) -> dict[str, str]:
        """The source of each page, by its path in the site."""
        return {file.dest_uri: file.src_uri for file in self.files.documentation_pages()}


class _Keeper(BasePlugin):
    """Takes from a build what `Rendered` holds."""

    nav: Navigation
    rendered: Rendered | None = None

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:
        self.nav = nav
        return nav

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        self.rendered = Rendered(config, files, self.nav, env)
        return env


class _NoIndex:
    """Stands where the theme's search keeps what it found."""

    def add_entry_from_context(self, page: Page) -> None:
        """Find nothing."""


class Preview:
    """A site folder that is kept up to date with a content folder, and what is wrong with the content at the moment."""

    def __init__(self, project: Path, content: Path, work: Path, site: Path, name: str, charts: LateCharts) -> None:
        self.project, self.content, self.work, self.site, self.name, self.charts = project, content, work, site, name, charts
        self.plugin = studyguide(configuration(project, content), project)
        self.notice = ""
        """HTML that tells what is wrong; empty while all is well."""
        self.written: Written | None = None
        self.rendered: Rendered | None = None
        self.pending: set[str] = set()
        """Files that were written and of which it is not noted yet which pages they change."""
        self.stale: set[str] = set()
        """Sources of pages that have changed since they were rendered; they are when a reader asks for them."""
        self.lock = RLock()
        self.warnings = ""
        site.mkdir(parents=True)
        (site / "index.html").write_text(NOTHING_YET, "utf-8")

    def update(self) -> None:
        """Bring the site up to date; tell what is wrong, and then leave the site as it is."""
        start = time.perf_counter()
        with self.lock, self._told():
            written = write_pages(self.content, self.work, self.name, self.charts)
            self.pending |= written.changed
            with self._as_preview(written):
                pages = self._take(written)
            self.notice = ""
            self._warn(report(written.warnings))
            late = f"; still drawing: {self.charts.late}" if self.charts.late else ""
            print(f"{pages} in {time.perf_counter() - start:.2f} s{late}", flush=True)

    def freshen(self, path: str) -> None:
        """Render the page at a path of the site, if it has changed since."""
        with self.lock, self._told():
            uri = self.rendered.sources.get(path) if self.rendered else None
            if self.rendered and self.written and uri in self.stale:
                with self._as_preview(self.written):
                    render_page(self.rendered, uri)
                self.stale.discard(uri)

    @contextmanager
    def _told(self) -> Iterator[None]:
        """Tell what goes wrong and go on: the server must live on, and the next save may mend it."""
        try:
            yield
        except ContentErrors as errors:
            self._tell(f"The content is wrong. {LAST_GOOD}", str(errors))
        except Exception:
            self._tell(f"The generator failed. {LAST_GOOD}", traceback.format_exc())

    def _tell(self, head: str, text: str) -> None:
        self.notice = notice(head, text)
        print(f"{text}\nThe preview keeps the last good version.", file=sys.stderr, flush=True)

    def _warn(self, text: str) -> None:
        """Tell warnings when they are new."""
        if text and text != self.warnings:
            print(text, file=sys.stderr, flush=True)
        self.warnings = text

    def _take(self, written: Written) -> str:
        """Note which pages have changed; where pages came or went, render the whole site. Says which."""
        before, changed = self.written, self._changed_pages()
        if before is None or self.rendered is None or changed is None:
            self.rendered, said = self._whole_site(), "The whole site"
            self.stale.clear()
        else:
            for name in self._scripts():
                shutil.copyfile(self.work / "pages" / name, self.site / name)
            if (before.nav, before.title) != (written.nav, written.title):
                self.rendered = navigated(self.rendered, written)
                self.stale |= set(self.rendered.sources.values())  # a title stands in the navigation of other pages too
            self.stale |= changed
            said = f"{len(changed)} page{'' if len(changed) == 1 else 's'}"
        self.written = written
        self.pending.clear()
        return said

    def _scripts(self) -> set[str]:
        """Scripts with numbers of a record and files to take away that changed: they are served as they are written."""
        return {name for name in self.pending if name.startswith(("assets/fresh/", "assets/practice/", "assets/again/", "files/")) and (self.site / name).is_file()}

    def _changed_pages(self) -> set[str] | None:
        """The pages to render again; None where it takes the whole site: files came or went, or are no page."""
        folder = self.work / "pages"
        charts = {name for name in self.pending if name.startswith("charts/")}
        texts = {name for name in self.pending if name.endswith(".md")}
        known = set(self.rendered.sources.values()) if self.rendered else set()
        if self.pending - charts - texts - self._scripts() or texts - known or not all((folder / name).is_file() for name in self.pending):
            return None
        for uri in known if charts else ():
            text = (folder / uri).read_text("utf-8")
            if any(chart in text for chart in charts):
                texts.add(uri)
        return texts

    def _whole_site(self) -> Rendered | None:
        config = configuration(self.project, self.content)
        self.plugin.config.work = str(self.work)
        config.site_dir = str(self.site)
        keeper = _Keeper()
        config.plugins["preview"] = keeper
        config.plugins.on_startup(command="serve", dirty=False)
        building.build(config)
        return keeper.rendered

    @contextmanager
    def _as_preview(self, written: Written) -> Iterator[None]:
        """Let our plugin, one object in all configurations of a process, finish what is written as pages of a preview."""
        self.plugin.serving = self.plugin.quiet = True
        self.plugin.ready = written
        try:
            yield
        finally:
            self.plugin.serving = self.plugin.quiet = False
            self.plugin.ready = None

    def with_notice(self, app: App) -> App:
        """The server's answers, with the notice in every page while there is one."""

        def answer(environ: dict[str, Any], start_response: StartResponse) -> Iterable[bytes]:
            path = environ["PATH_INFO"]
            if not path.endswith((".html", "/")):
                return app(environ, start_response)
            self.freshen(f"{path}index.html".lstrip("/") if path.endswith("/") else path.lstrip("/"))
            begun: list[tuple[str, list[tuple[str, str]]]] = []
            body = b"".join(app(environ, lambda status, headers: begun.append((status, headers))))
            body = noticed(body, self.notice)  # not earlier: the server may have waited for an update
            ((status, headers),) = begun
            kept = [(name, value) for name, value in headers if name.lower() != "content-length"]
            start_response(status, [*kept, ("Content-Length", str(len(body)))])
            return [body]

        return answer


def navigated(rendered: Rendered, written: Written) -> Rendered:
    """The same site with other titles in its navigation; no page is rendered."""
    config, files = rendered.config, rendered.files
    name_site(config, written)
    for file in files.documentation_pages():
        file.page = None  # or the navigation would take the old titles over
    nav = config.plugins.on_nav(get_navigation(files, config), config=config, files=files)
    for page in nav.pages:
        page.read_source(config)  # some have their titles from there
    return replace(rendered, nav=nav)


def render_page(rendered: Rendered, uri: str) -> None:
    """Render one page anew into the site; the search stays as it is, since its index is only written with a whole site."""
    if SEARCH in rendered.config.plugins:
        rendered.config.plugins[SEARCH].search_index = _NoIndex()  # a whole site begins with an index of its own
    page = rendered.files.src_uris[uri].page
    if page is None:
        raise LookupError(f"{uri}: expected a page, found another file")
    documents = rendered.files.documentation_pages()
    building._populate_page(page, rendered.config, rendered.files)
    building._build_page(page, rendered.config, documents, rendered.nav, rendered.env)


def serve(project: Path, *, content: Path, work: Path | None = None, port: int, name: str = "") -> None:
    """Serve the preview until Ctrl-C; prints the address, and for every save what was made of it.

    Raises
    ------
    SiteRefused
        If `mkdocs.yml` cannot be used, or the port is taken.
    """
    _refuse_taken(port)
    project, content = project.resolve(), content.resolve()
    folder = project / studyguide(configuration(project, content), project).config.work if work is None else work.resolve()
    with quiet_log(), TemporaryDirectory(prefix="studyguide-") as temporary:
        late = Path(temporary) / "late"
        late.mkdir()

        with LateCharts(folder / "pages", lambda: (late / "drawn").write_text(f"{time.perf_counter()}")) as charts:
            preview = Preview(project, content, folder, Path(temporary) / "site", name, charts)
            _serve(preview, port, watched=(content, late))


def _serve(preview: Preview, port: int, watched: Iterable[Path]) -> None:
    server = LiveReloadServer(preview.update, HOST, port, root=str(preview.site))
    server.set_app(preview.with_notice(server.serve_request))
    server.observer = PollingObserverVFS(os.stat, entries, polling_interval=LOOKS_EVERY)
    server.build_delay = QUIET_FOR
    for folder in watched:
        server.watch(str(folder))
    try:
        print("Making the site; the first time its charts take a while.", flush=True)
        preview.update()
        print(f"Preview at {server.url} (Ctrl-C ends it)", flush=True)
        with _ended_by_signals(server):
            server.serve()
    except OSError as error:
        raise _refusal(port, error) from error
    finally:
        server.shutdown()


@contextmanager
def _ended_by_signals(server: LiveReloadServer) -> Iterator[None]:
    """Let Ctrl-C and a request to end finish what is under way; an exception out of nowhere could get lost in a library."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return

    def end(*_: object) -> None:
        threading.Thread(target=server.shutdown).start()

    before = {number: signal.signal(number, end) for number in (signal.SIGINT, signal.SIGTERM)}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


def entries(folder: str | None) -> Iterator[os.DirEntry[str]]:
    """What stands in a folder of content, without what editors keep beside it."""
    with os.scandir(folder) as found:
        yield from (entry for entry in found if not NOT_CONTENT.fullmatch(entry.name))


def _refuse_taken(port: int) -> None:
    """Raise SiteRefused at once, not after the first build, if the port cannot be had."""
    with socket.socket() as trial:
        if os.name == "posix":  # as the server itself does; elsewhere this would allow two servers on one port
            trial.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            trial.bind((HOST, port))
        except OSError as error:
            raise _refusal(port, error) from error


def _refusal(port: int, error: OSError) -> SiteRefused:
    why = "is taken by another program" if error.errno == errno.EADDRINUSE else f"cannot be used ({error.strerror})"
    return SiteRefused(f"port {port} {why}; choose another one with --port")
