"""Measures in a browser whether the text of the charts on a page keeps apart and stays on its canvas."""

from __future__ import annotations

from playwright.sync_api import Page

_SHRUNK_BY_PX = 0.5
"""Taken off every side of a text's box first: line boxes are a little higher than the letters."""

_MEASURE = """
(shrink) => {
  const found = [];
  for (const svg of document.querySelectorAll("svg[role='img']")) {
    const name = svg.querySelector("title")?.textContent ?? "untitled";
    const sheet = svg.getBoundingClientRect();
    const texts = [...svg.querySelectorAll("text")].map((text) => {
      const box = text.getBoundingClientRect();
      return {says: text.textContent, left: box.left + shrink, right: box.right - shrink,
              top: box.top + shrink, bottom: box.bottom - shrink};
    });
    texts.forEach((text, number) => {
      if (text.left < sheet.left || text.right > sheet.right || text.top < sheet.top || text.bottom > sheet.bottom) {
        found.push(`${name}: "${text.says}" leaves the canvas`);
      }
      for (const other of texts.slice(0, number)) {
        if (text.left < other.right && other.left < text.right && text.top < other.bottom && other.top < text.bottom) {
          found.push(`${name}: "${text.says}" overlaps "${other.says}"`);
        }
      }
    });
  }
  return found;
}
"""


_LEAST_PX = 11.0
_SIZES = """
(least) => [...document.querySelectorAll("svg[role='img']")].filter((svg) => svg.getBoundingClientRect().width > 0).flatMap((svg) => {
  const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
  return [...svg.querySelectorAll("text")].filter((text) => parseFloat(getComputedStyle(text).fontSize) * scale < least).map((text) =>
    `${svg.querySelector("title")?.textContent ?? "untitled"}: "${text.textContent}" is smaller than ${least} px`);
})
"""


def small_texts(page: Page) -> list[str]:
    """One sentence for each text of an inline chart that the page shows less than 11 px high."""
    return page.evaluate(_SIZES, _LEAST_PX)


def text_violations(page: Page) -> list[str]:
    """One sentence for each two texts of an inline chart that overlap, and for each text that leaves its chart.

    Charts are the SVG elements with `role="img"`. An empty list says nothing if the page shows no chart: count them too.
    """
    return page.evaluate(_MEASURE, _SHRUNK_BY_PX)
