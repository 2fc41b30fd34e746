"""What is written stays: after a reload, in another tab, where nothing can be kept; a clock, one part at a time, a sheet to hand in."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.watch import Watch
from tests.browser.written_questions import PLAIN, TEXT, guide_of, open_, part
from tests.kinds.small_records import library

pytestmark = pytest.mark.browser
REFUSED = "for (const name of ['getItem', 'setItem', 'removeItem']) Storage.prototype[name] = () => { throw new Error('refused') }"
FULL = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError') }"


def test_what_is_written_and_ticked_is_there_after_a_reload(built_site: Path, opened: Callable[..., Page]) -> None:
    page, guide = opened(f"{built_site.as_uri()}/{PLAIN}"), guide_of("plain_without_trees", "c")
    part(page, "c").get_by_label("Your answer").fill(TEXT)
    open_(part(page, "c"), "Marking guide")
    part(page, "c").locator(".guide").get_by_label(guide.lines[0].says).check()
    page.reload()
    expect(part(page, "c").get_by_label("Your answer")).to_have_value(TEXT)
    open_(part(page, "c"), "Marking guide")
    expect(part(page, "c").locator(".guide").get_by_label(guide.lines[0].says)).to_be_checked()
    expect(part(page, "c").locator(".guide").get_by_label(guide.lines[1].says)).not_to_be_checked()
    expect(part(page, "c").locator(".own-words")).to_have_text(TEXT)


@pytest.mark.parametrize("trouble", [REFUSED, FULL], ids=["refused", "full"])
def test_where_nothing_can_be_kept_the_page_says_so_and_loses_nothing(
    built_site: Path, opened: Callable[..., Page], trouble: str
) -> None:
    """The theme complains of storage that is refused; nothing of ours may."""
    page, complaints = opened("about:blank"), list[str]()
    page.on("pageerror", lambda error: complaints.append(error.stack or str(error)))
    page.add_init_script(trouble)
    page.goto(f"{built_site.as_uri()}/{PLAIN}")
    block = part(page, "c")
    block.get_by_label("Your answer").fill(TEXT)
    block.get_by_label("Your answer").blur()
    expect(block.get_by_text("This browser keeps nothing, or its room is full")).to_be_visible()
    expect(block.get_by_label("Your answer")).to_have_value(TEXT)
    with page.expect_download() as download:
        page.get_by_role("button", name="Save my sheet as a file").click()
    assert TEXT in Path(download.value.path()).read_text("utf-8")
    asked: list[str] = []
    page.on("dialog", lambda dialog: (asked.append(dialog.type), dialog.accept()))
    page.evaluate("location.href = 'index.html'")
    page.wait_for_url("**/written/index.html")
    assert ["beforeunload"] == asked
    assert [] == [one for one in complaints if "assets/javascripts/" not in one and "__md_" not in one]


def test_two_tabs_of_one_question_overwrite_nothing(built_site: Path, served: Callable[[Path], str], opened: Callable[..., Page]) -> None:
    first = opened(f"{served(built_site)}/{PLAIN}")
    second = first.context.new_page()
    second.goto(first.url)
    for page, name in ((first, "c"), (second, "d")):
        part(page, name).locator("textarea").fill(f"text of {name}")
        part(page, name).locator("textarea").blur()
    third = first.context.new_page()
    third.goto(first.url)
    expect(part(third, "c").locator("textarea")).to_have_value("text of c")
    expect(part(third, "d").locator("textarea")).to_have_value("text of d")


def test_forgetting_everything_forgets_drafts_and_a_file_carries_them(built_site: Path, opened: Callable[..., Page], tmp_path: Path) -> None:
    page = opened(f"{built_site.as_uri()}/{PLAIN}")
    part(page, "c").locator("textarea").fill(TEXT)
    page.goto(f"{built_site.as_uri()}/my-record.html")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save to a file").click()
    download.value.save_as(tmp_path / "kept.json")
    page.on("dialog", lambda dialog: dialog.accept())
    page.get_by_role("button", name="Forget everything here").click()
    page.goto(f"{built_site.as_uri()}/{PLAIN}")
    expect(part(page, "c").locator("textarea")).to_have_value("")
    page.goto(f"{built_site.as_uri()}/my-record.html")
    page.get_by_label("Bring back from a file").set_input_files(tmp_path / "kept.json")
    expect(page.get_by_text("brought back.")).to_be_visible()
    page.goto(f"{built_site.as_uri()}/{PLAIN}")
    expect(part(page, "c").locator("textarea")).to_have_value(TEXT)


@pytest.mark.parametrize("kept", [7, "x", [], {"c/text": 5, "c/ideas": "x", "clock": "soon", "c/marked": []}, None])
def test_whatever_was_kept_the_page_stands(built_site: Path, watched: Callable[..., Watch], kept: object) -> None:
    watch = watched(built_site.as_uri())
    state = json.dumps({"version": 1, "items": {}, "slips": {}, "notes": {"written/plain_without_trees": kept, "lacks": 3}})
    watch.page.add_init_script(f"localStorage.setItem('study-progress', {json.dumps(state)})")
    page = watch.open(PLAIN)
    expect(part(page, "c").locator("textarea")).to_have_value("")
    expect(page.locator(".clock")).to_have_count(1)
    assert [] == watch.complaints


def test_the_sheet_on_paper_holds_prompts_and_answers_and_nothing_else(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{PLAIN}")
    part(page, "c").locator("textarea").fill(TEXT)
    page.evaluate("window.print = () => {}")
    page.get_by_role("button", name="Print my sheet").click()
    page.emulate_media(media="print")
    shown = page.locator("article").inner_text()
    assert TEXT in shown and "Explain why few trees" in shown
    assert not re.search(r"Mark these answers|Marking guide|Accept:", shown)
    assert [guide.prompt for one in library().written if one.name == "plain_without_trees" for guide in one.guides] == page.locator(".hand-in .prompt").all_inner_texts()
    expect(page.locator(".hand-in .ruled-space").first).to_be_visible()  # a part without an answer has lines to write on
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    expect(page.locator(".hand-in")).to_have_count(0)


def test_plain_printing_shows_what_was_written_in_place_of_lines(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{PLAIN}")
    part(page, "c").locator("textarea").fill(TEXT)
    page.emulate_media(media="print")
    expect(part(page, "c").locator(".written-on-paper")).to_be_visible()
    expect(part(page, "c").locator(".ruled-space")).to_be_hidden()
    expect(part(page, "d").locator(".ruled-space")).to_be_visible()
    expect(part(page, "c").locator("textarea")).to_be_hidden()
    for help_ in page.locator("details:is(.asked, .outline, .bank, .samples, .guide)").all():
        expect(help_).to_be_hidden()


def test_the_clock_runs_only_when_started_pauses_and_closes_nothing(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened("about:blank")
    page.clock.install(time="2031-01-01T10:00:00")
    page.goto(f"{built_site.as_uri()}/{PLAIN}")
    clock = page.locator(".clock")
    expect(page.get_by_role("button", name="Back to the beginning")).to_be_hidden()
    expect(clock).to_have_text("23:00 left")
    page.clock.fast_forward("05:00")
    expect(clock).to_have_text("23:00 left")
    page.get_by_role("button", name="Start the clock").click()
    page.clock.run_for(60_000)
    expect(clock).to_have_text("22:00 left")
    page.locator("written-sheet").scroll_into_view_if_needed()
    expect(clock).to_be_in_viewport()
    page.get_by_role("button", name="Pause").click()
    expect(clock).not_to_be_in_viewport()
    page.clock.run_for(60_000)
    expect(clock).to_have_text("22:00 left")
    page.reload()
    expect(clock).to_have_text("22:00 left")
    page.get_by_role("button", name="Go on").click()
    page.clock.run_for(22 * 60_000 + 5_000)
    expect(clock).to_have_text("0:05 over the time")
    expect(page.get_by_text("The time is over. Nothing is closed")).to_be_visible()
    expect(part(page, "c").locator("textarea")).to_be_editable()


def test_one_part_at_a_time_shows_its_large_prompt_and_the_data(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{PLAIN}")
    small = page.locator("#part-a").evaluate("one => parseFloat(getComputedStyle(one).fontSize)")
    page.get_by_role("button", name="One part at a time").click()
    expect(page.locator("#part-a")).to_be_visible()
    expect(page.locator("#part-b")).to_be_hidden()
    expect(page.locator("article figure.chart").first).to_be_visible()
    assert page.locator("#part-a").evaluate("one => parseFloat(getComputedStyle(one).fontSize)") > 1.4 * small
    page.get_by_role("button", name="Next part").first.click()
    expect(page.locator("#part-b")).to_be_visible()
    expect(page.locator("#part-a")).to_be_hidden()
    assert "Part b" in page.evaluate("document.activeElement.textContent")
    page.get_by_role("button", name="Show all parts").click()
    expect(page.locator("#part-a")).to_be_visible()


def test_one_part_at_a_time_hides_all_of_the_others_and_leads_on_from_below_and_from_links(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/written/late-fires.html")
    expect(page.locator(".next-part")).to_be_hidden()
    page.get_by_role("button", name="One part at a time").click()
    expect(page.locator(".cautions")).to_have_count(2)
    assert ["a"] == page.locator(".written-prompt:visible").evaluate_all("all => all.map(one => one.dataset.part)")
    assert [False, False] == page.locator(".cautions").evaluate_all("all => all.map(one => one.checkVisibility())")
    below = page.locator(".next-part")
    below.get_by_role("button", name="Next part").click()
    expect(page.locator("#part-b")).to_be_visible()
    below.get_by_role("button", name="Part before").click()
    expect(page.locator("#part-a")).to_be_visible()
    page.evaluate("location.hash = 'part-d'")
    expect(page.locator("#part-d")).to_be_visible()
    expect(page.locator(".cautions").first).to_be_visible()
    expect(page.locator("#part-a")).to_be_hidden()
    page.emulate_media(media="print")
    assert len(page.locator(".written-prompt").all()) == page.locator(".written-prompt:visible").count()
    expect(page.locator("details.asked:visible, details.guide:visible")).to_have_count(0)


def test_a_typed_number_and_a_value_read_off_are_kept_too(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/written/oxygen-in-the-deep.html")
    guide = next(guide for one in library().written if one.name == "oxygen_in_the_deep" for guide in one.guides if guide.reading)
    block = part(page, guide.part.id)
    expect(block.locator("textarea")).to_have_count(0)
    block.locator('self-check input[type="text"]').fill("9 m")
    block.get_by_role("button", name="Check").click()
    page.reload()
    expect(block.locator('self-check input[type="text"]')).to_have_value("9 m")
    expect(block.locator('.guide [data-idea="answer"] input')).to_be_checked()
