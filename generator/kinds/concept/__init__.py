"""Concepts: text, chains, pictures, words and questions of the author's own, with no numbers to compute."""

from pathlib import Path

from generator.kind import Comparison, Kind
from generator.kinds.concept.findings import findings
from generator.kinds.concept.record import ConceptRecord
from generator.quantities.fact import Facts

KIND = Kind(
    name="concept",
    title="Concepts",
    record=ConceptRecord,
    computes=False,
    parts=lambda record: {},
    facts=lambda record: Facts(()),
    findings=findings,
    doubts=lambda record, facts: (),
    charts=lambda subject: (),
    questions=lambda subject, catalogue: (),
    compare=lambda subjects: Comparison(heads=(), rows=()),
    methods={},
    folder=Path(__file__).parent,
)
