"""Questions on the processes of a cycle: who causes them, and which form of matter turns into which in a scene."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from generator.kind import in_sentence
from generator.kinds.cycle.asking import Asking, formula, is_single, listed
from generator.kinds.cycle.budget_facts import significant_figures
from generator.kinds.cycle.record import Flux
from generator.quantities.expression import Expression
from generator.quantities.fact import computed
from generator.quantities.units import unit
from generator.questions.making import FEWEST_PAIRS, Draft, Wrong, as_option, choice, drawn, matching, number_entry
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Pair, Rejected

MOST_PAIRS, MOST_JOINED = 4, 3


class ProcessQuestions(Asking):
    """The share of people, and forms before and after."""

    def brought_in(self) -> Made:
        """How much people bring in from outside, among what nature brings in and what else people drive.

        Fluxes of one process may lead to plots that lie side by side, and their rates by area cannot be added up.
        """
        outside = set(self.record.outside)
        entering = [flux for flux in self.record.fluxes if flux.start in outside and flux.end not in outside]
        people = [flux for flux in entering if flux.cause == "people"]
        if len({flux.process_id for flux in people}) < max(2, len(people)) or len(people) == len(entering):
            return Rejected("brought_in", "people do not bring matter in by several processes, beside those of nature")
        if not all(is_single(flux) and flux.cause != "both" for flux in entering):
            return Rejected("brought_in", "a flux that enters from outside is a range, or driven by nature and people together")
        others = [flux for flux in self.record.fluxes if flux.cause == "people" and flux not in people and is_single(flux)]
        given = {flux.symbol: self.fact(flux.id, "rate") for flux in (*entering, *others)}
        ours, all_, widest = _sum(people), _sum(entering), max(people, key=lambda flux: flux.rate.value or 0.0)
        total = computed("brought_in", "Brought in by people", Expression(ours), given, unit(self.record.units.flux), figures=significant_figures(self.record))
        names = listed(f"“{flux.label}”" for flux in people)
        draft = Draft(
            id="brought_in",
            prompt=f"How much {self.matter} do people bring in from outside in a year, all their fluxes together?",
            solution=f"People bring in {names}: {' + '.join(given[flux.symbol].shown_exactly for flux in people)} = {total.shown_exactly}.",
            hints=("Dashed boxes lie outside: look for all arrows that start there.", "Of these arrows keep the broken ones, which are driven by people, and add them up."),
        )
        return number_entry(
            draft, total, given,
            (
                Mistake("cyc.cause-overlooked", all_, "adding all that comes in, whatever its cause", "Keep only the broken arrows among them: people drive these."),
                Mistake("cyc.output-as-input", _sum([*people, *others]), "counting every flux that people cause, wherever it leads"),
                Mistake("cyc.largest-only", widest.symbol, f"counting “{widest.label}” alone", "People bring in more than that. Add every broken arrow that starts at a dashed box."),
                Mistake("cyc.cause-overlooked", f"{all_} - ({ours})", "counting what nature brings in", "Those arrows are whole. Add the broken ones, which people drive."),
            ),
            self.catalogue, otherwise="Which arrows start at a dashed box? And which of them are broken?",
        )  # fmt: skip

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
        top, ours = " + ".join(driven), listed(f"“{flux.label}”" for flux in fluxes if flux.cause == "people")
        draft = Draft(
            id="human_share",
            prompt=f"Going by the causes in the table under the diagram, what percentage of all {name} is due to people?",
            solution=f"People cause {ours}: {top if len(driven) == 1 else f'({top})'} ÷ ({' + '.join((*driven, *natural))}) = {share.shown}.",
            hints=(f"The table of processes tells which fluxes belong to {name}, the table of the diagram what causes each.", f"Fluxes of {name} that people cause, divided by all fluxes of {name} = ?"),
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
        if len(entering) > MOST_JOINED:
            return Rejected("human_share", f"more than {MOST_JOINED} fluxes enter from outside, too many to be named in one option")
        if not any(flux.cause == "people" for flux in self.record.fluxes if flux not in entering):
            return self._inputs(entering, people)
        draft = Draft(
            id="human_share",
            prompt=f"Which of these fluxes bring {self.matter} into the budget from outside because of people?",
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
            prompt=f"Which of these fluxes bring {self.matter} into the budget from outside?",
            solution=f"{listed(flux.label for flux in entering)} {'start' if len(entering) > 1 else 'starts'} at {_boxes(self.names[flux.start] for flux in entering)}, outside the budget.",
            hints=("Dashed boxes lie outside.", "Look for every arrow that starts at a dashed box, whatever the cause."),
        )
        alone = [Wrong(f"{listed(f.label for f in people)} alone", "cyc.natural-input", "", "Whatever its cause, each arrow that starts at a dashed box brings matter in.")] if len(people) < len(entering) else []
        return choice(draft, listed(flux.label for flux in entering), [*alone, *self._no_inputs()], self.catalogue, salt=self.subject.id)

    def _no_inputs(self) -> list[Wrong]:
        """Fluxes that start inside: those that stay there, and those that leave."""
        outside = set(self.record.outside)
        inner = [flux for flux in self.record.fluxes if flux.start not in outside and flux.end not in outside]
        leaving = [flux for flux in self.record.fluxes if flux.start not in outside and flux.end in outside]
        wrong = [Wrong(listed(f.label for f in inner[:2]), "cyc.inner-input", "Between two reservoirs nothing comes in from outside.")] if inner else []
        return wrong + ([Wrong(listed(f.label for f in leaving[:2]), "cyc.output-as-input", "What ends outside leaves the budget.")] if leaving else [])

    def match_forms(self) -> Made:
        """Scenes with the change of form that goes on in each; a way back that no process takes fits nothing, best one from a form that none starts with.

        The names of the processes are not asked about: a table of the page tells their forms.
        """
        told = [flux for flux in self.record.fluxes if flux.scene and flux.starts_as and flux.ends_as]
        by_forms = {_forms(flux): flux for flux in reversed(told)}
        asked = drawn(by_forms.values(), self.subject.id, "match_forms")[:MOST_PAIRS]
        all_forms, starts = {_forms(flux) for flux in self.record.fluxes}, {flux.starts_as for flux in self.record.fluxes}
        back = sorted((flux for flux in asked if (flux.ends_as, flux.starts_as) not in all_forms), key=lambda flux: flux.ends_as in starts)
        if len(asked) < FEWEST_PAIRS or not back:
            return Rejected("match_forms", "fewer than three processes with forms of their own are told as a `scene:`")
        draft = Draft(
            id="match_forms", needs=Needs.BOTH,
            prompt=f"What happens to {self.matter} in each scene? Match it with the form that goes in and the form that comes out.",
            solution=f"One of the answers fits none of the lines. {' '.join(f'{_scene(flux)}: {_goes_on(flux)}.' for flux in asked)}",
            hints=("Who or what is at work in each scene? Which process is it?", "What goes in stands before the arrow, what comes out behind it. One answer is left over: no scene leads that way."),
        )  # fmt: skip
        pairs = [Pair(_scene(flux), _arrow(*_forms(flux)), f"This is {_goes_on(flux)}.") for flux in asked]
        return matching(draft, pairs, [_arrow(back[0].ends_as, back[0].starts_as)], salt=self.subject.id)


def _sum(fluxes: Sequence[Flux]) -> str:
    return " + ".join(flux.symbol for flux in fluxes)


def _boxes(names: Iterable[str]) -> str:
    """Each box once."""
    return listed(f"“{name}”" for name in dict.fromkeys(names))


def _these(fluxes: list[Flux]) -> str:
    return "These come" if len(fluxes) > 1 else "This comes"


def _arrow(start: str | None, end: str | None) -> str:
    return f"{_form(start)} → {_form(end)}"


def _forms(flux: Flux) -> tuple[str | None, str | None]:
    return flux.starts_as, flux.ends_as


def _goes_on(flux: Flux) -> str:
    """Which process it is, and whose work."""
    return f"{in_sentence(flux.process or flux.label)}{f', done by {flux.done_by}' if flux.done_by else ''}"


def _scene(flux: Flux) -> str:
    return as_option(flux.scene or "")


def _form(text: str | None) -> str:
    return formula(text or "")
