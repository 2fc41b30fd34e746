"""A topic as one file that needs no other: its pages one below the other, their styles, scripts and drawings inside.

Pages are taken from the built site, so that both say the same. Nothing of the theme's own comes along.
"""

from __future__ import annotations

import base64
import mimetypes
import posixpath
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from html import escape
from pathlib import Path
from urllib.parse import unquote

from bs4 import BeautifulSoup, Tag

from generator.publish.policy import CHARSET, policy_of_one_file

LOOK_UP = ("written/command-words.html", "words.html", "sources.html")
"""Pages of which a file takes only the entries that its own pages name."""
STYLE = "assets/handout.css"
_NOT_OURS = re.compile(r"assets/(stylesheets|javascripts)/.*|assets/(search-worker|practice)\.js")
"""What the theme brings, and what serves its header, the search and the page of practice."""
_REFERENCES = ("for", "headers", "list", "aria-labelledby", "aria-describedby", "aria-controls")
"""Attributes that hold ids."""
_SCHEME = re.compile(r'(?:body)?\[data-md-color-scheme(?:="(?P<name>\w+)")?\](?:\[data-md-color-primary\])?\s*\{(?P<rules>[^{}]*)\}')


class PageMissing(Exception):
    """The site does not hold what a file is made from."""


@dataclass(frozen=True, kw_only=True)
class Topic:
    """What a file is made of."""

    name: str
    """The file's name without its ending."""
    course: str
    title: str
    pages: tuple[str, ...]
    """Paths in the site, in the order in which they are to be read."""


@dataclass
class _Gathered:
    """What the pages name beside themselves."""

    entries: dict[str, list[str]] = field(default_factory=dict)
    """For each page to look things up, the ids that are linked to."""
    data: dict[str, None] = field(default_factory=dict)
    """Scripts that hold data, by path, in the order in which they are named."""


def handout(site: Path, topic: Topic) -> str:
    """The whole file as HTML.

    Parameters
    ----------
    site
        The folder of the built site.
    topic
        Which of its pages go in.

    Raises
    ------
    PageMissing
        If the site lacks one of them, or something that they show.
    """
    articles, scripts = localised(site, topic)
    return _whole(
        topic, "\n".join(str(article) for article in articles), _contents(articles), styles(site, topic), "\n".join(f"<script>{_script(site, path)}</script>" for path in scripts),
    )  # fmt: skip


def localised(site: Path, topic: Topic) -> tuple[list[Tag], list[str]]:
    """The article of each page, whose links stay among them, and the paths of scripts that they need, those that hold data last."""
    articles, gathered = [], _Gathered()
    scripts: dict[str, None] = {}
    for page in topic.pages:
        parsed = _parsed(site, page)
        scripts |= dict.fromkeys(_linked(parsed, page, "script[src]", "src"))
        article = _article(parsed, page)
        _make_local(site, article, page, topic.pages, gathered)
        articles.append(article)
    articles += [_entries(site, page, topic.pages, gathered) for page in LOOK_UP if page in gathered.entries]
    return articles, [*scripts, *gathered.data]


def styles(site: Path, topic: Topic) -> str:
    """All that the articles need of styles."""
    page = topic.pages[0]
    paths = [STYLE, *_linked(_parsed(site, page), page, 'link[rel="stylesheet"]', "href")]
    return "\n".join(_style(site, path) for path in paths)


def by_system(css: str) -> str:
    """A style sheet whose colour schemes follow the reader's system instead of the theme's switch; paper is always light."""

    def rule(found: re.Match[str]) -> str:
        rules = f":root {{{found['rules']}}}"
        return f"@media screen and (prefers-color-scheme: dark) {{ {rules} }}" if found["name"] == "slate" else rules

    return _SCHEME.sub(rule, css)


def key(page: str) -> str:
    """The id of a page in the file."""
    return page.removesuffix(".html").replace("/", "-")


def _parsed(site: Path, page: str) -> BeautifulSoup:
    return BeautifulSoup(_bytes(site, page), "html.parser", from_encoding="utf-8")


def _bytes(site: Path, path: str) -> bytes:
    try:
        return (site / path).read_bytes()
    except FileNotFoundError:
        raise PageMissing(f"{site}: expected {path} in the site, found no such file\n    mend: build the site anew") from None


def _article(parsed: BeautifulSoup, page: str) -> Tag:
    article = parsed.select_one("main article, article")
    if article is None:
        raise PageMissing(f"{page}: expected an article in the page, found none\n    mend: build the site anew")
    for hidden in article.select("[data-search-exclude]"):
        del hidden["data-search-exclude"]
    article["class"] = "md-typeset"
    article["id"] = key(page)
    return article


def _make_local(site: Path, article: Tag, page: str, pages: Iterable[str], gathered: _Gathered) -> None:
    """Let everything in an article lead to places in the file, and to nothing else."""
    _prefix_ids(article, key(page))
    for link in article.select("a[href]"):
        target = _local(str(link["href"]), page, pages, gathered)
        if target is None:
            _to_text(link)
        else:
            link["href"] = target
    for image in article.select("img[src]"):
        image["src"] = _data_uri(site, str(image["src"]), page)
    for name in ("data-fresh", "data-words", "data-numbers"):
        for holder in article.select(f"[{name}]"):
            gathered.data[_path(str(holder[name]), page)] = None
            holder[name] = "#"


