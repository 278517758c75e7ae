"""A learner's sheet as one self-contained web page.

The page is built as a tree of elements and written out by the standard library, so that
text is escaped by the writer and cannot be forgotten (rejected: templates, where it can).
It runs no script and, by its own policy, fetches nothing.
"""

from __future__ import annotations

from xml.etree.ElementTree import Element, SubElement, tostring

from markbench.export.feedback.content import FeedbackSheet
from markbench.export.feedback.graph import Dot, Graph, Stroke, Words

_POLICY = "default-src 'none'; style-src 'unsafe-inline'"

# Dark on white: #1a1a1a has 17.4 : 1 and #4d4d4d 8.5 : 1 on white (WCAG 2.2 asks for 4.5).
_STYLE = """
:root { color-scheme: light; }
body { margin: 0; background: #ffffff; color: #1a1a1a;
  font: 1rem/1.5 system-ui, "Segoe UI", "Noto Sans", "DejaVu Sans", sans-serif; }
main { max-width: 46rem; margin: 0 auto; padding: 2rem 1.25rem 3rem; }
h1 { font-size: 1.6rem; line-height: 1.25; margin: 0; }
h2 { font-size: 1.15rem; margin: 2rem 0 .5rem; padding-bottom: .2rem;
  border-bottom: 2px solid #1a1a1a; }
h3 { font-size: 1rem; margin: 0; }
p { margin: .25rem 0; }
.kind, figcaption, caption, .note { color: #4d4d4d; font-size: .9rem; }
.who { display: flex; flex-wrap: wrap; gap: .5rem 2rem; margin: 1rem 0 0; }
dt { color: #4d4d4d; font-size: .85rem; }
dd { margin: 0; font-weight: 600; }
.criterion { margin: 1rem 0; break-inside: avoid; }
.given { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 1rem; }
.marks { font-weight: 600; white-space: nowrap; }
.feedback { white-space: pre-line; overflow-wrap: anywhere; }
figure { margin: 1rem 0; break-inside: avoid; }
svg { width: 100%; height: auto; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
caption { text-align: left; padding-bottom: .3rem; }
th, td { text-align: right; padding: .2rem .5rem; border-bottom: 1px solid #8c8c8c; }
th { border-bottom: 1px solid #1a1a1a; }
.results { margin: 1rem 0 .25rem; }
.results div { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 1rem;
  padding: .2rem .5rem; border-bottom: 1px solid #8c8c8c; }
.results dt { color: inherit; font-size: 1rem; }
li { margin: .35rem 0; }
@page { size: A4; margin: 16mm 18mm; }
@media print { body { font-size: 10.5pt; } main { max-width: none; padding: 0; }
  h2 { break-after: avoid; } ul, li { break-inside: avoid; } }
"""


def page(sheet: FeedbackSheet) -> str:
    """The whole page as text."""
    root = Element("html", lang=sheet.words.language)
    head = SubElement(root, "head")
    SubElement(head, "meta", charset="utf-8")
    SubElement(head, "meta", {"http-equiv": "Content-Security-Policy", "content": _POLICY})
    SubElement(head, "meta", name="viewport", content="width=device-width, initial-scale=1")
    _text(head, "title", f"{sheet.title}: {sheet.name}")
    _text(head, "style", _STYLE)
    main = SubElement(SubElement(root, "body"), "main")
    _head(main, sheet)
    _marks(main, sheet)
    _what_next(main, sheet)
    _numbers(main, sheet)
    _cautions(main, sheet)
    return "<!DOCTYPE html>\n" + tostring(root, "unicode", "html") + "\n"


def svg(drawn: Graph) -> Element:
    """The graph as an element that stands in the page; its description is read aloud."""
    root = Element(
        "svg",
        {
            "viewBox": f"0 0 {drawn.width:g} {drawn.height:g}",
            "role": "img",
            "aria-label": drawn.description,
            "font-family": "inherit",
        },
    )
    for shape in drawn.shapes:
        match shape:
            case Stroke():
                _stroke(root, shape)
            case Dot(x, y, radius):
                SubElement(root, "circle", cx=f"{x:.2f}", cy=f"{y:.2f}", r=f"{radius:g}")
            case Words(x, y, text, size, anchor, turned):
                where = {"x": f"{x:.2f}", "y": f"{y:.2f}", "font-size": f"{size:g}"}
                where["text-anchor"] = anchor
                if turned:
                    where["transform"] = f"rotate(-90 {x:.2f} {y:.2f})"
                SubElement(root, "text", where).text = text
    return root


