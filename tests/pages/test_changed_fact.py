"""Change one number of a record, and all that a written question says with it follows: stimulus, set-up, answer, range, slips, ideas, samples."""

from __future__ import annotations

import shutil
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from generator.course.library import Library, load
from generator.kinds import all_kinds
from generator.pages.site import Site, written_uri
from generator.pages.written_page import written_pages
from generator.written.carried_on import carried_on
from generator.written.guide import Guided, PartGuide
from generator.written.variants import variants
from tests.kinds.small_records import CONTENT
from tests.pages.rendered import plain, rendered

CHANGES = {
    "pyramid/tillet_bay.yaml": ("gross_production: 4300", "gross_production: 4400"),
    "biome/temperate_grassland.yaml": ("26, 48, 66, 42", "26, 48, 69, 42"),
    "transect/coastal_range.yaml": ("annual_precip: 327", "annual_precip: 330"),
    "aquatic_biome/lake.yaml": ("dissolved_oxygen: 2.1", "dissolved_oxygen: 2.4"),
}
"""In each record one number, as somebody might correct it; the transect passes the same station, and its sentence would stop the build."""


@cache
def changed() -> Library:
    """The demo course with these numbers changed and nothing else."""
    with TemporaryDirectory() as folder:
        content = Path(folder) / "content"
        shutil.copytree(CONTENT, content)
        for file, (old, new) in CHANGES.items():
            text = (content / file).read_text("utf-8")
            assert 1 == text.count(old), file
            (content / file).write_text(text.replace(old, new), "utf-8")
        return load(content, all_kinds())


def question(name: str) -> Guided:
    return next(guided for guided in changed().written if guided.name == name)


def part(name: str, part_id: str) -> PartGuide:
    return question(name)[part_id]


def numbers(guide: PartGuide) -> tuple[str, str, str]:
    """Set-up, answer and accepted range."""
    assert guide.worked is not None
    return guide.worked.setup, guide.worked.entry.answer, guide.worked.range_shown


@cache
def page(name: str) -> str:
    (found,) = (one for one in written_pages(Site(library=changed(), kinds=all_kinds())) if one.uri == written_uri(name))
    return plain(rendered(found).get_text())


def test_stimulus_set_up_answer_and_range_follow() -> None:
    """4400 − 1700 = 2700, and 360 of 2700 is 13.3 %, by hand."""
    setup, answer, _ = numbers(part("energy_in_a_bay", "a"))
    assert ("4400 kJ m⁻² yr⁻¹ − 1700 kJ m⁻² yr⁻¹", "2700 kJ m⁻² yr⁻¹") == (setup, answer)
    assert ("360 kJ m⁻² yr⁻¹ ÷ 2700 kJ m⁻² yr⁻¹", "13.3 %", "13.1 to 13.6 %") == numbers(part("energy_in_a_bay", "c"))
    assert "gross production 4400 kJ m⁻² yr⁻¹" in page("energy_in_a_bay")
    assert "4300" not in page("energy_in_a_bay") and "2600" not in page("energy_in_a_bay")


def test_samples_and_slips_follow() -> None:
    """4400 + 1700 = 6100 is what adding gives."""
    guide = part("energy_in_a_bay", "a")
    assert guide.worked is not None
    assert ["6100 kJ m⁻² yr⁻¹", "1700 kJ m⁻² yr⁻¹"] == [slip.shown for slip in guide.worked.entry.slips]
    assert "4400 kJ m⁻² yr⁻¹ − 1700 kJ m⁻² yr⁻¹ = 2700 kJ m⁻² yr⁻¹" == guide.samples[0].text
    assert "4400 kJ m⁻² yr⁻¹ − 1700 kJ m⁻² yr⁻¹ = 270 kJ m⁻² yr⁻¹" == guide.samples[1].text


def test_every_number_of_a_series_follows_in_the_set_up() -> None:
    """26 + 48 + 69 + 42 + 34 + 26 = 245 of 330 mm is 74.2 %, by hand."""
    assert ("(26 + 48 + 69 + 42 + 34 + 26) mm ÷ 330 mm", "74.2 %") == numbers(part("plain_without_trees", "b"))[:2]


def test_ideas_of_a_chain_and_of_the_question_follow() -> None:
    said = " ".join(line.says for line in part("plain_without_trees", "c").lines)
    assert "only 330 mm falls" in said and "327" not in said
    assert "rises to 69 mm in June" in part("plain_without_trees", "e").lines[0].says
    assert "May has 48 mm and June 69 mm." in [sample.text for sample in part("plain_without_trees", "e").samples]
    assert "69" in page("plain_without_trees") and "66 mm" not in page("plain_without_trees")


def test_accepted_wordings_follow() -> None:
    (holds, _) = part("oxygen_in_the_deep", "c").lines
    assert "2.4 mg L⁻¹" in holds.says and "2.4 mg L⁻¹" in holds.accept[0]
    assert "2.1 mg" not in page("oxygen_in_the_deep")


def test_work_that_carries_on_and_variants_follow() -> None:
    followed = carried_on(question("energy_in_a_bay"), "c", {"b": 400}).worked
    assert followed is not None and "400 kJ m⁻² yr⁻¹ ÷ 2700 kJ m⁻² yr⁻¹" == followed.setup
    drawn = variants(question("energy_in_a_bay"), 1).drawn
    assert drawn and "4400" not in drawn[0].stimulus[1]


@pytest.mark.parametrize("name", ["energy_in_a_bay", "plain_without_trees", "oxygen_in_the_deep"])
def test_no_doubt_or_fault_comes_with_it(name: str) -> None:
    assert [] == [one for one in changed().warnings if f"{name}.yaml" in one.place.file]
