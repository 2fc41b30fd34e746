"""Statements on results: they go by what is told apart, and keep silent where chance could have it otherwise."""

from __future__ import annotations

import pytest

from generator.kinds.productivity.statement_questions import StatementQuestions
from generator.questions.claims import Claim
from generator.questions.question import Rejected, SeveralChoice
from tests.kinds.productivity.small_series import DEEP, GRAZED, GREW, TOP, bottles, harvest, of
from tests.kinds.small_records import demo, library, made


def claims(text: str, sort: str) -> list[Claim]:
    subject = of(text)
    record = subject.record.bottles or subject.record.harvest
    asked = getattr(StatementQuestions(subject, library().catalogue), sort)
    return list(asked() if sort == "_by_chance" else asked(record))


def test_depths_are_compared_where_their_gross_production_is_told_apart() -> None:
    """Source: arithmetic: 1.7 / 4 and 0.4 / 4 per hour; the same depth twice is not told apart."""
    assert ["More oxygen is made at 0 m than at 4 m"] == [claim.holds for claim in claims(bottles(TOP, DEEP), "_depths")]
    assert [] == claims(bottles(TOP, TOP | {"depth": "4"}), "_depths")


def test_photosynthesis_fades_with_the_light_and_respiration_need_not() -> None:
    """Source: arithmetic: 1.7 falls to 0.4, while 0.6 stays; the other way round nothing is said."""
    (claim,) = claims(bottles(TOP, DEEP), "_fading")
    assert claim.holds.startswith("Going from 0 m to 4 m, gross production falls by a larger share")
    assert [] == claims(bottles(DEEP | {"depth": "0"}, TOP | {"depth": "4"}), "_fading")
    assert [] == claims(bottles(TOP), "_fading")


def test_dark_bottles_are_compared_where_less_is_respired_below() -> None:
    """Source: arithmetic: losses of 1.1 above and 0.6 below, each with an error of 0.14: 0.5 is more than twice 0.2; 0.6 twice is not told apart."""
    (claim,) = claims(bottles(TOP | {"dark": "[6.9, 7.1]"}, DEEP), "_used")
    assert ("The dark bottles lost more oxygen at 0 m than at 4 m", "ps.night-only") == (claim.holds, claim.misconception)
    assert [] == claims(bottles(TOP, DEEP), "_used")


@pytest.mark.parametrize(("light", "said"), [("[9, 9.4]", "does not reach"), ("[8, 8.2]", "reaches the line"), ("[7, 7.2]", "does not reach")])
def test_bar_reaches_the_line_of_no_change_or_stays_clear_of_it(light: str, said: str) -> None:
    """Source: arithmetic: 9.2, 8.1 and 7.1 against 8.1 at the start, with standard errors of 0.1 to 0.2 each."""
    (claim,) = claims(bottles(TOP | {"light": light}), "_reaching")
    assert said in claim.holds and said not in claim.turned


def test_single_bottles_bear_no_statement() -> None:
    one = {"depth": "0", "initial": "[8]", "light": "[9]", "dark": "[7]"}
    assert [] == [claim for sort in ("_depths", "_used", "_reaching") for claim in claims(bottles(one, one | {"depth": "4"}), sort)]


OPEN, NETS = ("grazing: open", GRAZED), ("grazing: kept_out", GREW)


def test_plots_share_height_at_first_and_not_at_last() -> None:
    """Source: arithmetic: 44 and 44, then 128 and 84 with standard errors of 8 and 4: twice their sum is 24."""
    found = [claim.holds for claim in claims(harvest(NETS, OPEN), "_side_by_side")]
    assert ["On day 0 the bars of “P0” and “P1” overlap", "On day 50 the bars of “P0” and “P1” share no height"] == found


def test_bars_that_overlap_although_the_rule_tells_them_apart_are_not_spoken_of() -> None:
    """Source: arithmetic: 128 and 106 with errors of 8 and 4: 22 is more than twice 8.9, but less than twice 12."""
    near = ("grazing: open", ((0.0, "[10, 12]"), (50.0, "[25.5, 27.5]")))
    assert ["On day 0"] == [claim.holds[:8] for claim in claims(harvest(NETS, near), "_side_by_side")]


def test_what_was_eaten_is_set_against_a_half_and_against_chance() -> None:
    """Source: arithmetic: (84 - 40) of 84 is more than half by less than a fifth; (84 - 60) of 84 is less than half."""
    little = ("grazing: open", ((0.0, "[10, 12]"), (50.0, "[25, 27]")))
    assert [] == claims(harvest(NETS, OPEN), "_eaten")
    assert ["In the plot “P1” less than half of what grew was eaten"] == [claim.holds for claim in claims(harvest(NETS, little), "_eaten")]
    assert ["The amount eaten is more than chance alone would explain"] == [claim.holds for claim in claims(harvest(NETS, OPEN), "_by_chance")]
    assert [] == claims(harvest(("", GREW)), "_by_chance")


def test_growth_of_two_times_is_compared_only_where_told_apart() -> None:
    """Source: arithmetic: 44 to 128 to 132 g/m2; then 44 to 84 to 128, gains of 40 and 44 with errors near 6 and 9."""
    slower = ("", ((0.0, "[10, 12]"), (50.0, "[30, 34]"), (100.0, "[32, 34]")))
    alike = ("", ((0.0, "[10, 12]"), (50.0, "[20, 22]"), (100.0, "[30, 34]")))
    (claim,) = claims(harvest(slower), "_growth")
    assert claim.holds.endswith("more grew per day between day 0 and day 50 than between day 50 and day 100")
    assert [] == claims(harvest(alike), "_growth")
    assert [] == claims(harvest(("", GREW)), "_growth")


@pytest.mark.parametrize(("respiration", "said"), [("{value: 9, plus_minus: 0.1}", ["more"]), ("{value: 0.1, plus_minus: 0.1}", ["less"]), ("1.7", []), ("{value: 1.7, plus_minus: 0.1}", [])])
def test_respiration_is_set_against_net_production_where_both_have_their_errors(respiration: str, said: list[str]) -> None:
    """Source: arithmetic: net production is 84 / 50 = 1.68."""
    assert said == [claim.holds.split("respired ")[1].split()[0] for claim in claims(harvest((f"respiration: {respiration}", GREW)), "_respired")]


@pytest.mark.parametrize("record", ["halden_water_bottles", "harrow_plain_harvest"])
def test_both_demo_investigations_have_statements_to_check(record: str) -> None:
    assert isinstance(made(demo(f"productivity/{record}"))["statements"], SeveralChoice)


def test_few_results_bear_too_few_statements() -> None:
    subject = of(harvest(("", GREW)))
    assert isinstance(StatementQuestions(subject, library().catalogue).on_harvests(subject.record.harvest), Rejected)
