"""Breaking text into lines: numbers keep their units, lines come out even, nothing is lost."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from figures.drawing.text import block_size, glued, wrap, wrap_evenly

WORDS = st.lists(st.text("abcdefgh", min_size=1, max_size=9), min_size=1, max_size=20).map(" ".join)


@pytest.mark.parametrize(("text", "pieces"), (
    ("takes up 18 ± 3 kg N ha⁻¹ yr⁻¹ here", ["takes", "up", "18 ± 3 kg N ha⁻¹ yr⁻¹", "here"]),
    ("133 000 to 140 000 Tg N", ["133 000 to", "140 000 Tg N"]), ("5800 kJ m⁻² yr⁻¹ in algae", ["5800 kJ m⁻² yr⁻¹", "in", "algae"]),
    ("roots and leaves", ["roots", "and", "leaves"]),
))  # fmt: skip
def test_numbers_keep_their_units(text: str, pieces: list[str]) -> None:
    assert pieces == [piece.replace("\xa0", " ") for piece in glued(text).split(" ")]


def test_no_word_is_left_alone_on_the_last_line() -> None:
    width = block_size(("aaaa bbbb cccc dddd",), 14)[0] + 0.5
    assert ("aaaa bbbb cccc dddd", "eeee") == wrap("aaaa bbbb cccc dddd eeee", 14, width)
    assert ("aaaa bbbb cccc", "dddd eeee") == wrap_evenly("aaaa bbbb cccc dddd eeee", 14, width)


@given(WORDS, st.floats(20, 600))
def test_even_lines_are_as_few_and_no_wider_and_lose_nothing(text: str, width: float) -> None:
    plain, even = wrap(text, 14, width), wrap_evenly(text, 14, width)
    assert (text, len(plain)) == (" ".join(even), len(even))
    assert block_size(even, 14)[0] <= block_size(plain, 14)[0] + 1e-9
