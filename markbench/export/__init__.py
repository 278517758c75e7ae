"""What goes out: workbook, mark sheet, feedback sheets."""

from markbench.export.errors import ExportError
from markbench.export.json_file import write_json
from markbench.export.mark_sheet_csv import write_mark_sheet_csv
from markbench.export.report import ClassReport, LearnerReport
from markbench.export.workbook import write_workbook

__all__ = [
    "ClassReport",
    "ExportError",
    "LearnerReport",
    "write_json",
    "write_mark_sheet_csv",
    "write_workbook",
]
