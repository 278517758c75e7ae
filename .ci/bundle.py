"""Make a self-contained Markbench that needs no Python: ``python3 start.py bundle``.

The same script works on Linux, Windows and macOS; a bundle runs on the kind of system it
was made on, no older than the one it was made on. It is a folder, not one file: a single
file would unpack itself at every start and be looked at askance by virus scanners.

What is written: ``build/bundle/Markbench/`` and beside it a zip of the same. Then the
bundle is started from another folder, without any Python on its path, to check and export
the sample class and to open its window and close it again; a bundle that cannot do this is
no bundle, and the script fails.
"""

from __future__ import annotations

import argparse
import os
import shutil
import subprocess
import sys
import tempfile
import zipfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
OUT = ROOT / "build" / "bundle"
NAME = "Markbench"

# Parts of Python packages that nothing here uses, though something imports them when it can.
NOT_WANTED = (
    "tkinter", "IPython", "matplotlib", "pytest", "_pytest", "hypothesis", "pandas", "cupy",
    "numba", "h5py", "psycopg", "psycopg2", "setuptools", "pip", "pygments",
    "PySide6.QtQml", "PySide6.QtQuick", "PySide6.QtQuickWidgets", "PySide6.QtNetwork",
    "PySide6.QtSql", "PySide6.QtTest", "PySide6.QtXml", "PySide6.QtDesigner", "PySide6.QtHelp",
    "PySide6.QtUiTools", "PySide6.QtConcurrent", "PySide6.QtDBus", "PySide6.QtPrintSupport",
    "PIL.AvifImagePlugin", "PIL._avif", "PIL.ImageTk", "PIL._imagingtk",
)  # fmt: skip
# Files that the bundling tool takes along with Qt, and no page of the window needs.
PRUNED = (
    "**/PySide6/**/*Qt6Qml*", "**/PySide6/**/*Qt6Quick*", "**/PySide6/**/*Qt6Pdf*",
    "**/PySide6/**/*Qt6VirtualKeyboard*", "**/PySide6/**/plugins/tls",
    "**/PySide6/**/plugins/platformthemes/*gtk*", "**/*libpango*", "**/*libcairo*",
    "**/*libatk*", "**/*libgdk*", "**/*libgtk*", "**/*libQt6EglFS*", "**/*libpixman*",
    "**/PySide6/**/plugins/networkinformation", "**/PySide6/**/plugins/sqldrivers",
    "**/PySide6/**/plugins/platforminputcontexts/*virtualkeyboard*",
    "**/PySide6/**/plugins/imageformats/*pdf*",
    "**/PySide6/**/plugins/egldeviceintegrations", "**/PySide6/**/plugins/platforms/*vnc*",
    "**/PySide6/**/plugins/platforms/*eglfs*", "**/PySide6/**/plugins/platforms/*vkkhr*",
    "**/PySide6/**/plugins/platforms/*linuxfb*", "**/PySide6/**/plugins/generic",
)  # fmt: skip


def main(arguments: list[str]) -> int:
    """Build, prune, prove, pack."""
    parser = argparse.ArgumentParser(prog="start.py bundle", description=__doc__.splitlines()[0])
    parser.add_argument("--no-zip", action="store_true", help="leave the zip file out")
    parsed = parser.parse_args(arguments)
    build()
    made = OUT / NAME
    shutil.copytree(ROOT / "sample_class", made / "sample_class", ignore=ours)
    for name in ("README.md", "LICENSE"):
        shutil.copy2(ROOT / name, made / name)
    before = size_of(made)
    prune(made)
    after = size_of(made)
    print(f"Size: {after / 1e6:.0f} MB ({(before - after) / 1e6:.0f} MB pruned)", flush=True)
    prove(made)
    if not parsed.no_zip:
        packed = pack(made)
        print(f"Written: {packed} ({packed.stat().st_size / 1e6:.0f} MB)")
    return 0


