"""Written questions in the page: samples marked and compared, drafts that stay, own marking, a clock, a sheet to hand in; no mark from the page."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect

from generator.written.guide import PartGuide
from tests.browser.watch import Watch, violations
from tests.kinds.small_records import library

pytestmark = pytest.mark.browser
PLAIN, BAY = "written/plain-without-trees.html", "written/energy-in-a-bay.html"
REFUSED = "for (const name of ['getItem', 'setItem', 'removeItem']) Storage.prototype[name] = () => { throw new Error('refused') }"
FULL = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError') }"
TEXT = "More water could evaporate than falls, so the soil dries out."


def part(page: Page, name: str) -> Locator:
    return page.locator(f'written-part[data-part="{name}"]')


def guide_of(question: str, name: str) -> PartGuide:
    return next(guide for one in library().written if one.name == question for guide in one.guides if guide.part.id == name)


def open_(block: Locator, summary: str) -> None:
    block.get_by_text(summary, exact=True).click()


def test_own_marking_of_a_sample_is_compared_with_the_teacher_s_idea_by_idea(built_site: Path, opened: Callable[..., Page]) -> None:
    block, guide = part(opened(f"{built_site.as_uri()}/{PLAIN}"), "c"), guide_of("plain_without_trees", "c")
    open_(block, "Mark these answers first")
    sample = block.locator(".sample").first
    expect(sample.locator(".teacher")).to_be_hidden()
    earns = set(guide.part.samples[0].earns)
    first, *others = guide.lines
    for line in others:
        if line.id in earns:
            sample.get_by_label(line.says).check()
    if first.id not in earns:
        sample.get_by_label(first.says).check()
    sample.get_by_role("button", name="Compare with the teacher").click()
    expect(sample.get_by_role("status")).to_contain_text(f"You and the teacher agree on {len(others)} of {len(guide.lines)} ideas.")
    expect(sample.locator('.compared [data-alike="false"]')).to_have_count(1)
    expect(sample.locator('.compared [data-alike="false"]')).to_contain_text(first.says.rstrip("."))
    expect(sample.locator(".teacher")).to_be_visible()


def test_ticking_what_the_teacher_found_gives_the_teacher_s_marks_for_every_sample(built_site: Path, opened: Callable[..., Page]) -> None:
    """The same rule of award, written once for pages and once for the script."""
    page, samples = opened(f"{built_site.as_uri()}/{PLAIN}"), 0
    for guided in library().written:
        page.goto(f"{built_site.as_uri()}/written/{guided.name.replace('_', '-')}.html")
        found: list[Any] = page.evaluate(
            """() => [...document.querySelectorAll('.sample')].map(sample => {
                const part = sample.closest('written-part')
                return [studyMarking.total(part.lines, JSON.parse(sample.dataset.earns), part.rule, part.worth), sample.querySelector('.teacher strong').textContent]
            })"""
        )
        assert [] == [(mine, teachers) for mine, teachers in found if not teachers.startswith(f"{mine} of ")]
        samples += len(found)
    assert samples >= 3 * len(library().written)


@pytest.mark.parametrize(
    ("rule", "ticked", "marks"),
    [
        ("each", ["a"], 1), ("each", ["a", "b", "c"], 2), ("any", ["c", "b"], 2), ("any", [], 0),
        ("all", ["a", "b"], 0), ("all", ["a", "b", "c"], 2), ("parts", ["b"], 1), ("each", ["unknown"], 0),
    ],
)  # fmt: skip
def test_totals_follow_the_rule_of_award(built_site: Path, opened: Callable[..., Page], rule: str, ticked: list[str], marks: int) -> None:
    """Two marks, three ideas. Common practice: no more than the part is worth; `all` gives nothing for some."""
    page = opened(f"{built_site.as_uri()}/{PLAIN}")
    lines = [{"id": name, "marks": 1} for name in "abc"]
    assert marks == page.evaluate("([lines, ticked, rule]) => studyMarking.total(lines, ticked, rule, 2)", [lines, ticked, rule])


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


def test_own_marking_is_added_up_names_what_is_missing_and_comes_back_in_practice(built_site: Path, opened: Callable[..., Page]) -> None:
    page, guide = opened(f"{built_site.as_uri()}/{PLAIN}"), guide_of("plain_without_trees", "c")
    block = part(page, "c")
    block.get_by_label("Your answer").fill(TEXT)
    open_(block, "Marking guide")
    block.get_by_role("button", name="I have marked it").click()
    expect(block.locator(".own-result")).to_contain_text(f"By your own marking: 0 of {guide.part.marks}.")
    expect(block.locator(".own-result")).to_contain_text(f"Nothing on the focus yet: {guide.part.focus}.")
    block.locator(".guide").get_by_label(guide.lines[0].says).check()
    block.get_by_role("button", name="I have marked it").click()
    expect(block.locator(".own-result")).to_contain_text(f"By your own marking: 1 of {guide.part.marks}.")
    missing = next(line.gives for line in guide.lines[1:] if line.gives)
    expect(block.locator(".own-result")).to_contain_text(f"What is missing: {missing}")
    expect(block.locator(".own-result a").first).to_be_visible()
    expect(page.locator("written-sheet")).to_contain_text("By your own marking: 1 of 3 for part c.")
    page.goto(f"{built_site.as_uri()}/my-record.html")
    expect(page.locator("practice-record")).to_contain_text("1 part marked by yourself")
    expect(page.locator("practice-record")).to_contain_text(f"{missing} (")
    page.clock.set_fixed_time("2031-01-01T10:00:00")
    page.goto(f"{built_site.as_uri()}/practice.html")
    expect(page.get_by_role("link", name="part c")).to_have_attribute("href", re.compile("written/plain-without-trees.html#part-c"))


def test_a_calculation_s_number_is_marked_by_the_page_and_its_set_up_by_the_student(built_site: Path, opened: Callable[..., Page]) -> None:
    page, guide = opened(f"{built_site.as_uri()}/{BAY}"), guide_of("energy_in_a_bay", "a")
    block, entry = part(page, "a"), guide.worked and guide.worked.entry
    assert entry
    block.get_by_label("Your set-up").fill("gross minus respired")
    block.locator('self-check input[type="text"]').fill(entry.answer)
    block.get_by_role("button", name="Check", exact=True).click()
    expect(block.locator("self-check").get_by_role("status")).to_contain_text("✓ Right.")
    open_(block, "Marking guide")
    answer, setup = block.locator('.guide [data-idea="answer"] input'), block.locator('.guide [data-idea="setup"] input')
    expect(answer).to_be_checked()
    expect(setup).not_to_be_checked()
    expect(block.locator(".own-words")).to_contain_text(entry.answer)
    block.locator('self-check input[type="text"]').fill("7 kJ/m2/yr")
    block.get_by_role("button", name="Check", exact=True).click()
    expect(answer).not_to_be_checked()


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


def test_the_clock_runs_only_when_started_pauses_and_closes_nothing(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened("about:blank")
    page.clock.install(time="2031-01-01T10:00:00")
    page.goto(f"{built_site.as_uri()}/{PLAIN}")
    open_(page.locator("details.plan"), "Plan your time")
    clock = page.locator(".clock")
    expect(clock).to_have_text("23:00 left")
    page.clock.fast_forward("05:00")
    expect(clock).to_have_text("23:00 left")
    page.get_by_role("button", name="Start the clock").click()
    page.clock.run_for(60_000)
    expect(clock).to_have_text("22:00 left")
    page.get_by_role("button", name="Pause").click()
    page.clock.run_for(60_000)
    expect(clock).to_have_text("22:00 left")
    page.reload()
    open_(page.locator("details.plan"), "Plan your time")
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
    page.get_by_role("button", name="Next part").click()
    expect(page.locator("#part-b")).to_be_visible()
    expect(page.locator("#part-a")).to_be_hidden()
    assert "Part b" in page.evaluate("document.activeElement.textContent")
    page.get_by_role("button", name="Show all parts").click()
    expect(page.locator("#part-a")).to_be_visible()


def test_everything_can_be_done_with_the_keyboard_alone(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{PLAIN}")
    block, keys = part(page, "c"), page.keyboard
    block.locator("details.samples > summary").focus()
    keys.press("Enter")
    keys.press("Tab")
    keys.press("Space")
    expect(block.locator(".sample input").first).to_be_checked()
    while page.evaluate("document.activeElement.textContent") != "Compare with the teacher":
        keys.press("Tab")
    keys.press("Enter")
    expect(block.locator(".compared").first).to_contain_text("You and the teacher agree")
    while page.evaluate("document.activeElement.tagName") != "TEXTAREA":
        keys.press("Tab")
    keys.type(TEXT)
    while page.evaluate("document.activeElement.textContent") != "Marking guide":
        keys.press("Tab")
    keys.press("Enter")
    keys.press("Tab")
    keys.press("Space")
    while page.evaluate("document.activeElement.textContent") != "I have marked it":
        keys.press("Tab")
    keys.press("Space")
    expect(block.locator(".own-result")).to_contain_text("By your own marking: 1 of 3.")


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [1200, 390, 320])
def test_nothing_is_hard_to_reach_after_marking_writing_and_asking(
    built_site: Path, opened: Callable[..., Page], scheme: str, width: int
) -> None:
    for address in (PLAIN, BAY):
        page = opened(f"{built_site.as_uri()}/{address}", color_scheme=scheme, viewport={"width": width, "height": 900})
        page.evaluate(
            """() => {
                document.querySelectorAll('article details').forEach(one => { one.open = true })
                document.querySelectorAll('.to-tick button, .guide button').forEach(one => one.click())
                document.querySelectorAll('textarea').forEach(one => {
                    one.value = 'It is a lot of rain in June.'
                    one.dispatchEvent(new Event('input', {bubbles: true}))
                })
                document.querySelectorAll('.writing button').forEach(one => one.click())
            }"""
        )
        expect(page.locator(".own-result p").first).to_be_attached()
        assert [] == violations(page)
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_the_page_judges_no_words(built_site: Path, opened: Callable[..., Page]) -> None:
    """Whatever is written and ticked, what the page says of it holds no grade, no percentage and no tick."""
    page = opened(f"{built_site.as_uri()}/{PLAIN}")
    for name in ("c", "d", "e"):
        block = part(page, name)
        block.locator("textarea").fill(TEXT)
        open_(block, "Marking guide")
        for box in block.locator(".guide input").all():
            box.check()
        block.get_by_role("button", name="I have marked it").click()
        said = block.locator(".own-result").inner_text()
        assert not re.search(r"%|✓|✗|✔|grade|correct|well done|\bright\b|\bwrong\b", said, re.IGNORECASE)


def test_without_a_script_samples_guide_and_room_to_write_stand_there(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{PLAIN}", java_script_enabled=False)
    block = part(page, "c")
    open_(block, "Mark these answers first")
    expect(block.locator(".sample blockquote").first).to_be_visible()
    open_(block, "Marking guide")
    expect(block.locator(".guide .ideas")).to_be_visible()
    expect(block.locator("textarea")).to_have_count(0)
    page.emulate_media(media="print")
    expect(block.locator(".ruled-space")).to_be_visible()
