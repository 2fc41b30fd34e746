"""What can be said of a finished site by its files alone: how two differ, and which links lead nowhere."""

from __future__ import annotations

import hashlib
from collections import Counter
from pathlib import Path
from urllib.parse import unquote, urlsplit

from bs4 import BeautifulSoup


def tree(site: Path) -> dict[str, str]:
    """Every file of a folder by its path from there, with a hash of its bytes."""
    return {
        file.relative_to(site).as_posix(): hashlib.sha256(file.read_bytes()).hexdigest()
        for file in sorted(site.rglob("*")) if file.is_file()
    }  # fmt: skip


def differences(one: Path, other: Path) -> list[str]:
    """The files that are in only one of two folders, or differ, sorted."""
    first, second = tree(one), tree(other)
    return sorted(name for name in first.keys() | second.keys() if first.get(name) != second.get(name))


def link_problems(site: Path) -> list[str]:
    """Links, images, scripts and labels of all pages that lead nowhere or out of the folder, and ids given twice."""
    pages = {page.resolve(): BeautifulSoup(page.read_text("utf-8"), "html.parser") for page in site.rglob("*.html")}
    ids = {page: [element["id"] for element in soup.find_all(id=True)] for page, soup in pages.items()}
    problems = []
    for page, soup in sorted(pages.items()):
        name = page.relative_to(site.resolve()).as_posix()
        problems += [f"{name}: id {twice} {count} times" for twice, count in Counter(ids[page]).items() if count > 1]
        for element in soup.find_all(True):
            for attribute in ("href", "src"):
                if (link := element.get(attribute)) and (problem := _problem(link, page, site.resolve(), ids)):
                    problems.append(f"{name}: {attribute}={link}: {problem}")
            for attribute in ("for", "aria-labelledby", "aria-describedby", "aria-controls"):
                named = element.get(attribute) or []
                for target in named.split() if isinstance(named, str) else named:
                    if target not in ids[page]:
                        problems.append(f"{name}: {attribute}={target}: no such id")
    return problems


def _problem(link: str, page: Path, site: Path, ids: dict[Path, list[str]]) -> str:
    parts = urlsplit(link)
    if parts.scheme in ("http", "https", "mailto", "data") and parts.scheme:
        return ""
    if parts.scheme or parts.netloc or parts.path.startswith("/"):
        return "not relative"
    target = (page.parent / unquote(parts.path)).resolve() if parts.path else page
    if not target.is_relative_to(site):
        return "leaves the site"
    if not target.is_file():
        return "no such file"
    if parts.fragment and target in ids and unquote(parts.fragment) not in ids[target]:
        return "no such id"
    return ""
