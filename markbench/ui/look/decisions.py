"""What a decision is about, in a few words."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication


def decision_words(kind: str, otherwise: str) -> str:
    """“reading corrected”; ``otherwise`` for a kind that has no words of its own."""
    return {
        "mark": _tr("mark"),
        "feedback": _tr("text to the learner"),
        "note": _tr("note"),
        "correction": _tr("correction of a reading"),
        "typed": _tr("readings typed in"),
        "hints": _tr("columns pointed at"),
        "agreed_slip": _tr("explanation agreed with"),
        "piece_kind": _tr("what a file shows"),
        "piece_status": _tr("whether a file will do"),
        "swing_count": _tr("count of swings"),
        "owner": _tr("whose file it is"),
        "not_owner": _tr("whose file it is"),
        "mark_stands": _tr("mark left as it is"),
        "extension": _tr("last day to hand in"),
        "order": _tr("order of marking"),
        "blind": _tr("names shown or hidden"),
        "phrase": _tr("phrase"),
        "sample": _tr("sample"),
        "moderated": _tr("settled mark"),
        "adjustment": _tr("adjustment of the class"),
        "file": _tr("file saved"),
        "sign_off": _tr("sign-off"),
        "reopen": _tr("reopening of the marks"),
        "merged": _tr("marks merged"),
        "first_marker": _tr("whose mark is the first"),
        "restored": _tr("going back to a copy"),
        "brought_home": _tr("marks brought home"),
        "word": _tr("word remembered"),
        "phrase_forgotten": _tr("phrase"),
    }.get(kind, otherwise)


def _tr(text: str) -> str:
    return QCoreApplication.translate("Decisions", text)
