"""A booklet before it is printed: answers at the end or nowhere; and where a print has its pages."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.publish.booklet import NotPrinted, booklet_html, bound, page_numbers
from generator.publish.site import build_site
from tests.publish.test_handout import PAGES, add, topic

CHECK = """<self-check><form><fieldset><legend><span class="check-number">Question 1.</span> Which?</legend></fieldset></form>
<div class="hints"><details class="hint"><p>Look.</p></details></div><details class="answer"><summary>Answer</summary><div><p>It is June.</p>
<ul class="feedback"><li data-right="true"><strong>June</strong>: right. <span class="says" hidden>It is June.</span></li>
<li data-right="true"><strong>Wet</strong>: right. <span class="says">54 mm fall.</span></li>
<li data-right="false"><strong>July</strong>: not right. <span class="says">It is dry.</span></li></ul></div></details></self-check>
<written-part data-part="a"><details class="samples"><p>A sample.</p></details><details class="guide"><summary>Guide</summary><div><p>One mark.</p></div></details></written-part>"""
PDF = b"""1 0 obj
<</Type /Pages /Kids [2 0 R 5 0 R] /Count 3>>
endobj
2 0 obj
<</Type /Pages /Kids [3 0 R 4 0 R]>>
endobj
3 0 obj
<</Type /Page>>
endobj
4 0 obj
<</Type /Page>>
endobj
5 0 obj
<</Type /Page>>
endobj
6 0 obj
<</first [3 0 R /XYZ 6 826 0]
/a#20b [5 0 R /XYZ 6 826 0]>>
endobj
7 0 obj
<</Length 9>> stream
8 0 obj <</Type /Catalog /Pages 3 0 R>> endobj
endstream
endobj
9 0 obj
<</Type /Catalog
/Pages 1 0 R
/Dests 6 0 R>>
endobj
"""


@pytest.fixture
def site(project: Path) -> Path:
    built = build_site(project).site
    add(built, PAGES[1], CHECK)
    return built


def test_answers_stand_at_the_end_and_nowhere_else(site: Path) -> None:
    *articles, answers = bound(site, topic(*PAGES), answers=True)
    assert ["Question 1.", "It is June.", "Part a.", "One mark."] == [line.get_text() for line in answers.select("p")]
    assert ["Wet: right. 54 mm fall."] == [line.get_text() for line in answers.select("li")]
    assert ["Temperate grassland"] == [head.get_text() for head in answers.select("h2")]
    assert [] == [word for word in ("It is June.", "One mark.", "Look.", "A sample.") for article in articles if word in article.get_text()]


def test_answers_can_be_left_out(site: Path) -> None:
    articles = bound(site, topic(*PAGES), answers=False)
    assert ["Biomes and climate", "Temperate grassland"] == [article.h1.get_text() for article in articles]
    assert [] == [article for article in articles if "It is June." in article.get_text()]


def test_computed_numbers_are_printed_where_the_answers_are(site: Path) -> None:
    told, untold = (booklet_html(topic(*PAGES), bound(site, topic(*PAGES), answers=answers), "", {}) for answers in (True, False))
    assert '<body class="booklet with-answers">' in told
    assert '<body class="booklet">' in untold


def test_each_article_has_its_running_head_whatever_its_title_holds(site: Path) -> None:
    page = site / PAGES[1]
    page.write_text(page.read_text("utf-8").replace("Temperate grassland</h1>", 'The "dry" &lt;/style> edge</h1>'), "utf-8")
    html = booklet_html(topic(*PAGES), bound(site, topic(*PAGES), answers=False), "", {"topics-biomes": 3})
    assert '@top-right { content: "The \\22 dry\\22  \\3c /style> edge" }' in html
    assert "<span>3</span>" in html


def test_pages_are_counted_through_the_tree_and_streams_are_not_read() -> None:
    # The page tree and named destinations as ISO 32000-1 (from memory) describes them; names escape with #.
    assert {"first": 1, "a b": 3} == page_numbers(PDF)


def test_a_print_that_cannot_be_counted_is_told() -> None:
    with pytest.raises(NotPrinted, match="no pages that can be counted"):
        page_numbers(b"%PDF-1.7 nothing")
