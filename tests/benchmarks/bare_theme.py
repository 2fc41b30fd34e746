"""The floor for weight and speed of a page: its own words in the theme alone, and the browser that opens both."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

from tests.conftest import QUIET

SETTINGS = """\
site_name: Floor
use_directory_urls: false
theme: {name: material, font: false}
markdown_extensions: [tables, attr_list, md_in_html]
plugins: [search]
"""
"""The theme as it comes, but for fonts, which it would fetch from another host."""


def bare_site(pages: Path, name: str, folder: Path) -> Path:
    """A site of one page: the Markdown from which `name` (`biome/tundra`) was made, with its charts as pictures."""
    docs = folder / "docs"
    docs.mkdir(parents=True)
    text = (pages / f"{name}.md").read_text("utf-8")
    (docs / "index.md").write_text(text.replace("../charts/", "charts/"), "utf-8")
    for chart in sorted(set(re.findall(r"charts/[\w.-]+\.svg", text))):
        (docs / chart).parent.mkdir(exist_ok=True)
        shutil.copy(pages / chart, docs / chart)
    (folder / "mkdocs.yml").write_text(SETTINGS, "utf-8")
    command = [sys.executable, "-m", "mkdocs", "build", "-q"]
    done = subprocess.run(command, cwd=folder, env=dict(os.environ, NO_MKDOCS_2_WARNING="1"), capture_output=True, text=True, check=False)
    if done.returncode:
        raise SystemExit(f"the bare theme's site was not built:\n{done.stderr[-2000:]}")
    return folder / "site"


def record_pages(site: Path) -> list[str]:
    """The pages of all records, by kind and name, as `biome/tundra`."""
    return sorted(
        page.relative_to(site).with_suffix("").as_posix()
        for page in site.glob("*/*.html")
        if page.parent.name not in ("topics", "written") and page.name != "compared.html"
    )


@contextmanager
def chromium() -> Iterator[Browser]:
    """A headless Chromium: the one that CHROMIUM names, or the system's."""
    program = os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, ("chromium", "chromium-browser"))), None)
    if program is None:
        raise SystemExit("no Chromium found: set CHROMIUM to its path")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=list(QUIET))
        yield browser
        browser.close()
