"""How much room text takes, measured in a wide typeface and with slack, because the reader's typeface is unknown."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import matplotlib
from matplotlib.font_manager import get_font

SLACK = 1.03
"""How much wider than in DejaVu Sans, itself wider than most, a text may come out."""
SMALLEST = 14.0
"""The least size of any text [px]: a chart drawn 700 px wide shows it at 11 px where it stands at its least width of 560 px."""
ASCENT, DESCENT = 0.94, 0.25
"""Room above and below the baseline, in text sizes; line boxes of browsers are as high."""
LEADING = 1.22
"""From baseline to baseline, in text sizes."""


@cache
def text_width(text: str, size: float, bold: bool = False) -> float:
    """Width of one line [px] at a text size [px]."""
    name = "DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"
    font = get_font(Path(matplotlib.get_data_path()) / "fonts" / "ttf" / name)
    font.set_size(100, 72)
    font.set_text(text, 0.0)
    return font.get_width_height()[0] / 64 / 100 * size * SLACK


def block_size(lines: tuple[str, ...], size: float, bold: bool = False) -> tuple[float, float]:
    """Width and height [px] of lines set under each other."""
    height = size * (ASCENT + DESCENT + LEADING * (len(lines) - 1))
    return max(text_width(line, size, bold) for line in lines), height


_JOINTS = re.compile(
    r"(?<=\d) (?=\S)"  # a number and what it counts
    r"|(?<=±) | (?=±)"
    r"| (?=\S*[⁻²³])"  # a unit and its power
    r"|(?<=\b[kGTP]g) (?=[CNP]\b)|(?<=\bGt) (?=[CNP]\b)|(?<=\b[tg]) (?=[CNP]\b)"  # a mass and its element
)


def glued(text: str) -> str:
    """The text with numbers and their units tied by spaces at which no line breaks.

    >>> glued("grows by 5.1 ± 0.02 Gt C yr⁻¹ in all").split(" ")
    ['grows', 'by', '5.1\xa0±\xa00.02\xa0Gt\xa0C\xa0yr⁻¹', 'in', 'all']
    """
    return _JOINTS.sub("\N{NO-BREAK SPACE}", text)


def wrap_evenly(text: str, size: float, width: float, bold: bool = False) -> tuple[str, ...]:
    """Like `wrap`, on as few lines, which are as equally long as words allow, so that no word is left alone."""
    count, low, high = len(wrap(text, size, width, bold)), 0.0, width
    while high - low > 1:
        middle = (low + high) / 2
        low, high = (low, middle) if len(wrap(text, size, middle, bold)) <= count else (middle, high)
    return wrap(text, size, high, bold)


def wrap(text: str, size: float, width: float, bold: bool = False) -> tuple[str, ...]:
    """The text broken at plain spaces into lines no wider than `width` [px]; a word wider than that keeps its own line."""
    lines: list[str] = []
    for word in filter(None, text.split(" ")):
        joined = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(joined, size, bold) <= width:
            lines[-1] = joined
        else:
            lines.append(word)
    return tuple(lines) or ("",)


def break_in_two(text: str, size: float) -> tuple[str, ...]:
    """The text on two lines as equally wide as its words allow; one line where there is only one word."""
    words = text.split(" ")
    breaks = [(" ".join(words[:cut]), " ".join(words[cut:])) for cut in range(1, len(words))]
    return min(breaks, key=lambda lines: block_size(lines, size)[0], default=(text,))


def size_to_fit(text: str, size: float, width: float, bold: bool = False, smallest: float = SMALLEST) -> float:
    """The text size at which the text is no wider than `width` [px], between `smallest` and `size`."""
    return max(smallest, min(size, size * width / max(text_width(text, size, bold), 1e-9)))
