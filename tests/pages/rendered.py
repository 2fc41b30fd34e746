"""Pages as a bare Markdown parser shows them, with no site engine and no extension beyond tables."""

from __future__ import annotations

from functools import cache

from bs4 import BeautifulSoup
from markdown_it import MarkdownIt

from generator.build import compose
from generator.course.library import Library
from generator.kinds import all_kinds
from generator.pages.page import Page
from generator.pages.site import Site
from tests.kinds.small_records import library

PARSER = MarkdownIt("commonmark").enable("table")


def pages_of(of: Library) -> dict[str, Page]:
    """Every page of a library by its path."""
    return {page.uri: page for page in compose(Site(library=of, kinds=all_kinds()))}


@cache
def demo_pages() -> dict[str, Page]:
    """Every page of the project's own content by its path."""
    return pages_of(library())


def rendered(page: Page) -> BeautifulSoup:
    """The page without its front matter, parsed as Markdown and then as HTML."""
    return BeautifulSoup(PARSER.render(page.text.split("---\n", 2)[2]), "html.parser")


def plain(text: str) -> str:
    """A text without what typesetting changes: kinds of spaces, and the minus sign."""
    return " ".join(text.replace("\u2212", "-").split())


def seen(soup: BeautifulSoup) -> str:
    """All that a reader sees, as `plain` has it."""
    return plain(soup.get_text())
