"""Tables of feeding links: a row a link, species in order from the bottom, problems told at their cell."""

from __future__ import annotations

import pytest

from generator.build import check
from tests.course.test_new_record import content, made, notes, told, values

__all__ = ["content"]  # a fixture
LINKS = "eater;eaten;share\nVoles;Grass;1\nOwls;Voles;0,7\nOwls;Shrews;0,3\nShrews;Beetles;1\nBeetles;Dead leaves;0,75\nBeetles;Grass;0,25\n"


def test_links_become_species_with_their_diets() -> None:
    found = {one["id"]: one for one in values("food_web", LINKS)["species"]}
    assert ["grass", "voles", "owls", "shrews", "beetles", "dead_leaves"] == list(found)
    assert [{"food": "voles", "share": 0.7}, {"food": "shrews", "share": 0.3}] == found["owls"]["eats"]
    assert "0.7" == found["owls"]["eats"][0]["share"].text


def test_those_who_never_eat_are_producers_or_dead_matter_by_their_name() -> None:
    found = {one["name"]: one["feeding"] for one in values("food_web", LINKS)["species"]}
    assert {"Grass": "producer", "Dead leaves": "detritus", "Voles": "consumer"}.items() <= found.items()
    assert any("taken for a producer" in note for note in notes("food_web", LINKS))


def test_shares_may_be_missing() -> None:
    found = values("food_web", "predator,prey\nvole,grass\nvole,moss\n")
    assert [{"food": "grass"}, {"food": "moss"}] == found["species"][1]["eats"]


def test_column_without_a_place_is_told() -> None:
    assert any('the column "year" was left out' in note for note in notes("food_web", "eater,eaten,year\nvole,grass,2020\n"))


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("Owls;Voles;0,7", "Owls;Voles;much", '3:12 species[2].eats[0].share / the text "much"'),
        ("Owls;Voles;0,7", "Owls;Voles;0,8", "3:1 species[2].eats / 1.1"),
        ("Owls;Voles;0,7", "Owls;;0,7", "3:6  / an empty cell"),
        ("Beetles;Grass;0,25", "Beetles;Grass;", "7:9 species[4].eats[1] / no share of \"grass\""),
        ("Beetles;Grass", "Beetles;Dead leaves", '7:9 species[4].eats[1].food / "dead_leaves" again (first at [0])'),
        ("eaten", "what", "1:1  / none"), ("share", "share (%)", '1:13 share / "share (%)"'),
    ],
)  # fmt: skip
def test_what_is_wrong_with_links_is_told_at_its_cell(old: str, new: str, expected: str) -> None:
    assert expected in told("food_web", LINKS.replace(old, new, 1))


def test_record_made_from_links_passes_the_check(content) -> None:
    source = content.parent / "t.csv"
    source.write_text(LINKS, "utf-8")
    created = made(content, "food_web", "from_table", source=(source, "t.csv"))
    assert {"not_in_course", "question_left_out", "unwritten"} >= {one.rule for one in check(content).warnings}
    assert created.notes
