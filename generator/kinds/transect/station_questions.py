"""Questions on the stations of a line: how it gets colder with height, and how far that goes on."""

from __future__ import annotations

from generator.kinds.transect.asked_line import AskedLine, given_of
from generator.kinds.transect.record import Station
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.questions.making import Draft, Wrong, choice, number_entry
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Rejected

M, KM, K, DEGC = unit("m"), unit("km"), unit("K"), unit("degC")
COUNTED = "positive where it gets colder with height"
"""The sign of a lapse rate, as each question on one states it."""
MOST_BEYOND = 1500.0
"""Height [m] above the highest station up to which its lapse rate is taken on."""
HINT = "Work in kilometres, and count only the part of the way on which this rate holds."
_DIFFERENCE, _CLIMB = "(temperature_before - temperature)", "(height - height_before)"
LAPSE_SLIPS = (
    Mistake("clim.metres-for-kilometres", f"{_DIFFERENCE} / {_CLIMB} / 1000", "dividing by metres where kilometres are asked for"),
    Mistake("clim.lapse-inverse", f"{_CLIMB} / {_DIFFERENCE} / 1000", "dividing the height by the temperature"),
    Mistake("clim.lapse-minus", f"-1 * {_DIFFERENCE} / {_CLIMB}", "taking the difference the other way round"),
)
"""The usual slips of a lapse rate, by the names of its formula."""


def lapse_rate(asked: AskedLine, before: Station, station: Station) -> Made:
    """Between two stations, whose numbers are told."""
    right = asked.fact(station, "lapse_rate_from_previous")
    told = " ".join(f"{one.label}: {asked.told(one, 'height')}, {asked.told(one, 'annual_mean_temp')}." for one in (before, station))
    draft = Draft(
        id="lapse_rate",
        prompt=f"{told} What is the lapse rate between them, in K km⁻¹, {COUNTED}?",
        solution=f"Difference of the temperatures divided by the difference of the heights in kilometres: {right.shown}.",
        hints=("Which is colder, and by how much? By how many kilometres is it higher?", "Lapse rate = difference of the temperatures ÷ difference of the heights in kilometres."),
    )
    return number_entry(
        draft, right, _between(asked, before, station), LAPSE_SLIPS, asked.catalogue,
        otherwise="Which is colder, and by how much? By how many kilometres is it higher? Divide the first by the second.",
    )  # fmt: skip


def _between(asked: AskedLine, before: Station, station: Station) -> dict[str, Fact]:
    return {
        "temperature_before": asked.fact(before, "annual_mean_temp"), "temperature": asked.fact(station, "annual_mean_temp"),
        "height": asked.fact(station, "height"), "height_before": asked.fact(before, "height"),
    }  # fmt: skip


def whole_line(asked: AskedLine) -> Made:
    """From the lowest to the highest, left to be picked from the profile, with the unit left to be told."""
    right = asked.subject.facts["lapse_rate"]
    draft = Draft(
        id="whole_line",
        prompt=f"Find the lowest and the highest station of the profile on this page. What is the mean lapse rate between them, {COUNTED}? Give it for a kilometre of height.",
        solution=f"Difference of the two temperatures divided by the difference of the two heights in kilometres: {right.shown}.",
        hints=("Read four numbers first: two heights and two temperatures.", "Divide the difference of the temperatures, in kelvin, by the difference of the heights, in kilometres."),
    )
    return number_entry(
        draft, right, given_of(right), LAPSE_SLIPS, asked.catalogue, otherwise="Read four numbers first: two heights and two temperatures.", asks_unit=True
    )  # fmt: skip


