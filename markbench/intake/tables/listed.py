"""One line of text for each length: “20cm - 8.9s, 9.1s”, “L = 20 cm: t1 = 8.9, t2 = 9.1”.

Such a line is parted into cells at its numbers, not at one separator: a value to a cell, a
label (“t1”, “mean”, “10 swings”) to a cell of its own. A line counts as one of a list only if
it says that its first number is a length and holds nothing but numbers, labels and linking
words after it; a sentence with numbers in it is left a sentence.
"""

from __future__ import annotations

import re

from markbench.intake.tables.headings import (
    NOTHING,
    Heading,
    join,
    plain,
    understand,
    unit_named,
    words,
)
from markbench.intake.tables.lines import Found, Line, not_understood
from markbench.intake.tables.unheaded import put
from markbench.intake.tables.units import dimension
from markbench.intake.tables.values import mistyped, read_text
from markbench.intake.tables.view import View
from markbench.model import say

# A number, or what a slip of the finger made of one ("11.0O", "l2.6").
_VALUE = re.compile(
    r"(?<![\w.,:])(?:\d+(?:[.,:]\d+)*(?![.,:]*[\dOoIl|])|[OIl|]?\d[\d.,:OoIl|]*[\dOoIl|])"
)
_UNIT = re.compile(r"\s*([^\W\d_]{1,14}\.?|\"|'')(?![^\W_])")
# "1. 20 cm: …", "2) 30 cm: …"
_NUMBERED = re.compile(r"\(?\d{1,2}[.)]\s+(?=\d+(?:[.,]\d+)?\s*[^\W\d_])")
# "20: 8.9, 9.1", "20 -> 8.9": that the first is a length is for the pendulum's law to say.
_BARE_FIRST = re.compile(r"\s*(?::\s|[-=]+>|[-=]\s)")
_LONGEST_LABEL = 24


def list_cells(line: str) -> list[str] | None:
    """The cells of one line of a list; ``None`` for any other line."""
    text = _NUMBERED.sub("", plain(line).strip())
    if not 4 <= len(text) <= 200 or not text[-1:].strip():
        return None
    if (counted := words().counted.search(text.casefold())) is not None:
        # "for 10 swings" speaks of every time in its line.
        count = text[counted.start() : counted.end()]
        text = f"{text[: counted.start()]} {text[counted.end() :]}"
    cells: list[str] = []
    end = 0
    bare = False
    for match in _VALUE.finditer(text):
        between = text[end : match.start()]
        label = _label(between)
        if label is None:
            return None
        heads = understand(label).quantity == "length" and between.rstrip()[-1] not in "=:≈~-"
        end = match.end()
        unit = _UNIT.match(text, end)
        if unit and (unit[1] in ('"', "''") or unit_named(unit[1])):
            end = unit.end()
        bare = bare or (not cells and not label and _BARE_FIRST.match(text, end) is not None)
        cells += [label] if label else []
        cells.append(text[match.start() : end].strip())
        value = read_text(cells[-1])
        if mistyped(cells[-1]):
            continue
        if value.number is None or (heads and dimension(value.unit) != "length"):
            return None  # a line of headings names lengths and goes on to other numbers
    if _label(text[end:]) is None or len(cells) < 2:
        return None
    cells += [count] if counted is not None else []
    said = bare or mistyped(cells[0]) or _length_at(cells) is not None
    return cells if said else None


def _label(between: str) -> str | None:
    """The label in the text before a value, "" for none; ``None``: words of a sentence."""
    linking = words().find["and"]
    label = linking.sub(" ", between).strip(" \t-–—•*>·.,;:/|&=~≈()[]#_+")
    if not label:
        return ""
    if len(label) > _LONGEST_LABEL or understand(label) is NOTHING:
        return None
    return label


def _length_at(cells: list[str]) -> int | None:
    """Which cell is the length, if a unit or a label before it says so and a number follows."""
    heading = NOTHING
    for place, cell in enumerate(cells):
        value = read_text(cell)
        if value.number is None:
            heading = understand(cell)
            continue
        if dimension(value.unit) == "length" or (
            heading.quantity == "length" and value.unit is None
        ):
            after = cells[place + 1 :]
            return place if any(read_text(c).number or mistyped(c) for c in after) else None
        return None
    return None


def find_listed(view: View, learner: str) -> list[Found]:
    """Rows that begin with a length and go on with its times, under no headings."""
    table = Found(view.grid, [])
    first_row = last_row = -1
    for row, cells in enumerate(view.cells):
        line = _line(view, row, table, learner)
        if line is None:
            continue
        if last_row >= 0 and len(cells) > 0 and row - last_row > 3:
            break
        table.lines.append(line)
        first_row = row if first_row < 0 else first_row
        last_row = row
    if len(table.lines) < 2:
        return []
    table.region = (first_row, 0, last_row, max(map(len, view.cells)) - 1)
    return [table]


def _line(view: View, row: int, table: Found, learner: str) -> Line | None:
    line: Line | None = None
    heading: Heading = NOTHING
    count: Heading = NOTHING
    for column, cell in enumerate(view.cells[row]):
        value = view.value(row, column)
        if value.number is None:
            if isinstance(cell, str) and mistyped(cell):
                at = (*view.at(row, column), say("a length" if line is None else "a timing"))
                table.findings.append(not_understood(learner, view.grid, *at, value.trouble))
                if line is None:
                    return None
            elif isinstance(cell, str) and cell.strip():
                heading = view.heads[row].get(column, NOTHING)
                if heading is NOTHING and line is None:
                    return None
                if heading.swings is not None:
                    count = heading
            continue
        ref = view.ref(row, column, heading)
        if line is not None:
            if ref.value.number and ref.value.number > 0:
                put(line, ref)
        elif dimension(value.unit) == "length" or (
            heading.quantity == "length" and value.unit is None
        ):
            line, heading = Line(ref), NOTHING
        else:
            return None
    if line is None or not line.timings:
        return None
    for ref in line.timings:
        if count.swings is not None and ref.heading.swings is None:
            ref.heading = join(count, ref.heading)
    return line
