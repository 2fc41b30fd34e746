"""Pages of written questions: complete without a script, no answer in sight of the question, no word of a grade."""

from __future__ import annotations

import re

import pytest
from bs4 import BeautifulSoup

from generator.kinds import all_kinds
from generator.pages.site import COMMAND_WORDS, WRITTEN, Site, command_word_anchor, written_uri
from generator.written.guide import Guided
from tests.kinds.small_records import library
from tests.pages.rendered import demo_pages, plain, rendered, seen

each = pytest.mark.parametrize("guided", library().written, ids=lambda guided: guided.name)


def soup_of(guided: Guided) -> BeautifulSoup:
    return rendered(demo_pages()[written_uri(guided.name)])


@each
def test_every_part_stands_with_prompt_worth_guide_and_room_to_write(guided: Guided) -> None:
    soup = soup_of(guided)
    assert [plain(guide.prompt) for guide in guided.guides] == [plain(one.get_text()) for one in soup.select(".written-prompt")]
    assert len(guided.guides) == len(soup.select("details.guide")) == len(soup.select(".ruled-space"))
    for guide, shown in zip(guided.guides, soup.select("details.guide"), strict=True):
        text = plain(shown.get_text())
        for line in guide.lines:
            assert plain(line.says) in text
            assert all(plain(other) in text for other in (*line.accept, *line.not_enough))


@each
def test_only_short_parts_or_parts_on_data_alone_are_called_quick(guided: Guided) -> None:
    plan = plain(soup_of(guided).select("details.plan")[0].get_text())
    quick, slow = (set(found[1].split(", ")) if (found := re.search(pattern, plan)) else set() for pattern in (r"Quick: ([a-z, ]+)\.", r"need thought: ([a-z, ]+)\."))
    ids = {guide.part.id for guide in guided.guides}
    assert ids == quick | slow and not quick & slow
    assert not [guide.part.id for guide in guided.guides if guide.part.id in quick and guide.part.marks > 1 and guide.part.needs != "data"]


@each
def test_guide_samples_and_what_is_asked_are_closed(guided: Guided) -> None:
    assert not [one for one in soup_of(guided).select("details") if one.has_attr("open")]


@each
def test_nothing_outside_closed_parts_tells_what_earns_marks(guided: Guided) -> None:
    soup = soup_of(guided)
    for closed in soup.select("details"):
        closed.decompose()
    text = seen(soup)
    told = [line.says for guide in guided.guides if guide.worked is None for line in guide.lines if len(line.says.split()) > 3]
    assert [] == [says for says in told if plain(says) in text]


@each
def test_samples_show_the_teacher_s_marking_only_behind_a_click_of_their_own(guided: Guided) -> None:
    samples = [sample for guide in guided.guides for sample in guide.part.samples]
    soup = soup_of(guided)
    assert len(samples) == len(soup.select("details.samples details.teacher")) == len(soup.select("details.samples blockquote"))


@each
def test_no_page_speaks_of_a_grade_or_a_percentage_of_marks(guided: Guided) -> None:
    text = seen(soup_of(guided))
    assert "This page gives no mark" in text
    assert not re.search(r"\bgrade\b|your score|well done", text, re.IGNORECASE)


def test_a_chart_for_practice_is_on_the_page_of_its_question_and_not_of_its_record() -> None:
    name = "savanna.climate_diagram.dry_fig_camp"
    assert f"{name}.svg" in demo_pages()[written_uri("late_fires")].text and f"{name}.svg" not in demo_pages()["biome/savanna.md"].text
    assert name in [chart.name for chart in Site(library=library(), kinds=all_kinds()).charts]


def test_the_list_leads_to_each_question_and_to_the_command_words() -> None:
    soup = rendered(demo_pages()[WRITTEN])
    assert {f"{guided.name.replace('_', '-')}.html" for guided in library().written} == {str(one["href"]) for one in soup.select(".written-list a")}
    assert '<a href="command-words.html">' in demo_pages()[WRITTEN].text


def test_every_command_word_has_its_entry_with_model_and_near_miss() -> None:
    soup = rendered(demo_pages()[COMMAND_WORDS])
    assert len(library().command_words) >= 20
    for word in library().command_words.values():
        entry = soup.find(id=command_word_anchor(word.id))
        text = plain(entry.get_text()) if entry else ""
        assert all(plain(one) in text for one in (word.word, word.asks, word.not_enough, word.model, word.near_miss))


@each
def test_ten_marks_take_about_twenty_three_minutes(guided: Guided) -> None:
    """Common practice in timed written tests: three questions of ten marks in seventy minutes."""
    found = re.search(r"about (\d+) minutes", seen(soup_of(guided)))
    assert found and abs(int(found[1]) - 2.3 * guided.question.marks) <= 0.5
