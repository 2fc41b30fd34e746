"""Characters of a value and where they stand."""

from __future__ import annotations

import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.records.located import located
from generator.records.scalar_text import positions

# No word begins with a no-break space, or has one behind a colon: at the start of a line both are refused, because nobody sees
# what they are.
WORD = st.text("abc{}.:#'\"\\é\u00a0-", min_size=1, max_size=8).filter(lambda word: word[0] != "\u00a0" and ":\u00a0" not in word)
WORDS = st.lists(WORD | st.just(""), min_size=1, max_size=12).map(" ".join)
STYLES = st.sampled_from(["'", '"', ">", "|", None])


@given(text=WORDS, style=STYLES, width=st.integers(5, 60))
def test_each_character_is_found_where_it_stands(text: str, style: str | None, width: int) -> None:
    """Whatever PyYAML writes, in any style and folded anywhere, its characters are found again."""
    dumped = yaml.dump({"says": text}, default_style=style, width=width, allow_unicode=True).replace('"says":', "says:")
    file = located(dumped.encode(), "f")
    spot, value = file.values[("says",)], file.value["says"]
    found = positions(file.source.text, spot.position, spot.style, value)
    assert len(value) == len(found)
    seen = [(ch, file.source.text[at]) for ch, at in zip(value, found, strict=True) if ch not in ' \n"\\\u00a0']
    assert [ch for ch, _ in seen] == [ch for _, ch in seen]


@given(before=WORDS, after=WORDS, style=STYLES, width=st.integers(5, 60))
def test_fact_in_text_is_pointed_at(before: str, after: str, style: str | None, width: int) -> None:
    text = f"{before} {{harrow_plain.annual_precip}} {after}"
    dumped = yaml.dump({"says": text}, default_style=style, width=width, allow_unicode=True)
    file = located(dumped.encode(), "f")
    place = file.place_in_text(("says",), "{harrow_plain.annual_precip}")
    assert dumped.split("\n")[place.line - 1][place.column - 1 :].startswith("{harrow_plain.annual_precip}"[:5])


def test_value_that_does_not_stand_there_has_no_positions() -> None:
    assert [] == positions("says: dry", 6, "", "wet")
