"""The page of one record, from its kind's template."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator
from functools import cache, partial
from pathlib import Path
from typing import Any

from jinja2 import ChoiceLoader, Environment, FileSystemLoader, StrictUndefined

from generator.kind import NUMBERS, Kind, Subject, in_sentence
from generator.pages import chains, figures, markup, questions, route
from generator.pages.fact_lines import FactLines, name_of, part_of
from generator.pages.fresh import fresh_numbers, fresh_uri
from generator.pages.page import Page, link, record_uri
from generator.pages.site import METHODS, READ, SOURCES, VOCABULARY, Site, method_anchor, source_anchor, word_anchor
from generator.pages.told_words import ToldWords
from generator.quantities.fact import Fact
from generator.quantities.text import Reference, filled, sentence
from generator.questions.question import ChartReading, Needs, Question
from generator.records.parts import Explanation, Picture

SMALLEST_GROUP = 2
"""Questions that are worth a heading of their own."""
TEMPLATES = Path(__file__).parent / "templates"
PROVENANCE = {
    "invented": "The numbers on this page are invented for {scenario}. The place does not exist; its numbers could be real.",
    "published": "The numbers on this page are published; the sources stand below.",
    "measured": "The numbers on this page were measured.",
}
REMEMBERED = "The numbers on this page are from published works. Those whose source is cited from memory still await comparison with it: the list of sources below says which."
"""Said in place of it where a work was not at hand."""


@cache
def environment(folder: Path) -> Environment:
    """The templates of a kind's folder and the shared ones; a name that is missing is an error, never a blank."""
    loader = ChoiceLoader([FileSystemLoader(folder), FileSystemLoader(TEMPLATES)])
    return Environment(
        loader=loader, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True, keep_trailing_newline=True
    )  # fmt: skip


def record_page(site: Site, subject: Subject[Any]) -> Page:
    """The page of a record."""
    kind = site.kinds[subject.kind]
    view = RecordView(site, subject)
    body = environment(kind.folder).get_template("page.md.j2").render(
        view=view, record=subject.record, prose=markup.prose, number=markup.number, sentence=sentence, in_sentence=in_sentence
    )  # fmt: skip
    return Page(
        uri=view.uri, title=subject.record.title, description=_plain(site, subject, subject.record.summary), body=body
    )  # fmt: skip


def _plain(site: Site, subject: Subject[Any], text: str) -> str:
    return " ".join(filled(text, site.library.facts_for(subject)).split())


