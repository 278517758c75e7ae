"""An invented class, marked by one person and second-marked by another."""

from __future__ import annotations

import math
from pathlib import Path

from markbench.session import Session
from markbench.session.moderating import take_sample
from markbench.session.pack_session import open_pack
from markbench.session.packing import write_pack
from markbench.session.replies import merge_reply

TEACHER, HER = "T. Teacher", "M. Moderator"
# Invented learners; times are ten swings of 2π√(L/9.81) with a scatter written by hand.
NAMES = ("Ada Invented", "Ben Made-Up", "Cleo Fabricated", "Dov Imaginary")
SCATTER_S = (0.05, -0.06, 0.03, -0.02, 0.04)
BRIEF = 'evidence = []\nrubric = "short"\ngrades = { A = 12, B = 8 }\n'


def table(number: int) -> str:
    lines = ["Length (cm),Time 1 for 10 swings (s),Time 2 for 10 swings (s)"]
    for place, cm in enumerate((20, 30, 40, 50, 60)):
        law = 20 * math.pi * math.sqrt(cm / 981)
        scatter = SCATTER_S[(place + number) % 5]
        lines.append(f"{cm},{law + scatter:.2f},{law - scatter / 2 + number / 90:.2f}")
    return "\n".join(lines) + "\n"


def open_marked(folder: Path, brief: str = BRIEF) -> Session:
    """A class of four, every criterion marked with its second level."""
    for number, name in enumerate(NAMES):
        own = folder / name
        own.mkdir(parents=True)
        (own / "readings.csv").write_text(table(number), "utf-8")
    (folder / "brief.toml").write_text(brief, "utf-8")
    opened = Session.open(folder, TEACHER)
    for learner in opened.learners:
        opened.accept(learner.id)
        for criterion in opened.rubric.criteria:
            opened.set_level(learner.id, criterion.id, criterion.levels[1].name)
    return opened


def ids(session: Session) -> list[str]:
    return [learner.id for learner in session.learners]


def answered(session: Session, tmp_path: Path) -> None:
    """A moderator marks everything with the best level and adjusts one criterion of 01."""
    take_sample(session, seed=4)
    pack = write_pack(session, tmp_path / "class.markbench-pack")
    hers = open_pack(pack.path, HER)
    for learner in hers.learners:
        for criterion in hers.rubric.criteria:
            hers.second_mark(learner.id, criterion.id, criterion.levels[0].name)
        hers.first(learner.id)
        for criterion in hers.rubric.criteria:
            hers.moderate(learner.id, criterion.id, "agree")
    row = hers.rubric.criteria[0]
    hers.moderate("01", row.id, "adjust", "All lengths are there.", row.levels[0].name)
    hers.write_reply(tmp_path / "back.markbench-reply")
    hers.close()
    merge_reply(session, tmp_path / "back.markbench-reply")


def adjusted(session: Session) -> str:
    """Whose number was 01."""
    return next(d.value["numbers"]["01"] for d in session.history() if d.kind == "pack")
