"""What Markbench is made of: every package at work here, its version and its licence.

Read from the installed packages themselves, so that the list cannot drift from what runs;
a bundle carries the same records along. Rejected: a list written when the program is built,
which would name the builder's versions in every installation from source.
"""

from __future__ import annotations

import platform
import re
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.metadata import Distribution, PackageNotFoundError, distribution

OURS = "markbench"
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]*")
_LICENCE_FILE = re.compile(r"(^|/)(licen[cs]e|copying|notice)[^/]*$", re.IGNORECASE)

# What comes inside a package and has a licence of its own, which the package does not name.
# From the projects' own pages; the wheels of 2026.
_INSIDE = {
    "pyside6-essentials": "Qt: LGPL-3.0",
    "av": "FFmpeg: LGPL-2.1-or-later; its wheels bring x264 and x265: GPL-2.0-or-later",
    "pillow-heif": "libheif, libde265: LGPL-3.0; its wheels bring x265: GPL-2.0-or-later",
    "numpy": "OpenBLAS: BSD-3-Clause; libgfortran: GPL-3.0 with runtime exception",
    "scipy": "OpenBLAS: BSD-3-Clause; libgfortran: GPL-3.0 with runtime exception",
    "pillow": "libjpeg-turbo, libpng, libwebp, FreeType and others, all permissive",
    "uharfbuzz": "HarfBuzz: MIT",
}


@dataclass(frozen=True, slots=True)
class Component:
    """One part: ``inside`` names what it brings along under another licence."""

    name: str
    version: str
    licence: str
    inside: str = ""

    @property
    def text(self) -> str:
        """The texts of its licence, as its package brings them; empty where it brings none."""
        try:
            found = distribution(self.name)
        except PackageNotFoundError:
            return ""
        files = [one for one in found.files or () if _LICENCE_FILE.search(str(one))]
        texts = []
        for file in files:
            try:
                texts.append(file.read_text("utf-8").strip())
            except (OSError, UnicodeDecodeError, ValueError):
                continue
        return "\n\n".join(texts)


def components() -> tuple[Component, ...]:
    """Markbench first, then what it needs and what that needs, by name; Python and the fonts."""
    packages = sorted(_needed(), key=lambda one: one.name.casefold())
    ours = [one for one in packages if _plain(one.name) == OURS]
    others = [one for one in packages if _plain(one.name) != OURS]
    return (
        *ours,
        Component("Python", platform.python_version(), "PSF-2.0", "SQLite: public domain"),
        *others,
        Component("DejaVu Sans Condensed", "2.37, a subset", "Bitstream Vera and Arev licences"),
    )


def _needed() -> Iterator[Component]:
    waiting, seen = [OURS], set()
    while waiting:
        name = waiting.pop()
        if _plain(name) in seen:
            continue
        seen.add(_plain(name))
        try:
            found = distribution(name)
        except PackageNotFoundError:
            continue  # needed on another system only, or for an extra
        yield Component(
            found.metadata["Name"],
            found.version,
            _licence_of(found),
            _INSIDE.get(_plain(name), ""),
        )
        for requirement in found.requires or ():
            wanted, _, condition = requirement.partition(";")
            match = _NAME.match(wanted)
            if match is not None and "extra" not in condition:
                waiting.append(match[0])


def _licence_of(found: Distribution) -> str:
    """The licence's short name: the expression, else a short text, else the classifier."""
    metadata = found.metadata
    # PackageMetadata promises no get before Python 3.12.
    expression = metadata["License-Expression"] if "License-Expression" in metadata else ""  # noqa: SIM401
    told = metadata["License"].strip() if "License" in metadata else ""
    if expression or (told and "\n" not in told and len(told) <= 80):
        return str(expression or told)
    classified = [
        line.rpartition(" :: ")[2]
        for line in metadata.get_all("Classifier") or ()
        if line.startswith("License ::")
    ]
    return ", ".join(classified) or "see its licence text"


def _plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).casefold()
