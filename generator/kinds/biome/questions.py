"""Questions on a biome: on its climate by what its own year tells, and on what that climate means for living things."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.kind import Subject
from generator.kinds.biome import climate_orders, climate_readings, climate_statements, climate_sums
from generator.kinds.biome import ecology_questions as ecology
from generator.kinds.biome.asked_station import AskedStation
from generator.kinds.biome.record import BiomeRecord
from generator.questions.making import enough, first_made
from generator.questions.misconception import Catalogue
from generator.questions.question import Made, Rejected

WANTED, PLENTY, MOST = 6, 8, 9
"""Questions that every record should have; below how many plainer ones are added; and the most that a page can bear."""
MOST_READINGS, FEWEST_SUMS = 3, 2
STEADY = 5.0
"""Annual temperature range [K] below which the year is called steady."""


def questions(subject: Subject[BiomeRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on the first station that the page shows, or else on the first for practice; one on a southern station beside it.

    Which of the climate's questions are asked hangs on what its year tells, so that biomes do not all ask the same. Where too few
    come out, plainer ones stand in. What the page prints of its own stations, as a mean, a range or a limit, is asked of one kept for practice where there is any. With still too few each says why it was left out. A diagram that no page shows is not read.
    """
    stations = [s for s in subject.record.stations if s.use == "page"] or [s for s in subject.record.stations if s.use != "paper"]
    asked, *others = (AskedStation(subject, station, catalogue) for station in stations)
    is_drawn = asked.station.use == "page"
    unseen = next((AskedStation(subject, s, catalogue) for s in subject.record.stations if s.use == "practice"), asked)
    mean, total = climate_sums.annual_mean_temp(unseen), climate_sums.wettest_months_share(unseen)
    told = [*_some(climate_readings.readings(asked), MOST_READINGS * is_drawn), *_some(map(climate_readings.coldest_in_the_south, others), is_drawn)]
    plain = _some(climate_readings.plain_readings(asked), is_drawn)
    seen = (climate_statements.dry_months(asked), climate_statements.diagram_shows(asked))
    spread, water = climate_sums.annual_temp_range(unseen), climate_sums.lack_of_water(asked)
    sums = [*([spread] if is_telling(unseen) else []), climate_sums.wettest_share(asked), *_some((water, climate_sums.aridity_index(asked)), 1)]
    worked = _some(sums, len(sums))
    about = [
        *(seen if is_drawn else ()), *_some((climate_orders.year_order(asked, [one.id for one in told]), climate_orders.water_order(asked)), is_drawn),
        first_made(*(ecology.limiting_factor(subject, one.station, catalogue) for one in (unseen, asked))),
        ecology.which_climate(subject, asked.station, catalogue), climate_statements.why_dry(asked),
    ]  # fmt: skip
    made = [*(told or plain), *worked, *([mean] if len(worked) < FEWEST_SUMS and unseen is not asked else []), *_some(about, len(about))][:MOST]
    ordered = any(one.id == "year_order" for one in made)
    spare = [*([] if ordered else plain), climate_sums.aridity_index(asked), spread, mean, total, climate_sums.driest_beside_average(asked)]
    made += _some([one for one in spare if one.id not in {other.id for other in made}], PLENTY - len(made))
    return made if len(made) >= WANTED else enough([*made, *(one for one in (*spare, *sums, *about) if isinstance(one, Rejected))], WANTED)


def _some(made: Sequence[Made] | Iterator[Made], most: int) -> list[Made]:
    """The first that came out, at most so many."""
    return [one for one in made if not isinstance(one, Rejected)][: max(0, most)]


def is_telling(asked: AskedStation) -> bool:
    """Whether the temperature range tells much of the climate: of frost, or of a steady year."""
    return bool(asked.months("months_below_freezing")) or asked.fact("annual_temp_range").number < STEADY
