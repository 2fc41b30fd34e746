"""Draws each specimen once for all tests of a run."""

from __future__ import annotations

from functools import cache

from figures.drawing import draw

drawn = cache(draw)
