"""Pages outlive the site engine: a bare Markdown parser shows everything that the records hold."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest
from bs4 import Tag

from generator.kind import Subject
from generator.kinds import all_kinds
from generator.pages.figures import chart_uri, saved_uri
from generator.pages.markup import fact_anchor
from generator.pages.page import record_uri
from generator.pages.site import (
    COMMAND_WORDS,
    METHODS,
    PRACTICE,
    PROGRESS,
    SOURCES,
    VOCABULARY,
    WRITTEN,
    Site,
    comparison_uri,
    recall_uri,
    topic_uri,
    written_uri,
)
from generator.quantities.text import filled, sentence
from generator.questions.question import Choice, NumberEntry
from tests.kinds.small_records import library
from tests.pages.rendered import demo_pages, plain, rendered, seen

SUBJECTS = sorted(name for name, subject in library().subjects.items() if subject.record.use == "page")
each_record = pytest.mark.parametrize("record", SUBJECTS)
each_page = pytest.mark.parametrize("uri", sorted(demo_pages()))


def subject(record: str) -> Subject[Any]:
    return library().subjects[record]


def texts(found: Any, tag: str) -> list[str]:
    return [plain(one.get_text()) for one in found.find_all(tag)]


def soup_of(record: str) -> Any:
    return rendered(demo_pages()[record_uri(record)])


def test_all_pages_are_there() -> None:
    topics = {uri(topic.id) for topic in library().course.topics for uri in (topic_uri, recall_uri)}
    comparisons = {comparison_uri(name) for name, kind in all_kinds().items() if kind.computes}
    written = {WRITTEN, COMMAND_WORDS, *(written_uri(guided.name) for guided in library().written)}
    assert {"index.md", PRACTICE, PROGRESS, VOCABULARY, METHODS, SOURCES, *written, *topics, *comparisons, *map(record_uri, SUBJECTS)} == set(demo_pages())


@each_page
def test_page_has_one_first_heading_and_no_level_is_left_out(uri: str) -> None:
    levels = [int(heading.name[1]) for heading in rendered(demo_pages()[uri]).find_all(["h1", "h2", "h3", "h4"])]
    assert 1 == levels[0] and 1 == levels.count(1)
    assert all(after <= before + 1 for before, after in zip(levels, levels[1:], strict=False))


@each_page
def test_no_markup_is_left_over_in_the_text(uri: str) -> None:
    found = rendered(demo_pages()[uri])
    for formula in found.find_all("math"):
        formula.decompose()
    text = found.get_text()
    assert [] == [mark for mark in ("**", "](", "{{", "}}", "{%", "<div", "<p", "&#", "&lt;", "\n#", "None") if mark in text]


@cache
def places() -> dict[str, frozenset[str]]:
    """The ids on every page."""
    return {uri: frozenset(str(tag["id"]) for tag in rendered(page).find_all(id=True)) for uri, page in demo_pages().items()}


@cache
def saved() -> frozenset[str]:
    """The files of charts that pages offer to keep."""
    return frozenset(saved_uri(chart, ending) for chart in Site(library=library(), kinds=all_kinds()).charts for ending in ("csv", "svg"))


@each_page
def test_every_link_leads_to_a_page_and_a_place_that_exist(uri: str) -> None:
    for link in rendered(demo_pages()[uri]).find_all("a"):
        path, _, anchor = str(link["href"]).partition("#")
        target = posixpath.normpath(posixpath.join(posixpath.dirname(uri), path)) if path else uri
        target = target.removesuffix(".html") + ".md" if target.endswith(".html") else target
        if target in saved():
            continue
        assert target in places(), f"{uri}: {link['href']}"
        assert not anchor or anchor in places()[target], f"{uri}: {link['href']}"


@each_page
def test_ids_are_unique_on_a_page(uri: str) -> None:
    ids = [str(tag["id"]) for tag in rendered(demo_pages()[uri]).find_all(id=True)]
    assert len(set(ids)) == len(ids)


@each_record
def test_headings(record: str) -> None:
    of = subject(record).record
    parts = [part.label for part in all_kinds()[subject(record).kind].parts(of).values() if part.use == "page"]
    found = soup_of(record)
    assert [plain(of.title)] == texts(found, "h1")
    assert {plain(sentence(explanation.asks)) for explanation in of.explanations} <= set(texts(found, "h2"))
    shown = {plain(label) for label in parts}
    assert bool(parts) == any(label in head for head in texts(found, "h3") for label in shown)


@each_record
def test_summary_and_explanations_with_their_numbers(record: str) -> None:
    of, facts, text = subject(record).record, library().facts_for(subject(record)), seen(soup_of(record))
    for said in (of.summary, *(idea.says for explanation in of.explanations for idea in explanation.chain)):
        assert plain(filled(said, facts)) in text


@each_record
def test_every_fact_with_its_value(record: str) -> None:
    """Those of a part that is kept for practice or papers are not there."""
    found, parts = soup_of(record), all_kinds()[subject(record).kind].parts(subject(record).record)
    for fact in subject(record).facts.values():
        entry, part = found.find(id=fact_anchor(fact.id)), parts.get(fact.id.partition(".")[0])
        if part is not None and part.use != "page":
            assert entry is None, fact.id
            continue
        assert isinstance(entry, Tag), fact.id
        text, line = plain(entry.get_text()), entry.find_parent("details", class_="working") or entry
        assert plain(fact.name) in plain(line.get_text())
        assert plain(fact.shown) in text or all(plain(member) in text for member in fact.shown_members), fact.id


@each_record
def test_every_chart_with_words_and_table(record: str) -> None:
    found = soup_of(record)
    for chart in all_kinds()[subject(record).kind].charts(subject(record)):
        images = [str(one["src"]) for one in found.find_all("img") if one["alt"] == chart.description]
        drawn = [chart_uri(shape) for shape in (chart, chart.narrowed()) if shape]
        assert drawn == [posixpath.normpath(posixpath.join(posixpath.dirname(record_uri(record)), image)) for image in images]
        (table,) = [one for one in found.find_all("table") if plain(one.caption.get_text()) == plain(chart.table.caption)]
        rows = [[plain(cell.get_text()) for cell in row.find_all(["th", "td"])] for row in table.find_all("tr")]
        assert [list(map(plain, row)) for row in (chart.table.columns, *chart.table.rows)] == rows
        assert set(map(plain, chart.reading)) <= set(texts(found, "li"))


def answers(item: Any) -> Iterator[tuple[str, str]]:
    """Each answer that has feedback of its own."""
    if isinstance(item, Choice):
        yield from ((option.text, option.feedback) for option in item.options)
    if isinstance(item, NumberEntry):
        yield item.answer, item.right_feedback
        yield from ((slip.shown, slip.feedback) for slip in item.slips)
        yield "Any other number", item.otherwise


@each_record
def test_every_question_with_options_feedback_and_solution(record: str) -> None:
    """The page is complete without a script."""
    found = soup_of(record)
    checks = found.find_all("self-check")
    assert len(library().questions[record]) == len(checks) > 0
    blocks = {str(check["data-question"]): check for check in checks}
    assert [f"Question {n}." for n in range(1, len(checks) + 1)] == [check.find(class_="check-number").get_text() for check in checks]
    for item in library().questions[record]:
        check = blocks[f"{record}/{item.id}"]
        assert plain(item.prompt) in plain(check.legend.get_text())
        if isinstance(item, Choice):
            assert [plain(option.text) for option in item.options] == texts(check, "label")
        details = plain(check.find("details", class_="answer").get_text())
        assert plain(item.solution) in details
        for answer, feedback in answers(item):
            assert plain(answer) in details and plain(feedback) in details, item.id


@each_record
def test_one_line_of_feedback_is_marked_right(record: str) -> None:
    for check in soup_of(record).find_all("self-check"):
        right = len(check.find_all("li", attrs={"data-right": "true"}))
        assert right >= 2 if check["data-type"] in ("several", "match") else right == 1


@each_record
def test_mistakes_words_and_sources(record: str) -> None:
    of, text = subject(record).record, seen(soup_of(record))
    for name in of.misconceptions:
        entry = library().catalogue[name]
        assert f"Some think: {plain(entry.idea)} That does not hold: {plain(entry.because)} Instead: {plain(entry.instead)}" in text
    for name in of.vocabulary:
        assert plain(library().vocabulary[name].word) in text and plain(library().vocabulary[name].means) in text
    for key in of.sources:
        assert plain(library().sources[key].title) in text


@each_record
def test_page_says_where_its_numbers_come_from(record: str) -> None:
    data = subject(record).record.data
    said = [note.strong.get_text() for note in soup_of(record).find_all("p", class_="provenance")]
    assert ([f"{sentence(data)} data."] if data else []) == said


@each_record
def test_topic_leads_to_its_records(record: str) -> None:
    topic = library().course.topic_of(record)
    assert topic is not None
    assert subject(record).record.title in texts(rendered(demo_pages()[topic_uri(topic.id)]), "a")


@pytest.mark.parametrize("kind", [name for name, kind in all_kinds().items() if kind.computes])
def test_comparison_has_a_cell_for_each_fact(kind: str) -> None:
    """A unit stands in the head, and then in no cell below it, or in every cell."""
    comparison = Site(library=library(), kinds=all_kinds()).comparison(all_kinds()[kind])
    found = table_of(kind)
    units = [head.removeprefix(plain(name)) for name, head in zip(comparison.heads, texts(found.thead, "th")[1:], strict=True)]
    assert [] == [unit for unit in units if unit and not re.fullmatch(r" \(.+\)", unit)]
    lines = [line for line in found.select("tbody tr") if line.find("th", scope="row")]  # heads of groups have no cells
    for row, line in zip(comparison.rows, lines, strict=True):
        label, *cells = [plain(cell.get_text()) for cell in line.find_all(["th", "td"])]
        assert plain(row.label) == label
        for fact, unit, cell in zip(row.cells, units, cells, strict=True):
            if isinstance(fact, str) or fact.value is None:
                assert cell == ("not known" if not isinstance(fact, str) else plain(fact))
            else:
                assert plain(fact.shown) == f"{cell} {unit[2:-1]}".strip()


def table_of(kind: str) -> Any:
    """The table of a comparison; those of its charts stand before it."""
    (found,) = [one for one in rendered(demo_pages()[comparison_uri(kind)]).find_all("table") if one.caption.get_text().endswith(" compared")]
    return found


@pytest.mark.parametrize("kind", [name for name, kind in all_kinds().items() if kind.computes])
def test_comparison_has_its_charts_with_words_and_tables(kind: str) -> None:
    found = rendered(demo_pages()[comparison_uri(kind)])
    for chart in Site(library=library(), kinds=all_kinds()).comparison(all_kinds()[kind]).charts:
        images = [str(one["src"]) for one in found.find_all("img") if one["alt"] == chart.description]
        drawn = [chart_uri(shape) for shape in (chart, chart.narrowed()) if shape]
        assert drawn == [posixpath.normpath(posixpath.join(posixpath.dirname(comparison_uri(kind)), image)) for image in images]
        (table,) = [one for one in found.find_all("table") if plain(one.caption.get_text()) == plain(chart.table.caption)]
        assert 1 + len(chart.table.rows) == len(table.find_all("tr"))


def test_words_and_their_everyday_names() -> None:
    """What is only searched for stands nowhere, for it means something else: a food chain is no other name of a food web."""
    found = {plain(term.get_text()): plain(term.find_next_sibling("dd").get_text()) for term in rendered(demo_pages()[VOCABULARY]).find_all("dt")}
    everyday = {word: f" In other words: {', '.join(word.also)}." if word.also else "" for word in library().vocabulary.values()}
    assert {plain(word.word): plain(word.means + told) for word, told in everyday.items()} == found


def test_no_page_tells_an_example_outside_its_questions() -> None:
    """Or it need not be recognised."""
    examples = {word.id: plain(word.example) for word in library().vocabulary.values() if word.example}
    asked = False
    for page in demo_pages().values():
        found = rendered(page)
        for block in found.select(".check"):
            asked |= examples["egestion"] in seen(block.extract())
        assert [] == [word for word, example in examples.items() if example in seen(found)]
    assert asked


def test_sources_that_records_and_methods_name() -> None:
    found = rendered(demo_pages()[SOURCES])
    named = {key for of in library().subjects.values() for key in of.record.sources}
    named |= {key for of in library().subjects.values() for fact in of.facts.values() for key in fact.sources}
    named |= {key for kind in all_kinds().values() for method in kind.methods.values() for key in method.sources}
    assert sorted(plain(library().sources[key].title) for key in named) == sorted(texts(found, "cite"))
