"""How long it takes until the water of a lake or an estuary is exchanged."""

from __future__ import annotations

from generator.science.method import Method

FLUSHING_TIME = Method(
    id="flushing_time",
    name="Flushing time",
    formula=("flushing_time = volume / discharge",),
    symbols=(
        ("flushing_time", "time in which as much water flows through as there is", "d"),
        ("volume", "volume of the water", "m3"),
        ("discharge", "water that flows through in a second", "m3/s"),
    ),
    sources=("LAKE_RETENTION",),
    limits="As if all the water were mixed at once: still corners and deep layers stay longer, a current along the surface leaves sooner. "
    "In an estuary tides carry water out as well, so it is flushed faster than by the river alone.",
)
