"""Draws each specimen once for all tests of a run, and finds shapes and words in it."""

from __future__ import annotations

import re
from functools import cache
from xml.etree import ElementTree

from figures import Chart
from figures.drawing import draw

drawn = cache(draw)


def corners(chart: Chart, part: str) -> list[list[tuple[float, float]]]:
    """The corners of every shape of a name [px]."""
    named = [e for e in ElementTree.fromstring(drawn(chart)).findall(".//{*}path") if e.get("data-part") == part]
    return [[(float(x), float(y)) for x, y in re.findall(r"([-\d.]+) ([-\d.]+)", path.get("d") or "")] for path in named]


def words(chart: Chart) -> str:
    """All texts, one after the other, with plain spaces."""
    return " | ".join(element.text or "" for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}text")).replace("\xa0", " ")