def build() -> None:
    """Run the bundling tool; its own work goes to ``build/`` too."""
    join = os.pathsep
    command = [
        sys.executable, "-m", "PyInstaller", "--noconfirm", "--clean", "--log-level", "WARN",
        "--onedir", "--name", NAME, "--distpath", str(OUT), "--workpath", str(ROOT / "build/work"),
        "--specpath", str(ROOT / "build"), "--paths", str(ROOT),
        "--collect-data", "markbench", "--collect-submodules", "markbench",
        "--add-data", f"{ROOT / 'rubrics'}{join}rubrics",
        # For the list of licences in the window's About.
        "--recursive-copy-metadata", "markbench",
    ]  # fmt: skip
    for module in NOT_WANTED:
        command += ["--exclude-module", module]
    shutil.rmtree(OUT / NAME, ignore_errors=True)
    subprocess.run([*command, str(ROOT / "markbench" / "__main__.py")], check=True, cwd=ROOT)


def ours(_folder: str, names: list[str]) -> set[str]:
    """What the program itself may have written beside the sample class."""
    return {name for name in names if name.startswith(("class.markbench", "markbench-out"))}


def prune(made: Path) -> None:
    """Take away what nothing here loads."""
    for pattern in PRUNED:
        for path in sorted(made.glob(pattern)):
            if path.is_dir() and not path.is_symlink():
                shutil.rmtree(path)
            else:
                path.unlink(missing_ok=True)
    # Of Qt's own translations, those of the languages the window speaks.
    spoken = {path.stem.rpartition("_")[2] for path in made.rglob("markbench_*.qm")}
    for path in made.glob("**/PySide6/**/translations/*.qm"):
        if not path.stem.startswith("qtbase_") or path.stem.rpartition("_")[2] not in spoken:
            path.unlink()


def size_of(folder: Path) -> int:
    """Bytes of all files below a folder."""
    return sum(p.stat().st_size for p in folder.rglob("*") if p.is_file() and not p.is_symlink())


def prove(made: Path) -> None:
    """Start the bundle where there is no Python and no source, and let it do its work."""
    program = made / (f"{NAME}.exe" if os.name == "nt" else NAME)
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / "10 A"
        shutil.copytree(made / "sample_class", folder)
        few = one_learner(made / "sample_class", Path(place) / "few")
        seen = Path(place) / "seen.json"
        keep = ("SYSTEMROOT", "TEMP", "TMP", "LANG", "LC_ALL")
        clean = {key: os.environ[key] for key in keep if key in os.environ}
        clean |= {"PATH": "", "HOME": place, "USERPROFILE": place, "QT_QPA_PLATFORM": "offscreen"}
        clean |= {"XDG_CACHE_HOME": place, "LOCALAPPDATA": place, "APPDATA": place, "USER": "t"}
        for arguments in (
            ["--version"],
            ["check", str(folder)],
            # Photos and a film, each looked at in a process of its own.
            ["check", str(few), "--evidence", "--json", str(seen)],
            ["export", str(folder), "--feedback", "--partly"],
            ["open", str(folder), "--close-when-open"],
        ):
            print(f"{NAME} {arguments[0]} …", end=" ", flush=True)
            ran = subprocess.run(
                [str(program), *arguments],
                cwd=place, env=clean, capture_output=True, text=True, timeout=900,
                encoding="utf-8", errors="replace",
            )  # fmt: skip
            print("done" if ran.returncode == 0 else f"failed ({ran.returncode})", flush=True)
            if ran.returncode:
                raise SystemExit(ran.stdout[-4000:] + ran.stderr[-4000:])
        if "_unreadable" in seen.read_text("utf-8"):
            raise SystemExit("The bundle could not look at a photo or a film.")
        for name in ("marks.xlsx", "mark_sheet.csv"):
            if not (folder / "markbench-out" / name).is_file():
                raise SystemExit(f"The bundle wrote no {name}.")


def one_learner(sample: Path, few: Path) -> Path:
    """A class of one learner of the sample who handed in a film."""
    few.mkdir()
    with zipfile.ZipFile(sample / "10A.zip") as archive:
        names = archive.namelist()
        film = next(name for name in names if name.endswith(".mp4"))
        for name in names:
            if name.startswith(film.partition("/")[0] + "/") and not name.endswith("/"):
                archive.extract(name, few)
    return few


def pack(made: Path) -> Path:
    """One zip to hand on, with the permission to run kept."""
    packed = OUT / f"{NAME}-{sys.platform}.zip"
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        for path in sorted(made.rglob("*")):
            if path.is_file():
                archive.write(path, path.relative_to(OUT))
    return packed


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
