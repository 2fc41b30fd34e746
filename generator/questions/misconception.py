"""Misconception: a wrong idea or slip that is known to be common, under the id by which distractors name it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Misconception:
    """One entry of the catalogue."""

    id: str
    """`<topic>.<slug>`, e.g. `carb.residence-inverse`."""
    idea: str
    """The wrong reasoning as a statement: "A desert is a hot place"."""
    correction: str
    """Why it does not hold, and what does, in one or two sentences."""


class UnknownMisconception(KeyError):
    """A question names a misconception that the catalogue does not hold."""


class Catalogue(dict[str, Misconception]):
    """All misconceptions by id."""

    def __missing__(self, key: str) -> Misconception:
        raise UnknownMisconception(key)
