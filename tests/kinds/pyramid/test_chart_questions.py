"""Levels and steps picked on pyramids: right by the numbers, wrong by a share taken for an amount, left out where they are tied."""

from __future__ import annotations

import pytest

from generator.kind import Subject
from generator.kinds.pyramid.chart_questions import ChartQuestions
from generator.questions.question import ChartReading, Made
from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo, library


def asked(of: Subject, sort: str) -> list[Made]:
    found = getattr(ChartQuestions(of, library().catalogue), sort)()
    return list(found) if sort == "second_widest" else [found]


def read(of: Subject, sort: str) -> list[tuple[tuple[str, ...], dict[str, str]]]:
    """The right labels, and the wrong idea behind each wrong label; nothing where it is not asked."""
    return [
        (item.right, {label: slip.misconception for slip in item.slips for label in slip.labels})
        for item in asked(of, sort) if isinstance(item, ChartReading)
    ]  # fmt: skip


def produced(*amounts: float) -> Subject:
    return pyramid(*(f"production: {amount}" for amount in amounts))


def test_smallest_share_need_not_be_where_most_is_lost() -> None:
    """Source: arithmetic: 10 %, 20 % and 5 % pass on; 900, 80 and 19 do not."""
    assert [(("L2 to L3",), {"L0 to L1": "en.share-for-amount", "L1 to L2": "en.eff-complement"})] == read(produced(1000, 100, 20, 1), "smallest_share")


@pytest.mark.parametrize("amounts", [(1000, 100, 10, 1), (1000, 100, 9.7, 0.99), (1000, 100, 10)])
def test_tied_shares_and_few_steps_are_not_asked_about(amounts: tuple[float, ...]) -> None:
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


def test_pyramids_that_stand_on_their_heads_are_asked_about() -> None:
    """Source: the record: 3.6, 2.0, 1.8 and 0.3 g/m2 from zooplankton and small fish to phytoplankton and bass."""
    assert [(("Small fish",), {"Phytoplankton": "bio.inverted"})] == read(demo("pyramid/tillet_bay"), "second_widest")


def test_a_pyramid_whose_base_comes_second_is_not_asked_about() -> None:
    """Trees are fewer than the insects on them, and more than the titmice."""
    assert [] == read(demo("pyramid/hollin_wood"), "second_widest")


@pytest.mark.parametrize("masses", [(3, 2, 1), (3, 3, 1), (1, 2, 2), (1, 2), (1, 2, 0)])
def test_upright_tied_and_low_pyramids_of_biomass_are_not_asked_about(masses: tuple[float, ...]) -> None:
    levels = (f"production: {10.0 ** -n}, biomass: {mass}, energy_content: 20" for n, mass in enumerate(masses))
    assert [] == read(pyramid(*levels), "second_widest")


def test_no_more_are_asked_than_wanted() -> None:
    questions = ChartQuestions(demo("pyramid/ember_spring"), library().catalogue)
    assert (2, 1) == (len(questions.readings(2)), len(questions.readings(1)))
