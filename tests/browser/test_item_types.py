"""Every item type: answered by mouse and by keyboard alone, marked at once, with feedback to what was wrong; legible on paper."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from generator.questions.question import (
    ChartReading,
    Choice,
    LabelSlip,
    Matching,
    Needs,
    Option,
    Ordering,
    Pair,
    Question,
    SeveralChoice,
    Step,
)
from tests.browser.one_question import with_question
from tests.browser.watch import violations

pytestmark = pytest.mark.browser
COMMON = {"id": "item", "prompt": "What?", "needs": Needs.KNOWLEDGE, "solution": "So it is."}
SEVERAL = SeveralChoice(
    **COMMON, hints=("Think of gases.", "Two of them."),
    options=(
        Option(text="methane", feedback="It absorbs infrared.", right=True), Option(text="nitrogen", feedback="It absorbs none.", misconception="a.b"),
        Option(text="water vapour", feedback="It absorbs infrared too.", right=True), Option(text="argon", feedback="One atom.", misconception="a.c"),
    ),
)  # fmt: skip
ORDERING = Ordering(
    **COMMON, start=(2, 0, 3, 1), starts_with="It begins with fertiliser.",
    steps=(
        Step("Nitrate washes into the lake.", "Algae need nitrate first."), Step("Algae grow.", "They have to grow before they die."),
        Step("Algae die and sink.", "Decomposers feed on what has died."), Step("Decomposers use up the oxygen.", ""),
    ),
)  # fmt: skip
MATCHING = Matching(
    **COMMON, pairs=(Pair("thick bark", "survives fire", "Cork insulates."), Pair("deep roots", "reach water", "Water lies deep.")),
    partners=("reach water", "keep warm", "survives fire"),
)  # fmt: skip
READING = ChartReading(
    **COMMON, labels=("January", "May", "June", "July"), right=("June", "July"), otherwise="Look at the line.",
    slips=(LabelSlip(("January",), "That is south of the equator.", "clim.hemisphere"),),
)  # fmt: skip
CHOICE = Choice(
    **COMMON, options=(Option(text="yes", feedback="Indeed.", right=True), Option(text="no", feedback="No.", misconception="a.b"))
)  # fmt: skip
ITEMS: tuple[Question, ...] = (SEVERAL, ORDERING, MATCHING, READING, CHOICE)


@pytest.fixture
def blank(browser: Browser) -> Iterator[Page]:
    page = browser.new_page()
    yield page
    page.close()


def said(page: Page, text: str) -> None:
    page.get_by_role("button", name="Check").click()
    expect(page.get_by_role("status")).to_have_text(text)


def test_several_are_right_only_all_together(blank: Page) -> None:
    page = with_question(blank, SEVERAL)
    said(page, "Pick the options that are right first.")
    page.get_by_label("methane").check()
    said(page, "✗ Not right. One that is right is not picked yet.")
    page.get_by_label("argon").check()
    said(page, "✗ Not right. “argon”: One atom. One that is right is not picked yet.")
    page.get_by_label("argon").uncheck()
    page.get_by_label("water vapour").check()
    said(page, "✓ Right. It absorbs infrared. It absorbs infrared too.")


def test_a_wrong_order_is_answered_at_its_first_fault(blank: Page) -> None:
    page = with_question(blank, ORDERING)
    said(page, "✗ Not right. It begins with fertiliser.")
    page.get_by_role("button", name="Move up: Nitrate washes into the lake.").click()
    expect(page.get_by_role("status")).to_have_text("Now at place 1 of 4.")
    said(page, "✗ Not right. The first step is right. Algae need nitrate first.")
    for _ in range(2):
        page.get_by_role("button", name="Move up: Algae grow.").click()
    said(page, "✓ Right. So it is.")


def test_steps_move_by_keyboard_and_the_focus_stays_with_them(blank: Page) -> None:
    page = with_question(blank, ORDERING)
    button = page.get_by_role("button", name="Move up: Nitrate washes into the lake.")
    button.focus()
    page.keyboard.press("Enter")
    expect(button).to_be_focused()
    expect(button).to_have_attribute("aria-disabled", "true")
    page.keyboard.press("Space")
    assert ["0", "2", "3", "1"] == [step.get_attribute("data-step") for step in page.locator(".steps > li").all()]


def test_matching_says_which_line_to_look_at_again(blank: Page) -> None:
    page = with_question(blank, MATCHING)
    said(page, "Pick a partner for each line first.")
    page.get_by_label("thick bark").select_option(label="C")
    said(page, "Some lines have no partner yet.")
    page.get_by_label("deep roots").select_option(label="B")
    said(page, "✗ Not right. 1 of 2 are matched. Look again at “deep roots”: Water lies deep.")
    page.get_by_label("deep roots").select_option(label="A")
    said(page, "✓ Right. Every line has its partner.")


def test_a_label_read_off_the_chart_gets_the_feedback_of_its_slip(blank: Page) -> None:
    page = with_question(blank, READING)
    said(page, "Pick an answer first.")
    for label, verdict in (
        ("January", "✗ Not right. That is south of the equator."), ("May", "✗ Not right. Look at the line."),
        ("June", "✓ Right. So it is."), ("July", "✓ Right. So it is."),
    ):  # fmt: skip
        page.get_by_label("Your answer").select_option(label)
        said(page, verdict)


def test_an_answer_is_told_to_the_page_with_what_was_missed(blank: Page) -> None:
    page = with_question(blank, MATCHING)
    page.evaluate("document.addEventListener('self-check-answered', event => { window.told = event.detail })")
    page.get_by_label("thick bark").select_option(label="A")
    page.get_by_label("deep roots").select_option(label="B")
    page.get_by_role("button", name="Check").click()
    assert {"question": "biome/somewhere/item", "right": False, "misses": 2, "variant": 0, "sure": "", "slip": ""} == page.evaluate("window.told")


def test_hints_open_one_after_another(blank: Page) -> None:
    page = with_question(blank, SEVERAL)
    expect(page.get_by_text("Two of them.")).to_be_hidden()
    page.get_by_text("Hint 1 of 2").click()
    expect(page.get_by_text("Think of gases.")).to_be_visible()
    expect(page.get_by_text("Two of them.")).to_be_hidden()
    page.get_by_text("Hint 2 of 2").click()
    expect(page.get_by_text("Two of them.")).to_be_visible()


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: type(item).__name__)
def test_the_focus_stays_on_the_button_and_the_verdict_is_announced(blank: Page, item: Question) -> None:
    page = with_question(blank, item)
    button = page.get_by_role("button", name="Check")
    button.focus()
    page.keyboard.press("Enter")
    expect(button).to_be_focused()
    expect(page.get_by_role("status")).not_to_be_empty()


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: type(item).__name__)
def test_no_type_breaks_a_rule_of_accessibility_or_a_narrow_page(blank: Page, item: Question) -> None:
    blank.set_viewport_size({"width": 320, "height": 640})
    page = with_question(blank, item)
    page.get_by_role("button", name="Check").click()
    page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
    page.evaluate("document.documentElement.lang = 'en'; document.body.innerHTML = `<main><h1>Page</h1>${document.body.innerHTML}</main>`")
    assert [] == violations(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
