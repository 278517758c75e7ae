"""The thirty invented learners of the sample class: who they are, and how they went wrong.

Nobody here is real, and neither is the school. Half of the work is honest; each slip
occurs once, in ordinary measure.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field

from markbench.model import Place
from simulation.pictures import Look
from simulation.scenery import Colour

PLACE = Place(52.4, 85.0)
OPENS, CLOSES = dt.date(2026, 3, 2), dt.date(2026, 3, 16)
PARTNERS = (("24108", "24110"),)
COPIED = ("24121", "24124")  # from the second, half of the timings altered

RED: Colour = (178, 62, 60)
BLUE: Colour = (60, 92, 160)
GREEN: Colour = (86, 138, 92)
GOLD: Colour = (204, 160, 62)
PLUM: Colour = (128, 72, 128)
STEEL: Colour = (120, 126, 134)


@dataclass(frozen=True, slots=True)
class Pupil:
    """One learner. ``layout`` names a function of ``sample_layouts``; ``""``: no table.

    ``stem`` begins the names of the pieces: a folder in group 10A, a file name in 10B, a
    zip file in 10C. ``own`` is the learner's own arithmetic: ``""`` none, ``right``, or
    how it is wrong. ``missing`` and ``trouble`` speak of evidence; ``film`` overrides
    fields of the film, ``simulated`` those of the simulation.
    """

    id: str
    name: str
    stem: str
    layout: str
    look: Look
    bob: Colour = RED
    slip: str | None = None
    design: str = "standard"
    support: str = "door"
    own: str = "right"
    missing: tuple[str, ...] = ()
    trouble: dict[str, str] = field(default_factory=dict)
    film: dict[str, object] = field(default_factory=dict)
    simulated: dict[str, object] = field(default_factory=dict)

    @property
    def number(self) -> int:
        """Place in the class list, from 1."""
        return int(self.id) - 24100

    @property
    def group(self) -> str:
        """10A, 10B or 10C."""
        return "10" + "ABC"[(self.number - 1) // 10]


def _p(id_: int, name: str, stem: str, layout: str, look: Look, **more: object) -> Pupil:
    return Pupil(str(id_), name, stem, layout, look, **more)  # type: ignore[arg-type]


PUPILS: tuple[Pupil, ...] = (
    # 10A: a folder for each learner.
    _p(24101, "Amara Okonjo-Vale", "24101 Amara Okonjo-Vale", "titled_xlsx",
       Look(5, 0, "bun"), slip="half_swings", film={"caption": "half_swings", "swings": 5.3},
       simulated={"decimals": 2}),
    _p(24102, "Bartosz Wiłkowicz", "Wiłkowicz, Bartosz", "polish_csv", Look(0, 2, "short"),
       bob=BLUE, design="tall", support="shelf", film={"uneven": True}),
    _p(24103, "Camille Dufrêne", "camille dufrene", "french_csv", Look(0, 3, "long"), bob=PLUM,
       slip="length_to_top", support="table"),
    _p(24104, "Dilnoza Yuldasheva-Reid", "24104", "merged_xlsx", Look(2, 1, "fringe", True),
       bob=GREEN, own="mean_wrong", design="close", film={"swings": 6.2}),
    _p(24105, "Eirik Tandbergsen", "Eirik T", "norwegian_csv", Look(0, 3, "short", True),
       bob=STEEL, slip="count_short", support="shelf", trouble={"setup": "gps"}),
    _p(24106, "Farid Al-Hazimi", "Al Hazimi Farid", "plain_csv", Look(2, 0, "short"), bob=GOLD,
       own="squared_doubled", design="few", support="table"),
    _p(24107, "Giulia Montresori", "GIULIA MONTRESORI", "italian_csv", Look(1, 1, "curls"),
       slip="whole_thread", trouble={"setup": "turned"}, film={"shake_px": 2.0}),
    _p(24108, "Hana Kobayakawa", "Kobayakawa Hana 24108", "wide_xlsx", Look(1, 0, "fringe"),
       bob=BLUE, support="table", simulated={"decimals": 2}),
    _p(24109, "Ignacio Peñaruiz", "penaruiz_ignacio", "spanish_csv", Look(2, 0, "curls"),
       bob=GREEN, slip="wide_swing", film={"uneven": True}),
    _p(24110, "Lim Jia Wen", "Jia Wen Lim", "transposed_ods", Look(1, 0, "long", True), bob=BLUE,
       support="table", simulated={"decimals": 2}),
    # 10B: flat files, the learner in the name.
    _p(24111, "Kwabena Asantewood", "24111", "swings_column_xlsx", Look(5, 0, "short"), bob=GOLD,
       slip="rows_swapped", trouble={"setup": "blank"}),
    _p(24112, "Lea Morgenrath", "Lea Morgenrath", "german_ods", Look(0, 4, "bun", True), bob=PLUM,
       design="low", support="table"),
    _p(24113, "Mateus Carvalhinho", "Mateus_Carvalhinho", "portuguese_csv", Look(3, 1, "short"),
       slip="length_unit", support="shelf", film={"broken": True}, own="",
       simulated={"variant": "inch"}),
    _p(24114, "Nurul Aisyah binti Zulfahmi", "NURUL AISYAH", "malay_xlsx", Look(2, 0, "scarf"),
       bob=GREEN, missing=("swing_video",), simulated={"timings": 1}),
    _p(24115, "Oisín Mac Giollabhain", "Mac Giollabhain, Oisin", "stopwatch_xlsx",
       Look(0, 4, "short"), bob=STEEL, slip="one_timing_miscounted", support="table", own="",
       simulated={"decimals": 2}),
    _p(24116, "Priya Venkataswarna", "Venkataswarna Priya", "units_in_cells_xlsx",
       Look(3, 0, "long"), bob=GOLD, design="mixed", support="shelf"),
    _p(24117, "Trần Quỳnh Anh", "Tran Quynh Anh", "notes_below_xlsx", Look(1, 0, "bun", True),
       bob=BLUE, slip="mistyped_cell", film={"uneven": True},
       simulated={"variant": "point", "decimals": 2}),
    _p(24118, "Roos van der Achterveld", "r van der achterveld", "dutch_csv", Look(0, 3, "fringe"),
       bob=PLUM, design="tall", support="shelf", trouble={"setup": "dark"},
       simulated={"swings": 5}),
    _p(24119, "Siddharth Mukhopadhyar", "siddharth mukhopadhyar", "", Look(3, 0, "curls", True),
       bob=RED, missing=("readings",), trouble={"selfie": "blurred"}, support="table"),
    _p(24120, "Tilda Björkenhielm", "Bjoerkenhielm Tilda", "two_sheets_xlsx", Look(0, 2, "long"),
       bob=GREEN, slip="made_from_formula", missing=("selfie",), simulated={"decimals": 2}),
    # 10C: a zip file for each learner, and a sheet that three of them filled in together.
    _p(24121, "Umut Karadenizli", "karadenizli umut", "utf16_txt", Look(2, 1, "short"), bob=STEEL,
       slip="copied", support="table", own=""),
    _p(24122, "Valentina Cruzeta", "24122_Valentina_Cruzeta", "gaps_xlsx", Look(2, 1, "curls"),
       bob=GOLD, slip="period_as_total", trouble={"setup": "of 24117"}, own=""),
    _p(24123, "Wiremu Tāmatirangi", "Wiremu Tamatirangi", "broken_xlsx", Look(3, 0, "fringe"),
       bob=RED, support="shelf", film={"rotated": True, "size": (360, 480)}),
    _p(24124, "Xiomara Delacourt", "Delacourt X", "hundredths_csv", Look(4, 0, "curls"), bob=BLUE,
       own="", film={"uneven": True}, simulated={"decimals": 2}),
    _p(24125, "Yusuf Adeyinkole", "Adeyinkole Yusuf", "long_txt", Look(5, 0, "short", True),
       bob=GREEN, slip="clock_misread", design="tall", own="",
       simulated={"variant": "run_together"}),
    _p(24126, "Zofia Brzezinkowa", "zofia.brzezinkowa", "millimetres_xlsx", Look(0, 2, "bun"),
       bob=PLUM, slip="length_to_bottom", support="table", film={"swings": 8.2}),
    _p(24127, "Chidi Nwachukwuma", "24127 Chidi Nwachukwuma", "class_sheet", Look(4, 0, "short"),
       slip="count_over", own="", support="shelf", simulated={"decimals": 1}),
    _p(24128, "Sara Lindqvall", "Lindqvall Sara", "class_sheet", Look(0, 3, "long"), bob=BLUE,
       missing=("setup_photo",), own=""),
    _p(24129, "Sarah Lindvall", "Lindvall, Sarah", "bare_csv", Look(1, 2, "fringe", True),
       bob=GREEN, own="", support="table", trouble={"setup": "old"}, simulated={"decimals": 1}),
    _p(24130, "Tomos Gwynfryn-Pugh", "gwynfryn-pugh tomos", "class_sheet", Look(0, 1, "curls"),
       bob=STEEL, slip="made_by_hand", own="", trouble={"selfie": "small"},
       simulated={"decimals": 2}),
)  # fmt: skip
