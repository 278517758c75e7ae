"""A class under numbers: no name in any byte of the copy, and the marks find their way home."""

import json
import zipfile

import pytest
from care_class import IDS, NAMES, mark_all, table
from openpyxl import Workbook

from any_language import left_in_english
from markbench import cli
from markbench.session import Session
from markbench.session.errors import RefusedError, SignedOffError
from markbench.session.moderating import sign_off
from markbench.session.pseudonyms import bring_home, make_copy
from markbench.session.since_marked import since_marked

# Shorter names stand in any picture's bytes by chance.
WORDS = {part for name in NAMES for part in (name, name.split()[1])} | set(IDS)


def bytes_of(folder):
    """Names and contents of everything, zip members (a workbook's parts) unpacked."""
    for path in folder.rglob("*"):
        yield str(path.relative_to(folder)).encode()
        if path.is_file():
            yield path.read_bytes()
            if zipfile.is_zipfile(path):
                with zipfile.ZipFile(path) as archive:
                    for member in archive.infolist():
                        yield member.filename.encode() + archive.read(member)


def names_in(folder):
    held = list(bytes_of(folder))
    return {word for word in WORDS if any(word.casefold().encode() in one.lower() for one in held)}


def said(marks):
    """Level, marks, marker and time; which reading a drafted text quotes is chosen by the id."""
    return {c: (one.level, one.marks, one.by, one.at) for c, one in marks.items()}


@pytest.fixture
def session(folder):
    """As usual, with a workbook in which the learner's name stands in a cell and a title."""
    (folder / NAMES[0] / "readings.csv").unlink()
    book = Workbook()
    book.properties.creator = NAMES[0]
    sheet = book.active
    sheet.title = f"{NAMES[0].split()[0]} values"
    for line in table(NAMES[0], 0.0).splitlines():
        sheet.append([float(x) if x[:1].isdigit() else x for x in line.split(",")])
    book.save(folder / NAMES[0] / "readings.xlsx")
    opened = Session.open(folder, "T. Teacher")
    yield opened
    opened.close()


def test_no_name_in_any_byte(session, tmp_path):
    assert names_in(session.folder) >= set(NAMES)
    copy, key = tmp_path / "copy", tmp_path / "elsewhere.markbench-key"
    made = make_copy(session, copy, key)
    assert names_in(copy) == set()
    assert (made.learners, made.files) == (3, 10)
    assert made.left_out == {
        "nobody owns it yet": 1,
        "a report or another file in which names may stand": 1,
    }
    assert [part for why in made.left_out for part in left_in_english(why)] == []
    known = json.loads(key.read_text("utf-8"))
    assert {one["name"] for one in known["learners"].values()} == set(NAMES)


def test_the_copy_is_a_class_like_the_other(session, tmp_path):
    copy, key = tmp_path / "copy", tmp_path / "key"
    make_copy(session, copy, key)
    code = {one["id"]: code for code, one in json.loads(key.read_text())["learners"].items()}
    opened = Session.open(copy, "T. Teacher")
    assert {learner.name for learner in opened.learners} == set(code.values())
    assert opened.work.doubts == ()
    assert opened.work.unowned == ()
    for learner in IDS:
        theirs, mine = opened.portfolio(code[learner]), session.portfolio(learner)
        assert [r.length_m for r in theirs.table.readings] == [
            r.length_m for r in mine.table.readings
        ]
        assert opened.analysis(code[learner]).line.g == session.analysis(learner).line.g
        assert theirs.handed_in == mine.handed_in.replace(microsecond=theirs.handed_in.microsecond)
        kinds = sorted(p.kind for p in theirs.pieces)
        assert kinds == sorted(p.kind for p in mine.pieces if p.kind != "report")
    opened.close()
    out = tmp_path / "out"
    arguments = ["export", str(copy), "--to", str(out), "--feedback", "--audit"]
    assert cli.main(arguments, lambda _folder: 1) == 0
    assert names_in(out) == set()


