"""What goes out: workbook, mark sheet, feedback sheets."""
