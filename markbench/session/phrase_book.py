"""The teacher's phrases beyond one class: a file of her own in the user's data folder.

It holds her wording with its places, the criterion and the checks it was written about, and
nothing of any learner: a phrase that names one is refused where it is kept. The class's
journal says what was kept and forgotten in it; the book follows the journal, so undoing
works on both.
"""

from __future__ import annotations

import contextlib
import json
import os
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from platformdirs import user_data_path

NAME = "phrases.json"
_FIELDS = ("text", "criterion", "about", "language")


class PhraseBook:
    """Phrases by key. Read anew before each change: another window may have written."""

    def __init__(self, folder: Path | None = None) -> None:
        self.path = (folder or user_data_path("markbench", appauthor=False)) / NAME
        self._kept = self._read()

    def phrases(self) -> Mapping[str, Mapping[str, Any]]:
        """Every phrase, in the order they were kept."""
        return self._kept

    def put(self, key: str, value: Mapping[str, Any]) -> None:
        """Keep a phrase, as the latest."""
        kept = self._read()
        kept.pop(key, None)
        kept[key] = {name: value[name] for name in _FIELDS if name in value}
        self._write(kept)

    def drop(self, key: str) -> None:
        """Forget a phrase."""
        kept = self._read()
        if kept.pop(key, None) is not None:
            self._write(kept)

    def _read(self) -> dict[str, Mapping[str, Any]]:
        try:
            found = json.loads(self.path.read_text("utf-8"))
        except (OSError, ValueError):
            return {}
        if not isinstance(found, dict):
            return {}
        return {
            str(key): value
            for key, value in found.items()
            if isinstance(value, dict) and isinstance(value.get("text"), str)
        }

    def _write(self, kept: dict[str, Mapping[str, Any]]) -> None:
        """Whole or not at all; a folder that cannot be written keeps them for this evening."""
        self._kept = kept
        with contextlib.suppress(OSError):
            self.path.parent.mkdir(parents=True, exist_ok=True)
            handle, name = tempfile.mkstemp(dir=self.path.parent, prefix=".new-")
            try:
                with os.fdopen(handle, "w", encoding="utf-8") as file:
                    json.dump(kept, file, ensure_ascii=False, indent=1)
                os.replace(name, self.path)
            except OSError:
                Path(name).unlink(missing_ok=True)
                raise
