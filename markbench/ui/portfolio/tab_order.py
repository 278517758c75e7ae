"""The way of the Tab key through a page whose parts come and go with the learner."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLayout, QWidget


class TabOrder:
    """Tab goes through ``parts`` in their order, and within each as the eye does."""

    def __init__(self, *parts: QWidget) -> None:
        self._parts = parts
        self._known: set[QWidget] = set()  # all that was ever a stop: it keeps its place

    def renew(self) -> None:
        """Take in rows that were made since."""
        stops = {
            widget
            for part in self._parts
            for widget in (part, *part.findChildren(QWidget))
            if widget.focusPolicy() != Qt.FocusPolicy.NoFocus
        }
        if not stops <= self._known:
            self._known |= stops
            seen = (widget for part in self._parts for widget in in_sight(part))
            led = [widget for widget in seen if widget in self._known]
            for one, other in pairwise(dict.fromkeys(led)):
                QWidget.setTabOrder(one, other)


def in_sight(part: QWidget) -> Iterator[QWidget]:
    """A widget and all in it, as they are laid out; a pop-up is a window of its own."""
    yield part
    layout, window = part.layout(), part.window()
    held = list(_laid_out(layout)) if layout is not None else []
    others = [child for child in part.children() if isinstance(child, QWidget)]
    for child in dict.fromkeys((*held, *others)):
        if child.parentWidget() is part and child.window() is window:
            yield from in_sight(child)


def _laid_out(layout: QLayout) -> Iterator[QWidget]:
    for number in range(layout.count()):
        item = layout.itemAt(number)
        widget = item.widget() if item is not None else None
        if widget is not None:
            yield widget
        elif item is not None and (inner := item.layout()) is not None:
            yield from _laid_out(inner)
