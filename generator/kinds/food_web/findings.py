"""What contradicts itself in a food web, and what a careful reader would question."""

from __future__ import annotations

import math
from collections.abc import Iterator

from figures.food_web_diagram import crowded

from generator.diagnostics import Severity, did_you_mean, listed
from generator.kind import Subject
from generator.kinds.food_web.charts import charts
from generator.kinds.food_web.facts import level_expression
from generator.kinds.food_web.record import FoodWebRecord, Species
from generator.quantities import shown
from generator.quantities.expression import ExpressionError
from generator.quantities.fact import Facts
from generator.quantities.units import UnitError, unit
from generator.records.finding import Finding
from generator.science.food_webs import SHARES_TOLERANCE, TooManyChains, food_chains, without_source

MOST_SPECIES = 24
"""More boxes than this find no room, and nobody follows so many arrows."""
HIGHEST_USUAL = 5.5
"""Trophic level above which a diet is questioned. Our own rule: higher ones are hardly ever worked out from measured diets."""


def findings(record: FoodWebRecord) -> Iterator[Finding]:
    """Contradictions inside the record."""
    yield from _unit(record)
    unknown = list(_unknown(record))
    yield from unknown
    for at, species in enumerate(record.species):
        yield from _feeding(at, species)
        yield from _shares(at, species)
    if not any(one.eats for one in record.species):
        yield Finding(
            path=("species",), expected="a species that eats another", found="none", mend="write under `eats:` what each consumer eats"
        )  # fmt: skip
    if len(record.species) > MOST_SPECIES:
        yield Finding(
            path=("species",), expected=f"at most {MOST_SPECIES} species", found=str(len(record.species)),
            mend="join species that eat and are eaten alike, or make two records",
        )  # fmt: skip
    elif not unknown:
        yield from _sources(record)


def _unit(record: FoodWebRecord) -> Iterator[Finding]:
    label = record.units.biomass
    try:
        fits, because = unit(label).same_kind(unit("g/m2")), "write g/m2, or another unit of the same kind"
    except UnitError as error:
        fits, because = False, str(error)
    if not fits:
        yield Finding(path=("units", "biomass"), expected="a unit such as g/m2", found=f'"{label}"', mend=because)


def _unknown(record: FoodWebRecord) -> Iterator[Finding]:
    known = [one.id for one in record.species]
    for at, species in enumerate(record.species):
        for number, food in enumerate(species.eats):
            if food.food not in known:
                yield _no_species(("species", at, "eats", number, "food"), food.food, known)
    for at, gone in enumerate(record.if_gone):
        if gone not in known:
            yield _no_species(("if_gone", at), gone, known)


def _no_species(path: tuple[str | int, ...], name: str, known: list[str]) -> Finding:
    mend = did_you_mean(name, known, f"write one of {listed(sorted(known))}, or add it under `species:`")
    return Finding(path=path, expected="the id of a species", found=f'"{name}"', mend=mend)


def _feeding(at: int, species: Species) -> Iterator[Finding]:
    """Consumers eat, and not only themselves; producers and dead matter do not."""
    if species.feeding != "consumer" and species.eats:
        what = "a producer, which eats nothing" if species.feeding == "producer" else "dead matter, which eats nothing"
        yield Finding(
            path=("species", at, "eats"), expected=what, found=f'"{species.id}", which eats {", ".join(food.food for food in species.eats)}',
            mend="remove `eats:`, or write `feeding: consumer`",
        )  # fmt: skip
    if species.feeding == "consumer" and not species.eats:
        yield Finding(
            path=("species", at), expected="a consumer with something to eat", found=f'"{species.id}", which eats nothing',
            mend=f"write under `eats:` what {species.label} feeds on, or correct `feeding:`",
        )  # fmt: skip
    if [food.food for food in species.eats] == [species.id]:
        yield Finding(
            path=("species", at, "eats"), expected="a food besides its own kind", found=f'"{species.id}", which eats only itself',
            mend="a cannibal must eat something else too, or no energy comes in",
        )  # fmt: skip


def _shares(at: int, species: Species) -> Iterator[Finding]:
    """All foods have a share and these add up to 1, or none has."""
    shares = [food.share for food in species.eats if food.share is not None]
    if not shares:
        return
    if len(shares) < len(species.eats):
        number = next(number for number, food in enumerate(species.eats) if food.share is None)
        yield Finding(
            path=("species", at, "eats", number), expected=f"a share for every food of {species.id}, or for none",
            found=f'no share of "{species.eats[number].food}"', mend="add the missing share, or remove the others",
        )  # fmt: skip
    elif abs((total := math.fsum(shares)) - 1) > SHARES_TOLERANCE:
        yield Finding(
            path=("species", at, "eats"), expected=f"shares of {species.id} that add up to 1",
            found=shown.written(f"{total:.6g}"), mend="correct the share that is wrong; where they were rounded, change the largest",
        )  # fmt: skip


def _sources(record: FoodWebRecord) -> Iterator[Finding]:
    """A chain from the bottom to every species, and not too many of them."""
    eats = record.eats
    alone = {one.id for one in record.species if set(eats[one.id]) == {one.id}}
    if lost := [name for name in without_source(eats) if name not in alone]:
        at = next(number for number, one in enumerate(record.species) if one.id == lost[0])
        yield Finding(
            path=("species", at, "eats"), expected="a chain of food that begins with a producer or dead matter",
            found=f"none for {', '.join(lost)}: the arrows to {'it' if len(lost) == 1 else 'them'} begin nowhere",
            mend="let one of them eat a producer, dead matter, or something that lives on these",
        )  # fmt: skip
        return
    for at, species in enumerate(record.species):
        try:
            food_chains(eats, species.id)
            if species.eats:
                level_expression(species)
        except TooManyChains:
            yield Finding(
                path=("species", at), expected="chains that can be followed", found=f'too many that lead to "{species.id}"',
                mend="join species that eat and are eaten alike",
            )  # fmt: skip
            return
        except ExpressionError:
            yield Finding(
                path=("species", at, "eats"), expected="foods whose levels fit into one formula", found=f"{len(species.eats)} of {species.id}",
                mend="join foods that are alike, or shorten their ids",
            )  # fmt: skip


def doubts(record: FoodWebRecord, facts: Facts) -> Iterator[Finding]:
    """Species that stand alone, levels out of the ordinary, and a drawing that would be hard to read."""
    eaten = {food for foods in record.eats.values() for food in foods}
    for at, species in enumerate(record.species):
        if not species.eats and species.id not in eaten:
            yield Finding(
                path=("species", at), expected="a species that eats or is eaten", found=f'"{species.id}", which stands alone',
                mend="write who eats it, or leave it out", severity=Severity.WARNING, rule="stands_alone",
            )  # fmt: skip
        level = facts[f"{species.id}.trophic_level"]
        if level.is_number and level.number > HIGHEST_USUAL:
            yield Finding(
                path=("species", at, "eats"), expected=f"a trophic level up to {HIGHEST_USUAL:g}", found=level.shown,
                mend="check the shares: so many steps leave hardly any energy", severity=Severity.WARNING, rule="level_out_of_reach",
            )  # fmt: skip
    for chart in charts(Subject(kind="food_web", name="", record=record, facts=facts))[:1]:
        if because := crowded(chart):
            yield Finding(
                path=("species",), expected="a diagram that can be read", found=because, severity=Severity.WARNING,
                rule="crowded_chart", mend="join species that eat and are eaten alike",
            )  # fmt: skip
