"""Every item type: answered by mouse and by keyboard alone, marked at once, with feedback to what was wrong; legible on paper."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from generator.questions.question import (
    ChartReading,
    Choice,
    Interval,
    LabelSlip,
    Matching,
    Needs,
    NumberEntry,
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
ALL_TYPES = "aquatic-biome/stream.html"
"""A page with a question of every type."""
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
NUMBER = NumberEntry(
    **COMMON, unit="yr", answer="5 yr", accepted=Interval(4.9, 5.1), right_feedback="So it is.", slips=(), otherwise="Divide.", hints=("Think.",)
)  # fmt: skip
ITEMS: tuple[Question, ...] = (SEVERAL, ORDERING, MATCHING, READING, CHOICE, NUMBER)


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


def put_in_order(page: Page, act: Callable[[Locator], None]) -> None:
    """Moves each step of the order up to its place by its own button."""
    for place, step in enumerate(ORDERING.steps):
        row = page.locator(f'.steps > li[data-step="{place}"]')
        for _ in range(8):
            if row.evaluate("row => [...row.parentElement.children].indexOf(row)") == place:
                break
            act(page.get_by_role("button", name=f"Move up: {step.text}"))


def by_pointer(page: Page, item: Question, act: Callable[[Locator], None]) -> None:
    """The right answer by mouse or finger; lists open in the browser's own way, which no test can touch."""
    match item:
        case Choice() | SeveralChoice():
            for option in item.options:
                if option.right:
                    act(page.get_by_label(option.text, exact=True))
        case Ordering():
            put_in_order(page, act)
        case Matching():
            for pair in item.pairs:
                act(page.get_by_label(pair.text))
                page.get_by_label(pair.text).select_option(label="ABC"[item.partners.index(pair.partner)])
        case ChartReading():
            act(page.get_by_label("Your answer"))
            page.get_by_label("Your answer").select_option(item.right[0])
        case NumberEntry():
            act(page.get_by_label("Your answer"))
            page.keyboard.type("5")
    act(page.get_by_role("button", name="Check"))


def by_keyboard(page: Page, item: Question) -> None:
    """The right answer without a pointer: every stop is reached with Tab alone."""

    def reach(wanted: Locator) -> None:
        for _ in range(40):
            if wanted.evaluate("one => one === document.activeElement"):
                return
            page.keyboard.press("Tab")
        raise AssertionError("Tab does not reach it")

    def press(button: Locator) -> None:
        reach(button)
        page.keyboard.press("Enter")

    match item:
        case Choice():
            reach(page.get_by_role("radio").first)
            page.keyboard.press("Space")
            for _ in range(next(n for n, option in enumerate(item.options) if option.right)):
                page.keyboard.press("ArrowDown")
        case SeveralChoice():
            for n, option in enumerate(item.options):
                if option.right:
                    reach(page.get_by_role("checkbox").nth(n))
                    page.keyboard.press("Space")
        case Ordering():
            put_in_order(page, press)
        case Matching():
            for pair in item.pairs:
                reach(page.get_by_label(pair.text))
                page.keyboard.type("ABC"[item.partners.index(pair.partner)])
        case ChartReading():
            reach(page.get_by_label("Your answer"))
            page.keyboard.type(item.right[0])
        case NumberEntry():
            reach(page.get_by_label("Your answer"))
            page.keyboard.type("5")
    reach(page.get_by_role("button", name="Check"))
    page.keyboard.press("Enter")


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: type(item).__name__)
@pytest.mark.parametrize("how", ["mouse", "touch", "keyboard"])
def test_each_type_is_answered_rightly_by_mouse_by_touch_and_by_keyboard_alone(browser: Browser, item: Question, how: str) -> None:
    context = browser.new_context(has_touch=how == "touch", viewport={"width": 390, "height": 800})
    page = with_question(context.new_page(), item)
    if how == "keyboard":
        by_keyboard(page, item)
    else:
        by_pointer(page, item, Locator.tap if how == "touch" else Locator.click)
    expect(page.get_by_role("status")).to_contain_text("✓ Right.")
    context.close()


def give_any_answer(block: Locator) -> None:
    """Some answer to a question of any type, for it to be marked."""
    match block.locator("self-check").get_attribute("data-type"):
        case "choice":
            block.get_by_role("radio").first.check()
        case "several":
            block.get_by_role("checkbox").first.check()
        case "number":
            block.get_by_role("textbox").fill("1")
        case "label":
            block.locator("select[id$=-pick]").select_option(index=1)
        case "match":
            for pick in block.locator("ul.rows select").all():
                pick.select_option(index=1)
    block.get_by_role("button", name="Check").click()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_page_of_all_types_breaks_no_rule_before_and_after_marking(built_site: Path, opened: Callable[..., Page], scheme: str) -> None:
    page = opened(f"{built_site.as_uri()}/{ALL_TYPES}", color_scheme=scheme, bypass_csp=True)
    blocks = page.locator(".check").all()
    types = {block.locator("self-check").get_attribute("data-type") for block in blocks}
    assert {"choice", "several", "number", "order", "match", "label"} == types
    assert [] == violations(page)
    for block in blocks:
        give_any_answer(block)
    page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
    assert [] == violations(page)


def test_with_letters_twice_as_large_nothing_is_cut_off_and_all_can_be_answered(built_site: Path, opened: Callable[..., Page]) -> None:
    """Source: WCAG 2.2, 1.4.4: text can be resized up to 200 percent without loss of content or functionality."""
    page = opened(f"{built_site.as_uri()}/{ALL_TYPES}", viewport={"width": 1280, "height": 900})
    page.evaluate("document.documentElement.style.fontSize = `${2 * parseFloat(getComputedStyle(document.documentElement).fontSize)}px`")
    for block in page.locator(".check").all():
        give_any_answer(block)
        expect(block.get_by_role("status")).not_to_be_empty()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    cut = "[...document.querySelectorAll('.check button, .check legend, .check label, .check output')].filter(one => one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).overflowX === 'hidden').length"
    assert 0 == page.evaluate(cut)


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
