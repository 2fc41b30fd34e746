"""What stands on the site: which records, at which addresses, and how the pages hang together."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from figures import Chart

from generator.course.library import Library, taught
from generator.kind import Comparison, Kind, Subject
from generator.pages.chains import chain_charts
from generator.pages.markup import fact_anchor, prose
from generator.pages.page import link, record_uri
from generator.quantities.text import Reference, sentence
from generator.written.guide import Guided

_INITIALS = re.compile(r", \w{1,2}\.")
HOME, VOCABULARY, SOURCES, METHODS = "index.md", "words.md", "sources.md", "methods.md"
PRACTICE, PROGRESS = "practice.md", "my-record.md"
WRITTEN, COMMAND_WORDS = "written/index.md", "written/command-words.md"

READ = {
    "text": "The work itself was read.",
    "abstract": "Its summary was read.",
    "secondary": "Known from other works that quote it.",
    "memory": "Cited from memory.",
    "run": "The program was run.",
}
"""How well a source is known, in a sentence for its reader."""


@dataclass(frozen=True, kw_only=True)
class Site:
    """A library and the kinds that make its pages."""

    library: Library
    kinds: Mapping[str, Kind[Any]]

    @property
    def subjects(self) -> tuple[Subject[Any], ...]:
        """The records on the site, in taught order."""
        return tuple(self.library.subjects[record] for record in taught(self.library))

    @property
    def shown_kinds(self) -> tuple[Kind[Any], ...]:
        """The kinds that have a record on the site."""
        names = {subject.kind for subject in self.subjects}
        return tuple(kind for name, kind in self.kinds.items() if name in names)

    @property
    def compared_kinds(self) -> tuple[Kind[Any], ...]:
        """Those of them that have numbers to compare."""
        return tuple(kind for kind in self.shown_kinds if kind.computes)

    def of_kind(self, kind: Kind[Any]) -> tuple[Subject[Any], ...]:
        """The records of one kind on the site."""
        return tuple(subject for subject in self.subjects if subject.kind == kind.name)

    def comparison(self, kind: Kind[Any]) -> Comparison:
        """The records of one kind on the site, side by side."""
        return kind.compare(self.of_kind(kind))

    @property
    def charts(self) -> tuple[Chart, ...]:
        """Every chart that a page shows, each followed by its drawing for a phone's width, if there is one."""
        of_records = (chart for subject in self.subjects for chart in self.kinds[subject.kind].charts(subject))
        chains = (chart for subject in self.subjects for chart in chain_charts(self.library, subject))
        compared = (chart for kind in self.shown_kinds for chart in self.comparison(kind).charts)
        shown = (*of_records, *chains, *compared, *self._asked_charts)
        return tuple(drawing for chart in shown for drawing in (chart, chart.narrowed()) if drawing)

    @property
    def _asked_charts(self) -> Iterator[Chart]:
        """The charts that written questions show, be their records on the site or not."""
        for guided in self.library.written:
            for stimulus in guided.question.stimulus:
                if stimulus.chart:
                    record, _, name = stimulus.chart.partition("#")
                    yield self.charts_of(record)[name]

    def charts_of(self, record: str) -> Mapping[str, Chart]:
        """The charts of a record by the names under which written questions know them."""
        subject = self.library.subjects[record]
        return self.kinds[subject.kind].named_charts(subject)

    def is_shown(self, record: str) -> bool:
        """Whether a record has a page."""
        return any(subject.id == record for subject in self.subjects)

    def fact_link(self, page: str, subject: Subject[Any], reference: Reference) -> str:
        """The address of a fact's entry as seen from a page, or nothing where it has none."""
        owner = self.library.subjects[reference.record] if reference.record else subject
        part = self.kinds[owner.kind].parts(owner.record).get(reference.fact.partition(".")[0])
        if not self.is_shown(owner.id) or (part and part.use != "page"):
            return ""
        return link(page, f"{record_uri(owner.id)}#{fact_anchor(reference.fact)}")

    def source_links(self, page: str) -> dict[str, str]:
        """A link to each entry of the bibliography, by key."""
        return {
            key: f'<a href="{link(page, f"{SOURCES}#{source_anchor(key)}")}">{prose(_short(work.authors, work.year))}</a>'
            for key, work in self.library.sources.items()
        }


def shown_questions(site: Site) -> Iterator[Guided]:
    """Those whose topic is shown, in taught order of their topics."""
    for topic in site.library.course.topics:
        if topic.show:
            yield from (guided for guided in site.library.written if guided.question.topic == topic.id)


def source_anchor(key: str) -> str:
    """The id of an entry of the bibliography."""
    return f"source-{key.lower().replace('_', '-')}"


def method_anchor(method: str) -> str:
    """The id of a method's heading."""
    return f"method-{method.replace('_', '-')}"


def word_anchor(word: str) -> str:
    """The id of an entry of the vocabulary."""
    return f"word-{word.replace('_', '-')}"


def topic_uri(topic: str) -> str:
    """The page of a topic."""
    return f"topics/{topic.replace('_', '-')}/index.md"


def recall_uri(topic: str) -> str:
    """The page to recall a topic from."""
    return f"topics/{topic.replace('_', '-')}/on-one-page.md"


def written_uri(name: str) -> str:
    """The page of a written question."""
    return f"written/{name.replace('_', '-')}.md"


def part_anchor(part: str) -> str:
    """The id of a part of a written question on its page."""
    return f"part-{part.replace('_', '-')}"


def command_word_anchor(word: str) -> str:
    """The id of an entry of the command words."""
    return f"command-{word.replace('_', '-')}"


def comparison_uri(kind: str) -> str:
    """The page that compares the records of a kind."""
    return f"{kind.replace('_', '-')}/compared.md"


def _short(authors: str, year: int | None) -> str:
    """As cited in a line: "Allen and others 1998"; an organisation, which has no initials, by its whole name."""
    if not _INITIALS.search(authors):
        return f"{sentence(authors.split(',')[0])}{f' {year}' if year else ''}"
    names = [name.strip() for name in authors.replace(" and ", ";").replace("., ", ".;").split(";") if name.strip()]
    more = len(names) > 2 or authors.endswith("et al.")
    second = " and others" if more else f" and {names[1].split(',')[0]}" if len(names) == 2 else ""
    return f"{sentence(names[0].split(',')[0])}{second}{f' {year}' if year else ''}"
