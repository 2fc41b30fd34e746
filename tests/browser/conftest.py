"""Sites to open, a plain web server under a sub-path, and pages that note what they ask for and what they complain of."""

from __future__ import annotations

import shutil
import threading
from collections.abc import Callable, Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from generator.publish import plugin
from generator.publish.site import build_site
from tests.browser.watch import Watch
from tests.publish.fake_pages import write_fake_pages

ROOT = Path(__file__).parents[2]
SUB_PATH = "some/sub/path"


@pytest.fixture(scope="session")
def sample_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site of known pages, whose words the tests of search, schemes and keyboard know."""
    project = tmp_path_factory.mktemp("sample")
    (project / "content").mkdir()
    shutil.copy(ROOT / "mkdocs.yml", project)
    with pytest.MonkeyPatch.context() as stand_in:
        stand_in.setattr(plugin, "write_pages", write_fake_pages)
        return build_site(project, out=project / "out" / SUB_PATH).site


@pytest.fixture(scope="session")
def built_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of this project's own content, whose every page is opened."""
    folder = tmp_path_factory.mktemp("demo")
    return build_site(ROOT, out=folder / "out" / SUB_PATH, work=folder / "work").site


class _Silent(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Keep requests out of the test's output."""


@pytest.fixture(scope="session")
def served() -> Iterator[Callable[[Path], str]]:
    """Serve a site at the end of a sub-path, as it would stand on a school's web server; returns its address."""
    servers: dict[Path, ThreadingHTTPServer] = {}

    def serve(site: Path) -> str:
        root = site
        for _ in SUB_PATH.split("/"):
            root = root.parent
        if root not in servers:
            servers[root] = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Silent, directory=str(root)))
            threading.Thread(target=servers[root].serve_forever, daemon=True).start()
        return f"http://127.0.0.1:{servers[root].server_port}/{SUB_PATH}"

    yield serve
    for server in servers.values():
        server.shutdown()
        server.server_close()


@pytest.fixture(params=["file", "http"])
def address(request: pytest.FixtureRequest, served: Callable[[Path], str]) -> Callable[[Path], str]:
    """Where a site is found: in its folder, and on a web server under a sub-path."""
    return served if request.param == "http" else lambda site: site.as_uri()


@pytest.fixture
def opened(browser: Browser) -> Iterator[Callable[..., Page]]:
    """Open an address in a fresh profile; takes what a browser context takes (`color_scheme`, `viewport`, ...)."""
    contexts = []

    def open_page(url: str, **settings: object) -> Page:
        context = browser.new_context(**settings)
        contexts.append(context)
        page = context.new_page()
        page.goto(url)
        return page

    yield open_page
    for context in contexts:
        context.close()


@pytest.fixture
def watched(browser: Browser) -> Iterator[Callable[..., Watch]]:
    """A fresh page that notes complaints and requests; the site's address goes in, a Watch comes out."""
    contexts = []

    def watch(site_url: str, **settings: object) -> Watch:
        context = browser.new_context(**settings)
        contexts.append(context)
        return Watch(context.new_page(), site_url)

    yield watch
    for context in contexts:
        context.close()
