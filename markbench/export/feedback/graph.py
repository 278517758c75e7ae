"""The learner's own graph as plain strokes, so that PDF and web page draw the same one.

Lengths on the page are in points, from the top left corner, y downwards.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from markbench.export.feedback.wording import EN, SheetWords
from markbench.model import Analysis, StraightLine

WIDTH, HEIGHT = 470.0, 205.0
_LEFT, _RIGHT, _TOP, _BOTTOM = 44.0, 10.0, 10.0, 34.0
_TICK_SIZE, _TITLE_SIZE = 8.5, 9.5


@dataclass(frozen=True, slots=True)
class Stroke:
    """A straight line; ``grey`` 0 (black) to 1, ``dash`` the length of dashes, 0 for none."""

    x1: float
    y1: float
    x2: float
    y2: float
    width: float = 0.7
    grey: float = 0.0
    dash: float = 0.0


@dataclass(frozen=True, slots=True)
class Dot:
    """A filled disc."""

    x: float
    y: float
    radius: float


@dataclass(frozen=True, slots=True)
class Words:
    """Text on its baseline; ``turned`` runs upwards."""

    x: float
    y: float
    text: str
    size: float
    anchor: Literal["start", "middle", "end"] = "middle"
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Graph:
    """T² against L: what to draw, in drawing order, and the same in words."""

    width: float
    height: float
    shapes: tuple[Stroke | Dot | Words, ...]
    description: str
    has_line: bool


@dataclass(frozen=True, slots=True)
class _Scale:
    """From a quantity to a place on the page."""

    low: float
    high: float
    at_low: float
    at_high: float

    def __call__(self, value: float) -> float:
        share = (value - self.low) / (self.high - self.low)
        return self.at_low + share * (self.at_high - self.at_low)


def graph(analysis: Analysis | None, words: SheetWords = EN) -> Graph | None:
    """The graph of what was recomputed; ``None`` without a single finite point."""
    points = [
        (row.length_m, row.period_squared_s2)
        for row in (analysis.rows if analysis is not None else ())
        if math.isfinite(row.length_m) and math.isfinite(row.period_squared_s2)
    ]
    line = _drawable(analysis.line) if analysis is not None else None
    if not points or max(length for length, _ in points) <= 0:
        return None
    longest = max(length for length, _ in points)
    heights = [0.0, *(squared for _, squared in points)]
    if line is not None:
        heights += [_on(line, 0.0), _on(line, longest)]
    tall = (max(heights) - min(heights)) or 1.0
    low = min(heights) - 0.05 * tall if min(heights) < 0 else 0.0
    x = _Scale(0.0, 1.06 * longest, _LEFT, WIDTH - _RIGHT)
    y = _Scale(low, max(heights) + 0.06 * tall, HEIGHT - _BOTTOM, _TOP)
    shapes: list[Stroke | Dot | Words] = [*_axes(x, y, words), *_fitted(line, points, x, y)]
    shapes += [Dot(x(length), y(squared), 2.6) for length, squared in points]
    return Graph(WIDTH, HEIGHT, tuple(shapes), _description(points, line, words), line is not None)


def ticks(low: float, high: float, most: int = 6) -> list[float]:
    """Round values from ``low`` to ``high`` in steps of 1, 2 or 5; at least two of them.

    There are no more than ``most`` steps.
    """
    rough = (high - low) / most
    size = 10.0 ** math.floor(math.log10(rough))
    step = size * next(m for m in (1, 2, 5, 10) if m * size >= rough * (1 - 1e-9))
    first, last = math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9)
    return [round(k * step, 12) for k in range(first, last + 1)]


def _drawable(line: StraightLine | None) -> StraightLine | None:
    if line is None or not math.isfinite(line.slope_s2_per_m + line.intercept_s2):
        return None
    return line


def _on(line: StraightLine, length_m: float) -> float:
    return line.intercept_s2 + line.slope_s2_per_m * length_m


def _axes(x: _Scale, y: _Scale, words: SheetWords) -> Iterator[Stroke | Words]:
    x_ticks, y_ticks = ticks(x.low, x.high, 9), ticks(y.low, y.high)
    left, right, bottom, top = x.at_low, x.at_high, y.at_low, y.at_high
    for value in x_ticks:
        yield Stroke(x(value), bottom, x(value), top, 0.4, 0.82)
    for value in y_ticks:
        yield Stroke(left, y(value), right, y(value), 0.4, 0.82)
    yield Stroke(left, y(0.0), right, y(0.0), 0.9)
    yield Stroke(left, bottom, left, top, 0.9)
    for value in x_ticks:
        yield Words(x(value), bottom + 12, words.figures(_tick_text(value, x_ticks)), _TICK_SIZE)
    for value in y_ticks:
        shown = words.figures(_tick_text(value, y_ticks))
        yield Words(left - 5, y(value) + 3, shown, _TICK_SIZE, "end")
    yield Words((left + right) / 2, HEIGHT - 6, words.length_axis, _TITLE_SIZE)
    yield Words(11, (top + bottom) / 2, "T² / s²", _TITLE_SIZE, turned=True)


def _fitted(
    line: StraightLine | None, points: list[tuple[float, float]], x: _Scale, y: _Scale
) -> Iterator[Stroke]:
    """Whole through the learner's lengths, dashed back to L = 0, where nothing was timed."""
    if line is None:
        return
    shortest, longest = (pick(length for length, _ in points) for pick in (min, max))
    ends = [(x(length), y(_on(line, length))) for length in (0.0, shortest, longest)]
    yield Stroke(*ends[0], *ends[1], 1.0, 0.25, 4.0)
    yield Stroke(*ends[1], *ends[2], 1.2, 0.25)


def _tick_text(value: float, among: list[float]) -> str:
    step = among[1] - among[0]
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    return f"{value:.{decimals}f}"


def _description(
    points: list[tuple[float, float]], line: StraightLine | None, words: SheetWords
) -> str:
    shown = "; ".join(
        f"{words.figures(f'{length:.3f}')} m, {words.figures(f'{squared:.3f}')} s²"
        for length, squared in points
    )
    drawn = words.described_no_line
    if line is not None:
        told = words.described_line.format(intercept=line.intercept_s2, slope=line.slope_s2_per_m)
        drawn = words.figures(told)
    return words.described.format(line=drawn, points=shown)
