"""The marking guides as one file: complete in itself, nothing left out, nothing fetched."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from bs4 import BeautifulSoup

from generator.course.guide_review import review
from generator.course.library import Library
from generator.diagnostics import Diagnostic, Place, Severity
from generator.kinds import all_kinds
from generator.pages.guides_sheet import guides_sheet
from generator.pages.site import Site
from generator.records.parts import AcceptedWarning
from tests.kinds.small_records import library
from tests.pages.rendered import demo_pages, plain


def sheet_of(of: Library) -> str:
    site = Site(library=of, kinds=all_kinds())
    return guides_sheet(site, review(of, site.kinds))


@cache
def soup() -> BeautifulSoup:
    return BeautifulSoup(sheet_of(library()), "html.parser")


@cache
def text() -> str:
    return plain(soup().get_text())


def test_it_holds_every_prompt_line_wording_rule_sample_and_comment() -> None:
    for guide in (guide for guided in library().written for guide in guided.guides):
        lines = [said for line in guide.lines for said in (line.says, *line.accept, *line.not_enough)]
        samples = [said for sample in guide.samples for said in (sample.text, sample.comment)]
        assert [] == [said for said in (guide.prompt, *guide.rules, *lines, *samples, *guide.part.cautions) if plain(said) not in text()]


def test_it_adds_marks_and_minutes_up() -> None:
    marks = sum(guided.question.marks for guided in library().written)
    together = soup().select_one("tfoot tr")
    assert together is not None
    cells = [cell.get_text() for cell in together.select("td.number")]
    assert str(marks) == cells[0]
    assert abs(int(cells[1]) - marks * library().course.marking_rules.minutes_per_mark) <= 0.5 + 1e-9


def test_charts_stand_as_their_tables_with_what_they_show() -> None:
    charts = [one for guided in library().written for one in guided.question.stimulus if one.chart or one.table]
    assert len(charts) == len(soup().select("figure table")) == len(soup().select("figcaption"))


def test_sets_of_other_numbers_stand_with_their_set_up_answer_range_and_slips() -> None:
    drawn = [variant for one in review(library(), all_kinds()).questions for variant in one.drawn]
    worked = [guide.worked for variant in drawn for guide in variant.question.guides]
    texts = [one for variant in drawn for one in variant.stimulus if isinstance(one, str)]
    assert len(worked) > 72 and len(drawn) == len(soup().select("details"))
    assert [] == [said for one in worked if one for said in (one.setup, one.entry.answer, *(slip.shown for slip in one.entry.slips)) if plain(said) not in text()]
    assert [] == [said for said in texts if plain(said) not in text()]


def test_nothing_is_fetched_and_no_script_runs() -> None:
    assert [] == soup().select("script, img, link, iframe, object")
    assert [] == [one for one in soup().select("[src], [href]") if not str(one.get("href", "")).startswith("#")]
    policy = soup().select_one('meta[http-equiv="Content-Security-Policy"]')
    assert policy is not None and "default-src 'none'" in str(policy["content"])
    assert "url(" not in str(soup().select_one("style"))


def test_links_in_it_lead_somewhere() -> None:
    ids = {str(one["id"]) for one in soup().select("[id]")}
    assert {str(one["href"])[1:] for one in soup().select("a[href]")} <= ids


def test_it_is_no_page_of_the_site() -> None:
    assert [] == [uri for uri in demo_pages() if "guides" in uri]


def test_doubts_and_accepted_doubts_are_shown() -> None:
    first = library().written[0]
    doubt = Diagnostic(Place(f"content/written/{first.name}.yaml", 3, 1), "parts[0].focus", "a word", '"<x>"', "mend it", Severity.WARNING, "off_focus")
    accepted = AcceptedWarning(warning="no_count", reason="The class knows how many.")
    changed = replace(first, question=first.question.model_copy(update={"accepted_warnings": (accepted,)}))
    found = sheet_of(replace(library(), written=(changed,), warnings=(doubt,)))
    assert 'Doubt, parts[0].focus: expected a word, found "<x>" [off_focus]. Mend: mend it.' in plain(BeautifulSoup(found, "html.parser").get_text())
    assert "Accepted doubt [no_count]: The class knows how many." in BeautifulSoup(found, "html.parser").get_text()


def test_a_course_without_written_questions_has_an_empty_sheet() -> None:
    assert "Ideas that two parts share" in sheet_of(replace(library(), written=()))
