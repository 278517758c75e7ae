"""What is shown of an error is a sentence, wherever it comes from."""

from __future__ import annotations

import errno
import re
from pathlib import Path

import pytest

import markbench.ui
from markbench.session.errors import RefusedError
from markbench.ui.mishaps import plainly

SOURCES = Path(markbench.ui.__file__).parent


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (errno.ENOSPC, "disk is full"),
        (errno.EACCES, "not yours to write in"),
        (errno.EROFS, "not yours to write in"),
        (errno.ENOENT, "not there any more"),
        (errno.EIO, "failed"),
        (1094995529, "failed"),  # a decoder's own number
    ],
)
def test_an_error_of_the_disk_names_the_file_and_no_number(number: int, said: str) -> None:
    told = plainly(OSError(number, "Invalid data", "/home/someone/class/graph.svg"))
    assert told.startswith("graph.svg ")
    assert said in told
    assert told.endswith(".")
    for raw in ("Errno", str(number), "/home", "Invalid"):
        assert raw not in told


def test_an_error_of_ours_says_its_own_sentence() -> None:
    assert plainly(RefusedError("Reopening needs its reason.")) == "Reopening needs its reason."
    ours = FileNotFoundError("There is no class folder at 10A.")
    assert plainly(ours) == "There is no class folder at 10A."


@pytest.mark.parametrize("slip", [KeyError("pack"), TypeError("NoneType"), IndexError("list")])
def test_a_slip_of_the_program_is_called_one(slip: Exception) -> None:
    assert "in Markbench itself" in plainly(slip)
    assert str(slip) not in plainly(slip)


def test_the_window_shows_no_error_as_python_words_it() -> None:
    raw = re.compile(r"(emit|setText|_say\w*|show_trouble|_end|_tell|_refuse|_done)\(str\(error\)")
    told = [
        f"{path.relative_to(SOURCES)}: {line.strip()}"
        for path in sorted(SOURCES.rglob("*.py"))
        for line in path.read_text("utf-8").splitlines()
        if raw.search(line) or re.search(r"\{error\}", line)
    ]
    # A sentence of the reader of tables, within a larger one.
    assert [one for one in told if "own_table" not in one] == []
