"""Throw made-up bytes at every reader of files and see what each makes of them.

    python tests/benchmarks/fuzz_readers.py [--inputs 12000] [--seed 1] [--only READER ...]

Two ways, each in a process of its own, which may die: Hypothesis breeds inputs from sound
files (cut, spliced, words put in) and shrinks nothing here; Atheris (libFuzzer) keeps the
inputs that reach new lines of this project's code and breeds from those. Atheris is no
dependency of the project (``pip install atheris``, Apache-2.0, Linux and macOS); without it
only the first way is gone.

Prints, for each reader, how many inputs, the slowest (CPU seconds), the peak of memory, and
each distinct failure once: what a reader promises stands in ``tests/hostile/hostile_readers``.
A file touched outside the class folder, an input over ``LIMIT_S`` or a process over
``LIMIT_MB`` is a failure too. Failing inputs are kept under ``--keep``.
"""

from __future__ import annotations

import argparse
import contextlib
import hashlib
import importlib.util
import io
import json
import os
import resource
import shutil
import sys
import tempfile
import time
import traceback
from pathlib import Path
from typing import Any

LIMIT_S = 10.0
LIMIT_MB = 2048
ADDRESS_MB = 6144  # reserved, not used: libraries reserve far more than they fill
HERE = Path(__file__).resolve()
HOSTILE = HERE.parents[1] / "hostile"
ROOT = HERE.parents[2]


class Trial:
    """One process's inputs for one reader: counts, the slowest, distinct failures."""

    def __init__(self, name: str, report: Path, runs: int) -> None:
        from hostile_readers import READERS
        from watching import temporary_place

        self.reader = READERS[name]
        self.report, self.runs = report, runs
        self.place = temporary_place()
        self.found: dict[str, Any] = {"inputs": 0, "slowest_s": 0.0, "failures": {}}

    def one(self, data: bytes) -> None:
        from watching import watched

        self.report.with_suffix(".current").write_bytes(data)
        folder = self.place / "class"
        folder.mkdir()
        start = time.process_time()
        with watched(folder) as touched:
            try:
                self.reader.read(data, folder)
            except Exception as error:  # whatever it is, it is what we look for
                self.fail(_where(error), data)
            except BaseException as error:
                if isinstance(error, KeyboardInterrupt | SystemExit):
                    raise
                self.fail(_where(error), data)
        spent = time.process_time() - start
        for place in touched:
            self.fail(f"touched {place.replace(str(self.place), '')}", data)
        if spent > LIMIT_S:
            self.fail("took longer than the limit", data)
        self.found["inputs"] += 1
        if spent > self.found["slowest_s"]:
            self.found |= {"slowest_s": spent, "slowest_bytes": len(data)}
        shutil.rmtree(folder)
        if self.found["inputs"] % 50 == 0 or self.found["inputs"] >= self.runs:
            self.tell()

    def fail(self, what: str, data: bytes) -> None:
        kept = self.found["failures"].get(what)
        if kept is None or len(data) < kept["bytes"]:
            self.found["failures"][what] = {
                "bytes": len(data), "trace": traceback.format_exc(limit=-4), "data": data.hex(),
            }  # fmt: skip

    def tell(self) -> None:
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        if peak > LIMIT_MB and "over" not in self.found:
            self.found["over"] = peak
            self.fail("took more memory than the limit", b"")
        self.report.write_text(json.dumps({**self.found, "peak_mb": peak}))


def _where(error: BaseException) -> str:
    """The kind of error and the deepest line of our own code under it."""
    own = [
        frame
        for frame in traceback.extract_tb(error.__traceback__)
        if frame.filename.startswith(str(ROOT)) and ".venv" not in frame.filename
    ]
    at = own[-1] if own else None
    place = f"{Path(at.filename).relative_to(ROOT)}:{at.name}" if at else "?"
    return f"{type(error).__name__} in {place}"


def by_properties(trial: Trial, seed: int) -> None:
    """Inputs bred by Hypothesis."""
    from hostile_strategies import inputs
    from hypothesis import HealthCheck, Phase, given, settings
    from hypothesis import seed as seeded

    @seeded(seed)
    @settings(
        max_examples=trial.runs, deadline=None, database=None, phases=[Phase.generate],
        suppress_health_check=list(HealthCheck), derandomize=False,
    )  # fmt: skip
    @given(inputs(trial.reader))
    def throw(data: bytes) -> None:
        trial.one(data)

    throw()


def by_coverage(trial: Trial, seed: int, corpus: Path) -> None:
    """Inputs bred by Atheris towards lines not yet reached; ends the process."""
    import atheris

    corpus.mkdir(parents=True, exist_ok=True)
    for data in trial.reader.seeds():
        (corpus / hashlib.sha256(data).hexdigest()[:16]).write_bytes(data)
    words = corpus.with_suffix(".dict")
    lines = (
        '"' + "".join(f"\\x{byte:02x}" for byte in word) + '"'
        for word in (*trial.reader.words, b"\0\0\0\0")
    )
    words.write_text("\n".join(lines))

    def throw(data: bytes) -> None:
        trial.one(data)
        if trial.found["inputs"] >= trial.runs:
            os._exit(0)

    longest = max(map(len, trial.reader.seeds())) * 2 + 256
    atheris.Setup(
        [sys.argv[0], str(corpus), f"-seed={seed}", f"-max_len={longest}", f"-dict={words}",
         f"-timeout={round(10 * LIMIT_S)}", "-rss_limit_mb=4096", "-len_control=0",
         f"-artifact_prefix={corpus}-", "-verbosity=0"],
        throw,
    )  # fmt: skip
    atheris.Fuzz()


