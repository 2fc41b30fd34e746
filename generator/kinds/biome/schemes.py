"""What must be said beside a station's numbers: where schemes disagree, and where a method is out of its depth."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from generator.diagnostics import listed
from generator.kind import Subject
from generator.kinds.biome.record import BiomeRecord
from generator.kinds.biome.scheme_facts import older_class, usual_region
from generator.kinds.biome.water_facts import is_beyond_the_formula
from generator.quantities import shown
from generator.quantities.fact import Fact
from generator.science.biome_regions import NAMES
from generator.science.climate_class import OLDER_COLD_LIMIT

SCHEMES: Mapping[str, str] = {
    "climate_class": "the climate class",
    "aridity_class": "the aridity class",
    "life_zone": "the life zone",
    "region": "the temperature-rainfall map",
}
"""The schemes that are asked, by the name of their fact."""
DRY: Mapping[str, Mapping[str, bool]] = {
    "aridity_class": dict.fromkeys(("hyper-arid", "arid", "semi-arid", "dry sub-humid"), True) | {"humid": False},
    "region": dict.fromkeys((NAMES["subtropical_desert"], NAMES["temperate_grassland_desert"]), True)
    | {name: False for region, name in NAMES.items() if region.endswith("forest")},
}
"""Answers that follow from the whole name."""
DRY_ZONES = ("desert", "scrub", "steppe", "dry forest", "thorn woodland", "dry tundra")
WET_ZONES = ("moist forest", "wet forest", "rain forest", "moist tundra", "wet tundra", "rain tundra")
TREELESS = ("desert", "scrub", "steppe", "tundra")
ELSEWHERE = "Each scheme sets its limits elsewhere, as their working shows."


def remarks(subject: Subject[BiomeRecord], part: str) -> tuple[str, ...]:
    """Sentences on a station, with its facts in braces as in a record's own texts."""
    return (
        *disagreements(subject.facts, part), *_against_the_record(subject, part), *_cautions(subject.facts, part),
    )  # fmt: skip


def disagreements(facts: Mapping[str, Fact], part: str) -> tuple[str, ...]:
    """A sentence for each question that schemes answer in opposite ways, and one where versions of a scheme differ."""
    return (
        *_opposed(facts, part, says_dry, "whether it is dry here"),
        *_opposed(facts, part, says_forest, "whether forest could grow here"),
        *_by_the_older_limit(facts, part),
    )


def says_dry(scheme: str, value: str) -> bool | None:
    """Whether a class of a scheme means a dry climate; None where it says nothing of it.

    The aridity classes below humid are the United Nations' drylands. A life zone is dry where demand is above precipitation;
    in the polar belt only cold makes the desert.
    """
    if scheme == "climate_class":
        return value.startswith("B")
    if scheme != "life_zone":
        return DRY[scheme].get(value)
    if value.startswith("polar"):
        return None
    return True if value.endswith(DRY_ZONES) else False if value.endswith(WET_ZONES) else None


def says_forest(scheme: str, value: str) -> bool | None:
    """Whether a class means that forest could grow; None where it says nothing of it, or either.

    Köppen drew the climates A, C and D as those of trees, B as too dry and E as too cold for them; Aw is that of savanna.
    """
    if scheme == "climate_class":
        return None if value == "Aw" else value[0] in "ACD"
    if scheme == "life_zone":
        return True if value.endswith("forest") else False if value.endswith(TREELESS) else None
    if scheme == "region":
        treeless = value in (NAMES["tundra"], NAMES["subtropical_desert"], NAMES["temperate_grassland_desert"])
        return False if treeless else True if value.endswith("forest") else None
    return None


def _opposed(
    facts: Mapping[str, Fact], part: str, says: Callable[[str, str], bool | None], about: str
) -> Iterator[str]:
    answers = {scheme: says(scheme, str(facts[f"{part}.{scheme}"].value)) for scheme in SCHEMES}
    yes, no = ([scheme for scheme, answer in answers.items() if answer is wanted] for wanted in (True, False))
    if yes and no:
        yield f"Schemes disagree {about}. Yes: {_named(yes, part)}. No: {_named(no, part)}. {ELSEWHERE}"


def _named(schemes: Iterable[str], part: str) -> str:
    return "; ".join(f"{SCHEMES[scheme]}, {{{part}.{scheme}}}" for scheme in schemes)


def _by_the_older_limit(facts: Mapping[str, Fact], part: str) -> Iterator[str]:
    letters = str(facts[f"{part}.climate_class"].value)
    older = older_class(facts[f"{part}.monthly_mean_temp"], facts[f"{part}.monthly_precip"])
    if older != letters:
        limit = shown.written(f"{OLDER_COLD_LIMIT:g}")
        yield (
            f"Older maps call a winter mild as long as its coldest month stays above {limit} °C. "
            f"By them the climate class here is {older}, not {letters}."
        )


def _against_the_record(subject: Subject[BiomeRecord], part: str) -> Iterator[str]:
    """What a reader would notice: the biome's own region or classes are not those of the station."""
    record = subject.record
    if own := usual_region(record, subject.facts[f"{part}.region"].value):
        yield f"This biome usually lies in another region of the temperature-rainfall map: {own}, not {{{part}.region}}."
    if subject.facts[f"{part}.in_usual_class"].value is False:
        usual = listed(dict.fromkeys(letters for usual in record.usual_class for letters in usual.classes))
        yield f"The works that this page cites name other climate classes for this biome ({usual}) than {{{part}.climate_class}}."


def _cautions(facts: Mapping[str, Fact], part: str) -> Iterator[str]:
    if facts[f"{part}.monthly_pet"].value is None:
        return
    if is_beyond_the_formula(facts[f"{part}.monthly_mean_temp"]):
        yield (
            "The formula for potential evapotranspiration fails in so cold a climate: "
            f"{{{part}.potential_evapotranspiration}} is far too much. "
            "Do not trust what is made of it: aridity index, actual evapotranspiration and deficit."
        )
    if facts[f"{part}.months_below_freezing"].value:
        yield (
            f"The water balance does not follow snow. What falls in {{{part}.months_below_freezing}} counts as water at once; "
            "really it waits for the thaw."
        )
