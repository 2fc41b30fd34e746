"""What axe does not see of WCAG 2.2, level AA, on one page of each type: targets, spacing of text, focus, motion, names of table heads."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page

pytestmark = pytest.mark.browser
PAGES = ("index.html", "biome/tundra.html", "biome/compared.html", "words.html", "practice.html", "my-record.html", "written/a-drained-moss.html")
RECORD = PAGES[1]
SCREENS = {"phone": {"width": 320, "height": 640}, "laptop": {"width": 1300, "height": 700}}
OPEN_ALL = "() => document.querySelectorAll('details').forEach(details => { details.open = true })"
CROWDED = """() => {
  const shown = [...document.querySelectorAll('a[href], button, input, select, textarea, summary')].filter(one => {
    const { width, height, top } = one.getBoundingClientRect()
    const list = one.closest('.md-sidebar__scrollwrap')
    if (list && top + height / 2 < list.getBoundingClientRect().top) return false
    return width > 1 && height > 1 && one.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && getComputedStyle(one).display !== 'inline'
  })
  const box = one => (one.closest('label') || one).getBoundingClientRect()
  const middle = ({ left, top, width, height }) => [left + width / 2, top + height / 2]
  const isSmall = ({ width, height }) => width < 24 || height < 24
  const meets = (one, other) => {
    const [x, y] = middle(one)
    const [across, down] = middle(other)
    if (isSmall(other)) return Math.hypot(across - x, down - y) < 24
    return Math.hypot(Math.max(other.left - x, 0, x - other.right), Math.max(other.top - y, 0, y - other.bottom)) < 12
  }
  return shown.filter(one => isSmall(box(one)) && shown.some(
    other => other !== one && !one.contains(other) && !other.contains(one) && meets(box(one), box(other))
  )).map(one => one.outerHTML.slice(0, 120))
}"""
"""Targets below 24 px whose circle of 24 px meets another target; links within a sentence are excepted, and what is scrolled out of its list (2.5.8)."""
SPACED = """() => {
  const style = document.createElement('style')
  style.textContent = '* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important } p { margin-bottom: 2em !important }'
  document.head.append(style)
}"""
CUT = """() => [...document.querySelectorAll('main *, .md-footer *')].filter(one => {
  const { overflowX, overflowY } = getComputedStyle(one)
  const cuts = (/hidden|clip/.test(overflowX) && one.scrollWidth > one.clientWidth + 1) || (/hidden|clip/.test(overflowY) && one.scrollHeight > one.clientHeight + 1)
  return cuts && one.clientWidth > 1 && one.clientHeight > 1 && one.checkVisibility() && !one.closest('svg, math') && one.innerText.trim()
}).map(one => one.outerHTML.slice(0, 120))"""
HIDDEN = """() => {
  const one = document.activeElement
  const header = document.querySelector('.md-header')
  const { top, bottom } = one.getBoundingClientRect()
  const isHidden = one.closest('.md-content') && (bottom <= header.getBoundingClientRect().bottom + 1 || top >= innerHeight)
  return isHidden ? one.outerHTML.slice(0, 120) : null
}"""
MOVING = """() => [...document.querySelectorAll('body *')].filter(one => {
  const style = getComputedStyle(one)
  const lasts = times => times.split(',').some(time => parseFloat(time) > 0)
  return lasts(style.transitionDuration) || (style.animationName !== 'none' && lasts(style.animationDuration))
}).map(one => one.className)"""


@pytest.mark.parametrize("screen", SCREENS)
@pytest.mark.parametrize("name", PAGES)
def test_targets_are_large_enough_or_far_enough_apart(built_site: Path, opened: Callable[..., Page], name: str, screen: str) -> None:
    page = opened(f"{built_site.as_uri()}/{name}", viewport=SCREENS[screen])
    page.evaluate(OPEN_ALL)
    assert [] == page.evaluate(CROWDED)


@pytest.mark.parametrize("screen", SCREENS)
@pytest.mark.parametrize("name", PAGES)
def test_text_set_wider_is_not_cut_and_needs_no_scrolling_across(built_site: Path, opened: Callable[..., Page], name: str, screen: str) -> None:
    page = opened(f"{built_site.as_uri()}/{name}", viewport=SCREENS[screen])
    page.evaluate(OPEN_ALL)
    page.evaluate(SPACED)
    assert [] == page.evaluate(CUT)
    assert page.evaluate("document.documentElement.scrollWidth") <= SCREENS[screen]["width"]


@pytest.mark.parametrize("name", (RECORD, PAGES[-1]))
def test_the_focus_is_never_hidden_on_the_way_back_up(built_site: Path, opened: Callable[..., Page], name: str) -> None:
    page = opened(f"{built_site.as_uri()}/{name}", viewport=SCREENS["laptop"])
    last = page.locator(".md-content :is(summary, button, a)").last
    last.focus()
    hidden = []
    for _ in range(60):
        page.keyboard.press("Shift+Tab")
        page.evaluate("() => new Promise(done => requestAnimationFrame(() => setTimeout(done)))")
        hidden += [one] if (one := page.evaluate(HIDDEN)) else []
    assert [] == hidden


def test_nothing_moves_for_who_asked_for_less_motion(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{RECORD}", reduced_motion="reduce")
    assert [] == page.evaluate(MOVING)


def test_a_table_of_numbers_names_its_rows_and_columns_to_a_screen_reader(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{RECORD}")
    page.evaluate(OPEN_ALL)
    told = page.locator("table.ruled.numbers").first.aria_snapshot()
    assert 3 == told.count("columnheader")
    assert all(f'rowheader "{month}"' in told for month in ("January", "July", "December"))
