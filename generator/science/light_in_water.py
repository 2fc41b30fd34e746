"""Light under water: how fast it fades, how much is left at a depth, and how deep plants can live by it."""

from __future__ import annotations

from generator.science.method import Method

_EXTINCTION = ("extinction", "how fast light fades with depth; at 0.1 per metre about a tenth goes on each metre", "1/m")

EXTINCTION_FROM_SECCHI = Method(
    id="extinction_from_secchi",
    name="Extinction coefficient from Secchi depth after Poole and Atkins",
    formula=("extinction = 1.7 / secchi_depth",),
    symbols=(_EXTINCTION, ("secchi_depth", "depth at which a white disk is just lost from sight", "m")),
    sources=("POOLE_ATKINS1929", "KOENINGS1991"),
    limits="A rule of thumb, first found in the English Channel. Measured elsewhere, the number in place of 1.7 runs from about 1 in "
    "water white with silt to nearly 3 in brown water, so a measured extinction is better.",
)

LIGHT_AT_DEPTH = Method(
    id="light_at_depth",
    name="Light left at a depth, by the law of Beer and Lambert",
    formula=("light_at_depth = exp(-extinction * depth)",),
    symbols=(
        ("light_at_depth", "light at the depth as part of the light just below the surface", ""),
        _EXTINCTION,
        ("depth", "depth below the surface", "m"),
    ),
    sources=("GORDON1989",),
    limits="One extinction for all depths and colours is a simplification: red light goes within the first metres, and a layer of "
    "algae or silt fades light faster than the water above it. Where next to nothing is left, read the result as dark.",
)

PHOTIC_DEPTH = Method(
    id="photic_depth",
    name="Photic depth, where one percent of the surface light is left",
    formula=("photic_depth = ln(100) / extinction",),
    rule="ln(100), the natural logarithm of 100, is 4.605.",
    symbols=(("photic_depth", "depth at which 1 % of the light is left", "m"), _EXTINCTION),
    sources=("GORDON1989", "REINART2000"),
    limits="One percent is a convention for where photosynthesis just balances respiration: some algae live on less, many rooted plants "
    "need more. It counts from the light that enters the water, not from full sunlight.",
)
