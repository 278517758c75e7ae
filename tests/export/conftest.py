"""Fixtures for the tests of what goes out."""

import pytest
from class_in_every_state import make_report

from markbench.export import ClassReport


@pytest.fixture
def report() -> ClassReport:
    return make_report()
