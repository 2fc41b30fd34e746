"""What a teacher is told about marking guides: sums, sorts of idea, where numbers come from, what is doubtful or said twice."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from generator.course.guide_review import Review, Reviewed, review
from generator.course.library import Library
from generator.kinds import all_kinds
from generator.records.parts import SORTS
from generator.written.guide import Guided
from tests.kinds.small_records import library
from tests.written.small_question import CALCULATION, CHAIN, READING, sound


@cache
def of_course() -> Review:
    return review(library(), all_kinds())


def with_written(*written: Guided) -> Library:
    return replace(library(), written=written)


def one(guided: Guided) -> Reviewed:
    return review(with_written(guided), all_kinds()).questions[0]


def reviewed(name: str) -> Reviewed:
    return next(found for found in of_course().questions if found.guided.name == name)


def test_every_question_is_there_in_taught_order_of_its_topic() -> None:
    topics = [topic.title for topic in library().course.topics]
    places = [topics.index(found.topic) for found in of_course().questions]
    assert len(library().written) == len(places) and places == sorted(places)


def test_minutes_and_ideas_are_those_of_the_parts() -> None:
    """Energy in a bay: eleven marks at 2.3 minutes; the chain of five ideas at its end."""
    bay = reviewed("energy_in_a_bay")
    assert bay.minutes == pytest.approx(11 * 2.3)
    assert {"data": 2, "mechanism": 2, "result": 1} == dict(bay.sorts)
    assert set(of_course().sorts) <= {*SORTS, ""} and sum(of_course().sorts.values()) == sum(sum(found.sorts.values()) for found in of_course().questions)


def test_every_number_says_where_it_comes_from() -> None:
    origins = {origin.key: origin for origin in reviewed("oxygen_in_the_deep").origins}
    stated, worked = origins["aquatic_biome/lake:halden_deep.temperature"], origins["aquatic_biome/lake:halden_deep.oxygen_saturation"]
    assert "6.5 °C (stated in the record)" == stated.working and () == stated.sources
    assert worked.working.endswith("= 12.3 mg L⁻¹") and any(source.startswith("Benson") and source.endswith("(1984)") for source in worked.sources)


def test_parts_without_a_near_miss_are_named() -> None:
    """A calculation has its slips for near misses; a reading needs none."""
    bare = "ideas: [{id: a, says: A., not_enough: [no]}, {id: b, says: B.}, {id: c, says: C., not_enough: [no]}]"
    own = CHAIN.replace("ideas: {from: 'biome/temperate_grassland#few_trees'}", bare).replace("earns: [demand]", "earns: [a]")
    no_slips = "\n".join(line for line in CALCULATION.splitlines() if "slips:" not in line)
    assert [("a",), (), ("a",), (), ()] == [one(sound(text)).without_near_miss for text in (own, CHAIN, no_slips, CALCULATION, READING)]


def test_ideas_that_two_parts_share_are_told_once() -> None:
    (shared,) = review(with_written(sound(with_idea("Warm water holds less oxygen than cold water.", "Cold water can hold more oxygen than warm water."))), all_kinds()).shared
    assert ("A title, part a", "A title, part b", "Warm water holds less oxygen than cold water.") == (shared.one, shared.other, shared.says)
    assert () == review(with_written(sound(with_idea("Warm water holds less oxygen.", "Plants need light for growing."))), all_kinds()).shared


def with_idea(first: str, second: str) -> str:
    part = "  - {id: %s, command_word: state, marks: 1, needs: both, prompt: State it., ideas: [{id: i, says: %s}], award: {rule: each}}\n"
    return "parts:\n" + part % ("a", first) + part % ("b", second)


def test_doubts_stand_with_their_question_and_so_do_accepted_ones() -> None:
    warning = next(iter(library().warnings), None)
    assert warning is None or "written/" not in warning.place.file
    assert () == reviewed("energy_in_a_bay").warnings
    accepted = reviewed("energy_in_a_bay").guided.question.accepted_warnings
    assert accepted == reviewed("energy_in_a_bay").accepted


def test_other_numbers_are_counted_or_the_reason_is_given() -> None:
    assert "8 sets of other numbers can be drawn for its calculations." == reviewed("energy_in_a_bay").other_numbers
    assert 8 == len(reviewed("energy_in_a_bay").drawn)
    assert "It has no calculation." == reviewed("bottles_in_a_lake").other_numbers
