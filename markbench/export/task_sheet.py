"""A printable sheet that tells learners what to do, made from the brief.

One HTML file that needs nothing beside it and prints on A4. What the brief does not ask
for is not on the sheet. The cautions are general ones (common practice, no source) and say
themselves that the school's rules come first.
"""

from __future__ import annotations

import datetime as dt
import math
from html import escape
from importlib import resources
from pathlib import Path

from markbench.export.handout import write_handout
from markbench.export.template import template_headings
from markbench.model import Brief

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_USUAL_CM = (20, 60)  # the trade's usual set: 20 to 60 cm (common practice, no source)
_CLEAR_OF_THE_FLOOR_CM = 10


def write_task_sheet(path: Path, brief: Brief) -> None:
    """Write the sheet. Raises :class:`ExportError` where it cannot be written."""
    write_handout(path, task_sheet_html(brief).encode("utf-8"))


def task_sheet_html(brief: Brief) -> str:
    """The whole page as HTML."""
    style = resources.files("markbench.export").joinpath("task_sheet.css").read_text("utf-8")
    parts = (
        _head(brief),
        _section("What you are finding out", _question(brief)),
        _section("Take care", _list(_CARE, "ul") + _defer()),
        _section("Set it up", _DRAWING + _list(_set_up(brief))),
        _section("Time it", _list(_timing(brief))),
        _section("Your readings", _table(brief), "whole"),
        _section("Hand in", _list(_hand_in(brief), "ul")),
        *((_section("Your pictures", _list(_pictures(brief), "ul")),) if _filmed(brief) else ()),
    )
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
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


def _head(brief: Brief) -> str:
    dates = ""
    if brief.opens and brief.closes:
        dates = f"From {_day(brief.opens)} to {_day(brief.closes)}."
    elif brief.closes:
        dates = f"Hand in by {_day(brief.closes)}."
    elif brief.opens:
        dates = f"From {_day(brief.opens)}."
    return (
        f"<header>\n<h1>{escape(brief.title)}</h1>\n"
        + (f'<p class="dates">{dates}</p>\n' if dates else "")
        + '<p class="who">Name <span></span> Class <span></span></p>\n</header>'
    )


def _section(title: str, inside: str, kind: str = "") -> str:
    attribute = f' class="{kind}"' if kind else ""
    return f"<section{attribute}>\n<h2>{title}</h2>\n{inside}\n</section>"


def _list(lines: tuple[str, ...], tag: str = "ol") -> str:
    items = "\n".join(f"<li>{line}</li>" for line in lines)
    return f"<{tag}>\n{items}\n</{tag}>"


def _question(brief: Brief) -> str:
    words = brief.words
    return (
        "<p>How does the time of one swing depend on the length of the pendulum?</p>\n"
        f"<p>The length is your {escape(words.independent)}: you choose it. The time is your "
        f"{escape(words.dependent)}: you measure it. Everything else is a "
        f"{escape(words.controlled)} and stays the same from start to end: the same bob, the "
        "same thread, pulled aside by the same small amount.</p>"
    )


def _set_up(brief: Brief) -> tuple[str, ...]:
    height = (
        f" about {100 * brief.support_height_m:.0f} cm above the floor"
        if brief.support_height_m is not None
        else ""
    )
    return (
        "Find something small and heavy for a bob (a nut, a key, a lump of modelling clay) and "
        "a thin thread that does not stretch.",
        f"Tie the thread to a support that stays still{height}. The bob must swing freely and "
        "touch nothing.",
        "Measure the length from the underside of the support, where the thread begins to move, "
        "to the <strong>middle of the bob</strong>. Measure with the bob hanging. Do not stop at "
        "the knot or at the top of the bob.",
        _which_lengths(brief),
    )


def _which_lengths(brief: Brief) -> str:
    example = example_lengths_cm(brief)
    such_as = f" For example {', '.join(map(str, example))} cm." if example else ""
    return (
        f"Use <strong>{_count(brief.lengths)} different lengths</strong> between "
        f"{100 * brief.shortest_m:g} cm and {100 * brief.longest_m:g} cm, evenly spread. The "
        f"longest is at least {_count_of_times(brief.least_ratio)} the shortest.{such_as}"
    )


def _timing(brief: Brief) -> tuple[str, ...]:
    swings = brief.swings_per_timing
    others = [count for count in brief.swings_allowed if count != swings]
    also = f" ({' or '.join(map(str, others))} will do too; write down which)" if others else ""
    tries = brief.timings_per_length
    again = (
        f"Do it <strong>{_times(tries)}</strong> at each length, starting afresh, and write down "
        "each time. Do not change a time because it looks wrong: time it again and keep both."
        if tries > 1
        else "Write down the time at once, before you change the length."
    )
    return (
        "Pull the bob a little to one side (about a hand’s breadth for a long pendulum, two "
        "fingers for a short one) and let go without a push. It must swing in one line, not in a "
        "circle.",
        "Let it swing a few times first. One swing is <strong>there and back again</strong>: the "
        "bob is at the same place and moving the same way.",
        "Start the stopwatch as the bob passes and say <strong>“nought”</strong>, not “one”. Count "
        f"one at the end of the first swing, and stop at <strong>{swings}</strong>{also}.",
        again,
        "Change the length, and nothing else, and go on.",
    )


