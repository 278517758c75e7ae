"""The command line as somebody types it, in a process of its own where that matters."""

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from python_calamine import CalamineWorkbook

from markbench import cli

SAMPLE = Path(__file__).parents[2] / "sample_class"


@pytest.fixture(scope="module")
def sample(tmp_path_factory):
    return Path(shutil.copytree(SAMPLE, tmp_path_factory.mktemp("class") / "sample_class"))


def no_window(folder):
    raise AssertionError("no window was asked for")


def listing(folder):
    return {
        str(path.relative_to(folder)): (path.stat().st_size, path.stat().st_mtime_ns)
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def test_check_prints_everyone_and_writes_json(sample, tmp_path, capsys):
    before = listing(sample)
    target = tmp_path / "class.json"
    assert cli.main(["check", str(sample), "--json", str(target)], no_window) == 0
    assert "30 learners" in capsys.readouterr().out
    content = json.loads(target.read_text("utf-8"))
    assert len(content["learners"]) == 30
    one = content["learners"][1]
    assert set(one) >= {
        "learner",
        "readings",
        "straight_line",
        "best",
        "findings",
        "slips",
        "evidence",
        "draft",
    }
    assert set(one["readings"][0]) >= {"length_m", "swings", "timings_s", "source"}
    assert set(one["straight_line"]) >= {"g", "u_g", "slope", "intercept"}
    assert set(one["draft"][0]) == {"criterion", "level", "marks", "feedback"}
    # Explanations too improbable to name are left out.
    assert 0.9 < sum(s["probability"] for s in one["slips"]) <= 1 + 1e-9
    assert listing(sample) == before


def test_a_narrow_terminal_gives_each_learner_one_line(sample, capsys, monkeypatch):
    monkeypatch.setenv("COLUMNS", "80")
    assert cli.main(["check", str(sample)], no_window) == 0
    lines = capsys.readouterr().out.splitlines()
    head = next(i for i, line in enumerate(lines) if line.startswith("Learner"))
    rows = lines[head + 1 : head + 31]
    assert all(line[:3].strip() for line in rows)  # none goes on in a second line
    assert lines[head + 31].startswith("g in m/s²")
    assert max(map(len, lines[: head + 32])) <= 80


def test_json_format_is_documented():
    text = Path(cli.__file__).parents[1].joinpath("export", "JSON.md").read_text("utf-8")
    for key in ("straight_line", "best", "slips", "draft", "honest_rate", "g_if_mended"):
        assert f"`{key}`" in text


def test_export_writes_workbook_and_sheet(sample, tmp_path, capsys):
    assert cli.main(["export", str(sample), "--to", str(tmp_path / "out")], no_window) == 0
    workbook = CalamineWorkbook.from_path(str(tmp_path / "out" / "marks.xlsx"))
    assert "Mark sheet" in workbook.sheet_names
    assert (tmp_path / "out" / "mark_sheet.csv").stat().st_size > 500
    assert "drafts" in capsys.readouterr().out


def test_a_folder_with_nothing_but_tables_works_on_defaults(tmp_path, capsys):
    for name in ("Ida", "Jon"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "table.csv").write_text("L/cm,t/s\n20,9.0\n40,12.7\n60,15.5\n")
    target = tmp_path.parent / "out.json"
    assert cli.main(["check", str(tmp_path), "--json", str(target), "--quiet"], no_window) == 0
    learners = json.loads(target.read_text("utf-8"))["learners"]
    assert [one["name"] for one in learners] == ["Ida", "Jon"]
    assert all(len(one["readings"]) == 3 for one in learners)


@pytest.mark.parametrize("arguments", [["open", "x"], ["open"], []])
def test_opening_hands_over_to_the_window(arguments):
    asked = []
    assert cli.main(arguments, lambda folder: asked.append(folder) or 7) == 7
    assert asked == [Path("x") if "x" in arguments else None]


def test_a_missing_folder_is_one_sentence_and_code_1(tmp_path, capsys):
    assert cli.main(["check", str(tmp_path / "nowhere")], no_window) == 1
    error = capsys.readouterr().err
    assert "no class folder" in error
    assert "Traceback" not in error


def test_wrong_words_are_code_2(capsys):
    with pytest.raises(SystemExit) as end:
        cli.main(["chekc"], no_window)
    assert end.value.code == 2


def test_as_a_module():
    result = subprocess.run(
        [sys.executable, "-m", "markbench", "--help"], capture_output=True, text=True, check=True
    )
    for word in ("open", "check", "export", "Exit codes"):
        assert word in result.stdout
