from __future__ import annotations

import dataclasses

import pytest

from markbench.ui.look.contrast import contrast
from markbench.ui.look.tokens import DARK, LIGHT, PAIRS, Palette


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


def test_every_token_but_the_decorative_ones_is_tested() -> None:
    tested = {name for front, ground, _ in PAIRS for name in (front, ground)}
    named = {field.name for field in dataclasses.fields(Palette)}
    assert named - tested == {"rule", "graph", "margin"}
