"""What a learner is told and asked about a slip, in German; places as in ``slips.py``."""

from __future__ import annotations

from typing import NamedTuple


class GermanWords(NamedTuple):
    """As in :class:`SlipWords`: ``mended`` says what g is with the slip put right."""

    ask: str
    learner: str
    mended: str = ""


GERMAN: dict[str, GermanWords] = {
    "half_swings": GermanWords(
        "Zeig mir eine Schwingung: Wo beginnt sie, und wo endet sie?",
        "Eine Schwingung geht hin und wieder zurück: Sie endet, wo sie begonnen hat, in "
        "derselben Richtung. Deine Zeiten passen zu {really} ganzen Schwingungen, nicht zu "
        "{swings}; es sieht so aus, als wären Hin und Zurück als zwei gezählt.",
        "So gezählt ergeben deine Messwerte g = {g_mended}.",
    ),
    "count_short": GermanWords(
        "Welche Zahl hast du gesagt, als du die Uhr gestartet hast?",
        "Starte die Uhr bei „null“, nicht bei „eins“: Die erste Schwingung ist erst vorbei, "
        "wenn der Pendelkörper zurückkommt. Deine Zeiten passen zu {really} Schwingungen, "
        "nicht zu {swings}.",
        "Durch {really} geteilt ergeben deine Messwerte g = {g_mended}.",
    ),
    "count_over": GermanWords(
        "Bei welcher Zahl hast du die Uhr angehalten, und was hast du am Anfang gezählt?",
        "Deine Zeiten passen zu {really} Schwingungen, nicht zu {swings}: Es sieht so aus, "
        "als wäre die Uhr jedes Mal eine Schwingung zu spät angehalten worden.",
        "Durch {really} geteilt ergeben deine Messwerte g = {g_mended}.",
    ),
    "one_timing_miscounted": GermanWords(
        "Wie sicher bist du dir beim Zählen der {time} s bei {length}?",
        "Deine {time} s bei {length} passen zu {really} Schwingungen, nicht zu {swings}; "
        "deine anderen Zeiten passen gut. Wenn eine Zeit so heraussticht, stoppe sie noch "
        "einmal.",
        "Ohne den Zählfehler ergeben deine Messwerte g = {g_mended}.",
    ),
    "length_to_top": GermanWords(
        "Zeig mir am Pendel, von wo bis wo du gemessen hast.",
        "Die Pendellänge reicht bis zur Mitte des Pendelkörpers. Deine sehen alle um etwa "
        "{size} zu kurz aus, als hättest du an der Oberkante des Pendelkörpers aufgehört.",
        "Damit ergänzt ergeben deine Messwerte g = {g_mended}.",
    ),
    "length_to_bottom": GermanWords(
        "Zeig mir am Pendel, von wo bis wo du gemessen hast.",
        "Die Pendellänge reicht bis zur Mitte des Pendelkörpers. Deine sehen alle um etwa "
        "{size} zu lang aus, als hättest du bis zur Unterkante des Pendelkörpers gemessen.",
        "Ohne dieses Stück ergeben deine Messwerte g = {g_mended}.",
    ),
    "whole_thread": GermanWords(
        "Hast du den Faden vor oder nach dem Anbinden gemessen? Von wo bis wo?",
        "Miss die Länge, wenn das Pendel hängt: von der Unterseite der Aufhängung bis zur "
        "Mitte des Pendelkörpers. Deine sehen alle um etwa {size} zu lang aus, als wären "
        "Knoten und loses Ende mitgemessen.",
        "Ohne das ergeben deine Messwerte g = {g_mended}.",
    ),
    "length_unit": GermanWords(
        "In welcher Einheit ist dein Lineal geteilt, und welche hast du aufgeschrieben?",
        "Deine Längen passen, wenn sie in einer anderen Einheit gemeint sind: Was in deiner "
        "Tabelle als {length_typed} gelesen wird, wäre {length_meant}. Schreib die Einheit in "
        "den Kopf der Spalte und prüf sie an etwas, das du kennst.",
        "Richtiggestellt ergeben deine Messwerte g = {g_mended}.",
    ),
    "period_as_total": GermanWords(
        "Hat die Uhr {time} s angezeigt, oder hast du vorher geteilt?",
        "Die {time} s, die du bei {length} geschrieben hast, sind die Zeit einer Schwingung, "
        "nicht von {swings}. Schreib auf, was die Uhr anzeigt, und teile danach, damit alle "
        "nachrechnen können.",
        "Als Periodendauern gelesen ergeben deine Messwerte g = {g_mended}.",
    ),
    "clock_misread": GermanWords(
        "Lies mir Zeichen für Zeichen vor, was die Uhr bei {length} angezeigt hat.",
        "Schau noch einmal, wie deine Uhr Minuten, Sekunden und Hundertstel anzeigt: Die "
        "{time} s, die du bei {length} geschrieben hast, passen zu {time_meant} s.",
        "Richtiggestellt ergeben deine Messwerte g = {g_mended}.",
    ),
    "wide_swing": GermanWords(
        "Wie weit hast du den Pendelkörper vor dem Loslassen ausgelenkt?",
        "Halte den Ausschlag klein: Ein Drittel der Fadenlänge zur Seite ist weit genug. "
        "Deine Periodendauern sind alle um denselben Anteil etwas zu lang, wie es wäre, wenn "
        "du bei etwa {amplitude} zur Senkrechten losgelassen hast.",
    ),
    "mistyped_cell": GermanWords(
        "Was steht in deinen ersten Notizen dort, wo in der Tabelle {typed} steht?",
        "In deiner Tabelle steht einmal {typed}, und {meant} würde zu deinen übrigen Werten "
        "passen. Vergleich mit deinen Notizen.",
        "Mit {meant} ergeben deine Messwerte g = {g_mended}.",
    ),
    "rows_swapped": GermanWords(
        "Welche dieser Zeiten gehört zu {length}, und welche zu {other_length}?",
        "Die Zeiten neben {length} und {other_length} passen umgekehrt: Ein längeres Pendel "
        "braucht länger. Vergleich mit deinen Notizen.",
        "Vertauscht ergeben deine Messwerte g = {g_mended}.",
    ),
    "made_from_formula": GermanWords(
        "Zeig mir, wie du eine Länge gestoppt hast, und deine ersten Notizen.",
        "Deine Zeiten stimmen auf etwa {misfit} s mit der Formel überein, näher als die 0,1 "
        "s, um die eine Hand an der Stoppuhr gewöhnlich schwankt. Erzähl deiner Lehrerin oder "
        "deinem Lehrer, wie du gestoppt hast. Es zählt, was deine Uhr gezeigt hat, auch wenn "
        "es nicht passt.",
    ),
    "made_by_hand": GermanWords(
        "Wie hast du die zweite Zeit zu einer Länge gemessen?",
        "Deine wiederholten Zeiten stimmen auf etwa {misfit} s überein, näher als die 0,1 s, "
        "um die eine Hand an der Stoppuhr gewöhnlich schwankt. Erzähl deiner Lehrerin oder "
        "deinem Lehrer, wie du die zweiten Zeiten gemessen hast. Wiederholungen, die sich "
        "unterscheiden, sind ein gutes Zeichen: Sie zeigen, wie sicher du sein kannst.",
    ),
}

BOTH_MENDED = "Beides richtiggestellt ergeben deine Messwerte g = {g_mended}."
