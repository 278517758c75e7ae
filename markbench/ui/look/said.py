"""The core's sentences and numbers in the window's language."""

from __future__ import annotations

import datetime as dt
import re
import string
from typing import Any

from PySide6.QtCore import QCoreApplication

from markbench.model import Figures, Sentence
from markbench.model.sentence import sentence_case
from markbench.ui.look.dates import day, day_and_time

CONTEXT = "Sentence"
"""The context under which the forms of sentences stand in the .ts files."""

_MARKS = re.compile(r"(?<=\d)[.,](?=\d)")
_PERCENT = re.compile(r"(?<=\d)%")


def said(text: str) -> str:
    """``text`` in the window's language; one that is no sentence of the core as it stands."""
    if isinstance(text, Figures):
        return figures(text)
    if not isinstance(text, Sentence):
        return text
    form = QCoreApplication.translate(CONTEXT, text.form)
    done = _FILL.vformat(form, (), text.values)
    return sentence_case(done) if text.capital else done


def figures(text: str) -> str:
    """A written number, or several, with the decimal mark of the window's language."""
    if decimal_mark() == ".":
        return text
    swapped = _MARKS.sub(lambda mark: "." if mark[0] == "," else ",", text)
    return _PERCENT.sub("\u00a0%", swapped)


def decimal_mark() -> str:
    """What stands between ones and tenths."""
    return QCoreApplication.translate("Number", ".")


class _Fill(string.Formatter):
    """Fills a form's places: sentences said, numbers and days as the language writes them."""

    def format_field(self, value: Any, format_spec: str) -> str:
        if isinstance(value, str):
            return said(value)
        if isinstance(value, dt.datetime):
            return day_and_time(value)
        if isinstance(value, dt.date):
            return day(value)
        return figures(format(value, format_spec))


_FILL = _Fill()
