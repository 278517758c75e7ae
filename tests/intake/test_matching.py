"""Hard names: what must match, and what must stay in doubt. All names are invented."""

from __future__ import annotations

import unicodedata

import pytest

from markbench.intake.matching import Judgement, Matcher
from markbench.intake.owners import owner_of
from markbench.model import Learner

CLASS = (
    Learner("0012", "James Okafor"),
    Learner("0013", "Mary Okafor"),
    Learner("0014", "Nur Aisyah binti Rahman"),
    Learner("0015", "Jörg Müller"),
    Learner("0016", "Siân O'Brien"),
    Learner("0017", "Li Wei"),
    Learner("0018", "Wei Li"),
    Learner("0019", "Łukasz Wiśniewski"),
    Learner("S-20", "Søren Kjær"),
    Learner("0021", "Anne-Marie Lefèvre"),
    Learner("0022", "Bob Ndlovu"),
    Learner("0023", "Marta Kowalska"),
    Learner("0024", "Marta Kowalski"),
    Learner("0025", "Chidi McDonald"),
    Learner("0026", "José Antonio García Pérez"),
    Learner("0027", "Suharto"),
    Learner("0028", "Ana Silva"),
    Learner("0029", "Ana Silva Costa"),
    Learner("0030", "Gül Çelik"),
    Learner("0031", "Strauß Emil"),
    Learner("0032", "Þóra Guðmundsdóttir"),
    Learner("0033", "Nguyễn Thị Đào"),
    Learner("0034", "Vincent van der Berg"),
    Learner("0035", "Amina Yusuf"),
    Learner("0036", "Aisha Yusuf"),
    Learner("0037", "田中 さくら"),
    Learner("0038", "Дмитро Коваль"),
    Learner("0039", "Grace Adeyemi"),
    Learner("0040", "Arjun a/l Subramaniam"),
    Learner("0041", "Priya Long"),
)
MATCHER = Matcher(CLASS)

CLEAR = {
    # order of names, separators, case, what the piece is
    "James Okafor": "0012",
    "OKAFOR, JAMES": "0012",
    "okafor_james_readings": "0012",
    "readings-James-Okafor-final": "0012",
    "OkaforJamesReadings": "0012",
    "jamesokafor": "0012",
    # initials
    "J. Okafor": "0012",
    "okafor_j": "0012",
    "okaforj pendulum": "0012",
    "mokafor": "0013",
    "Bob N": "0022",
    # accents, letters that no decomposition reaches, umlauts spelt out
    "Jorg Muller": "0015",
    "mueller_joerg": "0015",
    "Lukasz Wisniewski": "0019",
    "soren kjaer": "S-20",
    "Emil Strauss": "0031",
    "Thora Gudmundsdottir": "0032",
    "nguyen thi dao": "0033",
    "Gul Celik": "0030",
    unicodedata.normalize("NFD", "José García Pérez"): "0026",
    # apostrophes, hyphens, capitals within names, particles
    "Sian OBrien": "0016",
    "O Brien Sian": "0016",
    "O’Brien, Siân": "0016",
    "annemarie lefevre": "0021",
    "Anne Marie Lefevre": "0021",
    "mcdonald chidi": "0025",
    "ChidiMcDonald": "0025",
    "vincent berg": "0034",
    "van der Berg V": "0034",
    "Nur Aisyah": "0014",
    "arjun subramaniam": "0040",
    # other scripts
    "さくら 田中": "0037",
    "Коваль Дмитро": "0038",
    # part of a long name; a single name; a part that nobody else bears
    "Jose Garcia": "0026",
    "suharto_table": "0027",
    "Adeyemi readings": "0039",
    "Chidi": "0025",
    # small misspellings
    "James Okafr": "0012",
    "wisniewsky lukas": "0019",
    "Nur Aisya Rahman": "0014",
    "Grace Adeyimi": "0039",
    # exact wins over nearly
    "Marta Kowalski": "0024",
    "Ana Silva Costa": "0029",
    # ids
    "0012": "0012",
    "0017 readings": "0017",
    "readings_0018": "0018",
    "S20": "S-20",
    "s-20_setup": "S-20",
    "12 table": "0012",
    # an id settles what the name cannot
    "0017 Li Wei": "0017",
    "0036 Yusuf": "0036",
}

DOUBTFUL = {
    "Okafor": {"0012", "0013"},  # a shared surname only
    "Yusuf A": {"0035", "0036"},  # two with the same initial
    "yusuf readings": {"0035", "0036"},
    "li wei": {"0017", "0018"},  # either order is somebody
    "wei_li_table": {"0017", "0018"},
    "Marta": {"0023", "0024"},
    "Marta Kowalske": {"0023", "0024"},  # a letter from both
    "Ana Silva": {"0028", "0029"},  # whole name, or first half of a longer one
    "James Okafor and Mary Okafor": {"0012", "0013"},
    "Daniel Okafor": {"0012", "0013"},  # a stranger with a known surname
    "Bob": {"0022"},  # the bob of the pendulum?
    "long pendulum": {"0041"},  # a long pendulum, or Priya Long?
    "0012 Mary Okafor": {"0012", "0013"},  # id and name disagree
    "Grace Kowalska": {"0023", "0039"},
    "JO": {"0012"},  # initials only
    "abc0012": {"0012"},
}

