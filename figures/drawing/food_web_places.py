"""Places for the species of a food web: each at the height of its level, side by side so that few arrows cross or touch a box."""

from __future__ import annotations

import random
from dataclasses import dataclass

import numpy as np

_CANDIDATES, _SWEEPS, _STARTS = 41, 12, 12
_OVERLAP, _THROUGH, _CROSSING, _ALONG, _SLANT, _OFF_CENTRE = 1000.0, 90.0, 14.0, 9.0, 0.03, 0.004
"""What it costs when two boxes overlap, an arrow runs through a box, two arrows cross, two run along each other from
one box, an arrow runs one pixel sideways, and a box stands one pixel beside the middle."""
_SAMPLES = np.linspace(0.06, 0.94, 14)
_NARROW = 0.985
"""Cosine of the angle under which two arrows of one box can hardly be told apart."""


@dataclass(frozen=True)
class Web:
    """Boxes that know their height but not their place across, and the links between them."""

    middles: np.ndarray
    """Vertical centre of each box [px]; shape (n,)."""
    sizes: np.ndarray
    """Width and height of each box [px]; shape (n, 2)."""
    links: np.ndarray
    """Places of food and eater of each link; shape (m, 2)."""
    left: float
    right: float
    between: tuple[float, float] = (24.0, 50.0)
    """Room between two boxes side by side, and where an arrow joins them [px]."""


def places_across(web: Web) -> list[list[float]]:
    """The horizontal centre of each box [px], settled several times, the best first. Equal webs give equal places."""
    starts = [_settled(web, random.Random(start)) for start in range(_STARTS)]
    starts.sort(key=lambda across: float(_cost(web, across[None, :])[0]))
    return [[float(x) for x in across] for across in starts]


def _settled(web: Web, chance: random.Random) -> np.ndarray:
    """Places after every box in turn has gone to the best one that the others leave, until none moves."""
    across = _first_places(web, chance)
    cost = float(_cost(web, across[None, :])[0])
    order = list(range(len(across)))
    for _ in range(_SWEEPS):
        before = cost
        chance.shuffle(order)
        for box in order:
            tries = np.concatenate([_moved(web, across, box), _exchanged(web, across, box)])
            costs = _cost(web, tries)
            best = int(np.argmin(costs))
            if costs[best] < cost - 1e-9:
                across, cost = tries[best], float(costs[best])
        if cost > before - 1e-9:
            break
    return across


def _first_places(web: Web, chance: random.Random) -> np.ndarray:
    """Boxes that stand side by side evenly spread, in an order by chance."""
    across = np.zeros(len(web.middles))
    for row in _rows(web):
        chance.shuffle(row)
        total = sum(web.sizes[box, 0] for box in row)
        gap = (web.right - web.left - total) / (len(row) + 1)
        x = web.left + gap
        for box in row:
            across[box] = x + web.sizes[box, 0] / 2
            x += web.sizes[box, 0] + gap
    return _within(web, across)


def _rows(web: Web) -> list[list[int]]:
    """Boxes in groups that overlap in height."""
    found: list[list[int]] = []
    for box in sorted(range(len(web.middles)), key=lambda box: web.middles[box]):
        top = web.middles[box] - web.sizes[box, 1] / 2
        if found and top < max(web.middles[other] + web.sizes[other, 1] / 2 for other in found[-1]):
            found[-1].append(box)
        else:
            found.append([box])
    return found


def _within(web: Web, across: np.ndarray) -> np.ndarray:
    half = web.sizes[:, 0] / 2
    return np.clip(across, web.left + half, np.maximum(web.right - half, web.left + half))


def _moved(web: Web, across: np.ndarray, box: int) -> np.ndarray:
    """The places with one box at each of many places; shape (tries, n)."""
    half = web.sizes[box, 0] / 2
    tries = np.repeat(across[None, :], _CANDIDATES, axis=0)
    tries[:, box] = np.linspace(web.left + half, max(web.right - half, web.left + half), _CANDIDATES)
    return tries


