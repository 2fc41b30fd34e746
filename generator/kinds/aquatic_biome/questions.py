"""Questions on a water: its light, its oxygen, its salt, and how fast it is exchanged; each only where the record states enough."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.kind import Subject
from generator.kinds.aquatic_biome.record import AquaticBiomeRecord, Station
from generator.quantities.fact import Fact
from generator.questions.making import Draft, Wrong, choice, choice_of_numbers, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs

DARK = 0.001
"""Light [%] at the bottom below which nobody is asked for the number."""
SALTY = 5.0
"""Salinity [g/kg] from which on salt is worth a question."""
FULL = 10.0
"""Distance [%] from saturation below which a share and its inverse, or what is there and what is missing, look alike."""
FRESH = "fresh water"


def questions(subject: Subject[AquaticBiomeRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on the first station that the page shows, or else on the first for practice.

    How much of the oxygen is there is asked of the first station where that is worth a sum. No prompt states the answer to
    another question.
    """
    stations = [s for s in subject.record.stations if s.use != "paper"]
    asked = [_Station(subject, station, catalogue) for station in sorted(stations, key=lambda s: s.use != "page")]
    short = next((one for one in asked if one.is_short_of_oxygen or one.is_above_saturation), None)
    return tuple(asked[0].questions(short))


