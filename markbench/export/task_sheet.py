"""A printable sheet that tells learners what to do, made from the brief.

One HTML file that needs nothing beside it and prints on A4. What the brief does not ask
for is not on the sheet.
"""

from __future__ import annotations

import math
from html import escape
from importlib import resources
from pathlib import Path

from markbench.export.handout import write_handout
from markbench.export.task_words import TaskWords, task_words
from markbench.export.template import template_headings
from markbench.model import Brief, Words

_USUAL_CM = (20, 60)  # the trade's usual set: 20 to 60 cm (common practice, no source)
_CLEAR_OF_THE_FLOOR_CM = 10


def write_task_sheet(path: Path, brief: Brief) -> None:
    """Write the sheet. Raises :class:`ExportError` where it cannot be written."""
    write_handout(path, task_sheet_html(brief).encode("utf-8"))


def task_sheet_html(brief: Brief) -> str:
    """The whole page as HTML."""
    style = resources.files("markbench.export").joinpath("task_sheet.css").read_text("utf-8")
    say = task_words(brief.feedback_language)
    find, care, build, time, readings, hand_in, pictures = say.headings
    parts = (
        _head(brief, say),
        _section(find, _question(brief, say)),
        _section(care, _list(say.care, "ul") + f'<p class="defer">{say.defer}</p>'),
        _section(build, _drawing(say) + _list(_set_up(brief, say))),
        _section(time, _list(_timing(brief, say))),
        _section(readings, _table(brief, say), "whole"),
        _section(hand_in, _list(_hand_in(brief, say), "ul")),
        *((_section(pictures, _list(_pictures(brief, say), "ul")),) if _filmed(brief) else ()),
    )
    return (
        f'<!DOCTYPE html>\n<html lang="{say.language}">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(brief.title)}</title>\n<style>\n{style}</style>\n</head>\n<body>\n"
        + "\n".join(parts)
        + "\n</body>\n</html>\n"
    )


