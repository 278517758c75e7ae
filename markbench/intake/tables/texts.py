"""Text files to raw cells: which encoding, which separator.

The encodings that school programs write can be told apart by byte order marks, by UTF-8's
own strictness, and, between the Windows code pages, by which one yields words that headings
use: a general guesser of encodings has too little text to go on in so small a file.
"""

from __future__ import annotations

import csv
import io
import math
import re
from collections import Counter

from markbench.intake.tables.grid import LONGEST_CELL, Grid
from markbench.intake.tables.headings import understand
from markbench.intake.tables.listed import list_cells
from markbench.intake.tables.values import read_text
from markbench.intake.tables.workbooks import MOST_CELLS, MOST_COLUMNS, MOST_ROWS, UnreadableError
from markbench.model import say

# Likelier separators first, for ties.
_SEPARATORS = ("\t", ";", "|", ",", "  ", " ")
_SPACES = {"  ": re.compile(r"\s{2,}"), " ": re.compile(r"\s+")}
_AFTER_BRACKET = re.compile(r"(?<=[)\]])\s+")
_MOST_LINES = 10_000
_LONGEST_LINE = 100_000
_WORD = re.compile(r"[^\W\d_]{3,}")


def decode(data: bytes) -> str:
    """The text of a file; :class:`UnreadableError` for one that is no text."""
    for mark, encoding in (
        (b"\xef\xbb\xbf", "utf-8-sig"),
        (b"\xff\xfe", "utf-16"),
        (b"\xfe\xff", "utf-16"),
    ):
        if data.startswith(mark):
            return data.decode(encoding, "replace")
    head = data[:2000]
    if b"\0" in head:
        for encoding, zeros in (("utf-16-le", head[1::2]), ("utf-16-be", head[::2])):
            if zeros.count(0) > 0.7 * len(zeros):
                return data.decode(encoding, "replace")
        raise UnreadableError(say("it is neither a spreadsheet nor a text file"))
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        pass
    if sum(byte < 9 or 13 < byte < 32 for byte in head) > 0.02 * len(head):
        raise UnreadableError(say("it is neither a spreadsheet nor a text file"))
    texts = []
    for encoding in ("cp1252", "cp1250"):
        try:
            texts.append(data.decode(encoding))
        except UnicodeDecodeError:
            continue
    return max(texts, key=_known_words) if texts else data.decode("latin-1")


def _known_words(text: str) -> int:
    """How many words with a letter beyond ASCII a heading could have."""
    return sum(
        understand(word).worded for word in set(_WORD.findall(text[:4000])) if not word.isascii()
    )