class _Station:
    """The station that is asked about, with short names for its facts."""

    def __init__(self, subject: Subject[AquaticBiomeRecord], station: Station, catalogue: Catalogue) -> None:
        self.subject, self.station, self.catalogue = subject, station, catalogue
        self.place = station.label

    def fact(self, name: str) -> Fact:
        return self.subject.facts[f"{self.station.id}.{name}"]

    def has(self, name: str) -> bool:
        fact = self.subject.facts.get(f"{self.station.id}.{name}")
        return fact is not None and fact.value is not None

    @property
    def is_short_of_oxygen(self) -> bool:
        """Whether clearly less oxygen is there than could be."""
        return self.has("oxygen_saturation_percent") and self.fact("oxygen_saturation_percent").number <= 100 - FULL

    @property
    def is_above_saturation(self) -> bool:
        """Whether clearly more oxygen is there than stays in balance with the air."""
        return self.has("oxygen_saturation_percent") and self.fact("oxygen_saturation_percent").number >= 100 + FULL

    def questions(self, short: _Station | None) -> Iterator[Made]:
        """All that its numbers allow; `short` is the station that is asked for its share of oxygen."""
        if self.has("secchi_depth"):
            yield self.extinction()
        if self.station.light is not None:
            yield self.photic_depth()
            if not self.fact("reaches_bottom").value:
                yield self.half_way()
            if self.has("light_at_bottom") and self.fact("light_at_bottom").number >= DARK:
                yield self.light_at_bottom()
            yield self.plants_on_the_bottom()
        if short is not None:
            yield short.oxygen_percent()
        yield self.warm_water()
        yield self.salt() if self.station.salinity >= SALTY else self.breathing()
        if self.station.light is not None and not self.fact("reaches_bottom").value:
            yield self.below_the_light()
        if self.has("flushing_time"):
            yield self.flushing_time()

    def extinction(self) -> Made:
        secchi, found = self.fact("secchi_depth"), self.fact("extinction")
        draft = Draft(
            id="extinction",
            prompt=(
                f"At {self.place} a white disk is lost from sight at {secchi.shown_exactly}. "
                "What is the extinction coefficient of light, by the rule extinction = 1.7 ÷ Secchi depth?"
            ),
            solution=f"1.7 ÷ {secchi.shown_exactly} = {found.shown}. The murkier the water, the larger the extinction.",
        )
        return number_entry(
            draft, found, {"secchi": secchi},
            (
                Mistake("wat.extinction-inverse", "secchi / 1.7", "dividing the Secchi depth by 1.7"),
                Mistake("wat.secchi-times", "1.7 * secchi", "multiplying by the Secchi depth"),
                Mistake("wat.secchi-light-gone", "4.605 / secchi", "taking the Secchi depth for the depth of 1 % light"),
            ),
            self.catalogue, otherwise="1.7 stands above the line, the Secchi depth below it.",
        )  # fmt: skip

    def light_told(self) -> str:
        """What a prompt says of the light: the Secchi depth where the extinction coefficient follows from it and is asked for."""
        if self.has("secchi_depth"):
            return (
                f"At {self.place} a white disk is lost from sight at {self.fact('secchi_depth').shown_exactly}, and the extinction coefficient "
                "is 1.7 ÷ Secchi depth."
            )
        return f"The extinction coefficient of light at {self.place} is {self.fact('extinction').shown_exactly}."

    def photic_depth(self) -> Made:
        photic, extinction = self.fact("photic_depth"), self.fact("extinction")
        given = {"extinction": extinction}
        seen: tuple[Mistake, ...] = ()
        if self.has("secchi_depth"):
            given["secchi"] = self.fact("secchi_depth")
            seen = (Mistake("wat.secchi-light-gone", "secchi", "giving the Secchi depth"),)
        draft = Draft(
            id="photic_depth",
            prompt=(
                f"{self.light_told()} At what depth is 1 % of the light left, or would be in deeper water? "
                "Divide 4.605, the natural logarithm of 100, by the extinction coefficient."
            ),
            solution=f"4.605 ÷ {extinction.shown_exactly} = {photic.shown}.",
        )
        return number_entry(
            draft, photic, given,
            (
                Mistake("wat.extinction-inverse", "extinction / 4.605", "dividing the extinction by 4.605"),
                Mistake("wat.photic-times", "4.605 * extinction", "multiplying by the extinction"),
                Mistake("wat.one-over", "1 / extinction", "dividing 1 by the extinction: there 37 % of the light is left"),
                Mistake("wat.light-linear", "100 / extinction", "dividing 100 by the extinction, as if light fell in a straight line"),
                *seen,
            ),
            self.catalogue, otherwise="4.605 stands above the line; the larger the extinction, the shallower the lit water.",
        )  # fmt: skip

    def half_way(self) -> Made:
        draft = Draft(
            id="half_way",
            prompt=f"At the photic depth of {self.place} 1 % of the light is left. How much is left half way down to it?",
            solution="Each half of the way takes the same part: a tenth of 100 % is 10 %, and a tenth of 10 % is 1 %.",
        )
        wrong = (
            Wrong("About 50 %", "wat.light-linear", "That would be so if every metre took the same amount of light."),
            Wrong("About 2 %", "wat.light-inverse", "Light does not double when the depth is halved."),
            Wrong("About 99 %", "wat.water-clear", "Most of the light is gone by then."),
        )
        return choice(draft, "About 10 %", wrong, self.catalogue, salt=self.subject.id)

    def light_at_bottom(self) -> Made:
        left, extinction, depth = self.fact("light_at_bottom"), self.fact("extinction"), self.fact("depth")
        draft = Draft(
            id="light_at_bottom",
            prompt=f"{self.light_told()} The water is {depth.shown_exactly} deep. How much of the light is left at the bottom?",
            solution=f"e to the power of minus {extinction.shown_exactly} × {depth.shown_exactly} is {left.shown}.",
        )
        straight = (Mistake("wat.light-linear", "1 - 0.99 * depth / photic", "letting light fall in a straight line to 1 %"),)
        return choice_of_numbers(
            draft, left, {"extinction": extinction, "depth": depth, "photic": self.fact("photic_depth")},
            (
                Mistake("wat.light-complement", "1 - exp(-extinction * depth)", "giving the light that is lost"),
                *(straight if self.fact("reaches_bottom").value else ()),
                Mistake("wat.one-metre", "100 * exp(-extinction)", "taking the loss of the first metre only"),
                Mistake("wat.light-inverse", "0.01 * photic / depth", "taking light to halve when depth doubles"),
                Mistake("carb.pct-whole", "exp(-extinction * depth) / 100", "reading the part of the whole as a percentage"),
            ),
            self.catalogue,
        )  # fmt: skip

    def plants_on_the_bottom(self) -> Made:
        photic, depth = self.fact("photic_depth").shown_exactly, self.fact("depth").shown_exactly
        lit = bool(self.fact("reaches_bottom").value)
        yes, no = "Yes: the photic depth is larger than the depth of the water", "No: the photic depth is smaller than the depth of the water"
        draft = Draft(
            id="plants_on_the_bottom",
            prompt=f"The water at {self.place} is {depth} deep. Going by the photic depth, is there light enough for algae or plants to live on the bottom?",
            solution=f"The photic depth, {photic}, where 1 % of the light is left, has to be compared with the depth of the water, {depth}.",
            needs=Needs.BOTH,
        )
        wrong = (
            Wrong("No: plants need the full light of the sun", "wat.full-light") if lit
            else Wrong("Yes: by day the light of the sun reaches any depth", "wat.water-clear"),
            Wrong("No: plants cannot get carbon dioxide under water", "wat.no-carbon-dioxide"),
            Wrong("Yes: plants live on the nutrients of the mud, not on light", "wat.feed-on-mud"),
        )  # fmt: skip
        return choice(draft, yes if lit else no, wrong, self.catalogue, salt=self.subject.id)

    def oxygen_percent(self) -> Made:
        share, oxygen, full = (self.fact(name) for name in ("oxygen_saturation_percent", "dissolved_oxygen", "oxygen_saturation"))
        draft = Draft(
            id="oxygen_percent",
            prompt=(
                f"The water at {self.place} holds {oxygen.shown_exactly} of oxygen. At its temperature and salinity it would hold "
                f"{full.shown_exactly} in balance with the air. How much of the saturation is that, in percent?"
            ),
            solution=f"{oxygen.shown_exactly} ÷ {full.shown_exactly} = {share.shown}.",
        )
        return number_entry(
            draft, share, {"oxygen": oxygen, "full": full},
            (
                Mistake("wat.saturation-inverse", "full / oxygen", "dividing the saturation by what was measured"),
                Mistake("carb.pct-whole", "oxygen / full / 100", "giving the part of the whole without turning it into percent"),
                Mistake("nit.complement", "1 - oxygen / full", "giving what is missing"),
            ),
            self.catalogue, otherwise="What was measured stands above the line, what the water could hold below it.",
        )  # fmt: skip

    def warm_water(self) -> Made:
        why = "In warm water the molecules of a gas move faster and leave it more easily, so less stays dissolved"
        if self.has("saturation_when_coldest") and self.has("saturation_when_warmest"):
            cold, warm = (self.fact(f"saturation_when_{word}").shown_exactly for word in ("coldest", "warmest"))
            of = f"Over the year the water at {self.place} is {self.fact('yearly_temperature').shown} warm."
            why = f"{why}: {warm} when it is warmest, {cold} when it is coldest"
        else:
            of = f"The water at {self.place} was measured at {self.fact('temperature').shown_exactly}."
        right = "Less: the warmer the water, the less gas stays dissolved"
        draft = Draft(
            id="warm_water", prompt=f"{of} How much oxygen can it hold when it gets warmer?", solution=f"{why}.", needs=Needs.BOTH
        )  # fmt: skip
        wrong = (
            Wrong("More: everything dissolves better in warm water", "wat.warm-holds-more"),
            Wrong("The same: the air above it has not changed", "wat.oxygen-constant"),
            Wrong("More: plants make more oxygen in summer, so there is more room for it", "wat.made-is-held"),
        )
        return choice(draft, right, wrong, self.catalogue, salt=self.subject.id)

    def salt(self) -> Made:
        salinity, word = self.fact("salinity"), self.fact("salinity_class")
        draft = Draft(
            id="salt",
            prompt=f"The water at {self.place} holds {salinity.shown_exactly} of salt: {word.shown}. How does it differ from fresh water just as warm?",
            solution="Salt ions bind water molecules, so fewer are left to hold gas; and salt makes water denser.",
            needs=Needs.BOTH,
        )
        wrong = (
            Wrong("It can hold more oxygen, because salt holds gases fast", "wat.salt-holds-oxygen"),
            Wrong("It is lighter and floats on fresh water", "wat.salt-floats"),
            Wrong("It can hold just as much oxygen, because the air is the same", "wat.oxygen-constant"),
        )
        return choice(draft, "It can hold less oxygen, and it is denser", wrong, self.catalogue, salt=self.subject.id)

    def breathing(self) -> Made:
        full = self.fact("oxygen_saturation").shown_exactly
        known = f", at most about {full} in balance with the air" if self.has("oxygen_saturation") else ""
        draft = Draft(
            id="breathing",
            prompt=f"Which oxygen do fish at {self.place} breathe?",
            solution=f"Gills take up oxygen that is dissolved in the water{known}. It comes from the air and from photosynthesis.",
            needs=Needs.KNOWLEDGE,
        )
        wrong = (
            Wrong("The oxygen of the water molecules, H₂O", "wat.breathe-water"),
            Wrong("The oxygen of the bubbles that they swallow at the surface", "wat.breathe-bubbles"),
            Wrong("No oxygen at all: fish live without it", "wat.fish-no-oxygen"),
        )
        return choice(draft, "Oxygen gas that is dissolved in the water", wrong, self.catalogue, salt=self.subject.id)

    def below_the_light(self) -> Made:
        draft = Draft(
            id="below_the_light",
            prompt=f"Below the photic depth of a water such as {self.place} animals live all the same. What do most of them live on?",
            solution="What plants and algae build up in the light sinks as dead matter and faeces, or is eaten by animals that swim down. Only at hot vents do bacteria build food without light.",
            needs=Needs.KNOWLEDGE,
        )
        wrong = (
            Wrong("On plants that grow there without light", "wat.plants-in-dark"),
            Wrong("On the nutrients dissolved in the water", "wat.animals-eat-nutrients"),
            Wrong("On the oxygen that water holds in the deep", "wat.oxygen-is-food"),
        )
        return choice(draft, "On food that was made in the light and sinks or swims down", wrong, self.catalogue, salt=self.subject.id)

    def flow_told(self) -> str:
        """Of salt water the river is only a part: tides bring water in and out as well."""
        return "through it" if self.fact("salinity_class").value == FRESH else "into it from the river; leave the tides out of account"

    def flushing_time(self) -> Made:
        days, volume, discharge = self.fact("flushing_time"), self.fact("volume"), self.fact("discharge")
        draft = Draft(
            id="flushing_time",
            prompt=(
                f"{self.place} holds {volume.shown_exactly} of water, and {discharge.shown_exactly} flow {self.flow_told()}. "
                "How many days does it take until as much water has come in as it holds? A day has 86\u202f400 seconds."
            ),
            solution=f"{volume.shown_exactly} ÷ {discharge.shown_exactly} is a time in seconds; divided by 86\u202f400 it is {days.shown}.",
        )
        return number_entry(
            draft, days, {"volume": volume, "discharge": discharge},
            (
                Mistake("carb.residence-inverse", "discharge / volume * 86400", "dividing the flow by the volume"),
                Mistake("wat.seconds", "volume / discharge * 86400", "giving the time in seconds"),
                Mistake("wat.seconds", "volume / discharge * 24", "turning seconds into hours only"),
            ),
            self.catalogue, otherwise="First divide the volume by the discharge, then turn seconds into days.",
        )  # fmt: skip
