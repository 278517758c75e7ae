"""The reader of messy tables: spreadsheets and text files as learners make them."""

from markbench.intake.tables.class_sheet import read_class_sheet
from markbench.intake.tables.grid import Cell, Grid, column_letters, column_number
from markbench.intake.tables.outcome import ClassRow, ColumnHints, TableOutcome
from markbench.intake.tables.reader import read_grids, read_readings
from markbench.intake.tables.workbooks import UnreadableError

__all__ = [
    "Cell",
    "ClassRow",
    "ColumnHints",
    "Grid",
    "TableOutcome",
    "UnreadableError",
    "column_letters",
    "column_number",
    "read_class_sheet",
    "read_grids",
    "read_readings",
]
