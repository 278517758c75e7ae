"""Colours, spaces and sizes by their meaning; no other module names a colour.

Data colours set out from Okabe and Ito's, made lighter or darker until eyes without one kind
of cone tell them apart as well, and each has a shape or a line style of its own in
:mod:`markbench.ui.look.marks`, so that nothing is told by colour alone. ``PAIRS`` lists every
foreground with the ground it stands on and the least contrast allowed, ``APART`` the colours
that stand side by side and mean different things; a test computes them all in both palettes.
"""

from __future__ import annotations

from dataclasses import dataclass

# Logical pixels; one step is a hair's breadth, the last the margin of a page.
SPACE = (2, 4, 8, 12, 16, 24, 32)

# Logical pixels at 100 %.
TYPE = {"small": 12.0, "body": 13.5, "lead": 16.0, "title": 22.0}

SERIF = '"Charter", "Iowan Old Style", "Palatino Linotype", "Noto Serif", "Georgia", "DejaVu Serif"'
PLAIN = ("Noto Sans", "Segoe UI", "Helvetica Neue", "DejaVu Sans")


@dataclass(frozen=True, slots=True)
class Palette:
    """One set of colours as ``#rrggbb``."""

    bench: str  # what the papers lie on
    paper: str  # cards, tables, panels
    field: str  # where one writes
    shade: str  # a pressed or hovered control, a heading row
    ink: str  # text, and a person's marks
    pencil: str  # quieter text, and drafts
    rule: str  # hairlines, decorative
    graph: str  # graph-paper ruling, decorative
    edge: str  # borders of controls
    idle: str  # a tool that can do nothing now; decorative (WCAG 2.2 asks none of it)
    margin: str  # the margin line of the marking sheet, decorative
    deed: str  # what one can do; focus; chosen
    on_deed: str  # text on it
    deed_soft: str  # ground of a chosen row
    look: str  # findings to look at before marking
    look_soft: str  # ground of a questioned cell
    ask: str  # findings to ask about
    ask_soft: str
    data: str  # the learner's readings
    law: str  # local law
    ghost: str  # a chosen explanation
    crowd: str  # the class, behind


LIGHT = Palette(
    bench="#ece4d6",
    paper="#faf6ee",
    field="#fffdf9",
    shade="#f0e9dc",
    ink="#2a241d",
    pencil="#5f574a",
    rule="#d9cfbd",
    graph="#ece3d3",
    edge="#857a67",
    idle="#b7ab97",
    margin="#d59a90",
    deed="#1f5a4c",
    on_deed="#fdfaf4",
    deed_soft="#dce6da",
    look="#7c2207",
    look_soft="#f7dfcd",
    ask="#806000",
    ask_soft="#f5e8c4",
    data="#0072b2",
    law="#c05400",
    ghost="#7a2a5a",
    crowd="#978d7b",
)

DARK = Palette(
    bench="#191714",
    paper="#24211d",
    field="#2b2823",
    shade="#312d27",
    ink="#efe8da",
    pencil="#b9af9c",
    rule="#3d382f",
    graph="#2e2a24",
    edge="#8c826f",
    idle="#575046",
    margin="#7d4f48",
    deed="#86c9b2",
    on_deed="#10211b",
    deed_soft="#2b3d36",
    look="#f28150",
    look_soft="#4b2f20",
    ask="#ecd06c",
    ask_soft="#42371a",
    data="#56b4e9",
    law="#e69f00",
    ghost="#f2c2d6",
    crowd="#7a7264",
)

# Least contrast: 4.5 for text (WCAG 2.2, 1.4.3), 3 for controls and graph marks (1.4.11).
_TEXT, _OBJECT = 4.5, 3.0
PAIRS: tuple[tuple[str, str, float], ...] = (
    *((text, ground, _TEXT) for text in ("ink", "pencil") for ground in (
        "bench", "paper", "field", "shade", "deed_soft", "look_soft", "ask_soft")),
    *((text, ground, _TEXT) for text in ("look", "ask", "deed") for ground in (
        "bench", "paper", "field", "shade")),
    ("look", "look_soft", _TEXT),
    ("ask", "ask_soft", _TEXT),
    ("deed", "deed_soft", _TEXT),
    ("on_deed", "deed", _TEXT),
    *(("edge", ground, _OBJECT) for ground in ("bench", "paper", "field", "shade")),
    *((mark, ground, _OBJECT) for mark in ("data", "law", "ghost", "crowd") for ground in (
        "paper", "field")),
)  # fmt: skip

# Told apart by what they mean, on a graph and in a list of questions.
APART: tuple[tuple[str, ...], ...] = (
    ("data", "law", "ghost", "crowd"),
    ("look", "ask", "deed"),
)
