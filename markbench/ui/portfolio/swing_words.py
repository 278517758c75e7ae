"""What a film says, in sentences: the period it shows, and how that sits with the table."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication

from markbench.model import Row
from markbench.physics.reporting import with_uncertainty
from markbench.ui.look.said import figures, said

if TYPE_CHECKING:
    from markbench.evidence.video.judge import SwingMeasurement


# Ratio of the path's axes in the picture from which an ellipse is spoken of; on drawn films
# it was out by less than half of this (DECISION-video.md).
_OPEN = 0.05


def swing_words(measured: SwingMeasurement, rows: Sequence[Row], counted: int | None) -> list[str]:
    """Sentences for the teacher; ``counted`` is her own count, if she made one."""
    if not measured.accepted:
        return [_tr("Not measured: {why}.").format(why=why_not_measured(measured))]
    value = with_uncertainty(measured.period_s, measured.u_period_s, "s")
    if counted is None:
        count = _tr("{n} complete swings").format(n=measured.complete_swings)
    else:
        count = _tr("{n} complete swings by your count, {m} marked").format(
            n=counted, m=len(measured.swing_marks_s)
        )
    parts = [_tr("T = {value}").format(value=value), count]
    if measured.amplitude_deg is not None:
        from markbench.evidence.video.support import U_ANGLE

        angle = with_uncertainty(measured.amplitude_deg, U_ANGLE * measured.amplitude_deg)
        parts.append(_tr("begins at ({angle})° from the middle").format(angle=angle))
    if measured.ellipse > _OPEN:
        # Seen from one side, an ellipse looks flatter than it is, or like no ellipse at all.
        parts.append(
            _tr("opens into an ellipse, at least {p:.0f} % as wide as long").format(
                p=100 * measured.ellipse
            )
        )
    against = _against_the_table(measured, rows)
    return [figures(words) for words in ("  ·  ".join(parts), against) if words]


def why_not_measured(measured: SwingMeasurement) -> str:
    """Why there is no period, in the window's language."""
    from markbench.evidence.video.judge import why_not  # late, as all that decodes

    return said(why_not(measured))


def _against_the_table(measured: SwingMeasurement, rows: Sequence[Row]) -> str:
    from markbench.evidence.video.compare import compare

    found = compare(measured, rows)
    if found.row is None:
        return ""
    row = rows[found.row]
    length = f"{100 * row.length_m:.3g} cm"
    if found.verdict == "confirms":
        return _tr(
            "Fits {length}, where the table gives T = {t:.3f} s: the video and the table agree."
        ).format(length=length, t=row.period_s)
    ratio = with_uncertainty(found.ratio, found.u_ratio)
    words = _tr(
        "No period of the table agrees. At {length} the video’s T is {ratio} of the table’s "
        "{t:.3f} s"
    ).format(length=length, ratio=ratio, t=row.period_s)
    why = {
        "half_swings": _tr("as when each passage, there or back, was counted as a swing"),
        "count_short": _tr("as when one swing fewer went by than was written"),
        "count_over": _tr("as when one swing more went by than was written"),
    }.get(found.explanation, _tr("and no half swing or miscount by one brings them together"))
    return f"{words}, {why}."


def _tr(text: str) -> str:
    return QCoreApplication.translate("SwingWords", text)
