"""The words of what is given to learners before they start, by the language of the feedback.

A language without an entry gets English. The cautions are general ones (common practice, no
source) and say themselves that the school's rules come first.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from markbench.export.moderated import STEPS, STEPS_DE, StepWords
from markbench.model import Words


@dataclass(frozen=True, slots=True)
class TaskWords:
    """One language. Braces are filled where they are used."""

    language: str
    said: StepWords  # months, and how a number and a date are said
    date: str
    weekdays: tuple[str, ...]
    numbers: tuple[str, ...]
    times: str
    twice: str
    as_long: str
    variables: Words
    # the table
    length: str
    swings: str
    time: tuple[str, str]  # of a number of swings, and of as many as stand beside it
    timing: str
    note: str
    length_title: str
    length_prompt: str
    time_title: str
    time_prompt: tuple[str, str]
    swings_title: str
    swings_prompt: str
    wrong: str
    wrong_count: str
    table_name: str
    # the sheet
    dates: tuple[str, str, str]
    who: tuple[str, str]
    headings: tuple[str, ...]
    question: tuple[str, str]
    set_up: tuple[str, str, str]
    height: str
    lengths: str
    such_as: str
    timing_steps: tuple[str, str, str]
    also: str
    or_: str
    again: str
    once: str
    go_on: str
    table: str
    own_table: str
    pieces: dict[str, str]
    named: str
    late: tuple[str, str]  # one mark, and any other number of them
    care: tuple[str, ...]
    defer: str
    yourself: str
    pictures: tuple[str, ...]
    drawing: tuple[str, str, str]
    point: str = "."  # before the decimals of a number

    def day(self, day: dt.date) -> str:
        """A date with its weekday."""
        return self.date.format(weekday=self.weekdays[day.weekday()], day=self.said.said_day(day))

    def count(self, number: int) -> str:
        """A small number as a word."""
        return self.numbers[number] if number < len(self.numbers) else str(number)

    def so_often(self, number: int) -> str:
        """How many times."""
        return self.twice if number == 2 else self.times.format(n=self.count(number))

    def ratio(self, ratio: float) -> str:
        """How many times as long."""
        return self.twice if ratio == 2 else self.as_long.format(n=self.number(ratio))

    def number(self, value: float) -> str:
        """A number as the language writes it."""
        return f"{value:g}".replace(".", self.point)


EN = TaskWords(
    language="en",
    said=STEPS,
    date="{weekday} {day}",
    weekdays=("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"),
    numbers=("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"),
    times="{n} times",
    twice="twice",
    as_long="{n} times",
    variables=Words(),
    length="Length / cm",
    swings="Swings timed",
    time=("Time of {n} swings", "Time"),
    timing="{time}, timing {i}",
    note="Type numbers only, as you read them. Length: from the underside of the support to the "
    "middle of the bob. A swing is there and back again.",
    length_title="Length in centimetres",
    length_prompt="From the underside of the support to the middle of the bob.",
    time_title="Time in seconds",
    time_prompt=("The stopwatch reading for {n} swings, all of it.",
                 "The stopwatch reading for all the swings timed."),
    swings_title="Complete swings in one timing",
    swings_prompt="There and back again is one. Change it where you timed another number.",
    wrong="Only a number from {low} to {high} ({unit}), without the unit.",
    wrong_count="One of these numbers: {counts}.",
    table_name="Readings",
    dates=("From {opens} to {closes}.", "Hand in by {closes}.", "From {opens}."),
    who=("Name", "Class"),
    headings=("What you are finding out", "Take care", "Set it up", "Time it", "Your readings",
              "Hand in", "Your pictures"),
    question=(
        "How does the time of one swing depend on the length of the pendulum?",
        "The length is your {independent}: you choose it. The time is your {dependent}: you "
        "measure it. Everything else is a {controlled} and stays the same from start to end: the "
        "same bob, the same thread, pulled aside by the same small amount.",
    ),
    set_up=(
        "Find something small and heavy for a bob (a nut, a key, a lump of modelling clay) and "
        "a thin thread that does not stretch.",
        "Tie the thread to a support that stays still{height}. The bob must swing freely and "
        "touch nothing.",
        "Measure the length from the underside of the support, where the thread begins to move, "
        "to the <strong>middle of the bob</strong>. Measure with the bob hanging. Do not stop at "
        "the knot or at the top of the bob.",
    ),
    height=" about {cm:.0f} cm above the floor",
    lengths="Use <strong>{count} different lengths</strong> between {low} cm and {high} cm, "
    "evenly spread. The longest is at least {ratio} the shortest.",
    such_as=" For example {lengths} cm.",
    timing_steps=(
        "Pull the bob a little to one side (about a hand’s breadth for a long pendulum, two "
        "fingers for a short one) and let go without a push. It must swing in one line, not in "
        "a circle.",
        "Let it swing a few times first. One swing is <strong>there and back again</strong>: the "
        "bob is at the same place and moving the same way.",
        "Start the stopwatch as the bob passes and say <strong>“nought”</strong>, not “one”. "
        "Count one at the end of the first swing, and stop at <strong>{swings}</strong>{also}.",
    ),
    also=" ({others} will do too; write down which)",
    or_=" or ",
    again="Do it <strong>{times}</strong> at each length, starting afresh, and write down each "
    "time. Do not change a time because it looks wrong: time it again and keep both.",
    once="Write down the time at once, before you change the length.",
    go_on="Change the length, and nothing else, and go on.",
    table="Write each reading down as you take it, with all its decimals. If you were given a "
    "table for the computer, type the same numbers there.",
    own_table="<strong>Your table of readings</strong>: the raw times as well as what you work "
    "out.",
    pieces={
        "setup_photo": "<strong>A photo of your set-up</strong>: support, thread, bob and ruler, "
        "all in one picture and sharp.",
        "selfie": "<strong>A photo of you with your set-up</strong>, so that it is plain whose "
        "work it is.",
        "photo": "<strong>A photo</strong> of your work.",
        "swing_video": "<strong>A video of {swings} complete swings</strong> at one of your "
        "lengths. Stand the phone still, square to the swing, and have the support and the bob "
        "in the picture all the time. Say the length at the start or write it on paper.",
        "report": "<strong>Your report</strong>.",
    },
    named="Put your name in the name of every file.",
    late=(
        "After the last day {n} mark is taken off for each day. Ask before then if you need "
        "longer.",
        "After the last day {n} marks are taken off for each day. Ask before then if you need "
        "longer.",
    ),
    care=(
        "A swinging weight can hit. Use a bob that you could catch with one hand, and keep "
        "faces, small children and animals out of its way.",
        "Stay clear of glass, screens, lamps, hot things and traffic.",
        "Do not stand on chairs, stools or tables to reach a support. Choose a lower one, or ask "
        "a grown-up to tie the thread for you.",
        "Pull gently on the support before you trust it. Shelves, rails and lamps can come down.",
        "Tape can lift paint, varnish and paper. Ask first, and try it where it does not show.",
        "Take thread, tape and clay away when you have finished.",
    ),
    defer="Your school’s own rules and the safety code where you live come before this sheet. If "
    "you cannot do something safely, stop and tell your teacher: you will be shown another way.",
    yourself="Before you take a picture of yourself, ask a parent or carer. If you or they would "
    "rather not, tell your teacher; your hand and your name on paper can stand for your face.",
    pictures=(
        "Nobody else belongs in the picture unless they said yes. Look at the background: no "
        "address, no letters, no family photos.",
        "Send the files only in the way your teacher told you. Do not post them anywhere.",
        "Your school keeps them only for as long as its rules for marking say, where only those "
        "who mark can see them. You may ask what is kept and when it is deleted.",
    ),
    drawing=(
        "A pendulum. Its length is measured from the underside of the support to the middle of "
        "the bob. One swing is there and back again.",
        "length",
        "one swing: there and back",
    ),
)  # fmt: skip

DE = TaskWords(
    language="de",
    point=",",
    said=STEPS_DE,
    date="{weekday}, {day}",
    weekdays=("Montag", "Dienstag", "Mittwoch", "Donnerstag", "Freitag", "Samstag", "Sonntag"),
    numbers=("keine", "eine", "zwei", "drei", "vier", "fünf", "sechs", "sieben", "acht", "neun",
             "zehn"),
    times="{n}mal",
    twice="zweimal",
    as_long="{n}-mal",
    variables=Words("unabhängige Größe", "abhängige Größe", "gleich gehaltene Größe"),
    length="Länge / cm",
    swings="Gezählte Schwingungen",
    time=("Zeit für {n} Schwingungen", "Zeit"),
    timing="{time}, Messung {i}",
    note="Nur Zahlen eintippen, wie abgelesen. Länge: von der Unterseite der Aufhängung bis zur "
    "Mitte des Pendelkörpers. Eine Schwingung ist einmal hin und zurück.",
    length_title="Länge in Zentimetern",
    length_prompt="Von der Unterseite der Aufhängung bis zur Mitte des Pendelkörpers.",
    time_title="Zeit in Sekunden",
    time_prompt=("Die gestoppte Zeit für {n} Schwingungen zusammen.",
                 "Die gestoppte Zeit für alle gezählten Schwingungen zusammen."),
    swings_title="Ganze Schwingungen in einer Messung",
    swings_prompt="Einmal hin und zurück ist eine. Ändere die Zahl, wo du anders gezählt hast.",
    wrong="Nur eine Zahl von {low} bis {high} ({unit}), ohne die Einheit.",
    wrong_count="Eine dieser Zahlen: {counts}.",
    table_name="Messwerte",
    dates=("Von {opens} bis {closes}.", "Abzugeben bis {closes}.", "Ab {opens}."),
    who=("Name", "Klasse"),
    headings=("Was du herausfindest", "Gib acht", "Aufbauen", "Stoppen", "Deine Messwerte",
              "Abgeben", "Deine Bilder"),
    question=(
        "Wie hängt die Dauer einer Schwingung von der Länge des Pendels ab?",
        "Die Länge ist deine {independent}: Du wählst sie. Die Zeit ist deine {dependent}: Du "
        "misst sie. Alles andere ist eine {controlled} und bleibt von Anfang bis Ende gleich: "
        "derselbe Pendelkörper, derselbe Faden, um dasselbe kleine Stück ausgelenkt.",
    ),
    set_up=(
        "Such etwas Kleines und Schweres als Pendelkörper (eine Schraubenmutter, einen "
        "Schlüssel, eine Kugel Knetmasse) und einen dünnen Faden, der sich nicht dehnt.",
        "Binde den Faden an eine Aufhängung, die sich nicht bewegt{height}. Der Pendelkörper muss "
        "frei schwingen und darf nichts berühren.",
        "Miss die Länge von der Unterseite der Aufhängung, wo der Faden sich zu bewegen beginnt, "
        "bis zur <strong>Mitte des Pendelkörpers</strong>. Miss, während er hängt. Hör nicht "
        "beim Knoten oder an der Oberseite des Pendelkörpers auf.",
    ),
    height=", etwa {cm:.0f} cm über dem Boden",
    lengths="Nimm <strong>{count} verschiedene Längen</strong> zwischen {low} cm und {high} "
    "cm, gleichmäßig verteilt. Die größte ist mindestens {ratio} so lang wie die kleinste.",
    such_as=" Zum Beispiel {lengths} cm.",
    timing_steps=(
        "Zieh den Pendelkörper ein wenig zur Seite (bei einem langen Pendel etwa eine "
        "Handbreit, bei einem kurzen zwei Finger) und lass ihn ohne Anstoß los. Er muss auf "
        "einer Linie schwingen, nicht im Kreis.",
        "Lass ihn zuerst ein paarmal schwingen. Eine Schwingung ist <strong>einmal hin und "
        "zurück</strong>: Der Pendelkörper ist an derselben Stelle und bewegt sich in dieselbe "
        "Richtung.",
        "Starte die Stoppuhr, wenn der Pendelkörper vorbeikommt, und sag dabei "
        "<strong>„null“</strong>, nicht „eins“. Zähl am Ende der ersten Schwingung eins und "
        "stopp bei <strong>{swings}</strong>{also}.",
    ),
    also=" ({others} gehen auch; schreib auf, wie viele)",
    or_=" oder ",
    again="Mach das bei jeder Länge <strong>{times}</strong>, jedes Mal von vorn, und schreib "
    "jede Zeit auf. Ändere keine Zeit, weil sie falsch aussieht: Stopp noch einmal und behalte "
    "beide.",
    once="Schreib die Zeit sofort auf, bevor du die Länge änderst.",
    go_on="Ändere die Länge und sonst nichts, und mach weiter.",
    table="Schreib jeden Messwert gleich auf, mit allen Nachkommastellen. Falls du eine Tabelle "
    "für den Rechner bekommen hast, tipp dort dieselben Zahlen ein.",
    own_table="<strong>Deine Messtabelle</strong>: die gestoppten Zeiten und was du daraus "
    "ausrechnest.",
    pieces={
        "setup_photo": "<strong>Ein Foto deines Aufbaus</strong>: Aufhängung, Faden, "
        "Pendelkörper und Lineal, alles auf einem Bild und scharf.",
        "selfie": "<strong>Ein Foto von dir mit deinem Aufbau</strong>, damit klar ist, wessen "
        "Arbeit es ist.",
        "photo": "<strong>Ein Foto</strong> deiner Arbeit.",
        "swing_video": "<strong>Ein Video von {swings} ganzen Schwingungen</strong> bei einer "
        "deiner Längen. Stell das Telefon fest auf, quer zur Schwingung, und hab Aufhängung und "
        "Pendelkörper die ganze Zeit im Bild. Sag am Anfang die Länge oder schreib sie auf "
        "einen Zettel.",
        "report": "<strong>Dein Bericht</strong>.",
    },
    named="Schreib deinen Namen in den Namen jeder Datei.",
    late=(
        "Nach dem letzten Tag wird für jeden Tag {n} Punkt abgezogen. Frag vorher, wenn du "
        "länger brauchst.",
        "Nach dem letzten Tag werden für jeden Tag {n} Punkte abgezogen. Frag vorher, wenn du "
        "länger brauchst.",
    ),
    care=(
        "Ein schwingendes Gewicht kann treffen. Nimm einen Pendelkörper, den du mit einer Hand "
        "fangen könntest, und halte Gesichter, kleine Kinder und Tiere aus seinem Weg.",
        "Bleib weg von Glas, Bildschirmen, Lampen, Heißem und vom Verkehr.",
        "Steig nicht auf Stühle, Hocker oder Tische, um an eine Aufhängung zu kommen. Nimm eine "
        "niedrigere oder bitte jemand Erwachsenes, den Faden für dich festzubinden.",
        "Zieh vorsichtig an der Aufhängung, bevor du ihr traust. Regale, Stangen und Lampen "
        "können herunterkommen.",
        "Klebeband kann Farbe, Lack und Tapete abziehen. Frag zuerst und probier es, wo man es "
        "nicht sieht.",
        "Räum Faden, Klebeband und Knetmasse weg, wenn du fertig bist.",
    ),
    defer="Die Regeln deiner Schule und die Sicherheitsvorschriften an deinem Ort gehen diesem "
    "Blatt vor. Wenn du etwas nicht sicher tun kannst, hör auf und sag es deiner Lehrerin oder "
    "deinem Lehrer: Man zeigt dir einen anderen Weg.",
    yourself="Bevor du ein Bild von dir machst, frag deine Eltern oder wer für dich sorgt. Wenn "
    "du oder sie es lieber nicht wollen, sag es deiner Lehrerin oder deinem Lehrer; deine Hand "
    "und dein Name auf einem Zettel können für dein Gesicht stehen.",
    pictures=(
        "Niemand sonst gehört ins Bild, außer er oder sie hat ja gesagt. Sieh auf den "
        "Hintergrund: keine Adresse, keine Briefe, keine Familienfotos.",
        "Schick die Dateien nur auf dem Weg, der dir gesagt wurde. Stell sie nirgends ein.",
        "Deine Schule behält sie nur so lange, wie ihre Regeln für die Bewertung sagen, und nur "
        "wer bewertet, kann sie sehen. Du darfst fragen, was aufbewahrt und wann es gelöscht "
        "wird.",
    ),
    drawing=(
        "Ein Pendel. Seine Länge wird von der Unterseite der Aufhängung bis zur Mitte des "
        "Pendelkörpers gemessen. Eine Schwingung ist einmal hin und zurück.",
        "Länge",
        "eine Schwingung: hin und zurück",
    ),
)  # fmt: skip

_BY_LANGUAGE = {words.language: words for words in (EN, DE)}
LANGUAGES = tuple(_BY_LANGUAGE)
"""What learners can be written to in."""


def task_words(language: str) -> TaskWords:
    """The words of a language tag; English where there are none."""
    return _BY_LANGUAGE.get(language.split("-")[0].lower(), EN)
