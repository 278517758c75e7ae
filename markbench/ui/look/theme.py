"""The look as it is now: follows the system between light and dark, and the text size."""

from __future__ import annotations

from PySide6.QtCore import QObject, QSettings, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPalette
from PySide6.QtWidgets import QApplication

from markbench.ui.look.sheet import style_sheet
from markbench.ui.look.tokens import DARK, LIGHT, PLAIN, TYPE, Palette

LEAST_SCALE, MOST_SCALE = 1.0, 2.0
_CHOSEN = ("light", "dark")


class Theme(QObject):
    """Palette and text scale; ``changed`` is sent after the application has been restyled."""

    changed = Signal()

    def __init__(self, app: QApplication, settings: QSettings | None = None) -> None:
        super().__init__(app)
        self._app = app
        self._settings = settings
        self._fonts: dict[tuple[str, bool], QFont] = {}
        self._metrics: dict[str, QFontMetricsF] = {}
        self.palette: Palette = LIGHT
        kept = settings.value("text_scale", 1.0) if settings is not None else 1.0
        self.scale = min(max(float(str(kept)), LEAST_SCALE), MOST_SCALE)
        app.setStyle("Fusion")
        app.styleHints().colorSchemeChanged.connect(self._system_changed)
        kept = str(settings.value("light", "") or "") if settings is not None else ""
        self._follow = kept not in _CHOSEN
        self.palette = DARK if kept == _CHOSEN[True] else LIGHT
        if self._follow:
            self._system_changed(app.styleHints().colorScheme())
        else:
            self._apply()

    @property
    def dark(self) -> bool:
        """Whether the dark palette is in use."""
        return self.palette is DARK

    def choose(self, dark: bool | None) -> None:
        """Fix the light or the dark palette, remembered; ``None`` follows the system again."""
        self._follow = dark is None
        if self._settings is not None:
            self._settings.setValue("light", "" if dark is None else _CHOSEN[dark])
        if dark is None:
            self._system_changed(self._app.styleHints().colorScheme())
        else:
            self.palette = DARK if dark else LIGHT
            self._apply()

    def set_scale(self, scale: float) -> None:
        """Size of all text, 1 to 2, remembered."""
        self.scale = min(max(scale, LEAST_SCALE), MOST_SCALE)
        if self._settings is not None:
            self._settings.setValue("text_scale", self.scale)
        self._apply()

    def px(self, length: float) -> int:
        """A length that grows with the text."""
        return round(length * self.scale)

    def font(self, size: str = "body", *, bold: bool = False) -> QFont:
        """A font of the type scale."""
        held = self._fonts.get((size, bold))
        if held is None:
            held = self._fonts[size, bold] = QFont()
            held.setFamilies(list(PLAIN))
            held.setPixelSize(round(TYPE[size] * self.scale))
            if bold:
                held.setWeight(QFont.Weight.DemiBold)
        return QFont(held)  # whoever gets it may lean it or strike it through

    def metrics(self, size: str = "body") -> QFontMetricsF:
        """Measures of a font of the type scale."""
        if size not in self._metrics:
            self._metrics[size] = QFontMetricsF(self.font(size))
        return self._metrics[size]

    def line_height(self, size: str = "body") -> float:
        """Height of one line of text."""
        return self.metrics(size).height()

    def _system_changed(self, scheme: Qt.ColorScheme) -> None:
        if self._follow:
            self.palette = DARK if scheme == Qt.ColorScheme.Dark else LIGHT
            self._apply()

    def _apply(self) -> None:
        self._fonts.clear()
        self._metrics.clear()
        colours, qt = self.palette, QPalette()
        roles = QPalette.ColorRole
        for role, colour in (
            (roles.Window, colours.bench),
            (roles.WindowText, colours.ink),
            (roles.Base, colours.field),
            (roles.AlternateBase, colours.shade),
            (roles.Text, colours.ink),
            (roles.Button, colours.paper),
            (roles.ButtonText, colours.ink),
            (roles.ToolTipBase, colours.paper),
            (roles.ToolTipText, colours.ink),
            (roles.PlaceholderText, colours.pencil),
            (roles.Highlight, colours.deed),
            (roles.HighlightedText, colours.on_deed),
            (roles.Link, colours.deed),
            (roles.Mid, colours.rule),
        ):
            qt.setColor(role, QColor(colour))
        for role in (roles.Text, roles.ButtonText, roles.WindowText):
            qt.setColor(QPalette.ColorGroup.Disabled, role, QColor(colours.pencil))
        self._app.setFont(self.font())
        self._app.setPalette(qt)
        self._app.setStyleSheet(style_sheet(colours, self.scale))
        self.changed.emit()
