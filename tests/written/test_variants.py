"""Parallel variants of a written question: one draw for all its parts and texts, fair as those of the self-check, or a reason why not."""

from __future__ import annotations

import re
from functools import cache

import pytest

from figures import DataTable

from generator.quantities import shown
from generator.written.variants import Variant, variants
from tests.kinds.small_records import library
from tests.written.small_question import CALCULATION, CARRYING, CHAIN, HEAD, READING, sound

QUESTIONS = {guided.name: guided for guided in library().written}
IN_TEXT = HEAD.replace("Look at the share of the trees.", "'Perch build up {pyramid/sill_lake:perch.production}, pike {pyramid/sill_lake:pike.production}.'")
_QUANTITY = re.compile(rf"[\d{shown.THIN}.]+(?= [a-zA-Z°%])")


@cache
def bays() -> tuple[Variant, ...]:
    return variants(QUESTIONS["energy_in_a_bay"]).drawn


def result(variant: Variant, part: str) -> float:
    worked = variant.question[part].worked
    assert worked is not None
    return worked.result.number


def given(variant: Variant, part: str) -> dict[str, float]:
    worked = variant.question[part].worked
    assert worked is not None
    return {name: fact.number for name, fact in worked.entry.given.items()}


def test_eight_variants_of_a_question_are_drawn_each_with_other_numbers() -> None:
    assert 8 == len(bays()) == len({variant.stimulus for variant in bays()})
    assert bays() == variants(QUESTIONS["energy_in_a_bay"]).drawn
    assert 3 == len(variants(QUESTIONS["energy_in_a_bay"], 3).drawn)


def test_all_parts_share_the_numbers_that_stand_in_the_text() -> None:
    for variant in bays():
        in_text = set(_QUANTITY.findall(" ".join(map(str, variant.stimulus))))
        for part in ("a", "b", "d"):
            worked = variant.question[part].worked
            assert worked is not None
            assert set(_QUANTITY.findall(worked.setup)) <= in_text


def test_keys_follow_from_the_drawn_numbers() -> None:
    """Worked out here anew: net production, growth, transfer efficiency of the two results, and an area in hectares."""
    for variant in bays():
        a, b, d = (given(variant, part) for part in "abd")
        assert a["gross"] - a["respired"] == pytest.approx(result(variant, "a"))
        assert b["eaten"] - b["egested"] - b["respired"] == pytest.approx(result(variant, "b"))
        assert 100 * result(variant, "b") / result(variant, "a") == pytest.approx(result(variant, "c"))
        assert d["need"] / d["flow"] / 10_000 == pytest.approx(result(variant, "d"))


def test_nature_is_not_broken_by_a_draw() -> None:
    """Zooplankton never eats more than phytoplankton builds up, and no share passes 100 %: the record's own order stays."""
    for variant in bays():
        assert given(variant, "b")["eaten"] < result(variant, "a")
        assert 0 < result(variant, "c") < 100


def test_a_drawn_number_has_as_many_digits_as_the_record_s() -> None:
    old = QUESTIONS["energy_in_a_bay"]["b"].worked
    assert old is not None
    for variant in bays():
        new = variant.question["b"].worked
        assert new is not None
        assert [len(number) for number in _QUANTITY.findall(old.setup)] == [len(number) for number in _QUANTITY.findall(new.setup)]


def test_results_stay_near_those_of_the_record() -> None:
    """Within a factor of three, as in the self-check; a small rest of large numbers would else be anything."""
    for variant in variants(QUESTIONS["energy_in_a_bay"], 20).drawn:
        for guide in variant.question.guides:
            old, new = QUESTIONS["energy_in_a_bay"][guide.part.id].worked, guide.worked
            assert old is not None and new is not None and 1 / 3 <= new.result.number / old.result.number <= 3


def test_a_sample_that_quotes_what_is_worked_out_month_by_month_follows() -> None:
    """The year's evapotranspiration of a station is the sum of twelve steps, each by a rule of its own."""
    drawn = variants(QUESTIONS["late_fires"]).drawn
    samples = [variant.question["b"].samples[-1].text for variant in drawn]
    texts = [" ".join(map(str, variant.stimulus)) for variant in drawn]
    assert 8 == len(drawn) and len(set(samples)) > 1
    assert all(set(_QUANTITY.findall(sample)) <= set(_QUANTITY.findall(text)) for sample, text in zip(samples, texts, strict=True))


def test_slips_stay_apart_from_the_key_and_from_each_other() -> None:
    for variant in bays():
        for guide in variant.question.guides:
            assert guide.worked is not None
            ranges = [guide.worked.entry.accepted, *(slip.accepted for slip in guide.worked.entry.slips)]
            assert len(ranges) >= 3 and not [1 for n, one in enumerate(ranges) for other in ranges[:n] if one.meets(other)]


def test_a_draw_with_which_a_slip_is_right_by_chance_is_not_used() -> None:
    """Near one half a part and what is left of the whole are the same."""
    keys = {"pike.production": "egested", "perch.production": "respired"}
    text, head = CALCULATION.replace("slips: [", "slips: [{expression: 1 - part / whole, misconception: nit.complement, how: giving the rest}, "), IN_TEXT
    for old, new in keys.items():
        text, head = (one.replace(f"pyramid/sill_lake:{old}", f"pyramid/tillet_bay:zooplankton.{new}") for one in (text, head))
    drawn = variants(sound(text, head), 60).drawn
    slips = [worked.entry.slips for variant in drawn if (worked := variant.question["a"].worked)]
    assert 60 == len(slips) and {2} == {len(one) for one in slips}


