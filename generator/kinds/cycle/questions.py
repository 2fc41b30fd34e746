"""Questions on a cycle: its arithmetic, the way of matter, statements and readings, what stocks do, what substances weigh."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import Subject
from generator.kinds.cycle.budget_questions import BudgetQuestions
from generator.kinds.cycle.chart_questions import ChartQuestions
from generator.kinds.cycle.order_questions import OrderQuestions
from generator.kinds.cycle.process_questions import ProcessQuestions
from generator.kinds.cycle.record import CycleRecord
from generator.kinds.cycle.statement_questions import StatementQuestions
from generator.kinds.cycle.stock_questions import StockQuestions
from generator.kinds.cycle.substance_questions import SubstanceQuestions
from generator.questions.making import enough, first_made
from generator.questions.misconception import Catalogue
from generator.questions.question import Made, Rejected

FEWEST, WANTED, MOST_READINGS = 6, 9, 2
"""What every record should have, how many are filled up with questions that are much like others, and how many are read off charts."""


def questions(subject: Subject[CycleRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on the reservoirs whose numbers are known best, and further ones where the record gives rise to them."""
    budget, process = BudgetQuestions(subject, catalogue), ProcessQuestions(subject, catalogue)
    orders, statements = OrderQuestions(subject, catalogue), StatementQuestions(subject, catalogue)
    stocks, substance = StockQuestions(subject, catalogue), SubstanceQuestions(subject, catalogue)
    outflow = budget.outflow()
    told = not isinstance(outflow, Rejected) and not budget.untold()
    share = budget.share_of_outflow()
    instead = not isinstance(share, Rejected) and (told or isinstance(outflow, Rejected))
    expected = (
        *((share,) if instead else () if told else (outflow,)), budget.balance(), budget.turnover_time(), first_made(process.brought_in(), process.human_share()), process.match_forms(),
        orders.way(), first_made(orders.stays(), budget.longest_stay()), statements.statements(budget.told()),
    )  # fmt: skip
    further = (
        *ChartQuestions(subject, catalogue).readings(MOST_READINGS), stocks.falling_inflow(), stocks.after_years(), stocks.shortest_time(),
        substance.conversion(),
    )  # fmt: skip
    asked = (*expected, *_made(further))
    spare = _made((
        budget.inflow(), *(() if instead else (share,)), process.exits(), *((outflow,) if told else ()),
    ))  # fmt: skip
    sure = len(_made(asked))
    return enough((*asked, *spare), max(FEWEST, min(sure + len(spare), max(sure, WANTED))))


def _made(items: Sequence[Made]) -> tuple[Made, ...]:
    """Those that came out; why others did not is not told, for few records give rise to them."""
    return tuple(item for item in items if not isinstance(item, Rejected))
