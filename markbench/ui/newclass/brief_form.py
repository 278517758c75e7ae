"""Every setting of the brief in one form, judged as it is typed.

The settings are those of :data:`markbench.intake.brief_rules.ALLOWED`; one that is added
there appears here, under the last heading until it is given a place.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from PySide6.QtCore import QCoreApplication, QTimer, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from markbench.intake.brief_file import value_of
from markbench.intake.brief_rules import ALLOWED
from markbench.model import Brief, ClassWork
from markbench.session.brief_effects import doubts, effects
from markbench.session.brief_form import check
from markbench.ui.look.theme import Theme
from markbench.ui.newclass.field import Field
from markbench.ui.parts import frame, label, quiet_scroll

_ELSEWHERE = ("rubric",)  # chosen on a page of its own
_PAUSE_MS = 60
_WIDEST = 1120


def _tr(words: str) -> str:
    return QCoreApplication.translate("BriefForm", words)


class BriefForm(QWidget):
    """``edited`` is sent at every key, ``changed`` when what is filled in was judged again."""

    edited = Signal()
    changed = Signal()

    def __init__(self, theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._theme = theme
        self._work: ClassWork | None = None
        self._start = Brief()
        self._most: float | None = None
        self.brief = Brief()
        self.troubles: dict[str, str] = {}
        self.fields: dict[str, Field] = {}
        self._inside = inside = QWidget()
        inside.setProperty("kind", "inside")
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 14, 0)
        column.setSpacing(0)
        for heading, names in _sections():
            column.addSpacing(14)
            column.addWidget(label(heading, "name"))
            column.addWidget(frame("rule"))
            for key, name in names.items():
                field = self.fields[key] = Field(key, name, theme)
                field.changed.connect(self._wait)
                column.addWidget(field)
        column.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        self.area = quiet_scroll(inside)
        outer.addWidget(self.area)
        theme.changed.connect(self._size)
        self._size()
        # A class of a thousand is gone through for the effects; typing must not wait for it.
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(_PAUSE_MS)
        self._later.timeout.connect(self.judge)

    def show_brief(self, brief: Brief, work: ClassWork | None, most: float | None = None) -> None:
        """Fill the form in; ``work`` is the class that the settings bear on, ``most`` the marks
        of its rubric.
        """
        self._start, self._work, self._most = brief, work, most
        for key, field in self.fields.items():
            field.show_value(value_of(brief, key))
        self.judge()

    def show_most(self, most: float | None) -> None:
        """Another rubric was chosen, of so many marks."""
        self._most = most
        self.judge()

    def typed(self) -> dict[str, str]:
        """What is not as it is saved, as it was typed."""
        return {key: one.editor.text() for key, one in self.fields.items() if one.unsaved}

    def type_again(self, typed: Mapping[str, str]) -> None:
        """Fill in what :meth:`typed` gave."""
        for key, text in typed.items():
            self.fields[key].fill(text)
        self.judge()

    def forget_typed(self) -> None:
        """Fill in again what is saved."""
        self.show_brief(self._start, self._work, self._most)

    def show_class(self, work: ClassWork) -> None:
        """The settings bear on another class, or on this one read again."""
        self._work = work
        self.judge()

    def judge(self) -> None:
        """Judge what is filled in now and say so beside each setting."""
        self._later.stop()
        raws: dict[str, Any] = {key: field.raw() for key, field in self.fields.items()}
        brief, self.troubles = check(raws)
        self.brief = replace(brief, **{key: value_of(self._start, key) for key in _ELSEWHERE})
        told: Mapping[str, str] = {}
        odd: Mapping[str, str] = {}
        if self._work is not None:
            told = effects(self.brief, self._work, self.troubles)
            odd = doubts(self.brief, self._work, self._most)
        for key, field in self.fields.items():
            field.tell(self.troubles.get(key, ""), told.get(key, ""), odd.get(key, ""))
        self.changed.emit()

    def show_trouble(self) -> None:
        """Lead to the first setting that is wrong."""
        for key, field in self.fields.items():
            if key in self.troubles:
                self.area.ensureWidgetVisible(field)
                field.set_focus()
                return

    def wrong(self) -> str:
        """How many settings are wrong, in a sentence; empty where all is well."""
        count = len(self.troubles)
        if count < 2:
            return self.tr("One setting is not as it must be.") if count else ""
        return self.tr("{n} settings are not as they must be.").format(n=count)

    def _size(self) -> None:
        self._inside.setMaximumWidth(self._theme.px(_WIDEST))

    def _wait(self) -> None:
        self.edited.emit()
        self._later.start()


def _sections() -> list[tuple[str, dict[str, str]]]:
    placed = [(_tr(heading), {k: _tr(v) for k, v in names.items()}) for heading, names in _PLACES]
    known = {key for _, names in placed for key in names} | set(_ELSEWHERE)
    left = {key: key.rpartition(".")[2].replace("_", " ") for key in ALLOWED if key not in known}
    return [*placed, *([(_tr("More"), left)] if left else [])]


_PLACES: tuple[tuple[str, dict[str, str]], ...] = (
    (
        "What was asked",
        {
            "title": "Title",
            "opens": "First day",
            "closes": "Last day",
            "lengths": "Lengths",
            "timings_per_length": "Timings at each length",
            "swings_per_timing": "Swings in a timing",
            "swings_allowed": "Other counts that will do",
            "shortest_m": "Shortest length in metres",
            "longest_m": "Longest length in metres",
            "least_ratio": "Longest over shortest, at least",
            "support_height_m": "Height of the support in metres",
            "evidence": "Evidence",
            "partners": "Pairs",
        },
    ),
    (
        "Where it was measured",
        {"place.latitude_deg": "Latitude in degrees", "place.height_m": "Height in metres"},
    ),
    (
        "Marks and words",
        {
            "late.marks_per_day": "Marks off for each day late",
            "late.most_days": "Days late counted at most",
            "grades": "Grades",
            "feedback_language": "Language of the feedback",
            "words.independent": "Word for the variable chosen",
            "words.dependent": "Word for the variable measured",
            "words.controlled": "Word for what is kept the same",
            "selfies_in_pack": "Photos of learners in the moderation pack",
            "reports_in_pack": "Words of written reports in the moderation pack",
            "keep_evidence_until": "Photos and videos kept until",
        },
    ),
    (
        "How closely to look",
        {
            "tolerances.timing_scatter_s": "Scatter of a hand timing in seconds",
            "tolerances.g_fraction": "What counts as close to g",
            "tolerances.own_arithmetic_fraction": "Leeway for the learner's arithmetic",
            "tolerances.false_alarm": "Needless questions allowed",
        },
    ),
)
