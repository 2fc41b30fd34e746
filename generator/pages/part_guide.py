"""What a part of a written question needs wherever it stands: the box for its number, what follows from known slips, who teaches it."""

from __future__ import annotations

from collections.abc import Iterator

from generator.course.written_questions import FOLDER
from generator.pages.answers import FollowedUp
from generator.pages.page import link, record_uri
from generator.pages.questions import answer_box
from generator.pages.site import Site
from generator.written.carried_on import carried_on
from generator.written.guide import ANSWER, Guided, PartGuide
from generator.written.record import WrittenPart

LINES_FOR_A_MARK = 3
"""Ruled lines on paper."""


def number_box(guide: PartGuide, guided: Guided, field: str = "part") -> str:
    """Where the number of a calculation or a reading is typed and marked; nothing for a part in words. Its id begins with `field`."""
    name = f"{FOLDER}/{guided.name}/{guide.part.id}/{ANSWER}"
    return answer_box(guide.number.entry, name, f"{field}-{guide.part.id}-answer", tuple(followed_up(guided, guide.part))) if guide.number else ""


def followed_up(guided: Guided, part: WrittenPart) -> Iterator[FollowedUp]:
    """What follows rightly from each known slip in the parts that this one carries on."""
    for earlier in part.calculate.carries_on if part.calculate else ():
        number = guided[earlier].number
        for slip in number.entry.slips if number else ():
            wrong = (slip.accepted.low + slip.accepted.high) / 2
            if followed := carried_on(guided, part.id, {earlier: wrong}).worked:
                entry = followed.entry
                yield FollowedUp(entry.accepted, entry.answer, f"It follows from {slip.shown} in part {earlier}. That was a slip there, but it loses no mark here.")


def teachers(site: Site, guide: PartGuide, page: str) -> list[tuple[str, str]]:
    """Title and address of each record on the site that teaches an idea of the part."""
    records = dict.fromkeys(line.teaches for line in guide.lines if line.teaches and site.is_shown(line.teaches))
    return [(site.library.subjects[record].record.title, link(page, record_uri(record))) for record in records]


def marks_in_words(site: Site, marks: int) -> str:
    """`1 mark`, `2 marks`, by the word that the course has for them."""
    word = site.library.course.marks_word
    return f"{marks} {word.removesuffix('s') if marks == 1 else word}"