def run(way: str, name: str, runs: int, seed: int, place: Path) -> dict[str, Any]:
    """One reader in processes of its own, begun again where one dies."""
    total: dict[str, Any] = {"inputs": 0, "slowest_s": 0.0, "peak_mb": 0.0, "failures": {}}
    for again in range(6):
        left = runs - total["inputs"]
        if left <= 0:
            break
        report = place / f"{way}-{name}-{again}.json"
        status = _in_a_fork(way, name, left, seed + again, report)
        found: dict[str, Any] = {"inputs": 0, "failures": {}}
        with contextlib.suppress(OSError, ValueError):
            found = json.loads(report.read_text())
        total["inputs"] += found["inputs"]
        total["failures"] |= found["failures"]
        for key in ("slowest_s", "peak_mb"):
            total[key] = max(total[key], found.get(key, 0.0))
        if status == 0:
            break
        data = b""
        with contextlib.suppress(OSError):
            data = report.with_suffix(".current").read_bytes()
        said = report.with_suffix(".said").read_text("utf-8", "replace")[-1500:]
        total["failures"][f"the process died ({status})"] = {
            "bytes": len(data), "trace": said, "data": data.hex(),
        }  # fmt: skip
    return total


def _in_a_fork(way: str, name: str, runs: int, seed: int, report: Path) -> int:
    """The exit code of a fork of this process; a signal's number below zero.

    Forked, as everything is imported (and instrumented) once.
    """
    sys.stdout.flush()
    process = os.fork()
    if process:
        return os.waitstatus_to_exitcode(os.waitpid(process, 0)[1])
    code = 1
    try:
        said = os.open(report.with_suffix(".said"), os.O_WRONLY | os.O_CREAT)
        os.dup2(said, 1)
        os.dup2(said, 2)
        # What a reader must never need; beyond it the process dies, which is counted.
        resource.setrlimit(resource.RLIMIT_AS, (ADDRESS_MB << 20, ADDRESS_MB << 20))
        trial = Trial(name, report, runs)
        if way == "coverage":
            by_coverage(trial, seed, report.with_suffix(""))
        by_properties(trial, seed)
        trial.tell()
        code = 0
    except BaseException:
        traceback.print_exc()
    finally:
        sys.stderr.flush()
        os._exit(code)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--inputs", type=int, default=12_000, help="in all, about")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", nargs="*", default=None, help="readers by name")
    parser.add_argument("--keep", type=Path, default=None, help="folder for failing inputs")
    options = parser.parse_args()
    sys.path[:0] = [str(HOSTILE), str(ROOT)]
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    ways = ["properties"]
    instrumented: contextlib.AbstractContextManager[object] = contextlib.nullcontext()
    if importlib.util.find_spec("atheris") is not None:
        import atheris

        ways.append("coverage")
        instrumented = atheris.instrument_imports(include=["markbench"])
    else:
        print("atheris is not installed: no coverage-guided inputs")
    with instrumented, contextlib.redirect_stderr(io.StringIO()):  # a line for every module
        from hostile_readers import READERS
    import hostile_strategies  # noqa: F401

    for name in options.only or READERS:
        READERS[name].seeds()  # made once, before the forks
    share = sum(1 / READERS[name].cost for name in options.only or READERS)
    failures, inputs = 0, 0
    print(f"{'reader':16} {'way':10} {'inputs':>7} {'slowest':>8} {'peak':>8}  distinct failures")
    with tempfile.TemporaryDirectory() as held:
        for name in options.only or READERS:
            runs = max(60, round(options.inputs / len(ways) / share / READERS[name].cost))
            for way in ways:
                found = run(way, name, runs, options.seed, Path(held))
                inputs += found["inputs"]
                failures += len(found["failures"])
                print(
                    f"{name:16} {way:10} {found['inputs']:7} {found['slowest_s']:6.2f} s "
                    f"{found['peak_mb']:5.0f} MB  {len(found['failures'])}",
                    flush=True,
                )
                for what, about in found["failures"].items():
                    print(f"    {what} ({about['bytes']} bytes)", flush=True)
                    if options.keep is not None:
                        _keep(options.keep, name, what, about)
    print(f"{inputs} inputs, {failures} distinct failures, seed {options.seed}")
    return 1 if failures else 0


def _keep(folder: Path, name: str, what: str, about: dict[str, Any]) -> None:
    place = folder / name
    place.mkdir(parents=True, exist_ok=True)
    data = bytes.fromhex(about["data"])
    stem = hashlib.sha256(data).hexdigest()[:10]
    (place / stem).write_bytes(data)
    (place / f"{stem}.txt").write_text(f"{what}\n{about['trace']}\n")


if __name__ == "__main__":
    sys.exit(main())
