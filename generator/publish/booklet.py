"""A topic as a booklet for paper: a title page, contents with their page numbers, running heads, answers at the end or left out.

Chromium prints it. It knows margin boxes and named pages (`@page name`), so every article brings its own running head; it does not
know `string-set` and `target-counter`, so the booklet is printed twice, and the numbers of the contents are read from the first print.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from collections.abc import Iterable, Mapping
from html import escape
from pathlib import Path
from tempfile import TemporaryDirectory

from bs4 import BeautifulSoup, Tag

from generator.publish.handout import Topic, localised, styles, title_of

ANSWERS = "answers"
PROGRAMS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
LONGEST = 300
"""Seconds that one print may take."""
_STREAM = re.compile(rb"\bstream\r?\n.*?endstream", re.DOTALL)
_OBJECT = re.compile(rb"(\d+) 0 obj\b(.*?)\bendobj", re.DOTALL)
_PLACE = re.compile(rb"/([^\s\[\]()<>/]+) ?\[(\d+) 0 R /XYZ")


class NotPrinted(Exception):
    """Chromium did not print a booklet."""


def chromium() -> str | None:
    """The program that prints: the one that CHROMIUM names, or the system's."""
    return os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, PROGRAMS)), None)


def booklet_pdf(site: Path, topic: Topic, program: str, *, answers: bool) -> bytes:
    """The booklet as PDF.

    Raises
    ------
    PageMissing
        If the site lacks a page of the topic.
    NotPrinted
        If the program fails, or prints contents whose numbers are not those of the pages.
    """
    articles = bound(site, topic, answers=answers)
    css = sheet(site, topic)
    numbers = page_numbers(printed(program, booklet_html(topic, articles, css, {})))
    pdf = printed(program, booklet_html(topic, articles, css, numbers))
    if page_numbers(pdf) != numbers:
        raise NotPrinted(f"{topic.title}: the second print has its pages at other places than the first")
    return pdf


def sheet(site: Path, topic: Topic) -> str:
    """The styles of a booklet."""
    return styles(site, topic) + (Path(__file__).parent / "assets" / "booklet.css").read_text("utf-8")


def bound(site: Path, topic: Topic, *, answers: bool) -> list[Tag]:
    """The articles as they stand on paper: everything open, answers and guides in an article of their own or nowhere."""
    articles, _ = localised(site, topic)
    keys = [(article, _take_answers(article)) for article in articles]
    for article in articles:
        for closed in article.select("details"):
            closed["open"] = ""
    if answers:
        body = "".join(f"<h2>{escape(title_of(article))}</h2>{key}" for article, key in keys if key)
        parsed = BeautifulSoup(f'<article class="md-typeset" id="{ANSWERS}"><h1>Answers</h1>{body}</article>', "html.parser")
        articles += [article for article in parsed.select("article") if body]
    return articles


def booklet_html(topic: Topic, articles: Iterable[Tag], css: str, numbers: Mapping[str, int]) -> str:
    """The whole booklet; a number that is not known yet leaves its room free."""
    articles = list(articles)
    heads = "\n".join(_running_head(topic, article) for article in articles)
    lines = "\n".join(
        f'<li><a href="#{article["id"]}"><span>{escape(title_of(article))}</span><span class="leader"></span>'
        f"<span>{numbers.get(str(article['id']), '')}</span></a></li>"
        for article in articles
    )
    return f"""<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>{escape(topic.title)} - {escape(topic.course)}</title>
<style>
{css}
{heads}
</style>
</head>
<body class="booklet{" with-answers" if any(article["id"] == ANSWERS for article in articles) else ""}">
<header class="md-typeset title-page"><p>{escape(topic.course)}</p><p class="handout-title">{escape(topic.title)}</p></header>
<nav class="md-typeset booklet-contents"><p class="handout-title">Contents</p><ol>
{lines}
</ol></nav>
<main>
{"".join(str(article) for article in articles)}
</main>
</body>
</html>
"""