def _exchanged(web: Web, across: np.ndarray, box: int) -> np.ndarray:
    """The places with one box in the place of each other one; shape (n, n)."""
    tries = np.repeat(across[None, :], len(across), axis=0)
    each = np.arange(len(across))
    tries[each, box], tries[each, each] = across, across[box]
    return np.array([_within(web, one) for one in tries])


def _cost(web: Web, tries: np.ndarray) -> np.ndarray:
    """What each row of places costs; shape (tries,)."""
    cost = _overlaps(web, tries) + _OFF_CENTRE * np.abs(tries - (web.left + web.right) / 2).sum(axis=1)
    if not len(web.links):
        return cost
    food, eater = web.links[:, 0], web.links[:, 1]
    start = np.stack([tries[:, food], np.broadcast_to(web.middles[food], tries[:, food].shape)], axis=-1)
    end = np.stack([tries[:, eater], np.broadcast_to(web.middles[eater], tries[:, eater].shape)], axis=-1)
    cost = cost + _SLANT * np.abs(end - start)[..., 0].sum(axis=1)
    return cost + _THROUGH * _runs_through(web, tries, start, end) + _crossings(web, start, end)


def _overlaps(web: Web, tries: np.ndarray) -> np.ndarray:
    width, height = web.sizes[:, 0], web.sizes[:, 1]
    near = np.abs(web.middles[:, None] - web.middles[None, :]) < (height[:, None] + height[None, :]) / 2 + 12
    alone, linked = web.between
    between = np.full(near.shape, alone)
    between[web.links[:, 0], web.links[:, 1]] = between[web.links[:, 1], web.links[:, 0]] = linked
    lacking = (width[:, None] + width[None, :]) / 2 + between - np.abs(tries[:, :, None] - tries[:, None, :])
    pairs = np.triu(near, 1)[None, :, :] & (lacking > 0)
    return np.where(pairs, _OVERLAP + 20 * lacking, 0).sum(axis=(1, 2))


def _runs_through(web: Web, tries: np.ndarray, start: np.ndarray, end: np.ndarray) -> np.ndarray:
    """How many arrows run through boxes that are not their own; shape (tries,)."""
    points = start[:, :, None, :] + _SAMPLES[None, None, :, None] * (end - start)[:, :, None, :]
    aside = np.abs(points[..., 0][..., None] - tries[:, None, None, :]) < web.sizes[:, 0] / 2 + 10
    inside = aside & (np.abs(points[..., 1][..., None] - web.middles) < web.sizes[:, 1] / 2 + 6)
    foreign = (web.links[:, :, None] != np.arange(len(web.middles))).all(axis=1)
    return (inside.any(axis=2) & foreign[None, :, :]).sum(axis=(1, 2))


def _crossings(web: Web, start: np.ndarray, end: np.ndarray) -> np.ndarray:
    """The cost of arrows that cross, and of those that leave or reach one box under nearly one angle; shape (tries,)."""
    ends = web.links
    shared = (ends[:, None, :, None] == ends[None, :, None, :]).any(axis=(2, 3))
    first = np.triu(np.ones(shared.shape, bool), 1)
    along = end - start

    def side(of: np.ndarray) -> np.ndarray:
        away = of[:, None, :, :] - start[:, :, None, :]
        return np.sign(along[:, :, None, 0] * away[..., 1] - along[:, :, None, 1] * away[..., 0])

    parted = side(start) * side(end) < 0
    crossing = (parted & parted.transpose(0, 2, 1) & (~shared & first)).sum(axis=(1, 2))
    unit = along / np.maximum(np.linalg.norm(along, axis=-1, keepdims=True), 1e-9)
    same_end = (ends[:, None, :] == ends[None, :, :]).any(axis=2) & first
    close = ((unit[:, :, None, :] * unit[:, None, :, :]).sum(axis=-1) > _NARROW) & same_end
    return _CROSSING * crossing + _ALONG * close.sum(axis=(1, 2))
