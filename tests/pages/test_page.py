"""One page: its front matter, its address, and links from one page to another."""

from __future__ import annotations

import html
import posixpath

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.pages.page import Page, link, markdown_link, record_uri

TITLES = ("NO", "12", "a: b", '"quoted"', "it's", "# x", "- y", "NH4+", "line\nline", "true", "\\", "ä–µ", "a & b", "<b>")


@pytest.mark.parametrize("title", TITLES)
def test_title_comes_back_out_of_the_front_matter_as_html(title: str) -> None:
    """The site engine's templates put both into HTML as they are."""
    _, head, body = Page(uri="a.md", title=title, description=title, body="# A\n").text.split("---\n", 2)
    found = yaml.safe_load(head)
    assert {"title": title, "description": title} == {key: html.unescape(text) for key, text in found.items()}
    assert not set("<>\"'") & set("".join(found.values()))
    assert "\n# A\n" == body


def test_page_that_is_not_searched_says_so() -> None:
    head = Page(uri="a.md", title="A", description="", body="# A", searched=False).text.split("---\n")[1]
    assert {"title": "A", "search": {"exclude": True}} == yaml.safe_load(head)


def test_address_of_a_record() -> None:
    assert "biome/temperate-grassland.md" == record_uri("biome/temperate_grassland")


@pytest.mark.parametrize(
    ("source", "target", "address", "markdown"),
    [
        ("index.md", "biome/a.md", "biome/a.html", "biome/a.md"),
        ("biome/a.md", "index.md", "../index.html", "../index.md"),
        ("biome/a.md", "biome/b.md#x", "b.html#x", "b.md#x"),
        ("biome/a.md", "charts/a.svg", "../charts/a.svg", "../charts/a.svg"),
        ("biome/a.md", "#x", "#x", "#x"),
        ("biome/index.md", "cycle/index.md", "../cycle/index.html", "../cycle/index.md"),
    ],
)
def test_links_are_relative(source: str, target: str, address: str, markdown: str) -> None:
    assert (address, markdown) == (link(source, target), markdown_link(source, target))


PATHS = st.lists(st.sampled_from(["a", "b", "c-d"]), min_size=1, max_size=4).map(lambda parts: "/".join(parts) + ".md")


@given(PATHS, PATHS)
def test_every_link_leads_to_its_target(source: str, target: str) -> None:
    assert target == posixpath.normpath(posixpath.join(posixpath.dirname(source), markdown_link(source, target)))
