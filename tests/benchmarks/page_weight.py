"""What record pages weigh on the wire, beside the floor: a page of the same words in the theme alone.

Sites are served with gzip (level and headers: tests/browser/wire.py) and opened in Chromium, which counts what arrives,
headers and all: `first` with an empty cache, `warm` for a reader who comes from another record's page.

    python -m tests.benchmarks.page_weight site/ build/            every record page
    python -m tests.benchmarks.page_weight site/ build/ --by-file  and what weighs most in each
"""

from __future__ import annotations

import argparse
import tempfile
from pathlib import Path

from tests.benchmarks.bare_theme import bare_site, chromium, record_pages
from tests.browser.wire import LEVEL, Scales, serving, weights

HEAVIEST = 8


def other(names: list[str], name: str) -> str:
    """The page from which a reader comes: the one before it."""
    return names[names.index(name) - 1]


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("site", type=Path, help="the built site")
    parser.add_argument("work", type=Path, help="the folder of what was made on the way to it")
    parser.add_argument("only", nargs="?", default="", help="only pages whose path holds this")
    parser.add_argument("--by-file", action="store_true", help="what weighs most in each page")
    asked = parser.parse_args()
    every = [f"{name}.html" for name in record_pages(asked.site)]
    names = [name for name in every if asked.only in name]
    with chromium() as browser, serving(asked.site) as address:
        found = {name: weight for name in names for weight in weights(browser, address, [name], other(every, name)).values()}
        heaviest = max(found, key=lambda name: sum(found[name][0].values()))
        with tempfile.TemporaryDirectory() as folder:
            bare = bare_site(asked.work / "pages", heaviest.removesuffix(".html"), Path(folder))
            with serving(bare) as bare_address:
                floor = sum(Scales(browser.new_context().new_page()).weigh(f"{bare_address}/index.html").values())
    print(f"kB on the wire (gzip {LEVEL}); floor: the words of {heaviest} in the theme alone, {floor / 1000:.1f} kB")
    print(f"{'':44}{'first':>8}{'warm':>8}{'first/floor':>13}")
    for name, (first, warm) in found.items():
        all_first, all_warm = sum(first.values()), sum(warm.values())
        print(f"{name:44}{all_first / 1000:8.1f}{all_warm / 1000:8.1f}{all_first / floor:13.2f}")
        for path, size in sorted(first.items(), key=lambda item: -item[1])[: HEAVIEST if asked.by_file else 0]:
            print(f"{'':6}{path:60}{size / 1000:8.1f}{warm.get(path, 0) / 1000:8.1f}")


if __name__ == "__main__":
    main()
