"""A topic on one page: nothing of the topic is missing, nothing stands there that no question asks for."""

from __future__ import annotations

import re

import pytest

from generator.pages.page import record_uri
from generator.pages.site import recall_uri, topic_uri
from generator.questions.question import NumberEntry
from tests.kinds.small_records import library
from tests.pages.rendered import demo_pages, plain, rendered, seen

TOPICS = [topic.id for topic in library().course.topics]
each_topic = pytest.mark.parametrize("topic", TOPICS)


def records_of(topic: str) -> tuple[str, ...]:
    return next(one.records for one in library().course.topics if one.id == topic)


@each_topic
def test_every_record_every_goal_and_every_word_of_the_topic_stand_there(topic: str) -> None:
    soup = rendered(demo_pages()[recall_uri(topic)])
    records = [library().subjects[name].record for name in records_of(topic)]
    assert [record.title for record in records] == [plain(one.get_text()) for one in soup.select("dl.ideas dt")]
    assert len(next(one.objectives for one in library().course.topics if one.id == topic)) == len(soup.select("ul.goals li"))
    words = {library().vocabulary[name].word for record in records for name in record.vocabulary}
    assert {plain(word) for word in words} == {plain(one.get_text()) for one in soup.select("table.recall tbody th")}


@each_topic
def test_the_card_holds_the_formulas_that_questions_of_the_topic_ask_for_with_units(topic: str) -> None:
    soup = rendered(demo_pages()[recall_uri(topic)])
    asked = {
        item.fact.method.replace("_", "-")
        for name in records_of(topic) for item in library().questions[name]
        if isinstance(item, NumberEntry) and item.fact and item.fact.method
    }  # fmt: skip
    linked = {str(one["href"]).partition("#method-")[2] for one in soup.select("dl.card dt a")}
    assert linked <= asked and len(linked) >= min(len(asked), 1)
    assert all(one.select(".formula math") for one in soup.select("dl.card dd"))


def test_a_unit_stands_beside_each_symbol_that_has_one() -> None:
    text = seen(rendered(demo_pages()[recall_uri("cycles")]))
    assert "Turnover time" in text
    assert plain("carbon, in g C mol⁻¹") in text or "in g" in text


@each_topic
def test_the_topic_leads_to_its_page(topic: str) -> None:
    assert '<a href="on-one-page.html">' in demo_pages()[topic_uri(topic)].text


def test_facts_of_ideas_link_to_their_records() -> None:
    page = demo_pages()[recall_uri("biomes")].text
    address = record_uri("transect/coastal_range").removesuffix(".md")
    assert re.search(rf'href="\.\./\.\./{address}\.html#fact-[a-z-]+"', page)


@each_topic
def test_formulas_that_need_the_whole_width_come_last(topic: str) -> None:
    """Between the others they would break both columns of the card and leave gaps."""
    wide = ["long" in one.get("class", []) for one in rendered(demo_pages()[recall_uri(topic)]).select("dl.card > div")]
    assert sorted(wide) == wide


@pytest.mark.parametrize("topic", ["answering", "energy"])
def test_the_page_promises_only_what_stands_on_it(topic: str) -> None:
    soup = rendered(demo_pages()[recall_uri(topic)])
    assert bool(soup.select("dl.card")) == ("formulas with their units" in seen(soup))
