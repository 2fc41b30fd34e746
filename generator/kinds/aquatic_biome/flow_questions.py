"""Questions on water that moves: how long it stays, how wide its way is, how far it drifts."""

from __future__ import annotations

from generator.kinds.aquatic_biome.asked_water import FRESH, AskedWater
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.questions.making import Draft, number_entry
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Rejected

M2, KM, DAY, MINUTE = unit("m2"), unit("km"), unit("d"), unit("min")


def _flow_told(asked: AskedWater) -> str:
    """Of salt water the river is only a part: tides bring water in and out as well."""
    return "through it" if asked.fact("salinity_class").value == FRESH else "into it from the river (leave out the tides)"


def _is_stream(asked: AskedWater) -> bool:
    """Whether fresh water flows past at a known rate and speed; where there are tides the current is not that of the river."""
    return asked.has("discharge", "flow_speed") and asked.fact("salinity_class").value == FRESH and bool(asked.fact("flow_speed").number)


def flushing_time(asked: AskedWater) -> Made:
    """Volume over discharge, in days."""
    days, volume, discharge = asked.fact("flushing_time"), asked.fact("volume"), asked.fact("discharge")
    draft = Draft(
        id="flushing_time",
        prompt=(
            f"{asked.place} holds {volume.shown_exactly} of water, and {discharge.shown_exactly} flow {_flow_told(asked)}. "
            "How many days does it take until as much water has come in as it holds? A day has 86\u202f400 seconds."
        ),
        solution=f"{volume.shown_exactly} ÷ {discharge.shown_exactly} is a time in seconds; divided by 86\u202f400 it is {days.shown}.",
        hints=("How many seconds does the flow take to bring that volume?", "First divide the volume by the discharge, then turn seconds into days."),
    )
    return number_entry(
        draft, days, {"volume": volume, "discharge": discharge},
        (
            Mistake("wat.flushing-inverse", "discharge / volume * 86400", "dividing the flow by the volume, which gives the part that is renewed in a day", "A part is no time. Divide the volume by the flow."),
            Mistake("wat.seconds", "volume / discharge * 86400", "giving the time in seconds"),
            Mistake("wat.seconds", "volume / discharge * 24", "turning seconds into hours only"),
        ),
        asked.catalogue, otherwise="First divide the volume by the discharge, then turn seconds into days.",
    )  # fmt: skip


def cross_section(asked: AskedWater) -> Made:
    """Discharge over speed, of a stream."""
    item = "cross_section"
    if not _is_stream(asked):
        return Rejected(item, "discharge and speed of a stream are not both known")
    discharge, speed = asked.fact("discharge"), asked.fact("flow_speed")
    area = computed(f"{asked.station.id}.{item}", "Cross-section of the stream", Expression("discharge / flow_speed"), {"discharge": discharge, "flow_speed": speed}, M2)
    draft = Draft(
        id=item,
        prompt=f"At {asked.place} the discharge is {discharge.shown_exactly}, and the water runs at {speed.shown_exactly}. How large is the cross-section of the stream?",
        solution=f"{discharge.shown_exactly} ÷ {speed.shown_exactly} = {area.shown}. The slower the water, the more room the same discharge needs.",
        hints=("Each second a piece of stream passes: as long as the speed says, and as wide and deep as the cross-section.", "Cross-section = discharge ÷ speed. Cubic metres divided by metres are square metres."),
    )
    return number_entry(
        draft, area, {"discharge": discharge, "speed": speed},
        (
            Mistake("wat.discharge-times", "discharge * speed", "multiplying by the speed"),
            Mistake("wat.discharge-inverse", "speed / discharge", "dividing the speed by the discharge"),
        ),
        asked.catalogue, otherwise="Discharge stands above the line, speed below it; look at the units.", asks_unit=True,
    )  # fmt: skip


def travel_time(asked: AskedWater) -> Made:
    """How long a stream takes to carry something one kilometre."""
    item = "travel_time"
    if not _is_stream(asked):
        return Rejected(item, "no stream carries anything away")
    speed, way = asked.fact("flow_speed"), Fact(id="way", name="Distance", value=1.0, unit=KM, written="1")
    time = computed(f"{asked.station.id}.{item}", "Time for one kilometre", Expression("way / flow_speed"), {"way": way, "flow_speed": speed}, MINUTE)
    draft = Draft(
        id=item,
        prompt=f"The water at {asked.place} runs at {speed.shown_exactly}. How many minutes does it take to carry a leaf one kilometre?",
        solution=f"1000 m ÷ {speed.shown_exactly} is a time in seconds; divided by 60 it is {time.shown}.",
        hints=("The speed says how many metres the leaf goes in each second.", "Divide 1000 m by the speed, then turn seconds into minutes."),
    )
    return number_entry(
        draft, time, {"speed": speed},
        (
            Mistake("wat.not-minutes", "1000 / speed", "giving the time in seconds"),
            Mistake("wat.time-inverse", "1000 * speed / 60", "multiplying by the speed"),
            Mistake("wat.not-minutes", "1000 / speed / 3600", "giving the time in hours"),
        ),
        asked.catalogue, otherwise="Metres divided by metres a second are seconds; sixty of them make a minute.", kept=("way",),
    )  # fmt: skip


def drift(asked: AskedWater) -> Made:
    """How far the current carries something in a day; of salt water, where no river says more."""
    item = "drift"
    if not asked.has("flow_speed") or asked.has("discharge") or not asked.fact("flow_speed").number:
        return Rejected(item, "no current is known, or a river's flow tells more")
    speed, day = asked.fact("flow_speed"), Fact(id="day", name="A day", value=1.0, unit=DAY, written="1")
    far = computed(f"{asked.station.id}.{item}", "Drift in a day", Expression("flow_speed * day"), {"flow_speed": speed, "day": day}, KM)
    draft = Draft(
        id=item,
        prompt=f"The current at {asked.site} runs at {speed.shown_exactly}. How many kilometres does it carry larvae and other plankton in a day?",
        solution=f"A day has 86\u202f400 seconds. At {speed.shown_exactly} that makes {far.shown}, with 1000 m to the kilometre.",
        hints=("The speed says how many metres they drift in each second.", "Multiply by the seconds of a day, then turn metres into kilometres."),
    )
    return number_entry(
        draft, far, {"speed": speed},
        (
            Mistake("wat.metres", "speed * 86400", "giving the distance in metres"),
            Mistake("wat.seconds-of-a-day", "speed * 24 / 1000", "multiplying by 24 instead of by the seconds of a day"),
            Mistake("wat.seconds-of-a-day", "speed * 3600 / 1000", "taking the seconds of an hour for those of a day"),
        ),
        asked.catalogue, otherwise="Metres in each second, times the seconds of a day, divided by 1000.", kept=("day",),
    )  # fmt: skip
