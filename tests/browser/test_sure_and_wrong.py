"""A wrong answer that was marked as sure: told with the wrong idea, quoted and denied before the line that all others get, as paper does."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from generator.pages.data_script import data_script
from generator.pages.questions import question
from generator.questions.misconception import Misconception
from generator.questions.question import ChartReading, Choice, Interval, LabelSlip, Needs, NumberEntry, Option, Question, SeveralChoice, Slip
from tests.browser.one_question import with_question
from tests.browser.watch import violations

pytestmark = pytest.mark.browser
COMMON = {"id": "item", "prompt": "What?", "needs": Needs.KNOWLEDGE, "solution": "So it is."}
JULY = Misconception(
    id="clim.hemisphere", idea="July is summer everywhere.", because="south of the equator July is winter.", instead="check the latitude."
)  # fmt: skip
TOLD = JULY.answers("That is Norway.")
LINE = "That is Norway. South of the equator July is winter. Check the latitude."
FULLER = f"Some think: “July is summer everywhere.” That does not hold. {LINE}"
CARE = "You were sure: read the answer below with care, for such mistakes are put right best."
RIGHT, WRONG = Option(text="yes", feedback="Indeed.", right=True), Option(text="no", **TOLD)
CHOICE = Choice(**COMMON, options=(RIGHT, WRONG))
SEVERAL = SeveralChoice(**COMMON, options=(RIGHT, Option(text="certainly", feedback="Indeed.", right=True), WRONG, Option(text="never", **JULY.answers())))
NUMBER = NumberEntry(
    **COMMON, unit="", answer="5", accepted=Interval(5, 5), right_feedback="Five.", otherwise="Count again.",
    slips=(Slip(accepted=Interval(7, 7), shown="7", **TOLD),),
)  # fmt: skip
READING = ChartReading(**COMMON, labels=("May", "June"), right=("May",), otherwise="Look.", slips=(LabelSlip(labels=("June",), **TOLD),))


@pytest.fixture
def blank(browser: Browser) -> Iterator[Page]:
    page = browser.new_page()
    yield page
    page.close()


def answered(page: Page, sure: str = "") -> str:
    if sure:
        page.get_by_label("How sure are you?").select_option(sure)
    page.get_by_role("button", name="Check").click()
    return page.get_by_role("status").text_content() or ""


def wrongly(page: Page, item: Question) -> None:
    match item:
        case Choice() | SeveralChoice():
            page.get_by_label("no", exact=True).check()
        case NumberEntry():
            page.get_by_label("Your answer").fill("7")
        case ChartReading():
            page.get_by_label("Your answer").select_option("June")


@pytest.mark.parametrize("item", [CHOICE, NUMBER, READING], ids=lambda item: type(item).__name__)
@pytest.mark.parametrize(("sure", "says"), [("sure", FULLER), ("fairly", LINE), ("guess", LINE), ("", LINE)])
def test_only_who_was_sure_is_told_the_idea(blank: Page, item: Question, sure: str, says: str) -> None:
    page = with_question(blank, item)
    wrongly(page, item)
    assert f"✗ Not right. {says}" == answered(page, sure)


def test_of_several_wrong_picks_the_first_is_refuted_in_full(blank: Page) -> None:
    page = with_question(blank, SEVERAL)
    wrongly(page, SEVERAL)
    page.get_by_label("never").check()
    expected = f"✗ Not right. “no”: {FULLER} “never”: {JULY.correction} 2 that are right are not picked yet."
    assert expected == answered(page, "sure")


def test_a_right_answer_is_told_as_ever(blank: Page) -> None:
    page = with_question(blank, CHOICE)
    page.get_by_label("yes").check()
    assert "✓ Right. Indeed." == answered(page, "sure")


def test_a_wrong_number_that_no_slip_gives_asks_for_care(blank: Page) -> None:
    page = with_question(blank, NUMBER)
    page.get_by_label("Your answer").fill("6")
    assert f"✗ Not right. Count again. {CARE}" == answered(page, "sure")


@pytest.mark.parametrize("item", [CHOICE, SEVERAL, NUMBER, READING], ids=lambda item: type(item).__name__)
def test_the_slip_is_told_to_the_page_for_its_record(blank: Page, item: Question) -> None:
    page = with_question(blank, item)
    page.evaluate("document.addEventListener('self-check-answered', event => { window.told = event.detail })")
    wrongly(page, item)
    answered(page, "sure")
    assert ("sure", "clim.hemisphere") == (page.evaluate("window.told.sure"), page.evaluate("window.told.slip"))


def test_slips_in_fresh_numbers_are_refuted_and_told_too(blank: Page, tmp_path: Path) -> None:
    says = [[TOLD["feedback"], TOLD["refutation"], JULY.id]]
    one = {"ask": "Now?", "formula": "a", "put": "1", "answer": "1", "low": 1, "high": 1, "slips": [[9, 9, "9", 0]]}
    script = tmp_path / "fresh.js"
    script.write_bytes(data_script("studyFresh", "biome/somewhere", {"says": says, "sums": {"item": [one]}}))
    blank.goto(f"{tmp_path.as_uri()}/")
    page = with_question(blank, NUMBER, script.as_uri())
    page.evaluate("document.addEventListener('self-check-answered', event => { window.told = event.detail })")
    page.get_by_role("button", name="Another one").click()
    expect(page.locator("legend")).to_contain_text("Now?")
    page.get_by_label("Your answer").fill("9")
    assert f"✗ Not right. {FULLER}" == answered(page, "sure")
    assert (JULY.id, 1) == (page.evaluate("window.told.slip"), page.evaluate("window.told.variant"))
    page.get_by_label("Your answer").fill("8")
    assert f"✗ Not right. Count again. {CARE}" == answered(page, "sure")


def test_the_line_is_complete_without_a_script(browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.set_content(f"<!doctype html><title>One question</title>{question(CHOICE, 'biome/somewhere', 1)}")
    page.get_by_text("Answer and working").click()
    expect(page.locator(".feedback li").last).to_have_text(f"no: not right. {LINE}")
    context.close()


def test_the_fuller_refutation_breaks_no_rule_of_accessibility_and_fits_a_narrow_page(blank: Page) -> None:
    blank.set_viewport_size({"width": 320, "height": 640})
    page = with_question(blank, CHOICE)
    wrongly(page, CHOICE)
    assert answered(page, "sure").endswith(FULLER)
    page.evaluate("document.documentElement.lang = 'en'; document.body.innerHTML = `<main><h1>Page</h1>${document.body.innerHTML}</main>`")
    assert [] == violations(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
