"""Chart specs: equality, and fingerprints that hold between processes."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import replace

import pytest

from figures import Chart, DataTable
from figures.svg import read_svg
from tests.figures.drawn import drawn
from tests.figures.overview_specimens import CHAINS, MAPS, MULTIPLES, STOCKS, TURNOVERS
from tests.figures.specimens import CLIMATES, FLUX_DIAGRAMS, PYRAMIDS, WEND_HOLLOW, random_flux_diagram
from tests.figures.transect_specimens import TRANSECTS
from tests.figures.water_specimens import BARS, CURVES, LIGHTS, PRODUCTIONS

SPECIMENS = (*CLIMATES, *PYRAMIDS, *FLUX_DIAGRAMS, *CHAINS, *MAPS, *MULTIPLES, *STOCKS, *TURNOVERS)
NARROWED = tuple(chart for chart in (*SPECIMENS, *TRANSECTS, *BARS, *PRODUCTIONS, *LIGHTS, *CURVES) if chart.HAS_NARROW)
IMPORTS = "from tests.figures.overview_specimens import *; from tests.figures.specimens import *"


def in_fresh_process(code: str, hash_seed: str) -> str:
    environment = {**os.environ, "PYTHONHASHSEED": hash_seed}
    return subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=environment).stdout


def test_equal_specs_have_equal_fingerprints():
    assert random_flux_diagram(3) == random_flux_diagram(3)
    assert random_flux_diagram(3).fingerprint() == random_flux_diagram(3).fingerprint()


@pytest.mark.parametrize("chart", SPECIMENS, ids=lambda chart: chart.name)
def test_fingerprints_tell_specs_apart(chart: Chart):
    others = [other.fingerprint() for other in SPECIMENS if other.name != chart.name]
    assert chart.fingerprint() not in others
    assert chart.fingerprint() != replace(chart, title=chart.title + ".").fingerprint()


def test_fingerprints_hold_between_processes_with_other_hash_seeds():
    sets = "(*CLIMATES, *PYRAMIDS, *FLUX_DIAGRAMS, *CHAINS, *MAPS, *MULTIPLES, *STOCKS, *TURNOVERS)"
    code = f"{IMPORTS}; print([chart.fingerprint() for chart in {sets}])"
    expected = str([chart.fingerprint() for chart in SPECIMENS])
    assert [expected, expected] == [in_fresh_process(code, seed).strip() for seed in ("1", "77")]


def test_drawings_are_the_same_bytes_in_processes_with_other_hash_seeds():
    code = (
        f"import hashlib; from figures.drawing import draw; {IMPORTS}\n"
        "some = (CLIMATES[0], CLIMATES[7], PYRAMIDS[0], WEND_HOLLOW, random_flux_diagram(4))\n"
        "for chart in (*some, CHAINS[1], MAPS[1], MULTIPLES[0], STOCKS[2], TURNOVERS[0]):\n"
        "    print(hashlib.sha256(draw(chart).encode()).hexdigest())"
    )
    first, second = in_fresh_process(code, "1"), in_fresh_process(code, "77")
    assert 10 == len(set(first.split()))
    assert first == second


def test_specs_and_the_inline_form_load_no_drawing_library():
    code = (
        "import sys, figures.inline, figures.flux_diagram; from figures.drawing import STYLE_VERSION\n"
        "assert STYLE_VERSION and 'matplotlib' not in sys.modules; print('light')"
    )
    assert "light\n" == in_fresh_process(code, "0")


def test_a_drawing_does_not_depend_on_what_was_drawn_before():
    from figures.drawing import draw

    alone = draw(WEND_HOLLOW)
    draw(CLIMATES[0])
    assert alone == draw(WEND_HOLLOW)


def test_a_table_row_of_another_length_is_refused():
    with pytest.raises(ValueError, match="expected 2 cells, found 1"):
        DataTable(caption="Rain", columns=("Month", "Rain, mm"), rows=(("Jan",),))


def test_a_climate_diagram_has_a_drawing_for_a_phone_with_the_same_data_under_a_name_of_its_own():
    narrow = CLIMATES[0].narrowed()
    assert narrow is not None
    assert replace(CLIMATES[0], name=narrow.name, narrow=True) == narrow
    assert narrow.name != CLIMATES[0].name
    assert narrow.narrowed() is None


@pytest.mark.parametrize("chart", NARROWED, ids=lambda chart: chart.name)
def test_the_drawing_for_a_phone_shows_its_text_at_11_px_on_358_px(chart: Chart):
    """A page 390 px wide leaves 358 px between its margins."""
    root = read_svg(drawn(chart.narrowed()))
    width = float(root.get("viewBox").split()[2])
    sizes = [float(text.get("font-size")) for text in root.iter("text")]
    assert min(sizes) * 358 / width >= 11


def test_a_chart_without_a_narrow_drawing_has_none():
    assert [] == [chart.name for chart in SPECIMENS if not chart.HAS_NARROW and chart.narrowed()]
