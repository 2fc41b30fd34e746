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
from dataclasses import dataclass
from html import escape
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from jinja2 import Environment
from mkdocs.commands import build as building
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import Files
from mkdocs.structure.nav import Navigation
from watchdog.observers.polling import PollingObserverVFS

from generator.build import Written, write_pages
from generator.diagnostics import ContentErrors, report
from generator.publish.late_charts import LateCharts
from generator.publish.site import configuration, quiet_log, studyguide
from generator.publish.swap import SiteRefused

HOST = "127.0.0.1"
PRIVATE_NAMES = ("_populate_page", "_build_page")
"""What this module uses of `mkdocs.commands.build` though MkDocs does not promise it; `mkdocs` is pinned for that reason."""
LOOKS_EVERY, QUIET_FOR = 0.15, 0.03
"""Seconds between two looks at the content, and without a change before pages are made."""
NOT_CONTENT = re.compile(r"[.~#].*|.*(?:~|\.sw[a-z]|\.tmp|\.bak)")
"""Files that editors keep beside the one that is edited."""
NOTHING_YET = "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Preview</title></head>\n<body><p>Nothing to show yet.</p></body></html>\n"
LAST_GOOD = "What you see below is the last good version."
NOTICE = """
<style>
.preview-notice { position: fixed; inset: 0 0 auto 0; z-index: 99; box-sizing: border-box; width: auto; max-width: none; max-height: 60vh;
  margin: 0; padding: 12px 20px; overflow: auto; border: 0; border-bottom: 3px solid #b3261e; background: #fff4f2; color: #410e0b;
  font: 16px/1.4 system-ui, sans-serif }
.preview-notice pre { margin: 8px 0; white-space: pre-wrap; font: 14px/1.4 ui-monospace, monospace }
.preview-notice button { padding: 4px 12px; border: 1px solid #410e0b; border-radius: 4px; background: #ffffff; color: #410e0b; font: inherit; cursor: pointer }
</style>
<dialog open class="preview-notice" aria-label="What is wrong">
<strong>%s</strong>
<pre>%s</pre>
<form method="dialog"><button>Hide until the next save</button></form>
</dialog>
"""
StartResponse = Callable[..., Any]
App = Callable[[dict[str, Any], StartResponse], Iterable[bytes]]


@dataclass(frozen=True)
class Rendered:
    """What a whole build leaves behind for rendering single pages again."""

    config: MkDocsConfig
    files: Files
    nav: Navigation
    env: Environment


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
        """Files that were written and are not rendered yet."""
        self.warnings = ""
        site.mkdir(parents=True)
        (site / "index.html").write_text(NOTHING_YET, "utf-8")

    def update(self) -> None:
        """Bring the site up to date; tell what is wrong, and then leave the site as it is."""
        start = time.perf_counter()
        try:
            written = write_pages(self.content, self.work, self.name, self.charts)
            self.pending |= written.changed
            with self._as_preview(written):
                pages = self._render(written)
        except ContentErrors as errors:
            self._tell(f"The content is wrong. {LAST_GOOD}", str(errors))
        except Exception:  # whatever it is, the server must live on, and the next save may mend it
            self._tell(f"The generator failed. {LAST_GOOD}", traceback.format_exc())
        else:
            self.notice = ""
            self._warn(report(written.warnings))
            late = f"; still drawing: {self.charts.late}" if self.charts.late else ""
            print(f"{pages} in {time.perf_counter() - start:.2f} s{late}", flush=True)

    def _tell(self, head: str, text: str) -> None:
        self.notice = NOTICE % (escape(head), escape(text))
        print(f"{text}\nThe preview keeps the last good version.", file=sys.stderr, flush=True)

    def _warn(self, text: str) -> None:
        """Tell warnings when they are new."""
        if text and text != self.warnings:
            print(text, file=sys.stderr, flush=True)
        self.warnings = text

    def _render(self, written: Written) -> str:
        """Render what changed: single pages where all else is as before, or the whole site. Says which."""
        before = self.written
        as_before = before is not None and (before.nav, before.title) == (written.nav, written.title)
        pages = self._changed_pages() if as_before and self.rendered else None
        if pages is None or self.rendered is None:
            self.rendered, said = self._whole_site(), "The whole site"
        else:
            for name in self._scripts():
                shutil.copyfile(self.work / "pages" / name, self.site / name)
            for uri in pages:
                render_page(self.rendered, uri)
            said = f"{len(pages)} page{'' if len(pages) == 1 else 's'}"
        self.written = written
        self.pending.clear()
        return said

    def _scripts(self) -> set[str]:
        """Scripts with numbers of a record that changed: they are served as they are written."""
        return {name for name in self.pending if name.startswith(("assets/fresh/", "assets/practice/")) and (self.site / name).is_file()}

    def _changed_pages(self) -> list[str] | None:
        """The pages to render again, in order; None where it takes the whole site: files came or went, or are no page."""
        folder = self.work / "pages"
        charts = {name for name in self.pending if name.startswith("charts/")}
        texts = {name for name in self.pending if name.endswith(".md")}
        known = {file.src_uri for file in self.rendered.files.documentation_pages()} if self.rendered else set()
        if self.pending - charts - texts - self._scripts() or texts - known or not all((folder / name).is_file() for name in self.pending):
            return None
        for uri in known if charts else ():
            text = (folder / uri).read_text("utf-8")
            if any(chart in text for chart in charts):
                texts.add(uri)
        return sorted(texts)

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
            if not environ["PATH_INFO"].endswith((".html", "/")):
                return app(environ, start_response)
            begun: list[tuple[str, list[tuple[str, str]]]] = []
            body = b"".join(app(environ, lambda status, headers: begun.append((status, headers))))
            body = noticed(body, self.notice)  # not earlier: the server may have waited for an update
            ((status, headers),) = begun
            kept = [(name, value) for name, value in headers if name.lower() != "content-length"]
            start_response(status, [*kept, ("Content-Length", str(len(body)))])
            return [body]

        return answer


def noticed(page: bytes, notice: str) -> bytes:
    """A page with a notice as the first thing of its body; what has no body is left as it is."""
    return re.sub(rb"<body\b[^>]*>", lambda found: found[0] + notice.encode(), page, count=1)


def render_page(rendered: Rendered, uri: str) -> None:
    """Render one page anew into the site."""
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
