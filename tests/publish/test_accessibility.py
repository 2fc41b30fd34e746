"""Material's pages are mended where they lack something, and a change of Material is told in clear words."""

from __future__ import annotations

import pytest

from generator.publish.accessibility import MENDS, MaterialChanged, Mend, mended

PAGE = "\n".join(mend.target for mend in MENDS)


def test_every_mend_is_made() -> None:
    assert "\n".join(mend.replacement for mend in MENDS) == mended(PAGE)


@pytest.mark.parametrize("mend", MENDS, ids=lambda mend: mend.because)
def test_a_target_that_is_gone_is_told_with_the_reason_for_the_mend(mend: Mend) -> None:
    with pytest.raises(MaterialChanged) as told:
        mended(PAGE.replace(mend.target, ""))
    assert mend.target in str(told.value)
    assert mend.because in str(told.value)
    assert "found: 0 times" in str(told.value)


def test_a_target_that_is_there_twice_is_told() -> None:
    with pytest.raises(MaterialChanged, match="found: 2 times"):
        mended(PAGE + MENDS[0].target)


def test_a_label_without_its_switch_loses_its_reference() -> None:
    label = '<label class="md-nav__title" for="__toc">'
    assert '<label class="md-nav__title">' in mended(f"{MENDS[0].target}{label}")
    switch = '<input type="checkbox" id="__toc">'
    assert label in mended(f"{MENDS[0].target}{switch}{label}")
