"""The colours of all charts by role, for the light and the dark scheme.

Chosen so that marks keep 3:1 and text 4.5:1 against the page, and so that no two hues come close for normal sight
or for simulated deuter-, prot- and tritanopia (tests/figures/test_palette.py). Heat and plant, which mark arrows of two causes,
stand out from the ground about equally, so that neither looks stronger. Colour never stands alone in a chart.
"""

LIGHT = {
    "ink": "#1b1f23",
    "muted": "#57606a",
    "grid": "#8c959f",
    "ground": "#fbfaf6",
    "water": "#5975ff",
    "heat": "#991a03",
    "plant": "#0f5749",
    "soil": "#cd7805",
    "animal": "#980795",
}
DARK = {
    "ink": "#e6e9ef",
    "muted": "#b3bac5",
    "grid": "#737a86",
    "ground": "#1c1e22",
    "water": "#4c70fa",
    "heat": "#df6f23",
    "plant": "#0eb473",
    "soil": "#eae586",
    "animal": "#c06cbf",
}
FORCED = {role: {"ground": "Canvas", "grid": "GrayText"}.get(role, "CanvasText") for role in LIGHT}
"""System colours for readers who set their own: hues fall together, and what tells marks apart without colour is left."""
PAGE = {"light": ("#fbfaf6", "#f5f5f5"), "dark": ("#1c1e22", "#2a2d37")}
"""The page's own background and the one behind tables, which marks and text are measured against."""


def variable(role: str) -> str:
    """The CSS custom property that holds the colour of a role."""
    return f"--chart-{role}"
