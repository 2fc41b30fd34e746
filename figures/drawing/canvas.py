"""A sheet measured in pixels from its top left corner, on which charts draw by colour role; gives tidy SVG."""

from __future__ import annotations

import io
from collections.abc import Iterable, Sequence

import matplotlib
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path

from figures.drawing.tidy import tidy
from figures.palette import LIGHT

Point = tuple[float, float]
_SHORTEST = 0.02
"""A line so short that it is a dot, but no shorter once its ends are rounded to two decimals [px]."""
_SETTINGS = {"svg.fonttype": "none", "svg.hashsalt": "figures", "svg.id": None, "text.usetex": False}


def polygon(points: Iterable[Point]) -> Path:
    """A closed path through the points."""
    corners = list(points)
    return Path([*corners, corners[0]], [Path.MOVETO, *[Path.LINETO] * (len(corners) - 1), Path.CLOSEPOLY])


def polyline(points: Iterable[Point]) -> Path:
    """An open path through the points."""
    return Path(list(points))


def segments(pairs: Iterable[tuple[Point, Point]]) -> Path:
    """Separate straight lines as one path."""
    ends = [end for pair in pairs for end in pair]
    return Path(ends, [Path.MOVETO, Path.LINETO] * (len(ends) // 2))


def rectangle(left: float, top: float, width: float, height: float) -> Path:
    """A rectangle with sharp corners."""
    return polygon([(left, top), (left + width, top), (left + width, top + height), (left, top + height)])


def rounded_box(left: float, top: float, width: float, height: float, radius: float) -> Path:
    """A rectangle with round corners."""
    right, bottom, r = left + width, top + height, radius
    steps = [
        (Path.MOVETO, (left + r, top)), (Path.LINETO, (right - r, top)),
        (Path.CURVE3, (right, top)), (Path.CURVE3, (right, top + r)), (Path.LINETO, (right, bottom - r)),
        (Path.CURVE3, (right, bottom)), (Path.CURVE3, (right - r, bottom)), (Path.LINETO, (left + r, bottom)),
        (Path.CURVE3, (left, bottom)), (Path.CURVE3, (left, bottom - r)), (Path.LINETO, (left, top + r)),
        (Path.CURVE3, (left, top)), (Path.CURVE3, (left + r, top)), (Path.CLOSEPOLY, (left + r, top)),
    ]  # fmt: skip
    return Path([point for _, point in steps], [code for code, _ in steps])


class Canvas:
    """Collects shapes and text; later ones lie on top."""

    def __init__(self, width: float, height: float) -> None:
        """A sheet of `width` by `height` [px] in the ground colour."""
        self._figure = Figure(figsize=(width / 72, height / 72), dpi=72)
        self._figure.patch.set_visible(False)
        self._axes = self._figure.add_axes((0, 0, 1, 1))
        self._axes.set_axis_off()
        self._axes.set_xlim(0, width)
        self._axes.set_ylim(height, 0)
        self._left, self._top = 0.0, 0.0
        self.fill(polygon([(0, 0), (width, 0), (width, height), (0, height)]), "ground")

    def move(self, left: float, top: float) -> None:
        """Measure all that follows from this place of the sheet [px]."""
        self._left, self._top = left, top

    def fill(self, path: Path, role: str, *, opacity: float = 1, part: str = "") -> None:
        """Fill a closed path; `part` names the shape for whoever reads the SVG."""
        self._add(path, part, facecolor=LIGHT[role], edgecolor="none", alpha=opacity if opacity < 1 else None)

    def stroke(
        self, path: Path, role: str, width: float = 1, *, dash: Sequence[float] = (), round_ends: bool = False,
        part: str = "",
    ) -> None:  # fmt: skip
        """Draw a line along a path; `dash` gives the lengths of marks and gaps [px]."""
        style = (0, tuple(length / width for length in dash)) if dash else "solid"  # matplotlib counts dashes in widths
        self._add(
            path, part, facecolor="none", edgecolor=LIGHT[role], linewidth=width, linestyle=style,
            capstyle="round" if round_ends else "butt", joinstyle="round",
        )  # fmt: skip

    def dots(self, rows: Iterable[tuple[Point, Point]], role: str, diameter: float, pitch: float = 10) -> None:
        """Round dots along level rows, `pitch` [px] apart from each row's first point; a row of no length is one dot."""
        ends = [(start, (max(end[0], start[0]) + _SHORTEST, start[1])) for start, end in rows]
        self.stroke(segments(ends), role, diameter, dash=(0.01, pitch - 0.01), round_ends=True)

    def text(
        self, x: float, y: float, text: str, *, size: float = 13, anchor: str = "start", role: str = "ink",
        bold: bool = False, italic: bool = False, halo: bool = False,
    ) -> None:  # fmt: skip
        """Set one line with its baseline at `y`; `anchor` is start, middle or end; a halo parts it from marks below."""
        self._axes.text(
            x + self._left, y + self._top, text, fontsize=size, color=LIGHT[role], va="baseline", parse_math=False, clip_on=False,
            ha={"start": "left", "middle": "center", "end": "right"}[anchor],
            weight="bold" if bold else "normal", style="italic" if italic else "normal", gid="halo" if halo else None,
        )  # fmt: skip

    def svg(self) -> str:
        """The drawing as a tidy SVG document."""
        buffer = io.StringIO()
        with matplotlib.rc_context(_SETTINGS):
            self._figure.savefig(buffer, format="svg", metadata={"Date": None}, transparent=True)
        return tidy(buffer.getvalue())

    def _add(self, path: Path, part: str, **properties: object) -> None:
        moved = Path(path.vertices + (self._left, self._top), path.codes)
        moved.should_simplify = False
        self._axes.add_patch(PathPatch(moved, clip_on=False, gid=f"part:{part}" if part else None, **properties))
