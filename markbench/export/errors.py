"""Why something could not be written out."""

from __future__ import annotations


class ExportError(OSError):
    """The file could not be written; the message says why and what to do."""
