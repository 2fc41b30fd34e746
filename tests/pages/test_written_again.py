"""The scripts with the calculations of written questions again: one for each question that has sets of other numbers, loaded by its page alone."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache

from bs4 import BeautifulSoup

from generator.kinds import all_kinds
from generator.pages.remembered import RememberedQuestion
from generator.pages.site import Site, written_uri
from generator.pages.written_again import again_scripts, again_uri, drawn_for
from generator.written.guide import ANSWER
from generator.written.variants import variants
from tests.kinds.small_records import library
from tests.pages.rendered import demo_pages, plain

SITE = Site(library=library(), kinds=all_kinds())


@cache
def scripts() -> dict[str, list[BeautifulSoup]]:
    """The sets of each question, read out of its script as a browser would."""
    found = {}
    for guided in library().written:
        script = again_scripts(SITE).get(again_uri(guided.name), b"").decode()
        if script:
            assert script.startswith("studyAgain(") and script.endswith(")\n")
            name, lines, sets = json.loads(f"[{script[len('studyAgain('):-len(')_')]}]")
            assert guided.name == name
            found[name] = [BeautifulSoup("\n".join(lines[place] for place in one), "html.parser") for one in sets]
    return found


def test_every_question_with_a_calculation_has_eight_sets_and_the_others_offer_none() -> None:
    calculating = {guided.name for guided in library().written if any(part.calculate for part in guided.question.parts)}
    assert len(calculating) >= 9 and dict.fromkeys(calculating, 8) == {name: len(sets) for name, sets in scripts().items()}
    offers = {name for name in (guided.name for guided in library().written) if "<written-again" in demo_pages()[written_uri(name)].body}
    assert calculating == offers


def test_a_page_holds_none_of_the_numbers_and_says_where_they_are() -> None:
    page = demo_pages()[written_uri("energy_in_a_bay")].body
    offer = BeautifulSoup(page, "html.parser").select_one("written-again")
    assert offer is not None and ("", "../assets/again/energy-in-a-bay.js", "a, b, c and d", "8") == (offer.get_text(), offer["data-numbers"], offer["data-parts"], offer["data-sets"])
    drawn = drawn_for(SITE, next(one for one in library().written if one.name == "energy_in_a_bay"))
    assert not [one for variant in drawn if (one := plain(str(variant.question["d"].lines[0].says))) in plain(page)]


def test_each_part_of_a_set_has_prompt_box_key_slips_and_guide_of_its_own() -> None:
    for guided in library().written:
        for variant, shown in zip(drawn_for(SITE, guided), scripts().get(guided.name, []), strict=True):
            blocks = {str(block["data-part"]): block for block in shown.select("written-part")}
            assert [*blocks] == [guide.part.id for guide in variant.question.guides]
            for guide in variant.question.guides:
                block, worked = blocks[guide.part.id], guide.worked
                assert worked is not None
                ends = [(float(str(line["data-low"])), float(str(line["data-high"]))) for line in block.select(".feedback > li[data-low]")]
                wanted = [(one.low, one.high) for one in (worked.entry.accepted, *(slip.accepted for slip in worked.entry.slips))]
                assert set(wanted) <= set(ends)
                lines = [plain(line.get_text()) for line in block.select(".guide .says")]
                assert [plain(line.says) for line in guide.lines] == lines and plain(f"Answer: {worked.entry.answer}") == lines[-1]
                assert f"written/{guided.name}/{guide.part.id}/{ANSWER}" == block.select_one("self-check")["data-question"]


def test_what_follows_from_a_slip_with_these_numbers_counts_in_the_part_that_carries_it_on() -> None:
    """By hand from the first set of the bay: adding what is respired in part a, part c divides by that sum."""
    variant, shown = drawn_for(SITE, next(one for one in library().written if one.name == "energy_in_a_bay"))[0], scripts()["energy_in_a_bay"][0]
    a, b = (variant.question[part].worked for part in "ab")
    assert a is not None and b is not None
    given = {name: fact.number for name, fact in a.entry.given.items()}
    share = 100 * b.result.number / (given["gross"] + given["respired"])
    right = shown.select('written-part[data-part="c"] .feedback > li[data-right="true"]')
    assert any(float(str(line["data-low"])) <= share <= float(str(line["data-high"])) for line in right[1:])


def test_ids_and_names_of_drafts_are_those_of_one_set() -> None:
    ids = [str(one["id"]) for sets in scripts().values() for shown in sets for one in shown.select("[id]")]
    assert ids and len(set(ids)) == len(ids)
    names = [(str(part["data-question"]), str(part["data-part"])) for sets in scripts().values() for shown in sets for part in shown.select("written-part")]
    assert len(set(names)) == len(names)


def test_a_set_is_drawn_once_while_nothing_of_it_changes_and_anew_when_a_record_does() -> None:
    guided, remembered = next(one for one in library().written if one.name == "oxygen_in_the_deep"), RememberedQuestion(lambda _, one: variants(one))
    first = remembered(SITE, guided)
    assert first is remembered(SITE, guided)
    lake = library().subjects["aquatic_biome/lake"]
    changed = replace(library(), subjects={**library().subjects, lake.id: replace(lake)})
    assert first is not remembered(Site(library=changed, kinds=all_kinds()), guided)
