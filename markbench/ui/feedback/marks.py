"""What shows in the text: live numbers, places still open, words to check.

Formats of a highlighter lie over the document and are no part of it, so nothing shown here
can get into what is kept or undone. Words are judged elsewhere, when typing pauses; this
only paints what was found.
"""

from __future__ import annotations

from PySide6.QtGui import QColor, QFont, QSyntaxHighlighter, QTextCharFormat

from markbench.rubric.pieces import OPEN
from markbench.session.spelling import words_in
from markbench.ui.feedback.field import PieceField, live_runs, piece_of
from markbench.ui.look.theme import Theme


class TextMarks(QSyntaxHighlighter):
    """Dotted: a live number. Bold in the colour of questions: a place still open. Wave: check.
    Struck: a sentence that is no longer true of the readings."""

    def __init__(self, field: PieceField, theme: Theme) -> None:
        super().__init__(field.document())
        self._theme, self._field = theme, field
        #: Words to check, as they are written.
        self.wrong: frozenset[str] = frozenset()
        #: Pieces that are not sent, as they are kept.
        self.struck: frozenset[str] = frozenset()
        theme.changed.connect(self.rehighlight)

    def show_wrong(self, words: frozenset[str]) -> None:
        """Mark these words, wherever they stand."""
        if words != self.wrong:
            self.wrong = words
            self.rehighlight()

    def show_struck(self, pieces: frozenset[str]) -> None:
        """Strike these pieces, wherever they stand."""
        if pieces != self.struck:
            self.struck = pieces
            self.rehighlight()

    def highlightBlock(self, text: str) -> None:
        """Called by Qt for each line that changed."""
        if self.struck and piece_of(self.currentBlock()) in self.struck:
            self.setFormat(0, len(text), self._struck())
            return
        for start, word in words_in(text):
            if word in self.wrong:
                self.setFormat(start, len(word), self._wave())
        for start, shown, _place in live_runs(self.currentBlock()):
            self.setFormat(start, len(shown), self._live())
        for found in OPEN.finditer(text):
            self.setFormat(found.start(), len(found.group()), self._open())

    def _struck(self) -> QTextCharFormat:
        made = QTextCharFormat()
        made.setFontStrikeOut(True)
        made.setForeground(QColor(self._theme.palette.pencil))
        return made

    def _wave(self) -> QTextCharFormat:
        made = QTextCharFormat()
        made.setUnderlineStyle(QTextCharFormat.UnderlineStyle.WaveUnderline)
        made.setUnderlineColor(QColor(self._theme.palette.look))
        return made

    def _live(self) -> QTextCharFormat:
        made = QTextCharFormat()
        made.setUnderlineStyle(QTextCharFormat.UnderlineStyle.DotLine)
        made.setUnderlineColor(QColor(self._theme.palette.pencil))
        return made

    def _open(self) -> QTextCharFormat:
        made = QTextCharFormat()
        made.setForeground(QColor(self._theme.palette.look))
        made.setFontWeight(QFont.Weight.Bold)
        return made
