from __future__ import annotations

import dataclasses
import itertools

import pytest
from coloraide import Color

from markbench.ui.look.contrast import contrast
from markbench.ui.look.tokens import APART, DARK, LIGHT, PAIRS, Palette


# Contrast on white of well-known colours, from the published WCAG 2.2 formula worked by
# hand tools elsewhere; tolerance 1e-4 because the values are given to that.
@pytest.mark.parametrize(
    ("colour", "ratio"),
    [
        ("#767676", 4.5422),
        ("#777777", 4.4781),
        ("#949494", 3.0335),
        ("#595959", 7.0047),
        ("#0000ff", 8.5925),
        ("#ff0000", 3.9985),
        ("#008000", 5.1374),
        ("#ffff00", 1.0738),
        ("#000000", 21.0),
    ],
)
def test_contrast_on_white_is_the_published_one(colour: str, ratio: float) -> None:
    assert contrast(colour, "#ffffff") == pytest.approx(ratio, abs=1e-4)
    assert contrast("#ffffff", colour) == pytest.approx(ratio, abs=1e-4)


@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize(("front", "ground", "least"), PAIRS)
def test_every_pair_of_tokens_is_readable(
    palette: Palette, front: str, ground: str, least: float
) -> None:
    assert contrast(getattr(palette, front), getattr(palette, ground)) >= least


# Eyes without one kind of cone as coloraide simulates them (Brettel, Viénot and Mollon 1997;
# Viénot, Brettel and Mollon 1999), differences by CIEDE2000 (ISO/CIE 11664-6). About 2 is just
# noticed by somebody who looks for it; 10 as the least is our own choice, no source.
@pytest.mark.parametrize("eyes", ["all cones", "protan", "deutan", "tritan"])
@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize(
    ("one", "other"), [pair for group in APART for pair in itertools.combinations(group, 2)]
)
def test_colours_that_differ_in_meaning_differ_to_every_eye(
    palette: Palette, one: str, other: str, eyes: str
) -> None:
    seen = [Color(getattr(palette, name)) for name in (one, other)]
    if eyes != "all cones":
        seen = [colour.filter(eyes) for colour in seen]
    assert seen[0].delta_e(seen[1], method="2000") >= 10


def test_every_token_but_the_decorative_ones_is_tested() -> None:
    tested = {name for front, ground, _ in PAIRS for name in (front, ground)}
    named = {field.name for field in dataclasses.fields(Palette)}
    assert named - tested == {"rule", "graph", "margin", "idle"}


# WCAG 2.2, 1.4.3 and 1.4.11 except what is not active; that it looks so is ours to see to.
@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
def test_a_tool_that_can_do_nothing_looks_so(palette: Palette) -> None:
    assert contrast(palette.idle, palette.bench) < contrast(palette.ink, palette.bench) / 4
