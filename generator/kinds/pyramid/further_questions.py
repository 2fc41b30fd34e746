"""Questions that only some pyramids can ask: efficiencies of one level, a change of unit, turnover of biomass, what a catch rests on."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace

from generator.kind import Subject, in_sentence
from generator.kinds.pyramid.record import Level, PyramidRecord
from generator.quantities.fact import Fact, Facts
from generator.quantities.units import unit
from generator.quantities.working import Substitution
from generator.questions.making import Draft, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made
from generator.science import energy_conversions, production_required

FRACTION = "giving the fraction, not the percentage"


def further_questions(subject: Subject[PyramidRecord], catalogue: Catalogue, answers: Collection[str]) -> Iterator[Made]:
    """Those whose facts are there; `answers` are facts that other questions ask for, so that no prompt may tell them."""
    facts = subject.facts
    consumers = [level for level in subject.record.levels[1:] if _known(facts, level, "eaten", "egested", "production")]
    if consumers:
        yield _assimilation_efficiency(consumers[0], facts, catalogue)
    untold = [level for level in consumers if f"{level.id}.production" not in answers]
    if untold:
        yield _production_efficiency(untold[0], facts, catalogue)
    if converted := _in_kilocalories(subject):
        yield _kilojoules(*converted, subject.record, catalogue)
    if any(name.endswith(".turnover_ratio") for name in facts):  # some level outweighs the one below
        timed = [level for level in untold if _known(facts, level, "biomass_turnover_time")]
        yield from (_turnover_time(level, facts, catalogue) for level in timed[:1])
    if subject.record.catch:
        yield _production_behind(subject, subject.record.catch.taken[0].level, catalogue)


def _known(facts: Facts, level: Level, *names: str) -> bool:
    return all((fact := facts.get(f"{level.id}.{name}")) is not None and fact.is_number for name in names)


def _assimilation_efficiency(level: Level, facts: Facts, catalogue: Catalogue) -> Made:
    given = {name: facts[f"{level.id}.{name}"] for name in ("eaten", "egested")}
    right = facts[f"{level.id}.assimilation_efficiency"]
    eaten, egested = (fact.shown_exactly for fact in given.values())
    draft = Draft(
        id="assimilation_efficiency",
        prompt=f"Of {eaten} eaten by {in_sentence(level.label)}, {egested} is egested. What is the assimilation efficiency, the share of the food that is taken up, in percent?",
        solution=f"What is taken up is what is eaten minus what is egested: ({eaten} − {egested}) ÷ {eaten} = {right.shown}.",
    )
    return number_entry(
        draft, right, given,
        (
            Mistake("en.assimilated-egested", "egested / eaten", "dividing what is egested by what is eaten"),
            Mistake("en.eff-inverse", "eaten / (eaten - egested)", "dividing what is eaten by what is taken up"),
            Mistake("en.eff-fraction", "(eaten - egested) / eaten / 100", FRACTION),
        ),
        catalogue, otherwise="What is the whole here? And which part of it gets through the gut wall?",
    )  # fmt: skip


def _production_efficiency(level: Level, facts: Facts, catalogue: Catalogue) -> Made:
    given = {name: facts[f"{level.id}.{name}"] for name in ("eaten", "egested", "production")}
    right = facts[f"{level.id}.production_efficiency"]
    eaten, egested, built = (fact.shown_exactly for fact in given.values())
    draft = Draft(
        id="production_efficiency",
        prompt=f"Of {eaten} eaten by {in_sentence(level.label)}, {egested} is egested and {built} built up. What is the production efficiency, the share of what is taken up that is built up, in percent?",
        solution=f"The whole is what is taken up, so what is built up is divided by that: {built} ÷ ({eaten} − {egested}) = {right.shown}.",
    )
    return number_entry(
        draft, right, given,
        (
            Mistake("en.base-eaten", "production / eaten", "dividing by what is eaten instead of what is taken up"),
            Mistake("en.respired-built", "1 - production / (eaten - egested)", "giving the share that is respired"),
            Mistake("en.eff-inverse", "(eaten - egested) / production", "dividing what is taken up by what is built up"),
            Mistake("en.eff-fraction", "production / (eaten - egested) / 100", FRACTION),
            Mistake("en.always-ten", "0.1", "taking a tenth without dividing"),
        ),
        catalogue, otherwise="What is the whole here: what is eaten, or what gets through the gut wall?",
    )  # fmt: skip


def _in_kilocalories(subject: Subject[PyramidRecord]) -> tuple[Fact, Fact, Fact] | None:
    """A flow that was turned from kilocalories into kilojoules, with what it was and the factor: what the top respires, which no other prompt tells."""
    facts = sorted(subject.facts.values(), key=lambda fact: fact.id != f"{subject.record.levels[-1].id}.respired")
    for fact in facts:
        working = fact.working
        if fact.method != energy_conversions.ENERGY_CONVERSION.id or not isinstance(working, Substitution) or not fact.is_number:
            continue
        amount, factor = (dict(working.given)[name] for name in ("amount", "factor"))
        if isinstance(amount, Fact) and isinstance(factor, Fact) and factor.value == energy_conversions.KILOJOULES_PER_KILOCALORIE:
            return fact, amount, factor
    return None


def _kilojoules(right: Fact, amount: Fact, factor: Fact, record: PyramidRecord, catalogue: Catalogue) -> Made:
    """The numbers go in bare: as quantities, a flow times and divided by a factor of one would be the same."""
    bare = unit("")
    to = right.unit.shown if right.unit else ""
    top = record.levels[-1]
    what = f"the respiration of {in_sentence(top.label)}" if right.id == f"{top.id}.respired" else in_sentence(right.name)
    draft = Draft(
        id="kilojoules",
        prompt=f"The survey gives {amount.shown_exactly} for {what}. How many {to} is that? 1 kcal is {factor.shown_number} kJ.",
        solution=f"Each kilocalorie is {factor.shown_number} kilojoules, so multiply: {right.shown_exactly}.",
    )
    return number_entry(
        draft, right, {"amount": replace(amount, unit=bare), "factor": replace(factor, unit=bare)},
        (
            Mistake("en.kilo-inverse", "amount / factor", "dividing by the factor"),
            Mistake("en.kilo-thousand", "amount * 1000", "taking a kilocalorie as a thousand kilojoules"),
            Mistake("en.kilo-inverse", "amount", "leaving the number as it is"),
        ),
        catalogue, otherwise="Is a kilojoule more or less than a kilocalorie? So must the number grow or shrink?", kept=(factor.id,),
    )  # fmt: skip


def _turnover_time(level: Level, facts: Facts, catalogue: Catalogue) -> Made:
    right = facts[f"{level.id}.biomass_turnover_time"]
    given = {name: facts[f"{level.id}.{name}"] for name in ("biomass", "energy_content", "production")}
    mass, content, built = (fact.shown_exactly for fact in given.values())
    per_day = right.unit is not None and right.unit.label == "d"
    as_days = " * 365.25" if per_day else ""
    in_years = (Mistake("bio.years-as-days", "biomass * energy_content / production / 365.25", "leaving the time in years"),)
    draft = Draft(
        id="biomass_turnover_time",
        prompt=(
            f"{level.label}: {mass} of biomass, {content} in it, and a production of {built}. "
            f"In how many {'days' if per_day else 'years'} does production build the biomass anew?"
            + (" Count 365.25 days to the year." if per_day else "")
        ),
        solution=f"The biomass holds {mass} × {content}. Divided by the production that is {right.shown}.",
    )
    return number_entry(
        draft, right, given,
        (
            Mistake("bio.turnover", "production / (biomass * energy_content)", "dividing the production by the biomass"),
            Mistake("bio.grams-as-energy", f"biomass / production{as_days}", "leaving out the energy in a gram"),
            *(in_years if per_day else ()),
        ),
        catalogue, otherwise="The production is energy. How much energy does the biomass hold?",
        kept=(given["energy_content"].id,),
    )  # fmt: skip


def _production_behind(subject: Subject[PyramidRecord], level: str, catalogue: Catalogue) -> Made:
    right = subject.facts[f"{level}.{production_required.PRIMARY_PRODUCTION_REQUIRED.id}"]
    given = {
        "catch": subject.facts[f"{level}.catch"], "trophic_level": subject.facts[f"{level}.catch_level"],
        "transfer_efficiency": subject.facts["catch.transfer_efficiency"],
        "fresh_mass_per_carbon": subject.facts["catch.fresh_mass_per_carbon"],
    }  # fmt: skip
    label = next(one.label for one in subject.record.levels if one.id == level)
    draft = Draft(
        id="primary_production_required",
        prompt=(
            f"{given['catch'].shown_exactly} of {in_sentence(label)} are caught, at trophic level {given['trophic_level'].shown_number}. "
            f"{given['fresh_mass_per_carbon'].shown_number} g of fresh catch hold 1 g of carbon, and a share of {given['transfer_efficiency'].shown_number} "
            "of the production passes each step. How much plant growth, as carbon, does the catch rest on?"
        ),
        solution=(
            "Turn the catch into carbon, then divide by the efficiency once for every step down to the plants, one step fewer than the "
            f"number of the level: {right.shown}."
        ),
    )
    downwards = "catch / fresh_mass_per_carbon"
    return number_entry(
        draft, right, given,
        (
            Mistake("en.one-many", f"{downwards} * (1 / transfer_efficiency) ** trophic_level", "counting a step for every level"),
            Mistake("en.fresh-carbon", "catch * (1 / transfer_efficiency) ** (trophic_level - 1)", "taking the fresh mass as carbon"),
            Mistake("en.direction", f"{downwards} * transfer_efficiency ** (trophic_level - 1)", "multiplying by the efficiency at each step"),
            Mistake("en.same-level", downwards, "stopping at the carbon of the catch itself"),
        ),
        catalogue, otherwise="How much carbon is in the catch? And how many steps lie between it and the plants?",
        kept=tuple(fact.id for name, fact in given.items() if name != "catch"),
    )  # fmt: skip
