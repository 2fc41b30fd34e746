"""A booklet as Chromium prints it, read with a library of its own."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pypdfium2
import pytest
from bs4 import Tag
from playwright.sync_api import Browser

from generator.build import check
from generator.kinds import all_kinds
from generator.pages.site import Site
from generator.publish import booklet
from generator.publish.handout import Topic
from generator.publish.handouts import topics
from tests.browser.conftest import ROOT

pytestmark = pytest.mark.browser
NAME = "waters"


@pytest.fixture(scope="session")
def waters() -> Topic:
    """A topic with charts, self-check and written questions."""
    return next(one for one in topics(Site(library=check(ROOT / "content"), kinds=all_kinds())) if one.name == NAME)


@pytest.fixture(scope="session")
def program(browser: Browser) -> str:
    """The Chromium of the tests."""
    found = booklet.chromium()
    assert found
    return found


@pytest.fixture(scope="session")
def pages(built_site: Path, waters: Topic, program: str) -> list[str]:
    """The text of each page."""
    pdf = pypdfium2.PdfDocument(booklet.booklet_pdf(built_site, waters, program, answers=True))
    return [page.get_textpage().get_text_range().replace("\r\n", "\n") for page in pdf]


def test_it_begins_with_a_title_page_and_contents_whose_numbers_are_right(pages: list[str]) -> None:
    assert ["Living world", "Life in water"] == pages[0].split("\n")
    found = re.findall(r"(\D+?)\s+(\d+)(?=\s|$)", pages[1].partition("Contents")[2].partition("\n2 / ")[0])
    lines = [(re.sub(r"^[\s\d.]+", "", title).strip(), int(number)) for title, number in found]
    assert ["Life in water", "Lake", "Answers"] == [lines[0][0], lines[2][0], lines[-1][0]]
    for title, number in lines:
        assert title in pages[number - 1].split("\n"), f"{title} is not on page {number}"


def test_each_page_has_its_number_and_the_title_of_its_record_above(pages: list[str]) -> None:
    assert [] == [place for place, text in enumerate(pages[1:], start=2) if f"{place} / {len(pages)}" not in text.split("\n")]
    lake = next(place for place, text in enumerate(pages) if "Only the upper water of a deep lake" in text and place > 4)
    assert ["Life in water Lake", "Life in water Answers"] == [pages[lake + 1].split("\n")[0], pages[-1].split("\n")[0]]


def test_no_figure_question_or_row_is_split(built_site: Path, waters: Topic, program: str) -> None:
    """A place at the beginning and one at the end of each must be on the same page."""
    articles = booklet.bound(built_site, waters, answers=True)
    whole = [one for article in articles for one in article.select("figure.chart .drawing, self-check, tbody tr, .key > ul > li")]
    marks = [mark for number, one in enumerate(whole) for mark in _marked(one, number)]
    links = Tag(name="p", attrs={"hidden": ""})
    for mark in marks:
        links.append(Tag(name="a", attrs={"href": f"#{mark}"}))
    articles[-1].append(links)
    sheet = booklet.sheet(built_site, waters)
    numbers = booklet.page_numbers(booklet.printed(program, booklet.booklet_html(waters, articles, sheet, {})))
    told = [(numbers.get(first), numbers.get(last)) for first, last in list(pairwise(marks))[::2]]
    seen = [(first, last) for first, last in told if first and last]
    assert len(seen) > 100
    assert [] == [pair for pair in seen if pair[0] != pair[1]]


def _marked(one: Tag, number: int) -> tuple[str, str]:
    first, last = f"first-{number}", f"last-{number}"
    inside = (one.find(True), one.find_all(True, recursive=False)[-1]) if one.name == "tr" else None
    before, after = Tag(name="span", attrs={"id": first}), Tag(name="span", attrs={"id": last})
    if inside:
        inside[0].insert(0, before)
        inside[1].append(after)
    else:
        one.insert(0, before)
        one.append(after)
    return first, last
