"""Which mark holds, and why."""

import datetime as dt

import pytest
from moderation_forms import AT, RUBRIC, marks

from markbench.model import Brief, Decision, Late
from markbench.moderation.outcome import outcomes

BRIEF = Brief(closes=dt.date(2026, 3, 16), grade_boundaries=(("A", 9.0), ("B", 6.0)))


def result(*decisions, given=(2, 3, 3), brief=BRIEF, handed_in=None, extended=None):
    state = {d.key: d for d in decisions}
    return outcomes(
        state,
        RUBRIC,
        brief,
        {"07": marks(*given)},
        {"07": handed_in},
        {"07": extended} if extended else {},
    )["07"]


def moderated(action, marks=None, who="M. Moderator", why="The axes carry no units.", minute=0):
    value = {"action": action, "level": marks and f"L{marks}", "marks": marks, "first_seen": 2.0}
    at = AT + dt.timedelta(minutes=minute)
    return Decision("moderated", "07", f"raw_data|{who}", value, who=who, why=why, at=at)


def second(marks, who="M. Moderator"):
    value = {"level": f"L{marks}", "marks": float(marks), "feedback": ""}
    return Decision("second_mark", "07", f"raw_data|{who}", value, who=who, at=AT)


def test_first_marks_hold_where_nobody_looked_again():
    found = result()
    assert (found.first_total, found.moderated_total, found.total, found.grade) == (8, 8, 8, "B")
    assert found.of("raw_data").why == "first mark, A. Teacher"
    assert found.open == ()


def test_a_second_mark_alone_changes_nothing_and_asks_for_a_word():
    found = result(second(4))
    assert found.total == 8
    assert "A. Teacher gave 2, M. Moderator gave 4" in found.open[0]
    assert result(second(2)).open == ()


def test_an_adjustment_by_the_moderator_holds_with_its_reason():
    found = result(second(4), moderated("adjust", 4))
    assert (found.first_total, found.total, found.grade) == (8, 10, "A")
    assert found.of("raw_data").why == "adjusted by M. Moderator: The axes carry no units."
    assert found.open == ()
    agreed = result(second(4), moderated("agree"))
    assert (agreed.total, agreed.open) == (8, ())


def test_a_question_stays_open_until_settled():
    asked = result(moderated("ask", why="Was the sheet complete?"))
    assert asked.open == ("raw_data: M. Moderator asks: Was the sheet complete?",)
    final = Decision(
        "adjustment", "07", "raw_data", {"level": "L3", "marks": 3.0}, who="A. Teacher", why="Yes."
    )
    settled = result(moderated("ask"), final)
    assert (settled.total, settled.open) == (9, ())
    assert settled.of("raw_data").why == "settled by A. Teacher: Yes."


def test_two_moderators_who_differ_are_shown_and_neither_is_chosen():
    found = result(moderated("adjust", 4), moderated("adjust", 1, who="O. Other", minute=1))
    assert found.total == 8
    assert "M. Moderator to 4, O. Other to 1" in found.open[0]
    alike = result(moderated("adjust", 4), moderated("adjust", 4, who="O. Other", minute=1))
    assert (alike.total, alike.open) == (10, ())


@pytest.mark.parametrize(
    ("choice", "looked_at", "total"),
    [("adjust", False, 6), ("leave", False, 8), ("remark", False, 8), ("adjust", True, 8)],
)
def test_the_class_adjustment_moves_only_what_no_moderator_went_through(choice, looked_at, total):
    shift = Decision("adjustment", "", "", {"choice": choice, "shift": -2.0}, who="A. Teacher")
    seen = [moderated("agree")] if looked_at else []
    found = result(shift, *seen)
    assert found.total == total
    assert (found.adjustment is not None) == (total == 6)


def test_adjustment_stays_within_the_marks_available():
    up = Decision("adjustment", "", "", {"choice": "adjust", "shift": 9.0})
    assert result(up).total == RUBRIC.most
    down = Decision("adjustment", "", "", {"choice": "adjust", "shift": -9.0})
    assert result(down).total == 0


def test_lateness_is_shown_beside_the_total_and_an_extension_lifts_it():
    brief = Brief(closes=BRIEF.closes, grade_boundaries=BRIEF.grade_boundaries, late=Late(1.5))
    late = dt.datetime(2026, 3, 18, 9)
    found = result(brief=brief, handed_in=late)
    assert (found.moderated_total, found.total, found.grade) == (8, 5, "")
    assert (found.late.days, found.late.marks_off) == (2, 3)
    lifted = result(brief=brief, handed_in=late, extended=dt.date(2026, 3, 18))
    assert (lifted.total, lifted.late) == (8, None)
    assert result(brief=brief, handed_in=late, given=(1, 1, 0)).total == 0


def test_no_total_until_every_criterion_is_marked():
    found = outcomes({}, RUBRIC, BRIEF, {"07": {}}, {}, {})["07"]
    assert (found.first_total, found.total, found.grade) == (None, None, "")
    partly = marks(1, 2, 3)
    del partly["graph"]
    assert outcomes({}, RUBRIC, BRIEF, {"07": partly}, {}, {})["07"].total is None