def test_marks_come_home_with_their_signatures(session, tmp_path):
    copy, key = tmp_path / "copy", tmp_path / "key"
    make_copy(session, copy, key)
    code = {one["id"]: code for code, one in json.loads(key.read_text())["learners"].items()}
    opened = Session.open(copy, "M. Marker")
    for learner in opened.learners:
        opened.accept(learner.id)
    first = opened.rubric.criteria[0].id
    opened.set_feedback(code[IDS[0]], first, "Well timed.")
    cell = opened.portfolio(code[IDS[0]]).table.readings[0].timings[0].source
    opened.correct(code[IDS[0]], cell, "9.99")
    marks = {i: said(opened.marks(code[i])) for i in IDS}
    timing = opened.portfolio(code[IDS[0]]).table.readings[0].timings[0].time_s
    opened.close()

    assert bring_home(session, copy, key) > len(IDS)
    assert {i: said(session.marks(i)) for i in IDS} == marks
    assert {mark.by for i in IDS for mark in session.marks(i).values()} == {"M. Marker"}
    assert session.feedback(IDS[0], first) == "Well timed."
    assert session.portfolio(IDS[0]).table.readings[0].timings[0].time_s == timing == 9.99
    assert session._journal.verify() is None
    with pytest.raises(RefusedError, match="nothing"):
        bring_home(session, copy, key)


def test_marks_rest_at_home_on_the_work_that_was_copied(session, tmp_path):
    copy, key = tmp_path / "copy", tmp_path / "key"
    make_copy(session, copy, key)
    opened = Session.open(copy, "M. Marker")
    for learner in opened.learners:
        opened.accept(learner.id)
    opened.close()
    folder = session.folder
    later = folder / NAMES[1] / "readings v2.csv"  # while the copy was being marked
    later.parent.mkdir()
    later.write_text(table(NAMES[1], 0.4), "utf-8")
    session.close()
    again = Session.open(folder, "T. Teacher")
    assert bring_home(again, copy, key) == sum(len(again.marks(i)) for i in IDS)
    try:
        # Photos of a copy are other bytes, and yet only what changed at home has changed.
        assert [since_marked(again, i) is not None for i in IDS] == [False, True, False]
        assert since_marked(again, IDS[1]).differing
        assert not since_marked(again, IDS[1]).by_date
    finally:
        again.close()


def test_what_is_refused(session, tmp_path):
    copy, key = tmp_path / "copy", tmp_path / "key"
    for to, where in (
        (session.folder / "copy", key),
        (copy, copy / "key"),
        (session.folder.parent / "Class 9Z", key),
    ):
        with pytest.raises(RefusedError):
            make_copy(session, to, where)
    make_copy(session, copy, key)
    for to, where in ((copy, tmp_path / "key2"), (tmp_path / "copy2", key)):
        with pytest.raises(RefusedError):
            make_copy(session, to, where)
    make_copy(session, tmp_path / "copy3", tmp_path / "key3")
    opened = Session.open(copy, "M. Marker")
    mark_of = opened.learners[0].id
    opened.accept(mark_of)
    opened.close()
    (tmp_path / "odd").write_text("{}")
    with pytest.raises(RefusedError, match="not a key"):
        bring_home(session, copy, tmp_path / "odd")
    foreign = json.loads(key.read_text())
    foreign["learners"]["P01"]["id"] = "S99999"
    (tmp_path / "foreign").write_text(json.dumps(foreign))
    with pytest.raises(RefusedError, match="another class"):
        bring_home(session, copy, tmp_path / "foreign")
    mark_all(session)
    sign_off(session)
    with pytest.raises(SignedOffError):
        bring_home(session, copy, key)


def test_a_class_list_of_ids_only_works_fully(folder):
    (folder / "class_list.csv").write_text("id\n" + "\n".join(IDS) + "\n", "utf-8")
    for learner, name in zip(IDS, NAMES, strict=True):
        if (folder / name).is_dir():
            (folder / name).rename(folder / learner)
    (folder / "ben.zip").rename(folder / f"{IDS[1]}.zip")
    (folder / "all.zip").rename(folder / f"{IDS[2]}.zip")
    session = Session.open(folder, "T. Teacher")
    assert [learner.id for learner in session.learners] == list(IDS)
    assert [learner.name for learner in session.learners] == list(IDS)
    assert all(session.portfolio(learner).table is not None for learner in IDS)
    session.close()


def test_on_the_command_line(session, tmp_path, capsys):
    folder = session.folder
    session.close()
    copy, key = str(tmp_path / "copy"), str(tmp_path / "key")

    def run(*arguments):
        code = cli.main(list(arguments), lambda _folder: 1)
        told = capsys.readouterr()
        return code, " ".join((told.out + told.err).split())

    code, told = run("pseudonymise", str(folder), "--to", copy, "--key", key)
    assert code == 0
    assert "faces" in told
    opened = Session.open(tmp_path / "copy", "M. Marker")
    opened.accept(opened.learners[0].id)
    opened.close()
    code, told = run("bring-home", str(folder), "--from", copy, "--key", key)
    assert (code, "brought home" in told) == (0, True)
    assert run("bring-home", str(folder), "--from", copy, "--key", key)[0] == 1
