"""Pages made light: few files, scripts where they have something to do, no indents, and nothing that is shown changes."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.pages.asset_files import assets
from generator.publish.site import build_site
from generator.publish.weight import ONLY_WITH, SCRIPTS, STYLES, joined_scripts, joined_styles, without_idle_scripts, without_indents

LOADED = "".join(f'\n<script src="../{uri}" defer></script>' for uri in (SCRIPTS, *ONLY_WITH))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for path, content in assets().items():
        (tmp_path / Path(path).name).write_bytes(content)
    return tmp_path


def test_every_script_is_in_one_file_behind_those_that_it_builds_on(folder: Path) -> None:
    joined = joined_scripts(folder, "first()")
    whole = "".join(joined.values())
    assert [1] * len(list(folder.glob("*.js"))) == [whole.count(file.read_text("utf-8")) for file in folder.glob("*.js")]
    assert joined[SCRIPTS].startswith("first()\n;" + (folder / "base.js").read_text("utf-8"))


def test_an_element_stands_among_those_whose_pages_load_its_script(folder: Path) -> None:
    """A script that defines no element of its own would otherwise be missed on a page that needs it."""
    for uri, source in joined_scripts(folder).items():
        if uri in ONLY_WITH:
            assert set(re.findall(r"customElements\.define\('([\w-]+)'", source)) == set(ONLY_WITH[uri])


def test_styles_follow_in_the_order_of_their_names_behind_others(folder: Path) -> None:
    names = sorted(folder.glob("*.css"))
    assert "a {}\n" + "\n".join(file.read_text("utf-8") for file in names) == joined_styles(folder, "a {}")


@pytest.mark.parametrize(("content", "kept"), [
    ("<p>Text</p>", [SCRIPTS]),
    ("<self-check></self-check>", [SCRIPTS]),
    ('<practice-due data-x="1"></practice-due>', [SCRIPTS, "assets/practice.js"]),
    ("<written-sheet></written-sheet>", [SCRIPTS, "assets/written.js"]),
])  # fmt: skip
def test_a_page_loads_only_scripts_that_have_something_to_do(content: str, kept: list[str]) -> None:
    assert kept == [uri.removeprefix("../") for uri in re.findall('src="([^"]+)"', without_idle_scripts(content + LOADED))]


def test_scripts_that_are_loaded_in_another_way_are_told() -> None:
    with pytest.raises(LookupError, match="expected one <script> for assets/practice.js in the page, found 0"):
        without_idle_scripts(f"<written-part></written-part>{LOADED.replace(' defer', '')}")


def test_lines_begin_at_the_margin_and_none_is_blank() -> None:
    assert "<ul>\n<li>a b\n</li>\n</ul>" == without_indents("<ul>\n\n    <li>a b  \n  </li>\r\n\t\n</ul>")


def test_white_space_that_is_shown_stays() -> None:
    shown = "<pre>\n  a\n\n  b</pre><textarea>\n  c</textarea><script>\n  d\n</script><p>e\n\N{NO-BREAK SPACE}f</p>"
    assert shown == without_indents(shown)


def test_a_site_has_one_file_of_styles_and_names_it_on_every_page(project: Path) -> None:
    site = build_site(project).site
    pages = list(site.rglob("*.html"))
    assert {STYLES, SCRIPTS, *ONLY_WITH} <= {file.relative_to(site).as_posix() for file in site.rglob("*") if file.suffix in (".css", ".js")}
    assert not list(site.glob("assets/study*"))
    assert all(page.read_text("utf-8").count(f'{STYLES}">') == 1 for page in pages)


def test_drawings_in_whose_place_stand_words_are_left_out_of_the_pages(project: Path) -> None:
    pages = [page.read_text("utf-8") for page in build_site(project).site.rglob("*.html")]
    places = [re.findall(r'<label class="md-header__button md-icon"[^>]*>(.*?)</label>', page, re.DOTALL) for page in pages]
    assert pages and all(len(found) == 4 and not "".join(found).strip() for found in places)
