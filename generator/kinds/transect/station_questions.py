"""Questions on the stations of a line: how it gets colder with height, and how far that goes on."""

from __future__ import annotations

from generator.kinds.transect.asked_line import AskedLine, given_of
from generator.kinds.transect.record import Station
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.questions.making import Draft, Wrong, choice, number_entry
from generator.questions.mistake import Mistake
from generator.questions.question import Interval, Made, Needs, Rejected

M, KM, K, DEGC = unit("m"), unit("km"), unit("K"), unit("degC")
COUNTED = "positive where it gets colder with height"
"""The sign of a lapse rate, as each question on one states it."""
MOST_BEYOND = 1500.0
"""Height [m] above the highest station up to which its lapse rate is taken on."""
HINT = "Work in kilometres, and count only the part of the way on which this rate holds."
LIKELY = Interval(3.0, 9.5)
"""Lapse rates [K/km] of drawn numbers: along a slope the yearly mean seldom changes by less, and no faster than in dry rising air. Source: from memory."""
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
    given = _with_steps(_between(asked, before, station))
    told = " ".join(f"{one.label}: {asked.told(one, 'height')}, {asked.told(one, 'annual_mean_temp')}." for one in (before, station))
    draft = Draft(
        id="lapse_rate",
        prompt=f"{told} What is the lapse rate between them, in K km⁻¹, {COUNTED}?",
        solution=f"{_divided(given)} = {right.shown}.",
        hints=("Which is colder, and by how much? By how many kilometres is it higher?", "Lapse rate = difference of the temperatures ÷ difference of the heights in kilometres."),
    )
    return number_entry(
        draft, right, given, LAPSE_SLIPS, asked.catalogue,
        otherwise="Which is colder, and by how much? By how many kilometres is it higher? Divide the first by the second.",
        likely=_likely(right),
    )  # fmt: skip


def _likely(right: Fact) -> Interval | None:
    """What bounds drawn lapse rates, unless the record's own lies outside."""
    return LIKELY if LIKELY.meets(Interval(right.number, right.number)) else None


def _between(asked: AskedLine, before: Station, station: Station) -> dict[str, Fact]:
    return {
        "temperature_before": asked.fact(before, "annual_mean_temp"), "temperature": asked.fact(station, "annual_mean_temp"),
        "height": asked.fact(station, "height"), "height_before": asked.fact(before, "height"),
    }  # fmt: skip


def _with_steps(given: dict[str, Fact]) -> dict[str, Fact]:
    """The two temperatures and heights of a lapse rate, and their differences."""
    return given | {
        "colder_by": computed("colder_by", "Difference of the temperatures", Expression("temperature_before - temperature"), given, K),
        "higher_by": computed("higher_by", "Difference of the heights", Expression("height - height_before"), given, KM),
    }  # fmt: skip


def _divided(given: dict[str, Fact]) -> str:
    """The sum behind a lapse rate, with its two differences."""
    return f"Colder by {given['colder_by'].shown_exactly}, higher by {given['higher_by'].shown_exactly}: {given['colder_by'].shown_exactly} ÷ {given['higher_by'].shown_exactly}"


def whole_line(asked: AskedLine) -> Made:
    """From the lowest to the highest, left to be picked from the profile, with the unit left to be told."""
    right = asked.subject.facts["lapse_rate"]
    given = _with_steps(given_of(right))
    draft = Draft(
        id="whole_line",
        prompt=f"Find the lowest and the highest station of the profile on this page. What is the mean lapse rate between them, {COUNTED}? Give it per kilometre of height, with its unit.",
        solution=f"{_divided(given)} = {right.shown}.",
        hints=("Read four numbers first: two heights and two temperatures.", "Divide the difference of the temperatures, in kelvin, by the difference of the heights, in kilometres."),
    )
    return number_entry(
        draft, right, given, LAPSE_SLIPS, asked.catalogue, otherwise="Read four numbers first: two heights and two temperatures.", asks_unit=True, likely=_likely(right),
    )  # fmt: skip


