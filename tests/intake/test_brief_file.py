"""The brief: every key explained, every problem reported, the rest still used."""

from __future__ import annotations

import dataclasses
import datetime as dt
import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from markbench.intake.brief_file import brief_keys, parse_brief, read_brief, value_of
from markbench.intake.brief_rules import ALLOWED
from markbench.intake.brief_writing import default_brief_text, write_brief
from markbench.model import Brief, Late, Place, Tolerances, Words


def test_every_field_of_the_model_has_a_rule_and_every_rule_a_field() -> None:
    nested = {"place": Place, "words": Words, "tolerances": Tolerances, "late": Late}
    fields = set()
    for item in dataclasses.fields(Brief):
        if item.name in nested:
            fields |= {f"{item.name}.{f.name}" for f in dataclasses.fields(nested[item.name])}
        else:
            fields.add("grades" if item.name == "grade_boundaries" else item.name)
    assert set(ALLOWED) == fields
    assert set(brief_keys()) == fields


def test_defaults_are_allowed_by_their_own_rules() -> None:
    for key, rule in ALLOWED.items():
        value = value_of(Brief(), key)
        if value is not None:
            plain = [list(v) if isinstance(v, tuple) else v for v in value] if isinstance(
                value, tuple) else value  # fmt: skip
            assert rule.read(plain) == value, key


def test_default_text_explains_each_key_and_reads_as_the_defaults() -> None:
    text = default_brief_text()
    assert parse_brief(text) == (Brief(), ())
    for key, rule in ALLOWED.items():
        assert f"{key.rpartition('.')[2]} = " in text
        assert rule.about in text
        assert rule.allowed in text


def test_commented_examples_can_be_switched_on() -> None:
    text = "\n".join(
        line[2:] if line.startswith("# ") and " = " in line and ":" not in line else line
        for line in default_brief_text().splitlines()
    )
    brief, problems = parse_brief(text)
    assert problems == ()
    assert brief.opens == dt.date(2026, 1, 12)
    assert brief.place.latitude_deg is not None
    assert brief.support_height_m is not None


def test_no_brief_is_the_default_brief(tmp_path: Path) -> None:
    assert read_brief(tmp_path / "brief.toml") == (Brief(), ())


def test_all_problems_at_once_and_the_good_keys_still_count() -> None:
    brief, problems = parse_brief(
        """
        lenghts = 6
        lengths = 500
        latitude_deg = 3.1
        evidence = ["selfi", "swing_video"]
        timings_per_length = 3
        opens = "next week"
        [tolerances]
        g_fraction = "5 %"
        false_alarms = 0.01
        [place]
        height_m = 120
        """
    )
    assert brief.timings_per_length == 3
    assert brief.place.height_m == 120
    assert brief.lengths == Brief().lengths
    assert {problem.key for problem in problems} == {
        "lenghts", "lengths", "latitude_deg", "evidence", "opens", "tolerances.g_fraction",
        "tolerances.false_alarms",
    }  # fmt: skip
    said = {problem.key: problem.sentence for problem in problems}
    assert "did you mean lengths" in said["lenghts"]
    assert "place.latitude_deg" in said["latitude_deg"]
    assert "500" in said["lengths"]
    assert "from 2 to 50" in said["lengths"]
    assert '"selfie"' in said["evidence"]
    assert "tolerances.false_alarm" in said["tolerances.false_alarms"]
    assert all(problem.as_finding().check == "folder_problem" for problem in problems)


@pytest.mark.parametrize(
    ("text", "keys"),
    [
        ("opens = 2026-03-02\ncloses = 2026-03-01", {"opens"}),
        ("shortest_m = 0.9\nlongest_m = 0.5", {"shortest_m"}),
        ("least_ratio = 15\nshortest_m = 0.2\nlongest_m = 0.6", {"least_ratio"}),
        ("swings_per_timing = 15\nswings_allowed = [10, 20]", {"swings_allowed"}),
        ("longest_m = 60", {"longest_m"}),  # centimetres where metres are wanted
        ("lengths = true", {"lengths"}),
        ("lengths = 5.5", {"lengths"}),
        ("least_ratio = nan", {"least_ratio"}),
        ('partners = [["01", "01"]]', {"partners"}),
        ('partners = [["01"]]', {"partners"}),
        ("place = 3", {"place"}),
        ("[title]\nx = 1", {"title.x"}),
        ("this is no toml", {""}),
        ("latitude = 3,1", {""}),
        ("[[place]]\nlatitude_deg = 1", {"place"}),
    ],
)
def test_problems_name_their_key(text: str, keys: set[str]) -> None:
    brief, problems = parse_brief(text)
    assert {problem.key for problem in problems} == keys
    assert isinstance(brief, Brief)


def test_a_new_count_of_swings_is_allowed_by_itself() -> None:
    brief, problems = parse_brief("swings_per_timing = 15")
    assert problems == ()
    assert 15 in brief.swings_allowed


