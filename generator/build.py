"""The pipeline, top to bottom: content in, pages and charts in the work folder out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from figures import Chart
from figures.fingerprint import fingerprint

from generator.course.coverage import Coverage, coverage
from generator.course.coverage_text import markdown
from generator.course.guide_review import Review, review
from generator.course.library import Library, load, load_subject
from generator.diagnostics import Diagnostic
from generator.kinds import all_kinds
from generator.pages.asset_files import assets
from generator.pages.comparison_page import comparison_page
from generator.pages.course_pages import home_page, navigation, sources_page, topic_page, vocabulary_page
from generator.pages.figures import chart_uri, picture_uri
from generator.pages.fresh import fresh_script, fresh_scripts
from generator.pages.guides_sheet import guides_sheet
from generator.pages.methods_page import methods_page
from generator.pages.page import Page
from generator.pages.practice import practice_page, practice_script, practice_scripts, progress_page
from generator.pages.recall_page import recall_page
from generator.pages.record_page import record_page
from generator.pages.remembered import Remembered
from generator.pages.route import route, route_style
from generator.pages.search_notes import SearchNotes, search_notes
from generator.pages.site import Site
from generator.pages.take_away import take_away
from generator.pages.written_again import again_scripts
from generator.pages.written_page import coaching_script, written_navigation, written_pages
from generator.pages.writer import write_tree
from generator.quantities.fact import Fact
from generator.records import RecordFile, read
from generator.science.method import Method

PAGE, FRESH, PRACTICE = Remembered(record_page), Remembered(fresh_script), Remembered(practice_script)
Drawings = Callable[[Iterable[Chart], Path], Mapping[str, bytes]]


@dataclass(frozen=True, kw_only=True)
class Written:
    """What a run has put into the work folder."""

    title: str
    nav: list[dict[str, Any]]
    """The navigation as nested titles and paths."""
    changed: frozenset[str]
    """The paths below `pages/` that were written or removed."""
    warnings: tuple[Diagnostic, ...]
    search: SearchNotes
    """What the search is told beside the pages."""


def check(content: Path, name: str = "") -> Library:
    """Read and check a whole content folder, compute every fact and make every question; nothing is written or drawn.

    Raises
    ------
    ContentErrors
        With everything that is wrong.
    """
    return load(content, all_kinds(), name)


def write_pages(content: Path, work: Path, name: str = "", drawings: Drawings | None = None) -> Written:
    """Write all pages, charts and assets into `work/pages`, or nothing at all; `drawings` is `draw` or does the same.

    Raises
    ------
    ContentErrors
        With everything that is wrong.
    """
    library = check(content, name)
    site = Site(library=library, kinds=all_kinds())
    pages = compose(site)
    texts = {page.uri: page.text.encode() for page in pages}
    charts = (drawings or draw)(site.charts, work / "drawn")
    files = texts | charts | take_away(site, charts) | pictures(site, content) | fresh_scripts(site, FRESH) | practice_scripts(site, PRACTICE) | coaching_script(site) | again_scripts(site) | route_style(route(site)) | assets()
    changed = write_tree(work / "pages", files)
    return Written(title=library.course.title, nav=navigation(site, written_navigation(site)), changed=changed, warnings=library.warnings, search=search_notes(site, [page for page in pages if page.searched]))


def write_coverage(content: Path, teacher: Path, name: str = "") -> tuple[Coverage, Path]:
    """Write which records and questions serve each objective into the teacher's folder, and return it with the file.

    Raises
    ------
    ContentErrors
        With everything that is wrong.
    """
    found = coverage(check(content, name))
    teacher.mkdir(parents=True, exist_ok=True)
    file = teacher / "coverage.md"
    file.write_bytes(markdown(found).encode())
    return found, file


def write_guides(content: Path, teacher: Path, name: str = "") -> tuple[Review, Path]:
    """Write all marking guides into the teacher's folder as one file to read and print, and return what is in it with the file.

    Raises
    ------
    ContentErrors
        With everything that is wrong.
    """
    site = Site(library=check(content, name), kinds=all_kinds())
    found = review(site.library, site.kinds)
    teacher.mkdir(parents=True, exist_ok=True)
    file = teacher / "guides.html"
    file.write_bytes(guides_sheet(site, found).encode())
    return found, file


def compose(site: Site) -> list[Page]:
    """Every page of the site."""
    topics = [topic for topic in site.library.course.topics if topic.show]
    return [
        home_page(site),
        *(topic_page(site, topic) for topic in topics),
        *(recall_page(site, topic) for topic in topics if topic.records),
        *(PAGE(site, subject) for subject in site.subjects),
        *(comparison_page(site, kind) for kind in site.compared_kinds),
        *written_pages(site),
        practice_page(site),
        progress_page(site),
        vocabulary_page(site),
        methods_page(site),
        sources_page(site),
    ]


def pictures(site: Site, content: Path) -> Mapping[str, bytes]:
    """The pictures of all records on the site, by the path that pages name them by."""
    named = {picture.file for subject in site.subjects for picture in subject.record.pictures}
    return {picture_uri(file): (content / file).read_bytes() for file in sorted(named)}


def draw(charts: Iterable[Chart], drawn: Path) -> Mapping[str, bytes]:
    """The drawings by their path; one that was drawn before, from the same spec by the same code, is taken from `drawn`."""
    files: dict[str, bytes] = {}
    for chart in charts:
        kept = kept_at(drawn, chart)
        if not kept.is_file():
            keep(kept, _draw(chart))
        files[chart_uri(chart)] = kept.read_bytes()
    return files


def kept_at(drawn: Path, chart: Chart) -> Path:
    """Where the drawing of a chart is kept."""
    return drawn / f"{fingerprint(chart)}.svg"


def _draw(chart: Chart) -> str:
    from figures.drawing import draw  # loads the drawing library, which takes half a second, only when it is needed

    return draw(chart)


def keep(path: Path, svg: str) -> None:
    """Keep a drawing: write beside the place and move, so that a run that is stopped leaves no half drawing behind."""
    path.parent.mkdir(parents=True, exist_ok=True)
    beside = path.with_suffix(".new")
    beside.write_text(svg, "utf-8")
    beside.replace(path)


def known_records(content: Path) -> tuple[str, ...]:
    """The ids of all records in a content folder, by their file names alone: none is opened."""
    return tuple(f"{kind}/{path.stem}" for kind in all_kinds() for path in sorted((content / kind).glob("[!.]*.yaml")))


def facts_of(content: Path, record: str, name: str = "") -> dict[str, dict[str, object]]:
    """The facts of one of the known records as plain data; no other file is read, nothing is drawn.

    Raises
    ------
    ContentErrors
        If that record is wrong.
    """
    kind, _, stem = record.partition("/")
    located = read(content / kind / f"{stem}.yaml", f"{name or content.name}/{record}.yaml")
    subject = load_subject(RecordFile(kind, stem, located), all_kinds())
    methods = all_kinds()[kind].methods
    return {fact.id: plain_fact(fact, methods) for fact in subject.facts.values()}


def plain_fact(fact: Fact, methods: Mapping[str, Method]) -> dict[str, object]:
    """A fact as plain data: its value unrounded, and the sources of the fact itself and of its method."""
    value = list(fact.value) if isinstance(fact.value, tuple) else fact.value
    of_method = methods[fact.method].sources if fact.method in methods else ()
    return {
        "value": value, "unit": (fact.unit.label or None) if fact.unit else None, "shown": fact.shown, "working": fact.shown_working,
        "method": fact.method, "sources": list(dict.fromkeys((*fact.sources, *of_method))),
    }  # fmt: skip
