"""Fixtures for the intake's tests."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest
from class_folders import MakeClass, fill


@pytest.fixture
def make_class(tmp_path: Path) -> MakeClass:
    def make(files: Mapping[str, str | bytes]) -> Path:
        return fill(tmp_path, files)

    return make
