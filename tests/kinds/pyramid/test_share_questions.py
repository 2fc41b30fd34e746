"""The way of energy, the shares of one level, and base and top."""

from __future__ import annotations

import re

import pytest

from generator.kinds.pyramid.share_questions import CHANGES, ShareQuestions
from generator.questions.question import Matching, NumberEntry, Rejected
from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo, library


def shares(of: object) -> ShareQuestions:
    return ShareQuestions(of, library().catalogue)


@pytest.mark.parametrize("record", ["ember_spring", "sill_lake", "harrow_plain_grassland", "hollin_wood", "tillet_bay"])
def test_each_change_lowers_a_share_of_its_own(record: str) -> None:
    question = shares(demo(f"pyramid/{record}")).lowered_share()
    assert isinstance(question, Matching)
    assert ["Eaten, of what the level below builds up", "Taken up, of what is eaten", "Built up, of what is taken up"] == [pair.partner for pair in question.pairs]
    assert {"Egested, of what is eaten"} == set(question.partners) - {pair.partner for pair in question.pairs}
    assert all(any(pair.text == text for text, _ in ways) for pair, ways in zip(question.pairs, CHANGES.values(), strict=True))


def test_shares_of_a_level_stand_beside_what_is_egested() -> None:
    """Source: arithmetic on the numbers of the prompt: each share is its part divided by the whole that stands behind "of"."""
    question = shares(pyramid("production: 500", "eaten: 100, egested: 40, respired: 45")).shares_match()
    assert isinstance(question, Matching)
    below, eaten, egested, built = (float(found) for found in re.findall(r"([\d.]+) kJ", question.prompt))
    assert (below, eaten, egested, built) != (500, 100, 40, 15)
    found = [float(pair.partner.removesuffix(" %")) for pair in question.pairs]
    expected = [eaten / below, (eaten - egested) / eaten, built / (eaten - egested), built / below]
    assert [pytest.approx(100 * share, rel=0.005) for share in expected] == found
    (left,) = set(question.partners) - {pair.partner for pair in question.pairs}
    assert float(left.removesuffix(" %")) == pytest.approx(100 * egested / eaten, rel=0.005)


def test_shares_that_meet_in_the_record_are_matched_with_numbers_whose_shares_do_not() -> None:
    """Source: arithmetic: 100 of 500 are 20 %, and so are 20 of 100."""
    question = shares(pyramid("production: 500", "eaten: 100, egested: 20, respired: 60")).shares_match()
    assert isinstance(question, Matching)
    assert len(set(question.partners)) == 5


@pytest.mark.parametrize("level", ["eaten: 100, egested: 0, respired: 60", "production: 20"])
def test_shares_that_are_not_known_are_not_matched(level: str) -> None:
    assert isinstance(shares(pyramid("production: 500", level)).shares_match(), Rejected)


def test_base_is_so_many_times_the_top() -> None:
    """Source: arithmetic on the record: 5800/4, 9400/4, 4/5800, 50/4, and 10 to the third."""
    question = shares(demo("pyramid/sill_lake")).times_the_top()
    assert isinstance(question, NumberEntry)
    assert ("1450", ["2350", "0.000690", "12.5", "1000"]) == (question.answer, [slip.shown for slip in question.slips])


def test_base_is_compared_only_where_the_printed_numbers_give_the_key() -> None:
    """Source: arithmetic: 33 472 / 8.368 is 4000, but 33 472 / 8.37, as the page prints it, 3999."""
    assert isinstance(shares(demo("pyramid/ember_spring")).times_the_top(), Rejected)


def test_top_that_produces_nothing_is_no_divisor() -> None:
    assert isinstance(shares(pyramid("production: 5", "production: 0")).times_the_top(), Rejected)
