"""Spec of an explanation chain, drawn as numbered boxes that arrows join from cause to effect."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from figures.chart import Chart


@dataclass(frozen=True, kw_only=True)
class ChainSequence(Chart):
    """One chain."""

    steps: tuple[str, ...]
    """Whole sentences in causal order, plain text; at least one."""
    FITS_A_PHONE: ClassVar[bool] = True