def halfway(asked: AskedLine, before: Station, station: Station) -> Made:
    """The temperature at half the climb, by the lapse rate between two stations."""
    low, climb, rate = asked.fact(before, "annual_mean_temp"), asked.fact(station, "climb_from_previous"), asked.fact(station, "lapse_rate_from_previous")
    given = {"temperature_before": low, "lapse_rate": rate, "climb": climb}
    half = computed("half_climb", "Half of the climb", Expression("climb / 2"), given, KM)
    right = computed(f"{station.id}.halfway", "Mean halfway up", Expression("temperature_before - lapse_rate * climb / 2"), given, DEGC)
    draft = Draft(
        id="halfway",
        prompt=(
            f"{before.label} has a mean of {low.shown_exactly}. The lapse rate from there to {station.label} is {rate.shown_exactly}, "
            f"over a climb of {climb.shown_exactly}. What mean do you expect halfway up?"
        ),
        solution=f"Half of the climb is {half.shown_exactly}: {low.shown_exactly} − {half.shown_exactly} × {rate.shown_exactly} = {right.shown}.",
        hints=("Only half of the climb counts, and it has to be in kilometres.", "Multiply the lapse rate by half the climb, and take that off the mean of the lower station."),
    )
    return number_entry(
        draft, right, given | {"half_climb": half},
        (
            Mistake("clim.lapse-added", "temperature_before + lapse_rate * climb / 2", "adding where it gets colder"),
            Mistake("clim.lapse-whole-way", "temperature_before - lapse_rate * climb", "taking the whole climb"),
            Mistake("clim.lapse-per-kilometre", "temperature_before - lapse_rate", "taking the rate off once, whatever the climb"),
        ),
        asked.catalogue, otherwise="Turn the climb into kilometres and take half of it. Multiply that by the lapse rate, and take the result off the mean.", kept=(rate.id,),
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
    climb = computed("climb_left", "Climb that is left", Expression("(temperature - freezing) / lapse_rate"), given, KM)
    warmth = computed("kelvin_left", "Kelvin that are left", Expression("temperature - freezing"), given, K)
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
        draft, right, {"height": height, "temperature": temp, "lapse_rate": rate, "freezing": above, "climb_left": climb, "kelvin_left": warmth},
        (
            Mistake("clim.height-forgotten", "(temperature - freezing) / lapse_rate", "leaving out the height of the station"),
            Mistake("clim.height-downwards", "height - (temperature - freezing) / lapse_rate", "going down instead of up"),
            Mistake("clim.lapse-times", "height + 1000 * temperature * lapse_rate", "multiplying by the lapse rate"),
        ),
        asked.catalogue, otherwise="First the climb that is left, then add the height from which it is counted.", asks_unit=True, kept=("zero", rate.id),
    )  # fmt: skip


def pressed_air(asked: AskedLine) -> Made:
    """What pressure does to the warmth of air, told by a pump: of a line that no air crosses, for another page explains it in words."""
    if asked.subject.record.rain_shadow is not None:
        return Rejected("pressed_air", "the page says what air does that rises and sinks along the line")
    lowest, top = min(asked.stations, key=lambda station: asked.number(station, "height")), asked.top
    draft = Draft(
        id="pressed_air", needs=Needs.KNOWLEDGE,
        prompt=f"A bicycle pump gets warm because air is pressed together in it. What does that tell about air that flows down this line, from {top.label} to {lowest.label}?",
        solution="Lower down more air lies above it, so the pressure rises. It presses the air together and warms it, as the pump does. Air that rises expands and cools.",
        hints=("Where is the pressure of the air higher: at the top or at the bottom of the line?", "What does higher pressure do to the volume of air, and what to its temperature?"),
    )  # fmt: skip
    wrong = (
        Wrong("It gets colder on its way, for sinking air loses its warmth", "clim.sinking-cools"),
        Wrong("It gets warmer on its way, for the wind rubs against the slope", "clim.lapse-wind", "", "Air that sinks far from any slope warms as much. Rubbing warms it hardly at all; being pressed together does."),
        Wrong("It soon rises again, for air from so high up is cold and light", "clim.cold-air-rises"),
    )
    return choice(draft, "It gets warmer on its way, for more and more air lies above it", wrong, asked.catalogue, salt=asked.salt)
