"""The two things a teacher hands out, from the command line."""

from pathlib import Path

import pytest
from openpyxl import load_workbook

from markbench.cli import main


def run(*arguments: str) -> int:
    return main(arguments, lambda _folder: 0)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "10A"
    made.mkdir()
    (made / "brief.toml").write_text(
        "lengths = 8\nswings_per_timing = 20\ntimings_per_length = 999\n"
    )
    return made


def test_a_template_follows_the_brief_and_its_problems_are_told(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    to = tmp_path / "readings.xlsx"
    assert run("template", str(folder), "--to", str(to)) == 0
    assert "timings_per_length = 999 is not allowed" in " ".join(capsys.readouterr().out.split())
    cells = [c.value for row in load_workbook(to).active.iter_rows() for c in row if c.value]
    assert 20 in cells  # swings in a timing, written there to be left or changed to ten


def test_a_task_sheet_is_written(folder: Path, tmp_path: Path) -> None:
    to = tmp_path / "sheet.html"
    assert run("task-sheet", str(folder), "--to", str(to)) == 0
    assert "8 different lengths" in to.read_text("utf-8").replace("eight", "8")


@pytest.mark.parametrize("command", ["template", "task-sheet"])
def test_what_was_handed_in_is_never_written_over(
    command: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    handed_in = folder / "readings.xlsx"
    handed_in.write_bytes(b"hers")
    assert run(command, str(folder), "--to", str(handed_in)) == 1
    assert handed_in.read_bytes() == b"hers"
    assert "left as it is" in capsys.readouterr().err


def test_no_class_folder_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("template", str(tmp_path / "no"), "--to", str(tmp_path / "x.xlsx")) == 1
    assert "no class folder" in capsys.readouterr().err
