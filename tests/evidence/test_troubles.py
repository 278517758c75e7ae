"""Why a photo or film does not open is known again in a window of another language."""

from __future__ import annotations

import ast
from pathlib import Path

import markbench.evidence
from markbench.evidence.troubles import TROUBLES
from markbench.model import Sentence
from markbench.model.sentence import known_again

FOLDER = Path(markbench.evidence.__file__).parent
FILES = ("picture.py", "process.py", "video/film.py")
ERRORS = ("PictureError", "FilmError", "WorkerError", "SlowWorkerError")


def raised() -> list[str]:
    """What these files raise, with a number in each place."""
    found = []
    for file in FILES:
        for call in ast.walk(ast.parse((FOLDER / file).read_text("utf-8"))):
            if isinstance(call, ast.Call) and getattr(call.func, "id", "") in ERRORS:
                (argument,) = call.args
                parts = argument.values if isinstance(argument, ast.JoinedStr) else [argument]
                texts = [part.value if isinstance(part, ast.Constant) else "7" for part in parts]
                found.append("".join(map(str, texts)))
    return found


def test_all_that_is_raised_is_known() -> None:
    assert len(raised()) > 12
    for text in raised():
        known = known_again(text, TROUBLES)
        assert isinstance(known, Sentence), text
        assert known == text
