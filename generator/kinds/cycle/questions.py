"""Questions on a cycle: the first six of its arithmetic and its processes that come out fair, then what stocks do and substances weigh."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import Subject
from generator.kinds.cycle.budget_questions import BudgetQuestions
from generator.kinds.cycle.process_questions import ProcessQuestions
from generator.kinds.cycle.record import CycleRecord
from generator.kinds.cycle.stock_questions import StockQuestions
from generator.kinds.cycle.substance_questions import SubstanceQuestions
from generator.questions.making import enough
from generator.questions.misconception import Catalogue
from generator.questions.question import Made, Rejected


def questions(subject: Subject[CycleRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on the reservoirs whose numbers are known best; further ones only where the record gives rise to them."""
    budget, process = BudgetQuestions(subject, catalogue), ProcessQuestions(subject, catalogue)
    first = enough(
        (
            budget.outflow(), budget.balance(), budget.turnover_time(), process.human_share(), *process.processes(),
            budget.inflow(), budget.longest_stay(),
        )
    )  # fmt: skip
    stocks, substance = StockQuestions(subject, catalogue), SubstanceQuestions(subject, catalogue)
    further = (stocks.falling_inflow(), stocks.after_years(), substance.conversion())
    return (*first, *(made for made in further if not isinstance(made, Rejected)))
