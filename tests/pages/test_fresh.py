"""Scripts with fresh numbers: one a record, read by nothing but its own page, with the texts that a page may show as they are."""

from __future__ import annotations

import json

from generator.kinds import all_kinds
from generator.pages.fresh import fresh_numbers, fresh_scripts, fresh_uri
from generator.pages.record_page import record_page
from generator.pages.site import Site
from tests.kinds.small_records import library

SITE = Site(library=library(), kinds=all_kinds())
RECORD = "cycle/wend_hollow_nitrogen"


def data(record: str) -> dict:
    text = fresh_scripts(SITE)[fresh_uri(record)].decode()
    head = f"studyFresh({json.dumps(record)},"
    assert text.startswith(head) and text.endswith(")\n")
    return json.loads(text.removeprefix(head).removesuffix(")\n"))


def test_each_record_with_sums_has_a_script() -> None:
    expected = {fresh_uri(subject.id) for subject in SITE.subjects if fresh_numbers(SITE, subject)}
    assert expected == set(fresh_scripts(SITE))


def test_a_page_names_its_script_at_the_questions_that_have_fresh_numbers() -> None:
    page = record_page(SITE, library().subjects[RECORD]).text
    assert page.count('data-fresh="../assets/fresh/cycle/wend-hollow-nitrogen.js"') == len(fresh_numbers(SITE, library().subjects[RECORD]))


def test_feedback_is_held_once_and_every_slip_points_at_it() -> None:
    found = data(RECORD)
    assert len(found["says"]) == len({tuple(said) for said in found["says"]})
    used = {slip[3] for sums in found["sums"].values() for one in sums for slip in one["slips"]}
    assert set(range(len(found["says"]))) == used


def test_inputs_of_several_parts_are_called_by_their_part() -> None:
    found = data("pyramid/sill_lake")
    assert "Production: " not in found["sums"]["transfer_efficiency"][0]["ask"]


def test_no_script_can_end_the_element_that_it_might_stand_in() -> None:
    assert [] == [uri for uri, script in fresh_scripts(SITE).items() if b"</" in script]