def _table(brief: Brief) -> str:
    headings = "".join(f"<th>{escape(words)}</th>" for words in template_headings(brief))
    cells = "<td></td>" * (brief.timings_per_length + 1)
    rows = "\n".join(f"<tr>{cells}</tr>" for _ in range(brief.lengths))
    return (
        "<p>Write each reading down as you take it, with all its decimals. If you were given a "
        "table for the computer, type the same numbers there.</p>\n"
        f"<table>\n<thead><tr>{headings}</tr></thead>\n<tbody>\n{rows}\n</tbody>\n</table>"
    )


def _hand_in(brief: Brief) -> tuple[str, ...]:
    swings = brief.swings_per_timing
    words = {
        "setup_photo": "<strong>A photo of your set-up</strong>: support, thread, bob and ruler, "
        "all in one picture and sharp.",
        "selfie": "<strong>A photo of you with your set-up</strong>, so that it is plain whose "
        "work it is.",
        "photo": "<strong>A photo</strong> of your work.",
        "swing_video": f"<strong>A video of {swings} complete swings</strong> at one of your "
        "lengths. Stand the phone still, square to the swing, and have the support and the bob "
        "in the picture all the time. Say the length at the start or write it on paper.",
        "report": "<strong>Your report</strong>.",
    }
    late = brief.late.marks_per_day
    last = (
        (f"After the last day {late:g} {'mark is' if late == 1 else 'marks are'} taken off for "
         "each day. Ask before then if you need longer.",)
        if late > 0 and brief.closes
        else ()
    )  # fmt: skip
    return (
        "<strong>Your table of readings</strong>: the raw times as well as what you work out.",
        *(words[kind] for kind in brief.evidence if kind in words),
        "Put your name in the name of every file.",
        *last,
    )


_CARE = (
    "A swinging weight can hit. Use a bob that you could catch with one hand, and keep faces, "
    "small children and animals out of its way.",
    "Stay clear of glass, screens, lamps, hot things and traffic.",
    "Do not stand on chairs, stools or tables to reach a support. Choose a lower one, or ask a "
    "grown-up to tie the thread for you.",
    "Pull gently on the support before you trust it. Shelves, rails and lamps can come down.",
    "Tape can lift paint, varnish and paper. Ask first, and try it where it does not show.",
    "Take thread, tape and clay away when you have finished.",
)


def _defer() -> str:
    return (
        '<p class="defer">Your school’s own rules and the safety code where you live come before '
        "this sheet. If you cannot do something safely, stop and tell your teacher: you will be "
        "shown another way.</p>"
    )


def _filmed(brief: Brief) -> bool:
    return any(kind in brief.evidence for kind in ("setup_photo", "selfie", "photo", "swing_video"))


def _pictures(brief: Brief) -> tuple[str, ...]:
    asked = "selfie" in brief.evidence
    yourself = (
        "Before you take a picture of yourself, ask a parent or carer. If you or they would "
        "rather not, tell your teacher; your hand and your name on paper can stand for your face.",
    )
    return (
        *(yourself if asked else ()),
        "Nobody else belongs in the picture unless they said yes. Look at the background: no "
        "address, no letters, no family photos.",
        "Send the files only in the way your teacher told you. Do not post them anywhere.",
        "Your school keeps them only for as long as its rules for marking say, where only those "
        "who mark can see them. You may ask what is kept and when it is deleted.",
    )


def _count(number: int) -> str:
    return _NUMBERS[number] if number < len(_NUMBERS) else str(number)


def _times(number: int) -> str:
    return {2: "twice"}.get(number, f"{_count(number)} times")


def _count_of_times(ratio: float) -> str:
    return "twice" if ratio == 2 else f"{ratio:g} times"


def _day(day: dt.date) -> str:
    return f"{day:%A} {day.day} {day:%B %Y}"


# The length as it is measured: underside of the support to the middle of the bob.
_DRAWING = """
<svg viewBox="0 0 190 212" width="190" height="212" role="img" fill="none" stroke="#2a241d"
 stroke-width="1.4" font-size="11" aria-label="A pendulum. Its length is measured from the
 underside of the support to the middle of the bob. One swing is there and back again.">
<path d="M40 18H150"/>
<path stroke-width="1" d="M46 18l8-9M62 18l8-9M78 18l8-9M94 18l8-9
 M110 18l8-9M126 18l8-9M142 18l8-9"/>
<path d="M95 18V147"/><circle cx="95" cy="160" r="13"/><path d="M90 160h10M95 155v10"/>
<g stroke="#857a67" stroke-dasharray="4 3"><path d="M95 18L138 140"/>
<circle cx="142" cy="152" r="13"/></g>
<path stroke-width="1" d="M32 18H52M32 160H84M42 22V156M38 30l4-8 4 8M38 148l4 8 4-8"/>
<path stroke-width="1" d="M64 186Q100 200 134 184M72 183l-8 3 6 6M127 182l7 2-3 7"/>
<g fill="#2a241d" stroke="none"><text x="30" y="92" text-anchor="middle"
 transform="rotate(-90 30 92)">length</text>
<text x="99" y="208" text-anchor="middle" font-size="10">one swing: there and back</text></g>
</svg>"""
