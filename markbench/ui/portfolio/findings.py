"""The findings on one learner; choosing one shows the very cell or picture it speaks of."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QEnterEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from markbench.checks.diagnosis.sentences import title
from markbench.checks.wording import how_often
from markbench.model import Concern, Finding
from markbench.ui.desk import Desk
from markbench.ui.look.marks import paint_concern, pen
from markbench.ui.look.said import figures, said
from markbench.ui.look.theme import Theme
from markbench.ui.parts import Glyph, label, quiet_scroll


class FindingRow(QWidget):
    """One finding: shape, sentence, question, source. Enter, Space or a click chooses it."""

    chosen = Signal(object)

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self.finding: Finding | None = None
        self._hovered = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self._message = label(wrap=True)
        self._more = label(kind="small", wrap=True)
        glyph = Glyph(theme, self._paint_glyph)
        words = QVBoxLayout()
        words.setSpacing(1)
        words.addWidget(self._message)
        words.addWidget(self._more)
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 5, 8, 5)
        row.setSpacing(8)
        row.addWidget(glyph, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)

    def show_finding(self, finding: Finding) -> None:
        """Show another finding in this row."""
        self.finding = finding
        told = said(finding.message)
        if finding.check == "slip":  # its sentence stands under the explanations already
            words = self.tr("An explanation fits better than ordinary scatter: {slip}.")
            told = words.format(slip=said(title(str(finding.numbers["slip"]))))
        self._message.setText(told)
        self._more.setText("  ·  ".join(self._parts(finding)))
        self._more.setVisible(bool(self._more.text()))
        self.setAccessibleName(told)
        self.setAccessibleDescription(self._more.text())
        self.update()

    def _parts(self, finding: Finding) -> list[str]:
        """What to ask, where it stands, and how often honest work looks so."""
        if finding.explained_by:
            slip = said(title(finding.explained_by))
            return [self.tr("✓ Explained, as agreed: {slip}").format(slip=slip)]
        parts = [said(finding.ask)] if finding.ask else []
        if finding.sources:
            parts.append(said(str(finding.sources[0])))
        if finding.honest_rate is not None:
            way, number = how_often(finding.honest_rate)
            parts.append(self.tr(way).format(n=figures(number)))
        return parts

    def _paint_glyph(self, painter: QPainter, box: QRectF, theme: Theme) -> None:
        concern = self.finding.concern if self.finding is not None else Concern.NOTE
        paint_concern(painter, concern, box, theme.palette)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A tint under the mouse, a frame with the keyboard."""
        painter = QPainter(self)
        if self._hovered:
            painter.fillRect(self.rect(), QColor(self._theme.palette.shade))
        if self.hasFocus():
            painter.setPen(pen(self._theme.palette.deed, 2))
            painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))

    def enterEvent(self, event: QEnterEvent) -> None:
        """Tint."""
        self._hovered = True
        self.update()
        super().enterEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """Untint."""
        self._hovered = False
        self.update()
        super().leaveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Choose."""
        if event.button() == Qt.MouseButton.LeftButton:
            self.chosen.emit(self.finding)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Choose, or leave the key to others."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.chosen.emit(self.finding)
        else:
            super().keyPressEvent(event)


class FindingsPanel(QFrame):
    """All findings, most concerning first; rows are reused from learner to learner."""

    chosen = Signal(object)

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self._desk, self._theme = desk, theme
        self.rows: list[FindingRow] = []
        self._heading = label(kind="heading")
        self._none = label(self.tr("Nothing was questioned."), "quiet")
        self._none.setContentsMargins(8, 0, 8, 0)  # under its heading
        inside = QWidget()
        inside.setProperty("kind", "inside")
        self._column = QVBoxLayout(inside)
        self._column.setContentsMargins(4, 0, 4, 4)
        self._column.setSpacing(0)
        self._column.addWidget(self._none)
        self._column.addStretch(1)
        scroll = quiet_scroll(inside)
        self._scroll = scroll
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 2)
        column.setSpacing(4)
        head = QHBoxLayout()
        head.setContentsMargins(12, 0, 12, 0)
        head.addWidget(self._heading)
        column.addLayout(head)
        column.addWidget(scroll, 1)
        self.setMinimumHeight(110)

    def show_learner(self, learner: str) -> None:
        """Show a learner's findings as they are now."""
        findings = self._desk.session.findings(learner)
        while len(self.rows) < len(findings):
            row = FindingRow(self._theme)
            row.chosen.connect(self.chosen)
            self.rows.append(row)
            self._column.insertWidget(len(self.rows), row)
        for number, row in enumerate(self.rows):
            row.setVisible(number < len(findings))
            if number < len(findings):
                row.show_finding(findings[number])
        self._none.setVisible(not findings)
        explained = sum(bool(finding.explained_by) for finding in findings)
        words = self.tr("Questions about this work: {n}")
        if explained:
            words = self.tr("Questions about this work: {n} open, {explained} explained")
        elif not findings:
            words = self.tr("Questions about this work")
        self._heading.setText(words.format(n=len(findings) - explained, explained=explained))

    def reveal(self, check: str) -> Finding | None:
        """Bring the row of a check into view and give it the keyboard."""
        for row in self.rows:
            if not row.isHidden() and row.finding is not None and row.finding.check == check:
                self._scroll.ensureWidgetVisible(row)
                row.setFocus()
                return row.finding
        return None
