"""The fixed words of a sheet, by the language of the feedback; PDF and web page share them.

A language without an entry gets English. Units and symbols are the same everywhere.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from markbench.export.moderated import STEPS, STEPS_DE, StepWords

_POINT = re.compile(r"(?<=\d)\.(?=\d)")


@dataclass(frozen=True, slots=True)
class SheetWords:
    """One language. Braces are filled where they are used; ``comma``: decimals have one."""

    language: str
    kind: str
    name: str
    number: str
    group: str
    date: str
    total: str
    grade: str
    marks: str
    of: str
    so_far: str
    not_yet: str
    best_level: str
    asks_for: str
    steps: StepWords
    numbers: str
    no_numbers: str
    length_axis: str
    caption: str
    caption_no_line: str
    described: str
    described_line: str
    described_no_line: str
    table: tuple[str, ...]
    table_caption: str
    results: tuple[str, str, str, str, str]
    results_note: str
    two_g: str
    next: str
    go_further: str
    boxes: str
    page: str
    cautions_title: str
    # Common practice of school laboratories, no source.
    cautions: tuple[str, ...]
    comma: bool = False

    def figures(self, text: str) -> str:
        """Numbers as this language writes them."""
        return _POINT.sub(",", text) if self.comma else text


EN = SheetWords(
    language="en",
    kind="Feedback on your practical",
    name="Name",
    number="Number",
    group="Group",
    date="Date",
    total="Mark",
    grade="Grade",
    marks="Your marks",
    of="{n:g} of {most:g}",
    so_far="{n} of {of} criteria marked so far",
    not_yet="not yet marked",
    best_level="“{level}” ({marks:g} marks)",
    asks_for="{level} asks for: {what}",
    steps=STEPS,
    numbers="Your graph and your numbers",
    no_numbers="No readings could be recomputed, so there is no graph.",
    length_axis="length L / m",
    caption=(
        "T² against length, from your readings. Whole line: the straight line that fits your "
        "points best; dashed: the same line carried back to L = 0, where nothing was timed."
    ),
    caption_no_line="T² against length, from your readings. A line needs two lengths.",
    described="Graph of T² against length with {line}. Points: {points}.",
    described_line="the line T² = {intercept:.3f} s² + {slope:.3f} s²/m × L",
    described_no_line="no line",
    table=("L / m", "swings N", "times t / s", "mean t / s", "T / s", "T² / s²", "g / (m/s²)"),
    table_caption="Recomputed from your raw times: T = t/N, g = 4π²L/T² from each length alone.",
    results=(
        "Slope of your line",
        "Its intercept at L = 0",
        "g from your line, 4π²/slope",
        "g from all your readings at once, best estimate",
        "g expected where you measured",
    ),
    results_note="The number after ± is the standard uncertainty.",
    two_g=(
        "The two values of g from your readings lie further apart than their uncertainties "
        "allow. The line may meet the T² axis anywhere; the best estimate expects it at the "
        "origin, to within a few millimetres of length. Lengths that are all too long or too "
        "short by the same amount pull the two apart."
    ),
    next="What to do next",
    go_further=(
        "Every criterion is at its best level. To go further, add a length beyond those you "
        "have, or count twenty swings where you counted ten, and see whether g stays within "
        "its uncertainty."
    ),
    boxes="{box} stands for a letter this print has no type for; the web page of this sheet "
    "shows it.",
    page="page {n} of {of}",
    cautions_title="If you repeat it at home",
    cautions=(
        "Keep people, pets, glass, screens and furniture well out of the way of the swinging "
        "weight, and take a bob that would do no harm if it came loose.",
        "Hang the string from something that can neither tip nor fall, and try it by hand "
        "first. A small swing is enough; it is also the better physics.",
        "Do not climb on chairs, tables or window sills. Ask an adult to fix a high support, "
        "or take a shorter string.",
        "The rules of your school come first. If they say otherwise, or you are not sure, ask "
        "your teacher before you begin.",
    ),
)

DE = SheetWords(
    language="de",
    kind="Rückmeldung zu deinem Versuch",
    name="Name",
    number="Nummer",
    group="Gruppe",
    date="Datum",
    total="Punkte",
    grade="Note",
    marks="Deine Punkte",
    of="{n:g} von {most:g}",
    so_far="bisher {n} von {of} Kriterien bewertet",
    not_yet="noch nicht bewertet",
    best_level="„{level}“ ({marks:g} Punkte)",
    asks_for="{level} verlangt: {what}",
    steps=STEPS_DE,
    numbers="Dein Diagramm und deine Zahlen",
    no_numbers="Es ließen sich keine Messwerte nachrechnen, deshalb gibt es kein Diagramm.",
    length_axis="Länge L / m",
    caption=(
        "T² über der Länge, aus deinen Messwerten. Durchgezogen: die Gerade, die am besten zu "
        "deinen Punkten passt; gestrichelt: dieselbe Gerade bis L = 0, wo nichts gemessen wurde."
    ),
    caption_no_line="T² über der Länge, aus deinen Messwerten. Eine Gerade braucht zwei Längen.",
    described="Diagramm von T² über der Länge mit {line}. Punkte: {points}.",
    described_line="der Geraden T² = {intercept:.3f} s² + {slope:.3f} s²/m × L",
    described_no_line="keiner Geraden",
    table=("L / m", "Zahl N", "Zeiten t / s", "Mittel t / s", "T / s", "T² / s²", "g / (m/s²)"),
    table_caption=(
        "Nachgerechnet aus deinen Zeiten: T = t/N, g = 4π²L/T² aus jeder Länge für sich."
    ),
    results=(
        "Steigung deiner Geraden",
        "Ihr Achsenabschnitt bei L = 0",
        "g aus deiner Geraden, 4π²/Steigung",
        "g aus allen Messwerten zugleich, beste Schätzung",
        "g, wie es an deinem Ort zu erwarten ist",
    ),
    results_note="Die Zahl hinter ± ist die Standardunsicherheit.",
    two_g=(
        "Die beiden Werte für g aus deinen Messwerten liegen weiter auseinander, als ihre "
        "Unsicherheiten erlauben. Die Gerade darf die T²-Achse irgendwo treffen; die beste "
        "Schätzung erwartet sie im Ursprung, bis auf wenige Millimeter Länge. Längen, die alle "
        "um dasselbe Stück zu lang oder zu kurz sind, ziehen die beiden auseinander."
    ),
    next="Was du als Nächstes tun kannst",
    go_further=(
        "Jedes Kriterium steht auf seiner besten Stufe. Wenn du weitergehen willst, nimm eine "
        "Länge außerhalb der bisherigen dazu oder zähl zwanzig Schwingungen statt zehn und "
        "sieh, ob g innerhalb seiner Unsicherheit bleibt."
    ),
    boxes="{box} steht für einen Buchstaben, den dieser Druck nicht kennt; die Webseite dieses "
    "Blatts zeigt ihn.",
    page="Seite {n} von {of}",
    cautions_title="Wenn du es zu Hause wiederholst",
    cautions=(
        "Halte Menschen, Tiere, Glas, Bildschirme und Möbel vom schwingenden Gewicht fern und "
        "nimm einen Pendelkörper, der keinen Schaden anrichtet, wenn er sich löst.",
        "Häng den Faden an etwas, das weder kippen noch fallen kann, und probier es zuerst von "
        "Hand. Ein kleiner Ausschlag genügt; er ist auch die bessere Physik.",
        "Steig nicht auf Stühle, Tische oder Fensterbretter. Bitte jemand Erwachsenes, eine "
        "hohe Aufhängung anzubringen, oder nimm einen kürzeren Faden.",
        "Die Regeln deiner Schule gehen vor. Wenn sie etwas anderes sagen oder du unsicher "
        "bist, frag deine Lehrerin oder deinen Lehrer, bevor du anfängst.",
    ),
    comma=True,
)

_BY_LANGUAGE = {words.language: words for words in (EN, DE)}


def sheet_words(language: str) -> SheetWords:
    """The words of a language tag; English where there are none."""
    return _BY_LANGUAGE.get(language.split("-")[0].lower(), EN)
