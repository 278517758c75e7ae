"""Writing the sheets of a class: one PDF and one web page per learner, and a zip of all."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from zipfile import ZIP_DEFLATED, BadZipFile, ZipFile, ZipInfo
from zlib import crc32

from markbench.export.feedback.content import feedback_sheet
from markbench.export.feedback.html import page
from markbench.export.feedback.pdf import pdf
from markbench.export.file_names import safe_names
from markbench.export.report import ClassReport, LearnerReport
from markbench.export.whole_file import whole_file
from markbench.model import Rubric

ZIP_NAME = "all-feedback-sheets.zip"

Progress = Callable[[int, int, str], None]


@dataclass(frozen=True, slots=True)
class SheetFiles:
    """The two files of one learner.

    ``boxes`` are the letters that the PDF shows as empty boxes; the web page has them all.
    """

    learner: str
    pdf: Path
    html: Path
    boxes: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A learner who gets no sheet, and why."""

    learner: str
    name: str
    why: str


@dataclass(frozen=True, slots=True)
class SheetsWritten:
    """What was written, who was left out, and which earlier sheets were taken back."""

    sheets: tuple[SheetFiles, ...]
    left_out: tuple[LeftOut, ...]
    zip: Path | None
    taken_back: tuple[Path, ...] = ()


def write_feedback_sheets(
    folder: Path,
    report: ClassReport,
    *,
    include_partly: bool = False,
    progress: Progress | None = None,
) -> SheetsWritten:
    """Write the sheets of all whose criteria are all marked into ``folder``.

    With ``include_partly``, also of those with at least one mark; what is missing then
    reads “not yet marked”. Nobody gets a sheet with a place unfilled. A sheet of an earlier
    run that no longer belongs there is removed, if nobody has changed it since. Raises
    :class:`ExportError`.
    """
    folder.mkdir(parents=True, exist_ok=True)
    reasons = {id(one): _why_not(one, report.rubric, include_partly) for one in report.learners}
    ready = [one for one in report.learners if not reasons[id(one)]]
    learners = [one.portfolio.learner for one in ready]
    names = safe_names([f"{learner.id} {learner.name}" for learner in learners])
    earlier = _earlier(folder / ZIP_NAME)
    sheets = []
    for number, (one, name) in enumerate(zip(ready, names, strict=True)):
        if progress is not None:
            progress(number, len(ready), one.portfolio.learner.name)
        sheets.append(_write(folder, name, report, one))
    files = [file for sheet in sheets for file in (sheet.pdf, sheet.html)]
    taken_back = tuple(_take_back(folder, earlier, {file.name for file in files}))
    return SheetsWritten(
        tuple(sheets),
        tuple(
            LeftOut(one.portfolio.learner.id, one.portfolio.learner.name, reasons[id(one)])
            for one in report.learners
            if reasons[id(one)]
        ),
        _zip(folder / ZIP_NAME, files, report),
        taken_back,
    )


def _why_not(one: LearnerReport, rubric: Rubric, include_partly: bool) -> str:
    """Why there is no sheet; empty where there is one."""
    unfilled = one.unfilled(rubric)
    if unfilled:
        return "; ".join(unfilled)
    waiting = [c.title for c in rubric.criteria if c.id not in one.marks]
    if not waiting or (include_partly and one.marks):
        return ""
    if len(waiting) == len(rubric.criteria):
        return "not marked yet"
    return f"not yet marked: {', '.join(waiting)}"


def _write(folder: Path, name: str, report: ClassReport, one: LearnerReport) -> SheetFiles:
    sheet = feedback_sheet(report, one)
    printed, boxes = pdf(sheet)
    files = SheetFiles(
        one.portfolio.learner.id, folder / f"{name}.pdf", folder / f"{name}.html", boxes
    )
    for path, content in ((files.pdf, printed), (files.html, page(sheet).encode())):
        with whole_file(path, report) as unfinished:
            unfinished.write_bytes(content)
    return files


def _zip(path: Path, files: list[Path], report: ClassReport) -> Path | None:
    if not files:
        path.unlink(missing_ok=True)
        return None
    # The earliest day a zip can hold is 1 January 1980.
    day = max(report.date, dt.date(1980, 1, 1)).timetuple()[:6]
    with whole_file(path, report) as unfinished, ZipFile(unfinished, "w", ZIP_DEFLATED) as made:
        for file in files:
            entry = ZipInfo(file.name, day)
            entry.compress_type = ZIP_DEFLATED
            entry.external_attr = 0o644 << 16
            made.writestr(entry, file.read_bytes())
    return path


def _earlier(path: Path) -> dict[str, int]:
    """Names and checksums of the sheets written last time, from the zip of that time."""
    try:
        with ZipFile(path) as made:
            return {entry.filename: entry.CRC for entry in made.infolist()}
    except (OSError, BadZipFile):
        return {}


def _take_back(folder: Path, earlier: dict[str, int], now: set[str]) -> Iterator[Path]:
    """Remove the sheets that were written last time, are unchanged, and belong no more."""
    for name, checksum in earlier.items():
        path = folder / name
        if name in now or path.name != name or not path.is_file():
            continue
        if crc32(path.read_bytes()) == checksum:
            path.unlink()
            yield path
