"""Questions on matter in another form: each states what it is to be worked out with."""

from __future__ import annotations

from generator.kind import Subject
from generator.questions.question import NumberEntry
from tests.kinds.cycle.test_facts import text
from tests.kinds.small_records import made, subject


def asked(conversions: str, fluxes: str = "a source pool 10\nb pool sink {low: 1, high: 3}", unit: str = "Gt C") -> NumberEntry | None:
    of: Subject = subject("cycle", text(fluxes, head=f"units: {{stock: {unit}, flux: {unit}/yr}}\n") + f"conversions: [{conversions}]\n")
    question = made(of).get("conversion")
    assert question is None or isinstance(question, NumberEntry)
    return question


def slips(question: NumberEntry | None) -> dict[str, str]:
    assert question is not None
    return {slip.misconception: slip.shown.split(" ")[0] for slip in question.slips}


def test_question_on_another_substance_states_both_molar_masses() -> None:
    question = asked("{of: a.rate, as: CO2}")
    assert question is not None
    for words in ("C 12.011 g mol⁻¹", "CO₂ 44.009 g mol⁻¹", "“A” carries 10 Gt C yr⁻¹", "as much carbon?"):
        assert words in question.prompt
    assert "36.6 Gt CO₂ yr⁻¹" == question.answer


def test_either_usual_factor_is_right() -> None:
    """44 over 12 and 3.664 differ by less than the tolerance, so that no convention decides."""
    question = asked("{of: a.rate, as: CO2}")
    assert question is not None
    assert question.accepted.low < 10 * 3.664 < 10 * 44 / 12 < question.accepted.high


def test_usual_slips_are_known() -> None:
    assert {"carb.c-co2": "10.0", "cyc.molar-inverse": "2.73"} == slips(asked("{of: a.rate, as: CO2}"))
    assert {"nit.no3-n": "10.0", "cyc.molar-inverse": "2.26"} == slips(asked("{of: a.rate, as: NO3}", unit="Tg N"))
    by_atoms = slips(asked("{of: a.rate, as: N2O}", unit="Tg N"))
    assert ("10.0", "3.18") == (by_atoms["cyc.element-compound"], by_atoms["cyc.molar-inverse"]) or "31.4" in by_atoms.values()


def test_question_on_ppm_states_the_factor() -> None:
    question = asked("{of: a.rate, as: ppm}")
    assert question is not None
    assert "2.124 Gt C ppm⁻¹ CO₂" in question.prompt
    assert {"cyc.ppm-times": "21.2", "carb.ppm": "10.0"} == slips(question)


def test_range_is_not_asked_about() -> None:
    assert asked("{of: b.rate, as: CO2}") is None
    question = asked("{of: b.rate, as: CO2}, {of: a.rate, as: CO2}")
    assert question is not None and "“A”" in question.prompt
