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

from playwright.sync_api import Page, sync_playwright

ROOT = Path(__file__).parents[2]
RECORD, SHOWN = "biome/temperate_grassland.yaml", "biome/temperate-grassland.html"
RAIN = re.compile(r"(monthly_precip: \[12, 10, 16, 26, 48, 66, )(\d+)")
TITLE = re.compile(r"(\ntitle: )(.*)")
JULY_OF_0 = 285
"""The annual precipitation [mm] if no rain fell in July."""
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


def until(page: Page, since: float) -> float:
    """Seconds from a moment until the wanted text was shown in the page, which reloads itself meanwhile."""
    page.wait_for_function("localStorage.shown", timeout=60_000, polling=50)
    return float(page.evaluate("localStorage.shown")) / 1000 - since


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
                    ("a month's rain", RAIN, str(50 + turn), f"{JULY_OF_0 + 50 + turn}\u00a0mm"),
                    ("a title", TITLE, f"Grassland {turn}", f"Grassland {turn}"),
                ):
                    page.wait_for_timeout(1000 * REST)
                    page.evaluate("wanted => { localStorage.clear(); localStorage.wanted = wanted }", text)
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
