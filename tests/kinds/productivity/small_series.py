"""Records of productivity of a few lines: bottles at some depths, or plots with harvests."""

from __future__ import annotations

from generator.kind import Subject
from tests.kinds.small_records import subject

DESIGN = """\
question: A question?
idea: An idea.
hypothesis: A hypothesis.
variables: {independent: one thing, dependent: another, controlled: [{what: a third, how: by care}]}
control: The dark bottle.
cautions: [Take care.]
steps: [Do it.]
sources_of_error: [{what: a slip, effect: a wrong number, mend: do it again}]
"""
TOP = {"depth": "0", "initial": "[8, 8.2]", "light": "[9, 9.4]", "dark": "[7.4, 7.6]"}
"""Means 8.1, 9.2 and 7.5; standard errors 0.1, 0.2 and 0.1."""
DEEP = {"depth": "4", "initial": "[6, 6.2]", "light": "[6, 5.8]", "dark": "[5.4, 5.6]"}
"""Means 6.1, 5.9 and 5.5; standard errors 0.1 each."""


def bottles(*depths: dict[str, str], head: str = "", **shared: str) -> str:
    """The text of a record with depths `d0`, `d1`, ..., each by its fields; 4 hours of incubation in 10 hours of light."""
    usual = {"incubation": "4", "light_hours": "10"} | shared
    lines = [f"    - {{id: d{number}, {_fields(depth)}}}\n" for number, depth in enumerate(depths or (TOP,))]
    return f"{head}{DESIGN}bottles:\n  {_lines(usual)}  depths:\n{''.join(lines)}"


def harvest(*plots: tuple[str, tuple[tuple[float, str], ...]], head: str = "", **shared: str) -> str:
    """The text of a record with plots `p0`, `p1`, ...: each its own fields, and its harvests as (day, dry masses)."""
    usual = {"quadrat_area": "0.25"} | shared
    lines = []
    for number, (fields, cuts) in enumerate(plots):
        listed = ", ".join(f"{{id: h{at}, day: {day:g}, dry_mass: {masses}}}" for at, (day, masses) in enumerate(cuts))
        lines.append(f"    - {{id: p{number}, {f'{fields}, ' if fields else ''}harvests: [{listed}]}}\n")
    return f"{head}{DESIGN}harvest:\n  {_lines(usual)}  plots:\n{''.join(lines)}"


GREW = ((0.0, "[10, 12]"), (50.0, "[30, 34]"))
"""Means 11 and 32 g, so 44 and 128 g/m2; standard errors 1 and 2 g, so 4 and 8 g/m2."""
GRAZED = ((0.0, "[10, 12]"), (50.0, "[20, 22]"))
"""Means 11 and 21 g, so 44 and 84 g/m2; standard errors 1 g, so 4 g/m2."""


def of(text: str) -> Subject:
    """The record that the text holds, with its facts."""
    return subject("productivity", text)


def _fields(depth: dict[str, str]) -> str:
    return ", ".join(f"{name}: {value}" for name, value in (TOP | depth).items())


def _lines(fields: dict[str, str]) -> str:
    return "  ".join(f"{name}: {value}\n" for name, value in fields.items())
