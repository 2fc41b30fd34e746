"""Page: one Markdown file of the site, and where it stands."""

from __future__ import annotations

import html
import json
import posixpath
from dataclasses import dataclass
from functools import lru_cache


@dataclass(frozen=True, kw_only=True)
class Page:
    """One page."""

    uri: str
    """Path below the pages folder: `biome/temperate-grassland.md`."""
    title: str
    description: str
    body: str
    """Markdown, beginning with its heading."""
    searched: bool = True
    leads_on: bool = False
    """Whether it is itself a map of the site, and needs no list of pages beside it."""

    @property
    def text(self) -> str:
        """The whole file.

        Every value of the front matter is quoted, since YAML would read `NO` or `12` otherwise, and escaped, since the
        site engine's templates put it into HTML as it is.
        """
        head = [f"title: {_quoted(self.title)}"]
        head += [f"description: {_quoted(self.description)}"] if self.description else []
        head += [] if self.searched else ["search: {exclude: true}"]
        head += ["hide: [navigation]"] if self.leads_on else []
        return "\n".join(["---", *head, "---", "", self.body.strip(), ""])


def _quoted(text: str) -> str:
    return json.dumps(html.escape(text), ensure_ascii=False)


def record_uri(record: str) -> str:
    """The page of a record: `biome/temperate_grassland` stands at `biome/temperate-grassland.md`."""
    return f"{record.replace('_', '-')}.md"


@lru_cache(maxsize=10_000)
def link(source: str, target: str) -> str:
    """The target page as seen from the source page, as a link that works from a folder; keeps an anchor."""
    path, hash_, anchor = target.partition("#")
    relative = posixpath.relpath(path, posixpath.dirname(source) or ".") if path else ""
    return f"{relative.removesuffix('.md') + '.html' if relative.endswith('.md') else relative}{hash_}{anchor}"


def markdown_link(source: str, target: str) -> str:
    """The same for a Markdown link, which the site engine checks and rewrites."""
    path, hash_, anchor = target.partition("#")
    return f"{posixpath.relpath(path, posixpath.dirname(source) or '.') if path else ''}{hash_}{anchor}"