def test_samples_speak_of_the_drawn_numbers() -> None:
    for variant in bays():
        guide = variant.question["c"]
        assert guide.worked is not None
        assert f"{guide.worked.setup} = {guide.worked.entry.answer}" == guide.samples[0].text


def test_what_a_drawn_number_brings_about_follows() -> None:
    """The water of another temperature can hold another amount of oxygen, less the warmer it is; the surface stays as it was."""
    drawn = variants(QUESTIONS["oxygen_in_the_deep"]).drawn
    texts = [re.search(r"temperature ([\d.]+) °C, dissolved oxygen [\d.]+ mg L⁻¹; at this temperature the water can hold ([\d.]+)", str(one.stimulus[-1])) for one in drawn]
    pairs = sorted((float(found[1]), float(found[2])) for found in texts if found)
    assert 8 == len(pairs) and pairs[0][1] > pairs[-1][1]
    assert [hold for _, hold in pairs] == sorted((hold for _, hold in pairs), reverse=True)
    assert 1 == len({one.stimulus[1] for one in drawn})


def test_a_number_of_a_chart_stands_in_its_table_with_all_others_of_the_chart() -> None:
    """The moss's diagram has six fluxes; the three of the drained half are drawn, and the wet half stays."""
    own = variants(QUESTIONS["a_drained_moss"]).drawn
    (rings,) = (one for one in variants(QUESTIONS["rings_on_the_tundra"], 1).drawn[0].stimulus if isinstance(one, DataTable))
    tables = [one for variant in own for one in variant.stimulus if isinstance(one, DataTable)]
    assert {True} == {table.caption.startswith("In place of the diagram: ") for table in tables} and "Biomass by harvest" == rings.caption
    assert 8 == len(own) == len(tables) and {6} == {len(table.rows) for table in tables}
    for variant, table in zip(own, tables, strict=True):
        rates = {row[0]: float(row[3]) for row in table.rows}
        a = given(variant, "a")
        assert [a["decay"], a["washed"], a["dead"]] == [rates[f"{name}, drained half"] for name in ("Decay", "Washed out", "Dead plants")]
        assert (1.4, 1.0, 0.2) == tuple(rates[f"{name}, wet half"] for name in ("Dead plants", "Decay", "Washed out"))


def test_a_share_of_the_year_differs_from_draw_to_draw() -> None:
    """Months are moved one by one: a year that is wetter as a whole would have the same share in summer. Worked out from the table."""
    shares = set()
    for variant in variants(QUESTIONS["plain_without_trees"]).drawn:
        (table,) = (one for one in variant.stimulus if isinstance(one, DataTable))
        rain = [float(row[2]) for row in table.rows]
        shares.add(round(result(variant, "b"), 1))
        assert 100 * sum(rain[3:9]) / sum(rain) == pytest.approx(result(variant, "b"))
    assert len(shares) > 4


def test_a_sentence_that_leads_to_a_chart_which_is_not_there_is_left_out() -> None:
    for name in ("late_fires", "trout_of_sedge_brook", "energy_in_a_bay"):
        texts = " ".join(text for text in variants(QUESTIONS[name], 1).drawn[0].stimulus if isinstance(text, str))
        assert "invented" in texts and not re.search("diagram|pyramid", texts)


def test_days_and_places_stay_as_names_and_dates_in_the_text_say() -> None:
    """From 20 June to 9 August are fifty days in every draw."""
    assert {50.0} == {given(variant, "c")["days"] for variant in variants(QUESTIONS["rings_on_the_tundra"]).drawn}


REFERENCE = "{cycle/global_carbon:atmosphere.stock}, {cycle/global_carbon:land.stock}"
PUBLISHED = CALCULATION.replace("pyramid/sill_lake:perch.production", "cycle/global_carbon:atmosphere.stock").replace("pyramid/sill_lake:pike.production", "cycle/global_carbon:land.stock")


@pytest.mark.parametrize(
    ("text", "head", "because"),
    [
        (CHAIN, HEAD, "It has no calculation."),
        (CALCULATION, HEAD, "“Production” (pyramid/sill_lake:pike.production) stands in no text and in no table of the question."),
        (PUBLISHED, HEAD.replace("Look at the share of the trees.", f"'{REFERENCE}'"), "(cycle/global_carbon:land.stock) comes from nature and its source, and must not be changed."),
        (f"{READING}\n{CARRYING}".replace("1 - share", "2 * share").replace("unit: percent", "unit: m"), HEAD, "Part b carries on what an earlier part reads off or says, and that cannot be drawn."),
    ],
)  # fmt: skip
def test_why_there_are_none_is_said(text: str, head: str, because: str) -> None:
    found = variants(sound(text, head))
    assert () == found.drawn and found.because.endswith(because)


def test_a_budget_that_a_reader_can_check_is_closed_again() -> None:
    """The text gives all inflows and outflows of the bare field; the calculation uses only some, and the maize takes up the rest."""
    drawn = variants(QUESTIONS["nitrate_from_two_fields"]).drawn
    assert 8 == len(drawn)
    for variant in drawn:
        came, left = (list(map(float, _QUANTITY.findall(str(text)))) for text in variant.stimulus[1:3])
        assert (2, 3) == (len(came), len(left)) and sum(came) == sum(left)
        assert left[-1] == given(variant, "b")["drained"]


def test_numbers_in_the_text_and_a_carried_result_change_together() -> None:
    drawn = variants(sound(f"{CALCULATION}\n{CARRYING}", IN_TEXT)).drawn
    assert drawn
    for variant in drawn:
        assert 100 - result(variant, "a") == pytest.approx(result(variant, "b"))
        worked = variant.question["a"].worked
        assert worked is not None and all(fact.shown in str(variant.stimulus[0]) for fact in worked.entry.given.values())
