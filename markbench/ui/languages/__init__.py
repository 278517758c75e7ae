"""The language of the window: chosen by the teacher, else the system's, else English.

The language of the feedback to learners is another matter: it stands in the brief, since one
may well work in one language and teach in another.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QSettings, QTranslator

FOLDER = Path(__file__).parent
NAMES = {"en": "English", "de": "Deutsch"}
"""Each language's own name for itself, as it stands in the list of actions."""
KEY = "interface_language"
_SOURCE = "en"  # the language in which the strings are written in the code


class Words(QTranslator):
    """One language's strings from its .qm file.

    Qt's tool knows the class around a string, but not the context that a function outside a
    class asks for: such strings stand under no context, and are looked for there too.
    """

    def translate(
        self,
        context: str | bytes,
        source: str | bytes,
        disambiguation: str | bytes | None = None,
        n: int = -1,
    ) -> str | None:
        """The string in this language; no string at all, not an empty one, where unknown."""
        own: str | None = super().translate(context, source, disambiguation, n)  # type: ignore[arg-type]
        if not own:
            own = super().translate("", source, disambiguation, n)  # type: ignore[arg-type]
        return own or None


def chosen(settings: QSettings, wished: Sequence[str] | None = None) -> str:
    """Code of the language to show.

    ``wished``: tags such as "de-AT" in order of preference; the system's where not given.
    """
    kept = str(settings.value(KEY, "") or "")
    if kept in NAMES:
        return kept
    tags = QLocale.system().uiLanguages() if wished is None else wished
    codes = (tag.replace("_", "-").split("-")[0].lower() for tag in tags)
    return next((code for code in codes if code in NAMES), _SOURCE)


def remember(settings: QSettings, language: str) -> None:
    """Show ``language`` from the next start on."""
    settings.setValue(KEY, language)


def install(app: QCoreApplication, language: str) -> tuple[QTranslator, ...]:
    """Have ``app`` speak ``language``; what was installed, Qt's own strings first."""
    if language == _SOURCE:
        return ()
    qt, own = QTranslator(app), Words(app)
    qt.load(f"qtbase_{language}", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath))
    if not own.load(str(FOLDER / f"markbench_{language}.qm")):
        return ()
    for translator in (qt, own):
        app.installTranslator(translator)
    return qt, own
