"""Questions that only some pyramids can ask: efficiencies of one level, a change of unit, turnover of biomass, what a catch rests on."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace
from itertools import pairwise

from generator.kind import Subject, in_sentence
from generator.kinds.pyramid.asking import off_a_tenth
from generator.kinds.pyramid.record import Level, PyramidRecord
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, Facts, computed
from generator.quantities.units import unit
from generator.quantities.working import Substitution
from generator.questions.making import Draft, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made
from generator.science import energy_conversions, production_required

MIXED = Expression("production / (amount * factor)")
STORED = Expression("(production * time) / (production_below * time_below)")
FRACTION = "giving the fraction, not the percentage"


def further_questions(subject: Subject[PyramidRecord], catalogue: Catalogue, growers: Collection[str]) -> Iterator[Made]:
    """Those whose facts are there; `growers` are levels whose production follows from another prompt, so that none may tell it."""
    facts = subject.facts
    consumers = [level for level in subject.record.levels[1:] if _known(facts, level, "eaten", "egested", "production")]
    if consumers:
        yield _assimilation_efficiency(consumers[0], facts, catalogue)
    untold = [level for level in consumers if level.id not in growers]
    if untold:
        yield _production_efficiency(untold[0], facts, catalogue)
    if mixed := _in_two_units(subject):
        yield _mixed_units(*mixed, catalogue)
    if any(name.endswith(".turnover_ratio") for name in facts):  # some level outweighs the one below
        timed = [level for level in untold if _known(facts, level, "biomass_turnover_time")]
        yield from (_turnover_time(level, facts, catalogue) for level in timed[:1])
    yield from (_stored_below(*pair, facts, catalogue) for pair in _outweighing(subject)[:1])
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
        catalogue, otherwise="What is the whole here: what is eaten, or what gets through the gut wall?", likely=off_a_tenth(right),
    )  # fmt: skip


def _in_two_units(subject: Subject[PyramidRecord]) -> tuple[Level, Level, Fact, Fact, Fact] | None:
    """Neighbours, of which the lower one's production was turned from kilocalories into kilojoules; with what it was, the factor, and the upper one's.

    Not the top and what it eats, whose transfer efficiency is asked for as it is.
    """
    for below, level in pairwise(subject.record.levels[:-1]):
        fact, above = (subject.facts[f"{one.id}.production"] for one in (below, level))
        working = fact.working
        if fact.method != energy_conversions.ENERGY_CONVERSION.id or not isinstance(working, Substitution) or not (fact.is_number and above.is_number):
            continue
        amount, factor = (dict(working.given)[name] for name in ("amount", "factor"))
        if isinstance(amount, Fact) and isinstance(factor, Fact) and factor.value == energy_conversions.KILOJOULES_PER_KILOCALORIE and amount.number and above.number:
            return below, level, amount, factor, above
    return None


def _mixed_units(below: Level, level: Level, amount: Fact, factor: Fact, above: Fact, catalogue: Catalogue) -> Made:
    """The numbers of the mistakes go in bare: as quantities, kilojoules over kilocalories would be turned into one unit unasked."""
    bare = unit("")
    given = {"production": above, "amount": amount, "factor": factor}
    right = computed("mixed_units", "Transfer efficiency", MIXED, given, unit("percent"), figures=3)
    lower, upper = in_sentence(below.label), in_sentence(level.label)
    draft = Draft(
        id="mixed_units",
        prompt=(
            f"The production of {lower} is {amount.shown_exactly}, that of {upper} {above.shown_exactly}; 1 kcal is {factor.shown_number} kJ. "
            "What percentage of the production below becomes production above?"
        ),
        solution=f"In one unit: {above.shown_exactly} ÷ ({amount.shown_exactly} × {factor.shown_exactly}) = {right.shown}.",
        hints=("Are both productions in one unit?", "Turn kilocalories into kilojoules first. Then divide the production above by the production below."),
    )
    return number_entry(
        draft, right, {name: replace(fact, unit=bare) for name, fact in given.items()},
        (
            Mistake("en.kilo-inverse", "production / amount", "dividing kilojoules by kilocalories", "The units differ, so they do not cancel. Multiply kilocalories by 4.184 to get kilojoules, then divide."),
            Mistake("en.kilo-inverse", "production * factor / amount", "dividing kilocalories by the factor"),
            Mistake("en.eff-inverse", "amount * factor / production", "dividing the lower level by the upper one"),
            Mistake("en.eff-complement", "1 - production / (amount * factor)", "giving what is not passed on"),
            Mistake("en.eff-fraction", "production / (amount * factor) / 100", FRACTION),
            Mistake("en.always-ten", "0.1", "taking a tenth without dividing"),
        ),
        catalogue, otherwise="Are both productions in one unit? And which of them is the whole?", kept=(factor.id,), likely=off_a_tenth(right),
    )  # fmt: skip


def _outweighing(subject: Subject[PyramidRecord]) -> list[tuple[Level, Level]]:
    """Levels that hold less energy than the level that eats them, with that level; their turnover times are told in days."""
    facts = subject.facts

    def known(level: Level) -> tuple[Fact, Fact] | None:
        found = facts.get(f"{level.id}.production"), facts.get(f"{level.id}.biomass_turnover_time")
        made, time = found
        return (made, time) if made and time and made.is_number and time.is_number and time.unit == unit("d") else None

    pairs = [(below, level, known(below), known(level)) for below, level in pairwise(subject.record.levels)]
    return [(below, level) for below, level, low, high in pairs if low and high and 0 < low[0].number * low[1].number < high[0].number * high[1].number]


def _stored_below(below: Level, level: Level, facts: Facts, catalogue: Catalogue) -> Made:
    """How many times the energy in a level its eaters hold: production times turnover time, for both."""
    given = {
        "production": facts[f"{level.id}.production"], "time": facts[f"{level.id}.biomass_turnover_time"],
        "production_below": facts[f"{below.id}.production"], "time_below": facts[f"{below.id}.biomass_turnover_time"],
    }  # fmt: skip
    right = computed("stored_below", "Energy in the biomass, times that of the level below", STORED, given, unit(""), figures=3)
    made, time, made_below, time_below = (fact.shown_exactly for fact in given.values())
    lower, upper = in_sentence(below.label), in_sentence(level.label)
    draft = Draft(
        id="stored_below",
        prompt=(
            f"Production of {lower}: {made_below}, turnover time {time_below}. Production of {upper}: {made}, turnover time {time}. "
            f"The energy in the biomass of {upper} is how many times that in {lower}?"
        ),
        solution=(
            f"The energy in the biomass is production × turnover time. So the answer is ({made} × {time}) ÷ ({made_below} × {time_below}) = {right.shown}. "
            "A level that is replaced fast can hold less energy than the level that eats it."
        ),
        hints=("What is there is what is built up in a day, times the days that it lasts.", "(Production × turnover time above) ÷ (production × turnover time below) = ?"),
    )
    return number_entry(
        draft, right, given,
        (
            Mistake("bio.stock-rate", "production / production_below", "comparing the productions alone", "Production is what is built up in a year. How much is there depends also on how long it lasts: multiply by the turnover time."),
            Mistake("bio.stock-rate", "time / time_below", "comparing the turnover times alone", "How much is there depends also on how much is built up: multiply by the production."),
            Mistake("bio.inverted", "production_below * time_below / (production * time)", "dividing the lower level by the upper one", "The level that is asked about, the upper one, belongs above the line."),
            Mistake("bio.turnover", "production / time / (production_below / time_below)", "dividing each production by its turnover time", "What lasts longer adds up to more, so multiply production by turnover time."),
        ),
        catalogue, otherwise="How much energy is in a biomass that is built up at this rate and lasts for this time?",
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
            f"The biomass of {in_sentence(level.label)} is {mass}, its energy content {content}, and the production {built}. "
            f"In how many {'days' if per_day else 'years'} does production replace the whole biomass?"
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
            f"{given['catch'].shown_exactly} of {in_sentence(label)} is caught, at trophic level {given['trophic_level'].shown_number}. "
            f"{given['fresh_mass_per_carbon'].shown_number} g of fresh catch holds 1 g of carbon, and a share of {given['transfer_efficiency'].shown_number} "
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
