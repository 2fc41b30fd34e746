"""What a teacher is promised of the demo course's written questions."""

from __future__ import annotations

import re

import pytest
from figures.drawing.light_profile import depth_step
from figures.light_profile import LightProfile

from generator.kinds import all_kinds
from generator.pages.site import Site
from generator.records.parts import SORTS
from generator.written.guide import Guided
from generator.written.record import FromChain, WrittenPart
from tests.kinds.small_records import library

each = pytest.mark.parametrize("guided", library().written, ids=lambda guided: guided.name)


@each
def test_every_idea_says_which_sort_it_is_and_every_line_where_it_is_taught(guided: Guided) -> None:
    ideas = [line for guide in guided.guides if guide.number is None for line in guide.lines]
    assert [] == [line.id for line in ideas if line.gives not in SORTS]
    assert [] == [line.id for guide in guided.guides for line in guide.lines if line.teaches not in library().subjects]


@each
def test_a_calculation_is_worth_two_marks_for_set_up_and_answer(guided: Guided) -> None:
    """Common practice: one for the set-up with units, one for the answer with its unit."""
    assert [] == [guide.part.id for guide in guided.guides if guide.worked and [("setup", 1), ("answer", 1)] != [(line.id, line.marks) for line in guide.lines]]


@each
def test_a_question_of_ten_marks_takes_about_twenty_three_minutes(guided: Guided) -> None:
    """Common practice in timed written tests; three of them fit into seventy minutes."""
    assert 8 <= guided.question.marks <= 12
    minutes = sum(guide.minutes for guide in guided.guides)
    assert abs(minutes / guided.question.marks - 2.3) <= 0.1
    assert 3 * 10 * minutes / guided.question.marks <= 70


@each
def test_explanations_are_worth_two_or_three_marks_and_names_one_each(guided: Guided) -> None:
    """Common practice: three joined ideas for a full explanation, one phrase for a name."""
    marks = {(guide.part.command_word, guide.part.marks) for guide in guided.guides}
    assert {points for word, points in marks if word == "explain"} <= {2, 3}
    assert {points for word, points in marks if word in ("identify", "state", "read_off")} <= {1, 2}


@each
def test_parts_of_two_marks_and_more_have_three_samples_and_one_that_earns_nothing(guided: Guided) -> None:
    parts = [guide for guide in guided.guides if guide.part.marks >= 2]
    assert parts and all(len(guide.samples) >= 3 and any(not sample.earns for sample in guide.samples) for guide in parts)


def texts_of(part: WrittenPart) -> list[str]:
    """Prompt, ideas and samples as they are written."""
    own = () if isinstance(part.ideas, FromChain) else part.ideas
    return [
        part.prompt, *(text for idea in own for text in (idea.says, *idea.accept, *idea.not_enough)), *(text for sample in part.samples for text in (sample.text, sample.comment)),
    ]  # fmt: skip


@each
def test_no_number_is_typed_where_a_fact_or_a_calculation_gives_it(guided: Guided) -> None:
    """The freezing point of water is no number of a record."""
    typed = [re.sub(r"\{[^}]*\}|\b0 °C", "", text) for part in guided.question.parts for text in texts_of(part)]
    assert [] == [text for text in typed if re.search(r"\d", text)]


@each
def test_samples_of_a_calculation_borrow_no_number_of_another_fact_for_their_answer(guided: Guided) -> None:
    samples = [sample.text for part in guided.question.parts if part.calculate for sample in part.samples]
    assert [] == [text for text in samples if re.search(r"=\s*\{[a-z_]+/", text)]


def test_a_reading_is_held_to_the_marks_that_its_diagram_is_drawn_with() -> None:
    """Of light profiles, the only diagrams that a part of the demo course has students read a number off."""
    site = Site(library=library(), kinds=all_kinds())
    checked = 0
    for guided in library().written:
        keys = [one.chart for one in guided.question.stimulus if one.chart]
        charts = [site.charts_of(key.partition("#")[0])[key.partition("#")[2]] for key in keys]
        for reading in (part.read for part in guided.question.parts if part.read):
            (profile,) = (chart for chart in charts if isinstance(chart, LightProfile))
            assert depth_step(profile.lowest_m) == reading.gridline
            checked += 1
    assert checked
