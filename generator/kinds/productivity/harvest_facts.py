"""Every number of a series of harvests: plot by plot, harvest by harvest, then what grazers took."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from generator.kinds.productivity.record import Cut, Harvest, Plot, ProductivityRecord
from generator.kinds.productivity.samples import Sample, made, sample, told_apart, within
from generator.quantities import shown
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import Unit, unit
from generator.records.fields import stated_amount
from generator.science import harvest as methods
from generator.science import replicates

GRAZING = "grazing"
"""The part that facts of what grazers took are about, where there is a plot of each sort."""
G, M2, BIOMASS, DAYS, DRY, CARBON, ENERGY, PERCENT = (
    unit(label) for label in ("g", "m2", "g/m2", "d", "g/m2/d", "g C/m2/d", "kJ/m2/d", "percent")
)  # fmt: skip
NOT_MEASURED = "not known: a harvest does not show what the plants respired"
NO_SPREAD_OF_RESPIRATION = "not known: respiration is stated without its uncertainty"


@dataclass(frozen=True)
class Stand:
    """What stood on a square metre at one harvest."""

    cut: Cut
    sample: Sample
    day: Fact
    biomass: Fact
    error: Fact


def harvest_facts(record: ProductivityRecord, series: Harvest) -> Iterator[Fact]:
    """What all plots share, each plot, and what grazers took where there is a plot with and one without them."""
    yield from _Series(record, series).facts()


class _Series:
    """The harvests with what all of them share."""

    def __init__(self, record: ProductivityRecord, series: Harvest) -> None:
        self.series, self.figures = series, record.figures or shown.FIGURES
        area = self._stated("quadrat_area", "Area of a quadrat", stated_amount(series.quadrat_area), unit(record.units.quadrat_area))
        if record.units.quadrat_area != "m2":
            area = computed(area.id, area.name, Expression("quadrat_area"), {"quadrat_area": area}, M2, figures=self.figures)
        self.area = area
        self.carbon = self._stated("carbon_fraction", "Carbon in dry matter, by convention", stated_amount(series.carbon_fraction), unit("g C/g"))
        self.energy = self._stated("energy_content", "Energy in dry matter, by convention", stated_amount(series.energy_content), unit("kJ/g"))

    def facts(self) -> Iterator[Fact]:
        yield from (self.area, self.carbon, self.energy)
        by_grazing: dict[str, dict[str, Fact]] = {}
        for plot in self.series.plots:
            stands = [self.stand(plot, cut) for cut in plot.harvests]
            for stand in stands:
                yield from (*stand.sample.facts, stand.biomass, stand.error)
            yield from self.between(plot, stands)
            whole = {fact.id.removeprefix(f"{plot.id}."): fact for fact in self.whole(plot, stands)}
            yield from whole.values()
            if plot.grazing:
                by_grazing[plot.grazing] = whole
        if len(by_grazing) == 2:
            yield from self.grazed(by_grazing["kept_out"], by_grazing["open"])

    def _stated(self, fact_id: str, title: str, amount: Amount, of: Unit) -> Fact:
        return stated(fact_id, title, amount, of, figures=self.figures)

    def stand(self, plot: Plot, cut: Cut) -> Stand:
        """Dry mass of a quadrat, and biomass of a square metre."""
        ids = (f"{plot.id}.dry_mass_{cut.id}", f"{plot.id}.spread_{cut.id}", f"{plot.id}.error_{cut.id}")
        found = sample(ids, f"Dry mass of a quadrat, {cut.label}", cut.dry_mass, G, self.figures)
        day = self._stated(f"{plot.id}.day_{cut.id}", f"Day of the harvest, {cut.label}", stated_amount(cut.day), DAYS)
        title, method = f"Biomass, {cut.label}", methods.BIOMASS_OF_AREA
        biomass = made(f"{plot.id}.biomass_{cut.id}", title, method, {"dry_mass": found.mean, "quadrat_area": self.area}, BIOMASS, self.figures)
        given = {"standard_error": found.error, "quadrat_area": self.area}
        error = computed(
            f"{plot.id}.area_error_{cut.id}", f"Standard error of the biomass, {cut.label}", Expression("standard_error / quadrat_area"), given,
            BIOMASS, figures=self.figures,
        )  # fmt: skip
        return Stand(cut, found, day, within(biomass, error), error)

    def between(self, plot: Plot, stands: list[Stand]) -> Iterator[Fact]:
        """What grew from each harvest to the next, where there are more than two."""
        for earlier, later in pairwise(stands) if len(stands) > 2 else ():
            ids = (f"{plot.id}.length_{later.cut.id}", f"{plot.id}.growth_{later.cut.id}", f"{plot.id}.rate_error_{later.cut.id}")
            yield from self.growth(ids, earlier, later, f", {earlier.cut.label} to {later.cut.label}")

    def growth(self, ids: tuple[str, str, str], earlier: Stand, later: Stand, words: str) -> Iterator[Fact]:
        """Duration, net production and its standard error from one harvest to a later one."""
        ends = {"later": later.day, "earlier": earlier.day}
        days = computed(ids[0], f"Time{words}", Expression("later - earlier"), ends, DAYS, figures=self.figures)
        if days.number.is_integer():
            days = replace(days, figures=max(1, shown.whole_digits(days.number)))
        errors = {"first_error": later.error, "second_error": earlier.error, "duration": days}
        error = made(ids[2], f"Standard error of net production{words}", replicates.STANDARD_ERROR_OF_RATE, errors, DRY, self.figures)
        given = {"later_biomass": later.biomass, "earlier_biomass": earlier.biomass, "duration": days}
        net = made(ids[1], f"Net production above ground{words}", methods.HARVEST_NET_PRODUCTION, given, DRY, self.figures)
        yield from (days, within(net, error), error)

    def whole(self, plot: Plot, stands: list[Stand]) -> Iterator[Fact]:
        """From the first harvest to the last: what was gained, net production, respiration, gross production, carbon and energy."""
        first, last = stands[0], stands[-1]
        ends = {"last": last.biomass, "first": first.biomass}
        yield computed(f"{plot.id}.gain", "Biomass gained, first harvest to last", Expression("last - first"), ends, BIOMASS, figures=self.figures)
        ids = (f"{plot.id}.duration", f"{plot.id}.net_production", f"{plot.id}.net_error")
        days, net, net_error = self.growth(ids, first, last, ", first harvest to last")
        yield from (days, net, net_error, told_apart(f"{plot.id}.net_told_apart", "Net production told apart from zero", net, net_error))
        amount = plot.respiration or Amount.unknown()
        respired = self._stated(f"{plot.id}.respiration", "Respiration, measured in another way", amount, DRY)
        if amount.value is None:
            respired = Fact(id=respired.id, name="Respiration", value=None, unit=DRY, undefined_because=NOT_MEASURED)
        given = {"net_production": net, "respiration": respired}
        gross = made(f"{plot.id}.gross_production", "Gross production", methods.GROSS_FROM_NET, given, DRY, self.figures)
        gross_error = self.gross_error(plot, net_error, respired)
        yield from (respired, within(gross, gross_error), gross_error)
        for name, title, method, factor, of in (
            ("net_carbon", "Net production as carbon", methods.CARBON_FROM_DRY_MATTER, {"carbon_fraction": self.carbon}, CARBON),
            ("net_energy", "Net production as energy", methods.ENERGY_FROM_DRY_MATTER, {"energy_content": self.energy}, ENERGY),
        ):
            yield made(f"{plot.id}.{name}", title, method, {"dry_matter": net} | factor, of, self.figures)

    def gross_error(self, plot: Plot, net_error: Fact, respired: Fact) -> Fact:
        """Undefined where respiration, or its uncertainty, is not known."""
        fact_id, title = f"{plot.id}.gross_error", "Standard error of gross production"
        because = respired.undefined_because or ("" if respired.plus_minus is not None else NO_SPREAD_OF_RESPIRATION)
        if because or respired.plus_minus is None:
            return Fact(id=fact_id, name=title, value=None, unit=DRY, undefined_because=because)
        spread = Fact(id="respiration_uncertainty", name="Uncertainty of respiration", value=respired.plus_minus, unit=DRY, figures=self.figures)
        given = {"first_error": net_error, "second_error": spread}
        return made(fact_id, title, replicates.STANDARD_ERROR_OF_DIFFERENCE, given, DRY, self.figures)

    def grazed(self, kept_out: dict[str, Fact], grazed: dict[str, Fact]) -> Iterator[Fact]:
        """What grazers took, and what part of the growth that is."""
        net, method = kept_out["net_production"], replicates.STANDARD_ERROR_OF_DIFFERENCE
        errors = {"first_error": kept_out["net_error"], "second_error": grazed["net_error"]}
        error = made(f"{GRAZING}.eaten_error", "Standard error of what grazers ate", method, errors, DRY, self.figures)
        plots = {"ungrazed_production": net, "grazed_production": grazed["net_production"]}
        eaten = within(made(f"{GRAZING}.eaten", "Eaten by grazers", methods.EATEN_BY_GRAZERS, plots, DRY, self.figures), error)
        yield from (eaten, error, told_apart(f"{GRAZING}.eaten_told_apart", "What was eaten told apart from zero", eaten, error))
        if net.number > 0:
            share = Expression("eaten / ungrazed_production")
            given = {"eaten": eaten, "ungrazed_production": net}
            yield computed(f"{GRAZING}.eaten_share", "Part of the growth that grazers ate", share, given, PERCENT, figures=self.figures)
