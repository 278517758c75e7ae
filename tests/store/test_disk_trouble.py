"""A disk that is really full, really read-only or really gone under an open journal.

Each case runs in a process with mounts of its own (``unshare``), where the system allows
that; elsewhere it is skipped, and a limit on the size of files stands in for the full disk.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ALONE = ["unshare", "--user", "--map-root-user", "--mount"]
BEGIN = """
import json, resource, signal, subprocess, sys
from pathlib import Path
from markbench.model import Decision
from markbench.store import Journal, StoreAwayError, StoreError, backups_of, salvage
disk, path = Path({disk!r}), Path({disk!r}) / "class.markbench"

def note(text):
    return Decision("note", "L01", "", text, who="A. Teacher")

def mount(*options):
    subprocess.run(["mount", *options], check=True)

def say(**told):
    print(json.dumps(told))

def until_refused(journal, most=3000):
    said = []
    for number in range(most):
        text = f"{{number}} " + "x" * 5000
        try:
            journal.append([note(text)])
        except StoreError as error:
            return said, type(error).__name__, str(error)
        said.append(text)
    return said, "", ""
"""


def can_mount() -> bool:
    if sys.platform != "linux" or shutil.which("unshare") is None:
        return False
    tried = [*ALONE, "mount", "-t", "tmpfs", "none", "/mnt"]
    return subprocess.run(tried, capture_output=True, check=False).returncode == 0


needs_mounts = pytest.mark.skipif(not can_mount(), reason="no mounts of one's own here")


def run(disk: Path, code: str, *, mounts: bool) -> list[dict[str, object]]:
    disk.mkdir()
    done = subprocess.run(
        [*(ALONE if mounts else []), sys.executable, "-c", BEGIN.format(disk=str(disk)) + code],
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return [json.loads(line) for line in done.stdout.splitlines()]


@needs_mounts
def test_a_full_disk_loses_nothing_acknowledged_and_goes_on_once_there_is_room(tmp_path):
    full, after, copy = run(
        tmp_path / "disk",
        """
mount("-t", "tmpfs", "-o", "size=600k", "none", str(disk))
with Journal.open(path) as journal:
    said, kind, words = until_refused(journal)
    say(said=len(said), kind=kind, words=words,
        kept=[d.value for d in journal.all()] == said, sound=journal.verify() is None)
    mount("-o", "remount,size=4m", str(disk))
    journal.append([note("room again")])
    say(last=journal.all()[-1].value, sound=journal.verify() is None)
# On opening an hourly copy is made; where it does not fit, that is said and nothing broken.
mount("-o", f"remount,size={(path.stat().st_size + 60_000) // 1024}k", str(disk))
try:
    Journal.open(path).close()
    words = ""
except StoreError as error:
    words = str(error)
with Journal.open(path, read_only=True) as journal:
    say(words=words, count=len(journal.all()), sound=journal.verify() is None)
""",
        mounts=True,
    )
    assert full["said"] > 10
    assert full["kind"] == "StoreAwayError"
    assert "full" in str(full["words"])
    assert (full["kept"], full["sound"]) == (True, True)
    assert after == {"last": "room again", "sound": True}
    assert copy["count"] == full["said"] + 1
    assert copy["sound"] is True
    assert not copy["words"] or "full" in str(copy["words"])


@pytest.mark.skipif(os.name == "nt", reason="there is no such limit on Windows")
def test_a_file_that_may_not_grow_is_told_and_stays_whole(tmp_path):
    (told,) = run(
        tmp_path / "disk",
        """
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (400_000, 400_000))
with Journal.open(path) as journal:
    said, kind, words = until_refused(journal)
    say(said=len(said), kind=kind, words=words,
        kept=[d.value for d in journal.all()] == said, sound=journal.verify() is None)
""",
        mounts=False,
    )
    assert told["said"] > 10
    assert told["kind"] == "StoreAwayError"
    assert "nothing was saved" in str(told["words"])
    assert (told["kept"], told["sound"]) == (True, True)


@needs_mounts
def test_a_read_only_disk_is_told_opens_for_reading_and_keeps_an_open_session_whole(tmp_path):
    under, anew, read = run(
        tmp_path / "disk",
        """
mount("-t", "tmpfs", "-o", "size=4m", "none", str(disk))
with Journal.open(path) as journal:
    journal.append([note("one")])
# An open file for writing would hold the change to read-only up, as on any system.
mount("-o", "remount,ro", str(disk))
with Journal.open(path, read_only=True) as journal:
    say(read=[d.value for d in journal.all()])
try:
    Journal.open(path)
    say(words="")
except StoreError as error:
    say(words=str(error))
mount("-o", "remount,rw", str(disk))
with Journal.open(path) as journal:
    journal.append([note("two")])
    say(read=[d.value for d in journal.all()])
""",
        mounts=True,
    )
    assert under == {"read": ["one"]}
    assert "read-only" in str(anew["words"])
    assert read == {"read": ["one", "two"]}


@needs_mounts
def test_a_share_that_vanishes_is_told_and_taken_up_again_when_it_is_back(tmp_path):
    gone, empty, back = run(
        tmp_path / "disk",
        """
held = disk.parent / "held"
held.mkdir()
mount("-t", "tmpfs", "-o", "size=4m", "none", str(held))
mount("--bind", str(held), str(disk))
with Journal.open(path) as journal:
    journal.append([note("one")])
    subprocess.run(["umount", "-l", str(disk)], check=True)
    try:
        journal.append([note("two")])
        say(kind="", words="")
    except StoreError as error:
        say(kind=type(error).__name__, words=str(error))
    try:
        journal.append([note("two")])
    except StoreError:
        pass
    # The bare folder under the share must not get a journal of its own.
    say(left=sorted(p.name for p in disk.iterdir()))
    mount("--bind", str(held), str(disk))
    journal.append([note("two")])
    say(read=[d.value for d in journal.all()], sound=journal.verify() is None)
""",
        mounts=True,
    )
    assert gone["kind"] == "StoreAwayError"
    assert "nothing was saved" in str(gone["words"]) or "out of reach" in str(gone["words"])
    assert empty == {"left": []}
    assert back == {"read": ["one", "two"], "sound": True}
