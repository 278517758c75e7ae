"""Bring the .ts files up to the strings in the code and compile them, with Qt's own tools.

    python -m markbench.ui.languages.refresh

Translate what is new in ``markbench_<language>.ts`` (with Qt Linguist or any editor), then
run it again: only finished strings reach the .qm file.
"""

from __future__ import annotations

import ast
import re
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from string import Formatter

from markbench.checks import CHECKS
from markbench.checks.diagnosis import SLIPS
from markbench.checks.wording import HOW_OFTEN
from markbench.evidence.troubles import TROUBLES
from markbench.intake.brief_rules import ALLOWED
from markbench.rubric.facts import FACTS
from markbench.store.errors import store_sentences
from markbench.ui.languages import FOLDER, NAMES
from markbench.ui.look.said import CONTEXT
from markbench.ui.newclass import brief_form, field
from markbench.ui.rubrics import criterion_form

_UI = FOLDER.parent
_CORE = _UI.parent
_WORDS = re.compile(r"[^\W\d_]|[“”]")


def kept_in_tables() -> Iterator[tuple[str, str]]:
    """(context, string) of each string that stands in a table and is translated when shown."""
    for heading, names in brief_form._PLACES:
        yield from (("BriefForm", words) for words in (heading, *names.values()))
    about = (rule.about for rule in ALLOWED.values())
    for words in (*about, *field._CHOICES.values(), *field._EXAMPLES.values()):
        yield "Field", words
    yield from (("FindingRow", words) for words in HOW_OFTEN)
    yield from (("CriterionForm", words) for words in criterion_form._ROLES.values())
    for slip in SLIPS.values():
        for form in (slip.title, slip.sentence, slip.beside, slip.ask, slip.settle):
            yield CONTEXT, form
    yield from ((CONTEXT, fact.label) for fact in FACTS.values())
    for forms in (TROUBLES, store_sentences()):
        yield from ((CONTEXT, form) for form in forms)
    for check in (check for check in CHECKS.values() if check.origin == "checks"):  # as topics
        yield from ((CONTEXT, words) for words in (check.title, check.explanation))


def forms_of_sentences() -> Iterator[str]:
    """The form of each sentence that the core says, as it stands in the call of ``say``.

    One of nothing but places and signs, such as ``{length} ({n})``, is the same in any language.
    """
    for path in sorted(_CORE.rglob("*.py")):
        if _UI in path.parents:
            continue
        for call in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(call, ast.Call) and getattr(call.func, "id", "") == "say":
                for form in _written_in(call.args[0]):
                    if _has_words(form):
                        yield form


def _written_in(argument: ast.expr) -> Iterator[str]:
    """The literal forms of a call's first argument: one, or one for either case."""
    match argument:
        case ast.Constant(value=str() as form):
            yield form
        case ast.IfExp(body=one, orelse=other):
            yield from _written_in(one)
            yield from _written_in(other)


def _has_words(form: str) -> bool:
    return any(_WORDS.search(text) for text, *_ in Formatter().parse(form))


def main() -> None:
    """Run lupdate and lrelease for every language but that of the code."""
    tools = Path(sys.executable).parent
    sources = sorted(str(path) for path in _UI.rglob("*.py"))
    with tempfile.TemporaryDirectory() as folder:
        listed = Path(folder) / "tables.py"  # lupdate reads calls, not tables
        sentences = ((CONTEXT, form) for form in forms_of_sentences())
        kept = dict.fromkeys((*kept_in_tables(), *sentences))
        calls = [f"translate({context!r}, {words!r})" for context, words in kept]
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