NOBODY = (
    "readings 2012",  # 12 must not be found in 2012
    "readings 120",
    "setup photo",
    "IMG_0012",  # the camera's number
    "WhatsApp Image 0012",
    "pendulum v2 (1)",
    "notes to oj self",  # a sentence's short words are no initials
    "10 swings",
    "Zebedee Quux",
    "",
    "___",
)


def _ids(judgement: Judgement) -> set[str]:
    return {match.learner for match in judgement.candidates}


@pytest.mark.parametrize(("text", "learner"), CLEAR.items())
def test_clear_names_find_their_learner(text: str, learner: str) -> None:
    judgement = MATCHER.judge(text)
    assert judgement.clear, judgement
    assert judgement.best.learner == learner
    assert judgement.best.why
    assert judgement.best.score >= 80


@pytest.mark.parametrize(("text", "learners"), DOUBTFUL.items())
def test_doubtful_names_are_left_to_the_teacher(text: str, learners: set[str]) -> None:
    judgement = MATCHER.judge(text)
    assert not judgement.clear, judgement
    assert learners <= _ids(judgement)
    assert judgement.why


@pytest.mark.parametrize("text", NOBODY)
def test_what_names_nobody_matches_nobody(text: str) -> None:
    assert MATCHER.judge(text).candidates == ()


def test_a_name_that_begins_anothers_is_left_to_the_teacher() -> None:
    matcher = Matcher(
        [Learner("1", "Leonie Brandt"), Learner("2", "Leo Brandtner"), Learner("3", "Ada Mbeki")]
    )
    for text, learners in (("brandt table", {"1", "2"}), ("leo readings", {"1", "2"})):
        judgement = matcher.judge(text)
        assert not judgement.clear, text
        assert _ids(judgement) == learners
    assert "short for" in judgement.candidates[1].why
    # Anything more that is said settles it, and nobody else is asked about.
    for text, learner in (
        ("brandtner table", "2"), ("l_brandt", "1"), ("leo brandtner", "2"), ("1 brandt", "1"),
        ("mbeki", "3"), ("leonie", "1"),
    ):  # fmt: skip
        assert matcher.judge(text).clear, text
        assert matcher.judge(text).best.learner == learner


def test_short_ids_need_boundaries_and_company() -> None:
    matcher = Matcher(
        [Learner("7", "Ada Mbeki"), Learner("12", "Ravi Rao"), Learner("04", "Eva Lund")]
    )
    assert matcher.judge("12").best.learner == "12"
    assert matcher.judge("12_readings").clear
    assert matcher.judge("readings 04").best.learner == "04"
    assert not matcher.judge("photo 7").clear
    assert not matcher.judge("photo 12").clear
    assert matcher.judge("2012 class").candidates == ()
    assert matcher.judge("table 7 swings").candidates == ()


def test_two_learners_of_one_name_need_the_id() -> None:
    matcher = Matcher([Learner("1A", "Kim Min-ji"), Learner("1B", "Kim Min-ji")])
    assert not matcher.judge("Kim Min-ji").clear
    assert matcher.judge("1B Kim Min-ji").best.learner == "1B"


def test_rows_of_a_sheet() -> None:
    assert MATCHER.judge_row("0035", "A. Yusuf").best.learner == "0035"
    assert MATCHER.judge_row("35", "").best.learner == "0035"
    assert not MATCHER.judge_row("", "Yusuf").clear
    assert not MATCHER.judge_row("0035", "Grace Adeyemi").clear
    assert MATCHER.judge_row("", "").candidates == ()


def test_evidence_says_what_was_seen() -> None:
    why = MATCHER.judge("okafr james").best.why
    assert "James Okafor" in why
    assert "1 letter different" in why
    assert "initial J" in MATCHER.judge("J. Okafor").best.why
    assert "0017" in MATCHER.judge("0017 readings").best.why


def test_the_folder_owns_what_is_in_it() -> None:
    found = owner_of(MATCHER, ("10B submissions", "James Okafor"), "readings")
    assert found.best.learner == "0012"
    assert found.best.by == "folder"
    # A word or a lone first name on a file does not contradict the folder ...
    assert owner_of(MATCHER, ("James Okafor",), "grace").best.learner == "0012"
    assert owner_of(MATCHER, ("James Okafor",), "bob photo").clear
    # ... a whole name does.
    clash = owner_of(MATCHER, ("James Okafor",), "Grace Adeyemi readings")
    assert not clash.clear
    assert _ids(clash) == {"0012", "0039"}


