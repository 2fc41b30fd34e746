"""How long a save takes until a reader sees it: `studyguide preview` of a copy of this course, its page open in Chromium.

A value is changed again and again, and the time runs from the end of writing the file until the browser has put the new
number, or the new title, into a frame; the page itself notes that moment. Figures are medians, with minimum and maximum,
beside what the program says it worked.

    python tests/benchmarks/preview_time.py            seven saves of each sort
    python tests/benchmarks/preview_time.py --saves 15
"""

from __future__ import annotations

import argparse
import os
import re
import shutil
import socket
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Error, Page, sync_playwright

ROOT = Path(__file__).parents[2]
RECORD, SHOWN = "biome/tundra.yaml", "biome/tundra.html"
RAIN = re.compile(r"(monthly_precip: \[11, 9, 9, 9, 11, 18, 36, )(\d+)")
TITLE = re.compile(r"^(title: )(.*)", re.MULTILINE)
WITHOUT_AUGUST = 188
"""The annual precipitation [mm] of all other months."""
NOTE_WHEN_SHOWN = """
const look = () => {
  const wanted = localStorage.wanted;
  if (wanted && !localStorage.shown && document.body?.textContent.includes(wanted)) localStorage.shown = Date.now();
  requestAnimationFrame(look);
};
look();
"""
REST = 4.0
"""Seconds between two saves."""


@contextmanager
def preview(project: Path) -> Iterator[tuple[str, Path]]:
    """The preview's address, and what it has printed."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    said = project / "said"
    with said.open("wb") as out:
        command = [sys.executable, "-m", "generator", "preview", "--port", str(port)]
        process = subprocess.Popen(command, cwd=project, env=os.environ | {"PYTHONPATH": str(ROOT)}, stdout=out, stderr=out)
    try:
        while b"Preview at" not in said.read_bytes():
            if process.poll() is not None:
                raise SystemExit(said.read_text("utf-8"))
            time.sleep(0.1)
        yield f"http://127.0.0.1:{port}", said
    finally:
        process.terminate()
        process.wait()


def saved(file: Path, pattern: re.Pattern[str], value: str) -> float:
    """Write a value into the file; the moment when it was written [s since 1970]."""
    file.write_text(pattern.sub(lambda found: found[1] + value, file.read_text("utf-8"), count=1), "utf-8")
    return time.time()


def evaluated(page: Page, script: str, argument: str = "") -> object:
    """What a script gives in the page; asked again where the page reloads itself just then."""
    while True:
        try:
            return page.evaluate(script, argument)
        except Error:
            page.wait_for_load_state()


def until(page: Page, since: float) -> float:
    """Seconds from a moment until the wanted text was shown in the page, which reloads itself meanwhile."""
    page.wait_for_function("localStorage.shown", timeout=60_000, polling=50)
    return float(str(evaluated(page, "() => localStorage.shown"))) / 1000 - since


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--saves", type=int, default=7)
    saves = parser.parse_args().saves
    seconds: dict[str, list[float]] = {"a month's rain": [], "a title": []}
    with tempfile.TemporaryDirectory() as name, sync_playwright() as playwright:
        project = Path(name)
        shutil.copytree(ROOT / "content", project / "content")
        shutil.copy(ROOT / "mkdocs.yml", project)
        browser = playwright.chromium.launch(executable_path=os.environ.get("CHROMIUM") or shutil.which("chromium"), args=["--no-sandbox"])
        with preview(project) as (address, said):
            page = browser.new_page()
            page.add_init_script(NOTE_WHEN_SHOWN)
            page.goto(f"{address}/{SHOWN}")
            for turn in range(saves):
                for label, pattern, value, text in (
                    ("a month's rain", RAIN, str(30 + turn), f"{WITHOUT_AUGUST + 30 + turn}\u00a0mm"),
                    ("a title", TITLE, f"Cold land {turn}", f"Cold land {turn}"),
                ):
                    page.wait_for_timeout(1000 * REST)
                    evaluated(page, "wanted => { localStorage.clear(); localStorage.wanted = wanted }", text)
                    seconds[label].append(until(page, saved(project / "content" / RECORD, pattern, value)))
            worked = re.findall(r"^(\d+ pages?|The whole site) in ([\d.]+) s", said.read_text("utf-8"), re.MULTILINE)[1:]
        browser.close()
    print(f"{'from save to shown':28}{'median s':>10}{'min':>8}{'max':>8}")
    for label, found in seconds.items():
        print(f"{label:28}{statistics.median(found):10.2f}{min(found):8.2f}{max(found):8.2f}")
    for sort, whole in (("work for single pages", False), ("work for the whole site", True)):
        found = [float(took) for what, took in worked if what.startswith("The") == whole]
        if found:
            print(f"{sort:28}{statistics.median(found):10.2f}{min(found):8.2f}{max(found):8.2f}")
    print(f"load: {', '.join(f'{one:.1f}' for one in os.getloadavg())} on {os.cpu_count()} cores")


if __name__ == "__main__":
    main()
