"""Queries of students and what they must find, and how one is asked on a page that is open."""

from __future__ import annotations

from pathlib import Path

import yaml
from playwright.sync_api import Page

QUERIES = [(query["asks"], query["finds"]) for query in yaml.safe_load(Path(__file__).with_suffix(".yaml").read_text("utf-8"))]
_MARK_OLD = """() => { document.querySelector('.md-search-result__meta').textContent = '…'
  document.querySelectorAll('.md-search-result__item').forEach(item => { item.dataset.old = '' }) }"""
_ANSWERED = """() => document.querySelector('.md-search-result__meta').textContent.includes('matching document')
  && !document.querySelector('.md-search-result__item[data-old]')"""
_SHOWN = """count => [...document.querySelectorAll('.md-search-result__item')].slice(0, count)
  .map(item => [...item.querySelectorAll('a')].map(link => link.href))"""


def first_results(page: Page, query: str, count: int = 3) -> list[list[str]]:
    """The addresses in each of the first results for a query."""
    box = page.get_by_role("textbox", name="Search")
    box.fill("")
    box.dispatch_event("keyup")
    page.wait_for_timeout(60)
    page.evaluate(_MARK_OLD)
    box.fill(query)
    box.dispatch_event("keyup")  # the theme reads its box after a key
    page.wait_for_function(_ANSWERED, timeout=8000)
    page.wait_for_timeout(120)
    return page.evaluate(_SHOWN, count)
