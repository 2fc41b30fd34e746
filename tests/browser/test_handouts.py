"""A topic's file as a student gets it: alone in a folder, on a phone, without a network."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from generator.publish.handouts import write_handouts
from tests.browser.conftest import ROOT
from tests.browser.test_every_page import OPEN_ALL
from tests.browser.watch import Watch, violations

pytestmark = pytest.mark.browser
PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True, "offline": True}
LARGEST = 3_000_000
"""Bytes that a messenger still takes without a thought."""


@pytest.fixture(scope="session")
def given(built_site: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The file of each topic by its name."""
    files = write_handouts(ROOT / "content", built_site, tmp_path_factory.mktemp("handouts"))
    return {one.path.stem: one.path for one in files}


@pytest.fixture
def on_a_phone(given: dict[str, Path], tmp_path: Path, watched: Callable[..., Watch]) -> Iterator[Callable[..., Page]]:
    """Open the lone copy of a file; in the end nothing may have been asked for or complained of."""
    watches = []

    def open_file(name: str, **settings: object) -> Page:
        shutil.copy(given[name], tmp_path)
        watches.append(watched(f"{tmp_path.as_uri()}/{name}.html", **PHONE, **settings))
        watches[-1].page.goto(f"{tmp_path.as_uri()}/{name}.html")
        return watches[-1].page

    yield open_file
    for watch in watches:
        assert [] == watch.complaints
        assert [] == [url for url in watch.strangers if not url.endswith(".html")]


def test_every_topic_has_a_file_small_enough_to_send(given: dict[str, Path]) -> None:
    assert ["answering", "biomes", "cycles", "energy", "waters"] == sorted(given)
    assert {} == {name: size for name, path in given.items() if (size := path.stat().st_size) > LARGEST}


@pytest.mark.parametrize("name", ["answering", "biomes", "cycles", "energy", "waters"])
def test_a_file_opens_at_its_top_and_every_link_and_id_is_sound(on_a_phone: Callable[..., Page], name: str) -> None:
    page = on_a_phone(name)
    expect(page.get_by_role("navigation", name="Contents")).to_be_in_viewport()
    assert 0 == page.evaluate("scrollY")
    ids = page.evaluate("[...document.querySelectorAll('[id]')].map(one => one.id)")
    assert len(ids) > 10
    assert [] == sorted(one for one in set(ids) if ids.count(one) > 1)
    links = page.evaluate("[...document.querySelectorAll('a[href]')].map(one => decodeURIComponent(one.getAttribute('href')))")
    assert [] == [link for link in links if not link.startswith("#") or link[1:] not in ids]


@pytest.mark.parametrize("name", ["answering", "biomes", "cycles", "energy", "waters"])
def test_no_file_is_wider_than_a_phone_with_everything_open(on_a_phone: Callable[..., Page], name: str) -> None:
    page = on_a_phone(name)
    page.evaluate(OPEN_ALL)
    assert 390 == page.evaluate("document.documentElement.scrollWidth")


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", ["answering", "waters"])
def test_axe_finds_nothing_with_every_answer_open(on_a_phone: Callable[..., Page], name: str, scheme: str) -> None:
    page = on_a_phone(name, color_scheme=scheme)
    page.evaluate(OPEN_ALL)
    assert [] == violations(page)


@pytest.mark.parametrize(("scheme", "water"), [("light", "rgb(89, 117, 255)"), ("dark", "rgb(76, 112, 250)")])
def test_a_chart_is_seen_in_the_colours_of_the_readers_system(on_a_phone: Callable[..., Page], scheme: str, water: str) -> None:
    page = on_a_phone("biomes", color_scheme=scheme)
    page.get_by_role("navigation", name="Contents").get_by_role("link", name="Tropical savanna").tap()
    chart = page.locator("#biome-savanna figure.chart svg:visible").first
    expect(chart).to_be_in_viewport()
    assert water == chart.locator('[data-part="precipitation"]').evaluate("line => getComputedStyle(line).stroke")


def test_a_question_is_answered_and_asked_again_with_fresh_numbers(on_a_phone: Callable[..., Page]) -> None:
    page = on_a_phone("biomes")
    question = page.locator("self-check[data-type=number]").filter(has=page.get_by_role("button", name="Another one")).first
    asked = question.locator("legend").text_content()
    right = question.locator(".feedback > li[data-right=true]").first
    question.locator("input[type=text]").fill(f"{right.get_attribute('data-low')} {question.locator('input[type=text]').get_attribute('data-unit')}")
    question.get_by_role("button", name="Check").tap()
    expect(question.locator("output")).to_contain_text("✓ Right.")
    question.get_by_role("button", name="Another one").tap()
    expect(question.locator("legend")).not_to_have_text(asked)


def test_words_are_covered_and_looked_at(on_a_phone: Callable[..., Page]) -> None:
    page = on_a_phone("waters")
    words = page.locator("cover-words").first
    words.get_by_role("button", name="Cover the meanings").tap()
    cell = words.locator("tbody tr").first.locator("td").last
    expect(cell.locator(".held")).to_be_hidden()
    cell.get_by_role("button").tap()
    expect(cell.locator(".held")).to_be_visible()


def test_a_written_question_takes_words_gives_hints_and_keeps_to_itself(on_a_phone: Callable[..., Page]) -> None:
    page = on_a_phone("biomes")
    parts = page.locator("written-part:has(textarea):has-text('Hints on my words')")
    assert parts.count() > 1
    parts.nth(0).locator("textarea").fill("It changes a lot because of the pollution.")
    parts.nth(0).get_by_role("button", name="Hints on my words").tap()
    expect(parts.nth(0).locator(".hints-told li").first).to_be_visible()
    expect(parts.nth(1).locator("textarea")).to_have_value("")


def test_a_sheet_to_hand_in_is_printed_alone(on_a_phone: Callable[..., Page]) -> None:
    page = on_a_phone("waters")
    page.evaluate("window.print = () => {}")
    page.get_by_role("button", name="Print my sheet").first.tap()
    page.emulate_media(media="print")
    expect(page.get_by_label("Sheet to hand in")).to_be_visible()
    expect(page.locator("main > article:visible")).to_have_count(1)
    expect(page.get_by_role("navigation", name="Contents")).to_be_hidden()


def test_without_scripts_everything_is_there_to_read(on_a_phone: Callable[..., Page]) -> None:
    page = on_a_phone("waters", java_script_enabled=False)
    expect(page.locator("self-check details.answer").first).to_be_visible()
    expect(page.locator("figure.chart svg").filter(visible=True).first).to_be_visible()
