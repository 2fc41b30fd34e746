"""A small made-up record of each kind, and the page that it must give, byte for byte.

`pytest tests/golden --update-golden` writes the pages anew; the difference is to be read before it is kept.
"""

from __future__ import annotations

import difflib
import shutil
from pathlib import Path

import pytest

from generator.build import check, compose
from generator.kinds import all_kinds
from generator.pages.page import record_uri
from generator.pages.site import Site
from tests.conventions.project import ROOT

HERE = Path(__file__).parent


def page(kind: str, folder: Path) -> str:
    """The Markdown of the kind's golden record, alone in a course."""
    content = folder / "content"
    (content / kind).mkdir(parents=True)
    shutil.copy(HERE / kind / "record.yaml", content / kind / "record.yaml")
    (content / "course.yaml").write_text((HERE / "course.yaml").read_text("utf-8").replace("KIND", kind), "utf-8")
    shutil.copy(HERE / "vocabulary.yaml", content)
    for shared in ("misconceptions.yaml", "sources.yaml"):  # what generated questions and usual ranges name must be there
        shutil.copy(ROOT / "content" / shared, content)
    site = Site(library=check(content), kinds=all_kinds())
    assert () == site.library.warnings
    (found,) = [made for made in compose(site) if made.uri == record_uri(f"{kind}/record")]
    return found.text


@pytest.mark.parametrize("kind", list(all_kinds()))
def test_page_is_as_it_was(kind: str, tmp_path: Path, request: pytest.FixtureRequest) -> None:
    golden = HERE / kind / "page.md"
    made = page(kind, tmp_path)
    if request.config.getoption("--update-golden"):
        golden.write_bytes(made.encode())
    expected = golden.read_bytes().decode() if golden.is_file() else ""
    difference = difflib.unified_diff(expected.splitlines(), made.splitlines(), "golden page", "page now", lineterm="", n=1)
    assert expected == made, "\n".join(["the page has changed; if that is meant, run with --update-golden", *difference])


@pytest.mark.parametrize("kind", list(all_kinds()))
def test_golden_page_holds_nothing_that_differs_between_runs(kind: str, tmp_path: Path) -> None:
    assert page(kind, tmp_path / "one") == page(kind, tmp_path / "two")
