"""The way from the top of a file to one of its values, and how an author would point at it."""

from __future__ import annotations

from collections.abc import Iterable

FieldPath = tuple[str | int, ...]
"""Field names and list positions (from 0), outermost first; `()` is the whole file."""


def pointed(path: Iterable[str | int], note: str = "") -> str:
    """The path as text, with a note behind it.

    >>> pointed(("stations", 0, "monthly_precip", 1), "February")
    'stations[0].monthly_precip[1] (February)'
    """
    text = ""
    for step in path:
        if isinstance(step, int):
            text += f"[{step}]"
        else:
            text += f".{visible(step)}" if text else visible(step)
    return f"{text} ({note})".lstrip() if note else text


INVISIBLE = {
    "\u00a0": "no-break space",
    "\u00ad": "soft hyphen",
    "\u2007": "figure space",
    "\u200b": "zero-width space",
    "\u200c": "zero-width non-joiner",
    "\u200d": "zero-width joiner",
    "\u200e": "left-to-right mark",
    "\u200f": "right-to-left mark",
    "\u202f": "narrow no-break space",
    "\u2060": "word joiner",
    "\ufeff": "byte-order mark",
}
"""Characters that word processors and web pages leave in copied text, and that nobody sees."""


def visible(text: str) -> str:
    """The text on one line, with unseen characters by name.

    >>> visible("tundra\u00a0")
    'tundra<no-break space>'
    """
    seen = "".join(f"<{INVISIBLE[ch]}>" if ch in INVISIBLE else ch if ch.isprintable() else " " for ch in text)
    return " ".join(seen.split())
