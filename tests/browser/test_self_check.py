"""The questions of the built site: marked by mouse and keyboard, with feedback to the very mistake; complete without scripts."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.watch import Watch, violations

pytestmark = pytest.mark.browser
BIOME, CYCLE, PYRAMID = "biome/temperate-grassland.html", "cycle/wend-hollow-nitrogen.html", "pyramid/sill-lake.html"

# What people type for 31 K, the range from −9 to 22 °C, and the verdict: common practice of writing numbers.
SPELLINGS = [
    ("31", "✓ Right."),
    (" 31 ", "✓ Right."),
    ("31.0", "✓ Right."),
    ("31,0", "✓ Right."),
    ("3.1e1", "✓ Right."),
    ("3.1×10¹", "✓ Right."),
    ("3,1 x 10^1", "✓ Right."),
    ("0.31*10^2", "✓ Right."),
    ("≈ 31", "✓ Right."),
    ("+31", "✓ Right."),
    ("60", "✗ Not right."),
    ("\u221231", "✗ Not right. You get this number by taking the warmest month off the coldest."),
    ("30", "✗ Not right."),
    ("22", "✗ Not right. You get this number by giving the warmest month alone."),
    ("22,0", "✗ Not right. You get this number by giving the warmest month alone."),
    ("13", "✗ Not right. You get this number by adding the coldest month with its sign, or subtracting it without its sign."),
    ("6.5", "✗ Not right. You get this number by taking the mean of the two months."),
    ("", "Type a number first."),
    ("   ", "Type a number first."),
    ("abc", "That cannot be read as one number."),
    ("31 K", "✓ Right."),
    ("12-14", "That is a range."),
    ("3_1", "That cannot be read as one number."),
    ("3..1", "That cannot be read as one number."),
    ("Infinity", "That cannot be read as one number."),
    ("0x147", "“x147” is not a unit"),
    ("1,200", "Do you mean 1.2 or 1200?"),
]
# The same for 43 000 kJ/yr / 30 kJ/m2/yr = 0.143 ha and its slip of 1430: groups of three digits, either mark.
GROUPED = [
    ("0.143", "✓ Right."),
    (".143", "✓ Right."),
    ("0,1430", "✓ Right."),
    ("1 430", "✗ Not right. You get this number by leaving the area in square metres."),
    ("1\u202f430", "✗ Not right. You get this number by leaving the area in square metres."),
    ("1'430", "✗ Not right. You get this number by leaving the area in square metres."),
    ("1.430,0", "✗ Not right. You get this number by leaving the area in square metres."),
    ("1,430.0", "✗ Not right. You get this number by leaving the area in square metres."),
    ("1 43", "That cannot be read as one number."),
    ("1.43e-1", "✓ Right."),
    ("1.43×10⁻¹", "✓ Right."),
]
# A sum of stated numbers has one value, 5 and 20 kg N/ha/yr: no tolerance.
EXACT = [("25", "✓ Right."), ("25.0", "✓ Right."), ("26", "✗ Not right."), ("24", "✗ Not right.")]


def question(page: Page, name: str) -> Locator:
    return page.locator(f"#q-{name}")


def test_every_question_can_be_answered_rightly_and_wrongly(built_site: Path, watched: Callable[..., Watch]) -> None:
    watch = watched(built_site.as_uri())
    answered = 0
    for address in (BIOME, CYCLE, PYRAMID):
        page = watch.open(address)
        for block in page.locator('.check:has([data-type="choice"], [data-type="number"])').all():
            for line in block.locator(".feedback li[data-option], .feedback li[data-low]").all():
                right = line.get_attribute("data-right") == "true"
                if (option := line.get_attribute("data-option")) is not None:
                    block.locator(f'input[value="{option}"]').check()
                else:
                    low, high = (float(line.get_attribute(f"data-{end}") or "nan") for end in ("low", "high"))
                    box = block.locator('input[type="text"]')
                    unit = f" {box.get_attribute('data-unit')}" if box.get_attribute("data-asks-unit") is not None else ""
                    box.fill(f"{(low + high) / 2!r}{unit}")
                block.get_by_role("button", name="Check").click()
                said = f"{'✓ Right.' if right else '✗ Not right.'} {line.locator('.says').text_content()}"
                expect(block.get_by_role("status")).to_have_text(said)
                answered += 1
    assert watch.complaints == []
    assert answered >= 3 * 6 * 2


@pytest.mark.parametrize(
    ("address", "name", "table"), [(BIOME, "annual-temp-range", SPELLINGS), (PYRAMID, "supporting-area", GROUPED), (CYCLE, "brought-in", EXACT)]
)
def test_numbers_are_read_as_people_write_them(
    built_site: Path, opened: Callable[..., Page], address: str, name: str, table: list[tuple[str, str]]
) -> None:
    block = question(opened(f"{built_site.as_uri()}/{address}"), name)
    found = []
    for typed, _ in table:
        block.locator('input[type="text"]').fill(typed)
        block.locator('input[type="text"]').press("Enter")
        found.append((typed, block.get_by_role("status").text_content() or ""))
    wrong = [(typed, verdict, said) for (typed, verdict), (_, said) in zip(table, found, strict=True) if not said.startswith(verdict)]
    assert wrong == []


def test_a_choice_is_made_and_checked_by_keyboard_alone(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BIOME}")
    block = question(page, "dry-months")
    right = block.locator('.feedback [data-right="true"]').get_attribute("data-option")
    radios = block.get_by_role("radio")
    radios.first.focus()
    page.keyboard.press("Space")
    for _ in range(int(right or 0)):
        page.keyboard.press("ArrowDown")
    page.keyboard.press("Tab")
    expect(block.get_by_label("How sure are you?")).to_be_focused()
    page.keyboard.press("Tab")
    expect(block.get_by_role("button", name="Check")).to_be_focused()
    page.keyboard.press("Enter")
    expect(block.get_by_role("status")).to_contain_text("✓ Right.")
    expect(block.get_by_role("button", name="Check")).to_be_focused()


def test_checking_before_picking_asks_for_an_answer(built_site: Path, opened: Callable[..., Page]) -> None:
    block = question(opened(f"{built_site.as_uri()}/{BIOME}"), "dry-months")
    block.get_by_role("button", name="Check").click()
    expect(block.get_by_role("status")).to_have_text("Pick one of the options first.")


def test_answering_stays_on_the_page_and_tells_the_page(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BIOME}")
    page.evaluate("document.addEventListener('self-check-answered', event => { window.told = event.detail })")
    block = question(page, "annual-temp-range")
    block.locator('input[type="text"]').fill("31")
    block.locator('input[type="text"]').press("Enter")
    assert page.url == f"{built_site.as_uri()}/{BIOME}"
    assert page.evaluate("window.told") == {"question": "biome/temperate_grassland/annual_temp_range", "right": True, "misses": 0, "variant": 0, "sure": "", "slip": ""}


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_marked_question_has_no_axe_violation(built_site: Path, browser, scheme: str) -> None:
    context = browser.new_context(color_scheme=scheme, bypass_csp=True)
    page = context.new_page()
    page.goto(f"{built_site.as_uri()}/{BIOME}")
    for name, typed in (("annual-temp-range", "31"), ("aridity-index", "1.89")):
        question(page, name).locator('input[type="text"]').fill(typed)
        question(page, name).locator('input[type="text"]').press("Enter")
    page.evaluate("document.querySelectorAll('article details').forEach(details => { details.open = true })")
    assert violations(page) == []
    context.close()


def test_without_scripts_question_options_answer_and_working_are_there(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BIOME}", java_script_enabled=False)
    block = question(page, "dry-months")
    expect(block.locator("legend")).to_contain_text("Which months are dry at Harrow Plain by the rule of the climate diagram")
    assert block.get_by_role("radio").count() == 5
    assert block.get_by_role("button").count() == 0
    expect(block.locator(".feedback")).to_be_hidden()
    block.get_by_text("Answer and working").click()
    expect(block.locator(".feedback")).to_be_visible()
    expect(block.locator("table")).to_be_visible()
    expect(block.locator(".feedback li").first).to_contain_text("not right")


def test_a_link_to_a_fact_opens_its_working(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{BIOME}")
    working = page.locator("#fact-harrow-plain-annual-precip")
    expect(working).not_to_have_attribute("open", "")
    page.locator("article").get_by_role("link", name="327 mm").first.click()
    expect(working).to_have_attribute("open", "")
    expect(working.locator("math").last).to_be_in_viewport()


def test_a_link_to_a_fact_that_is_folded_away_opens_all_around_it(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/biome/alpine.html")
    working = page.locator("#fact-high-saddle-life-zone")
    expect(working).to_be_hidden()
    page.locator("article").get_by_role("link", name="boreal rain forest").first.click()
    expect(working).to_have_attribute("open", "")
    expect(working.locator("summary")).to_be_in_viewport()


def test_what_a_question_asks_for_is_not_told_before_its_line_is_opened(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/cycle/global-nitrogen.html")
    line = page.locator(".facts > details", has=page.locator(".when-open"))
    value = line.locator(".when-open")
    expect(value).to_be_hidden()
    expect(line.get_by_text("a question asks for it")).to_be_visible()
    line.locator("summary").click()
    expect(value).to_be_visible()
    expect(line.get_by_text("a question asks for it")).to_be_hidden()
