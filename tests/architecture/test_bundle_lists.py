"""What a bundle leaves out is nothing that the program loads.

The bundle itself takes minutes to make and proves itself (.ci/bundle.py); this test keeps its
list of left-out modules honest with every run.
"""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
TRY = """
import importlib.util, sys
spec = importlib.util.spec_from_file_location("bundle", sys.argv[1])
bundle = importlib.util.module_from_spec(spec)
spec.loader.exec_module(bundle)

class LeftOut:
    def find_spec(self, name, path=None, target=None):
        if any(name == one or name.startswith(one + ".") for one in bundle.NOT_WANTED):
            raise ModuleNotFoundError(f"left out: {name}", name=name)

sys.meta_path.insert(0, LeftOut())
from markbench.ui.opening import load_pages
load_pages()
import markbench.cli.caring, markbench.cli.commands, markbench.cli.moderating
import markbench.evidence.worker, markbench.export.feedback, markbench.export.record
import markbench.export.workbook, markbench.session.newclass, markbench.session.packing
import markbench.ui.care.about_page, markbench.ui.moderation.pack_sheet, markbench.ui.rubrics.page
print("all there")
"""


def test_nothing_that_is_loaded_is_left_out():
    ran = subprocess.run(
        [sys.executable, "-c", TRY, str(ROOT / ".ci" / "bundle.py")],
        capture_output=True, text=True, cwd=ROOT, check=False,
    )  # fmt: skip
    assert ran.returncode == 0, ran.stderr
    assert "all there" in ran.stdout
