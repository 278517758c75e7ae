"""What goes to the learners before they start, made from a class folder's brief."""

from __future__ import annotations

from pathlib import Path

from markbench.export.errors import ExportError
from markbench.export.task_sheet import write_task_sheet
from markbench.export.template import write_template
from markbench.intake.brief_file import BRIEF_NAME, BriefProblem, read_brief
from markbench.model import say

OUT = "markbench-out"
TEMPLATE_NAME, TASK_SHEET_NAME = "readings.xlsx", "task_sheet.html"


def template_for(folder: Path, to: Path) -> tuple[BriefProblem, ...]:
    """Write the empty table of readings; returns what is wrong in the brief.

    Raises :class:`ExportError` where the file cannot be written, or would take the place
    of something that may have been handed in.
    """
    _keep_off_hand_ins(folder, to)
    brief, problems = read_brief(folder / BRIEF_NAME)
    write_template(to, brief)
    return problems


def task_sheet_for(folder: Path, to: Path) -> tuple[BriefProblem, ...]:
    """Write the task sheet; as :func:`template_for`."""
    _keep_off_hand_ins(folder, to)
    brief, problems = read_brief(folder / BRIEF_NAME)
    write_task_sheet(to, brief)
    return problems


def _keep_off_hand_ins(folder: Path, to: Path) -> None:
    """Nothing that lies in the class folder is written over, but for our own folder in it."""
    if not folder.is_dir():
        raise ExportError(say("There is no class folder at {folder}.", folder=folder))
    inside, ours = folder.resolve(), (folder / OUT).resolve()
    target = to.resolve()
    if target.exists() and inside in target.parents and ours not in target.parents:
        raise ExportError(
            say(
                "{file} is already in the class folder and is left as it is; choose another name.",
                file=to.name,
            )
        )
    if not target.parent.is_dir():
        raise ExportError(
            say("There is no folder {parent} to write {file} into.", parent=to.parent, file=to.name)
        )
