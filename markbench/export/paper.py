"""A4 pages: type, headings and running foot, shared by everything written as PDF.

The page has one family of type, DejaVu Sans Condensed (Latin, Greek, Cyrillic, Armenian,
Georgian, Hebrew, Arabic). What it has no letters for is shown as an empty box, and
:attr:`Paper.missing` says so; see ``DECISION-paper.md``.
"""

from __future__ import annotations

import datetime as dt
import math
import unicodedata
from collections.abc import Sequence
from importlib.resources import as_file, files

from fpdf import FPDF
from fpdf.enums import Align, TableBordersLayout, XPos, YPos
from fpdf.fonts import FontFace, TTFFont

from markbench.export.plain_text import printable

FAMILY = "paper"
BOX = "□"
INK, QUIET, RULE = 20, 77, 140  # greys, 0 black: text, lesser text (8.5 : 1), lines (3.4 : 1)
_JOINERS = "\u200c\u200d"
_MARGIN_MM = 18.0
_FOOT_MM = 16.0
_FONTS = files("markbench.export") / "fonts"


class Paper(FPDF):
    """An A4 document that remembers which letters it could not print."""

    def __init__(
        self,
        title: str,
        foot: str,
        date: dt.date,
        language: str = "en",
        page: str = "page {n} of {of}",
    ) -> None:
        super().__init__(format="A4")
        self.missing: set[str] = set()
        self._foot, self._page = foot, page
        for style, file in (("", "DejaVuSansCondensed.ttf"), ("B", "DejaVuSansCondensed-Bold.ttf")):
            with as_file(_FONTS / file) as path:
                self.add_font(FAMILY, style, path)
        # A letter is printed only where both have it.
        self._letters = set.intersection(
            *(set(font.cmap) for font in self.fonts.values() if isinstance(font, TTFFont))
        )
        self.set_margins(_MARGIN_MM, 16, _MARGIN_MM)
        self.c_margin = 0
        self.set_auto_page_break(True, _FOOT_MM + 4)
        self.set_title(printable(title))
        self.set_lang(language)
        self.set_creator("Markbench")
        # The day, not the moment: the same sheet written twice has the same bytes.
        self.set_creation_date(dt.datetime.combine(date, dt.time(), dt.UTC))
        self.add_page()

    def footer(self) -> None:
        """Whose page this is and which of how many, so that loose pages find each other."""
        self.set_y(-_FOOT_MM)
        self.line_across()
        self.set_y(-_FOOT_MM + 1.5)
        self.pen(8, grey=QUIET)
        self.cell(24, 4, self._page.format(n=self.page_no(), of="{nb}"))
        foot = self._fitting(self._foot, 145)
        self.set_text_shaping(_needs_shaping(foot))
        self.cell(0, 4, foot)
        self.set_text_shaping(False)

    def pen(self, size: float, *, bold: bool = False, grey: int = INK) -> None:
        """Choose size (points), weight and grey of the text that follows."""
        self.set_font(FAMILY, "B" if bold else "", size)
        self.set_text_color(grey)

    def heading(self, text: str, keep_mm: float = 30) -> None:
        """A section's title over a line; on a new page unless ``keep_mm`` follow it here."""
        self.ln(4)
        if self.will_page_break(keep_mm):
            self.add_page()
        self.pen(12, bold=True)
        self.say(text, 6)
        self.line_across(INK, 0.4)
        self.ln(2)

    def say(self, text: str, height: float, *, width: float = 0, align: str = "L") -> None:
        """Text wrapped into lines ``height`` mm apart, then down to the next line."""
        text = self.shown(text)
        self.set_text_shaping(_needs_shaping(text))
        self.multi_cell(width, height, text, align=align, new_x=XPos.LMARGIN, new_y=YPos.NEXT)
        self.set_text_shaping(False)

    def rows(self, rows: Sequence[Sequence[str]], widths_mm: Sequence[float], align: str) -> None:
        """A table. The first row holds the headings, which come again on every page.

        ``align`` has one letter for each column: L or R.
        """
        shown = [[self.shown(cell) for cell in row] for row in rows]
        self.pen(9)
        self.set_draw_color(RULE)
        self.set_line_width(0.2)
        self.set_text_shaping(any(_needs_shaping(cell) for row in shown for cell in row))
        with self.table(
            width=math.fsum(widths_mm),
            col_widths=tuple(widths_mm),
            align=Align.L,
            text_align=tuple(align),
            line_height=4.8,
            padding=(0.3, 1, 0.3, 1),
            borders_layout=TableBordersLayout.HORIZONTAL_LINES,
            headings_style=FontFace(family=FAMILY, emphasis="BOLD"),
        ) as table:
            for row in shown:
                table.row(row)
        self.set_text_shaping(False)

    def line_across(self, grey: int = RULE, width: float = 0.2) -> None:
        """A line over the width of the text."""
        self.set_draw_color(grey)
        self.set_line_width(width)
        self.line(self.l_margin, self.get_y(), self.w - self.r_margin, self.get_y())

    def shown(self, text: str) -> str:
        """The text as this type can show it: composed, and boxes for letters it has not."""
        text = unicodedata.normalize("NFC", printable(text)).replace("\t", " ")
        signs = []
        for sign in text:
            # Direction marks and the like go: each text stands in a line of its own here.
            if unicodedata.category(sign) == "Cf" and sign not in _JOINERS:
                continue
            if sign != "\n" and ord(sign) not in self._letters:
                self.missing.add(sign)
                sign = BOX
            signs.append(sign)
        return "".join(signs)

    def bytes(self) -> bytes:
        """The finished document."""
        return bytes(self.output())

    def _fitting(self, text: str, width: float) -> str:
        text = self.shown(text)
        while text and self.get_string_width(text) > width:
            text = text[:-2].rstrip() + "…"
        return text


def _needs_shaping(text: str) -> bool:
    """Whether letters join, stand on each other or run from the right.

    Shaping everything would take four times as long and change nothing else.
    """
    return any(
        unicodedata.bidirectional(sign) in ("R", "AL") or unicodedata.combining(sign)
        for sign in text
    )
