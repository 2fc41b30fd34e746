"""Drawings in pages are said in few letters, and nothing in them takes another colour, size or place by it."""

from __future__ import annotations

from xml.etree import ElementTree

from figures.compact import compact


def compacted(inner: str) -> ElementTree.Element:
    root = ElementTree.fromstring(f"<svg>{inner}</svg>")
    compact(root)
    return root


def test_an_outline_and_the_shape_above_it_become_one_that_is_outlined_first():
    halo = '<path d="M0 0L5 0L5 5L0 0z" fill="none" stroke="#fff" stroke-width="4"/>'
    (shape,) = compacted(halo + '<path d="M0 0L5 0L5 5z" fill="#123" data-part="arrow"/>')
    assert {"d": "m0 0h5v5z", "fill": "#123", "data-part": "arrow", "stroke": "#fff", "stroke-width": "4", "paint-order": "stroke"} == shape.attrib


def test_a_line_above_another_or_a_see_through_shape_stays_by_itself():
    halo = '<path d="M0 0L5 0" fill="none" stroke="#fff" stroke-width="4"/>'
    for above in ('<path d="M0 0L5 0" fill="none" stroke="#123"/>', '<path d="M0 0L5 0" fill="#123" opacity="0.5"/>', '<path d="M0 0L6 0" fill="#123"/>'):
        assert 2 == len(compacted(halo + above))


def test_what_most_texts_share_is_said_once_and_others_keep_their_own():
    texts = '<text fill="#1" font-size="14" x="1.26" y="2.0">a</text><text fill="#1" font-size="14">b</text><text fill="#2" font-size="19">c</text>'
    root = compacted(texts + '<path d="M0 0L1 1" fill="none"/>')
    assert {"fill": "#1", "font-size": "14"} == root.attrib
    assert [{"x": "1.3", "y": "2"}, {}, {"fill": "#2", "font-size": "19"}] == [text.attrib for text in root.findall("text")]


def test_no_mark_without_a_colour_of_its_own_takes_that_of_texts():
    assert "fill" not in compacted('<text fill="#1">a</text><path d="M0 0L1 1"/>').attrib


def test_texts_begin_at_their_place_unless_they_say_otherwise():
    first, second = compacted('<text text-anchor="start">a</text><text text-anchor="end">b</text>')
    assert (None, "end") == (first.get("text-anchor"), second.get("text-anchor"))
