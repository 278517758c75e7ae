"""A day is written so that nobody reads the tenth of March as the third of October."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QApplication

from markbench.ui import languages
from markbench.ui.look import dates

WHEN = dt.datetime(2026, 3, 10, 20, 7, tzinfo=dt.UTC)


@pytest.fixture
def german(qapp: QApplication) -> Iterator[None]:
    installed = languages.install(qapp, "de")
    yield
    for translator in installed:
        qapp.removeTranslator(translator)


@pytest.mark.usefixtures("qapp")
def test_the_month_is_a_word() -> None:
    assert dates.day(WHEN) == "10 Mar 2026"
    assert dates.short_day(WHEN) == "10 Mar"
    assert dates.day_and_time(WHEN) == "10 Mar 2026, 20:07"
    assert dates.short_day_and_time(WHEN) == "10 Mar, 20:07"


@pytest.mark.usefixtures("german")
def test_the_month_is_a_word_of_the_windows_language() -> None:
    assert dates.day(WHEN) == "10. März 2026"
    assert dates.short_day_and_time(WHEN) == "10. März, 20:07"


@pytest.mark.usefixtures("german")
def test_numbers_are_still_read_as_the_system_says() -> None:
    assert QLocale() == QLocale.system()
