"""Transect profiles for tests: ordinary lines, extreme ones, and lines made at random from a seed."""

from __future__ import annotations

import random
from collections.abc import Sequence

from figures import AirPath, ProfileStation, TransectProfile
from tests.figures.specimens import TABLE


def transect(
    name: str, stations: Sequence[tuple[str, float, float, float | None]], air: tuple[int, int, int, float | None] | None = None
) -> TransectProfile:  # fmt: skip
    """Stations as (label, distance, height, precipitation); `air` as start, crest, end and cloud base."""
    return TransectProfile(
        name=f"transect_{name.lower().replace(' ', '_')}", title=f"Line of {name}", description="Up and down.", reading=(), table=TABLE,
        stations=tuple(
            ProfileStation(
                label=label, distance_km=distance, height_m=height, distance_label=f"{distance:g} km", height_label=f"{height:g} m".replace("-", "−"),
                temp_label=f"{25 - 0.006 * height:.2f} °C".replace("-", "−"), precip_mm=precip, precip_label="" if precip is None else f"{precip:g} mm",
            )
            for label, distance, height, precip in stations
        ),
        air=air and AirPath(
            start=air[0], crest=air[1], end=air[2], cloud_base_m=air[3], dry_label="9.76 K km⁻¹", moist_label="5.49 K km⁻¹",
            cloud_label=f"{air[3] or 9000:g} m", step_labels=("−12.4 °C", *(() if air[3] is None else ("−17.1 °C",)), "−26.7 °C", "−4.38 °C"),
        ),
    )  # fmt: skip


RANGE = (
    ("Drummel Sound", 0.0, 25.0, 2282.0), ("Moss Stair", 46.0, 640.0, 2950.0), ("Lichen Shelf", 95.0, 1390.0, 3420.0), ("Kestrel Pass", 150.0, 2280.0, 1840.0),
    ("Larch Gate", 215.0, 1480.0, 690.0), ("Sage Wells", 300.0, 620.0, 245.0), ("Harrow Plain", 520.0, 310.0, 327.0),
)  # fmt: skip
LONG_NAMES = tuple((f"A station with a long name indeed {n}", 10.0 * n, 200.0 * n, 100.0 * n) for n in range(8))
TRANSECTS = (
    transect("the range", RANGE, (0, 3, 6, 525.0)),
    transect("the range backwards", RANGE, (6, 3, 0, 1900.0)),
    transect("no cloud", RANGE, (0, 3, 6, None)),
    transect("cloud at the ground", RANGE, (0, 3, 6, 25.0)),
    transect("cloud just below the crest", RANGE, (0, 3, 6, 2270.0)),
    transect("two stations", (("Shore", 0.0, 2.0, None), ("Top", 3.0, 4120.0, 12345.0))),
    transect("long names", LONG_NAMES, None),
    transect("all on a heap", tuple((f"Station {n}", 100.0 + 0.1 * n if n < 7 else 900.0, 40.0 * n, 0.0) for n in range(8)), (0, 7, 6, 100.0)),
    transect("below the sea", (("Salt Pan", 0.0, -400.0, 20.0), ("Rim", 5.0, -20.0, 60.0), ("Ridge", 9.0, 900.0, 300.0)), None),
    transect("flat", (("West", 0.0, 310.0, 400.0), ("Middle", 50.0, 310.0, 390.0), ("East", 99.0, 310.0, 380.0))),
)  # fmt: skip


def random_transect(seed: int) -> TransectProfile:
    """A line of two to eight stations, with air over its highest inner station where it has one."""
    lot = random.Random(seed)
    count = lot.randint(2, 8)
    distances = sorted(lot.sample(range(1, 600), count))
    heights = [float(lot.randint(0, 4000)) for _ in range(count)]
    stations = [(f"{lot.choice(['Pine', 'Upper Marmot', 'Old Harbour'])} {lot.choice(['Pass', 'Landing', 'Wells'])}", float(d), h, float(lot.randint(0, 4000))) for d, h in zip(distances, heights, strict=True)]  # fmt: skip
    crest = max(range(count), key=lambda place: heights[place])
    crosses = 0 < crest < count - 1
    return transect(f"seed {seed}", stations, (0, crest, count - 1, lot.choice([None, lot.uniform(heights[0], heights[crest])])) if crosses else None)
