"""The preview's server: what it answers, what it watches, and the whole of it from start to Ctrl-C."""

from __future__ import annotations

import os
import re
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Locator, expect

from generator.publish.notice import noticed
from generator.publish.preview import Preview, entries, serve
from generator.publish.swap import SiteRefused
from tests.content.patches import ROOT
from tests.publish.test_preview import MORE_RAIN, RAIN, SHOWN, WRONG, preview, project, save

__all__ = ["preview", "project"]  # the fixtures of this module's tests
PATIENCE = 90.0
"""Seconds that a busy machine may take for what is a matter of a moment."""


# What the server answers


def answered(preview: Preview, path: str, body: bytes, kind: str = "text/html") -> tuple[dict[str, str], bytes]:
    """Headers and body, where the server beneath answers with this body."""
    begun: list[tuple[str, list[tuple[str, str]]]] = []

    def beneath(_: dict[str, Any], start_response: Callable[..., Any]) -> Iterable[bytes]:
        start_response("200 OK", [("Content-Type", kind), ("Content-Length", str(len(body)))])
        return [body]

    answer = b"".join(preview.with_notice(beneath)({"PATH_INFO": path}, lambda status, headers: begun.append((status, headers))))
    return dict(begun[0][1]), answer


@pytest.mark.parametrize("path", ["/", "/biome/x.html"])
def test_the_notice_is_the_first_thing_of_every_page(preview: Preview, path: str) -> None:
    preview.notice = "<dialog>é</dialog>"
    headers, body = answered(preview, path, b"<html><body class='x'><p>text")
    assert "<html><body class='x'><dialog>é</dialog><p>text".encode() == body
    assert ("text/html", str(len(body))) == (headers["Content-Type"], headers["Content-Length"])


def test_without_a_notice_and_in_other_files_nothing_is_changed(preview: Preview) -> None:
    assert b"<body>x" == answered(preview, "/index.html", b"<body>x")[1]
    preview.notice = "n"
    assert b"<body>x" == answered(preview, "/assets/a.css", b"<body>x")[1]
    assert b"404 Not Found" == noticed(b"404 Not Found", "n")


@pytest.mark.parametrize(("path", "uri"), [("/", "index.html"), ("/topics/biomes/", "topics/biomes/index.html"), (f"/{SHOWN}", SHOWN)])
def test_what_a_reader_asks_for_is_rendered_first(preview: Preview, path: str, uri: str, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []
    monkeypatch.setattr(preview, "freshen", asked.append)
    answered(preview, path, b"<body>x")
    assert [uri] == asked


def test_what_editors_keep_beside_a_file_is_not_watched(tmp_path: Path) -> None:
    for name in ("a.yaml", ".a.yaml.swp", "a.yaml~", "#a.yaml#", ".#a.yaml", "a.yaml.swp", "a.tmp", "~$a.yaml", "pictures"):
        (tmp_path / name).touch()
    assert ["a.yaml", "pictures"] == sorted(entry.name for entry in entries(str(tmp_path)))


def test_a_port_that_is_taken_is_refused_at_once(project: Path) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        with pytest.raises(SiteRefused, match=f"port {port} is taken by another program; choose another one with --port"):
            serve(project, content=project / "content", port=port)
    assert not (project / "build").exists()


# The whole of it


def until(condition: Callable[[], bool], what: str) -> None:
    """Wait for a condition, and fail with words if it does not come true."""
    end = time.monotonic() + PATIENCE
    while not condition():
        assert time.monotonic() < end, f"within {PATIENCE:g} s: {what}"
        time.sleep(0.05)


@pytest.fixture
def running(project: Path, tmp_path: Path) -> Iterator[tuple[str, subprocess.Popen[bytes], Path]]:
    """`studyguide preview` in a process of its own: its address, the process, and what it printed."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    said = tmp_path / "said"
    environment = os.environ | {"PYTHONPATH": str(ROOT)}
    with said.open("wb") as out:
        process = subprocess.Popen([sys.executable, "-m", "generator", "preview", "--port", str(port)], cwd=project, env=environment, stdout=out, stderr=out)
    try:
        until(lambda: b"Preview at" in said.read_bytes() or process.poll() is not None, f"an address, not {said.read_text()!r}")
        until(lambda: process.poll() is None and "Living world" in got(f"http://127.0.0.1:{port}/"), "a page")
        yield f"http://127.0.0.1:{port}", process, said
    finally:
        process.terminate()
        process.wait(PATIENCE)


def got(address: str) -> str:
    try:
        with urllib.request.urlopen(address, timeout=PATIENCE) as answer:
            return answer.read().decode()
    except OSError:
        return ""


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_the_server_ends_quietly(running: tuple[str, subprocess.Popen[bytes], Path], number: signal.Signals) -> None:
    _, process, said = running
    process.send_signal(number)
    assert 0 == process.wait(PATIENCE)
    lines = said.read_text("utf-8").splitlines()
    assert [] == [line for line in lines if not re.match(r"Making the site; |The whole site in |Preview at http://127\.0\.0\.1:\d+/ \(Ctrl-C|\d pages? in |$", line)]


def hide(notice: Locator) -> None:
    """Press the notice's button; again if a late reload of the page has opened it anew."""
    for _ in range(20):
        if not notice.is_visible():
            return
        notice.get_by_role("button", name="Hide until the next save").press("Enter")
        notice.page.wait_for_timeout(500)


def hidden_by(notice: Locator) -> list[str]:
    """What the notice covers of the page's head and title, on a wide window and on a phone's."""
    covered = []
    for width in (1280, 390):
        notice.page.set_viewport_size({"width": width, "height": 800})
        notice.page.wait_for_timeout(300)
        bottom = notice.evaluate("notice => notice.getBoundingClientRect().bottom")
        for name in (".md-header", "h1"):
            if notice.page.locator(name).first.evaluate("one => one.getBoundingClientRect().top") < bottom:
                covered.append(f"{name} at {width} px")
    return covered


@pytest.mark.browser
def test_a_reader_sees_a_save_an_error_and_the_mended_page_without_reloading(
    running: tuple[str, subprocess.Popen[bytes], Path], project: Path, browser: Browser
) -> None:
    address, _, said = running
    context = browser.new_context()
    try:
        shown = context.new_page()
        shown.goto(f"{address}/{SHOWN}")
        save(project, RAIN, MORE_RAIN)
        expect(shown.get_by_text("337\u00a0mm").first).to_be_attached(timeout=1000 * PATIENCE)
        save(project, MORE_RAIN, WRONG)
        notice = shown.get_by_role("dialog", name="What is wrong")
        expect(notice).to_contain_text('temperate_grassland.yaml:20:46: stations[0].monthly_precip[6] (July)', timeout=1000 * PATIENCE)
        expect(shown.get_by_text("337\u00a0mm").first).to_be_attached()
        assert [] == hidden_by(notice)
        hide(notice)
        expect(notice).to_be_hidden()
        save(project, WRONG, RAIN)
        expect(shown.get_by_text("327\u00a0mm").first).to_be_attached(timeout=1000 * PATIENCE)
        expect(notice).to_have_count(0)
    finally:
        context.close()
    assert 'found the text "wet"' in said.read_text("utf-8")
