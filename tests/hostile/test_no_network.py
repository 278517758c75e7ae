"""Nothing is sent and nothing fetched: the main job is done where there is no network at all."""

from __future__ import annotations

import ast
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
CLIENTS = {
    "socket", "ssl", "http", "urllib", "ftplib", "smtplib", "poplib", "imaplib", "telnetlib",
    "xmlrpc", "socketserver", "webbrowser", "asyncio", "requests", "urllib3", "httpx", "aiohttp",
    "websockets", "paramiko", "PySide6.QtNetwork", "PySide6.QtWebSockets",
    "PySide6.QtWebEngineCore",
}  # fmt: skip
# Opens the class, writes everything out, opens the window; refuses and lists any socket but
# those between processes of this machine.
JOB = """
import os, shutil, socket, sys
from pathlib import Path

asked = []
def hook(event, arguments):
    if event in ("socket.connect", "socket.bind", "socket.getaddrinfo", "socket.gethostbyname",
                 "socket.sendto", "urllib.Request"):
        if not (event == "socket.connect" and arguments[0].family == socket.AF_UNIX):
            asked.append(f"{event} {arguments!r}")
            raise OSError("the network is denied")
sys.addaudithook(hook)

from markbench.cli import main
folder = Path(sys.argv[1])
assert main(["check", str(folder), "--evidence"], lambda _: 1) == 0
from markbench.session import Session
session = Session.open(folder, "T. Teacher")
session.accept("24106")
session.close()
assert main(["export", str(folder), "--feedback", "--audit", "--record",
             "--oneroster", "SCH1", "2026T1"], lambda _: 1) == 0

from PySide6.QtCore import QSettings
from markbench.ui.app import application
from markbench.ui.look import Theme
from markbench.ui.window import Window
app = application()
settings = QSettings(str(folder.parent / "settings.ini"), QSettings.Format.IniFormat)
window = Window(Theme(app, settings), settings, "T. Teacher")
window.show()
window.open_folder(folder)
while window.sheet is None or window.bench is None:
    app.processEvents()
window.open_learner("24106")
for _ in range(50):
    app.processEvents()
window.close()
assert not asked, asked
print("QtNetwork" if any("QtNetwork" in name for name in sys.modules) else "no QtNetwork")
print("done")
"""


def no_network() -> list[str]:
    """What takes the network away from a process, where the system has it."""
    if sys.platform != "linux" or shutil.which("unshare") is None:
        return []
    alone = ["unshare", "--user", "--map-root-user", "--net"]
    tried = subprocess.run([*alone, "true"], capture_output=True, check=False)
    return alone if tried.returncode == 0 else []


@pytest.fixture
def class_folder(tmp_path: Path) -> Path:
    """The sample class without most of its learners: one section, one late hand-in."""
    folder = tmp_path / "class"
    folder.mkdir()
    for name in ("10A.zip", "brief.toml", "class_list.csv"):
        shutil.copy(ROOT / "sample_class" / name, folder / name)
    return folder


def test_the_main_job_is_done_without_a_network(class_folder: Path):
    done = subprocess.run(
        [*no_network(), sys.executable, "-c", JOB, str(class_folder)],
        capture_output=True,
        text=True,
        timeout=400,
        check=False,
    )
    assert done.returncode == 0, done.stderr[-3000:]
    assert done.stdout.splitlines()[-2:] == ["no QtNetwork", "done"]
    assert (class_folder / "markbench-out" / "marks.xlsx").exists()


def test_the_denial_is_one(tmp_path: Path):
    """A connection tried in the same way is refused, or the test above shows nothing."""
    start = JOB[: JOB.index("from markbench.cli")]
    code = start + "socket.create_connection(('127.0.0.1', 9), timeout=1)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert "the network is denied" in done.stderr


def test_nothing_in_the_program_imports_a_network_client():
    found = [
        f"{path.relative_to(ROOT)}:{node.lineno} {name}"
        for path in sorted((ROOT / "markbench").rglob("*.py"))
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        for name in imported(node)
        if any(name == client or name.startswith(client + ".") for client in CLIENTS)
    ]
    assert found == []


def imported(node: ast.AST) -> list[str]:
    """Full names of what a statement imports, ``from PySide6 import QtNetwork`` included."""
    if isinstance(node, ast.Import):
        return [alias.name for alias in node.names]
    if isinstance(node, ast.ImportFrom) and node.module:
        return [node.module, *(f"{node.module}.{alias.name}" for alias in node.names)]
    return []


@pytest.mark.parametrize(
    "line", ["import socket", "from urllib import request", "from PySide6 import QtNetwork"]
)
def test_an_import_of_one_would_be_seen(line: str):
    (node,) = ast.parse(line).body
    assert any(name.startswith(tuple(CLIENTS)) for name in imported(node))
