"""What kind of piece a file is: by its type first, then by the words in its name.

The words stand in ``words.toml``. A picture that no word settles stays ``photo``: whether
it shows the set-up or the learner is for the teacher to see, not for us to guess.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from markbench.intake.names import cut, fold, groups_said, piece_words
from markbench.model import PieceKind

TABLES = frozenset({"xlsx", "xlsm", "xls", "xlsb", "ods", "csv", "tsv", "tab", "txt"})
# Tables that only their maker's program opens.
CLOSED_TABLES = frozenset({"numbers", "gsheet", "xlr", "wks"})
PICTURES = frozenset(
    {
        "jpg", "jpeg", "jpe", "jfif", "png", "gif", "bmp", "tif", "tiff", "webp", "heic",
        "heif", "avif",
    }
)  # fmt: skip
VIDEOS = frozenset(
    {
        "mp4", "m4v", "mov", "avi", "mkv", "webm", "3gp", "3g2", "mpg", "mpeg", "mts", "m2ts",
        "wmv", "flv", "ogv",
    }
)  # fmt: skip
REPORTS = frozenset(
    {
        "pdf", "doc", "docx", "odt", "rtf", "md", "pages", "ppt", "pptx", "odp", "html", "htm",
        "tex",
    }
)  # fmt: skip


def ending(name: str) -> str:
    """The ending of a file name in lower case, without the point."""
    stem, point, end = name.rpartition(".")
    return end.casefold() if point and stem else ""


def stem(name: str) -> str:
    """The file name without its ending (``table.csv.xlsx`` loses one)."""
    before, point, end = name.rpartition(".")
    return before if point and before and len(end) <= 8 else name


def kind_of(name: str, folders: Sequence[str] = (), owner_name: str = "") -> tuple[PieceKind, str]:
    """Kind of a file and what told it (``type`` or ``name``).

    ``folders``: names of the folders and zip files round it, outermost first. The owner's
    name is left out of account.
    """
    end = ending(name)
    if end in TABLES or end in CLOSED_TABLES:
        if end == "txt" and _said(name, folders, owner_name, ("report",)) == "report":
            return "report", "name"
        return "readings", "type"
    if end in VIDEOS:
        return "swing_video", "type"
    if end in PICTURES:
        said = _said(name, folders, owner_name, ("selfie", "setup", "readings", "report"))
        if said == "selfie":
            return "selfie", "name"
        if said == "setup":
            return "setup_photo", "name"
        # A photo of a written table or graph is written work, not evidence of the set-up.
        return ("report", "name") if said else ("photo", "type")
    if end in REPORTS:
        return "report", "type"
    return "unknown", "type"


def _said(name: str, folders: Sequence[str], owner_name: str, groups: tuple[str, ...]) -> str:
    """The first group that the file's name speaks of, else its folders, innermost first."""
    said = groups_said(stem(name), owner_name)
    for group in groups:
        if group in said:
            return group
    # A folder may sort pictures; that it is called "reports" says nothing of one picture.
    for text in reversed(folders):
        said = groups_said(text, owner_name)
        for group in groups:
            if group in ("selfie", "setup") and group in said:
                return group
    return ""


@dataclass(frozen=True, slots=True, order=True)
class Version:
    """How late a hand-in calls itself: ``word`` −1 draft, 0 nothing, 1 final; then a number."""

    word: int = 0
    number: int = 0


_NUMBERED = re.compile(
    r"(?i)\((\d{1,2})\)\s*$|(?<![^\W_])v(?:er|ersion)?[ ._-]?(\d{1,2})(?![^\W_])"
    r"|[-_ ]copy[-_ ]?(\d{1,2})?\s*$"
)


def version_of(name: str, folders: Sequence[str] = (), owner_name: str = "") -> Version:
    """The version a file's name and folders claim (``v2``, ``(1)``, ``final``, ``resubmitted``)."""
    word = 0
    number = 0
    for text in (stem(name), *folders):
        said = groups_said(text, owner_name)
        if "later" in said:
            word = 1
        elif word == 0 and "earlier" in said:
            word = -1
        for match in _NUMBERED.finditer(text):
            copy, version, again = match[1], match[2], match[3]
            # "(1)" is the first copy after the original, "v1" the original itself.
            number = max(number, int(copy or again or 1) + 1 if version is None else int(version))
    return Version(word, number if number > 1 else 0)


def base_name(name: str) -> str:
    """The folded name without version marks: equal for two hand-ins of one piece."""
    words = piece_words()["later"] | piece_words()["earlier"]
    text = _NUMBERED.sub(" ", stem(name))
    return " ".join(form for piece in cut(text) if (form := fold(piece)) not in words)
