"""Questions whose answer is a box of the web, picked by its label."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.kinds.food_web.asking import Asking
from generator.kinds.food_web.losses import losses
from generator.kinds.food_web.record import Species
from generator.questions.making import Draft, Wrong, drawn, reading
from generator.questions.question import Made, Needs, Rejected

APART = 0.05
"""Shares of a diet that differ by less look alike as widths."""


class LabelQuestions(Asking):
    """Each is asked only where one box answers it."""

    def readings(self, most: int, told: Species | None = None) -> tuple[Made, ...]:
        """So many of those that come out, drawn so that records differ in what they ask; the diet of `told` stands in another prompt."""
        sorts = (self.two_heights(), self.most_eaters(), self.main_food(told), *self.left_without())
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
            prompt="Who in this web eats both from the bottom (producers or dead matter) and other animals?",
            solution=f"Arrows from {self.foods_of(right)} end at “{right.label}”.",
            hints=("See which boxes stand at the bottom: no arrow ends there.", "Look for a box at which an arrow from the bottom ends, and one from an animal too."),
        )  # fmt: skip
        wrong = [
            ([one.label for one, seen in many if seen == {is_bottom}], Wrong("", "web.many-is-omnivore", f"It has several foods, but all of them are {said}."))
            for is_bottom, said in ((False, "animals"), (True, "from the bottom"))
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

    def left_without(self) -> Iterator[Made]:
        """Whom a loss leaves without any food."""
        for gone in self.record.if_gone:
            found = losses(self.record, gone)
            starving = [one for one in self.record.species if one.id != gone and found[one.id].starves]
            if len(starving) != 1:
                continue
            right, fed = starving[0], [one for one in self.record.species if one.id != gone and one.eats and one is not starving[0]]
            draft = Draft(
                id=f"left_without_{gone}", needs=Needs.BOTH,
                prompt=f"Suppose {self.names[gone]} were gone. Who would be left without any food?",
                solution=f"The food of {self.names[right.id]} is {self.foods_of(right)}. All others still have a food that goes back to the bottom of the web.",
                hints=(f"Strike out “{self.labels[gone]}” and every arrow that starts there.", "Look for a consumer at which no arrow ends any more."),
            )  # fmt: skip
            part = [one.label for one in fed if {gone, right.id} & set(self.record.eats[one.id])]
            wrong = ((part, Wrong("", "web.loses-one", "It loses a food, but has another.")),)
            yield self._picked(draft, right, wrong, "Its food does not hang on the one that is gone, or it eats nothing.")
