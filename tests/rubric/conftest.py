"""Fixtures for the rubric's tests."""

from __future__ import annotations

import pytest
from rubric_learners import random_learner

from markbench.rubric import Facts


@pytest.fixture(scope="session")
def crowd() -> list[Facts]:
    return [random_learner(number) for number in range(400)]
