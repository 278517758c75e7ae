"""A learner's sheet as PDF."""

from __future__ import annotations

from markbench.export.feedback.content import CriterionLine, FeedbackSheet
from markbench.export.feedback.graph import Dot, Graph, Stroke, Words
from markbench.export.paper import BOX, QUIET, Paper

_MM_PER_PT = 25.4 / 72
_TEXT, _LINE_MM = 10.0, 5.0
_COLUMNS_MM = (18, 22, 46, 22, 21, 22, 23)


def pdf(sheet: FeedbackSheet) -> tuple[bytes, frozenset[str]]:
    """The document, and the letters of it that it could not show."""
    name = sheet.name or sheet.learner_id
    paper = Paper(
        f"{sheet.title}: {name}",
        f"{name} · {sheet.learner_id}",
        sheet.date,
        sheet.words.language,
        sheet.words.page,
    )
    _head(paper, sheet)
    paper.heading(sheet.words.marks)
    for criterion in sheet.criteria:
        _criterion(paper, criterion)
    for step in sheet.steps:
        paper.pen(_TEXT)
        paper.say(step, _LINE_MM)
    _what_next(paper, sheet)
    _numbers(paper, sheet)
    _cautions(paper, sheet)
    if paper.missing:
        paper.ln(3)
        paper.pen(8.5, grey=QUIET)
        paper.say(sheet.words.boxes.format(box=BOX), 4.2)
    return paper.bytes(), frozenset(paper.missing)


def _head(paper: Paper, sheet: FeedbackSheet) -> None:
    paper.pen(9, grey=QUIET)
    paper.say(sheet.words.kind, 5)
    paper.pen(17, bold=True)
    paper.say(sheet.title, 7.5)
    paper.ln(2.5)
    top = paper.get_y()
    rows = [(sheet.words.name, sheet.name), (sheet.words.number, sheet.learner_id)]
    rows += [(sheet.words.group, sheet.group)] if sheet.group else []
    rows += [(sheet.words.date, f"{sheet.date:%Y-%m-%d}")]
    for name, value in rows:
        paper.pen(_TEXT, grey=QUIET)
        paper.cell(20, 5.4, name)
        paper.pen(_TEXT, bold=True)
        paper.say(value, 5.4, width=paper.epw * 0.55)
    foot = paper.get_y()
    _total(paper, sheet, top)
    paper.set_y(max(foot, paper.get_y()))


def _total(paper: Paper, sheet: FeedbackSheet, top: float) -> None:
    """Total and grade at the right of the head, where they are found at once."""
    total = sheet.total
    width = paper.epw * 0.3
    left = paper.w - paper.r_margin - width
    paper.set_xy(left, top)
    paper.pen(_TEXT, grey=QUIET)
    paper.say(sheet.words.total, 5.4, width=width, align="R")
    paper.set_x(left)
    paper.pen(17 if len(total) < 14 else _TEXT, bold=True)
    paper.say(total, 7.5, width=width, align="R")
    if sheet.grade:
        paper.set_x(left)
        paper.pen(_TEXT, bold=True)
        paper.say(f"{sheet.words.grade} {sheet.grade}", 5.4, width=width, align="R")


def _criterion(paper: Paper, criterion: CriterionLine) -> None:
    if paper.will_page_break(18):
        paper.add_page()
    top = paper.get_y()
    given = f"{criterion.level}: {criterion.marks}" if criterion.level else criterion.marks
    width = paper.epw / 2
    paper.pen(_TEXT, bold=True)
    paper.say(criterion.title, _LINE_MM + 0.5, width=width)
    left_end = paper.get_y()
    paper.set_xy(paper.l_margin + width, top)
    paper.say(given, _LINE_MM + 0.5, width=width, align="R")
    paper.set_y(max(left_end, paper.get_y()))
    if criterion.feedback:
        paper.pen(_TEXT)
        paper.say(criterion.feedback, _LINE_MM)
    paper.ln(2.5)


