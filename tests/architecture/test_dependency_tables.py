"""DEVELOPERS.md names every package of pyproject.toml with its range, licence and reason."""

import re
import tomllib
from pathlib import Path

ROOT = Path(__file__).parents[2]


def required():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    lists = [project["dependencies"], *project["optional-dependencies"].values()]
    split = re.compile(r"([A-Za-z0-9._-]+)(?:\[[^]]*\])?(.*)")
    return {
        name: bounds for one in lists for name, bounds in (split.match(x).groups() for x in one)
    }


def listed(text):
    section = text.partition("## Dependencies")[2].partition("\n## ")[0]
    rows = [
        [cell.strip() for cell in line.strip("|").split("|")]
        for line in section.splitlines()
        if line.startswith("| ") and not line.startswith("| package")
    ]
    return {row[0]: row[1:] for row in rows}


def test_every_package_its_range_its_licence_and_its_reason():
    rows = listed((ROOT / "DEVELOPERS.md").read_text("utf-8"))
    assert {name: row[0].strip("`") for name, row in rows.items()} == required()
    for name, row in rows.items():
        assert len(row) >= 3, name
        assert all(len(cell) >= 3 for cell in row[1:]), name


def test_every_package_at_run_time_has_an_upper_bound():
    for name, bounds in required().items():
        if name not in ("ruff", "mypy"):  # tools that nobody imports
            assert re.search(r">=\d", bounds), name
            assert re.search(r"<\d", bounds), name
