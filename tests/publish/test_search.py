"""The search finds formulas by what people type, and never what is marked as not to be found."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.pages.search_notes import SearchNotes
from generator.publish.finding import FIELDS
from generator.publish.search import cells_apart, flattened, put_back, set_aside, write_offline_search


@pytest.mark.parametrize(
    ("written", "found"),
    [
        ("CO<sub>2</sub>", "CO2"),
        ("N₂O", "N2O"),
        ("NO<sub>3</sub><sup>−</sup>", "NO3−"),
        ("NH₄⁺", "NH4+"),
        ("kg m⁻² yr⁻¹", "kg m-2 yr-1"),
        ("10<sup>6</sup> m²", "106 m2"),
        ("<p>a <code>b</code></p>", "<p>a <code>b</code></p>"),
    ],
)
def test_formulas_become_one_word(written: str, found: str) -> None:
    assert {"location": "a.html#CO₂", "title": found, "text": found} == flattened(
        {"location": "a.html#CO₂", "title": written, "text": written}
    )


def test_cells_that_touch_are_set_apart() -> None:
    assert (
        "<table><caption>c</caption>\n<tr><th>a</th>\n<td>b <b>c</b></td>\n</tr></table>"
        == cells_apart("<table><caption>c</caption><tr><th>a</th><td>b <b>c</b></td></tr></table>")
    )


def test_an_excluded_element_is_set_aside_with_all_that_it_holds() -> None:
    # The theme's own reading stops at the first inner </div> and would index "327".
    html = '<p>before</p><div data-search-exclude><div>working</div> 327 </div><p>after</p>'
    kept, parts = set_aside(html)
    assert "<p>before</p><!--set aside 0--><p>after</p>" == kept
    assert ("<div data-search-exclude><div>working</div> 327 </div>",) == parts


def test_an_excluded_element_inside_another_goes_with_it() -> None:
    html = "<div data-search-exclude>a<p data-search-exclude>b</p>c</div>d"
    assert ("<!--set aside 0-->d", ("<div data-search-exclude>a<p data-search-exclude>b</p>c</div>",)) == set_aside(html)


def test_places_are_found_over_several_lines_and_entities() -> None:
    html = 'a &amp; b\n\n<figure class="chart"\n data-search-exclude>\n<img src="x.svg" alt="a > b">\n</figure>\nend'
    kept, parts = set_aside(html)
    assert "a &amp; b\n\n<!--set aside 0-->\nend" == kept
    assert html == put_back(kept, parts)


def test_an_element_without_an_end_can_be_marked() -> None:
    assert ('<input data-search-exclude><p>a</p>', ()) == set_aside('<input data-search-exclude><p>a</p>')


def test_an_excluded_element_that_is_never_closed_is_told() -> None:
    with pytest.raises(ValueError, match="expected </div>"):
        set_aside("<p>a</p><div data-search-exclude><p>answer</p>")


ELEMENTS = st.recursive(
    st.sampled_from(["text", "327", "<br>", "<input>", "\n", "&lt;", "ü"]),
    lambda inner: st.builds(
        lambda tag, mark, parts: f"<{tag}{mark}>{''.join(parts)}</{tag}>",
        st.sampled_from(["div", "p", "details"]),
        st.sampled_from(["", " data-search-exclude", ' class="a"']),
        st.lists(inner, max_size=4),
    ),
    max_leaves=25,
)


@given(st.lists(ELEMENTS, max_size=5).map("".join))
def test_what_is_set_aside_can_be_put_back(html: str) -> None:
    kept, parts = set_aside(html)
    assert "data-search-exclude" not in kept
    assert html == put_back(kept, parts)


def site(folder: Path, *workers: str) -> Path:
    (folder / "search").mkdir(parents=True)
    (folder / "assets" / "javascripts" / "workers").mkdir(parents=True)
    entry = {"location": "a.html", "title": "N₂O", "text": "</script>"}
    (folder / "search" / "search_index.json").write_text(json.dumps({"config": {}, "docs": [entry]}), "utf-8")
    for name in workers:
        (folder / "assets" / "javascripts" / "workers" / name).write_text("let a = '</script>'\n", "utf-8")
    return folder


def test_index_and_engine_are_written_as_scripts(tmp_path: Path) -> None:
    write_offline_search(site(tmp_path, "search.0a.min.js"), SearchNotes(sorts={}))
    script = (tmp_path / "search" / "search_index.js").read_text("utf-8")
    assert "N2O" == json.loads(script.removeprefix("var __index = "))["docs"][0]["title"]
    engine = (tmp_path / "assets" / "search-engine.js").read_text("utf-8")
    assert "window.SEARCH_ENGINE = \"let a = '<\\/script>'\\n\"" == engine


def test_what_the_theme_fetches_with_every_page_holds_no_entries(tmp_path: Path) -> None:
    write_offline_search(site(tmp_path, "search.0a.min.js"), SearchNotes(sorts={}))
    fetched = json.loads((tmp_path / "search" / "search_index.json").read_text("utf-8"))
    assert [] == fetched["docs"] and FIELDS == fetched["config"]["fields"]
    assert [] == list(tmp_path.glob("assets/javascripts/workers/*"))


@pytest.mark.parametrize("workers", [(), ("search.0a.min.js", "search.0b.min.js")])
def test_a_theme_without_its_one_worker_is_told(tmp_path: Path, workers: tuple[str, ...]) -> None:
    with pytest.raises(LookupError, match="one search worker of the theme"):
        write_offline_search(site(tmp_path, *workers), SearchNotes(sorts={}))
