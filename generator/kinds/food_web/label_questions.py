"""Questions whose answer is a box of the web, or a few of them, picked by its label."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import permutations

from generator.diagnostics import listed
from generator.kinds.food_web.asking import IN_WORDS, Asking
from generator.kinds.food_web.record import Species
from generator.quantities.fact import Fact
from generator.questions.making import Draft, Sound, Wrong, choice, drawn, reading, several
from generator.questions.question import Made, Needs, Rejected
from generator.science.food_web_effects import left_without_food

APART, LEVELS_APART = 0.05, 0.2
"""Shares of a diet, and trophic levels, that differ by less are not exchanged."""
MOST_TRIED, MOST_STARVING, MOST_OTHERS = 12, 3, 3
"""Losses that are looked at, of a large web; those whom one may leave without food, and those that stand beside them as options."""


class LabelQuestions(Asking):
    """Each is asked only where one box answers it."""

    def readings(self, most: int, told: Species | None = None) -> tuple[Made, ...]:
        """So many of those that come out, drawn so that records differ in what they ask; the diet of `told` stands in another prompt."""
        sorts = (self.two_heights(), self.single_eater(), self.exchanged_shares(told), self.left_without())
        made = {item.id: item for item in sorts if not isinstance(item, Rejected)}
        return tuple(made[name] for name in drawn(made, self.subject.id, "readings")[:most])

    def _picked(self, draft: Draft, right: Species, wrong: Sequence[tuple[Sequence[str], Wrong]], otherwise: str) -> Made:
        """Of the boxes of those that eat."""
        labels = [one.label for one in self.record.species if one.eats]
        fit = [([label for label in found if label in labels], slip) for found, slip in wrong]
        return reading(draft, labels, [right.label], fit, self.catalogue, otherwise=otherwise)

    def two_heights(self) -> Made:
        """Who feeds at the bottom of the web and on animals too."""
        bottom = {one.id for one in self.record.species if not one.eats}
        mixed = [one for one in self.record.species if {food.food in bottom for food in one.eats if food.food != one.id} == {True, False}]
        if len(mixed) != 1:
            return Rejected("two_heights", "not one species alone feeds at the bottom and on others too")
        right = mixed[0]
        many = [(one, {food.food in bottom for food in one.eats}) for one in self.record.species if len(one.eats) > 1 and one is not right]
        draft = Draft(
            id="two_heights", needs=Needs.DATA,
            prompt="Which animal of this web eats other animals, and producers or dead matter as well?",
            solution=f"Arrows from {self.foods_of(right)} end at “{right.label}”.",
            hints=("See which boxes are producers or dead matter: no arrow ends there.", "Look for a box at which an arrow from one of them ends, and one from an animal too."),
        )  # fmt: skip
        wrong = [
            ([one.label for one, seen in many if seen == {is_bottom}], Wrong("", "web.many-is-omnivore", f"They have several foods, but all of them are {said}."))
            for is_bottom, said in ((False, "animals"), (True, "producers or dead matter"))
        ]
        return self._picked(draft, right, wrong, "All the arrows that end at this box come from one kind of food.")

    def single_eater(self) -> Made:
        """A species on which a single other one feeds; reading arrows backwards leads to one that feeds on a single other."""
        eaters = {one: [eater for eater in self.eaters(one.id) if eater != one.id] for one in self.record.species}
        foods = {one: [food for food in one.eats if food.food != one.id] for one in self.record.species}
        right = [one for one, found in eaters.items() if len(found) == 1]
        backwards = [one for one, found in foods.items() if len(found) == 1 and one not in right]
        uneaten = [one.label for one, found in eaters.items() if not found]
        if not 1 <= len(right) <= MOST_STARVING or not backwards:
            return Rejected("single_eater", "no species, or too many, have a single eater, or none has a single food")
        draft = Draft(
            id="single_eater", needs=Needs.DATA,
            prompt="Find a box of this web that is eaten by one other species only.",
            solution=f"One arrow starts at {listed((f'“{one.label}”' for one in right), 'and')}{' each' if len(right) > 1 else ''}.",
            hints=("An arrow starts at the eaten and ends at the eater.", "For each box count the arrows that start there."),
        )  # fmt: skip
        wrong = [
            ([one.label for one in backwards], Wrong("", "en.arrow-eats", "What counts is how many species eat it, and not how many foods it has.")),
            (uneaten, Wrong("", "en.arrow-eats", "", "No arrow starts here: nothing in this web eats it.")),
        ]
        return reading(draft, [one.label for one in self.record.species], [one.label for one in right], wrong, self.catalogue, otherwise="More than one arrow starts here. Count them box by box.")

    def exchanged_shares(self, told: Species | None = None) -> Made:
        """What an exchange of the shares of two foods does to a level; not of a species whose diet another prompt tells."""
        able = []
        for one in self.record.species:
            foods = [food for food in one.eats if food.food != one.id and food.share and self.fact_of(food.food).is_number]
            if one is told or one.diet is None:
                continue
            for more, less in permutations(foods, 2):
                apart = abs(self.fact_of(more.food).number - self.fact_of(less.food).number)
                if (more.share or 0.0) > (less.share or 0.0) + APART and apart > LEVELS_APART:
                    able.append((one, more.food, less.food))
        if not able:
            return Rejected("exchanged_shares", "no species has two foods at different levels and in different shares")
        eater, more_of, less_of = max(drawn(able, self.subject.id, "exchanged_shares"), key=lambda case: len(case[0].eats))
        return self._exchanged(eater, more_of, less_of)

    def fact_of(self, name: str) -> Fact:
        """The trophic level of a species."""
        return self.facts[f"{name}.trophic_level"]

    def _exchanged(self, eater: Species, more_of: str, less_of: str) -> Made:
        most, least = (self.fact(eater, f"share_of_{food}") for food in (more_of, less_of))
        more, less, name = self.names[more_of], self.names[less_of], self.names[eater.id]
        rises = self.fact_of(less_of).number > self.fact_of(more_of).number
        levels = f"The level of {more} is {self.fact_of(more_of).shown}, that of {less} {self.fact_of(less_of).shown}."
        draft = Draft(
            id="exchanged_shares", needs=Needs.BOTH,
            prompt=f"Suppose {more} made up {least.shown} of the diet of {name}, and {less} {most.shown}, so that their shares were exchanged. What would that do to the trophic level of {name}?",
            solution=f"{levels} With a larger share of the {'higher' if rises else 'lower'} of the two the mean level of the food {'rises' if rises else 'falls'}, and the level of {name} with it.",
            hints=(f"Find the trophic levels of {more} and of {less}. Which of them is higher?", "Each food counts by its share. Of which of the two is more eaten now?"),
        )  # fmt: skip
        up, down = "It would rise, for more of the food stands higher", "It would fall, for more of the food stands lower"
        wrong = (
            Wrong(down if rises else up, "web.level-main-food", levels, f"A larger share of {less} draws the level towards theirs."),
            Wrong("It would stay, for the foods are still the same", "web.level-plain-mean", instead="Each food counts by its share of the diet, and the shares have changed."),
            Wrong("It would stay, for the highest food decides it", "web.level-highest"),
        )
        return choice(draft, up if rises else down, wrong, self.catalogue, salt=self.subject.id)

    def left_without(self) -> Made:
        """Whom a loss leaves without any food, among those that lose one food of several; of a loss of which the page shows nothing."""
        cases = [case for one in drawn(self.record.species, self.subject.id, "left_without")[:MOST_TRIED] if (case := self._starved(one))]
        if not cases:
            return Rejected("left_without", "no loss beside those under `if_gone:` leaves a few without food, and others with one food less")
        gone, starving, part = max(cases, key=lambda case: len(case[2]))
        several_starve = len(starving) > 1
        foods = " ".join(f"{one.label} eat nothing but {self.foods_of(one)}." for one in starving)
        draft = Draft(
            id=f"left_without_{gone.id}", needs=Needs.BOTH,
            prompt=f"{self.without(gone.id)} Going by the arrows alone, {f'which {IN_WORDS[len(starving)]} of these' if several_starve else 'who'} would be left without any food?",
            solution=f"{foods} From every other consumer arrows still lead back to the bottom of the web.",
            hints=(f"Strike out “{gone.label}” and every arrow that starts there.", "Look for a consumer at which no arrow ends any more. Strike it out too, and look again."),
        )  # fmt: skip
        loses_one = Wrong("", "web.loses-one", "They lose a food, but have another.")
        if not several_starve:
            wrong = (([one.label for one in part], loses_one),)
            return self._picked(draft, starving[0], wrong, f"They still have a food that does not need {self.names[gone.id]}. Follow the arrows back from this box to the bottom.")
        right = [Sound(one.label, f"No food is left: it was {self.foods_of(one)}.") for one in starving]
        others = [Wrong(one.label, loses_one.misconception, f"They still have {listed((self.names[food] for food in self._left(one, gone, starving)), 'and')} to eat.") for one in part]
        return several(draft, right, others[:MOST_OTHERS], self.catalogue, salt=self.subject.id)

    def _starved(self, gone: Species) -> tuple[Species, list[Species], list[Species]] | None:
        """The one that goes, those left without food, and those that lose a food but have another."""
        if gone.id in self.record.if_gone:
            return None
        lost = {gone.id, *left_without_food(self.record.eats, gone.id)}
        starving = [one for one in self.record.species if one.id in lost and one is not gone]
        part = [one for one in self.record.species if one.id not in lost and lost & set(self.record.eats[one.id])]
        return (gone, starving, part) if part and 1 <= len(starving) <= MOST_STARVING else None

    def _left(self, one: Species, gone: Species, starving: Sequence[Species]) -> list[str]:
        """Foods that it keeps, its own kind left aside."""
        lost = {gone.id, one.id, *(other.id for other in starving)}
        return [food for food in self.record.eats[one.id] if food not in lost]
