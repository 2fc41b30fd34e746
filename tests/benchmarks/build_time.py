"""How long a build takes, beside the floor: plain MkDocs with the same theme on the same Markdown.

Every run is a fresh process; the commands take turns, so that a machine that slows down slows all of them. Figures are
medians, with minimum and maximum, and the ratio to the floor, which is what to compare between machines and versions.

    python tests/benchmarks/build_time.py            five runs of each
    python tests/benchmarks/build_time.py --runs 9
"""

from __future__ import annotations

import argparse
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).parents[2]
FLOOR = """\
site_name: Floor
docs_dir: pages
use_directory_urls: false
theme: {name: material, font: false}
markdown_extensions: [tables, attr_list, md_in_html, toc]
plugins: [search]
"""


def timed(command: list[str], folder: Path) -> float:
    """Seconds that a command takes in a folder, from start to end of its process; a failure ends the benchmark."""
    environment = dict(os.environ, NO_MKDOCS_2_WARNING="1")
    started = time.perf_counter()
    done = subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, check=False)
    if done.returncode:
        raise SystemExit(f"{' '.join(command)} ended with {done.returncode}:\n{done.stderr[-2000:]}")
    return time.perf_counter() - started


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--runs", type=int, default=5)
    runs = parser.parse_args().runs
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        studyguide = [sys.executable, "-m", "generator"]
        out, work = ["--out", str(folder / "site")], folder / "work"
        build = [*studyguide, "build", *out, "--work", str(work)]
        timed(build, ROOT)
        shutil.copytree(work / "pages", folder / "floor" / "pages")
        (folder / "floor" / "mkdocs.yml").write_text(FLOOR, "utf-8")
        commands: dict[str, Callable[[], float]] = {
            "floor: plain MkDocs": lambda: timed([sys.executable, "-m", "mkdocs", "build", "-q"], folder / "floor"),
            "build, all charts drawn anew": lambda: _cold(build, work),
            "build, nothing changed": lambda: timed(build, ROOT),
            "check": lambda: timed([*studyguide, "check"], ROOT),
            "facts of one record": lambda: timed([*studyguide, "facts", "temperate_grassland", "--json"], ROOT),
        }
        seconds: dict[str, list[float]] = {label: [] for label in commands}
        for _ in range(runs):
            for label, run in commands.items():
                seconds[label].append(run())
    floor = statistics.median(seconds["floor: plain MkDocs"])
    print(f"{'':32}{'median s':>10}{'min':>8}{'max':>8}{'ratio':>8}")
    for label, found in seconds.items():
        median = statistics.median(found)
        print(f"{label:32}{median:10.2f}{min(found):8.2f}{max(found):8.2f}{median / floor:8.2f}")


def _cold(build: list[str], work: Path) -> float:
    shutil.rmtree(work)
    return timed(build, ROOT)


if __name__ == "__main__":
    main()
