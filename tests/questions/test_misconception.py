"""A misconception says three things, and feedback is put together from them: why and what for everyone, the idea for readers who were sure."""

from __future__ import annotations

import pytest

from generator.questions.misconception import Catalogue, Misconception, UnknownMisconception

JULY = Misconception(
    id="clim.hemisphere", idea="July is summer everywhere.", because="south of the equator July is winter.", instead="check the latitude."
)  # fmt: skip


def test_correction_is_the_reason_and_what_holds_in_sentences_of_their_own() -> None:
    assert "South of the equator July is winter. Check the latitude." == JULY.correction


def test_refutation_quotes_the_idea_and_denies_it() -> None:
    assert "Some think: “July is summer everywhere.” That does not hold." == JULY.refutation


def test_an_answer_is_told_about_itself_first_and_the_idea_stands_apart() -> None:
    told = JULY.answers("That is Norway.")
    assert ("clim.hemisphere", f"That is Norway. {JULY.correction}") == (told["misconception"], told["feedback"])
    assert JULY.refutation == told["refutation"]


def test_where_nothing_is_said_about_the_answer_itself_the_misconception_says_all() -> None:
    assert (JULY.correction, JULY.refutation) == (JULY.answers()["feedback"], JULY.answers()["refutation"])


def test_an_id_that_the_catalogue_lacks_is_told_by_its_name() -> None:
    with pytest.raises(UnknownMisconception, match="clim.other"):
        Catalogue({JULY.id: JULY})["clim.other"]
