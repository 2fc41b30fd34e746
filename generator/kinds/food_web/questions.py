"""Questions on a food web: its arrows, levels and chains, boxes to pick, and what follows when a species goes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.diagnostics import listed
from generator.kind import Subject
from generator.kinds.food_web.asking import IN_WORDS, Asking
from generator.kinds.food_web.chain_questions import ChainQuestions
from generator.kinds.food_web.facts import tops
from generator.kinds.food_web.label_questions import LabelQuestions
from generator.kinds.food_web.losses import Loss, loss_fact, losses, path_line
from generator.kinds.food_web.record import FoodWebRecord, Species
from generator.quantities.fact import Fact
from generator.questions.making import Draft, Wrong, choice, drawn, enough, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake, wrong_values
from generator.questions.question import Made, Needs, Rejected
from generator.science.food_web_effects import FARTHEST, left_without_food
from generator.science.food_webs import feeding_loops, food_chains

FEWEST, WANTED, MOST_LOSSES, MOST_READINGS = 6, 9, 2, 3
MOST_TRIED = 12
"""Animals whose loss is followed up, of a large web."""
FEW_PATHS = 4
NO_SPECIES_TWICE = " No species may come twice."


@dataclass(frozen=True)
class OtherWeb:
    """A small web of which no page tells, to be drawn with one arrow the wrong way round: that of a second food of its hunters."""

    plants: str
    grazers: str
    others: str
    hunters: str
    top: str


OTHER_WEBS = (
    OtherWeb("algae", "tadpoles", "mayfly larvae", "newts", "herons"),
    OtherWeb("oak leaves", "caterpillars", "spiders", "tits", "sparrowhawks"),
    OtherWeb("seaweed", "limpets", "worms", "crabs", "gulls"),
)
"""Source: common practice, feeding as field guides tell it."""


def questions(subject: Subject[FoodWebRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on what the web lets one ask; plain ones on single boxes only where there are few others."""
    web, chain = WebQuestions(subject, catalogue), ChainQuestions(subject, catalogue)
    further = (chain.chains(), chain.chains_between(), chain.rivals(), *LabelQuestions(subject, catalogue).readings(MOST_READINGS, web.mixed_feeder()))
    first = (
        web.arrow(), web.level(), *web.gone(), *(item for item in further if not isinstance(item, Rejected)), web.longest_chain(),
        web.further_levels(),
    )  # fmt: skip
    spare = (web.foods_counted(), web.one_food(), web.at_the_top())
    sure, all_made = (sum(not isinstance(item, Rejected) for item in items) for items in (first, (*first, *spare)))
    return enough((*first, *spare), max(FEWEST, min(all_made, max(sure, WANTED))))


@dataclass(frozen=True)
class Case:
    """A species that goes, another one, and what that means for it."""

    gone: str
    target: str
    loss: Loss


