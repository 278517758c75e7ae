"""How far the two markers agree, in figures with intervals and in a plain sentence."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QHeaderView, QWidget

from markbench.checks.wording import true_minus
from markbench.ui.look.said import figures, said
from markbench.ui.moderation.paper import Paper, Roll
from markbench.ui.moderation.standing import Standing
from markbench.ui.moderation.words import agreement_words
from markbench.ui.parts import label

if TYPE_CHECKING:
    from markbench.moderation.agreement import ClassAgreement, Share
    from markbench.moderation.kappa import Kappa


class FigureRoll(Roll):
    """Narrow columns of figures, each over its interval; the names take what is left, and wrap."""

    aside = 0  # its last column is as wide as its figures

    def __init__(self, headings: tuple[str, ...], name: str) -> None:
        super().__init__(headings, name, air=8)
        header = self.horizontalHeader()
        header.setStretchLastSection(False)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)


class AgreementPaper(Paper):
    """A row for each criterion; no figure is called good or poor."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(self.tr("Agreement of first and second marks"))
        self.roll = FigureRoll(
            (self.tr("Criterion"), self.tr("Same level"), self.tr("Within one"),
             self.tr("Kappa")),
            self.tr("Agreement by criterion, each with its 95 % interval"),
        )  # fmt: skip
        self._agreed: ClassAgreement | None = None
        self._waiting = False
        self.summary = label(wrap=True)
        self.sentence = label(kind="small", wrap=True)
        self.total = label(kind="small", wrap=True)
        self._notes = label(kind="small", wrap=True)
        self.total.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        kappa = self.roll.horizontalHeaderItem(3)
        assert kappa is not None
        kappa.setToolTip(
            self.tr("Agreement beyond chance: 1 is complete, 0 is what chance alone would give")
        )
        for part in (self.summary, self.roll, self.sentence, self.total, self._notes):
            self.column.addWidget(part)
        self.roll.currentCellChanged.connect(lambda *_: self._say())

    def show_standing(self, now: Standing) -> None:
        """The figures as they are, once they are there."""
        agreed = self._agreed = None if now.figures is None else now.figures.agreed
        self._waiting = agreed is None
        some = agreed is not None and any(one.exact.of for one in agreed.criteria)
        for part in (self.summary, self.roll, self.total, self._notes):
            part.setVisible(some)
        if agreed is not None and some:
            from markbench.session.agreeing import cautions

            self.summary.setText(agreement_words(agreed))

            self.roll.fill(
                [
                    ("", (one.title, _share(one.exact), _share(one.within_one), _kappa(one.kappa)))
                    for one in agreed.criteria
                ]
            )
            both = (str(agreed.totals), str(agreed.intraclass["(2,1)"]))
            words = ".\n".join(said(one) for one in both)
            told = self.tr("The total in figures: {words}.").format(words=words)
            self.total.setText(true_minus(told))
            self._notes.setText("\n".join(said(one) for one in cautions(agreed)))
        self._say()

    def _say(self) -> None:
        criteria = () if self._agreed is None else self._agreed.criteria
        at = self.roll.currentRow()
        if self._waiting:
            self.sentence.setText(self.tr("The figures are being worked out…"))
        elif not any(one.exact.of for one in criteria):
            self.sentence.setText(self.tr("Nobody has a first and a second mark yet."))
        elif 0 <= at < len(criteria):
            from markbench.session.agreeing import sentence_of

            one = criteria[at]
            words = f"{one.title}: {said(sentence_of(one))}"
            if one.kappa.undefined:
                words += " " + self.tr("Kappa is undefined: {why}.").format(
                    why=said(one.kappa.undefined)
                )
            self.sentence.setText(words)


def _share(found: Share) -> str:
    if found.low95 is None or found.high95 is None:
        return "–"
    span = _tr("{low:.0f} to {high:.0f} %").format(low=100 * found.low95, high=100 * found.high95)
    count = _tr("{n} of {of}").format(n=found.count, of=found.of)
    return f"{count}\n{span}"


def _kappa(found: Kappa) -> str:
    if found.value is None or found.low95 is None or found.high95 is None:
        return "–"
    value = round(found.value, 2) + 0.0  # never "-0.00"
    span = _tr("{low:.2f} to {high:.2f}").format(low=found.low95, high=found.high95)
    return figures(true_minus(f"{value:.2f}\n{span}"))


def _tr(text: str) -> str:
    return QCoreApplication.translate("AgreementPaper", text)
