"""Explanations of the numbers, ranked; one can be shown in the graph and agreed with."""

from __future__ import annotations

import math

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from markbench.model import Diagnosis, Explanation, joined
from markbench.physics.reporting import with_uncertainty
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.marks import pen
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.parts import label, quiet_scroll

_SHOWN = 3
_HONEST = "honest"


class _Bar(QWidget):
    """A probability as a length, beside its number."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme, self._part = theme, 0.0
        self.setFixedHeight(5)

    def show_part(self, part: float) -> None:
        """0 to 1."""
        self._part = part
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the scale and the part."""
        painter = QPainter(self)
        box = QRectF(self.rect()).adjusted(0, 1, 0, -1)
        painter.setPen(pen(self._theme.palette.edge, 1))
        painter.drawLine(box.bottomLeft(), box.bottomRight())
        box.setWidth(box.width() * self._part)
        painter.fillRect(box, QColor(self._theme.palette.ghost))


class _Row(QWidget):
    """One explanation."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self.percent = label(kind="lead")
        theme.changed.connect(self._fit)
        self.bar = _Bar(theme)
        self.sentence = label(wrap=True)
        self.value = label(kind="small", wrap=True)
        #: What agreeing brings about, once agreed.
        self.agreed = label(kind="small", wrap=True)
        self.show_it = QPushButton(self.tr("Show"))
        self.show_it.setCheckable(True)
        self.show_it.setToolTip(self.tr("Show in the graph how the readings would lie"))
        self.agree = QPushButton()
        self.agree.setCheckable(True)
        deeds = FlowLayout(spacing=6)
        for control in (self.show_it, self.agree):
            deeds.addWidget(control)
        words = QVBoxLayout()
        words.setSpacing(3)
        words.addWidget(self.sentence)
        words.addWidget(self.bar)
        words.addWidget(self.value)
        words.addWidget(self.agreed)
        words.addLayout(deeds)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 2, 0, 2)
        row.setSpacing(8)
        row.addWidget(self.percent, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        self._fit()

    def _fit(self) -> None:
        """One width for all rows: that of the longest percentage."""
        widest = self._theme.metrics("lead").horizontalAdvance(_percent(1.0))
        self.percent.setFixedWidth(math.ceil(widest) + 2)


class ExplanationPanel(QFrame):
    """``ghost_chosen`` carries the explanation to show in the graph, or ``None``."""

    ghost_chosen = Signal(object)

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self._desk, self._learner = desk, ""
        self._diagnosis: Diagnosis | None = None
        self._rows = [_Row(theme) for _ in range(_SHOWN)]
        #: What stands here where there is nothing to weigh.
        self.none = self.tr("Two different lengths with timings are needed.")
        self._best = label(kind="small")
        self._limits = label(kind="small", wrap=True)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        rows = QVBoxLayout(inside)
        rows.setContentsMargins(0, 0, 4, 0)
        rows.setSpacing(4)
        rows.addWidget(self._best)
        for number, row in enumerate(self._rows):
            rows.addWidget(row)
            row.show_it.toggled.connect(lambda on, n=number: self._ghost(n, on))
            row.agree.clicked.connect(lambda on, n=number: self._agree(n, on))
        rows.addWidget(self._limits)
        rows.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 8, 6)
        column.setSpacing(4)
        column.addWidget(label(self.tr("Likely explanations"), "heading"))
        self._scroll = quiet_scroll(inside)
        column.addWidget(self._scroll, 1)

    def show_learner(self, learner: str) -> None:
        """Show a learner's explanations as they are now."""
        self._learner = learner
        session = self._desk.session
        self._diagnosis = session.diagnosis(learner)
        agreed = session.value("agreed_slip", learner)
        found = self._diagnosis.explanations[:_SHOWN] if self._diagnosis is not None else ()
        for number, row in enumerate(self._rows):
            row.setVisible(number < len(found))
            if number < len(found):
                self._fill(row, found[number], agreed)
        self._say()

    @property
    def explanations(self) -> tuple[Explanation, ...]:
        """What is shown, most probable first."""
        return self._diagnosis.explanations[:_SHOWN] if self._diagnosis is not None else ()

    def show_first(self) -> bool:
        """Show the likeliest explanation that has a ghost, or take it away; False for none."""
        for row in self._rows:
            if not row.isHidden() and not row.show_it.isHidden():
                row.show_it.toggle()
                return True
        return False

    def point_out(self) -> None:
        """Bring the likeliest explanation into view, and show it in the graph if it can be."""
        row = self._rows[0]
        if not row.isHidden():
            self._scroll.ensureWidgetVisible(row, 0, 0)
            if not row.show_it.isHidden():
                row.show_it.setChecked(True)

    def look_only(self, none: str) -> None:
        """Offer nothing to agree with: who looks may not decide here. ``none`` as above."""
        self.none = none
        for row in self._rows:
            row.agree.hide()

    def agree_with_first(self) -> bool:
        """Agree with the most probable explanation, or take it back; False for none."""
        if self.explanations:
            self._rows[0].agree.click()
        return bool(self.explanations)

    def _fill(self, row: _Row, explanation: Explanation, agreed: object) -> None:
        honest = explanation.slip == _HONEST
        row.percent.setText(_percent(explanation.probability))
        row.bar.show_part(explanation.probability)
        told = said(explanation.sentence)
        row.sentence.setText(told)
        mended = ""
        if explanation.g_if_mended is not None and not honest:
            value = with_uncertainty(
                explanation.g_if_mended, explanation.u_g_if_mended or 0.0, "m/s²"
            )
            if said(value) not in told:  # most sentences say it themselves
                mended = self.tr("put right, g would be {value}").format(value=said(value))
        row.value.setText(mended)
        row.value.setVisible(bool(mended))
        row.show_it.blockSignals(True)
        row.show_it.setChecked(False)
        row.show_it.blockSignals(False)
        row.show_it.setVisible(bool(explanation.mended) and not honest)
        row.show_it.setAccessibleName(f"{row.show_it.text()}: {told}")
        is_agreed = agreed == explanation.slip
        row.agree.setChecked(is_agreed)
        row.agree.setText(self.tr("✓ Agreed") if is_agreed else self.tr("Agree"))
        row.agree.setAccessibleName(f"{row.agree.text()}: {told}")
        row.agreed.setText(self._agreed_words(explanation) if is_agreed else "")
        row.agreed.setVisible(is_agreed)

    def _agreed_words(self, explanation: Explanation) -> str:
        """Where an agreement counts, what it answers, and where the learner hears of it."""
        session, learner = self._desk.session, self._learner
        told = []
        if explanation.slip != _HONEST:
            told.append(self.tr("It counts under Findings, among what to teach again."))
        answered = sum(bool(one.explained_by) for one in session.findings(learner))
        if answered:
            told.append(self.tr("Questions it answers: {n}.").format(n=answered))
        for criterion in session.rubric.criteria:
            if any("{slip_explained}" in one for one in session.text(learner, criterion.id).pieces):
                words = self.tr("The learner reads of it under “{criterion}”.")
                told.append(words.format(criterion=criterion.title))
                break
        return " ".join(told)

    def _say(self) -> None:
        diagnosis = self._diagnosis
        if diagnosis is None:
            self._best.hide()
            self._limits.setText(self.none)
            return
        best = diagnosis.best
        self._best.setVisible(best is not None)
        self._best.setText(
            self.tr("best estimate {value}").format(
                value=said(with_uncertainty(best.g, best.u_g, "m/s²"))
            )
            if best is not None
            else ""
        )
        parts = [words for pair in diagnosis.indistinct for words in (pair.sentence, pair.settle)]
        self._limits.setText(said(joined((*parts, diagnosis.limits))))

    def _ghost(self, number: int, on: bool) -> None:
        for other, row in enumerate(self._rows):
            if other != number and on:
                row.show_it.blockSignals(True)
                row.show_it.setChecked(False)
                row.show_it.blockSignals(False)
        self.ghost_chosen.emit(self.explanations[number] if on else None)

    def _agree(self, number: int, on: bool) -> None:
        learner, slip = self._learner, self.explanations[number].slip
        self._desk.do(lambda session: session.agree(learner, slip if on else None))


def _percent(probability: float) -> str:
    if probability < 0.01:
        return "< 1 %"
    if probability > 0.99:
        return "> 99 %"
    return f"{100 * probability:.0f} %"
