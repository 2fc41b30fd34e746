"""A course whose every text is full of markup: it comes out as text, in each parser, on each page."""

from __future__ import annotations

import re
import shutil
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml
from bs4 import BeautifulSoup
from markdown import Markdown

from generator.build import check
from generator.course.library import Library
from generator.kinds import all_kinds
from generator.kinds.cycle.record import Flux
from generator.pages.course_pages import navigation
from generator.pages.page import Page, record_uri
from generator.pages.site import Site
from generator.publish.site import build_site
from tests.conventions.project import ROOT
from tests.kinds.small_records import CONTENT
from tests.pages.rendered import PARSER, demo_pages, pages_of, plain

TEXT_FIELDS = {
    "title", "summary", "says", "asks", "who", "feature", "works_by", "benefit", "type", "nutrients_held_in", "why", "where", "problem",
    "effect", "do", "drawback", "name", "process", "starts_as", "ends_as", "done_by", "scene", "word", "means", "idea", "instead", "authors",
    "scenario", "hypothesis", "independent", "dependent", "what", "control", "cautions", "steps", "mend", "disturbance", "also", "question",
    "text", "caption", "rows", "ask", "answer", "because", "how", "hint", "hints", "labels", "assumes", "limits", "search_only", "example",
}  # fmt: skip
EVIL = "<script>alert(1)</script> <img src=x onerror=alert(1)> [l](javascript:alert(1)) `c` a|b *e* _e_ ~~s~~ &lt;b&gt; \"q\" 'q' <!-- "
EVIL_ELSEWHERE = {"example": "<svg onload=xss()> <em x=y> `c` a|b ~~s~~ &lt;b&gt; <!-- "}
"""In an example another markup than in its word, none of which it may hold."""
BY_WORDS = ".check, .bank"
"""Blocks whose number and length hang on words: which questions leave no doubt, which terms stand in a guide."""
RENDER = {
    "bare": PARSER.render,
    "site": lambda text: Markdown(extensions=["tables", "attr_list", "md_in_html"]).convert(text),
}

def poisoned(value: Any, field: str = "") -> Any:
    """The same content, each of its texts with markup before it."""
    if isinstance(value, dict):
        return {"on" if key is True else key: poisoned(inner, key) for key, inner in value.items()}  # YAML 1.1 reads `on` so
    if isinstance(value, list):
        return [poisoned(inner, field) for inner in value]
    return f"{EVIL_ELSEWHERE.get(field, EVIL)}{value}" if isinstance(value, str) and field in TEXT_FIELDS else value


def renamed_facts(found: Any) -> dict[str, str]:
    """Facts of a cycle whose ids follow from the name of a process, which is poisoned too: the old ids and the new ones."""
    processes = {flux["process"] for flux in found.get("fluxes", ()) if "process" in flux}
    ids = {name: [Flux.model_construct(process=text).process_id for text in (name, f"{EVIL}{name}")] for name in sorted(processes)}
    return {f"{old}.human_share": f"{new}.human_share" for old, new in ids.values()}


