"""Questions on a cycle: its arithmetic, the way of matter, statements and readings, what stocks do, what substances weigh."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import Subject
from generator.kinds.cycle.budget_questions import BudgetQuestions
from generator.kinds.cycle.change_questions import ChangeQuestions
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

ENOUGH_SHARES = 2
"""Sums of one form: with so many by the author none is made."""
FEWEST, WANTED, MOST_READINGS = 6, 9, 2
"""What every record should have, how many are filled up with questions that are much like others, and how many are read off charts."""


def questions(subject: Subject[CycleRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on the reservoirs whose numbers are known best, and further ones where the record gives rise to them."""
    budget, process = BudgetQuestions(subject, catalogue), ProcessQuestions(subject, catalogue)
    orders, statements = OrderQuestions(subject, catalogue), StatementQuestions(subject, catalogue)
    stocks, changes, substance = StockQuestions(subject, catalogue), ChangeQuestions(subject, catalogue), SubstanceQuestions(subject, catalogue)
    outflow = budget.outflow()
    told = not isinstance(outflow, Rejected) and not budget.untold()
    share = Rejected("share_of_outflow", "the author asks for shares enough") if _shares_asked(subject.record) >= ENOUGH_SHARES else budget.share_of_outflow()
    instead = not isinstance(share, Rejected) and (told or isinstance(outflow, Rejected))
    readings = ChartQuestions(subject, catalogue).readings(MOST_READINGS)
    compared = any(item.id == "largest_outflow" for item in readings)
    expected = (
        *((share,) if instead else () if told else (outflow,)), first_made(stocks.after_years(), stocks.yearly_share()), budget.turnover_time(),
        first_made(process.brought_in(), process.human_share()), process.match_forms(),
        orders.way(), first_made(orders.stays(), budget.times_as_long()), statements.statements(budget.told(), not compared),
    )  # fmt: skip
    further = (
        *readings, stocks.falling_inflow(), stocks.shortest_time(), changes.if_stopped(), changes.range_balance(), changes.new_steady(),
        substance.conversion(),
    )  # fmt: skip
    asked = (*expected, *_made(further))
    spare = _made((budget.inflow(), *(() if instead else (share,)), *((outflow,) if told else ())))
    sure = len(_made(asked))
    return enough((*asked, *spare), max(FEWEST, min(sure + len(spare), max(sure, WANTED))))


def _shares_asked(record: CycleRecord) -> int:
    """How many shares the author asks for."""
    return sum(question.number is not None and ("share" in question.ask or "percent" in question.ask) for question in record.questions)


def _made(items: Sequence[Made]) -> tuple[Made, ...]:
    """Those that came out; why others did not is not told, for few records give rise to them."""
    return tuple(item for item in items if not isinstance(item, Rejected))
