"""Days and times of day as the window's language writes them, the month as a word.

10.03. is the tenth of March to one reader and the third of October to another; a month
that is written out is the same day to everybody.
"""

from __future__ import annotations

import datetime as dt

from PySide6.QtCore import QCoreApplication, QDate, QLocale


def day(when: dt.date) -> str:
    """Such as ``10 Mar 2026``."""
    return _written(when, _tr("d MMM yyyy"))


def short_day(when: dt.date) -> str:
    """Such as ``10 Mar``, where the year is plain."""
    return _written(when, _tr("d MMM"))


def day_and_time(when: dt.datetime) -> str:
    """Such as ``10 Mar 2026, 20:27``, in the time zone ``when`` is given in."""
    return f"{day(when)}, {when:%H:%M}"


def short_day_and_time(when: dt.datetime) -> str:
    """Such as ``10 Mar, 20:27``."""
    return f"{short_day(when)}, {when:%H:%M}"


def language() -> str:
    """The code of the window's language."""
    return QCoreApplication.translate("Dates", "en")


def _written(when: dt.date, pattern: str) -> str:
    # Not QLocale's default: that would change how numbers are read wherever one is typed.
    return QLocale(language()).toString(QDate(when.year, when.month, when.day), pattern)


def _tr(pattern: str) -> str:
    return QCoreApplication.translate("Dates", pattern)
