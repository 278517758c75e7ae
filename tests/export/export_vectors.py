"""Text that a spreadsheet might run.

OWASP ASVS 5.0, 1.2.10, CWE-1236, and OWASP's page on CSV injection (carriage return, line
feed, full-width forms); the leading space is from the same page's attack list.
"""

FORMULAS = [
    "=1+1",
    "+1",
    "-1",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    "\n=1",
    "\x00=1",
    "＝1",
    "＋1",
    "－1",
    "＠SUM(A1)",
    " =1",
    '=HYPERLINK("x","y")',
    "=cmd|' /C calc'!A0",
]
