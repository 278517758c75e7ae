"""What the class would get: each level's learners now and then, and who would change."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QComboBox, QSizePolicy, QVBoxLayout, QWidget

from markbench.model import Criterion
from markbench.session.rubric_preview import Preview, Shift
from markbench.ui.look.marks import pen
from markbench.ui.look.said import figures
from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, frame, label, quiet_scroll, restyle

_MOST_NAMED = 3
_WIDEST = 16_777_215  # Qt's own bound


class Ladder(QWidget):
    """A line for each level: outlined, as drafted now; filled, as it would be; and the numbers."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self.rows: list[tuple[str, int, int]] = []
        self.stale = False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        theme.changed.connect(self.updateGeometry)

    def show_rows(self, rows: list[tuple[str, int, int]], *, stale: bool = False) -> None:
        """Level, learners now, learners then; ``stale`` in grey."""
        self.rows, self.stale = rows, stale
        told = "; ".join(f"{name}: {before}, {after}" for name, before, after in rows)
        self.setAccessibleName(self.tr("Learners at each level, now and then"))
        self.setAccessibleDescription(told)
        self.updateGeometry()
        self.update()

    def _line(self) -> int:
        return round(self._theme.line_height() + self._theme.line_height("small") + 10)

    def sizeHint(self) -> QSize:
        """A line for each level."""
        return QSize(self._theme.px(220), self._line() * len(self.rows))

    def minimumSizeHint(self) -> QSize:
        """As high as it is."""
        return QSize(self._theme.px(120), self._line() * len(self.rows))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the lines."""
        painter, colours = QPainter(self), self._theme.palette
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        most = max((max(before, after) for _, before, after in self.rows), default=1) or 1
        words_high, bar = self._theme.line_height(), self._theme.line_height("small") * 0.42
        wide = self.width() - 2.0
        for i, (name, before, after) in enumerate(self.rows):
            top = float(i * self._line())
            painter.setFont(self._theme.font())
            painter.setPen(QColor(colours.pencil if self.stale else colours.ink))
            words = QRectF(0, top, wide, words_high)
            numbers = str(after) if before == after else f"{before} → {after}"
            room = wide - painter.fontMetrics().horizontalAdvance(numbers) - 8
            shown = painter.fontMetrics().elidedText(name, Qt.TextElideMode.ElideRight, int(room))
            painter.drawText(words, Qt.AlignmentFlag.AlignLeft, shown)
            painter.drawText(words, Qt.AlignmentFlag.AlignRight, numbers)
            under = top + words_high + 2
            painter.setPen(pen(colours.edge, 1))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            if before:
                painter.drawRect(QRectF(0.5, under, wide * before / most, bar))
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(colours.edge if self.stale else colours.deed))
            painter.drawRect(QRectF(0.5, under + bar + 2, wide * after / most, bar))


class PreviewPanel(QWidget):
    """Shows one criterion of a preview, and what one learner would read."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._wide = False
        self._shifts: Sequence[Shift] = ()
        self.stale = label(self.tr("Not right yet: this is how it was before."), "look", wrap=True)
        self.stale.hide()
        self.totals = label(wrap=True)
        self.ladder = Ladder(theme)
        self.changes = label(kind="small", wrap=True)
        self.names = button("", "quiet", self._turn_names)
        self._all_names = False
        self.learner = QComboBox()
        self.learner.setAccessibleName(self.tr("Learner whose sentences are shown"))
        self.learner.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.learner.currentIndexChanged.connect(lambda _i: self._show_sentences())
        self.sentences = label(wrap=True)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 12, 0)
        column.setSpacing(8)
        column.addWidget(self.stale)
        column.addWidget(self.totals)
        column.addWidget(label(self.tr("Outlined: drafted now. Filled: with this rubric."), "small",
                               wrap=True))  # fmt: skip
        column.addWidget(self.ladder)
        column.addWidget(self.changes)
        column.addWidget(self.names, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(frame("rule"))
        column.addWidget(label(self.tr("What a learner would read"), "heading"))
        column.addWidget(self.learner)
        column.addWidget(self.sentences)
        column.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(label(self.tr("What this class would get"), "name"))
        outer.addWidget(quiet_scroll(inside))
        theme.changed.connect(self._size)
        self._size()

    def show_preview(
        self, found: Preview | None, criterion: Criterion | None, *, stale: bool = False
    ) -> None:
        """Show a criterion; ``stale``: as it was before something went wrong."""
        self.stale.setVisible(stale and criterion is not None)
        for words in (self.totals, self.sentences):
            restyle(words, "kind", "quiet" if stale else "")
        if found is None or criterion is None:
            self._shifts = ()
            self.totals.setText(self.tr("Shown again once the rubric is right.") if stale else "")
            self.ladder.show_rows([])
            self._show_changes()
            self.sentences.clear()
            return
        mean = self.tr("Mean of the drafts: {a:.1f} of {am:g} now, {b:.1f} of {bm:g} then.")
        means = mean.format(
            a=found.mean_before, am=found.most_before, b=found.mean_after, bm=found.most_after
        )
        self.totals.setText(figures(means))
        self._shifts = found.shifts[criterion.id]
        before = Counter(one.before for one in self._shifts)
        after = Counter(one.after for one in self._shifts)
        names = [level.name for level in criterion.levels]
        gone = [name for name in before if name and name not in names]
        rows = [(name, before[name], after[name]) for name in (*names, *gone)]
        if before[""] or after[""]:
            rows.append((self.tr("no level drafted"), before[""], after[""]))
        self.ladder.show_rows(rows, stale=stale)
        self._show_changes()
        kept = self.learner.currentIndex()
        self.learner.blockSignals(True)
        self.learner.clear()
        self.learner.addItems([one.learner for one in self._shifts])
        self.learner.setCurrentIndex(min(max(kept, 0), len(self._shifts) - 1))
        self.learner.blockSignals(False)
        self._show_sentences()

    def _show_changes(self) -> None:
        """Each way of changing with its learners; of many, the first few by name."""
        none = self.tr("none")
        ways: dict[tuple[str, str], list[str]] = {}
        for one in self._shifts:
            if one.before != one.after:
                ways.setdefault((one.before or none, one.after or none), []).append(one.learner)
        lines = [
            f"{before} → {after} ({len(who)}): {self._say_names(who)}"
            for (before, after), who in ways.items()
        ]
        if self._shifts and not lines:
            lines = [self.tr("Nobody's level changes.")]
        self.changes.setText("\n".join(lines))
        self.names.setVisible(any(len(who) > _MOST_NAMED for who in ways.values()))
        self.names.setText(self.tr("Fewer names") if self._all_names else self.tr("All names"))

    def _say_names(self, who: Sequence[str]) -> str:
        if self._all_names or len(who) <= _MOST_NAMED:
            return ", ".join(who)
        more = self.tr("{names} and {n} more")
        return more.format(names=", ".join(who[:_MOST_NAMED]), n=len(who) - _MOST_NAMED)

    def _turn_names(self) -> None:
        self._all_names = not self._all_names
        self._show_changes()

    def _show_sentences(self) -> None:
        at = self.learner.currentIndex()
        if not 0 <= at < len(self._shifts):
            return
        words = " ".join(self._shifts[at].sentences)
        self.sentences.setText(words or self.tr("Nothing is said to this learner here."))

    def set_wide(self, wide: bool) -> None:
        """Take all the room there is, or a column."""
        self._wide = wide
        self._size()

    def _size(self) -> None:
        self.setMinimumWidth(0 if self._wide else self._theme.px(290))
        self.setMaximumWidth(_WIDEST if self._wide else self._theme.px(290))
