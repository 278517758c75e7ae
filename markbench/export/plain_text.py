"""Text made safe to stand in a spreadsheet, looking the same as before.

A learner's file name or heading can begin so that a spreadsheet runs it as a formula. The
signs are those of OWASP ASVS 5.0, 1.2.10 and CWE-1236, with the carriage return, line feed
and full-width forms of OWASP's page on CSV injection. Spaces before them are looked
through, since some programs drop these on reading.
"""

from __future__ import annotations

import re

FORMULA_SIGNS = frozenset("=+-@\t\r\n\0＝＋－＠")
# A cell of a workbook holds this many UTF-16 units (ECMA-376 leaves it open; the
# spreadsheet programs do not).
CELL_LIMIT = 32_767
_CUT = " … (cut here: the cell is full)"

# XML 1.0, production [2], has no place for these.
_ILLEGAL = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")
# Spreadsheets read _x0041_ in a cell as the letter A (ECMA-376, part 1, 22.9.2.19).
_ESCAPE = re.compile(r"_(?=x[0-9A-Fa-f]{4}_)")


def looks_like_formula(text: str) -> bool:
    """Whether a spreadsheet might run the text, were it typed in or read from a csv."""
    return text[:1] in FORMULA_SIGNS or text.lstrip()[:1] in FORMULA_SIGNS if text else False


def printable(text: str) -> str:
    """The text with line ends as ``\\n`` and characters no file may hold made visible.

    A control character becomes its picture (NUL: ␀), so that nothing disappears; half a
    surrogate pair becomes the replacement character.
    """
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    return _ILLEGAL.sub(_picture, text)


def for_cell(text: str) -> str:
    """The text as a workbook cell holds it: printable, short enough, and not decoded."""
    text = _ESCAPE.sub("_x005F_", printable(text))
    if len(text) > CELL_LIMIT // 2 and _units(text) > CELL_LIMIT:
        room = CELL_LIMIT - _units(_CUT)
        kept = text.encode("utf-16-le")[: 2 * room].decode("utf-16-le", "ignore")
        text = kept + _CUT
    return text


def for_csv(text: str) -> str:
    """The text as a csv field: printable, and led by a single quote where it could run."""
    return f"'{printable(text)}" if looks_like_formula(text) else printable(text)


def _picture(match: re.Match[str]) -> str:
    code = ord(match.group())
    return chr(0x2400 + code) if code < 0x20 else "\ufffd"


def _units(text: str) -> int:
    return len(text.encode("utf-16-le")) // 2