@pytest.fixture(scope="module")
def content(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The project's own content, poisoned."""
    folder = tmp_path_factory.mktemp("hostile") / "content"
    shutil.copytree(CONTENT, folder)
    for path in sorted(folder.rglob("*.yaml")):
        found = yaml.safe_load(path.read_text("utf-8"))
        text = yaml.safe_dump(poisoned(found), allow_unicode=True, sort_keys=False, width=10**6)
        for old, new in renamed_facts(found).items():
            text = re.sub(rf"(?<![a-z0-9_]){old}\b", new, text)
        path.write_text(text, "utf-8")
    return folder


@pytest.fixture(scope="module")
def hostile(content: Path) -> Library:
    """The same, read and checked."""
    return check(content)


@pytest.fixture(scope="module")
def pages(hostile: Library) -> dict[str, Page]:
    """Its pages."""
    return pages_of(hostile)


def soup(page: Page, parser: str) -> BeautifulSoup:
    return BeautifulSoup(RENDER[parser](page.text.split("---\n", 2)[2]), "html.parser")


@cache
def in_questions() -> frozenset[str]:
    """The elements that questions of the demo and banks of words are made of, on any page."""
    return frozenset(tag.name for page in demo_pages().values() for block in soup(page, "bare").select(BY_WORDS) for tag in block.find_all(True))


both = pytest.mark.parametrize("parser", list(RENDER))
each = pytest.mark.parametrize("uri", sorted(demo_pages()))


@both
@each
def test_no_element_and_no_attribute_comes_from_a_text(pages: dict[str, Page], uri: str, parser: str) -> None:
    """The tree has the very elements and attributes of the same page without markup in its texts."""
    harmless, ours = soup(demo_pages()[uri], parser), soup(pages[uri], parser)
    assert [] == [tag for tag in ours.find_all(True) for name in tag.attrs if name.startswith("on")]
    assert [] == [tag["href"] for tag in ours.find_all(href=True) if ":" in str(tag["href"])]
    for found in (harmless, ours):
        for word in found.select("a.word"):  # the same words stand in no text that has other signs in it
            assert {"class", "href", "data-means"} == set(word.attrs)
            word.unwrap()
        for head in found.select("h2"):  # how questions are grouped hangs on which there are
            if "Check yourself" in head.get_text():
                head.decompose()
        for block in found.select(BY_WORDS):
            assert {tag.name for tag in block.find_all(True)} <= in_questions() | {"sub", "sup"}
            block.decompose()
    before, after = ([(tag.name, sorted(tag.attrs)) for tag in found.find_all(True) if tag.name not in ("sub", "sup")] for found in (harmless, ours))
    assert set(map(str, before)) >= set(map(str, after))
    assert len(before) == len(after)


@both
@pytest.mark.parametrize("record", ["biome/temperate_grassland", "cycle/wend_hollow_nitrogen", "pyramid/sill_lake"])
def test_texts_are_seen_as_they_were_written(hostile: Library, pages: dict[str, Page], record: str, parser: str) -> None:
    found = soup(pages[record_uri(record)], parser)
    of = hostile.subjects[record].record
    text = plain(found.get_text())
    assert plain(of.title) == plain(found.h1.get_text())
    assert plain(of.summary.split("{")[0]) in text
    assert text.count(plain(EVIL)) > 10


def test_texts_reach_charts_and_questions_unchanged(hostile: Library) -> None:
    """Escaping is the pages' work alone: specs and questions hold plain text."""
    for subject in hostile.subjects.values():
        for chart in all_kinds()[subject.kind].charts(subject):
            assert "&lt;script" not in chart.description + chart.title and "&#60;" not in chart.description


def test_navigation_holds_titles_as_html(hostile: Library) -> None:
    assert "<" not in str(navigation(Site(library=hostile, kinds=all_kinds())))


def test_built_site_runs_nothing_that_a_text_says(content: Path, tmp_path: Path) -> None:
    """Titles and descriptions also pass through the site engine's own templates, and drawings come inline."""
    build_site(ROOT, content=content, out=tmp_path / "site", work=tmp_path / "work")
    pages = sorted((tmp_path / "site").rglob("*.html"))
    assert len(demo_pages()) == len(pages)
    for path in pages:
        found = BeautifulSoup(path.read_text("utf-8"), "html.parser")
        assert [] == [tag for tag in found.find_all("script") if "alert(1)" in tag.get_text() and tag.get("type") != "application/json"]
        assert [] == [tag.name for tag in found.find_all(True) for name in tag.attrs if name.startswith("on")]
        assert [] == found.find_all("img", src="x")
        assert [] == [tag["href"] for tag in found.find_all(href=True) if "javascript:" in str(tag["href"])]
