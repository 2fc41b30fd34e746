"""A topic in one file: what goes in, what its links become, and what is left out."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from generator.publish.handout import PageMissing, Topic, by_system, handout
from generator.publish.site import build_site

PAGES = ("topics/biomes.html", "biome/temperate-grassland.html")


def topic(*pages: str) -> Topic:
    return Topic(name="biomes", course="Living world", title="Biomes & climate", pages=pages)


@pytest.fixture
def site(project: Path) -> Path:
    return build_site(project).site


def parsed(html: str) -> BeautifulSoup:
    return BeautifulSoup(html, "html.parser")


def add(site: Path, page: str, html: str) -> None:
    """More in the article of a page of the site."""
    file = site / page
    file.write_text(file.read_text("utf-8").replace("</article>", f"{html}</article>"), "utf-8")


def test_pages_follow_each_other_and_the_contents_name_them(site: Path) -> None:
    whole = parsed(handout(site, topic(*PAGES)))
    assert ["Biomes and climate", "Temperate grassland"] == [head.get_text() for head in whole.select("main > article > h1")]
    assert ["#topics-biomes", "#biome-temperate-grassland"] == [link["href"] for link in whole.select("nav a")]
    assert "Biomes & climate - Living world" == whole.title.get_text()


def test_links_lead_within_the_file_or_are_text(site: Path) -> None:
    whole = parsed(handout(site, topic(*PAGES)))
    assert "#biome-temperate-grassland" == whole.select_one("#topics-biomes li a")["href"]
    assert "See the nitrogen cycle." in whole.select_one("#biome-temperate-grassland").get_text()
    ids = [element["id"] for element in whole.select("[id]")]
    assert len(ids) == len(set(ids))
    assert {link["href"][1:] for link in whole.select("a[href]")} <= set(ids)


def test_a_link_into_another_page_of_the_file_keeps_its_place(site: Path) -> None:
    whole = parsed(handout(site, topic(*PAGES, "cycle/wend-hollow-nitrogen.html")))
    (link,) = (link for link in whole.select("#biome-temperate-grassland a") if link.get_text() == "nitrogen cycle")
    assert "#cycle-wend-hollow-nitrogen--forms" == link["href"]
    assert "Forms" == whole.find(id=link["href"][1:]).get_text()


def test_the_same_id_on_two_pages_is_kept_apart_with_all_that_name_it(site: Path) -> None:
    field = '<label for="a">A</label><input id="a" aria-describedby="a b"><span id="b" style="fill: url(#b)"></span>'
    for page in PAGES:
        add(site, page, field)
    whole = parsed(handout(site, topic(*PAGES)))
    for page in ("topics-biomes", "biome-temperate-grassland"):
        article = whole.select_one(f"#{page}")
        assert f"{page}--a" == article.select_one("input[aria-describedby]")["id"] == article.select_one("label[for]")["for"]
        assert f"{page}--a {page}--b" == article.select_one("input[aria-describedby]")["aria-describedby"]
        assert f"url(#{page}--b)" in article.select_one("span[style]")["style"]


def test_an_address_on_the_web_stays_to_be_typed(site: Path) -> None:
    add(site, PAGES[0], '<p><a href="https://example.org/x">A paper</a></p>')
    whole = handout(site, topic(*PAGES))
    assert "<p>A paper (https://example.org/x)</p>" in whole


def test_what_would_be_loaded_stands_in_the_file(site: Path) -> None:
    (site / "dot.png").write_bytes(b"\x89PNG")
    (site / "assets" / "more.js").write_text("data('</script>')\n")
    add(site, PAGES[0], '<img alt="" src="../dot.png"><self-check data-fresh="../assets/more.js"></self-check>')
    whole = handout(site, topic(*PAGES))
    assert '<img alt="" src="data:image/png;base64,iVBORw=="' in whole
    assert "data('<\\/script>')" in whole
    assert ".check { border: 1px solid currentcolor" in whole
    assert "dataset.checkReady" in whole
    assert [] == re.findall(r"<(?:script|link|img|iframe)[^>]*(?:src|href)=\"(?!data:)[^\"]*", whole)


def test_the_themes_own_scripts_and_styles_stay_behind(site: Path) -> None:
    whole = handout(site, topic(*PAGES))
    assert [] == [word for word in ("__md_scope", "md-search__inner", "sourceMappingURL", "__drawer=") if word in whole]


def test_of_a_page_to_look_things_up_only_what_is_named_comes_along(site: Path) -> None:
    entry = '<dt id="word-{0}">{0}</dt><dd>What {0} means.</dd>'
    (site / "words.html").write_text(f"<main><article><h1>Words</h1><dl>{entry.format('drought')}{entry.format('estuary')}</dl></article></main>", "utf-8")
    add(site, PAGES[0], '<p><a href="../words.html#word-drought">drought</a> <a href="../words.html">words</a></p>')
    whole = parsed(handout(site, topic(*PAGES)))
    assert ["drought"] == [word.get_text() for word in whole.select("#words dt")]
    assert ["What drought means."] == [word.get_text() for word in whole.select("#words dd")]
    assert ["#words--word-drought"] == [link["href"] for link in whole.select("#topics-biomes p a")]


def test_nothing_may_be_loaded_and_only_the_scripts_inside_may_run(site: Path) -> None:
    whole = handout(site, topic(*PAGES))
    found = parsed(whole).select_one('meta[http-equiv="Content-Security-Policy"]')["content"]
    directives = {part.split(" ")[0]: part.split(" ")[1:] for part in found.split("; ")}
    assert ["'none'"] == directives["default-src"]
    assert len(parsed(whole).select("script")) == len(directives["script-src"])
    assert [] == [one for one in directives["script-src"] if not one.startswith("'sha256-")]


def test_colours_follow_the_reader_and_paper_is_light() -> None:
    css = '[data-md-color-scheme="default"][data-md-color-primary] {\n a: 1 }\n[data-md-color-scheme="slate"] { a: 2 }\n@media print { body[data-md-color-scheme] { a: 3 } }'
    assert ":root {\n a: 1 }\n@media screen and (prefers-color-scheme: dark) { :root { a: 2 } }\n@media print { :root { a: 3 } }" == by_system(css)


@pytest.mark.parametrize("page", ["biome/tundra.html", "no/such.html"])
def test_a_page_that_the_site_lacks_is_told(site: Path, page: str) -> None:
    with pytest.raises(PageMissing, match=rf"expected {page} in the site, found no such file\n    mend: build the site anew"):
        handout(site, topic(*PAGES, page))


def test_the_same_site_gives_the_same_bytes(site: Path) -> None:
    assert handout(site, topic(*PAGES)) == handout(site, topic(*PAGES))
