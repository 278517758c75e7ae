"""The words of a letter to a learner, by the language of the feedback.

A letter goes out as the feedback does, so it follows the brief and not the window, whose
language is the teacher's. A language without an entry gets English.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markbench.export.moderated import STEPS, STEPS_DE, StepWords


@dataclass(frozen=True, slots=True)
class LetterWords:
    """One language. Of two forms the first asks for one piece, the second for several."""

    dear: str
    nothing_yet: str
    thanks: str
    not_found: tuple[str, str]
    not_opened: tuple[str, str]
    not_usable: tuple[str, str]
    sent_already: tuple[str, str]
    by: str
    last_of_a_list: str
    pieces: Mapping[str, str]
    file: str
    dates: StepWords


EN = LetterWords(
    dear="Dear {name},",
    nothing_yet="Nothing has reached me yet for “{title}”.",
    thanks="Thank you for your work on “{title}”.",
    not_found=(
        "I have not found {pieces}. Could you hand it in{by}?",
        "I have not found {pieces}. Could you hand them in{by}?",
    ),
    not_opened=(
        "I could not open {pieces}. Could you hand it in again{by}?",
        "I could not open {pieces}. Could you hand them in again{by}?",
    ),
    not_usable=(
        "I could not make use of {pieces}. Could you hand it in again{by}?",
        "I could not make use of {pieces}. Could you hand them in again{by}?",
    ),
    sent_already=(
        "If you have sent it already, tell me the name of the file and when you sent it.",
        "If you have sent them already, tell me the names of the files and when you sent them.",
    ),
    by=" by {day}",
    last_of_a_list="{most} and {last}",
    pieces={
        "readings": "your table of readings",
        "setup_photo": "the photo of your set-up",
        "selfie": "the photo of you with your set-up",
        "swing_video": "the video of the swings",
        "report": "your report",
    },
    file="a file",
    dates=STEPS,
)

DE = LetterWords(
    dear="Hallo {name},",
    nothing_yet="zu „{title}“ ist bei mir noch nichts angekommen.",
    thanks="danke für deine Arbeit zu „{title}“.",
    not_found=(
        "Ich habe noch nicht gefunden: {pieces}. Kannst du das{by} nachreichen?",
        "Ich habe noch nicht gefunden: {pieces}. Kannst du das alles{by} nachreichen?",
    ),
    not_opened=(
        "Ich konnte nicht öffnen: {pieces}. Kannst du die Datei{by} noch einmal abgeben?",
        "Ich konnte nicht öffnen: {pieces}. Kannst du die Dateien{by} noch einmal abgeben?",
    ),
    not_usable=(
        "Damit konnte ich nichts anfangen: {pieces}. Kannst du das{by} noch einmal abgeben?",
        "Damit konnte ich nichts anfangen: {pieces}. Kannst du das alles{by} noch einmal abgeben?",
    ),
    sent_already=(
        "Falls du es schon geschickt hast, nenne mir den Namen der Datei und wann du sie "
        "geschickt hast.",
        "Falls du das alles schon geschickt hast, nenne mir die Namen der Dateien und wann du sie "
        "geschickt hast.",
    ),
    by=" bis zum {day}",
    last_of_a_list="{most} und {last}",
    pieces={
        "readings": "deine Messwerttabelle",
        "setup_photo": "das Foto von deinem Aufbau",
        "selfie": "das Foto von dir mit deinem Aufbau",
        "swing_video": "das Video der Schwingungen",
        "report": "deinen Bericht",
    },
    file="eine Datei",
    dates=STEPS_DE,
)

_BY_LANGUAGE = {"en": EN, "de": DE}


def letter_words(language: str) -> LetterWords:
    """The words in a language of the feedback."""
    return _BY_LANGUAGE.get(language, EN)
