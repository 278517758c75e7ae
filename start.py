"""Start Markbench from a fresh copy: ``python3 start.py``.

Needs nothing but Python 3.11 or newer. Makes a private environment in ``.venv``, installs
the program into it, and opens the sample class. ``python3 start.py test`` installs what
the tests need and runs them all; ``python3 start.py bundle`` makes a copy of the program
that needs no Python. Any other arguments go to ``markbench``.
"""

from __future__ import annotations

import ctypes.util
import hashlib
import os
import shutil
import subprocess
import sys
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent
ENVIRONMENT = ROOT / ".venv"
SAMPLE = ROOT / "sample_class"
OLDEST_PYTHON = (3, 11)

# Shared libraries that Qt loads on Linux, and the Debian package that brings each.
QT_LIBRARIES = {
    "EGL": "libegl1",
    "GL": "libgl1",
    "fontconfig": "libfontconfig1",
    "xkbcommon": "libxkbcommon0",
    "dbus-1": "libdbus-1-3",
    "xkbcommon-x11": "libxkbcommon-x11-0",
    "xcb-cursor": "libxcb-cursor0",
    "xcb-icccm": "libxcb-icccm4",
    "xcb-image": "libxcb-image0",
    "xcb-keysyms": "libxcb-keysyms1",
    "xcb-render-util": "libxcb-render-util0",
    "xcb-shape": "libxcb-shape0",
}
FONT_PACKAGE = "fonts-dejavu-core"


def main(arguments: list[str]) -> int:
    """Prepare what is missing, then hand over."""
    if sys.version_info < OLDEST_PYTHON:
        print("Markbench needs Python 3.11 or newer; this is", sys.version.split()[0])
        return 1
    testing = arguments == ["test"]
    bundling = arguments[:1] == ["bundle"]
    ensure_system_libraries()
    ensure_environment("bundle" if bundling else "test" if testing else "")
    if bundling:
        return call(".ci/bundle.py", *arguments[1:])
    if testing:
        return run_tests()
    if arguments:
        return call("-m", "markbench", *arguments)
    if not has_screen():
        print("There is no screen here, so the sample class is drafted without a window.")
        return call("-m", "markbench", "export", str(SAMPLE))
    return call("-m", "markbench", "open", str(SAMPLE))


def python() -> Path:
    """The environment's interpreter."""
    folder, name = ("Scripts", "python.exe") if os.name == "nt" else ("bin", "python")
    return ENVIRONMENT / folder / name


def call(*arguments: str) -> int:
    """Run the environment's Python and return its exit code."""
    try:
        return subprocess.call([str(python()), *arguments], cwd=ROOT)
    except KeyboardInterrupt:
        return 130


def ensure_environment(extra: str) -> None:
    """Make ``.venv`` and install the program, unless nothing has changed since.

    ``extra`` names what is wanted beside it: ``test``, ``bundle`` or nothing.
    """
    # A moved or half-made environment is made afresh; pip then finds what it needs.
    if not python().exists():
        print("Making a private environment in .venv (once) …", flush=True)
        venv.create(ENVIRONMENT, with_pip=True, clear=ENVIRONMENT.exists())
    stamp = ENVIRONMENT / (f"installed-for-{extra}" if extra else "installed")
    wanted = hashlib.sha256((ROOT / "pyproject.toml").read_bytes() + str(ROOT).encode()).hexdigest()
    if stamp.exists() and stamp.read_text() == wanted:
        return
    what = f".[{extra}]" if extra else "."
    print("Installing Markbench and what it needs (once, a minute or two) …", flush=True)
    install = [str(python()), "-m", "pip", "install", "--quiet", "--disable-pip-version-check"]
    failed = subprocess.call([*install, "--editable", what], cwd=ROOT)
    if failed:
        raise SystemExit(
            "The installation did not finish. Is this machine online? "
            "Run the same command again to go on where it stopped."
        )
    stamp.write_text(wanted)


def ensure_system_libraries() -> None:
    """On Debian-like Linux, install the libraries Qt needs, or print the line that does."""
    if not sys.platform.startswith("linux"):
        return
    missing = [
        package
        for library, package in QT_LIBRARIES.items()
        if not ctypes.util.find_library(library)
    ]
    if not any(Path("/usr/share/fonts").rglob("*.[to]tf")):
        missing.append(FONT_PACKAGE)
    if not missing:
        return
    if shutil.which("apt-get") is None:
        print("Qt may need libraries of the system that were not found:", " ".join(missing))
        return
    prefix = sudo()
    if prefix is None:
        print("Qt needs some libraries of the system. Please run this once:")
        print(f"    sudo apt-get install -y {' '.join(missing)}")
        return
    print("Installing libraries of the system that Qt needs:", " ".join(missing), flush=True)
    quiet = {
        "stdout": subprocess.DEVNULL,
        "env": {**os.environ, "DEBIAN_FRONTEND": "noninteractive"},
    }
    subprocess.call([*prefix, "apt-get", "update", "-q"], **quiet)
    if subprocess.call([*prefix, "apt-get", "install", "-y", "-q", *missing], **quiet):
        print("That did not work. Please run this once:")
        print(f"    sudo apt-get install -y {' '.join(missing)}")


def sudo() -> list[str] | None:
    """How to become root without asking anything; ``None`` if that is not possible."""
    if os.geteuid() == 0:
        return []
    if shutil.which("sudo") and not subprocess.call(
        ["sudo", "-n", "true"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    ):
        return ["sudo", "-n"]
    return None


def has_screen() -> bool:
    """Whether a window can be shown."""
    if not sys.platform.startswith("linux"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def run_tests() -> int:
    """Format, lint, types, import contract and tests; all run, the first failure is returned."""
    workers = str(min(os.cpu_count() or 1, 4))
    steps = (
        # Without a cache: how imports are ordered hangs on which other files exist, and a
        # remembered verdict on an unchanged file would pass here and fail on a clean copy.
        ("Format", ["-m", "ruff", "format", "--check", "--no-cache", "."]),
        ("Lint", ["-m", "ruff", "check", "--no-cache", "."]),
        ("Types", ["-m", "mypy"]),
        (
            "Import contract",
            ["-c", "from importlinter.cli import lint_imports_command as c; c()"],
        ),
        ("Tests", ["-m", "pytest", "-n", workers]),
    )
    failed = 0
    for name, command in steps:
        print(f"--- {name}", flush=True)
        failed = call(*command) or failed
    return failed


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
