"""Food webs: who eats whom, at which trophic level, and what follows along each path when a species goes."""

from pathlib import Path

from generator.kind import Kind, PartOf
from generator.kinds.food_web.charts import charts
from generator.kinds.food_web.compare import compare
from generator.kinds.food_web.facts import METHODS, facts
from generator.kinds.food_web.findings import doubts, findings
from generator.kinds.food_web.import_table import import_table
from generator.kinds.food_web.questions import questions
from generator.kinds.food_web.record import FoodWebRecord

KIND = Kind(
    name="food_web",
    title="Food webs",
    record=FoodWebRecord,
    parts=lambda record: {species.id: PartOf(species.label) for species in record.species},
    facts=facts,
    findings=findings,
    doubts=doubts,
    charts=charts,
    questions=questions,
    compare=compare,
    methods=METHODS,
    folder=Path(__file__).parent,
    import_table=import_table,
)
