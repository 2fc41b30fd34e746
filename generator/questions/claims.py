"""Statements about data, of which some are shown as they hold and others as a wrong idea turns them: pick those that hold."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from generator.questions.making import Draft, Sound, Wrong, drawn, several
from generator.questions.misconception import Catalogue
from generator.questions.question import Made, Rejected

HOLD, DO_NOT = 2, 2
"""How many statements of each sort a question has; now and then one more of either."""

_IN_WORDS = {HOLD: "two", HOLD + 1: "three"}


@dataclass(frozen=True)
class Claim:
    """What the data say about one thing, and what somebody with a wrong idea would say of it."""

    holds: str
    turned: str
    """The same, gone wrong."""
    because: str
    """How it is: the feedback to both, so it must not say which of the two was picked."""
    misconception: str
    seen: bool = field(default=False, repr=False)
    """Whether a single look tells it: others come first as those that hold. Draws go by the repr, so it is no part of that."""
    instead: str = field(default="", repr=False)
    """What to say of the turned statement in place of the misconception's correction, where that would not fit it."""


def which_hold(draft: Draft, claims: Iterable[Claim], catalogue: Catalogue, *, salt: str) -> Made:
    """Statements drawn from the claims, each claim at most once, as it holds or turned; the solution says what shows the right ones.

    A prompt that asks "Which of these" asks for so many of them as hold.
    """
    found = sorted(drawn(claims, salt, draft.id), key=lambda claim: claim.seen)
    if len(found) < HOLD + DO_NOT:
        return Rejected(draft.id, f"the data bear {len(found)} statements, expected {HOLD + DO_NOT}")
    extra = len(found) > HOLD + DO_NOT
    hold = HOLD + (extra and drawn((0, 1), salt, draft.id, "more")[0])
    picked = found[: HOLD + DO_NOT + extra]
    prompt = draft.prompt.replace("Which of these", f"Which {_IN_WORDS[hold]} of these", 1)
    solved = replace(draft, prompt=prompt, solution=" ".join(claim.because for claim in picked[:hold]))
    right = [Sound(claim.holds, claim.because) for claim in picked[:hold]]
    wrong = [Wrong(claim.turned, claim.misconception, claim.because, claim.instead) for claim in picked[hold:]]
    return several(solved, right, wrong, catalogue, salt=salt)
