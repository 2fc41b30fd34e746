"""The practice page's data: every question of the taught course once, with what the page needs to choose and to show it."""

from __future__ import annotations

import json
from datetime import UTC, datetime, time
from typing import Any

from bs4 import BeautifulSoup
from markdown import Markdown

from generator.kinds import all_kinds
from generator.pages.practice import FOLDER, practice_page, practice_scripts, progress_page
from generator.pages.questions import item_type
from generator.pages.site import Site
from tests.kinds.small_records import library

SITE = Site(library=library(), kinds=all_kinds())
SCRIPTS = practice_scripts(SITE)


def arguments(name: str) -> list[Any]:
    _, _, inside = SCRIPTS[f"{FOLDER}{name}.js"].decode().partition("(")
    return json.loads(f"[{inside.rstrip().removesuffix(')')}]")


def test_the_index_holds_each_question_once_with_its_type_and_topic() -> None:
    (index,) = arguments("index")
    expected = [(subject.id, item.id, item_type(item)) for subject in SITE.subjects for item in library().questions[subject.id]]
    assert sorted(expected) == sorted((record, item, kind) for record, item, kind, *_ in index["items"])
    assert {topic for _, _, _, topic, *_ in index["items"]} == set(range(len(index["topics"])))


def test_what_stands_there_without_a_script_lies_inside_the_desk_that_takes_its_place() -> None:
    """Outside it, both would be seen at once."""
    found = BeautifulSoup(Markdown(extensions=["tables", "attr_list", "md_in_html"]).convert(practice_page(SITE).body), "html.parser")
    assert found.select("practice-desk .without-script") and not found.select("p practice-desk")
    assert "<p><practice-record" not in Markdown(extensions=["md_in_html"]).convert(progress_page(SITE).body)


def test_a_test_covers_its_topics_by_their_place() -> None:
    (index,) = arguments("index")
    titles = {topic.id: topic.title for topic in library().course.topics}
    for test, found in zip(library().course.tests, index["tests"], strict=True):
        assert [titles[topic] for topic in test.covers] == [index["topics"][n]["title"] for n in found["covers"]]


def test_the_day_of_a_test_is_counted_as_scripts_count_days() -> None:
    """Source: ECMA-262, days within a time value: whole days since 1 January 1970."""
    (index,) = arguments("index")
    for test, found in zip(library().course.tests, index["tests"], strict=True):
        assert (test.on and (datetime.combine(test.on, time(), UTC).timestamp() / 86400)) == found["on"]


def test_every_slip_that_a_question_names_can_be_told_in_words() -> None:
    (index,) = arguments("index")
    for subject in SITE.subjects:
        for block in arguments(subject.id.replace("_", "-"))[1].values() if library().questions[subject.id] else ():
            named = [line["data-slip"] for line in BeautifulSoup(block, "html.parser").find_all(attrs={"data-slip": True})]
            assert set(named) <= set(index["slips"])


def test_questions_stand_as_they_do_on_their_page_with_links_from_the_practice_page() -> None:
    record, blocks = arguments("cycle/wend-hollow-nitrogen")
    assert [item.id for item in library().questions[record]] == list(blocks)
    assert any('data-fresh="assets/fresh/cycle/wend-hollow-nitrogen.js"' in block for block in blocks.values())


def test_nothing_in_a_script_ends_the_element_that_it_might_stand_in() -> None:
    assert [] == [name for name, script in SCRIPTS.items() if b"</" in script]
