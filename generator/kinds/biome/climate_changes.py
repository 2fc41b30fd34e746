"""Questions on how fast a climate changes from month to month: two neighbouring months, read off the climate diagram."""

from __future__ import annotations

import math
from collections.abc import Sequence

from generator.kinds.biome.asked_station import AskedStation, beside, name
from generator.quantities import shown
from generator.questions.making import Draft, Wrong, reading
from generator.questions.question import Made, Rejected

LEAST_RISE, LEAST_LEAD = 1.5, 0.5
"""Change [K] from month to month that is worth a question, and how far it must stand above the next largest."""
RAIN_LEAD = 0.2
"""How far a change of precipitation must stand above the next largest, as part of itself."""
_TURNED = {"rises": "falls", "falls": "rises"}


def fastest_warming(asked: AskedStation) -> Made:
    """Steepness against height; of cooling where no warming stands out."""
    item, found = "fastest_warming", fastest_change(asked)
    if found is None:
        return Rejected(item, "no two neighbouring months stand out by how fast it warms or cools between them")
    goes, month = found
    draft = Draft(
        id=item,
        prompt=f"Between which two neighbouring months does the mean temperature at {asked.place} {goes} fastest?",
        solution=(
            f"From {asked.told('monthly_mean_temp', month)} in {name(month)} to {asked.told('monthly_mean_temp', month % 12 + 1)} in {name(month + 1)}: "
            f"there the line {goes}s most steeply."
        ),
        hints=(
            f"How fast it {'warms' if goes == 'rise' else 'cools'} is how steep the temperature line is, not how high.",
            f"Take the difference of each two neighbouring months from the table under the diagram. The largest {goes} counts.",
        ),
    )
    return _pair(asked, draft, month, "monthly_mean_temp", f"{goes}s", ("monthly_precip", "precipitation"))


def fastest_change(asked: AskedStation) -> tuple[str, int] | None:
    """`rise` or `fall`, and the month from which to the next the mean temperature does so fastest; none where no step stands out."""
    rises = _changes(asked.fact("monthly_mean_temp").series)
    for goes, changes in (("rise", rises), ("fall", [-change for change in rises])):
        month = standing_out(changes, LEAST_LEAD)
        if month is not None and changes[month - 1] >= LEAST_RISE:
            return goes, month
    return None


def fastest_change_of_rain(asked: AskedStation) -> Made:
    """The same of precipitation where temperature hardly changes: upwards or downwards, whichever stands out more."""
    item, rain = "fastest_change_of_rain", asked.fact("monthly_precip").series
    rises = _changes(rain)
    falls = [-change for change in rises]
    if not asked.is_steady:
        return Rejected(item, "the temperature changes over the year and tells more")
    found = [(changes, month) for changes in (rises, falls) if (month := standing_out(changes, RAIN_LEAD * max(changes))) is not None]
    if not found or max(rain) == min(rain):
        return Rejected(item, "no two neighbouring months stand out by how fast precipitation changes between them")
    changes, month = max(found, key=lambda one: _lead(one[0]))
    goes = "rise" if changes is rises else "fall"
    draft = Draft(
        id=item,
        prompt=f"Between which two neighbouring months does the precipitation line of {asked.place} {goes} most steeply?",
        solution=f"From {asked.told('monthly_precip', month)} in {name(month)} to {asked.told('monthly_precip', month % 12 + 1)} in {name(month + 1)}: no other step in this direction is as large.",
        hints=(
            "How fast it changes is how steep the precipitation line is, not how high.",
            f"Take the difference of each two neighbouring months from the table under the diagram. The largest {goes} counts.",
        ),
    )
    return _pair(asked, draft, month, "monthly_precip", f"{goes}s")


def _pair(asked: AskedStation, draft: Draft, month: int, line: str, goes: str, other: tuple[str, str] | None = None) -> Made:
    """Two neighbouring months, named by the first of them, between which a line rises or falls most."""
    values, sign = asked.fact(line).series, 1 if goes == "rises" else -1
    changes = [sign * change for change in _changes(values)]
    highest = values.index(max(values)) + 1
    opposite_way = _all_with(changes, min(changes))
    wrong = [
        *((_steps((top,)), _at_the_top(asked, line, goes, changes[top - 1])) for top in (beside(highest)[0], highest)),
        (_steps(opposite_way), Wrong("", "clim.rise-or-fall", f"It is steep there, but the line {_TURNED[goes]}.")),
        (_steps(beside(month)), Wrong("", "clim.wrong-step", "That is the step beside it.")),
    ]
    if other is not None:
        series, called = other
        on_the_other = _changes(asked.fact(series).series)
        most = _all_with(on_the_other, max(on_the_other))
        told = f"That is where {called} rises most." if len(most) == 1 else f"There {called} rises as much as anywhere."
        wrong.insert(-1, (_steps(most), Wrong("", "clim.wrong-axis", told)))
    return reading(draft, _steps(asked.year), _steps((month,)), wrong, asked.catalogue, otherwise=f"Compare the steps from month to month: the one in which it {goes} most counts.")


def _at_the_top(asked: AskedStation, line: str, goes: str, change: float) -> Wrong:
    """A step beside the highest point: it goes the other way, or it goes the right way, but less."""
    instead = f"Look for where it {goes} most steeply, however high it stands."
    if change < 0:
        return Wrong("", "clim.height-slope", f"The line is highest there, but it {_TURNED[goes]}.", instead)
    unit = asked.fact(line).unit
    by = shown.written(f"{change:.3g}")
    told = f"it {goes} by only {unit.after(by) if unit else by}" if change else "it runs level"
    return Wrong("", "clim.height-slope", f"The line is highest there, but {told}.", instead)


def _steps(months: Sequence[int]) -> tuple[str, ...]:
    return tuple(f"{name(month)} to {name(month + 1)}" for month in months)


def _changes(series: Sequence[float]) -> list[float]:
    """From each month to the next, December to January last."""
    return [series[(month + 1) % 12] - series[month] for month in range(12)]


def _all_with(changes: Sequence[float], value: float) -> tuple[int, ...]:
    """All months with this change; differences of decimals are alike though their last binary digits differ."""
    return tuple(month for month, change in enumerate(changes, start=1) if math.isclose(change, value, abs_tol=1e-9))


def standing_out(values: Sequence[float], lead: float) -> int | None:
    """The month with the largest value, if it is so much larger than any other."""
    return values.index(max(values)) + 1 if _lead(values) >= lead > 0 else None


def _lead(values: Sequence[float]) -> float:
    first, second, *_ = sorted(values, reverse=True)
    return first - second
