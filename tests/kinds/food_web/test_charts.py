"""The charts of a food web: boxes, arrows, words and table agree with the facts; nothing more is marked than is told."""

from __future__ import annotations

import pytest

from tests.figures.drawing.test_food_web_diagram import behind, boxes, paths
from tests.kinds.food_web.test_facts import LAKE, web
from tests.kinds.small_records import demo, kind


def charts(of: object) -> tuple:
    return kind("food_web").charts(of)


def test_boxes_stand_at_the_trophic_level_and_say_it() -> None:
    chart, *_ = charts(demo(LAKE))
    assert ("Trophic level", {"Pike": "level 3.80", "Pondweed": "level 1"}.items() <= {one.label: one.note for one in chart.species}.items()) == (
        chart.axis_label, True,
    )  # fmt: skip
    assert {one.id: pytest.approx(demo(LAKE).facts[f"{one.id}.trophic_level"].number) for one in chart.species} == {
        one.id: one.level for one in chart.species
    }  # fmt: skip


def test_arrows_run_from_food_to_eater_with_the_share_of_the_diet() -> None:
    chart, *_ = charts(demo(LAKE))
    found = {(link.food, link.eater): link.share for link in chart.links}
    assert (11, 0.9, 1.0, 0.05) == (
        len(found), found["phytoplankton", "zooplankton"], found["dead_matter", "midge_larvae"], found["pike", "pike"]
    )  # fmt: skip


def test_reading_says_which_way_arrows_point() -> None:
    for chart in (charts(demo(LAKE))[0], charts(demo("food_web/harrow_plain_web"))[0]):
        assert chart.reading[0].startswith("An arrow points from the eaten to the eater")


def test_description_names_bottom_top_and_the_longest_chain() -> None:
    chart, *_ = charts(demo(LAKE))
    assert chart.description == (
        "8 species and groups, 11 feeding links. At the bottom: phytoplankton, pondweed, dead matter. At the top: pike at level 3.80. "
        "The longest chain has 3 arrows."
    )


def test_table_holds_diets_eaters_and_levels() -> None:
    chart, *_ = charts(demo(LAKE))
    assert ("Roach", "consumer", "zooplankton 0.25, midge larvae 0.15, pondweed 0.6", "pike", "2.40", "1", "–") == chart.table.rows[5]
    assert "Biomass (g m⁻²)" == chart.table.columns[-1]


def test_without_every_level_the_height_is_a_guess_and_says_so() -> None:
    """The bear stands one above the mean of grass and voles, 1 + 1.5."""
    chart, *_ = charts(web(grass="", vole="grass", bear="grass, vole"))
    assert [1.0, 2.0, 2.5] == pytest.approx([one.level for one in chart.species])
    assert ({""}, "Height: as if all foods counted alike") == ({one.note for one in chart.species}, chart.axis_label)
    assert "only a guess" in chart.reading[1]
    assert {None} == {link.share for link in chart.links}
    assert "not known" == chart.table.rows[2][4]


def test_losses_are_drawn_one_by_one_with_full_marks_only_where_all_paths_agree() -> None:
    _, pike, zooplankton = charts(demo(LAKE))
    assert ("sill_lake_web.without_pike", "sill_lake_web.without_zooplankton") == (pike.name, zooplankton.name)
    found = {one.id: (one.note, one.change) for one in pike.species}
    assert ("gone", "gone") == found["pike"]
    assert [("rises", "rises"), ("falls", "falls"), ("rises at first", "rises at first")] == [found[name] for name in ("phytoplankton", "zooplankton", "perch")]


def test_words_and_table_of_a_loss_say_what_is_told() -> None:
    _, pike, _ = charts(demo(LAKE))
    assert "Rises: phytoplankton; falls: pondweed, zooplankton, midge larvae; not told, for no arrow shows what adds to it: dead matter; rises at first, then not told: roach, perch." in pike.description
    assert ("Perch", "rises at first, then not told", "3", "1") == pike.table.rows[-1]


def test_reading_of_a_loss_says_how_far_paths_go_and_why_dead_matter_is_left_out() -> None:
    """Only where there is such a species; a chain of six has some that no path of three arrows reaches."""
    _, lake, *_ = charts(demo(LAKE))
    chain = dict(grass="", vole="grass", stoat="vole", fox="stoat", wolf="fox", lynx="wolf")
    _, long = charts(web("if_gone: [lynx]\n", **chain))
    dead, far = "Dead matter has no triangle: what dies adds to it, and no arrow shows that.", "For a species that is more than three arrows away, the triangle goes by the shortest paths alone."
    assert ([dead], [far]) == ([text for text in lake.reading if text in (dead, far)], [text for text in long.reading if text in (dead, far)])
    assert {"every path of up to three arrows"} == {lake.every_path, long.every_path} and long.every_path in long.reading[1]


def test_who_starves_and_who_is_not_linked_has_no_mark() -> None:
    _, chart = charts(web("if_gone: [grass]\n", grass="", vole="grass", lichen="", moth="lichen"))
    assert ["gone", "no food left", "not linked", "not linked"] == [one.note for one in chart.species]
    assert ["gone", "", "", ""] == [one.change for one in chart.species]


@pytest.mark.parametrize("narrow", [False, True], ids=["wide", "narrow"])
@pytest.mark.parametrize("record", ["harrow_plain_web", "salt_marsh_web", "sill_lake_web"])
def test_every_drawing_of_a_record_has_its_species_and_arrows_at_the_same_places(record: str, narrow: bool) -> None:
    """A reader who looks from the web to what a loss does to it finds each species where it was; no arrow hides behind a box."""
    whole, *losses = (chart.narrowed() if narrow else chart for chart in charts(demo(f"food_web/{record}")))
    assert losses
    for chart in losses:
        assert boxes(whole) == boxes(chart)
        assert {name: path.get("d") for name, path in paths(whole, "arrow").items()} == {name: path.get("d") for name, path in paths(chart, "arrow").items()}
    assert [] == behind(whole)
