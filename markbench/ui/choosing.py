"""Choosing an item of a view by program."""

from __future__ import annotations

from PySide6.QtCore import QItemSelectionModel, QModelIndex, QPersistentModelIndex
from PySide6.QtWidgets import QAbstractItemView

Flag = QItemSelectionModel.SelectionFlag
ROW, COLUMN = Flag.Rows, Flag.Columns


def choose_only(
    view: QAbstractItemView,
    index: QModelIndex | QPersistentModelIndex,
    whole: Flag = Flag.NoUpdate,
) -> None:
    """Make ``index`` current and choose it alone, or its ``whole`` row or column.

    Qt's own selectRow and its kin ask which keys are down: with Ctrl still held after a
    shortcut they would turn the choice round.
    """
    view.selectionModel().setCurrentIndex(index, Flag.ClearAndSelect | whole)