def test_windows_encodings_are_read(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_bytes('title = "Période"'.encode("utf-8-sig"))
    assert read_brief(path)[0].title == "Période"
    path.write_bytes('title = "Période"'.encode("cp1252"))
    assert read_brief(path)[0].title == "Période"


def test_writing_keeps_comments_and_order(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_text("# ours\nlengths = 6  # six this year\n[place]\nlatitude_deg = 1.5\n", "utf-8")
    new = dataclasses.replace(
        read_brief(path)[0], lengths=7, closes=dt.date(2026, 3, 20), place=Place(None, 40.0)
    )
    write_brief(path, new)
    text = path.read_text("utf-8")
    assert "# ours" in text
    assert "# six this year" in text
    assert "timings_per_length" not in text  # untouched defaults are not written out
    assert read_brief(path) == (new, ())
    assert list(tmp_path.iterdir()) == [path]


def test_writing_refuses_a_broken_file_and_leaves_it(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_text("lengths = = 3", "utf-8")
    with pytest.raises(ValueError, match=r"brief\.toml"):
        write_brief(path, Brief())
    assert path.read_text("utf-8") == "lengths = = 3"


def test_writing_mends_a_bad_value(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_text("lengths = 900\n", "utf-8")
    write_brief(path, Brief())
    assert read_brief(path) == (Brief(), ())


@settings(max_examples=40, deadline=None)
@given(
    st.builds(
        Brief,
        title=st.text(min_size=1, max_size=40).filter(lambda t: t == t.strip() != ""),
        lengths=st.integers(2, 50),
        swings_allowed=st.just((10, 20, 25)),
        opens=st.none() | st.dates(max_value=dt.date(2026, 1, 1)),
        closes=st.none() | st.dates(min_value=dt.date(2026, 1, 1)),
        place=st.builds(Place, st.none() | st.floats(-90, 90), st.none() | st.floats(-500, 9000)),
        partners=st.sampled_from([(), (("01", "02"),), (("a b", 'c"d'), ("é", "ü"))]),
    )
)
def test_what_is_written_is_read_back(
    tmp_path_factory: pytest.TempPathFactory, brief: Brief
) -> None:
    path = tmp_path_factory.mktemp("brief") / "brief.toml"
    write_brief(path, brief)
    assert read_brief(path) == (brief, ())
    tomllib.loads(path.read_text("utf-8"))


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=80) | st.sampled_from(list(ALLOWED)).flatmap(
    lambda key: st.sampled_from(["1", '"x"', "[]", "[[1,2]]", "{a=1}", "inf", "-1", "2026-01-01"]
    ).map(lambda value: f"{key} = {value}")))  # fmt: skip
def test_no_brief_ever_raises(text: str) -> None:
    brief, problems = parse_brief(text)
    assert isinstance(brief, Brief)
    assert all(problem.sentence for problem in problems)


def test_grades_and_lateness_are_read_as_a_table_or_on_one_line() -> None:
    lines = "[grades]\nC = 10\nA = 16.5\n[late]\nmarks_per_day = 2\nmost_days = 3"
    brief, problems = parse_brief(lines)
    assert problems == ()
    assert brief.grade_boundaries == (("A", 16.5), ("C", 10.0))  # highest first
    assert brief.late == Late(2.0, 3)
    assert parse_brief("grades = { A = 16.5, C = 10 }")[0].grade_boundaries == (
        brief.grade_boundaries
    )


@pytest.mark.parametrize(
    "grades",
    ["{ A = 16, B = 16 }", '{ A = "many" }', "{ A = -1 }", '{ "" = 3 }', "[16, 13]", "{ A = nan }"],
)
def test_grades_that_cannot_be_are_reported_and_none_are_used(grades: str) -> None:
    brief, problems = parse_brief(f"lengths = 6\ngrades = {grades}")
    assert [problem.key for problem in problems] == ["grades"]
    assert brief.grade_boundaries == ()
    assert brief.lengths == 6


def test_written_grades_come_back_and_comments_stay(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_text("# ours\n[grades] # as agreed\nA = 15\n", "utf-8")
    brief = dataclasses.replace(
        Brief(), grade_boundaries=(("A*", 18.0), ("A", 15.0)), late=Late(1.0, 2)
    )
    write_brief(path, brief)
    assert read_brief(path) == (brief, ())
    assert "# ours" in path.read_text("utf-8")


def written(path: Path, **changes: object) -> list[str]:
    write_brief(path, dataclasses.replace(read_brief(path)[0], **changes))
    return path.read_text("utf-8").splitlines()


def test_a_key_is_written_below_the_line_that_has_it_as_a_comment(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_text(default_brief_text(), "utf-8")
    lines = written(path, closes=dt.date(2026, 3, 20), place=Place(1.5, None))
    for key, value in (("closes", "2026-03-20"), ("latitude_deg", "1.5")):
        at = lines.index(f"{key} = {value}")
        assert lines[at - 1].startswith(f"# {key} = ")
    assert read_brief(path)[0].closes == dt.date(2026, 3, 20)
    # Taken out again, its comment is left for the next time.
    assert "\n".join(written(path, closes=None, place=Place())) + "\n" == default_brief_text()


def test_a_key_keeps_to_its_table_and_out_of_texts(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_text(
        'title = """Pendulum\n# closes = soon\n"""\n[late]\n# height_m = 3\n[place]\n'
        "# height_m = 60\nlatitude_deg = 1.5",
        "utf-8",
    )
    lines = written(path, closes=dt.date(2026, 3, 20), place=Place(1.5, 40.0))
    assert lines[-3:] == ["# height_m = 60", "height_m = 40.0", "latitude_deg = 1.5"]
    brief, problems = read_brief(path)
    assert problems == ()
    assert brief.title == "Pendulum\n# closes = soon"
    assert brief.closes == dt.date(2026, 3, 20)


def test_line_ends_of_windows_are_kept(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_bytes(b"# ours\r\n# closes = 2026-01-30\r\nlengths = 6\r\n")
    written(path, closes=dt.date(2026, 3, 20))
    assert path.read_bytes() == (
        b"# ours\r\n# closes = 2026-01-30\r\ncloses = 2026-03-20\r\nlengths = 6\r\n"
    )
