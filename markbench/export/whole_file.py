"""Writing a file so that it is there whole or not at all."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import NamedTemporaryFile

from markbench.export.errors import ExportError
from markbench.export.report import ClassReport
from markbench.model import say


@contextmanager
def whole_file(path: Path, report: ClassReport | None = None) -> Iterator[Path]:
    """Give a passing name to write under; it takes the place of ``path`` when all is well.

    ``report`` tells which files were handed in; without it, none is guarded.
    Raises :class:`ExportError` where the file cannot be written, is open in another
    program, or is one that a learner handed in.
    """
    _refuse_handed_in(path, report)
    try:
        with NamedTemporaryFile(
            dir=path.parent, prefix=".markbench-", suffix=path.suffix, delete=False
        ) as made:
            unfinished = Path(made.name)
    except OSError as error:
        raise _plain(error, path) from error
    try:
        yield unfinished
        _let_others_read(unfinished)
        os.replace(unfinished, path)
    except OSError as error:
        raise _plain(error, path) from error
    finally:
        unfinished.unlink(missing_ok=True)


def _refuse_handed_in(path: Path, report: ClassReport | None) -> None:
    """Learners' files are never written to, not even by a slip of the hand."""
    if report is None or report.folder is None:
        return
    pieces = [*report.unowned, *report.set_aside]
    for one in report.learners:
        pieces += [*one.portfolio.pieces, *one.portfolio.earlier]
    if path.resolve() in {(report.folder / p.file.split("!/")[0]).resolve() for p in pieces}:
        raise ExportError(
            say(
                "{file} is a file that was handed in; choose another name to export to.",
                file=path.name,
            )
        )


def _let_others_read(path: Path) -> None:
    """Temporary files are private; what goes out has the usual rights."""
    usual = os.umask(0)
    os.umask(usual)
    path.chmod(0o666 & ~usual)


def _plain(error: OSError, path: Path) -> ExportError:
    if isinstance(error, ExportError):
        return error
    if isinstance(error, PermissionError):
        return ExportError(
            say(
                "{file} cannot be written: it is open in another program or its folder "
                "is read-only. Close it there and export again.",
                file=path.name,
            )
        )
    if isinstance(error, FileNotFoundError):
        return ExportError(
            say(
                "There is no folder {folder} to write {name} in.",
                folder=path.parent.name,
                name=path.name,
            )
        )
    return ExportError(
        say("{file} could not be written: {why}.", file=path.name, why=error.strerror or error)
    )
