"""Questions on matter that is counted as another substance; each states the molar masses, or the factor, that it is to be answered with."""

from __future__ import annotations

from generator.kinds.cycle.asking import Asking, formula
from generator.kinds.cycle.record import PPM, Conversion, Reservoir
from generator.kinds.cycle.substance_facts import carbon_per_ppm, molar_mass_fact, substance_of
from generator.quantities.amount import Amount
from generator.quantities.fact import Fact, stated
from generator.quantities.text import sentence
from generator.quantities.units import unit
from generator.questions.making import Draft, number_entry
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Rejected
from generator.science.substances import shared_atoms

_UNCHANGED = {("C", "CO2"): "carb.c-co2", ("N", "NO3"): "nit.no3-n", ("NO3", "N"): "nit.no3-n"}
"""Which wrong idea lies behind leaving a mass as it is; of others the general one."""


class SubstanceQuestions(Asking):
    """One on the first conversion of a single number."""

    def conversion(self) -> Made:
        """The mass of the same matter in another form."""
        single = [one for one in self.record.conversions if self.facts[one.of].is_number and self.facts[one.of].low is None]
        if not single:
            return Rejected("conversion", "nothing that is stated as one number is counted as another substance")
        return self._in_the_air(single[0]) if single[0].substance == PPM else self._as_substance(single[0])

    def _said(self, quantity: Fact) -> str:
        part = quantity.id.partition(".")[0]
        label, does = next((one.label, "holds" if isinstance(one, Reservoir) else "carries") for one in (*self.record.reservoirs, *self.record.fluxes) if one.id == part)
        return f"“{label}” {does} {quantity.shown_exactly}."

    def _as_substance(self, conversion: Conversion) -> Made:
        quantity, right = self.facts[conversion.of], self.facts[conversion.fact]
        assert quantity.unit is not None
        old = substance_of(quantity.unit)
        old_mass, new_mass = molar_mass_fact(old), molar_mass_fact(conversion.substance)
        count = shared_atoms(old, conversion.substance)
        given = {"mass": quantity, "new": new_mass, "old": old_mass, "atoms": stated("atoms", "Atoms", Amount(value=count, written=f"{count:g}"), unit(""))}
        draft = Draft(
            id="conversion",
            prompt=(
                f"{self._said(quantity)} What mass of {formula(conversion.substance)} a year holds as much {self.matter}? "
                f"Molar masses: {formula(old)} {old_mass.shown_number} g mol⁻¹, {formula(conversion.substance)} {new_mass.shown_number} g mol⁻¹."
            ),
            solution=f"{sentence(right.working.text(right.shown_exactly)) if right.working else ''}: the compound also has the mass of its other atoms.",
        )
        return number_entry(
            draft, right, given,
            (
                Mistake(_UNCHANGED.get((old, conversion.substance), "cyc.element-compound"), "mass", "leaving the mass as it is"),
                Mistake("cyc.molar-inverse", "mass * old / new", "turning the molar masses round"),
                Mistake("cyc.element-compound", "mass * new / old", "leaving out how many atoms there are in the compound"),
            ),
            self.catalogue, otherwise="For the same number of molecules or atoms, which of the two weighs more? So must the number grow or shrink?",
            kept=(old_mass.id, new_mass.id, "atoms"),
        )  # fmt: skip

    def _in_the_air(self, conversion: Conversion) -> Made:
        quantity, right, factor = self.facts[conversion.of], self.facts[conversion.fact], carbon_per_ppm()
        draft = Draft(
            id="conversion",
            prompt=(
                f"{self._said(quantity)} How many ppm of carbon dioxide is that in the whole air? "
                f"Use the factor of carbon budgets: {factor.shown_exactly}."
            ),
            solution=f"{right.working.text(right.shown_exactly) if right.working else ''}.",
        )
        mistakes = (
            Mistake("cyc.ppm-times", "mass * factor", "multiplying by the factor"),
            Mistake("carb.ppm", "mass", "taking tonnes of carbon for ppm"),
        )
        given = {"mass": quantity, "factor": factor}
        return number_entry(draft, right, given, mistakes, self.catalogue, otherwise="The factor is the carbon of 1 ppm. How often is it in the whole mass?")