def halfway(asked: AskedLine, before: Station, station: Station) -> Made:
    """The temperature at half the climb, by the lapse rate between two stations."""
    low, climb, rate = asked.fact(before, "annual_mean_temp"), asked.fact(station, "climb_from_previous"), asked.fact(station, "lapse_rate_from_previous")
    given = {"temperature_before": low, "lapse_rate": rate, "climb": climb}
    right = computed(f"{station.id}.halfway", "Mean halfway up", Expression("temperature_before - lapse_rate * climb / 2"), given, DEGC)
    draft = Draft(
        id="halfway",
        prompt=(
            f"{before.label} has a mean of {low.shown_exactly}. The lapse rate from there to {station.label} is {rate.shown_exactly}, "
            f"over a climb of {climb.shown_exactly}. What mean do you expect halfway up?"
        ),
        solution=f"Half the climb in kilometres times the lapse rate is taken off {low.shown_exactly}: {right.shown}.",
        hints=("Only half of the climb counts, and it has to be in kilometres.", "Multiply the lapse rate by half the climb, and take that off the mean at the foot."),
    )
    return number_entry(
        draft, right, given,
        (
            Mistake("clim.lapse-added", "temperature_before + lapse_rate * climb / 2", "adding where it gets colder"),
            Mistake("clim.lapse-whole-way", "temperature_before - lapse_rate * climb", "taking the whole climb"),
            Mistake("clim.lapse-per-kilometre", "temperature_before - lapse_rate", "taking the rate off once, whatever the climb"),
        ),
        asked.catalogue, otherwise=HINT,
    )  # fmt: skip


def freezing_height(asked: AskedLine) -> Made:
    """Where the mean of the year would be 0 °C, if the highest lapse rate went on."""
    item, top = "freezing_height", asked.top
    rate = asked.subject.facts.get(f"{top.id}.lapse_rate_from_previous")
    if rate is None or not rate.is_number or rate.number <= 0 or asked.number(top, "annual_mean_temp") <= 0:
        return Rejected(item, "the highest station is no warmer than 0 °C, or the lapse rate up to it is not known")
    temp, height = asked.fact(top, "annual_mean_temp"), asked.fact(top, "height")
    if 1000 * temp.number / rate.number > MOST_BEYOND:
        return Rejected(item, "0 °C would be reached too far above the highest station")
    above = Fact(id="zero", name="Freezing point", value=0.0, unit=DEGC, written="0")
    given = {"height": height, "temperature": temp, "freezing": above, "lapse_rate": rate}
    right = computed(f"{top.id}.{item}", "Height at which the mean is 0 °C", Expression("height + (temperature - freezing) / lapse_rate"), given, M)
    climb = computed("", "Climb that is left", Expression("(temperature - freezing) / lapse_rate"), given, KM)
    warmth = computed("", "Kelvin that are left", Expression("temperature - freezing"), given, K)
    draft = Draft(
        id=item,
        prompt=(
            f"{top.label} lies at {height.shown_exactly} and has a mean of {temp.shown_exactly}. If it went on getting colder by {rate.shown_exactly} above it, "
            "at what height would the mean be 0 °C?"
        ),
        solution=f"{warmth.shown_exactly} ÷ {rate.shown_exactly} = {climb.shown_exactly} is the climb that is left; added to {height.shown_exactly}, that is {right.shown}.",
        hints=("How many kelvin are left to 0 °C, and how many kilometres do they take?", "Divide the temperature by the lapse rate, turn kilometres into metres, and add the height of the station."),
    )
    return number_entry(
        draft, right, {"height": height, "temperature": temp, "lapse_rate": rate, "freezing": above},
        (
            Mistake("clim.height-forgotten", "(temperature - freezing) / lapse_rate", "leaving out the height of the station"),
            Mistake("clim.height-downwards", "height - (temperature - freezing) / lapse_rate", "going down instead of up"),
            Mistake("clim.lapse-times", "height + 1000 * temperature * lapse_rate", "multiplying by the lapse rate"),
        ),
        asked.catalogue, otherwise="First the climb that is left, then add the height from which it is counted.", asks_unit=True, kept=("zero",),
    )  # fmt: skip


def why_colder(asked: AskedLine) -> Made:
    """Warmth comes from the ground, and rising air cools."""
    draft = Draft(
        id="why_colder", prompt="Why is it colder higher up on this line?", needs=Needs.KNOWLEDGE,
        solution="Sunlight warms the ground, and the ground warms the air from below. Air that rises comes under less pressure, expands, and cools as it does.",
        hints=("What warms the air: the Sun directly, or what the Sun shines on?", "What happens to the volume of air that comes under less pressure, and what does that cost it?"),
    )  # fmt: skip
    wrong = (
        Wrong("The wind is stronger there and carries the warmth away", "clim.lapse-wind"),
        Wrong("Cold air is light, so it rises and gathers on top", "clim.cold-air-rises"),
        Wrong("The ground there lies farther away from the Sun", "clim.lapse-sign", "A few kilometres are nothing beside the distance of the Sun."),
    )
    return choice(draft, "Air is warmed from below, and cools as it expands", wrong, asked.catalogue, salt=asked.salt)
