"""Writing what is given to learners before they start: whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path

from markbench.export.errors import ExportError
from markbench.model import say


def write_handout(path: Path, data: bytes) -> None:
    """Put ``data`` at ``path``. Raises :class:`ExportError` with the reason where it cannot be."""
    part = path.with_name(path.name + ".part")
    try:
        part.write_bytes(data)
        os.replace(part, path)
    except OSError as error:
        part.unlink(missing_ok=True)
        reason = error.strerror or str(error)
        raise ExportError(
            say("{file} could not be written: {reason}.", file=path.name, reason=reason)
        ) from error