def _prefix_ids(article: Tag, prefix: str) -> None:
    """Make ids of a page its own within the file, and follow them where they are named."""
    for element in article.find_all(True):
        for name, value in list(element.attrs.items()):
            if name == "id":
                element[name] = f"{prefix}--{value}"
            elif name in _REFERENCES:
                words = value if isinstance(value, list) else str(value).split()
                element[name] = " ".join(f"{prefix}--{word}" for word in words)
            elif isinstance(value, str) and "url(#" in value:
                element[name] = value.replace("url(#", f"url(#{prefix}--")


def _local(address: str, page: str, pages: Iterable[str], gathered: _Gathered) -> str | None:
    """The place in the file that an address of a page leads to, or None if it leads out of the file."""
    if re.match(r"[a-z][a-z0-9+.-]*:", address):
        return None
    target, anchor = _path(address, page), unquote(address.partition("#")[2])
    if target in pages:
        return f"#{key(target)}{f'--{anchor}' if anchor else ''}"
    if target in LOOK_UP and anchor:
        named = gathered.entries.setdefault(target, [])
        if anchor not in named:
            named.append(anchor)
        return f"#{key(target)}--{anchor}"
    return None


def _path(address: str, page: str) -> str:
    """The path in the site of what a page names."""
    path = unquote(address.partition("#")[0])
    return posixpath.normpath(posixpath.join(posixpath.dirname(page), path)) if path else page


def _to_text(link: Tag) -> None:
    """A link out of the file becomes its words; an address on the web, which a reader may want to type, stays with them."""
    address = str(link["href"])
    if address.startswith("http") and address not in link.get_text():
        link.append(f" ({address})")
    link.unwrap()


def _data_uri(site: Path, address: str, page: str) -> str:
    if address.startswith("data:"):
        return address
    path = _path(address, page)
    kind = mimetypes.guess_type(path)[0] or "application/octet-stream"
    return f"data:{kind};base64,{base64.b64encode(_bytes(site, path)).decode()}"


def _entries(site: Path, page: str, pages: Iterable[str], gathered: _Gathered) -> Tag:
    """The page with only those entries that others name, in its own order."""
    article = _article(_parsed(site, page), page)
    named = set(gathered.entries[page])
    for entry in article.select("dl > dt, dl > div"):
        if entry.get("id") not in named:
            for one in [entry, *_meanings(entry)]:
                one.extract()
    _make_local(site, article, page, (*pages, *gathered.entries), gathered)
    return article


def _meanings(entry: Tag) -> Iterator[Tag]:
    """The <dd> that belong to a <dt>."""
    if entry.name == "dt":
        for one in entry.find_next_siblings():
            if one.name != "dd":
                return
            yield one


def _linked(head: BeautifulSoup, page: str, selector: str, attribute: str) -> list[str]:
    """The scripts or styles of a page that are ours, in the page's order."""
    paths = [_path(str(element[attribute]), page) for element in head.select(selector)]
    return [path for path in paths if not _NOT_OURS.fullmatch(path)]


def _style(site: Path, path: str) -> str:
    css = (Path(__file__).parent / path).read_text("utf-8") if path == STYLE else _bytes(site, path).decode()
    return by_system(css)


def _script(site: Path, path: str) -> str:
    """A script that can stand in a page: nothing in it ends the element."""
    return re.sub("</(?=script)", r"<\\/", _bytes(site, path).decode(), flags=re.IGNORECASE)


def _contents(articles: Iterable[Tag]) -> str:
    return "\n".join(f'<li><a href="#{article["id"]}">{escape(title_of(article))}</a></li>' for article in articles)


def title_of(article: Tag) -> str:
    """What stands at the head of an article."""
    head = article.find("h1")
    return head.get_text(" ", strip=True) if head else str(article["id"])


def _whole(topic: Topic, articles: str, contents: str, styles: str, scripts: str) -> str:
    page = f"""<!doctype html>
<html lang="en">
<head>
{CHARSET}
<meta name="viewport" content="width=device-width,initial-scale=1">
<meta name="color-scheme" content="light dark">
<link rel="icon" href="data:,">
<title>{escape(topic.title)} - {escape(topic.course)}</title>
<style>
{styles}
</style>
</head>
<body>
<header class="md-typeset handout-head"><p>{escape(topic.course)}</p><p class="handout-title">{escape(topic.title)}</p></header>
<nav class="md-typeset handout-contents" id="contents" aria-label="Contents">
<p>Contents</p>
<ol>
{contents}
</ol>
</nav>
<main>
{articles}
</main>
<a class="handout-back screen-only" href="#contents">Contents</a>
{scripts}
</body>
</html>
"""
    return page.replace(CHARSET, f'{CHARSET}\n<meta http-equiv="Content-Security-Policy" content="{policy_of_one_file(page)}">', 1)
