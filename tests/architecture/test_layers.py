"""The import contract holds, is exhaustive, and is able to fail."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


def lint(folder: Path) -> subprocess.CompletedProcess[str]:
    command = "from importlinter.cli import lint_imports_command; lint_imports_command()"
    return subprocess.run(
        [sys.executable, "-c", command, "--no-cache"],
        cwd=folder,
        env={"PYTHONPATH": str(folder), "PATH": ""},
        capture_output=True,
        text=True,
    )


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of the package's sources that a test may spoil."""
    shutil.copytree(
        ROOT / "markbench", tmp_path / "markbench", ignore=shutil.ignore_patterns("__pycache__")
    )
    shutil.copy(ROOT / ".importlinter", tmp_path)
    return tmp_path


def test_contract_holds():
    result = lint(ROOT)
    assert result.returncode == 0, result.stdout


@pytest.mark.parametrize(
    ("file", "line", "contract"),
    [
        ("physics/stack.py", "import markbench.session", "One way through the house"),
        ("cli/__init__.py", "import markbench.ui", "One way through the house"),
        ("session/session.py", "import PySide6.QtCore", "Qt in the window alone"),
        ("checks/numbers.py", "import openpyxl", "The core reads no files"),
    ],
)
def test_contract_breaks_when_broken(copy, file, line, contract):
    path = copy / "markbench" / file
    path.write_text(f"{path.read_text('utf-8')}\n{line}\n", "utf-8")
    result = lint(copy)
    assert result.returncode == 1
    assert f"{contract} BROKEN" in result.stdout


def test_a_new_folder_must_be_placed(copy):
    (copy / "markbench" / "attic").mkdir()
    (copy / "markbench" / "attic" / "__init__.py").write_text('"""Nowhere."""\n')
    result = lint(copy)
    assert result.returncode == 1
    assert "attic" in result.stdout
