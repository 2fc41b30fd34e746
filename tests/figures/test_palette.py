"""The palette keeps its promises: contrast with the page, and hues that stay apart for every kind of sight."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest

from figures.palette import DARK, LIGHT, PAGE

SCHEMES = (("light", LIGHT), ("dark", DARK))
TEXT_ROLES = ("ink", "muted")
HUES = ("water", "heat", "plant", "soil", "animal")
# Machado, Oliveira & Fernandes 2009, IEEE TVCG 15:1291-1298, severity 1.0, on linear sRGB; the entries are from memory.
# test_simulated_sight_keeps_grey checks what any such matrix must do: leave greys as they are.
SIGHT = {
    "normal": np.eye(3),
    "protanopia": np.array([[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]),
    "deuteranopia": np.array([[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]),
    "tritanopia": np.array([[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]),
}  # fmt: skip


def linear(colour: str) -> np.ndarray:
    """Linear sRGB, 0 to 1. IEC 61966-2-1 (common practice)."""
    channels = np.array([int(colour[i : i + 2], 16) for i in (1, 3, 5)]) / 255
    return np.where(channels <= 0.04045, channels / 12.92, ((channels + 0.055) / 1.055) ** 2.4)


def contrast(one: str, other: str) -> float:
    """WCAG 2.2, definitions of "contrast ratio" and "relative luminance"."""
    first, second = sorted((float(linear(colour) @ (0.2126, 0.7152, 0.0722)) for colour in (one, other)), reverse=True)
    return (first + 0.05) / (second + 0.05)


def lab(rgb: np.ndarray) -> np.ndarray:
    """CIE 1976 L*a*b* with the D65 white point (common practice)."""
    to_xyz = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
    ratios = to_xyz @ np.clip(rgb, 0, 1) / (0.9505, 1.0, 1.089)
    x, y, z = np.where(ratios > 216 / 24389, np.cbrt(ratios), (24389 / 27 * ratios + 16) / 116)
    return np.array([116 * y - 16, 500 * (x - y), 200 * (y - z)])


def test_the_contrast_formula_gives_the_standard_extremes():
    assert 21.0 == pytest.approx(contrast("#000000", "#ffffff"))
    assert 1.0 == contrast("#777777", "#777777")


def test_both_schemes_have_the_same_roles_and_no_colour_twice():
    assert list(LIGHT) == list(DARK)
    assert len(LIGHT) == len(set(LIGHT.values())) and len(DARK) == len(set(DARK.values()))


@pytest.mark.parametrize("scheme, colours", SCHEMES)
def test_the_ground_is_the_page(scheme: str, colours: dict[str, str]):
    assert PAGE[scheme][0] == colours["ground"]


@pytest.mark.parametrize("scheme, colours", SCHEMES)
@pytest.mark.parametrize("role", TEXT_ROLES)
def test_text_keeps_four_and_a_half_to_one(scheme: str, colours: dict[str, str], role: str):
    assert all(contrast(colours[role], page) >= 4.5 for page in PAGE[scheme])


@pytest.mark.parametrize("scheme, colours", SCHEMES)
@pytest.mark.parametrize("role", HUES)
def test_marks_keep_three_to_one(scheme: str, colours: dict[str, str], role: str):
    assert all(contrast(colours[role], page) >= 3 for page in PAGE[scheme])


@pytest.mark.parametrize("scheme, colours", SCHEMES)
def test_the_two_colours_of_arrows_stand_out_about_equally(scheme: str, colours: dict[str, str]):
    first, second = sorted(contrast(colours[role], colours["ground"]) for role in ("heat", "plant"))
    assert second / first < 1.3


@pytest.mark.parametrize("sight", SIGHT)
def test_simulated_sight_keeps_grey(sight: str):
    assert np.ones(3) == pytest.approx(SIGHT[sight] @ np.ones(3), abs=2e-5)


@pytest.mark.parametrize("scheme, colours", SCHEMES)
@pytest.mark.parametrize("sight", SIGHT)
def test_no_two_hues_come_close_for_any_sight(scheme: str, colours: dict[str, str], sight: str):
    seen = {role: lab(SIGHT[sight] @ linear(colours[role])) for role in HUES}
    distances = {pair: float(np.linalg.norm(seen[pair[0]] - seen[pair[1]])) for pair in combinations(HUES, 2)}
    assert min(distances.values()) >= 25, distances
