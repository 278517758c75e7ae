"""A rubric is changed in place: comments stay, problems have a place, shipped ones are safe."""

from pathlib import Path

import pytest

from markbench.rubric import load_rubric
from markbench.rubric.loading import SHIPPED
from markbench.session import Session
from markbench.session.class_files import own_path
from markbench.session.rubric_preview import preview
from markbench.session.rubric_sheet import RubricSheet, as_marks, as_texts

ROWS = "Length / cm,Time of 10 swings / s\n"
GOOD = ROWS + "20,8.97\n30,10.99\n40,12.69\n50,14.18\n60,15.54\n"
SHORT = ROWS + "20,8.97\n30,10.99\n"


@pytest.fixture
def sheet() -> RubricSheet:
    return RubricSheet.open(SHIPPED / "short.toml")


@pytest.mark.parametrize("path", sorted(SHIPPED.glob("*.toml")), ids=lambda path: path.stem)
def test_opening_changes_nothing(path: Path) -> None:
    sheet = RubricSheet.open(path)
    assert sheet.text == path.read_text("utf-8")
    assert sheet.check() == (load_rubric(path), ())


def test_a_change_keeps_comments_and_touches_one_line(sheet: RubricSheet) -> None:
    before = sheet.text.splitlines()
    sheet.set_part(1, "level", 0, "descriptor", "Units and decimals, all of them.")
    after = sheet.text.splitlines()
    changed = [(a, b) for a, b in zip(before, after, strict=True) if a != b]
    assert len(changed) == 1
    assert changed[0][1] == 'descriptor = "Units and decimals, all of them."'
    assert "# Facts and placeholders: FACTS.md beside this file." in after


def test_problems_have_their_row_and_field(sheet: RubricSheet) -> None:
    sheet.set_part(0, "level", 1, "when", "lenths >= 3")
    sheet.set_part(2, "phrase", 0, "text", "You have {nonsense}.")
    sheet.set_part(3, "level", 0, "marks", as_marks("four"))
    sheet.set(4, "id", "readings")
    sheet.title = ""
    rubric, told = sheet.check()
    assert rubric is None
    places = {(one.criterion, one.key) for one in told}
    assert {
        (0, "level 2.when"), (2, "phrase 1.text"), (3, "level 1.marks"), (4, "id"),
        (None, "title"),
    } <= places  # fmt: skip
    assert any("did you mean “lengths”" in one.message for one in told)


def test_criteria_levels_and_sentences_come_move_and_go(sheet: RubricSheet) -> None:
    row = sheet.add_row("Diary")
    assert sheet.check()[1] == ()
    assert sheet.move(row, -99) == 0
    rubric = sheet.check()[0]
    assert [c.title for c in rubric.criteria][:2] == ["Diary", "Raw readings"]
    sheet.add_part(0, "level")
    sheet.set_part(0, "level", 1, "name", "Half")
    sheet.set_part(0, "level", 1, "marks", as_marks("0,5"))
    sheet.set_part(0, "level", 1, "descriptor", "Half of it.")
    sheet.set_part(0, "level", 1, "when", "lengths >= 1")
    sheet.add_part(0, "phrase")
    sheet.set_part(0, "phrase", 0, "text", as_texts("Keep a diary.\nWrite things down."))
    rubric, told = sheet.check()
    assert told == ()
    assert [level.marks for level in rubric.criteria[0].levels] == [1, 0.5, 0]
    assert [p.text for p in rubric.criteria[0].phrases] == ["Keep a diary.", "Write things down."]
    sheet.remove(0)
    assert sheet.check()[0] == load_rubric(SHIPPED / "short.toml")


def test_a_rubrics_place_is_the_class_folder_and_never_that_of_a_shipped_one(
    tmp_path: Path,
) -> None:
    assert own_path(tmp_path, "our_short") == tmp_path / "our_short.toml"
    for folder, name in (
        (SHIPPED, "short"),
        (tmp_path, "brief"),
        (tmp_path, "../x"),
        (tmp_path, ""),
    ):
        with pytest.raises(ValueError, match=r"name|brief|come along"):
            own_path(folder, name)


def test_a_preview_says_who_would_change_and_keeps_nothing(
    sheet: RubricSheet, tmp_path: Path
) -> None:
    for name, text in (("Aino Example", GOOD), ("Bodil Sample", SHORT)):
        (tmp_path / name).mkdir()
        (tmp_path / name / "readings.csv").write_text(text)
    session = Session.open(tmp_path, "T. Teacher")
    try:
        same = preview(session, sheet.check()[0])
        assert all(s.before == s.after for found in same.shifts.values() for s in found)
        assert same.mean_before == same.mean_after
        # Two lengths are enough for full marks now: Bodil rises, and nobody falls.
        sheet.set_part(0, "level", 0, "when", "lengths >= 2")
        found = preview(session, sheet.check()[0])
        moved = {s.learner: s.after for s in found.shifts["readings"] if s.before != s.after}
        assert moved["Bodil Sample"] == "Complete"
        assert found.mean_after > found.mean_before
        assert session.draft(session.learners[1].id, "readings").level != "Complete"
        assert session.history() == []
    finally:
        session.close()
