"""The contact sheet: one page of each type on a phone, on a laptop and on paper, light and dark, in one HTML file to look through.

    python -m tests.contact_sheet site/ contact/            every type
    python -m tests.contact_sheet site/ contact/ biome      only addresses that hold this word
    python -m tests.contact_sheet site/ contact/ --each 2   two pages of each type

Chromium is found on the path or named by CHROMIUM. Nothing is judged: people look.
"""

from __future__ import annotations

import argparse
import html
import os
import shutil
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

SCREENS = {"phone": {"width": 390, "height": 844}, "laptop": {"width": 1366, "height": 768}, "print": {"width": 794, "height": 1123}}
_LISTS = ("index.html", "compared.html", "command-words.html", "on-one-page.html")
TALLEST = 6000
"""Pixels of a page that are shown; what follows repeats the same elements."""


def page_types(site: Path, each: int = 1) -> Iterator[str]:
    """Addresses for each type: the pages at the top, and of each folder the first pages, `each` of them, and its lists."""
    taken: Counter[Path] = Counter()
    for path in sorted(site.rglob("*.html")):
        found = path.relative_to(site)
        is_list = found.parent == Path() or found.name in _LISTS
        if is_list or taken[found.parent] < each:
            yield found.as_posix()
        taken[found.parent] += not is_list


def shots(browser: Browser, site: Path, address: str, out: Path) -> Iterator[tuple[str, str]]:
    """A picture of each screen and scheme: its caption and its file's name."""
    for screen, size in SCREENS.items():
        for scheme in ("light", "dark"):
            context = browser.new_context(viewport=size, color_scheme=scheme, reduced_motion="reduce")  # a whole page is taken at once: nothing may still be on its way
            page = context.new_page()
            page.goto((site / address).absolute().as_uri(), wait_until="load")
            if screen == "print":
                page.emulate_media(media="print", color_scheme=scheme)
                page.evaluate("dispatchEvent(new Event('beforeprint'))")  # or what is folded stays shut, which a printer opens
                page.wait_for_timeout(300)
            height = min(page.evaluate("document.documentElement.scrollHeight"), TALLEST)
            name = f"{address.removesuffix('.html').replace('/', '-')}.{screen}.{scheme}.png"
            page.screenshot(path=out / name, clip={"x": 0, "y": 0, "width": size["width"], "height": height}, full_page=True)
            context.close()
            yield f"{screen}, {scheme}", name


def main() -> None:
    """Take all pictures and write the sheet."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("site", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("only", nargs="?", default="")
    parser.add_argument("--each", type=int, default=1)
    asked = parser.parse_args()
    asked.out.mkdir(parents=True, exist_ok=True)
    program = os.environ.get("CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")
    if program is None:
        raise SystemExit("no Chromium found: set CHROMIUM to its path")
    rows = []
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=["--no-sandbox"])
        for address in page_types(asked.site, asked.each):
            if asked.only in address:
                cells = "".join(
                    f'<td><a href="{html.escape(name)}"><img src="{html.escape(name)}" loading="lazy" alt=""></a><br>{caption}</td>'
                    for caption, name in shots(browser, asked.site, address, asked.out)
                )
                rows.append(f"<tr><th>{html.escape(address)}</th>{cells}</tr>")
                print(address, flush=True)
        browser.close()
    style = "img{width:220px;border:1px solid #999}td{vertical-align:top;font:12px sans-serif}th{font:12px monospace;text-align:left}"
    (asked.out / "index.html").write_text(f"<!doctype html><title>Contact sheet</title><style>{style}</style><table>{''.join(rows)}</table>\n", "utf-8")
    print(f"{len(rows)} page types: open {asked.out / 'index.html'}")


if __name__ == "__main__":
    main()
