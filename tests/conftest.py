"""For all tests: what is left to chance comes out the same every time, on a slow machine too."""

import random
import secrets

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile(
    "fixed", derandomize=True, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("fixed")


@pytest.fixture(autouse=True)
def same_seeds(monkeypatch: pytest.MonkeyPatch) -> None:
    """Seeds that the program draws: a shuffle of three learners may else change nothing."""
    monkeypatch.setattr(secrets, "randbelow", random.Random(7).randrange)