class WebQuestions(Asking):
    """Arrows, levels, losses and lengths."""

    def foods(self, species: Species) -> int:
        """How many foods it has."""
        return len(species.eats)

    def arrow(self) -> Made:
        """Which arrow of another web is drawn the wrong way round; which way arrows point, the page tells."""
        own = {part for name in self.names.values() for part in name.split()}
        told = [web for web in OTHER_WEBS if own.isdisjoint((*web.plants.split(), web.grazers, web.others, web.hunters, web.top))]
        if not told:
            return Rejected("arrow", "the webs in which an arrow is to be turned hold species of this one")
        web = drawn(told, self.subject.id, "turned")[0]
        draft = Draft(
            id="arrow", supposed=True,
            prompt=(
                f"In another web {web.grazers} eat {web.plants}, {web.hunters} eat {web.grazers} and {web.others}, and {web.top} eat {web.hunters}. "
                f"Somebody draws {web.plants} → {web.grazers}, {web.grazers} → {web.hunters}, {web.hunters} → {web.others} and {web.hunters} → {web.top}. What has to be turned round?"
            ),
            solution=f"Arrows point from the eaten to the eater. {web.hunters.capitalize()} eat {web.others}, so the arrow must lead from {web.others} to {web.hunters}.",
            hints=("Say of each arrow who eats whom.", "Energy goes the way that the food goes."),
        )  # fmt: skip
        turned = f"{web.hunters} → {web.others}"
        wrong = (
            Wrong(f"All but {turned}, for an arrow points at what is eaten", "en.arrow-eats"),
            Wrong(f"Only {web.hunters} → {web.top}, for the strongest animal comes first", "en.strong", "Strength sets no direction: an arrow follows the food."),
            Wrong("No arrow, but each needs a second head, for food comes round again", "en.recycled", "Dead bodies feed decomposers, and the energy in them leaves as heat."),
        )
        return choice(draft, f"Only {turned}, for energy comes from {web.others}", wrong, self.catalogue, salt=self.subject.id)

    def level(self) -> Made:
        species = self.mixed_feeder()
        if species is None:
            return Rejected("level", "no species with several foods has a known trophic level, cannibals aside")
        right, given = self.fact(species, "trophic_level"), self._given(species)
        parts = [
            f"{given[f'share_of_{food.food}'].shown} {self.names[food.food]} (level {given[f'level_of_{food.food}'].shown})"
            for food in species.eats
        ]  # fmt: skip
        draft = Draft(
            id="level",
            prompt=f"The diet of {self.names[species.id]}, in shares: {listed(parts, 'and')}. What is their trophic level, each food counted by its share?",
            solution=f"1 plus each share times the level of that food, all added up: {right.shown}.",
        )
        hint = "At which level does the food stand, if each sort counts by its share? And the eater?"
        return number_entry(
            draft, right, given, _mistakes(species), self.catalogue, otherwise=hint,
            kept=tuple(f"{food.food}.trophic_level" for food in species.eats), parts=tuple(f"{species.id}.share_of_{food.food}" for food in species.eats),
        )  # fmt: skip

    def mixed_feeder(self) -> Species | None:
        """The species whose usual mistakes about its level can best be told apart."""
        mixed = [one for one in self.record.species if self.foods(one) > 1 and self._has_level(one)]
        return max(mixed, key=lambda one: len(wrong_values(self.fact(one, "trophic_level"), self._given(one), _mistakes(one))), default=None)

    def _has_level(self, species: Species) -> bool:
        """With stated shares, and so that its own level is no part of the sum."""
        known = species.diet is not None and self.fact(species, "trophic_level").is_number
        return known and species.id not in self.record.eats[species.id]

    def _given(self, species: Species) -> dict[str, Fact]:
        shares = {f"share_of_{food.food}": self.fact(species, f"share_of_{food.food}") for food in species.eats}
        return shares | {f"level_of_{food.food}": self.facts[f"{food.food}.trophic_level"] for food in species.eats}

    def one_food(self) -> Made:
        single = [one for one in self.record.species if self.foods(one) == 1]
        if not single:
            return Rejected("one_food", "every consumer has several foods")
        right = max(single, key=lambda one: self.fact(one, "shortest_chain").number)
        others = [one for one in self.record.species if self.foods(one) != 1]
        others.sort(key=lambda one: (self.fact(one, "eaten_by_count").number != 1, not one.eats))
        draft = Draft(
            id="one_food",
            prompt="Which of these has only one food in this web?",
            solution=f"Only one arrow ends at “{right.label}”, and it comes from {self.names[right.eats[0].food]}.",
            hints=("Food comes along the arrows that end at a box.", "Count them box by box."),
        )
        wrong = []
        for one in others[:3]:
            ends = f"Arrows from {self.foods_of(one)} end at it." if one.eats else "No arrow ends at it."
            reversed_ = self.fact(one, "eaten_by_count").number == 1 or not one.eats
            wrong.append(Wrong(one.label, "en.arrow-eats" if reversed_ else "web.main-food", ends))
        return choice(draft, right.label, wrong, self.catalogue, salt=self.subject.id)

    def gone(self) -> tuple[Made, ...]:
        """The loss of two animals of which the page shows nothing, and another species on which all paths agree.

        Those under `if_gone:` have charts that would be read off, and so have those that starve with them. No path through dead matter is
        asked for: how much there is of it hangs on what dies too, and no arrow of a web shows that.
        """
        cases = sorted(self._cases(), key=lambda case: _worth_asking(case.loss), reverse=True)
        if not cases:
            return (Rejected("gone", f"of no animal beside those under `if_gone:` all paths of {FARTHEST} arrows agree on what its loss does to another"),)
        first = cases[0]
        others = sorted((case for case in cases if case.gone != first.gone), key=lambda case: (not _is_short(case.loss), case.loss.effect == first.loss.effect))
        return tuple(self._gone(case) for case in (first, *others[: MOST_LOSSES - 1]))

    def _cases(self) -> Iterator[Case]:
        """Losses of which the page shows nothing, each with the others on which it can be asked for."""
        shown = {*self.record.if_gone, *(name for gone in self.record.if_gone for name in left_without_food(self.record.eats, gone))}
        dead = {one.id for one in self.record.species if one.feeding == "detritus"}
        animals = [one.id for one in self.record.species if one.eats and one.id not in shown]
        for gone in drawn(animals, self.subject.id, "gone")[:MOST_TRIED]:
            for target, loss in losses(self.record, gone).items():
                if _is_told(loss) and not any(dead & set(path.species) for path in loss.paths):
                    yield Case(gone, target, loss)

    def _gone(self, case: Case) -> Made:
        gone, target, loss = case.gone, case.target, case.loss
        ways = " ".join(f"{path_line(self.record, path)}." for path in loss.paths)
        draft = Draft(
            id=f"gone_{gone}",
            prompt=f"{self.without(gone)} Going by the arrows alone, along paths of at most {IN_WORDS[FARTHEST]} arrows, what happens to the population of {self.names[target]}?",
            solution=f"{'All such paths point the same way' if len(loss.paths) > 1 else 'Only one such path leads there'}. {ways}",
            needs=Needs.BOTH,
            hints=(
                self._who_feels_it(gone),
                "Fewer eaters let their food rise; less food lets its eaters fall. Go on step by step, along each path.",
            ),
        )  # fmt: skip
        right, other = ("It rises", "It falls") if loss.effect == 1 else ("It falls", "It rises")
        wrong = (
            Wrong(other, self._other_way(gone, target, loss)),
            Wrong("It stays as it is", "web.just-switch" if loss.effect == -1 and len(loss.paths[0].signs) == 1 else "web.neighbours"),
            Wrong("It may do either, for the paths disagree", "web.nothing-told"),
        )
        return choice(draft, right, wrong, self.catalogue, fact=loss_fact(self.record, gone, target, loss), salt=self.subject.id)

    def _who_feels_it(self, gone: str) -> str:
        """Who is linked with it by an arrow."""
        name = self.names[gone]
        sides = [*(["the eaters"] if self.eaters(gone) else []), *(["the food"] if self.record.eats[gone] else [])]
        return f"Write down {listed(sides, 'and')} of {name}: those feel the loss first."

    def _other_way(self, gone: str, target: str, loss: Loss) -> str:
        """The wrong idea that leads to the other direction."""
        if loss.effect == 1:
            return "web.same-way"
        is_below = all(sign == -1 for sign in loss.paths[0].signs)
        return "web.top-eats-all" if is_below else "web.turns-each-time"

    def longest_chain(self) -> Made:
        """The longest chain to a species that has shorter ones too, but not the longest of the web, which the page may tell."""
        longest = self.facts["longest_chain"]
        ends = {one: (self.fact(one, "longest_chain").number, self.fact(one, "shortest_chain").number) for one in self.record.species}
        able = [one for one, (most, least) in ends.items() if least < most < longest.number]
        end = max(able, key=lambda one: ends[one][0], default=next(one for one in ends if ends[one][0] == longest.number))
        right, name = self.fact(end, "longest_chain"), self.names[end.id]
        own_kind = f", or the arrow from {name} to {name} as well" if end.id in self.record.eats[end.id] else ""
        arrows = f"{right.shown} {'arrow' if right.number == 1 else 'arrows'}"
        draft = Draft(
            id=f"longest_chain_to_{end.id}" if able else "longest_chain",
            prompt=f"How many arrows are there in the longest food chain {f'that ends at {name}' if able else 'of this web'}?{NO_SPECIES_TWICE if self._may_go_round(end, bool(able)) else ''}",
            solution=f"The longest chain that ends at {name} has {arrows}." if able else f"The longest chain leads to {name} and has {arrows}.",
            hints=(
                f"Look at each arrow that ends at {name}: where does it start?" if able else "Which box has the largest number of steps below it?",
                "Go down from there by each arrow in turn, and keep the way that takes longest to reach the bottom.",
            ),
        )  # fmt: skip
        given = {"longest": right, "shortest": self.fact(end, "shortest_chain")}
        return number_entry(
            draft, right, given,
            (
                Mistake("en.one-many", "longest + 1", f"counting the boxes{own_kind}"),
                Mistake("web.any-chain", "shortest", f"following the shortest chain to {name}"),
                Mistake("en.one-few", "longest - 1", "counting only the boxes in between"),
            ),
            self.catalogue, otherwise="Which way from the bottom up passes the largest number of boxes? Count its arrows.",
        )  # fmt: skip

    def _may_go_round(self, end: Species, below: bool) -> bool:
        """Whether a way could pass a species twice, on the way to one species or anywhere."""
        loops = feeding_loops(self.record.eats)
        reached = {name for chain in food_chains(self.record.eats, end.id) for name in chain}
        return any(not below or reached & set(loop) for loop in loops)

    def further_levels(self) -> Made:
        """How little ten times as much energy adds to a chain; why chains are short stands on most pages."""
        draft = Draft(
            id="further_levels",
            prompt="In two webs a tenth of the energy passes on at each step, and animals at the top need the same amount. The producers of one build up ten times as much. How much longer can its chains be than those of the other?",
            solution="One more step leaves a tenth of ten times as much: what the top of the other web has. A second one would leave a tenth of what an animal there needs.",
            needs=Needs.KNOWLEDGE,
            hints=("Follow the energy from the bottom up: how much is left after each step, in the one web and in the other?", "After how many steps has the web with more energy come down to what the other one began with?"),
        )
        wrong = (
            Wrong("About ten steps longer", "en.linear", "Ten times as much does not last for ten more steps."),
            Wrong("About ten times as long", "en.once", "A chain ten times as long would leave next to nothing."),
            Wrong("No longer: as large a share is lost", "en.share-for-amount", "A tenth of more is more: after one step there is as much as the other web began with."),
        )
        return choice(draft, "About one step longer", wrong, self.catalogue, salt=self.subject.id)

    def foods_counted(self) -> Made:
        mixed = [one for one in self.record.species if self.foods(one) > 1 and one.id not in self.record.eats[one.id]]
        if not mixed:
            return Rejected("foods_counted", "no species has several foods, cannibals aside")
        species = max(mixed, key=self.foods)
        eats, eaten = self.fact(species, "eats_count"), self.fact(species, "eaten_by_count")
        draft = Draft(
            id="foods_counted",
            prompt=f"How many kinds of food lead to “{species.label}” in this web?",
            solution=f"Arrows from {self.foods_of(species)} end at it: {eats.shown} in all.",
        )
        return number_entry(
            draft, eats, {"eats": eats, "eaten": eaten},
            (
                Mistake("en.arrow-eats", "eaten", "counting the arrows that start at the box"),
                Mistake("web.all-arrows", "eats + eaten", "counting all arrows at the box"),
            ),
            self.catalogue, otherwise="Which end of an arrow stands at the food, and which at the eater?",
        )  # fmt: skip

    def at_the_top(self) -> Made:
        top = next(iter(tops(self.record, self.facts)), None)
        if top is None:
            return Rejected("at_the_top", "every species is eaten by another")
        bottom = [one for one in self.record.species if not one.eats]
        between = [one for one in self.record.species if self.fact(one, "place").value == "between"]
        high = sorted(between, key=lambda one: -self.fact(one, "longest_chain").number)[:2]
        draft = Draft(
            id="at_the_top",
            prompt="Which of these does no other species of the web eat?",
            solution=f"No arrow leads from “{top.label}” to another species.",
            hints=("An arrow starts at the eaten and ends at the eater.", "Look for a box at which arrows end, but from which none leads to another."),
        )
        wrong = [Wrong(one.label, idea, f"An arrow leads from it to {self.names[self.eaters(one.id)[0]]}.") for idea, one in (
            *(("web.all-arrows", one) for one in high), *(("en.arrow-eats", one) for one in bottom[: 3 - len(high)] if self.eaters(one.id)),
        )]  # fmt: skip
        return choice(draft, top.label, wrong, self.catalogue, fact=self.fact(top, "place"), salt=self.subject.id)