def example_lengths_cm(brief: Brief) -> tuple[int, ...]:
    """Evenly spread whole lengths, as many as are asked for, wide enough for the brief.

    Empty where the brief's range leaves no room for so many different whole centimetres.
    """
    low, high = math.ceil(100 * brief.shortest_m), math.floor(100 * brief.longest_m)
    if brief.support_height_m is not None:
        high = min(high, math.floor(100 * brief.support_height_m) - _CLEAR_OF_THE_FLOOR_CM)
    usual_low, usual_high = _USUAL_CM
    first = max(low, min(usual_low, high // 3))
    last = min(high, max(usual_high, math.ceil(first * max(brief.least_ratio, 3))))
    step = (last - first) / (brief.lengths - 1)
    if step < 1:
        return ()
    for neat in (10, 5, 2, 1):
        start = -(-first // neat) * neat if neat <= step else first
        wide = int((last - start) / (brief.lengths - 1) // neat) * neat
        found = tuple(start + wide * i for i in range(brief.lengths))
        if wide > 0 and found[-1] >= brief.least_ratio * found[0]:
            return found
    return ()


def _head(brief: Brief, say: TaskWords) -> str:
    opens = say.day(brief.opens) if brief.opens else ""
    closes = say.day(brief.closes) if brief.closes else ""
    both, until, since = say.dates
    form = both if opens and closes else until if closes else since if opens else ""
    dates = form.format(opens=opens, closes=closes)
    name, group = say.who
    return (
        f"<header>\n<h1>{escape(brief.title)}</h1>\n"
        + (f'<p class="dates">{dates}</p>\n' if dates else "")
        + f'<p class="who">{name} <span></span> {group} <span></span></p>\n</header>'
    )


def _section(title: str, inside: str, kind: str = "") -> str:
    attribute = f' class="{kind}"' if kind else ""
    return f"<section{attribute}>\n<h2>{title}</h2>\n{inside}\n</section>"


def _list(lines: tuple[str, ...], tag: str = "ol") -> str:
    items = "\n".join(f"<li>{line}</li>" for line in lines)
    return f"<{tag}>\n{items}\n</{tag}>"


def _question(brief: Brief, say: TaskWords) -> str:
    words = say.variables if brief.words == Words() else brief.words
    asked, told = say.question
    told = told.format(
        independent=escape(words.independent),
        dependent=escape(words.dependent),
        controlled=escape(words.controlled),
    )
    return f"<p>{asked}</p>\n<p>{told}</p>"


def _set_up(brief: Brief, say: TaskWords) -> tuple[str, ...]:
    support = brief.support_height_m
    height = say.height.format(cm=100 * support) if support is not None else ""
    bob, tie, measure = say.set_up
    return (bob, tie.format(height=height), measure, _which_lengths(brief, say))


def _which_lengths(brief: Brief, say: TaskWords) -> str:
    example = example_lengths_cm(brief)
    such_as = say.such_as.format(lengths=", ".join(map(str, example))) if example else ""
    told = say.lengths.format(
        count=say.count(brief.lengths),
        low=say.number(100 * brief.shortest_m),
        high=say.number(100 * brief.longest_m),
        ratio=say.ratio(brief.least_ratio),
    )
    return told + such_as


def _timing(brief: Brief, say: TaskWords) -> tuple[str, ...]:
    swings, tries = brief.swings_per_timing, brief.timings_per_length
    others = [str(count) for count in brief.swings_allowed if count != swings]
    also = say.also.format(others=say.or_.join(others)) if others else ""
    pull, swing, start = say.timing_steps
    again = say.again.format(times=say.so_often(tries)) if tries > 1 else say.once
    return (pull, swing, start.format(swings=swings, also=also), again, say.go_on)


def _table(brief: Brief, say: TaskWords) -> str:
    asked = template_headings(brief)
    headings = "".join(f"<th>{escape(words)}</th>" for words in asked)
    cells = "<td></td>" * len(asked)
    rows = "\n".join(f"<tr>{cells}</tr>" for _ in range(brief.lengths))
    return (
        f"<p>{say.table}</p>\n"
        f"<table>\n<thead><tr>{headings}</tr></thead>\n<tbody>\n{rows}\n</tbody>\n</table>"
    )


def _hand_in(brief: Brief, say: TaskWords) -> tuple[str, ...]:
    pieces = [say.pieces[kind] for kind in brief.evidence if kind in say.pieces]
    late = brief.late.marks_per_day
    last = (say.late[late != 1].format(n=say.number(late)),) if late > 0 and brief.closes else ()
    asked = (words.format(swings=brief.swings_per_timing) for words in pieces)
    return (say.own_table, *asked, say.named, *last)


def _filmed(brief: Brief) -> bool:
    return any(kind in brief.evidence for kind in ("setup_photo", "selfie", "photo", "swing_video"))


def _pictures(brief: Brief, say: TaskWords) -> tuple[str, ...]:
    yourself = (say.yourself,) if "selfie" in brief.evidence else ()
    return (*yourself, *say.pictures)


def _drawing(say: TaskWords) -> str:
    about, length, swing = say.drawing
    return _DRAWING.format(about=about, length=length, swing=swing)


# The length as it is measured: underside of the support to the middle of the bob.
_DRAWING = """
<svg viewBox="0 0 190 212" width="190" height="212" role="img" fill="none" stroke="#2a241d"
 stroke-width="1.4" font-size="11" aria-label="{about}">
<path d="M40 18H150"/>
<path stroke-width="1" d="M46 18l8-9M62 18l8-9M78 18l8-9M94 18l8-9
 M110 18l8-9M126 18l8-9M142 18l8-9"/>
<path d="M95 18V147"/><circle cx="95" cy="160" r="13"/><path d="M90 160h10M95 155v10"/>
<g stroke="#857a67" stroke-dasharray="4 3"><path d="M95 18L138 140"/>
<circle cx="142" cy="152" r="13"/></g>
<path stroke-width="1" d="M32 18H52M32 160H84M42 22V156M38 30l4-8 4 8M38 148l4 8 4-8"/>
<path stroke-width="1" d="M64 186Q100 200 134 184M72 183l-8 3 6 6M127 182l7 2-3 7"/>
<g fill="#2a241d" stroke="none"><text x="30" y="92" text-anchor="middle"
 transform="rotate(-90 30 92)">{length}</text>
<text x="99" y="208" text-anchor="middle" font-size="10">{swing}</text></g>
</svg>"""
