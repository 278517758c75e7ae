"""Nothing said is lost when the process is killed the instant after."""

import random
import subprocess
import sys
from pathlib import Path

SCRIPT = Path(__file__).parents[1] / "benchmarks" / "kill_store.py"


def test_every_acknowledged_decision_survives_fifteen_kills():
    seed = random.Random(20).randrange(1000)
    done = subprocess.run(
        [sys.executable, str(SCRIPT), "--kills", "15", "--seed", str(seed)],
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert "15 kills" in done.stdout
