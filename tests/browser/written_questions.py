"""Written questions as browser tests open them."""

from __future__ import annotations

from playwright.sync_api import Locator, Page

from generator.written.guide import PartGuide
from tests.kinds.small_records import library

PLAIN, BAY = "written/plain-without-trees.html", "written/energy-in-a-bay.html"
TEXT = "More water could evaporate than falls, so the soil dries out."


def part(page: Page, name: str) -> Locator:
    return page.locator(f'written-part[data-part="{name}"]')


def guide_of(question: str, name: str) -> PartGuide:
    return next(guide for one in library().written if one.name == question for guide in one.guides if guide.part.id == name)


def open_(block: Locator, summary: str) -> None:
    block.get_by_text(summary, exact=True).click()
