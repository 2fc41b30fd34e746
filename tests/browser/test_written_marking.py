"""Written questions in the page: samples marked and compared, own marking, hints; the page gives no mark."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.browser.watch import violations
from tests.browser.written_questions import BAY, PLAIN, TEXT, guide_of, open_, part
from tests.kinds.small_records import library

pytestmark = pytest.mark.browser


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
        ("all", ["a", "b"], 0), ("all", ["a", "b", "c"], 2), ("each", ["unknown"], 0), ("parts", ["answer"], 2), ("parts", ["setup"], 1),
    ],
)  # fmt: skip
def test_totals_follow_the_rule_of_award(built_site: Path, opened: Callable[..., Page], rule: str, ticked: list[str], marks: int) -> None:
    """Two marks, three ideas. Common practice: no more than the part is worth; `all` gives nothing for some; a right answer implies its set-up."""
    page = opened(f"{built_site.as_uri()}/{PLAIN}")
    lines = [{"id": name, "marks": 1} for name in (("setup", "answer") if rule == "parts" else "abc")]
    assert marks == page.evaluate("([lines, ticked, rule]) => studyMarking.total(lines, ticked, rule, 2)", [lines, ticked, rule])


def test_own_marking_is_added_up_names_what_is_missing_and_comes_back_in_practice(built_site: Path, opened: Callable[..., Page]) -> None:
    page, guide = opened(f"{built_site.as_uri()}/{PLAIN}"), guide_of("plain_without_trees", "c")
    block = part(page, "c")
    block.get_by_label("Your answer").fill(TEXT)
    open_(block, "Marking guide")
    block.get_by_role("button", name="I have marked it").click()
    expect(block.locator(".own-result")).to_contain_text(f"By your own marking: 0 of {guide.part.marks}.")
    expect(block.locator(".own-result")).to_contain_text(f"You ticked no idea. The focus is: {guide.part.focus}.")
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


def test_own_marking_is_told_again_on_the_next_visit_and_asks_for_a_word_when_ticks_change(built_site: Path, opened: Callable[..., Page]) -> None:
    page, guide = opened(f"{built_site.as_uri()}/{PLAIN}"), guide_of("plain_without_trees", "c")
    block = part(page, "c")
    result, mark = block.locator(".own-result"), block.get_by_role("button", name="I have marked it")
    open_(block, "Marking guide")
    block.locator(".guide").get_by_label(guide.lines[0].says).check()
    expect(result).to_be_empty()
    mark.click()
    page.reload()
    expect(result).to_contain_text(f"By your own marking: 1 of {guide.part.marks}.")
    open_(block, "Marking guide")
    block.locator(".guide").get_by_label(guide.lines[1].says).check()
    expect(result).to_have_text("Your ticks have changed. Press “I have marked it” once more.")
    mark.click()
    expect(result).to_contain_text(f"By your own marking: 2 of {guide.part.marks}.")


def test_pressing_again_counts_nothing_twice_and_what_is_found_later_is_no_longer_missing(built_site: Path, opened: Callable[..., Page]) -> None:
    page, guide = opened(f"{built_site.as_uri()}/{PLAIN}"), guide_of("plain_without_trees", "c")
    block = part(page, "c")
    counted, tries = "() => studyProgress.remembered('lacks')", "() => studyProgress.item('written/plain_without_trees/c')"
    sorts = {line.gives for line in guide.lines if line.gives}
    open_(block, "Marking guide")
    for _ in range(3):
        block.get_by_role("button", name="I have marked it").click()
    assert dict.fromkeys(sorts, 1) == page.evaluate(counted)
    assert 1 == page.evaluate(tries)[2]
    for line in guide.lines:
        block.locator(".guide").get_by_label(line.says).check()
    for _ in range(2):
        block.get_by_role("button", name="I have marked it").click()
    assert dict.fromkeys(sorts, 0) == page.evaluate(counted)
    assert [1, 2] == [page.evaluate(tries)[place] for place in (0, 2)]
    page.goto(f"{built_site.as_uri()}/my-record.html")
    expect(page.locator("practice-record")).to_contain_text("1 part marked by yourself")
    expect(page.locator("practice-record")).not_to_contain_text("missing")


def test_a_right_answer_counts_for_its_set_up_as_the_guide_says(built_site: Path, opened: Callable[..., Page]) -> None:
    page, guide = opened(f"{built_site.as_uri()}/{BAY}"), guide_of("energy_in_a_bay", "a")
    assert guide.worked and any("implies the set-up" in rule for rule in guide.rules)
    block = part(page, "a")
    block.locator('self-check input[type="text"]').fill(guide.worked.entry.answer)
    block.get_by_role("button", name="Check", exact=True).click()
    open_(block, "Marking guide")
    block.get_by_role("button", name="I have marked it").click()
    expect(block.locator(".own-result")).to_contain_text(f"By your own marking: {guide.part.marks} of {guide.part.marks}.")
    expect(block.locator(".own-result")).to_contain_text("The right answer counts for the set-up too.")


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


@pytest.mark.parametrize("typed", ["about five or so", ""])
def test_the_tick_and_the_verdict_of_a_right_number_go_when_it_is_changed_and_come_back_with_it(built_site: Path, opened: Callable[..., Page], typed: str) -> None:
    """Whether it is checked once more or not: a number that nobody can read is not right."""
    page, guide = opened(f"{built_site.as_uri()}/{BAY}"), guide_of("energy_in_a_bay", "a")
    block, entry = part(page, "a"), guide.worked and guide.worked.entry
    assert entry
    box, check = block.locator('self-check input[type="text"]'), block.get_by_role("button", name="Check", exact=True)
    tick, verdict = block.locator('.ideas > li[data-idea="answer"] input'), block.locator("self-check").get_by_role("status")
    box.fill(entry.answer)
    check.click()
    open_(block, "Marking guide")
    expect(tick).to_be_checked()
    block.get_by_role("button", name="I have marked it").click()
    box.fill(typed)
    expect(tick).not_to_be_checked()
    expect(verdict).to_be_empty()
    expect(block.locator(".own-result")).to_contain_text("Your ticks have changed.")
    check.click()
    expect(tick).not_to_be_checked()
    box.fill(entry.answer)
    check.click()
    expect(tick).to_be_checked()
    page.reload()
    open_(block, "Marking guide")
    expect(tick).to_be_checked()


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


def test_a_wrong_result_that_is_carried_on_rightly_counts(built_site: Path, opened: Callable[..., Page]) -> None:
    """Common practice of marking: one slip costs one mark, not one in every part that rests on it."""
    page = opened(f"{built_site.as_uri()}/{BAY}")
    guided = next(one for one in library().written if one.name == "energy_in_a_bay")
    upper, lower = guided["b"].number, guided["a"].number
    assert upper and lower
    slip = upper.entry.slips[0]
    wrong, right = (slip.accepted.low + slip.accepted.high) / 2, lower.result.number
    box = part(page, "c").locator("self-check")
    box.locator('input[type="text"]').fill(f"{wrong / right * 100:.1f} %")
    box.get_by_role("button", name="Check").click()
    expect(box.get_by_role("status")).to_contain_text(f"✓ Right. It follows from {slip.shown.split()[0]}")
    expect(part(page, "c").locator('.guide [data-idea="answer"] input')).to_be_checked()
    box.locator('input[type="text"]').fill(f"{wrong / right * 50:.1f} %")
    box.get_by_role("button", name="Check").click()
    expect(box.get_by_role("status")).to_contain_text("✗ Not right.")


def test_hints_ask_and_say_that_they_are_no_mark(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{PLAIN}")
    block = part(page, "c")
    block.get_by_role("button", name="Hints on my words").click()
    expect(block.locator(".hints-told")).to_contain_text("Write something first.")
    block.locator("textarea").fill("Pollution is bad for the environment.")
    block.get_by_role("button", name="Hints on my words").click()
    expect(block.locator(".hints-told ul")).to_contain_text("Which substance")
    expect(block.locator(".hints-told")).to_contain_text("This is not a mark.")
    assert not re.search(r"%|✓|✗|grade|correct|\bright\b(?!\.)|\bwrong\b", block.locator(".hints-told ul").inner_text(), re.IGNORECASE)
