"""The page of methods: formula, symbols, limits, sources and outside checks, from the methods and the check files themselves."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from generator.pages import markup, mathml
from generator.pages.page import Page
from generator.pages.record_page import TEMPLATES, environment
from generator.pages.site import METHODS, Site, method_anchor
from generator.quantities.notation import in_words
from generator.quantities.shown import MINUS
from generator.quantities.text import sentence
from generator.quantities.units import UnitError, unit
from generator.records.located import located
from generator.science.method import Method

_SIGN = re.compile(r"(?<=\s)-(?=\s)|(?<=\()-(?=\d[\d.]*\)(?:\.|$))|(?<![^\s])-(?=\d)(?![^(\[]*[)\]])")
"""A hyphen between two values, before a last value in brackets, or before a number that stands in no brackets."""
_DEGREES = re.compile(r"(?<=\d )degC\b")
STATUS = {
    "published": "published",
    "library": "output of a program",
    "secondary": "published, known from works that quote it",
    "common practice": "common practice",
    "from memory": "from memory",
    "derived": "arithmetic, guards against slips only",
}


@dataclass(frozen=True)
class Check:
    """What a computation is compared with."""

    name: str
    source: str
    status: str


def methods_page(site: Site) -> Page:
    """Every method that a record on the site rests on."""
    used = {method.id: method for kind in site.shown_kinds for method in kind.methods.values()}
    methods = sorted(used.values(), key=lambda method: method.name)
    sources = site.source_links(METHODS)
    body = environment(TEMPLATES).get_template("methods.md.j2").render(
        prose=markup.prose, sentence=sentence, methods=methods, anchor=method_anchor, sources=sources,
        formula=mathml.line, in_words=in_words, checks=checks_of, sources_of_checks=_by_source, unit=shown_unit,
        same_limits=_said_before(methods).get,
    )  # fmt: skip
    return Page(uri=METHODS, title="Methods", description="How every number is computed, and what it is checked against.", body=body)


def _said_before(methods: Iterable[Method]) -> Mapping[str, Method]:
    """For each method whose limits an earlier one has, by its id, the first that has them."""
    first: dict[str, Method] = {}
    return {method.id: earlier for method in methods if (earlier := first.setdefault(method.limits, method)) is not method}


@cache
def checks_of(method: str) -> tuple[Check, ...]:
    """The outside checks of a method, from its file."""
    file = f"checks/{method}.yaml"
    found: Mapping[str, list[dict[str, str]]] = located(files("generator.science").joinpath(file).read_bytes(), file).value
    return tuple(Check(entry["name"], entry["source"], entry["status"]) for entry in found["checks"])


def _by_source(method: str) -> list[tuple[str, str, list[str]]]:
    """Source, status in words, and the names of the checks that rest on it, so that a source is named once."""
    found: dict[tuple[str, str], list[str]] = {}
    for check in checks_of(method):
        found.setdefault((check.source, STATUS[check.status]), []).append(check.name)
    return [(signed(source), status, [signed(name) for name in names]) for (source, status), names in found.items()]


def signed(text: str) -> str:
    """Text of a check file with minus for its hyphens and degrees as printed; calls of a program keep the spelling that runs."""
    return _DEGREES.sub("°C", _SIGN.sub(MINUS, text))


def shown_unit(label: str) -> str:
    """A symbol's unit as printed; some labels are words, such as `the unit given`."""
    try:
        return unit(label).shown
    except UnitError:
        return label
