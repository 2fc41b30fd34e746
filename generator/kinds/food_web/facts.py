"""Every fact of a food web: levels, places and chains of each species, the web as a whole, and what a loss would mean."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from generator.kinds.food_web.losses import loss_facts, losses
from generator.kinds.food_web.record import FoodWebRecord, Species
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, Facts, computed, stated
from generator.quantities.units import unit
from generator.quantities.working import Listing, Rule, RulePath
from generator.records.fields import stated_amount
from generator.science import food_web_effects, food_webs

METHODS = MappingProxyType(
    {
        method.id: method
        for method in (
            food_webs.TROPHIC_LEVEL, food_webs.CHAIN_LENGTH, food_webs.CONNECTANCE,
            food_web_effects.REMOVAL_EFFECT, food_web_effects.LEFT_WITHOUT_FOOD,
        )
    }
)  # fmt: skip
BARE = unit("")
MOST_LINES = 12
"""More chains than this are not listed one by one."""
SAME_LEVEL = 1e-9
AT_THE_TOP = "at the top"
TO = " → "


def facts(record: FoodWebRecord) -> Facts:
    """All facts, species by species, then of the whole web."""
    web = _Web(record)
    return Facts([*(fact for species in record.species for fact in web.of_species(species)), *web.of_whole()])


def tops(record: FoodWebRecord, found: Facts) -> list[Species]:
    """The species that eat, but that no other species eats."""
    return [one for one in record.species if found[f"{one.id}.place"].value == AT_THE_TOP]


def level_expression(species: Species) -> Expression:
    """A species' level from the levels of its food; raises ExpressionError where its foods are more than one formula can hold.

    A cannibal's own level stands on both sides of the equation, so it is divided by what its own kind leaves of the diet.
    """
    only = len(species.eats) == 1 and species.eats[0].share is None
    others = [food.food for food in species.eats if food.food != species.id]
    terms = [f"level_of_{name}" if only else f"share_of_{name} * level_of_{name}" for name in others]
    total = " + ".join(["1", *terms])
    return Expression(total if len(others) == len(species.eats) else f"({total}) / (1 - share_of_{species.id})")


def count(fact_id: str, name: str, number: int, listing: Listing, method: str = "") -> Fact:
    """A whole number that was counted, shown with all of its digits."""
    return Fact(
        id=fact_id, name=name, value=float(number), unit=BARE, working=listing, method=method, written=str(number),
        figures=len(str(number)),
    )  # fmt: skip


def _solved(diets: Mapping[str, Mapping[str, float]]) -> dict[str, float]:
    """The levels of all species whose food, and its food, is known down to the bottom."""
    known = dict(diets)
    while lost := [name for name, diet in known.items() if any(food not in known for food in diet)]:
        known = {name: diet for name, diet in known.items() if name not in lost}
    return food_webs.trophic_levels(known)


class _Web:
    """The record with what its facts share: names, chains, levels and losses."""

    def __init__(self, record: FoodWebRecord) -> None:
        self.record, self.eats = record, record.eats
        self.names = record.spoken
        self.figures = record.figures or shown.FIGURES
        self.eaters = {name: [other for other, foods in self.eats.items() if name in foods and other != name] for name in self.eats}
        self.chains = {name: food_webs.food_chains(self.eats, name) for name in self.eats}
        self.levels = self._levels()
        self.losses = {gone: losses(record, gone) for gone in record.if_gone}

    def _levels(self) -> dict[str, Fact]:
        """The levels by their solution, for the workings; those that hang on a diet that is not known are left out.

        Shares do not matter where all foods stand at one level.
        """
        diets = {one.id: one.diet for one in self.record.species if one.diet is not None}
        solved = _solved(diets)
        while more := [name for name in self.eats if name not in solved and self._on_one_level(name, solved)]:
            diets |= {name: dict.fromkeys(self.eats[name], 1 / len(self.eats[name])) for name in more}
            solved = _solved(diets)
        return {
            name: Fact(
                id=f"{name}.trophic_level", name=f"Trophic level of {self.names[name]}", value=level, unit=BARE, figures=self.figures,
                written="" if self.eats[name] else "1",
            )
            for name, level in solved.items()
        }  # fmt: skip

    def _on_one_level(self, name: str, levels: Mapping[str, float]) -> bool:
        found = [levels[food] for food in self.eats[name] if food in levels]
        return len(found) == len(self.eats[name]) and max(found) - min(found) < SAME_LEVEL

    def of_species(self, species: Species) -> Iterator[Fact]:
        """Its diet, its level, its place, its chains, and what happens to it when others go."""
        name = species.id
        if species.biomass is not None:
            yield stated(f"{name}.biomass", "Biomass", species.biomass, unit(self.record.units.biomass), figures=self.figures)
        shares = {
            f"share_of_{food.food}": stated(
                f"{name}.share_of_{food.food}", f"Share of {self.names[food.food]} in the diet", stated_amount(food.share), BARE
            )
            for food in species.eats
            if food.share is not None
        }
        yield from shares.values()
        yield self._trophic_level(species, shares)
        yield self._place(name)
        foods = self._named(self.eats[name])
        yield count(f"{name}.eats_count", "Number of foods", len(foods), Listing("Arrows that end at it come from", foods))
        eaters = self._named([*self.eaters[name], *([name] if name in self.eats[name] else [])])
        yield count(f"{name}.eaten_by_count", "Number of eaters", len(eaters), Listing("Arrows that start at it lead to", eaters))
        yield from self._chain_lengths(name)
        yield from loss_facts(self.record, name, self.losses)

    def _named(self, ids: Iterable[str]) -> tuple[str, ...]:
        return tuple(self.names[name] for name in ids)

    def _trophic_level(self, species: Species, shares: dict[str, Fact]) -> Fact:
        fact_id, name, method = f"{species.id}.trophic_level", "Trophic level", food_webs.TROPHIC_LEVEL.id
        if not species.eats:
            what = "dead matter" if species.feeding == "detritus" else "a producer"
            rule = Rule("Does it eat anything?", what, False)
            return Fact(id=fact_id, name=name, value=1.0, unit=BARE, working=RulePath((rule,)), method=method, written="1")
        if species.id not in self.levels:
            return Fact(id=fact_id, name=name, value=None, unit=BARE, method=method, undefined_because=self._why_unknown(species))
        if species.diet is None:
            return self._on_whatever_shares(species)
        levels = {f"level_of_{food}": self.levels[food] for food in self.eats[species.id]}
        return computed(fact_id, name, level_expression(species), shares | levels, BARE, method=method, figures=self.figures)

    def _on_whatever_shares(self, species: Species) -> Fact:
        foods = ", ".join(f"{self.names[food]} {self.levels[food].shown}" for food in self.eats[species.id])
        rules = (
            Rule("Does the record state how much of each food it eats?", "no shares", False),
            Rule("Do all of its foods stand at one level, so that any shares give the same?", foods, True),
        )
        return replace(
            self.levels[species.id], name="Trophic level", working=RulePath(rules), method=food_webs.TROPHIC_LEVEL.id
        )  # fmt: skip

    def _why_unknown(self, species: Species) -> str:
        if species.diet is None:
            return "not known: the record does not state how much of each food it eats"
        above = next(food for food in self.eats[species.id] if food not in self.levels)
        return f"not known: the level of {self.names[above]} is not known"

    def _place(self, name: str) -> Fact:
        """At the bottom, at the top, or between."""
        foods, eaters = self._named(self.eats[name]), self._named(self.eaters[name])
        rules = [Rule("Does it eat anything?", ", ".join(foods) or "nothing", bool(foods))]
        if foods:
            rules.append(Rule("Does another species eat it?", ", ".join(eaters) or "nobody", bool(eaters)))
        value = "between" if foods and eaters else AT_THE_TOP if foods else "at the bottom"
        return Fact(id=f"{name}.place", name="Place in the web", value=value, working=RulePath(tuple(rules)))

    def _chain_lengths(self, name: str) -> Iterator[Fact]:
        chains, method = self.chains[name], food_webs.CHAIN_LENGTH.id
        for which, length in (("shortest", len(chains[0])), ("longest", len(chains[-1]))):
            lines = self._lines(chain for chain in chains if len(chain) == length)
            listing = Listing(f"Its {which} chains" if len(lines) > 1 else f"Its {which} chain", lines)
            yield count(f"{name}.{which}_chain", f"{which.capitalize()} chain to it, in arrows", length - 1, listing, method)

    def _lines(self, chains: Iterable[Sequence[str]]) -> tuple[str, ...]:
        lines = [TO.join(self._named(chain)) for chain in chains]
        more = len(lines) - MOST_LINES
        return (*lines[:MOST_LINES], f"and {more} more") if more > 0 else tuple(lines)

    def of_whole(self) -> Iterator[Fact]:
        """Counts, connectance, the longest chain, omnivores and loops."""
        everyone = [one.id for one in self.record.species]
        species = count("species_count", "Number of species and groups", len(everyone), Listing("Boxes of the diagram", self._named(everyone)))
        diets = tuple(f"{one.label}: {', '.join(self._named(self.eats[one.id]))}" for one in self.record.species if one.eats)
        links = count("link_count", "Number of feeding links", sum(map(len, self.eats.values())), Listing("Who eats what", diets))
        yield from (species, links)
        yield computed(
            "connectance", "Connectance", food_webs.CONNECTANCE.expression, {"links": links, "species": species}, BARE,
            method=food_webs.CONNECTANCE.id, figures=self.figures,
        )  # fmt: skip
        yield self._chain_count()
        longest = max(len(chain) for chains in self.chains.values() for chain in chains)
        lines = self._lines(chain for name in everyone for chain in self.chains[name] if len(chain) == longest)
        heading = "The longest chains" if len(lines) > 1 else "The longest chain"
        yield count("longest_chain", "Longest chain of the web, in arrows", longest - 1, Listing(heading, lines), food_webs.CHAIN_LENGTH.id)
        yield self._omnivores()
        yield self._loops()

    def _chain_count(self) -> Fact:
        tops = [name for name in self.eats if self.eats[name] and not self.eaters[name]]
        name, method = "Number of food chains, from the bottom to the top", food_webs.CHAIN_LENGTH.id
        if not tops:
            because = "not defined: nothing stands at the top, for every species is eaten by another"
            return Fact(id="chain_count", name=name, value=None, unit=BARE, method=method, undefined_because=because)
        chains = [chain for top in tops for chain in self.chains[top]]
        return count("chain_count", name, len(chains), Listing("Chains that end with a species that nobody eats", self._lines(chains)), method)

    def _omnivores(self) -> Fact:
        found = food_webs.omnivores(self.eats)
        lines = tuple(f"{self.record.labels[name]}: {self._heights(name)}" for name in found)
        value = ", ".join(self._named(found)) or "none"
        return Fact(
            id="omnivores", name="Species that feed at several steps", value=value, method=food_webs.CHAIN_LENGTH.id,
            working=Listing("Their foods, with the arrows of the shortest chain to each", lines),
        )  # fmt: skip

    def _heights(self, name: str) -> str:
        return ", ".join(f"{self.names[food]} ({len(self.chains[food][0]) - 1})" for food in self.eats[name] if food != name)

    def _loops(self) -> Fact:
        groups = food_webs.feeding_loops(self.eats)
        cannibals = [name for name in self.eats if name in self.eats[name]]
        lines = [f"{self.record.labels[name]}: its own kind is part of its food" for name in cannibals]
        lines += [f"{', '.join(self._named(group))}: food comes back to where it began" for group in groups if len(group) > 1]
        value = "; ".join([*(f"{self.names[name]} (its own kind)" for name in cannibals), *(
            " and ".join(self._named(group)) for group in groups if len(group) > 1
        )])  # fmt: skip
        return Fact(
            id="feeding_loops", name="Cannibals, and species that eat each other", value=value or "none",
            working=Listing("Following arrows back to the start", tuple(lines)),
        )  # fmt: skip
