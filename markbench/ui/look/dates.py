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


def locale() -> QLocale:
    """How the window's language writes days."""
    # Not QLocale's default: that would change how numbers are read wherever one is typed.
    return QLocale(language())


def pattern() -> str:
    """How a day is written, for fields that are filled in."""
    return _tr("d MMM yyyy")


def read_day(text: str) -> dt.date | None:
    """A day as typed: as it is written here, as 2026-03-31, or as 31.3.2026."""
    for way in (pattern(), "yyyy-M-d", "d.M.yyyy", "d. M. yyyy"):
        read = locale().toDate(text.strip(), way)
        if read.isValid():
            return dt.date(read.year(), read.month(), read.day())
    return None


def _written(when: dt.date, pattern: str) -> str:
    return locale().toString(QDate(when.year, when.month, when.day), pattern)


def _tr(pattern: str) -> str:
    return QCoreApplication.translate("Dates", pattern)
