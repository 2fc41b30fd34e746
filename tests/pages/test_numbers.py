"""Every number on every page comes from a fact, a method, a source or an entry of a shared file: nothing is typed into sentences."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from pathlib import Path

import markdown
from bs4 import BeautifulSoup

from generator.build import check, compose
from generator.kinds import all_kinds
from generator.pages.methods_page import checks_of
from generator.pages.part_guide import followed_up
from generator.pages.site import Site
from generator.questions.question import ChartReading, Matching

ROOT = Path(__file__).parents[2]
NUMBER = re.compile(r"(?<![\w.,])[−-]?\d[\d\u202f]*(?:[.,]\d+)?(?![\w])")
COUNTED = re.compile(
    r"Question \d+\.|Write it like 1234\.5(?: \w+)?, 1234,5(?: \w+)? or 1\.2e3(?: \w+)?\.|Checked against \d+ values?|\d+ (?:reservoirs?|flux(?:es)?|steps|levels|stations)\b"
    r"|(?:1|10\u202f000) m²|1 ha|divided by (?:10\u202f000|86\u202f400)|A day has 86\u202f400 seconds|10[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+"
)
"""What the program itself counts, or says about writing numbers and about units (SI: a hectare, a day)."""


@cache
def site() -> Site:
    return Site(library=check(ROOT / "content"), kinds=all_kinds())


def tokens(text: str) -> set[str]:
    """The numbers of a text, without signs and without the space between groups of digits."""
    return {found.lstrip("−-").replace("\u202f", "").replace("\u00a0", "") for found in NUMBER.findall(text)}


@cache
def accounted() -> frozenset[str]:
    """Every number that a fact shows, a method or its checks name, or an entry of a shared file holds."""
    library = site().library
    texts: list[str] = []
    for subject in library.subjects.values():
        for fact in subject.facts.values():
            texts += [fact.shown, fact.shown_exactly, fact.shown_working, *(fact.shown_members if fact.is_series else ())]
        texts += [item.fact.shown_working for item in library.questions[subject.id] if item.fact]
        supposed = [item for item in library.questions[subject.id] if item.supposed]  # numbers of their own, drawn or chosen
        texts += [fact.shown_exactly for item in supposed for fact in getattr(item, "given", {}).values() if fact.is_number]
        texts += [item.prompt for item in supposed if isinstance(item, Matching | ChartReading)]
        texts += [pair.partner for item in supposed if isinstance(item, Matching) for pair in item.pairs]
        charts = site().kinds[subject.kind].charts(subject)  # curves are sampled from the method that draws them
        texts += [cell for chart in charts for row in chart.table.rows for cell in row] + [chart.description for chart in charts]
        texts += [getattr(slip, "shown", "") for item in library.questions[subject.id] for slip in getattr(item, "slips", ())]
        texts += [option.text for item in library.questions[subject.id] for option in getattr(item, "options", ())]
        asked = subject.record.questions  # an author's question may bring numbers of its own, as a sum to be worked out does
        texts += [f"{item.ask} {item.because} {item.hint} {item.number.value.text if item.number and item.number.value else ''}" for item in asked]
        own = {item.id for item in asked}  # what a builder works out for its solution is tested with the builder
        made = [item for item in library.questions[subject.id] if item.id not in own]
        texts += [item.solution for item in made]
        texts += [f"{pair.text} {pair.because}" for item in made if isinstance(item, Matching) for pair in item.pairs]
        texts += [wrong.feedback for item in made for name in ("options", "slips") for wrong in getattr(item, name, ())]
        method_ids = {fact.method for fact in subject.facts.values()}
        methods = [site().kinds[subject.kind].methods.get(name) for name in method_ids]
        texts += [f"{m.rule} {m.limits} {' '.join(m.formula)} {m.symbols}" for m in methods if m]
    for kind in all_kinds().values():
        for method in kind.methods.values():
            texts += [f"{method.name} {method.rule} {method.limits} {' '.join(method.formula)} {method.symbols}"]
            texts += [f"{entry.name} {entry.source}" for entry in checks_of(method.id)]
        texts += [chart.description for chart in site().comparison(kind).charts] if kind in site().compared_kinds else []
    texts += [str(test.on.year) for test in library.course.tests if test.on]
    for guide in (guide for guided in library.written for guide in guided.guides):
        texts += [f"{sample.text} {sample.comment}" for sample in guide.samples]  # what students write may be wrong
        texts += guide.rules
        texts += [guide.worked.setup, guide.worked.entry.answer, *(slip.shown for slip in guide.worked.entry.slips)] if guide.worked else []
    texts += [one.shown for guided in library.written for guide in guided.guides for one in followed_up(guided, guide.part)]
    texts += [f"{word.asks} {word.model} {word.near_miss}" for word in library.command_words.values()]
    texts += [str(work) for work in library.sources.values()]
    texts += [files("generator.science").joinpath("sources.yaml").read_text("utf-8")]
    texts += [f"{word.word} {word.means}" for word in library.vocabulary.values()]
    texts += [f"{entry.idea} {entry.correction}" for entry in library.catalogue.values()]
    return frozenset(one for text in texts for one in tokens(text.replace("e-", " ")))


def numbers_of_pages() -> Iterator[tuple[str, str, str]]:
    """Page, number, and the words around it, for every number that a reader sees."""
    for page in compose(site()):
        html = markdown.markdown(page.body, extensions=["tables", "md_in_html"])
        soup = BeautifulSoup(html, "html.parser")
        for part in soup.select("ol.rules, math, title"):  # workings: made of facts, and compared with them elsewhere
            part.decompose()
        text = COUNTED.sub(" ", soup.get_text(" ").replace("\u00a0", " "))
        for found in NUMBER.finditer(text):
            around = " ".join(text[max(0, found.start() - 40) : found.end() + 25].split())
            yield page.uri, found[0].lstrip("−-").replace("\u202f", ""), around


def test_every_number_of_every_page_is_accounted_for() -> None:
    found = list(numbers_of_pages())
    strangers = [f"{page}: {found_number} in “{around}”" for page, found_number, around in found if found_number not in accounted()]
    assert strangers == []
    assert len(found) > 1000
