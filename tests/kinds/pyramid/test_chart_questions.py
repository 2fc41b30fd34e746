"""Levels and steps picked on pyramids: right by the numbers, wrong by a share taken for an amount, left out where they are tied."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from generator.kind import Subject
from generator.kinds.pyramid.chart_questions import ChartQuestions
from generator.questions.question import ChartReading, Made
from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo, library


def asked(of: Subject, sort: str) -> list[Made]:
    return [getattr(ChartQuestions(of, library().catalogue), sort)()]


def read(of: Subject, sort: str) -> list[tuple[tuple[str, ...], dict[str, str]]]:
    """The right labels, and the wrong idea behind each wrong label; nothing where it is not asked."""
    return [
        (item.right, {label: slip.misconception for slip in item.slips for label in slip.labels})
        for item in asked(of, sort) if isinstance(item, ChartReading)
    ]  # fmt: skip


def produced(*amounts: float) -> Subject:
    return pyramid(*(f"production: {amount}" for amount in amounts))


@pytest.mark.parametrize("record", ["ember_spring", "sill_lake", "harrow_plain_grassland", "tillet_bay"])
def test_smallest_share_is_neither_that_of_the_largest_loss_nor_that_of_the_chart(record: str) -> None:
    """Source: arithmetic on the numbers of the prompt."""
    of = demo(f"pyramid/{record}")
    (question,) = asked(of, "smallest_share")
    assert isinstance(question, ChartReading) and question.supposed
    told = [float(number.replace("\u202f", "")) for number in re.findall(r" (\d[\d\u202f.]*)(?=,| and|\.)", question.prompt)]
    own = [of.facts[f"{level.id}.production"].number for level in of.record.levels]
    assert len(told) == len(own) == 4
    shares, before = ([above / below for below, above in pairwise(of_levels)] for of_levels in (told, own))
    assert question.right == (question.labels[shares.index(min(shares))],)
    assert shares.index(min(shares)) not in (0, before.index(min(before)))


@pytest.mark.parametrize("amounts", [(1000, 100, 10), (1000, 100, 10, 0)])
def test_few_steps_and_levels_without_production_are_not_asked_about(amounts: tuple[float, ...]) -> None:
    assert [] == read(produced(*amounts), "smallest_share")


PLANTS = "gross_production: 1000, respiration: 500"


def test_share_respired_is_told_from_the_amount_respired() -> None:
    """Source: arithmetic: 500 of 1000, 60 of 80 and 9.9 of 10 are respired."""
    of = pyramid(PLANTS, "eaten: 100, egested: 20, respired: 60", "eaten: 12, egested: 2, respired: 9.9")
    assert [(("L2",), {"L0": "en.share-for-amount"})] == read(of, "respires_most")


@pytest.mark.parametrize("top", ["eaten: 12, egested: 2, respired: 7.5", "eaten: 12, production: 0.1"])
def test_tied_or_unknown_respiration_is_not_asked_about(top: str) -> None:
    """Source: arithmetic: 7.5 of 10 is the same share as 60 of 80."""
    assert [] == read(pyramid(PLANTS, "eaten: 100, egested: 20, respired: 60", top), "respires_most")


def test_top_level_that_respires_nearly_as_much_has_a_word_of_its_own() -> None:
    """Source: the record: small fish respire 84 % of what they take up, bass 82 %."""
    assert [(("Small fish",), {"Phytoplankton": "en.share-for-amount", "Bass": "en.accumulate"})] == read(demo("pyramid/tillet_bay"), "respires_most")


def test_no_more_are_asked_than_wanted() -> None:
    questions = ChartQuestions(demo("pyramid/ember_spring"), library().catalogue)
    assert (2, 1) == (len(questions.readings(2)), len(questions.readings(1)))
