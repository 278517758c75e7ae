"""The fixed words of a sheet, shared by PDF and web page so that both say the same."""

from markbench.export.feedback.graph import Graph

KIND = "Feedback on your practical"
NAME, ID, GROUP, DATE, TOTAL = "Name", "Number", "Group", "Date", "Mark"
GRADE = "Grade"
MARKS = "Your marks"
NUMBERS = "Your graph and your numbers"
NO_NUMBERS = "No readings could be recomputed, so there is no graph."
_CAPTION = (
    "T² against length, from your readings. Whole line: the straight line that fits your "
    "points best; dashed: the same line carried back to L = 0, where nothing was timed."
)
_CAPTION_NO_LINE = "T² against length, from your readings. A line needs two lengths."
TABLE_CAPTION = "Recomputed from your raw times: T = t/N, g = 4π²L/T² from each length alone."
RESULTS_NOTE = "The number after ± is the standard uncertainty."
NEXT = "What to do next"
BOXES = "{box} stands for a letter this print has no type for; the web page of this sheet shows it."
CAUTIONS = "If you repeat it at home"


def graph_caption(drawn: Graph) -> str:
    """What the graph shows."""
    return _CAPTION if drawn.has_line else _CAPTION_NO_LINE
