"""What goes out: workbook, mark sheet, school-system csv, audit listing.

The workbook stands apart in :mod:`markbench.export.workbook`, printed sheets in
:mod:`markbench.export.feedback` and :mod:`markbench.export.record`: the libraries that write
xlsx and PDF take long to load, and nothing else should wait for them.
"""

from markbench.export.audit import write_audit
from markbench.export.changes import Change, Changes, changes_since, note_changes
from markbench.export.errors import ExportError
from markbench.export.json_file import write_json
from markbench.export.mark_sheet_csv import write_mark_sheet_csv
from markbench.export.oneroster import RosterIds, RosterWritten, write_oneroster
from markbench.export.report import ClassReport, LearnerReport

__all__ = [
    "Change",
    "Changes",
    "ClassReport",
    "ExportError",
    "LearnerReport",
    "RosterIds",
    "RosterWritten",
    "changes_since",
    "note_changes",
    "write_audit",
    "write_json",
    "write_mark_sheet_csv",
    "write_oneroster",
]
