"""What a teacher is promised of the demo course's written questions."""

from __future__ import annotations

import pytest

from generator.records.parts import SORTS
from generator.written.guide import Guided
from tests.kinds.small_records import library

each = pytest.mark.parametrize("guided", library().written, ids=lambda guided: guided.name)


@each
def test_every_idea_says_which_sort_it_is_and_every_line_where_it_is_taught(guided: Guided) -> None:
    ideas = [line for guide in guided.guides if guide.number is None for line in guide.lines]
    assert [] == [line.id for line in ideas if line.gives not in SORTS]
    assert [] == [line.id for guide in guided.guides for line in guide.lines if line.teaches not in library().subjects]
