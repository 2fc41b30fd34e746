"""Files to give out: one for each shown topic, and a booklet of it, made from the built site."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from generator.build import check
from generator.kinds import all_kinds
from generator.pages.page import record_uri
from generator.pages.site import Site, recall_uri, shown_questions, topic_uri, written_uri
from generator.publish.booklet import booklet_pdf
from generator.publish.handout import Topic, handout


@dataclass(frozen=True)
class Given:
    """A file that was written."""

    path: Path
    size: int
    """In bytes, as it lies on the disk and as a messenger sends it."""


def topics(site: Site) -> Iterator[Topic]:
    """What each file holds: the topic's page, the sheet on one page, its records, its written questions."""
    for topic in site.library.course.topics:
        if not topic.show:
            continue
        written = [written_uri(one.name) for one in shown_questions(site) if one.question.topic == topic.id]
        recall = [recall_uri(topic.id)] if topic.records else []
        uris = [topic_uri(topic.id), *recall, *map(record_uri, topic.records), *written]
        yield Topic(
            name=topic.id.replace("_", "-"), course=site.library.course.title, title=topic.title,
            pages=tuple(f"{uri.removesuffix('.md')}.html" for uri in uris),
        )  # fmt: skip


def write_handouts(content: Path, built: Path, out: Path, name: str = "", program: str | None = None, *, answers: bool = True) -> Iterator[Given]:
    """Write the file of each shown topic into `out`, with a booklet if there is a program to print it; tell each as soon as it is there.

    Raises
    ------
    ContentErrors
        If the content is wrong.
    PageMissing
        If the site does not hold the pages of the content.
    NotPrinted
        If the program does not print a booklet.
    """
    for topic in topics(Site(library=check(content, name), kinds=all_kinds())):
        yield _written(out / f"{topic.name}.html", handout(built, topic).encode())
        if program:
            yield _written(out / f"{topic.name}.pdf", booklet_pdf(built, topic, program, answers=answers))


def _written(file: Path, content: bytes) -> Given:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(content)
    return Given(file, len(content))