def _is_told(loss: Loss) -> bool:
    """Whether paths that a student is told to follow settle which way it goes."""
    return bool(loss.paths and loss.effect and not loss.starves and len(loss.paths[0].signs) <= FARTHEST)


def _worth_asking(loss: Loss) -> tuple[bool, bool, int, int]:
    """Best by few paths, for of many nobody keeps track, and by way of a third species: between neighbours there is little to think about."""
    far = len(loss.paths[0].signs)
    return _is_short(loss), far > 1, -len(loss.paths), far


def _is_short(loss: Loss) -> bool:
    return len(loss.paths) <= FEW_PATHS


def _mistakes(species: Species) -> tuple[Mistake, ...]:
    """The level gone wrong, over the shares and levels of its foods."""
    names = [food.food for food in species.eats]
    levels = ", ".join(f"level_of_{name}" for name in names)
    weighted = " + ".join(f"share_of_{name} * level_of_{name}" for name in names)
    main = max(species.eats, key=lambda food: food.share or 0.0).food
    return (
        Mistake("web.level-no-step", weighted, "taking the mean level of the food"),
        Mistake("web.level-plain-mean", f"1 + mean({levels})", "counting all foods alike"),
        Mistake("web.level-highest", f"1 + max({levels})", "going one step above the highest food"),
        Mistake("web.level-lowest", f"1 + min({levels})", "going one step above the lowest food"),
        Mistake("web.level-main-food", f"1 + level_of_{main}", "going one step above the main food"),
    )
