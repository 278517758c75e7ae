"""Bring the .ts files up to the strings in the code and compile them, with Qt's own tools.

    python -m markbench.ui.languages.refresh

Translate what is new in ``markbench_<language>.ts`` (with Qt Linguist or any editor), then
run it again: only finished strings reach the .qm file.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from markbench.checks.wording import HOW_OFTEN
from markbench.intake.brief_rules import ALLOWED
from markbench.ui.languages import FOLDER, NAMES
from markbench.ui.newclass import brief_form, field
from markbench.ui.rubrics import criterion_form

_UI = FOLDER.parent


def kept_in_tables() -> Iterator[tuple[str, str]]:
    """(context, string) of each string that stands in a table and is translated when shown."""
    for heading, names in brief_form._PLACES:
        yield from (("BriefForm", words) for words in (heading, *names.values()))
    about = (rule.about for rule in ALLOWED.values())
    for words in (*about, *field._CHOICES.values(), *field._EXAMPLES.values()):
        yield "Field", words
    yield from (("FindingRow", words) for words in HOW_OFTEN)
    yield from (("CriterionForm", words) for words in criterion_form._ROLES.values())


def main() -> None:
    """Run lupdate and lrelease for every language but that of the code."""
    tools = Path(sys.executable).parent
    sources = sorted(str(path) for path in _UI.rglob("*.py"))
    with tempfile.TemporaryDirectory() as folder:
        listed = Path(folder) / "tables.py"  # lupdate reads calls, not tables
        calls = [f"translate({context!r}, {words!r})" for context, words in kept_in_tables()]
        listed.write_text("\n".join(calls), encoding="utf-8")
        for language in NAMES:
            ts = FOLDER / f"markbench_{language}.ts"
            if not ts.exists():
                continue
            subprocess.run(
                [tools / "pyside6-lupdate", *sources, listed, "-tr-function-alias", "tr+=_tr",
                 "-locations", "none", "-no-obsolete", "-source-language", "en",
                 "-target-language", language, "-ts", ts],
                check=True,
            )  # fmt: skip
            subprocess.run([tools / "pyside6-lrelease", ts], check=True)


if __name__ == "__main__":
    main()