def printed(program: str, html: str) -> bytes:
    """What Chromium prints of a page, in a profile of its own, with no network and no line of its own at the edges."""
    with TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        page, pdf = Path(folder, "booklet.html"), Path(folder, "booklet.pdf")
        page.write_text(html, "utf-8")
        words = [
            program, "--headless", "--disable-gpu", "--no-first-run", "--disable-background-networking", f"--user-data-dir={folder}/profile",
            "--no-pdf-header-footer", f"--print-to-pdf={pdf}", page.as_uri(),
        ]  # fmt: skip
        if hasattr(os, "geteuid") and os.geteuid() == 0:
            words.insert(1, "--no-sandbox")  # Chromium does not start for the superuser otherwise
        try:
            subprocess.run(words, capture_output=True, timeout=LONGEST, check=False)
            return pdf.read_bytes()
        except (OSError, subprocess.TimeoutExpired) as error:
            raise NotPrinted(f"{program} printed nothing ({error.__class__.__name__})") from error


def page_numbers(pdf: bytes) -> dict[str, int]:
    """On which page, counted from 1, each place stands that a link of the document leads to; by the place's id.

    Reads what Chromium writes, where the objects of the page tree and of the named places are not compressed.
    Source, from memory: ISO 32000-1, 7.7.3 page tree, 12.3.2.3 named destinations.
    """
    objects = {int(number): body for number, body in _OBJECT.findall(_STREAM.sub(b"", pdf))}
    catalog = next((body for body in objects.values() if re.search(rb"/Type\s*/Catalog\b", body)), b"")
    root, places = _reference(catalog, rb"Pages"), _reference(catalog, rb"Dests")
    if root is None:
        raise NotPrinted("the print has no pages that can be counted")
    order = {page: place for place, page in enumerate(_leaves(objects, root), start=1)}
    found = _PLACE.findall(objects.get(places, b"")) if places is not None else []
    return {_name(name): order[int(page)] for name, page in found}


def _leaves(objects: Mapping[int, bytes], node: int) -> list[int]:
    kids = re.search(rb"/Kids\s*\[(.*?)\]", objects[node], re.DOTALL)
    return [leaf for kid in re.findall(rb"(\d+) 0 R", kids[1]) for leaf in _leaves(objects, int(kid))] if kids else [node]


def _reference(body: bytes, name: bytes) -> int | None:
    found = re.search(rb"/" + name + rb" (\d+) 0 R", body)
    return int(found[1]) if found else None


def _name(name: bytes) -> str:
    """A name of PDF: other than plain characters stand as # and two digits."""
    return re.sub(rb"#([0-9A-Fa-f]{2})", lambda found: bytes([int(found[1], 16)]), name).decode("utf-8", "replace")


def _running_head(topic: Topic, article: Tag) -> str:
    name = article["id"]
    return f"#{name} {{ page: {name} }}\n@page {name} {{ @top-left {{ content: {_quoted(topic.title)} }} @top-right {{ content: {_quoted(title_of(article))} }} }}"


def _quoted(text: str) -> str:
    """A string of CSS that cannot end the element or itself."""
    return '"' + re.sub(r'["\\<\n]', lambda found: f"\\{ord(found[0]):x} ", text) + '"'


def _take_answers(article: Tag) -> str:
    """Take what tells the answers out of an article, and return what a key says of them."""
    key = []
    for question in article.select("self-check"):
        number, answer = question.select_one(".check-number"), question.select_one("details.answer > div")
        if number and answer and not question.find_parent("written-part"):
            key.append(_key(number.get_text(), answer))
    for part in article.select("written-part"):
        guide = part.select_one("details.guide > div")
        if guide:
            key.append(_key(f"Part {part['data-part']}.", guide))
    for told in article.select("details:is(.answer, .guide, .samples, .hint), .hints"):
        told.extract()
    return "".join(key)


def _key(label: str, answer: Tag) -> str:
    """An answer without what is said to wrong ones, and without what only repeats it."""
    for line in answer.select(".feedback > li"):
        says = line.select_one(".says")
        if line.get("data-right") != "true" or says is None or says.has_attr("hidden"):
            line.extract()
    for empty in answer.select("ul.feedback:not(:has(li)), [hidden]"):
        empty.extract()
    return f'<div class="key"><p class="check-number">{escape(label)}</p>{answer.decode_contents()}</div>'
