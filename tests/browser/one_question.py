"""A page that holds one question and the scripts that mark it, without a site around it."""

from __future__ import annotations

from playwright.sync_api import Page

from generator.pages.asset_files import assets
from generator.pages.questions import question
from generator.questions.question import Question


def with_question(page: Page, item: Question, fresh: str = "") -> Page:
    """The page with nothing but this question; a page is used once, for its scripts stay."""
    styles = "".join(assets()[f"assets/{name}.css"].decode() for name in ("study", "questions"))
    block = question(item, "biome/somewhere", 1, fresh)
    page.set_content(f"<!doctype html><title>One question</title><style>{styles}</style><article class='md-typeset'>{block}</article>")
    for name in ("fresh-numbers", "number-reading", "self-check"):
        page.add_script_tag(content=assets()[f"assets/{name}.js"].decode())
    return page
