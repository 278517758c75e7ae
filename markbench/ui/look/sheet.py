"""The style sheet, written from the tokens.

Widgets are told apart by a ``kind`` property (``paper``, ``quiet``, ``deed``, ``level``…),
so that no widget styles itself.
"""

from __future__ import annotations

from pathlib import Path

from markbench.ui.look.tokens import DARK, SERIF, TYPE, Palette

_HERE = Path(__file__).parent


def _arrow(p: Palette) -> str:
    return (_HERE / f"down-{'dark' if p is DARK else 'light'}.svg").as_posix()


def style_sheet(p: Palette, scale: float) -> str:
    """Qt style sheet for a palette at a text scale."""
    small, lead, title = (round(TYPE[name] * scale) for name in ("small", "lead", "title"))
    pad, wide = round(4 * scale), round(10 * scale)
    least = round(26 * scale)  # above the 24 px that WCAG 2.2, 2.5.8, asks of a target
    return f"""
* {{ outline: none; }}
QToolTip {{ background: {p.paper}; color: {p.ink}; border: 1px solid {p.edge}; padding: 6px; }}
QMainWindow, QWidget[kind="bench"] {{ background: {p.bench}; }}
QLabel {{ background: transparent; }}
QLabel[kind="quiet"] {{ color: {p.pencil}; }}
QLabel[kind="small"] {{ color: {p.pencil}; font-size: {small}px; }}
QLabel[kind="lead"] {{ font-size: {lead}px; }}
QLabel[kind="heading"] {{ color: {p.pencil}; font-size: {small}px; font-weight: 600; }}
QLabel[kind="title"] {{ font-family: {SERIF}; font-size: {title}px; }}
QLabel[kind="name"] {{ font-family: {SERIF}; font-size: {lead}px; }}
QLabel[kind="look"] {{ color: {p.look}; }}
QLabel[kind="said"] {{ color: {p.deed}; }}
QLabel[kind="ink"] {{ color: {p.deed}; font-weight: 600; }}
QLabel[kind="pencil"] {{ color: {p.pencil}; font-style: italic; }}
QLabel[kind="link"], QLabel[kind="reason"] {{ border: 2px solid transparent; padding: 2px 0; }}
QLabel[kind="link"] {{ color: {p.deed}; }}
QLabel[kind="reason"] {{ color: {p.pencil}; }}
QLabel[kind="link"]:hover {{ text-decoration: underline; }}
QLabel[kind="link"]:focus {{ border: 2px solid {p.deed}; }}
QFrame[kind="paper"] {{ background: {p.paper}; border: 1px solid {p.rule}; border-radius: 3px; }}
QFrame[kind="margin"] {{ background: {p.paper}; border: none;
    border-left: 2px solid {p.margin}; }}
QFrame[kind="rule"] {{ background: {p.rule}; border: none; max-height: 1px; min-height: 1px; }}
QFrame[kind="drafted"] {{ background: transparent; border: none;
    border-top: 1px dashed {p.edge}; }}
QFrame[kind="marked"] {{ background: {p.deed_soft}; border: none;
    border-top: 2px solid {p.deed}; }}
QScrollArea, QScrollArea > QWidget > QWidget[kind="inside"] {{ background: transparent;
    border: none; }}

QScrollArea[kind="stop"], QWidget[kind="stop"] {{
    border: 2px solid transparent; }}
QScrollArea[kind="stop"]:focus, QWidget[kind="stop"]:focus {{ border: 2px solid {p.deed}; }}

QPushButton, QToolButton, QComboBox {{ background: {p.field}; color: {p.ink};
    border: 1px solid {p.edge}; border-radius: 3px; padding: {pad}px {wide}px;
    min-height: {least - 2 * pad}px; }}
QPushButton:hover, QToolButton:hover, QComboBox:hover {{ background: {p.shade}; }}
QPushButton:pressed, QToolButton:pressed {{ background: {p.deed_soft}; }}
QPushButton:checked, QToolButton:checked {{ background: {p.deed_soft}; color: {p.deed};
    border: 2px solid {p.deed}; padding: {pad - 1}px {wide - 1}px; }}
QPushButton:focus, QToolButton:focus, QComboBox:focus {{ border: 2px solid {p.deed};
    padding: {pad - 1}px {wide - 1}px; }}
QPushButton:disabled, QToolButton:disabled {{ color: {p.pencil}; border-color: {p.rule};
    background: transparent; }}
QPushButton[kind="deed"] {{ background: {p.deed}; color: {p.on_deed};
    border: 1px solid {p.deed}; font-weight: 600; }}
QPushButton[kind="deed"]:disabled {{ background: transparent; color: {p.pencil};
    border: 1px solid {p.rule}; }}
QPushButton[kind="plain"], QToolButton[kind="plain"] {{ background: transparent;
    border: 1px solid transparent; }}
QToolButton[kind="plain"], QToolButton[kind="plain"]:focus {{ padding: {pad}px; }}
QPushButton[kind="plain"]:hover, QToolButton[kind="plain"]:hover {{ background: {p.shade};
    border: 1px solid {p.rule}; }}
QPushButton[kind="plain"]:focus, QToolButton[kind="plain"]:focus {{
    border: 2px solid {p.deed}; }}
QPushButton[kind="quiet"] {{ background: transparent; border: 2px solid transparent;
    color: {p.pencil}; font-size: {small}px; }}
QPushButton[kind="quiet"]:hover {{ color: {p.deed}; text-decoration: underline; }}
QPushButton[kind="quiet"]:focus {{ border: 2px solid {p.deed}; }}
QPushButton[kind="place"] {{ background: transparent; border: 2px solid transparent;
    border-radius: 0; color: {p.pencil}; }}
QPushButton[kind="place"]:hover {{ color: {p.ink}; background: {p.shade}; }}
QPushButton[kind="place"]:checked {{ color: {p.ink}; background: transparent;
    padding: {pad}px {wide}px; border: 2px solid transparent; border-bottom: 2px solid {p.deed}; }}
QPushButton[kind="place"]:focus, QPushButton[kind="place"]:checked:focus {{
    border: 2px solid {p.deed}; padding: {pad}px {wide}px; }}
QPushButton[kind="choice"] {{ text-align: left; }}
QPushButton[kind="step"] {{ text-align: left; background: transparent;
    border: 1px solid transparent; }}
QPushButton[kind="step"]:hover {{ background: {p.shade}; border: 1px solid {p.rule}; }}
QPushButton[kind="step"]:checked {{ background: {p.deed_soft}; color: {p.deed};
    border: 1px solid transparent; border-left: 3px solid {p.deed};
    padding: {pad}px {wide}px {pad}px {wide - 2}px; }}
QPushButton[kind="step"]:focus, QPushButton[kind="step"]:checked:focus {{
    border: 2px solid {p.deed}; padding: {pad - 1}px {wide - 1}px; }}
QPushButton[kind="level"] {{ padding: {pad}px {pad}px; }}
QPushButton[kind="level"][drafted="true"] {{ border: 1px dashed {p.ink}; }}
QPushButton[kind="level"][stands="true"] {{ color: {p.pencil}; background: transparent;
    border-color: {p.rule}; }}
QPushButton[kind="level"]:checked {{ background: {p.deed}; color: {p.on_deed};
    border: 1px solid {p.deed}; padding: {pad}px {pad}px; }}
QPushButton[kind="level"]:focus {{ border: 2px solid {p.ink}; }}
QPushButton:checked:focus, QToolButton:checked:focus {{ border: 4px double {p.deed};
    border-radius: 0; padding: {pad - 3}px {wide - 3}px; }}
QPushButton[kind="deed"]:focus, QPushButton[kind="level"]:checked:focus {{
    border: 4px double {p.on_deed}; border-radius: 0; padding: {pad - 3}px {wide - 3}px; }}
QPushButton[kind="level"]:checked:focus {{ padding: {pad - 3}px {pad - 3}px; }}
QComboBox::drop-down {{ border: none; width: {least}px; }}
QComboBox::down-arrow {{ image: url("{_arrow(p)}"); width: {lead}px; height: {lead}px; }}
QComboBox QAbstractItemView {{ background: {p.field}; border: 1px solid {p.edge};
    selection-background-color: {p.deed_soft}; selection-color: {p.ink}; }}

QLineEdit, QPlainTextEdit, QTextEdit {{ background: {p.field}; color: {p.ink};
    border: 1px solid {p.edge}; border-radius: 3px; padding: {pad}px {pad + 2}px;
    placeholder-text-color: {p.pencil};
    selection-background-color: {p.deed}; selection-color: {p.on_deed}; }}
QLineEdit {{ min-height: {least - 2 * pad}px; }}
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus {{ border: 2px solid {p.deed};
    padding: {pad - 1}px {pad + 1}px; }}
QDateEdit, QDoubleSpinBox {{ background: {p.field}; color: {p.ink}; border: 1px solid {p.edge};
    border-radius: 3px; padding: {pad}px {pad + 2}px; min-height: {least - 2 * pad}px; }}
QDateEdit:focus, QDoubleSpinBox:focus {{ border: 2px solid {p.deed};
    padding: {pad - 1}px {pad + 1}px; }}
QDateEdit QLineEdit, QDateEdit QLineEdit:focus, QDoubleSpinBox QLineEdit,
QDoubleSpinBox QLineEdit:focus {{ background: transparent; border: none;
    padding: 0; min-height: 0; }}
QDateEdit::drop-down {{ border: none; width: {least}px; }}
QDateEdit::down-arrow {{ image: url("{_arrow(p)}"); width: {lead}px; height: {lead}px; }}
QDoubleSpinBox {{ min-width: {wide * 5}px; }}
QDoubleSpinBox::up-button, QDoubleSpinBox::down-button {{ subcontrol-origin: border;
    width: 0; height: 0; border: none; }}
QCalendarWidget QWidget {{ background: {p.field}; color: {p.ink};
    alternate-background-color: {p.shade}; }}
QCalendarWidget QAbstractItemView {{ selection-background-color: {p.deed};
    selection-color: {p.on_deed}; }}
QPlainTextEdit[kind="pencil"] {{ border: 1px dashed {p.edge}; color: {p.pencil}; }}
QPlainTextEdit[kind="pencil"]:focus {{ border: 2px solid {p.deed}; color: {p.ink}; }}

QAbstractItemView {{ background: {p.paper}; border: 1px solid {p.rule}; border-radius: 3px;
    gridline-color: {p.rule}; selection-background-color: {p.deed_soft};
    selection-color: {p.ink}; }}
QAbstractItemView:focus {{ border: 2px solid {p.deed}; }}
QAbstractItemView[kind="open"] {{ background: transparent; border: 1px solid transparent; }}
QAbstractItemView[kind="open"]:focus {{ border: 1px solid transparent; }}
QListWidget[kind="open"] {{ border: 2px solid transparent; }}
QListWidget[kind="open"]:focus {{ border: 2px solid {p.deed}; }}
QHeaderView, QHeaderView:focus {{ background: transparent; border: none; }}
QHeaderView::section {{ background: {p.shade}; color: {p.pencil}; border: none;
    border-bottom: 1px solid {p.rule}; padding: {pad}px; font-size: {small}px; }}
QTableView[kind="readings"] {{ border: 2px solid transparent; }}
QTableView[kind="readings"]:focus {{ border: 2px solid {p.deed}; }}
QTableView[kind="roll"]::item {{ padding: 0 {pad + 4}px; }}
QTableView[kind="roll"] QHeaderView::section {{ padding: {pad}px {pad + 5}px; }}
QTableCornerButton::section {{ background: {p.shade}; border: none; }}

QProgressBar {{ background: {p.shade}; border: 1px solid {p.edge}; border-radius: 3px;
    text-align: center; color: {p.ink}; min-height: 8px; }}
QProgressBar::chunk {{ background: {p.deed}; }}
QSlider::groove:horizontal {{ background: {p.edge}; height: 3px; }}
QSlider::handle:horizontal {{ background: {p.deed}; width: 14px; margin: -8px 0;
    border-radius: 3px; border: 1px solid {p.on_deed}; }}
QSlider:focus {{ border: 2px solid {p.deed}; border-radius: 3px; }}
QScrollBar:vertical {{ background: transparent; width: 12px; margin: 0; }}
QScrollBar:horizontal {{ background: transparent; height: 12px; margin: 0; }}
QScrollBar::handle {{ background: {p.edge}; border-radius: 3px; margin: 3px; min-height: 30px;
    min-width: 30px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
QSplitter::handle {{ background: transparent; }}
QMenu {{ background: {p.paper}; color: {p.ink}; border: 1px solid {p.edge}; padding: 4px; }}
QMenu::item {{ padding: {pad}px {wide * 2}px; }}
QMenu::item:selected {{ background: {p.deed_soft}; color: {p.ink}; }}
QCheckBox::indicator {{ width: {round(15 * scale)}px; height: {round(15 * scale)}px; }}
QCheckBox::indicator:unchecked {{ border: 1px solid {p.edge}; border-radius: 3px;
  background: {p.paper}; width: {round(15 * scale) - 2}px; height: {round(15 * scale) - 2}px; }}
QCheckBox {{ spacing: {pad + 2}px; min-height: {least - 4}px; padding: 0 2px;
    border: 2px solid transparent; border-radius: 3px; }}
QCheckBox:focus {{ border: 2px solid {p.deed}; }}
"""
