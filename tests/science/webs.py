"""Food webs made at random, for properties that must hold of every one."""

from __future__ import annotations

from hypothesis import strategies as st

Diets = dict[str, dict[str, float]]


@st.composite
def webs(draw: st.DrawFn) -> Diets:
    """Up to seven eaters over two basal species, with loops and cannibals; each eater has some food that the bottom reaches."""
    names = ["plant", "dead", *(f"s{number}" for number in range(draw(st.integers(1, 7))))]
    found: Diets = {}
    for at, name in enumerate(names[2:], start=2):
        sure = draw(st.sampled_from(names[:at]))
        more = draw(st.lists(st.sampled_from(names), max_size=3))
        parts = {food: draw(st.integers(1, 20)) for food in dict.fromkeys([sure, *more])}
        found[name] = {food: part / sum(parts.values()) for food, part in parts.items()}
    return found


def foods(diets: Diets) -> dict[str, tuple[str, ...]]:
    """The same without the shares."""
    return {eater: tuple(diet) for eater, diet in diets.items()}