def _stroke(root: Element, stroke: Stroke) -> None:
    level = round(255 * stroke.grey)
    look = {
        "x1": f"{stroke.x1:.2f}",
        "y1": f"{stroke.y1:.2f}",
        "x2": f"{stroke.x2:.2f}",
        "y2": f"{stroke.y2:.2f}",
        "stroke": f"#{level:02x}{level:02x}{level:02x}",
        "stroke-width": f"{stroke.width:g}",
    }
    if stroke.dash:
        look["stroke-dasharray"] = f"{stroke.dash:g}"
    SubElement(root, "line", look)


def _head(main: Element, sheet: FeedbackSheet) -> None:
    header = SubElement(main, "header")
    _text(header, "p", sheet.words.kind, {"class": "kind"})
    _text(header, "h1", sheet.title, {"dir": "auto"})
    who = SubElement(header, "dl", {"class": "who"})
    _pair(who, sheet.words.name, sheet.name)
    _pair(who, sheet.words.number, sheet.learner_id)
    if sheet.group:
        _pair(who, sheet.words.group, sheet.group)
    _pair(who, sheet.words.date, f"{sheet.date:%Y-%m-%d}")
    _pair(who, sheet.words.total, sheet.total)
    if sheet.grade:
        _pair(who, sheet.words.grade, sheet.grade)


def _marks(main: Element, sheet: FeedbackSheet) -> None:
    section = _section(main, sheet.words.marks)
    for criterion in sheet.criteria:
        block = SubElement(section, "article", {"class": "criterion"})
        given = SubElement(block, "div", {"class": "given"})
        _text(given, "h3", criterion.title)
        level = f"{criterion.level}: {criterion.marks}" if criterion.level else criterion.marks
        _text(given, "p", level, {"class": "marks"})
        if criterion.feedback:
            look = {"class": "feedback", "dir": "auto", "lang": sheet.language}
            _text(block, "p", criterion.feedback, look)
    for step in sheet.steps:
        _text(section, "p", step)


def _numbers(main: Element, sheet: FeedbackSheet) -> None:
    section = _section(main, sheet.words.numbers)
    if sheet.graph is None and not sheet.table:
        _text(section, "p", sheet.words.no_numbers)
        return
    if sheet.graph is not None:
        figure = SubElement(section, "figure")
        figure.append(svg(sheet.graph))
        _text(figure, "figcaption", sheet.caption)
    if sheet.table:
        wide = SubElement(section, "div", {"class": "wide", "tabindex": "0"})
        table = SubElement(wide, "table")
        _text(table, "caption", sheet.words.table_caption)
        headings = SubElement(SubElement(table, "thead"), "tr")
        for heading in sheet.table[0]:
            _text(headings, "th", heading, {"scope": "col"})
        body = SubElement(table, "tbody")
        for row in sheet.table[1:]:
            cells = SubElement(body, "tr")
            for cell in row:
                _text(cells, "td", cell)
    if sheet.results:
        results = SubElement(section, "dl", {"class": "results"})
        for name, value in sheet.results:
            _pair(results, name, value)
        _text(section, "p", sheet.results_note, {"class": "note"})


def _what_next(main: Element, sheet: FeedbackSheet) -> None:
    if sheet.next_steps:
        listed = SubElement(_section(main, sheet.words.next), "ul")
        for step in sheet.next_steps:
            item = SubElement(listed, "li")
            if step.title:
                _text(item, "strong", f"{step.title}. ").tail = step.text
            else:
                item.text = step.text


def _cautions(main: Element, sheet: FeedbackSheet) -> None:
    listed = SubElement(_section(main, sheet.words.cautions_title), "ul")
    for caution in sheet.words.cautions:
        _text(listed, "li", caution)


def _section(main: Element, title: str) -> Element:
    section = SubElement(main, "section")
    _text(section, "h2", title)
    return section


def _pair(into: Element, name: str, value: str) -> None:
    pair = SubElement(into, "div")
    _text(pair, "dt", name)
    _text(pair, "dd", value, {"dir": "auto"})


def _text(into: Element, tag: str, text: str, look: dict[str, str] | None = None) -> Element:
    element = SubElement(into, tag, look or {})
    element.text = text
    return element
