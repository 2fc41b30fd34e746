"""Questions on the processes of a cycle: who causes them, and which form of matter turns into which."""

from __future__ import annotations

from generator.kind import in_sentence
from generator.kinds.cycle.asking import Asking, formula, is_single, listed
from generator.kinds.cycle.budget_facts import fluxes_out
from generator.kinds.cycle.record import Flux
from generator.questions.making import FEWEST_PAIRS, Draft, Wrong, choice, drawn, matching, number_entry
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Pair, Rejected

MOST_PAIRS = 4


class ProcessQuestions(Asking):
    """The share of people, and forms before and after."""

    def human_share(self) -> Made:
        """On the largest flux with people behind it, compared with all that enters its reservoir from outside."""
        mixed = [
            process for process in dict.fromkeys(flux.process_id for flux in self.record.fluxes)
            if 0.0 < (self.fact(process, "human_share").value or 0.0) < 100.0
            and all(is_single(flux) for flux in self.record.fluxes if flux.process_id == process)
        ]  # fmt: skip
        return self._share_of_process(mixed[0]) if mixed else self._share_of_inputs()

    def _share_of_process(self, process: str) -> Made:
        fluxes = [flux for flux in self.record.fluxes if flux.process_id == process]
        share = self.fact(process, "human_share")
        people = " + ".join(flux.symbol for flux in fluxes if flux.cause == "people")
        nature = " + ".join(flux.symbol for flux in fluxes if flux.cause == "nature")
        name = in_sentence(fluxes[0].process or process)
        driven, natural = ([self.fact(flux.id, "rate").shown_exactly for flux in fluxes if (flux.cause == "people") is ours] for ours in (True, False))
        top = " + ".join(driven)
        draft = Draft(
            id="human_share",
            prompt=f"Nature causes some fluxes of {name}, people cause others. What share of all {name} is due to people, in percent?",
            solution=f"{top if len(driven) == 1 else f'({top})'} ÷ ({' + '.join((*driven, *natural))}) = {share.shown}.",
            hints=("Look up in the table which fluxes belong to this process, and which of them people cause.", "Fluxes of people, divided by all fluxes of the process = ?"),
        )
        return number_entry(
            draft, share, {flux.symbol: self.fact(flux.id, "rate") for flux in fluxes},
            (
                Mistake("cyc.share-of-rest", f"({people}) / ({nature})", "dividing by the natural fluxes alone"),
                Mistake("nit.complement", f"({nature}) / ({people} + {nature})", "giving the natural share"),
                Mistake("en.eff-fraction", f"({people}) / ({people} + {nature}) / 100", "leaving out the factor 100"),
            ),
            self.catalogue, otherwise="What is the whole here? And which part of it do people cause?",
        )  # fmt: skip

    def _share_of_inputs(self) -> Made:
        outside = set(self.record.outside)
        entering = [flux for flux in self.record.fluxes if flux.start in outside]
        if any(flux.cause == "both" for flux in entering):
            return Rejected("human_share", "nature and people together drive a flux that enters from outside")
        people = [flux for flux in entering if flux.cause == "people"]
        if not people:
            return Rejected("human_share", "people cause no flux that enters from outside")
        if not any(flux.cause == "people" for flux in self.record.fluxes if flux not in entering):
            return self._inputs(entering, people)
        draft = Draft(
            id="human_share",
            prompt=f"Which of these fluxes bring {self.matter} in from outside because of people?",
            solution=f"{listed(flux.label for flux in people)} {'come' if len(people) > 1 else 'comes'} from outside, and people are the cause.",
            hints=("Dashed boxes lie outside: look for arrows that start there.", "Of these arrows keep the broken ones, which are driven by people."),
        )
        natural = [flux for flux in entering if flux.cause == "nature"]
        wrong = [Wrong(listed(f.label for f in natural[:2]), "cyc.natural-input", f"{_these(natural[:2])} from outside, but by nature.")] if natural else []
        return choice(draft, listed(flux.label for flux in people), [*wrong, *self._no_inputs()], self.catalogue, salt=self.subject.id)

    def _inputs(self, entering: list[Flux], people: list[Flux]) -> Made:
        """Where people cause nothing else, their name alone would tell: so all that enters is asked for."""
        draft = Draft(
            id="inputs",
            prompt=f"Which of these fluxes bring {self.matter} in from outside?",
            solution=f"{listed(flux.label for flux in entering)} {'come' if len(entering) > 1 else 'comes'} from outside.",
            hints=("Dashed boxes lie outside.", "Look for every arrow that starts at a dashed box, whatever the cause."),
        )
        alone = [Wrong(f"{listed(f.label for f in people)} alone", "cyc.natural-input")] if len(people) < len(entering) else []
        return choice(draft, listed(flux.label for flux in entering), [*alone, *self._no_inputs()], self.catalogue, salt=self.subject.id)

    def _no_inputs(self) -> list[Wrong]:
        """Fluxes that start inside: those that stay there, and those that leave."""
        outside = set(self.record.outside)
        inner = [flux for flux in self.record.fluxes if flux.start not in outside and flux.end not in outside]
        leaving = [flux for flux in self.record.fluxes if flux.start not in outside and flux.end in outside]
        wrong = [Wrong(listed(f.label for f in inner[:2]), "cyc.inner-input", "Between two reservoirs nothing comes in from outside.")] if inner else []
        return wrong + ([Wrong(listed(f.label for f in leaving[:2]), "cyc.output-as-input", "What ends outside leaves the budget.")] if leaving else [])

    def processes(self) -> tuple[Made, Made]:
        """Which process leads from one form to another, and a match of processes with their forms.

        The forms of a single process are not asked for: most names tell them, as that of evaporation does.
        """
        known = [flux for flux in self.record.fluxes if flux.starts_as and flux.ends_as and flux.process and flux.done_by]
        different = {flux.process: flux for flux in reversed(known)}
        if len(different) < 3:
            because = "fewer than three processes state what they start and end with, and who does them"
            return Rejected("which_process", because), Rejected("match_forms", because)
        by_life = [flux for flux in different.values() if flux.cause == "nature"] or list(different.values())
        first = by_life[-1]
        same = {flux.process for flux in known if (flux.starts_as, flux.ends_as) == (first.starts_as, first.ends_as)}
        return self._which_process(first, different, same), self._match_forms(different)

    def _match_forms(self, different: dict[str | None, Flux]) -> Made:
        """Processes with their forms; a way back that none of them takes fits nothing, best one from a form that no process starts with."""
        by_forms = {(flux.starts_as, flux.ends_as): flux for flux in different.values()}
        asked = drawn(by_forms.values(), self.subject.id, "match_forms")[:MOST_PAIRS]
        starts = {flux.starts_as for flux in self.record.fluxes}
        back = sorted((flux for flux in asked if (flux.ends_as, flux.starts_as) not in by_forms), key=lambda flux: flux.ends_as in starts)
        if len(asked) < FEWEST_PAIRS or not back:
            return Rejected("match_forms", "fewer than three processes have forms of their own")
        pairs = [Pair(str(flux.process).capitalize(), _arrow(flux.starts_as, flux.ends_as), f"Done by: {flux.done_by}.") for flux in asked]
        draft = Draft(
            id="match_forms", needs=Needs.KNOWLEDGE,
            prompt="Match each process with the form that goes in and the form that comes out.",
            solution=f"One of the answers fits none of the lines. {' '.join(f'{str(flux.process).capitalize()}: {_arrow(flux.starts_as, flux.ends_as)}.' for flux in asked)}",
            hints=("Think of who does it: what do they take in, and what do they give off?", "What goes in stands before the arrow, what comes out behind it. One answer is left over: none of these processes leads that way."),
        )  # fmt: skip
        return matching(draft, pairs, [_arrow(back[0].ends_as, back[0].starts_as)], salt=self.subject.id)

    def exits(self) -> Made:
        """Reservoirs with a flux that leaves each; one that comes from outside fits nothing.

        A flux without a number may start outside only because its budget is not known, as snow on ice does: it would fit the air.
        """
        outside = [flux.label for flux in self.record.fluxes if flux.start in self.record.outside and self.fact(flux.id, "rate").value is not None]
        leaving = {r.label: [f for f in drawn(fluxes_out(self.record, r.id), self.subject.id, "exits") if not _shares_a_word(f.label, r.label)] for r in self.record.reservoirs}
        found = {label: fluxes[0] for label, fluxes in leaving.items() if fluxes}
        if not outside:
            return Rejected("exits", "no flux with a number comes from outside")
        if len(found) < FEWEST_PAIRS or len(leaving) < len(self.record.reservoirs):
            return Rejected("exits", "fewer than three reservoirs have an outflow whose name does not give them away")
        draft = Draft(
            id="exits", needs=Needs.DATA,
            prompt=f"Go by the arrows of the diagram. Match each reservoir with a flux that carries {self.matter} out of it.",
            solution=f"One of the answers fits none of the lines: {in_sentence(outside[0])} comes from outside. An arrow starts at the box that it empties.",
            hints=("Look at each arrow: which of its ends has no head?", "One flux starts at a dashed box, outside the budget: it fits no reservoir."),
        )  # fmt: skip
        pairs = [Pair(label, flux.label, f"Look for an arrow that starts at “{label}”; one that ends there brings {self.matter} in.") for label, flux in list(found.items())[:MOST_PAIRS]]
        return matching(draft, pairs, outside[:1], salt=self.subject.id)

    def _which_process(self, flux: Flux, different: dict[str | None, Flux], same: set[str | None]) -> Made:
        """`same` are the processes that would be a right answer too, the flux's own among them."""
        right = str(flux.process)
        draft = Draft(
            id="which_process",
            prompt=f"Which process turns {_form(flux.starts_as)} into {_form(flux.ends_as)}?",
            solution=f"{right.capitalize()} turns {_form(flux.starts_as)} into {_form(flux.ends_as)}. Done by: {flux.done_by}.",
            needs=Needs.KNOWLEDGE,
        )
        wrong = [
            Wrong(str(other.process).capitalize(), "nit.swap-process", f"{str(other.process).capitalize()} turns {_forms(other)}.")
            for other in different.values()
            if other.process not in same
        ]
        return choice(draft, right.capitalize(), wrong[:3], self.catalogue, salt=self.subject.id)


def _these(fluxes: list[Flux]) -> str:
    return "These come" if len(fluxes) > 1 else "This comes"


def _arrow(start: str | None, end: str | None) -> str:
    return f"{_form(start)} → {_form(end)}"


def _shares_a_word(one: str, other: str) -> bool:
    stems = [{word[:5] for word in label.casefold().replace(",", "").split()} for label in (one, other)]
    return bool(stems[0] & stems[1])


def _forms(flux: Flux) -> str:
    return f"{_form(flux.starts_as)} into {_form(flux.ends_as)}"


def _form(text: str | None) -> str:
    return formula(text or "")