def test_numbered_pictures_in_a_folder_are_not_ids() -> None:
    matcher = Matcher(
        [Learner("1", "Ada Mbeki"), Learner("2", "Ravi Rao"), Learner("3", "Tia Rao")]
    )
    assert owner_of(matcher, ("Ada Mbeki",), "2").best.learner == "1"
    assert not owner_of(matcher, ("Rao",), "1").clear
    assert owner_of(matcher, (), "2").best.learner == "2"


def test_file_name_settles_a_doubtful_folder() -> None:
    assert owner_of(MATCHER, ("Okafor",), "Mary readings").best.learner == "0013"
    assert not owner_of(MATCHER, ("Okafor",), "readings").clear
    assert not owner_of(MATCHER, ("Okafor",), "Chidi").clear


def test_a_teacher_s_folder_round_the_class_does_not_own_it() -> None:
    found = owner_of(MATCHER, ("Mr Adeyemi's class", "James Okafor"), "readings")
    assert found.best.learner == "0012"


# November, 11 seconds past: number 11 of a class list has no part in any of them.
TAKEN_ON_THE_DAY = (
    "WhatsApp Image 2026-11-20 at 19.03.11",
    "WhatsApp Image 2026-11-20 at 7.03.11 PM (1)",
    "WhatsApp Video 2026-11-20 at 19.05.11",
    "WhatsApp Bild 2026-11-20 um 19.03.11",
    "Image WhatsApp 2026-11-20 à 19.03.11",
    "Imagen de WhatsApp 2026-11-20 a las 19.03.11",
    "Immagine WhatsApp 2026-11-20 ore 19.03.11",
    "Imagem do WhatsApp de 2026-11-20 à(s) 19.03.11",
    "Gambar WhatsApp 2026-11-20 pukul 19.03.11",
    "WhatsApp-afbeelding 2026-11-20 om 19.03.11",
    "Zdjęcie WhatsApp 2026-11-20 o 19.03.11",
    "WhatsApp Bilde 2026-11-20 kl. 19.03.11",
    "Screenshot 2026-11-20 at 19.03.11",
    "Bildschirmfoto 2026-11-20 um 19.03.11",
    "Capture d’écran 2026-11-20 à 19.03.11",
    "Photo on 20-11-2026 at 7.11 PM",
    "Foto 20.11.26, 19 03 11",
    "2026-11-20 19.03.11",
    "20261120_190311",
    "signal-2026-11-20-19-03-11-123",
    "11/20/2026",
    "20 November 2026",
    "Nov 11, 2026",
    "Pendel 20.11.",
    "FullSizeRender 11",
    "Bild 11",
)


@pytest.mark.parametrize("text", TAKEN_ON_THE_DAY)
def test_days_and_times_of_day_are_no_ids(text: str) -> None:
    matcher = Matcher(
        [Learner("3", "Ravi Rao"), Learner("7", "Eva Lund"), Learner("11", "Ada Mbeki"),
         Learner("20", "Tia Okoro")]
    )  # fmt: skip
    assert matcher.judge(text).candidates == ()
    # The folder owns the picture, and a number apart from day and time is still an id.
    assert owner_of(matcher, ("Tia Okoro",), text).best.learner == "20"
    assert matcher.judge(f"11_{text}").best.learner == "11"


def test_numbers_beside_a_day_are_ids() -> None:
    matcher = Matcher([Learner("07", "Eva Lund"), Learner("12", "Ada Mbeki")])
    for text, learner in (
        ("12 table 2026-11-20", "12"), ("2026-11-20 07 readings", "07"), ("07.1", "07"),
        ("2026_11_20_12_results", "12"), ("Mbeki 2026-11-07", "12"), ("12 readings 7.12.26", "12"),
    ):  # fmt: skip
        judgement = matcher.judge(text)
        assert judgement.clear, text
        assert judgement.best.learner == learner


def test_a_list_of_first_names_and_initials() -> None:
    matcher = Matcher(
        [Learner("01", "Edeltraud O"), Learner("02", "Edeltraud P."), Learner("03", "Kai O"),
         Learner("04", "Bob E"), Learner("05", "Edeltraud Otter")]
    )  # fmt: skip
    for text, learner in (
        ("Edeltraud O", "01"), ("edeltraud_o readings", "01"), ("O, Edeltraud", "01"),
        ("EdeltraudO", "01"), ("Edeltraud P", "02"), ("kai o", "03"), ("bob e", "04"),
        ("Edeltraud Otter", "05"), ("Kai", "03"),
    ):  # fmt: skip
        judgement = matcher.judge(text)
        assert judgement.clear, (text, judgement)
        assert judgement.best.learner == learner
    for text in ("Edeltraud", "Bob", "O readings"):
        assert not matcher.judge(text).clear, text