def read_delimited(name: str, data: bytes) -> Grid:
    """The one grid of a text file, rows and columns counted as the file has them."""
    lines = decode(data).splitlines()
    too_long = len(lines) > _MOST_LINES or any(len(line) > _LONGEST_LINE for line in lines)
    if too_long:
        lines = [line[:_LONGEST_LINE] for line in lines[:_MOST_LINES]]
    if not any(line.strip() for line in lines):
        raise UnreadableError(say("it is empty"))
    first = 0
    separator = ""
    listed = [list_cells(line) for line in lines]
    if (match := re.fullmatch(r"\s*sep=(.)\s*", lines[0])) is not None:
        separator, first = match[1], 1
    separator, score = (separator, math.inf) if separator else _separator(lines[:200])
    shown = [cells for cells in listed[:200] if cells is not None]
    # By the same count as for a separator, and distinctly better.
    if len(shown) > 1 and len(shown) + 0.2 * _evenness(shown) > 1.1 * score:
        rows = [
            [line] if cells is None else cells for line, cells in zip(lines, listed, strict=True)
        ]
    else:
        rows = _split(lines, separator)
    if first:
        rows[0] = [""]
    joined = _decimals_joined(rows) if separator == "," else None
    rows = joined or rows
    width = max(map(len, rows), default=0)
    kept = min(width, MOST_COLUMNS)
    most = min(MOST_ROWS, max(1, MOST_CELLS // max(1, kept)))
    return Grid(
        name,
        "",
        tuple(
            tuple(cell[:LONGEST_CELL] for cell in row[:kept]) + ("",) * (kept - len(row))
            for row in rows[:most]
        ),
        cut=too_long or len(rows) > most or width > kept,
        text=True,
        joined=joined is not None,
    )


def _split(lines: list[str], separator: str) -> list[list[str]]:
    if separator in _SPACES:
        rows = [_SPACES[separator].split(line.strip()) for line in lines]
        rows = _labels_freed(rows)
        usual = max((len(row) for row in rows if _share(row) > 0.9), default=0)
        return [
            _AFTER_BRACKET.split(line.strip())
            if len(row) > usual and len(_AFTER_BRACKET.split(line.strip())) == usual
            else row
            for line, row in zip(lines, rows, strict=True)
        ]
    quoted = any(line.count('"') >= 2 for line in lines)
    if not quoted:
        return [line.split(separator) for line in lines]
    rows = []
    reader = csv.reader(
        io.StringIO("\n".join(lines)), delimiter=separator, skipinitialspace=True, strict=False
    )
    try:
        for row in reader:
            while len(rows) < reader.line_num - 1:  # a quoted cell may run over lines
                rows.append([])
            rows.append(row)
    except csv.Error:  # a cell beyond the csv module's limit: split it plainly
        return [line.split(separator) for line in lines]
    return rows


_DIGITS = re.compile(r"\s*\d{1,4}\s*")


def _decimals_joined(rows: list[list[str]]) -> list[list[str]] | None:
    """Rows in which the comma parts both the columns and the decimals, put together again.

    ``20,8,93,9,02`` under three headings. Only where every row of numbers is of whole
    numbers, as many of them as one heading each and a decimal part for all columns, or for
    all but the first, would make.
    """
    bodies = [row for row in rows if len(row) > 2 and all(map(_DIGITS.fullmatch, row))]
    heads = [row for row in rows if any(understand(cell).quantity == "length" for cell in row)]
    widths = set(map(len, bodies))
    if len(bodies) < 2 or len(widths) != 1 or not heads:
        return None
    width, columns = widths.pop(), len(heads[0])
    whole = 2 * columns - width  # columns without decimals
    if whole not in (0, 1) or any(len(row) != columns for row in heads):
        return None

    def joined(row: list[str]) -> list[str]:
        parts = [cell.strip() for cell in row[whole:]]
        return [*row[:whole], *(",".join(parts[i : i + 2]) for i in range(0, len(parts), 2))]

    is_body = {id(row) for row in bodies}
    return [joined(row) if id(row) in is_body else row for row in rows]


def _labels_freed(rows: list[list[str]]) -> list[list[str]]:
    """Part a label from the value typed one space behind it, where its row is one cell short.

    ``length 20cm   30cm   40cm`` above ``try 1   9.1s   11.0s   12.7s``: left together, every
    length would stand over its neighbour's times.
    """
    shown = [row for row in rows if len(row) > 2 and _share(row[1:]) > 0.9]
    most = max(map(len, shown), default=0)
    if sum(len(row) == most for row in shown) < 2:
        return rows
    freed = []
    for row in rows:
        parts = row[0].rsplit(maxsplit=1) if row else []
        if (
            len(row) == most - 1
            and any(row is one for one in shown)
            and len(parts) == 2
            and read_text(parts[0]).number is None
            and read_text(parts[1]).number is not None
        ):
            row = [*parts, *row[1:]]
        freed.append(row)
    return freed


def _share(row: list[str]) -> float:
    """Share of a row's filled cells that are numbers."""
    filled = [cell for cell in row if cell.strip()]
    return (
        sum(read_text(c).number is not None for c in filled if len(c) <= 80) / len(filled)
        if filled
        else 0.0
    )


def _evenness(rows: list[list[str]]) -> int:
    """How many rows have the commonest number of cells."""
    return Counter(map(len, rows)).most_common(1)[0][1]


def _separator(lines: list[str]) -> tuple[str, float]:
    """The separator that leaves the most cells readable in the most even rows, and how well.

    The score is the sum of the shares of readable cells in each row, and a little for evenness.
    """
    best, best_score = "\t", 0.0
    with_digits = [line for line in lines if any(c.isdigit() for c in line)][:60]
    for separator in _SEPARATORS:
        if separator.strip() and not any(separator in line for line in lines):
            continue
        rows = [row for row in _split(with_digits, separator) if len(row) > 1]
        if not rows:
            continue
        even = _evenness(rows)
        numbers = sum(_share(row) for row in rows)
        if separator in _SPACES and numbers < 0.6 * len(with_digits):
            continue  # words of a sentence, not cells
        score = numbers + 0.2 * even
        # Spaces also part the words of a heading: they must do distinctly better.
        if score > best_score * (1.5 if separator in _SPACES else 1.02) + 1e-9:
            best, best_score = separator, score
    return best, best_score
