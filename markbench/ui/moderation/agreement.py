"""How far the two markers agree, in figures with intervals and in a plain sentence."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from markbench.moderation.kappa import Kappa
from markbench.session.record_of import notes, sentence_of
from markbench.ui.moderation.paper import Paper, Roll
from markbench.ui.moderation.standing import Standing
from markbench.ui.parts import label


class AgreementPaper(Paper):
    """A row for each criterion; no figure is called good or poor."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(self.tr("Agreement of first and second marks"))
        self.roll = Roll(
            (self.tr("Criterion"), self.tr("Same level"), self.tr("Within one"),
             self.tr("Kappa")),
            self.tr("Agreement by criterion"),
        )  # fmt: skip
        self._now: Standing | None = None
        self.sentence = label(wrap=True)
        self._total = label(wrap=True)
        self._notes = label(kind="small", wrap=True)
        self._total.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        for part in (self.roll, self.sentence, self._total, self._notes):
            self.column.addWidget(part)
        self.roll.currentCellChanged.connect(lambda *_: self._say())

    def show_standing(self, now: Standing) -> None:
        """The figures as they are."""
        self._now = now
        agreed = now.agreed
        self.roll.fill(
            [
                ("", (one.title, str(one.exact), str(one.within_one), _kappa(one.kappa)))
                for one in agreed.criteria
            ]
        )
        some = any(one.exact.of for one in agreed.criteria)
        self.roll.setVisible(some)
        self._total.setVisible(some)
        self._total.setText(f"{self.tr('Total')}: {agreed.totals}.\n{agreed.intraclass['(2,1)']}.")
        self._notes.setText("\n".join(notes(agreed)) if some else "")
        self._notes.setVisible(some)
        self._say()

    def _say(self) -> None:
        criteria = () if self._now is None else self._now.agreed.criteria
        at = self.roll.currentRow()
        if not any(one.exact.of for one in criteria):
            self.sentence.setText(self.tr("Nobody has a first and a second mark yet."))
        elif 0 <= at < len(criteria):
            self.sentence.setText(f"{criteria[at].title}: {sentence_of(criteria[at])}")


def _kappa(found: Kappa) -> str:
    if found.value is None or found.low95 is None or found.high95 is None:
        return f"– ({found.undefined})"
    value = round(found.value, 2) + 0.0  # never "-0.00"
    return f"{value:.2f} ({found.low95:.2f} to {found.high95:.2f})".replace("-", "−")
