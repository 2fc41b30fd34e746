"""The station that questions are about, with short names for its facts and its months."""

from __future__ import annotations

from dataclasses import dataclass

from generator.kind import Subject
from generator.kinds.biome.charts import has_southern_summer
from generator.kinds.biome.record import BiomeRecord, Station
from generator.kinds.biome.scheme_facts import COLD
from generator.quantities import shown
from generator.quantities.fact import Fact
from generator.questions.misconception import Catalogue

COLD_FORMULA = "in a cold climate the formula gives far more evapotranspiration than there is"
LEAST_SEASON = 3.0
"""Annual temperature range [K] below which the months are all nearly equally warm."""


@dataclass(frozen=True)
class AskedStation:
    """One station of a record, and the catalogue that wrong answers are named from."""

    subject: Subject[BiomeRecord]
    station: Station
    catalogue: Catalogue

    @property
    def place(self) -> str:
        return self.station.label

    @property
    def is_unseen(self) -> bool:
        """Whether its numbers stand in questions alone."""
        return self.station.use != "page"

    def fact(self, name: str) -> Fact:
        return self.subject.facts[f"{self.station.id}.{name}"]

    def months(self, name: str) -> tuple[int, ...]:
        """The months that a fact names, 1 to 12."""
        value = self.fact(name).value
        return tuple(int(month) for month in value) if isinstance(value, tuple) else ()

    def one_month(self, name: str) -> int | None:
        """The month that a fact names, where it names a single one."""
        found = self.months(name)
        return found[0] if len(found) == 1 else None

    def temp(self, month: int) -> float:
        """Mean temperature [degC]."""
        return self.fact("monthly_mean_temp").series[month - 1]

    def precip(self, month: int) -> float:
        """Precipitation [mm]."""
        return self.fact("monthly_precip").series[month - 1]

    def told(self, name: str, month: int) -> str:
        """The value of a monthly fact in one month, as shown."""
        fact = self.fact(name)
        return fact.unit.after(fact.shown_members[month - 1]) if fact.unit else fact.shown_members[month - 1]

    @property
    def year(self) -> tuple[int, ...]:
        """The months in the order of the climate diagram: from July where the southern summer stands in the middle."""
        return (*range(7, 13), *range(1, 7)) if has_southern_summer(self.station) else tuple(range(1, 13))

    @property
    def is_steady(self) -> bool:
        """Whether it makes no sense to ask for a warmest month."""
        return self.fact("annual_temp_range").number < LEAST_SEASON

    @property
    def no_balance(self) -> str:
        """Why the water balance is not asked for: it is not known, or the formula is out of its depth; nothing where it can be."""
        if self.fact("aridity_class").value == COLD:
            return COLD_FORMULA
        return self.fact("monthly_pet").undefined_because


def name(month: int) -> str:
    """January for 1, also for 13."""
    return shown.MONTHS[(month - 1) % 12]


def names(months: tuple[int, ...]) -> tuple[str, ...]:
    """The month names, one by one."""
    return tuple(name(month) for month in months)


def beside(*months: int) -> tuple[int, ...]:
    """The months before and after each."""
    return tuple((month + step - 1) % 12 + 1 for month in months for step in (-1, 1))


def opposite(*months: int) -> tuple[int, ...]:
    """The months half a year away."""
    return tuple((month + 5) % 12 + 1 for month in months)


def begin(months: tuple[int, ...]) -> int | None:
    """The first month of a single run; none where all months belong to it, or none, or there are two runs."""
    found = [month for month in months if beside(month)[0] not in months]
    return found[0] if len(found) == 1 else None


def after(months: tuple[int, ...]) -> int | None:
    """The first month behind a single run; none as for `begin`."""
    found = [beside(month)[1] for month in months if beside(month)[1] not in months]
    return found[0] if len(found) == 1 else None
