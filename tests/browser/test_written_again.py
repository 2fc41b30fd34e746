"""Calculations of written questions with other numbers: fetched when asked for, marked by their own key and guide, kept like the rest."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from generator.written.guide import PartGuide
from generator.written.variants import Variant, variants
from tests.browser.watch import Watch, violations
from tests.browser.written_questions import BAY, open_, part
from tests.kinds.small_records import library

pytestmark = pytest.mark.browser
HEAD = "The same with other numbers"


@cache
def sets() -> tuple[Variant, ...]:
    return variants(next(one for one in library().written if one.name == "energy_in_a_bay")).drawn


def guide_of(place: int, name: str) -> PartGuide:
    return sets()[place].question[name]


def again(page: Page) -> Locator:
    return page.locator("written-again")


def in_set(page: Page, name: str) -> Locator:
    return again(page).locator(f'written-part[data-part="{name}"]')


def check(block: Locator, typed: str) -> Locator:
    block.locator('self-check input[type="text"]').fill(typed)
    block.get_by_role("button", name="Check", exact=True).click()
    return block.locator("self-check").get_by_role("status")


def shown(block: Locator, guide: PartGuide, slip: int | None = None) -> Locator:
    """Check the right number, or that of a slip."""
    assert guide.worked
    entry = guide.worked.entry
    return check(block, entry.answer if slip is None else entry.slips[slip].shown)


def test_a_set_is_marked_by_its_own_key_slips_and_guide(built_site: Path, watched: Callable[..., Watch]) -> None:
    watch = watched(built_site.as_uri())
    page = watch.open(BAY)
    again(page).get_by_role("button", name="Give me other numbers").click()
    expect(again(page).get_by_role("status").first).to_have_text("Set 1 of 8 stands below.")
    told = "".join(again(page).inner_text().split())
    assert [] == [text for text in sets()[0].stimulus if "".join(str(text).split()) not in told]
    for name in "abd":
        block = in_set(page, name)
        expect(shown(block, guide_of(0, name), 0)).to_contain_text("✗ Not right. You get this number by")
        expect(shown(block, guide_of(0, name))).to_contain_text("✓ Right.")
        open_(block, "Marking guide")
        block.get_by_role("button", name="I have marked it").click()
        expect(block.locator(".own-result")).to_contain_text("By your own marking: 2 of 2.")
    assert [] == watch.complaints


def test_the_record_s_own_answer_is_not_right_any_more(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BAY}")
    again(page).get_by_role("button").first.click()
    own = next(one for one in library().written if one.name == "energy_in_a_bay")["a"]
    expect(shown(in_set(page, "a"), own)).to_contain_text("✗ Not right.")


def test_what_follows_from_a_slip_in_an_earlier_part_counts(built_site: Path, opened: Callable[..., Page]) -> None:
    """Adding what is respired in part a gives part c another share, worked out here anew."""
    page = opened(f"{built_site.as_uri()}/{BAY}")
    again(page).get_by_role("button").first.click()
    a, b = guide_of(0, "a").worked, guide_of(0, "b").worked
    assert a and b
    given = {name: fact.number for name, fact in a.entry.given.items()}
    share = 100 * b.result.number / (given["gross"] + given["respired"])
    expect(check(in_set(page, "c"), f"{share:.3g} %")).to_contain_text("loses no mark here")


def test_what_is_written_in_a_set_stays_with_it_over_a_reload_and_the_next_set_is_empty(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BAY}")
    again(page).get_by_role("button").first.click()
    in_set(page, "a").get_by_label("Your set-up").fill("gross less respired")
    expect(part(page, "a").first.get_by_label("Your set-up")).to_have_value("")
    page.reload()
    again(page).get_by_role("button", name="Go on with set 1").click()
    expect(in_set(page, "a").get_by_label("Your set-up")).to_have_value("gross less respired")
    again(page).get_by_role("button", name="Other numbers again").first.click()
    expect(again(page).get_by_role("status").first).to_have_text("Set 2 of 8 stands below.")
    expect(in_set(page, "a").get_by_label("Your set-up")).to_have_value("")
    for _ in range(7):
        again(page).get_by_role("button", name="Other numbers again").last.click()
    expect(again(page).get_by_role("status").first).to_have_text("Set 1 of 8 stands below.")
    expect(in_set(page, "a").get_by_label("Your set-up")).to_have_value("gross less respired")
    expect(again(page).get_by_role("heading", name=HEAD)).to_be_focused()


def test_the_script_is_fetched_when_it_is_asked_for_and_without_it_the_parts_remain(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BAY}")
    assert 0 == page.locator("script[src*='assets/again/']").count()
    again(page).get_by_role("button").first.click()
    expect(page.locator("script[src*='assets/again/']")).to_have_count(1)
    broken = opened("about:blank")
    broken.route("**/assets/again/**", lambda route: route.abort())
    broken.goto(f"{built_site.as_uri()}/{BAY}")
    again(broken).get_by_role("button").first.click()
    expect(again(broken).get_by_role("status")).to_have_text("The other numbers could not be loaded. The parts above are still there.")
    expect(again(broken).get_by_role("button", name="Give me other numbers")).to_be_visible()


def test_a_set_counts_as_a_try_of_the_part_itself(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BAY}")
    again(page).get_by_role("button").first.click()
    shown(in_set(page, "a"), guide_of(0, "a"))
    open_(in_set(page, "a"), "Marking guide")
    in_set(page, "a").get_by_role("button", name="I have marked it").click()
    kept: dict[str, list[int]] = page.evaluate("() => JSON.parse(studyProgress.exported()).items")
    assert {"written/energy_in_a_bay/a": 1, "written/energy_in_a_bay/a/answer": 1} == {name: item[2] for name, item in kept.items()}
    page.goto(f"{built_site.as_uri()}/my-record.html")
    expect(page.locator("practice-record")).to_contain_text("1 part marked by yourself")


def test_the_guide_of_a_part_that_calculates_leads_there_and_no_other(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BAY}")
    leading = page.locator("written-part").filter(has=page.locator("a", has_text="the same with other numbers"))
    assert [*"abcd"] == [block.get_attribute("data-part") for block in leading.all()]
    open_(part(page, "b"), "Marking guide")
    part(page, "b").get_by_role("link", name="the same with other numbers").click()
    expect(again(page).get_by_role("heading", name=HEAD)).to_be_in_viewport()


def test_the_sheet_to_hand_in_has_the_set_with_its_numbers_where_something_was_written_in_it(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BAY}")
    sheet = "() => document.querySelector('written-sheet').sheet().innerText"
    again(page).get_by_role("button").first.click()
    assert HEAD not in page.evaluate(sheet)
    in_set(page, "b").get_by_label("Your set-up").fill("eaten less the rest")
    handed = page.evaluate(sheet)
    text = sets()[0].stimulus[1]
    assert f"{HEAD}: set 1" in handed and "eaten less the rest" in handed and handed.count("Part b (") == 2
    assert isinstance(text, str) and "".join(text.split()) in "".join(handed.split())


def test_without_scripts_and_on_paper_there_is_no_offer(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BAY}", java_script_enabled=False)
    assert HEAD not in page.locator("article").inner_text()
    page = opened(f"{built_site.as_uri()}/{BAY}")
    page.emulate_media(media="print")
    expect(again(page)).to_be_hidden()
    page.emulate_media(media="screen")
    again(page).get_by_role("button").first.click()
    page.emulate_media(media="print")
    expect(in_set(page, "a").locator(".ruled-space")).to_be_visible()
    expect(in_set(page, "a").get_by_text("Marking guide")).to_be_hidden()


def test_it_is_used_by_keyboard_alone(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BAY}")
    again(page).get_by_role("button", name="Give me other numbers").focus()
    page.keyboard.press("Enter")
    expect(again(page).get_by_role("button", name="Other numbers again").first).to_be_focused()
    page.keyboard.press("Tab")
    expect(in_set(page, "a").get_by_label("Your set-up")).to_be_focused()
    page.keyboard.type("a set-up")
    page.keyboard.press("Tab")
    worked = guide_of(0, "a").worked
    assert worked
    page.keyboard.type(worked.entry.answer)
    page.keyboard.press("Enter")
    expect(in_set(page, "a").locator("self-check").get_by_role("status")).to_contain_text("✓ Right.")


@pytest.mark.parametrize(("scheme", "width"), [("light", 320), ("dark", 1280)])
def test_a_set_meets_the_accessibility_rules_and_fits_a_phone(built_site: Path, opened: Callable[..., Page], scheme: str, width: int) -> None:
    page = opened(f"{built_site.as_uri()}/written/a-drained-moss.html", color_scheme=scheme, viewport={"width": width, "height": 800})
    again(page).get_by_role("button").first.click()
    check(in_set(page, "a"), "1 t/ha/yr")
    open_(in_set(page, "a"), "Marking guide")
    assert [] == violations(page)
    assert width >= page.evaluate("() => document.documentElement.scrollWidth")
