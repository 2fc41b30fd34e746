"""What Material's pages lack for people who use a screen reader, mended in the finished HTML.

What a keyboard lacks is mended by assets/theme.js in the open page.

Each mend names the exact text that it replaces, and says so when Material has changed it.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Mend:
    """One exact piece of Material's HTML and what stands in its place."""

    target: str
    replacement: str
    because: str


MENDS = (
    Mend(
        '<div class="md-search" data-md-component="search" role="dialog">',
        '<div class="md-search" data-md-component="search" role="dialog" aria-label="Search">',
        "a dialog needs a name (WCAG 2.2, 4.1.2)",
    ),
)


class MaterialChanged(Exception):
    """Material's HTML is not what a mend was written for."""


def mended(html: str) -> str:
    """A whole page with every mend applied.

    Raises MaterialChanged if the text that a mend replaces is not in the page exactly once.
    """
    for mend in MENDS:
        if html.count(mend.target) != 1:
            raise MaterialChanged(
                f"expected once in every page: {mend.target}\n    found: {html.count(mend.target)} times\n"
                f"    needed because {mend.because}\n    mend: compare MENDS with the templates of the installed theme"
            )
        html = html.replace(mend.target, mend.replacement)
    return _without_idle_label(html)


def _without_idle_label(html: str) -> str:
    """On the page of a section Material prints the label of a switch that only other pages have (WCAG 2.2, 1.3.1)."""
    return html if ' id="__toc"' in html else html.replace(' for="__toc"', "")
