"""What the statistics of two markers come to, and who is to be looked at, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication

from markbench.ui.look.said import figures

if TYPE_CHECKING:
    from markbench.moderation.agreement import ClassAgreement

_SAME = 0.05  # marks: what would be written as 0.0


def agreement_words(agreed: ClassAgreement) -> str:
    """How often both gave the same level, and how far the totals lie apart."""
    marks = sum(one.exact.of for one in agreed.criteria)
    same = sum(one.exact.count for one in agreed.criteria)
    far = marks - sum(one.within_one.count for one in agreed.criteria)
    if same == marks:
        told = _tr("First and second marker gave the same level all {of} times.")
    elif not far:
        told = _tr("First and second marker gave the same level {same} times of {of}, and were "
                   "never more than one level apart.")  # fmt: skip
    else:
        told = _tr("First and second marker gave the same level {same} times of {of}, and were "
                   "more than one level apart {far} times.")  # fmt: skip
    told = told.format(same=same, of=marks, far=far)
    mean = agreed.severity.mean
    return told if mean is None else f"{told} {apart_words(mean)}"


def apart_words(mean: float) -> str:
    """Which of the two gave more, and how much: the mean of second − first, in marks."""
    if abs(mean) < _SAME:
        return _tr("On the total, both gave the same on average.")
    more = _tr("On the total, the second marker gave {n:.1f} marks more on average.")
    less = _tr("On the total, the second marker gave {n:.1f} marks less on average.")
    return figures((more if mean > 0 else less).format(n=abs(mean)))


def unmarked_words(n: int) -> str:
    """How many learners lack a mark."""
    return (
        _tr("1 learner is not fully marked")
        if n == 1
        else _tr("{n} learners are not fully marked").format(n=n)
    )


def moved_words(n: int) -> str:
    """How many learners carry a mark whose draft is another now."""
    return (
        _tr("1 learner has a draft that changed after the mark")
        if n == 1
        else _tr("{n} learners have drafts that changed after the mark").format(n=n)
    )


def _tr(text: str) -> str:
    return QCoreApplication.translate("Markers", text)
