"""Questions whose answer is a box of the web, or a few of them, picked by its label."""

from __future__ import annotations

from collections.abc import Sequence

from generator.diagnostics import listed
from generator.kinds.food_web.asking import IN_WORDS, Asking
from generator.kinds.food_web.record import Species
from generator.questions.making import Draft, Sound, Wrong, drawn, reading, several
from generator.questions.question import Made, Needs, Rejected
from generator.science.food_web_effects import left_without_food

APART = 0.05
"""Shares of a diet that differ by less look alike as widths."""
MOST_TRIED, MOST_STARVING, MOST_OTHERS = 12, 3, 3
"""Losses that are looked at, of a large web; those whom one may leave without food, and those that stand beside them as options."""


class LabelQuestions(Asking):
    """Each is asked only where one box answers it."""

    def readings(self, most: int, told: Species | None = None) -> tuple[Made, ...]:
        """So many of those that come out, drawn so that records differ in what they ask; the diet of `told` stands in another prompt."""
        sorts = (self.two_heights(), self.most_eaters(), self.main_food(told), self.left_without())
        made = {item.id: item for item in sorts if not isinstance(item, Rejected)}
        return tuple(made[name] for name in drawn(made, self.subject.id, "readings")[:most])

    def _picked(self, draft: Draft, right: Species, wrong: Sequence[tuple[Sequence[str], Wrong]], otherwise: str) -> Made:
        return reading(draft, [one.label for one in self.record.species], [right.label], wrong, self.catalogue, otherwise=otherwise)

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
            ([one.label for one, seen in many if seen == {is_bottom}], Wrong("", "web.many-is-omnivore", f"It has several foods, but all of them are {said}."))
            for is_bottom, said in ((False, "animals"), (True, "producers or dead matter"))
        ]
        return self._picked(draft, right, wrong, "Its arrows come from one kind of food, or it eats nothing at all.")

    def most_eaters(self) -> Made:
        rising = sorted(self.record.species, key=lambda one: len(self.eaters(one.id)))
        right, next_ = rising[-1], rising[-2]
        if len(self.eaters(right.id)) == len(self.eaters(next_.id)):
            return Rejected("most_eaters", "several species are eaten by as many others")
        greedy = max(self.record.species, key=lambda one: len(one.eats))
        draft = Draft(
            id="most_eaters", needs=Needs.DATA,
            prompt="What is food for the largest number of others in this web?",
            solution=f"{len(self.eaters(right.id))} arrows to others start at “{right.label}”.",
            hints=("An arrow starts at the eaten and ends at the eater.", "Count the arrows that start at each box."),
        )  # fmt: skip
        wrong = (([greedy.label], Wrong("", "en.arrow-eats", "This one has the largest number of foods.")),)
        return self._picked(draft, right, wrong, "Fewer arrows start here. Count them box by box.")

    def main_food(self, told: Species | None = None) -> Made:
        """The food with the widest arrow, of a species with several; not of one whose diet another prompt tells."""
        able = []
        for one in self.record.species:
            shares = sorted(((food.share or 0.0, food.food) for food in one.eats), reverse=True)
            if one is not told and one.diet is not None and len(shares) > 1 and shares[0][0] > shares[1][0] + APART and shares[0][1] != one.id:
                able.append((one, shares[0][1]))
        if not able:
            return Rejected("main_food", "no species has several foods, one of them plainly the largest")
        eater, food = max(drawn(able, self.subject.id, "main_food"), key=lambda pair: len(pair[0].eats))
        right = next(one for one in self.record.species if one.id == food)
        draft = Draft(
            id="main_food", needs=Needs.DATA,
            prompt=f"What makes up the largest part of the diet of {self.names[eater.id]}?",
            solution=f"The widest arrow that ends at “{eater.label}” comes from “{right.label}”: {self.fact(eater, f'share_of_{food}').shown} of the diet.",
            hints=(f"Look at the arrows that end at “{eater.label}”.", "The wider an arrow, the larger the share of that food."),
        )  # fmt: skip
        wrong = (
            ([self.labels[other.food] for other in eater.eats], Wrong("", "web.any-share", "This is a food too, but its arrow is narrower.")),
            ([self.labels[name] for name in self.eaters(eater.id)], Wrong("", "en.arrow-eats", f"This one eats {self.names[eater.id]}.")),
        )
        return self._picked(draft, right, wrong, "No arrow leads from here to the box that is asked about.")

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
            return self._picked(draft, starving[0], wrong, "Its food does not hang on the one that is gone, or it eats nothing.")
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
