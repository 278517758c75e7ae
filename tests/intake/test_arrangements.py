"""Any arrangement of the same pieces is the same class; no tree ever raises."""

from __future__ import annotations

import string
import unicodedata
from collections.abc import Mapping
from pathlib import Path

import pytest
from class_folders import TABLE, fill, zipped
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from markbench.intake.class_list import read_class_list
from markbench.intake.folder import read_class
from markbench.intake.tree import walk
from markbench.model import ClassWork

# Invented names; no two share a part.
NAMES = {
    "0101": "José García",
    "0102": "Siân O'Brien",
    "0103": "Łucja Wiśniewska",
    "0104": "Nur Aisyah",
    "0105": "Chidi McDonald",
}
LIST = "id,name\n" + "".join(f"{key},{name}\n" for key, name in NAMES.items())
PIECES = {"readings": ("readings.csv", TABLE), "setup_photo": ("setup.jpg", "s"),
          "selfie": ("selfie.jpg", "m"), "swing_video": ("clip.mp4", "v")}  # fmt: skip


def without_accents(text: str) -> str:
    text = text.replace("Ł", "L").replace("ł", "l")
    parts = unicodedata.normalize("NFKD", text)
    return "".join(letter for letter in parts if not unicodedata.combining(letter))


@st.composite
def spelt(draw: st.DrawFn, learner: str) -> str:
    given, surname = NAMES[learner].split(" ")
    order = draw(st.sampled_from(["{g} {s}", "{s} {g}", "{s}, {g}", "{g}_{s}", "{s}-{g}",
                                  "{i} {g} {s}", "{i}", "{i}_{s}"]))  # fmt: skip
    text = order.format(g=given, s=surname, i=learner)
    if draw(st.booleans()):
        text = without_accents(text)
    text = unicodedata.normalize(draw(st.sampled_from(["NFC", "NFD"])), text)
    return draw(st.sampled_from([str, str.lower, str.upper]))(text)


@st.composite
def arrangement(draw: st.DrawFn) -> Mapping[str, str | bytes]:
    files: dict[str, str | bytes] = {}
    shared: dict[str, str | bytes] = {}
    for learner in NAMES:
        way = draw(
            st.sampled_from(["folder", "flat", "zip", "class zip", "flat class zip", "nested"])
        )
        name = draw(spelt(learner))
        if way == "folder":
            files |= {f"{name}/{file}": data for file, data in PIECES.values()}
        elif way == "flat":
            files |= {f"{name} {file}": data for file, data in PIECES.values()}
        elif way == "zip":
            files[f"{name}.zip"] = zipped(dict(PIECES.values()))
        elif way == "class zip":
            shared |= {f"{name}/{file}": data for file, data in PIECES.values()}
        elif way == "flat class zip":
            shared |= {f"{name} {file}": data for file, data in PIECES.values()}
        else:
            shared[f"{name}.zip"] = zipped(dict(PIECES.values()))
    if shared:
        files["submissions.zip"] = zipped(shared)
    return {"class_list.csv": LIST, **files}


def essence(work: ClassWork) -> dict[str, object]:
    return {
        key: (
            sorted(piece.kind for piece in item.pieces),
            item.earlier,
            item.table
            and [
                (r.length_m, r.swings, tuple(t.time_s for t in r.timings))
                for r in item.table.readings
            ],
        )
        for key, item in work.portfolios.items()
    }


@settings(max_examples=30, deadline=None, derandomize=True)
@given(files=arrangement())
def test_any_arrangement_gives_the_same_portfolios(
    tmp_path_factory: pytest.TempPathFactory, files: Mapping[str, str | bytes]
) -> None:
    plain = {"class_list.csv": LIST} | {
        f"{learner}/{file}": data for learner in NAMES for file, data in PIECES.values()
    }
    expected = essence(read_class(fill(tmp_path_factory.mktemp("plain"), plain)))
    work = read_class(fill(tmp_path_factory.mktemp("class"), files))
    assert (work.doubts, work.unowned) == ((), ())
    assert essence(work) == expected
    assert all(value[0] == sorted(PIECES) for value in expected.values())  # type: ignore[index]


_WORDS = st.sampled_from(
    ["readings", "setup", "selfie", "v2", "final", "James", "Okafor", "0101", "José", "old", "(1)",
     "submissions", "photos", "x", "!", "#", "|", "12", "Learner 3", "class list", "brief", "é"]
)  # fmt: skip
_ENDS = st.sampled_from(
    [".csv", ".xlsx", ".zip", ".jpg", ".mp4", ".txt", ".ods", ".toml", "", ".pdf"]
)
_NAME = st.builds(
    lambda words, end: " ".join(words) + end, st.lists(_WORDS, min_size=1, max_size=3), _ENDS
)
_DATA = st.one_of(
    st.just(TABLE), st.just(LIST), st.just(""), st.binary(max_size=60),
    st.text(string.printable, max_size=60),
    st.dictionaries(_NAME, st.just(TABLE), max_size=3).map(zipped),
)  # fmt: skip


@settings(max_examples=80, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(
    listed=st.booleans(),
    tree=st.dictionaries(st.lists(_NAME, min_size=1, max_size=3).map("/".join), _DATA, max_size=8),
)
def test_random_trees_never_raise(
    tmp_path_factory: pytest.TempPathFactory, listed: bool, tree: Mapping[str, str | bytes]
) -> None:
    folder = tmp_path_factory.mktemp("tree")
    for name, data in tree.items():
        try:
            fill(folder, {name: data})
        except OSError:  # one name is a file here and a folder there
            continue
    if listed:
        fill(folder, {"class_list.csv": LIST})
    work = read_class(folder)
    assert set(work.portfolios) == {learner.id for learner in work.learners}
    placed = [p.file for item in work.portfolios.values() for p in (*item.pieces, *item.earlier)]
    placed += [p.file for p in work.unowned] + [doubt.piece.file for doubt in work.doubts]
    assert len(placed) == len(set(placed))  # nothing is counted twice ...
    sheets = {file.rpartition("#")[0] for file in placed}
    lists = {"class_list.csv", "class list.csv", "brief.toml"}
    lost = {found.file for found in walk(folder).found} - set(placed) - sheets
    assert all(len(file.split("/")) == 1 for file in lost), lost  # ... and nothing lost
    told = " ".join(problem.message for problem in work.problems)
    assert all(file in told or file in lists or _is_list(folder / file) for file in lost), lost


def _is_list(path: Path) -> bool:
    return read_class_list(path.name, path.read_bytes(), sure=False) is not None