def _numbers(paper: Paper, sheet: FeedbackSheet) -> None:
    room = (sheet.graph.height * _MM_PER_PT + 24) if sheet.graph is not None else 40
    paper.heading(sheet.words.numbers, keep_mm=room)
    if sheet.graph is None and not sheet.table:
        paper.pen(_TEXT)
        paper.say(sheet.words.no_numbers, _LINE_MM)
        return
    if sheet.graph is not None:
        _draw(paper, sheet.graph)
        paper.pen(8.5, grey=QUIET)
        paper.say(sheet.caption, 4.2)
        paper.ln(3)
    if sheet.table:
        _table(paper, sheet)
    if sheet.results:
        _results(paper, sheet)


def _draw(paper: Paper, drawn: Graph) -> None:
    left = paper.l_margin + (paper.epw - drawn.width * _MM_PER_PT) / 2
    top = paper.get_y()

    def place(x: float, y: float) -> tuple[float, float]:
        return left + x * _MM_PER_PT, top + y * _MM_PER_PT

    for shape in drawn.shapes:
        match shape:
            case Stroke():
                paper.set_draw_color(round(255 * shape.grey))
                paper.set_line_width(shape.width * _MM_PER_PT)
                dash = shape.dash * _MM_PER_PT
                paper.set_dash_pattern(dash, dash)
                paper.line(*place(shape.x1, shape.y1), *place(shape.x2, shape.y2))
            case Dot(x, y, radius):
                paper.set_fill_color(0)
                centre = place(x, y)
                paper.circle(*centre, radius * _MM_PER_PT, style="F")
            case Words():
                _write(paper, shape, *place(shape.x, shape.y))
    paper.set_dash_pattern()
    paper.set_xy(paper.l_margin, top + drawn.height * _MM_PER_PT + 1)


def _write(paper: Paper, words: Words, x: float, y: float) -> None:
    paper.pen(words.size)
    text = paper.shown(words.text)
    back = paper.get_string_width(text) * {"start": 0.0, "middle": 0.5, "end": 1.0}[words.anchor]
    if words.turned:
        with paper.rotation(90, x, y):
            paper.text(x - back, y, text)
    else:
        paper.text(x - back, y, text)


def _table(paper: Paper, sheet: FeedbackSheet) -> None:
    rows = sheet.table
    if paper.will_page_break(6 * min(len(rows), 6) + 6):
        paper.add_page()
    paper.pen(8.5, grey=QUIET)
    paper.say(sheet.words.table_caption, 5)
    paper.rows(rows, _COLUMNS_MM, "R" * len(_COLUMNS_MM))
    paper.ln(2)


def _results(paper: Paper, sheet: FeedbackSheet) -> None:
    results = sheet.results
    note_lines = 1 + len(sheet.results_note) // 110
    if paper.will_page_break(6 * (len(results) + note_lines)):
        paper.add_page()
    for name, value in results:
        paper.pen(_TEXT)
        paper.cell(paper.epw * 0.6, 5.6, paper.shown(name))
        paper.pen(_TEXT, bold=True)
        paper.say(value, 5.6, align="R")
    paper.pen(8.5, grey=QUIET)
    paper.say(sheet.results_note, 5)


def _what_next(paper: Paper, sheet: FeedbackSheet) -> None:
    if not sheet.next_steps:
        return
    paper.heading(sheet.words.next, keep_mm=26)
    for step in sheet.next_steps:
        if paper.will_page_break(12):
            paper.add_page()
        if step.title:
            paper.pen(_TEXT, bold=True)
            paper.say(step.title, _LINE_MM)
        paper.pen(_TEXT)
        paper.say(step.text, _LINE_MM)
        paper.ln(1.5)


def _cautions(paper: Paper, sheet: FeedbackSheet) -> None:
    paper.heading(sheet.words.cautions_title, keep_mm=40)
    for caution in sheet.words.cautions:
        paper.pen(_TEXT)
        paper.cell(5, _LINE_MM, "•")
        paper.say(caution, _LINE_MM, width=paper.epw - 5)
        paper.ln(1)
