"""Misconception: a wrong idea or slip that is known to be common, under the id by which distractors name it.

Feedback has the form of a refutation: the idea, why it does not hold, what does. Refutation texts correct wrong ideas better than
plain explanation does, most of all those that were held with confidence (van Loon and others 2015).
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Misconception:
    """One entry of the catalogue."""

    id: str
    """`<topic>.<slug>`, e.g. `carb.residence-inverse`."""
    idea: str
    """The wrong reasoning as a statement: "A desert is a hot place."."""
    because: str
    """What breaks it, to be read on after "That does not hold:"; it ends as a sentence, and need not begin as one."""
    instead: str
    """What does hold, or what to do, to be read on after "Instead:"."""

    @property
    def correction(self) -> str:
        """Why it does not hold, and what does, in sentences of their own."""
        return f"{_begun(self.because)} {_begun(self.instead)}".strip()

    @property
    def refutation(self) -> str:
        """The idea quoted and denied; what is said of the answer, why it does not hold, and what does, follow it."""
        return f"Some think: “{self.idea}” That does not hold."

    def answers(self, about: str = "", instead: str = "") -> dict[str, str]:
        """What is said to an answer that the idea leads to, under the names of the fields that hold it.

        Feedback is for everyone. It begins with `about`, a sentence on this very answer, and goes on with the correction, or with `instead`
        where that fits the answer better. A reader who was sure of the answer is told the refutation before it.
        """
        return {"misconception": self.id, "feedback": f"{about} {instead or self.correction}".strip(), "refutation": self.refutation}


def _begun(text: str) -> str:
    return text[:1].upper() + text[1:]


class UnknownMisconception(KeyError):
    """A question names a misconception that the catalogue does not hold."""


class Catalogue(dict[str, Misconception]):
    """All misconceptions by id."""

    def __missing__(self, key: str) -> Misconception:
        raise UnknownMisconception(key)
