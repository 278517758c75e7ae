"""The way of the Tab key through a page whose parts come and go with the learner."""

from __future__ import annotations

from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget


class TabOrder:
    """Tab goes through ``parts`` in their order, and within each as it was built."""

    def __init__(self, *parts: QWidget) -> None:
        self._parts = parts
        self._stops: list[QWidget] = []

    def renew(self) -> None:
        """Take in rows that were made since."""
        stops = [
            widget
            for part in self._parts
            for widget in (part, *part.findChildren(QWidget))
            if widget.focusPolicy() != Qt.FocusPolicy.NoFocus
        ]
        if stops != self._stops:
            self._stops = stops
            for one, other in pairwise(stops):
                QWidget.setTabOrder(one, other)
