"""Records made from the course's own by drawing their numbers anew: still possible in nature, but never seen by the author of a builder."""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

import yaml

from generator.kind import Subject
from generator.kinds import all_kinds
from generator.records.checking import check
from generator.records.located import located
from tests.kinds.small_records import CONTENT

KEPT = {"at", "latitude", "longitude", "share", "level", "trophic_level", "numbers", "questions", "explanations", "people", "hours", "version"}
"""Fields whose numbers stay: places, parts of one whole, and what sentences and an author's own questions rest on."""
TOGETHER = {"production", "eaten", "egested", "respired", "respiration", "gross_production", "need"}
"""Fields whose numbers change by one factor in the whole record, since they add up: the energy of a pyramid."""
SPREAD = 0.25
"""The most that a number is changed, as a part of it."""
WANTED, ATTEMPTS = 200, 3000


def redrawn(tree: Mapping[str, Any], draw: random.Random) -> dict[str, Any]:
    """The same record with other numbers. Those of one list or range change by one factor, so that their order stays."""
    whole = draw.uniform(1 - SPREAD, 1 + SPREAD)

    def again(value: Any, key: str, factor: float | None = None) -> Any:
        if key in KEPT:
            return value
        if isinstance(value, dict):
            of_range = "value" in value or "low" in value
            own = _factor(key) if of_range else None
            return {name: again(inner, key if of_range else name, own) for name, inner in value.items()}
        if isinstance(value, list):
            shared = _factor(key) if all(isinstance(one, int | float) for one in value) else None
            return [again(one, key, shared) for one in value]
        if isinstance(value, bool) or not isinstance(value, int | float):
            return value
        new = value * (_factor(key) if factor is None else factor)
        return round(new) if isinstance(value, int) else float(f"{new:.3g}")

    def _factor(key: str) -> float:
        return whole if key in TOGETHER else draw.uniform(1 - SPREAD, 1 + SPREAD)

    return {key: again(value, key) for key, value in tree.items()}


@cache
def generated_subjects() -> tuple[Subject[Any], ...]:
    """As many records as are wanted, each free of errors, from all kinds in turn; the same on every machine."""
    found: list[Subject[Any]] = []
    for attempt, path in zip(range(ATTEMPTS), _paths(), strict=False):
        subject = _redrawn_subject(path.parent.name, f"{path.stem}_{attempt}", path.read_text("utf-8"), attempt)
        if subject is not None:
            found.append(subject)
        if len(found) == WANTED:
            break
    return tuple(found)


def _paths() -> Iterator[Any]:
    """The records of each kind that computes, over and over, so that every kind has as many."""
    of_kind = [sorted((CONTENT / name).glob("*.yaml")) for name, kind in all_kinds().items() if kind.computes]
    for turn in range(ATTEMPTS):
        yield from (paths[turn % len(paths)] for paths in of_kind)


def _redrawn_subject(kind: str, name: str, text: str, seed: int) -> Subject[Any] | None:
    draw = random.Random(seed)
    tree = yaml.safe_load(text)
    made = yaml.safe_dump(redrawn(tree, draw), allow_unicode=True, sort_keys=False)
    of = all_kinds()[kind]
    record, problems = check(located(made.encode(), "drawn.yaml"), of.record)
    if record is None or problems or any(finding.severity.name == "ERROR" for finding in of.findings(record)):
        return None
    return of.subject(name, record)