class RecordView:
    """What a template may ask of a record, for its own page or another one; everything comes out as HTML or Markdown."""

    def __init__(self, site: Site, subject: Subject[Any], page: str = "") -> None:
        self.site, self.subject, self.uri = site, subject, page or record_uri(subject.id)
        self.kind: Kind[Any] = site.kinds[subject.kind]
        self.parts = self.kind.parts(subject.record)
        self._facts = site.library.facts_for(subject)
        self._sources = site.source_links(self.uri)
        self._words = ToldWords(self.uri, [site.library.vocabulary[name] for name in subject.record.vocabulary])
        self._lines = FactLines(self.kind, self._sources, self._method, self._is_asked, self._is_key)

    def text(self, text: str) -> str:
        """A text of the record with its facts put in, and its words linked where they first stand."""
        return markup.with_facts(text, self._facts.__getitem__, self._link, self._words.piece)

    def _method(self, method: str) -> str:
        return link(self.uri, f"{METHODS}#{method_anchor(method)}")

    def _link(self, reference: Reference) -> str:
        return self.site.fact_link(self.uri, self.subject, reference)

    def shown(self, fact_id: str) -> str:
        """A fact's value as a link to its working."""
        fact = self.subject.facts[fact_id]
        return f'<a class="fact" href="#{markup.fact_anchor(fact_id)}">{markup.number(fact.shown)}</a>'

    def bare(self, fact_id: str) -> str:
        """The same without its unit, for a table whose head names it; a dash where it is not known."""
        fact = self.subject.facts[fact_id]
        value = markup.number(fact.shown_bare) if fact.value is not None else "–"
        return f'<a class="fact" href="#{markup.fact_anchor(fact_id)}">{value}</a>'

    @property
    def route(self) -> str:
        """Where the record's stations stand among all; nothing for a record without stations."""
        return route.strip(route.route(self.site), self.subject)

    @property
    def charts(self) -> list[str]:
        """The charts of the record."""
        return [figures.figure(chart, self.uri) for chart in self.kind.charts(self.subject)]

    def chain(self, explanation: Explanation) -> str:
        """An explanation, step by step."""
        return chains.chain(self.site.library, self.subject, explanation, self.uri, self.text)

    @property
    def questions(self) -> list[str]:
        """The self-check questions, in the order of the record."""
        return self._asked(self.site.library.questions[self.subject.id])

    @property
    def data_questions(self) -> list[str]:
        """Those that the data of the page answer, to be asked right below the data; none where they would be too few for a group, or the record
        has no data but those of its questions.
        """
        return self._asked(self._groups[0])

    @property
    def other_questions(self) -> list[str]:
        """The rest, numbered on from there."""
        return self._asked(self._groups[1], len(self._groups[0]) + 1)

    @property
    def _groups(self) -> tuple[tuple[Question, ...], tuple[Question, ...]]:
        asked = self.site.library.questions[self.subject.id]
        of_data = tuple(item for item in asked if item.needs is Needs.DATA)
        others = tuple(item for item in asked if item.needs is not Needs.DATA)
        parted = self.subject.record.data and min(len(of_data), len(others)) >= SMALLEST_GROUP
        return (of_data, others) if parted else ((), tuple(asked))

    def _asked(self, asked: Iterable[Question], first: int = 1) -> list[str]:
        again, script = fresh_numbers(self.site, self.subject), link(self.uri, fresh_uri(self.subject.id))
        has_data = self.subject.record.data is not None
        return [
            questions.question(item, self.subject.id, place, script if item.id in again else "", has_data=has_data)
            for place, item in enumerate(asked, start=first)
        ]

    def picture(self, picture: Picture) -> str:
        """A picture with its credit."""
        return figures.picture(picture, self.uri)

    @property
    def provenance(self) -> str:
        """Where the numbers come from, in a sentence."""
        scenario, record = self.site.library.course.scenario or "this course", self.subject.record
        remembered = record.data == "published" and any(self.site.library.sources[key].read == "memory" for key in record.sources)
        return markup.prose((REMEMBERED if remembered else PROVENANCE[record.data]).format(scenario=scenario))

    def facts_of(self, *parts: str, only: Container[str] | None = None, without: Container[str] = ()) -> str:
        """The facts that are about these parts, in their order; of some names only, or without some."""
        return self._lines.written(self._about(parts, only, without))

    def facts_beside(self, *parts: str, only: Container[str] | None = None, without: Container[str] = ()) -> str:
        """The facts of several parts, what they have in common as one line each, to be compared."""
        labels = {part: self.parts[part].label for part in parts} if len(parts) > 1 else None
        return self._lines.written(self._about(parts, only, without), labels)

    def _about(self, parts: Container[str], only: Container[str] | None, without: Container[str]) -> Iterator[Fact]:
        for fact in self.subject.facts.values():
            name = name_of(fact)
            if part_of(fact) in parts and name not in without and (only is None or name in only):
                yield fact

    def _is_asked(self, fact: Fact) -> bool:
        return any(f"“{fact.name}”" in item.prompt for item in self.site.library.questions[self.subject.id])

    def _is_key(self, fact: Fact) -> bool:
        """A label is told by what stands beside it, as the largest of some, so that hiding its number alone would tell it."""
        return any(
            item.fact is not None and item.fact.id == fact.id and not item.supposed and not (isinstance(item, ChartReading) and fact.is_number)
            for item in self.site.library.questions[self.subject.id]
        )

    def remarks(self, part: str) -> list[str]:
        """What must be said beside the numbers of a part."""
        return [self.text(remark) for remark in self.kind.remarks(self.subject, part)]

    @property
    def other_facts(self) -> str:
        """The facts that are about the record as a whole."""
        return self._lines.written(fact for fact in self.subject.facts.values() if part_of(fact) not in {*self.parts, NUMBERS})

    @property
    def stated_numbers(self) -> str:
        """The numbers that the record states for its sentences."""
        return self.facts_of(NUMBERS)

    @property
    def misconceptions(self) -> list[tuple[str, str, str]]:
        """Of each common mistake the wrong idea, why it does not hold, and what does."""
        found = (self.site.library.catalogue[name] for name in self.subject.record.misconceptions)
        return [(markup.prose(entry.idea), markup.prose(entry.because), markup.prose(entry.instead)) for entry in found]

    @property
    def words(self) -> list[tuple[str, str]]:
        """Each word as a link to the vocabulary, and what it means."""
        found = (self.site.library.vocabulary[name] for name in self.subject.record.vocabulary)
        address = partial(link, self.uri)
        return [
            (f'<a href="{address(f"{VOCABULARY}#{word_anchor(word.id)}")}">{markup.prose(word.word)}</a>', markup.prose(word.means))
            for word in found
        ]

    @property
    def sources(self) -> list[str]:
        """The works that the record and its facts rest on, in full, each a link into the bibliography."""
        of_facts = (key for fact in self.subject.facts.values() for key in self._keys(fact))
        keys = by_author(self.site, {*self.subject.record.sources, *of_facts})
        return [full_source(self.site, key, self.uri) for key in keys]

    def _keys(self, fact: Fact) -> tuple[str, ...]:
        method = self.kind.methods.get(fact.method)
        return (*fact.sources, *(method.sources if method else ()))


def by_author(site: Site, keys: Iterable[str]) -> list[str]:
    """Keys of works in the order of a bibliography: by authors and year."""
    works = (site.library.sources[key] for key in keys)
    return [work.key for work in sorted(works, key=lambda work: (work.authors.casefold(), work.year or 0, work.key))]


def full_source(site: Site, key: str, page: str) -> str:
    """A work as a line of a bibliography, its title linked to the entry on the sources page."""
    work = site.library.sources[key]
    year = f" ({work.year})" if work.year else ""
    address = link(page, f"{SOURCES}#{source_anchor(key)}")
    known = "" if work.read in ("text", "run") else f' <span class="read">{READ[work.read]}</span>'
    stop = "" if work.title.endswith(("?", "!")) else "."
    return f'{markup.cited(work.authors)}{year}: <a href="{address}">{markup.prose(work.title)}</a>{stop} {markup.cited(work.where)}.{known}'
