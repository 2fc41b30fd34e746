"""The scripts that hold each record's fresh numbers; a page loads its own only when a reader asks for another sum."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache
from typing import Any

from generator.kind import Subject, in_sentence
from generator.pages.data_script import data_script, script_name
from generator.pages.markup import number, prose
from generator.pages.site import Site
from generator.quantities.fact import Fact
from generator.quantities.text import sentence
from generator.questions.fresh import Variant, listing, variants
from generator.questions.misconception import Catalogue, Misconception
from generator.questions.question import NumberEntry, Question

RECORDS_KEPT = 512


def fresh_uri(record: str) -> str:
    """The script of a record, below the pages folder."""
    return f"assets/fresh/{script_name(record)}"


def fresh_scripts(site: Site, script: Callable[[Site, Subject[Any]], bytes] | None = None) -> Mapping[str, bytes]:
    """The script of every record on the site that has sums to set again; `script` is `fresh_script`, or one that remembers."""
    made = {fresh_uri(subject.id): (script or fresh_script)(site, subject) for subject in site.subjects}
    return {uri: text for uri, text in made.items() if text}


def fresh_script(site: Site, subject: Subject[Any]) -> bytes:
    """The script of a record; empty where it has no sum to set again."""
    found = fresh_numbers(site, subject)
    return _script(subject.id, {item: _sums(site, subject, one) for item, one in found.items()}) if found else b""


def fresh_numbers(site: Site, subject: Subject[Any]) -> Mapping[str, tuple[Variant, ...]]:
    """The variants of each of a record's sums, by the question's id."""
    return _variants(subject.id, site.library.questions[subject.id], tuple(site.library.catalogue.values()))


@lru_cache(maxsize=RECORDS_KEPT)
def _variants(
    record: str, items: tuple[Question, ...], entries: tuple[Misconception, ...]
) -> Mapping[str, tuple[Variant, ...]]:  # fmt: skip
    catalogue = Catalogue({entry.id: entry for entry in entries})
    found = {item.id: variants(item, catalogue, record) for item in items if isinstance(item, NumberEntry)}
    return {item: made for item, made in found.items() if made}


def _sums(site: Site, subject: Subject[Any], made: tuple[Variant, ...]) -> list[dict[str, Any]]:
    return [_sum(variant, _Labels(site, subject, variant)) for variant in made]


class _Labels:
    """What the inputs of a sum are called: with their part where they are about several."""

    def __init__(self, site: Site, subject: Subject[Any], variant: Variant) -> None:
        self.parts = site.kinds[subject.kind].parts(subject.record)
        several = len({fact.id.partition(".")[0] for fact in variant.given}) > 1
        self.needed = several and len({fact.name for fact in variant.given}) < len(variant.given)

    def __call__(self, fact: Fact) -> str:
        part = self.parts.get(fact.id.partition(".")[0])
        return f"{in_sentence(part.label)}, {in_sentence(fact.name)}" if self.needed and part else in_sentence(fact.name)


def _sum(variant: Variant, label: _Labels) -> dict[str, Any]:
    """One sum as the script takes it; its texts are HTML, made safe."""
    right = variant.right
    return {
        "ask": f"{prose(f'Other numbers. {sentence(listing(variant, label))}.')} {prose(f'What is the {in_sentence(right.name)} now?')}",
        "formula": prose(variant.working.formula), "put": prose(variant.working.put_in), "answer": number(right.shown_exactly),
        "low": variant.accepted.low, "high": variant.accepted.high,
        "slips": [
            [slip.accepted.low, slip.accepted.high, number(slip.shown), (prose(slip.feedback), slip.refutation, slip.misconception)]
            for slip in variant.slips
        ],
    }  # fmt: skip


def _script(record: str, sums: Mapping[str, list[dict[str, Any]]]) -> bytes:
    """Feedback that comes again and again is held once."""
    says: dict[tuple[str, str, str], int] = {}
    for one in (one for made in sums.values() for one in made):
        for slip in one["slips"]:
            slip[3] = says.setdefault(slip[3], len(says))
    return data_script("studyFresh", record, {"says": list(says), "sums": sums})
