"""Questions on a line: what its stations and its profile show, and what air does that crosses its crest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.kind import Subject
from generator.kinds.transect import crossing_questions as crossing
from generator.kinds.transect import profile_questions as profile
from generator.kinds.transect import station_questions as stations
from generator.kinds.transect.asked_line import AskedLine
from generator.kinds.transect.record import TransectRecord
from generator.quantities.text import filled
from generator.questions.misconception import Catalogue
from generator.questions.question import Made, Rejected

MOST_READINGS = 2


def questions(subject: Subject[TransectRecord], catalogue: Catalogue) -> Sequence[Made]:
    """What the stations allow, what the profile shows, then what the crossing air does; nothing is rejected."""
    asked = AskedLine(subject, catalogue)
    crosses = subject.record.rain_shadow is not None
    found = (*_stations(asked, few=crosses), *_profile(asked, few=crosses), *(crossing.crossing(asked) if crosses else ()))
    return [one for one in found if not isinstance(one, Rejected)]


def _stations(asked: AskedLine, few: bool) -> Iterator[Made]:
    """Of lapse rates one or, where nothing crosses the line, several."""
    climbs = asked.climbs
    if climbs:
        yield stations.lapse_rate(asked, *climbs[0])
    if climbs and not few:
        yield stations.whole_line(asked)
        if len(climbs) > 1:  # the lapse rate of the first is asked for
            yield stations.halfway(asked, *climbs[-1])
        yield stations.freezing_height(asked)
    yield stations.pressed_air(asked)


def _profile(asked: AskedLine, few: bool) -> Iterator[Made]:
    readings = (profile.rule_breaker, profile.steepest_ground, profile.largest_drop)
    found = [one for one in (make(asked) for make in readings) if not isinstance(one, Rejected)]
    yield from found[:MOST_READINGS]
    yield profile.profile_shows(asked)
    if not few:
        yield profile.belts_match(asked, lambda text: _filled(asked, text))


def _filled(asked: AskedLine, text: str) -> str:
    """With its facts put in; as it is where it names facts of another record."""
    try:
        return filled(text, asked.subject.facts)
    except KeyError:
        return text
