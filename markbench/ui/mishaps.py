"""What went wrong, as a sentence for people: never a number of the system's, never Python's words.

Errors of our own carry their sentence. Those of the disk carry a number, a reason in the
system's language and a whole path; those of a slip in this program carry nothing for a teacher.
"""

from __future__ import annotations

import errno
import logging
from pathlib import Path

from PySide6.QtCore import QCoreApplication

from markbench.ui.look.said import said

_LOG = logging.getLogger(__name__)
_SLIPS = (
    AttributeError, TypeError, LookupError, ArithmeticError, AssertionError, NameError,
    NotImplementedError, RecursionError, SyntaxError, ImportError,
)  # fmt: skip


def plainly(error: BaseException) -> str:
    """The sentence to show."""
    if isinstance(error, _SLIPS):
        _LOG.error("a slip in the program", exc_info=error)
        words = _tr("Something went wrong in Markbench itself ({kind}); what was saved is safe.")
        return words.format(kind=type(error).__name__)
    if not isinstance(error, OSError):
        return said(str(error))
    if error.errno is None and error.args:
        return said(str(error))  # raised by ourselves, with a sentence
    name = Path(str(error.filename)).name if error.filename else ""
    name = name or _tr("The file")
    return f"{name} {_reason(error.errno)}."


def _reason(number: int | None) -> str:
    if number in (errno.ENOSPC, errno.EDQUOT):
        return _tr("could not be written: the disk is full")
    if number in (errno.EACCES, errno.EPERM, errno.EROFS):
        return _tr("may not be opened or written: it is locked, or not yours to write in")
    if number in (errno.ENOENT, errno.ENOTDIR):
        return _tr("is not there any more, or its folder is out of reach")
    if number in (errno.EEXIST, errno.EISDIR):
        return _tr("stands in the way: something of that name is there already")
    return _tr("could not be read or written: the disk, the share or the file itself failed")


def _tr(text: str) -> str:
    return QCoreApplication.translate("Mishaps", text)
