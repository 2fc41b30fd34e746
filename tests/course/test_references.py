"""Facts in texts and claims: what may be named from where, and what becomes of a claim when numbers change."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.build import check
from generator.diagnostics import ContentErrors
from tests.content.patches import BIOME, PYRAMID, Patch, write_course

HERE = "biome/temperate_grassland:harrow_plain"
CLAIM = "holds_if: harrow_plain.aridity_index < 0.65"
LEVEL = "says: 'So production falls"


def told(tmp_path: Path, patch: Patch) -> list[tuple[str, str, str]]:
    """Field, what was expected and what was found, of every diagnostic."""
    try:
        found = check(write_course(tmp_path / "content", patch)).warnings
    except ContentErrors as errors:
        found = errors.diagnostics
    return [(one.field, one.expected, one.found) for one in found]


@pytest.mark.parametrize(
    "claim",
    [
        "harrow_plain.aridity_index < 0.65 and harrow_plain.annual_precip < 400",
        "harrow_plain.aridity_class == 'semi-arid' or harrow_plain.aridity_class == 'dry sub-humid'",
        "harrow_plain.annual_precip < harrow_plain.potential_evapotranspiration",
        "7 in harrow_plain.dry_months",
        "not 1 in harrow_plain.dry_months",
        "harrow_plain.latitude > 0",
        "sum_months(harrow_plain.monthly_precip, 6, 8) > 0.4 * harrow_plain.annual_precip",
        "pyramid/sill_lake:pike.production < pyramid/sill_lake:perch.production",
    ],
)
def test_claims_that_hold_are_silent(tmp_path: Path, claim: str) -> None:
    assert [] == told(tmp_path, Patch({BIOME: [(CLAIM, f'holds_if: "{claim}"')]}))


def test_a_claim_about_another_record_is_told_with_its_numbers(tmp_path: Path) -> None:
    claim = f"{HERE}.annual_precip > 400"
    patch = Patch({PYRAMID: [(LEVEL, f"holds_if: '{claim}', {LEVEL}")]})
    expected = [("explanations[0].chain[1].holds_if", f"{claim}, for the sentence says so", f"{HERE}.annual_precip is 327 mm")]
    assert expected == told(tmp_path, patch)


def test_a_claim_about_a_fact_that_is_not_defined_does_not_hold(tmp_path: Path) -> None:
    claim = "phytoplankton.transfer_efficiency > 0"
    patch = Patch({PYRAMID: [(LEVEL, f"holds_if: '{claim}', {LEVEL}")]})
    found = "phytoplankton.transfer_efficiency is not defined: producers have no level below"
    assert [("explanations[0].chain[1].holds_if", f"{claim}, for the sentence says so", found)] == told(tmp_path, patch)


@pytest.mark.parametrize(
    "claim", ["__import__('os')", "().__class__", "harrow_plain", "1 < 2 < x", "9**9**9**9 > 1", "a" * 500, "lambda: 1"]
)
def test_claims_cannot_run_anything_and_are_told(tmp_path: Path, claim: str) -> None:
    found = told(tmp_path, Patch({BIOME: [(CLAIM, f'holds_if: "{claim}"')]}))
    assert ["explanations[0].chain[0].holds_if"] == [field for field, _, _ in found]


def test_the_facts_in_a_text_are_each_told_once_however_often_they_stand_there(tmp_path: Path) -> None:
    patch = Patch({PYRAMID: [("from algae to pike: where", "from {x.y} to {x.y} and {x.z}: where")]})
    assert [("summary", "a fact of this record", f'"{name}"') for name in ("x.y", "x.z")] == told(tmp_path, patch)


def test_a_fact_in_any_text_is_looked_up_not_only_in_explanations(tmp_path: Path) -> None:
    effect = "effect: the topsoil, and the nutrients in it, blow away"
    patch = Patch({BIOME: [(effect, "effect: 'the topsoil, {harrow_plain.windy}'")]})
    assert [("people[0].effect", "a fact of this record", '"harrow_plain.windy"')] == told(tmp_path, patch)
