"""What pages weigh on the wire: a server that compresses as a school's would, and a browser that counts what arrives."""

from __future__ import annotations

import gzip
import hashlib
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache, partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import urlsplit

from playwright.sync_api import Browser, Page

LEVEL = 6
"""Of gzip. Apache's mod_deflate takes zlib's default, which is 6; nginx takes 1 unless it is told otherwise (from memory)."""
COMPRESSED = (".html", ".css", ".js", ".json", ".svg", ".csv", ".txt")


class _Compressing(SimpleHTTPRequestHandler):
    """Text compressed, each file with a mark by which a browser that has it asks whether it is still the same.

    `no-cache` makes the browser ask every time: the most that a server can cost a reader whose cache is warm.
    """

    protocol_version = "HTTP/1.1"

    def do_GET(self) -> None:
        """Answer with the file, or with 304 and nothing if the browser has it."""
        path = Path(self.translate_path(self.path))
        if not path.is_file():
            self.send_error(HTTPStatus.NOT_FOUND)
            return
        compressed = path.suffix in COMPRESSED
        body, mark = _body(path, compressed)
        known = self.headers.get("If-None-Match") == mark
        self.send_response(HTTPStatus.NOT_MODIFIED if known else HTTPStatus.OK)
        self.send_header("ETag", mark)
        self.send_header("Cache-Control", "no-cache")
        if not known:
            self.send_header("Content-Type", self.guess_type(str(path)))
            self.send_header("Content-Length", str(len(body)))
            if compressed:
                self.send_header("Content-Encoding", "gzip")
                self.send_header("Vary", "Accept-Encoding")
        self.end_headers()
        if not known:
            self.wfile.write(body)

    def log_message(self, format: str, *args: object) -> None:
        """Keep requests out of the output."""


@cache
def _body(path: Path, compressed: bool) -> tuple[bytes, str]:
    content = path.read_bytes()
    mark = f'"{hashlib.sha256(content).hexdigest()[:16]}"'
    return (gzip.compress(content, LEVEL, mtime=0) if compressed else content), mark


@contextmanager
def serving(folder: Path) -> Iterator[str]:
    """Serve a folder, compressed, until the block is left; gives its address."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Compressing, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_port}"
    finally:
        server.shutdown()
        server.server_close()


class Scales:
    """Counts what arrives for a page, headers and all, by the browser's own account (DevTools protocol, Network domain)."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self._address: dict[str, str] = {}
        self._bytes: dict[str, int] = {}
        session = page.context.new_cdp_session(page)
        session.on("Network.requestWillBeSent", lambda event: self._address.update({event["requestId"]: event["request"]["url"]}))
        session.on("Network.loadingFinished", lambda event: self._bytes.update({event["requestId"]: int(event["encodedDataLength"])}))
        session.send("Network.enable")

    def weigh(self, url: str) -> dict[str, int]:
        """Bytes by path of all that a page asks for until it asks for nothing more."""
        self._address.clear()
        self._bytes.clear()
        self.page.goto(url, wait_until="networkidle")
        return {urlsplit(self._address[key]).path: size for key, size in self._bytes.items() if self._address[key].startswith("http")}


def weights(browser: Browser, address: str, names: list[str], before: str) -> dict[str, tuple[dict[str, int], dict[str, int]]]:
    """Of each page, what it weighs for a reader who comes first to it, and for one who comes from the page `before`."""
    found = {}
    for name in names:
        context = browser.new_context()
        first = Scales(context.new_page()).weigh(f"{address}/{name}")
        context.close()
        context = browser.new_context()
        scales = Scales(context.new_page())
        scales.weigh(f"{address}/{before}")
        found[name] = first, scales.weigh(f"{address}/{name}")
        context.close()
    return found
