"""A rubric file that is wrong is told so, all of it at once, with file, criterion and key."""

from __future__ import annotations

import pytest

from markbench.rubric import RubricError, find_rubric, load_rubric

GOOD = """
title = "Invented rubric"

[[criterion]]
id = "readings"
title = "Readings"

[[criterion.level]]
name = "Full"
marks = 2
descriptor = "Enough lengths."
when = "lengths >= asked_lengths"

[[criterion.level]]
name = "None"
marks = 0
descriptor = "Not enough."

[[criterion.phrase]]
role = "praise"
when = "lengths >= asked_lengths"
text = "You timed {lengths} lengths."
text_ms = "Anda mengukur {lengths} panjang."

[[criterion]]
id = "plan"
title = "Plan"
by_eye = true

[[criterion.level]]
name = "Full"
marks = 1
descriptor = "A plan."

[[criterion.level]]
name = "None"
marks = 0
descriptor = "No plan."
"""


def problems_of(tmp_path, content: str | bytes) -> list:
    path = tmp_path / "mine.toml"
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    with pytest.raises(RubricError) as caught:
        load_rubric(path)
    return list(caught.value.problems)


def test_the_sound_one_is_read(tmp_path):
    path = tmp_path / "mine.toml"
    path.write_text(GOOD, encoding="utf-8")
    rubric = load_rubric(path)
    assert (rubric.id, rubric.title, rubric.most) == ("mine", "Invented rubric", 3)
    assert [row.by_eye for row in rubric.criteria] == [False, True]
    assert rubric.criteria[0].phrases[0].text == "You timed {lengths} lengths."


def test_the_language_is_chosen_where_there_is_one(tmp_path):
    path = tmp_path / "mine.toml"
    path.write_text(GOOD, encoding="utf-8")
    malay = load_rubric(path, language="ms").criteria[0]
    assert malay.phrases[0].text == "Anda mengukur {lengths} panjang."
    assert malay.title == "Readings"
    polish = load_rubric(path, language="pl").criteria[0]
    assert polish.phrases[0].text == "You timed {lengths} lengths."


# What is changed, into what; then the criterion, the key and the words that must be told.
BROKEN = {
    "misspelt fact": (
        'when = "lengths >= asked_lengths"\n\n[[criterion.level]]',
        'when = "lenghts >= asked_lengths"\n\n[[criterion.level]]',
        "readings",
        "level 1.when",
        "did you mean “lengths”",
    ),
    "misspelt placeholder": (
        "You timed {lengths}",
        "You timed {lengthes}",
        "readings",
        "phrase 1.text",
        "did you mean “lengths”",
    ),
    "placeholder with a unit": (
        "You timed {lengths} lengths",
        "You reached {longest_m}",
        "readings",
        "phrase 1.text",
        "did you mean “longest”",
    ),
    "misspelt placeholder in another language": (
        "mengukur {lengths}",
        "mengukur {lengt}",
        "readings",
        "phrase 1.text_ms",
        "no placeholder “{lengt}”",
    ),
    "placeholder with a format": (
        "You timed {lengths}",
        "You timed {lengths:.2f}",
        "readings",
        "phrase 1.text",
        "own format",
    ),
    "open brace": ("You timed {lengths}", "You { {lengths}", "readings", "phrase 1.text", "read"),
    "yes or no quoted": (
        "You timed {lengths}",
        "You timed {lengths} {selfie}",
        "readings",
        "phrase 1.text",
        "no placeholder “{selfie}”",
    ),
    "misspelt key of a level": (
        'descriptor = "Enough lengths."',
        'description = "Enough lengths."',
        "readings",
        "level 1.description",
        "did you mean “descriptor”",
    ),
    "missing descriptor": (
        'descriptor = "Enough lengths."\n',
        "",
        "readings",
        "level 1.descriptor",
        "is missing",
    ),
    "misspelt key of a criterion": (
        "by_eye = true",
        "byeye = true",
        "plan",
        "byeye",
        "did you mean “by_eye”",
    ),
    "misspelt key at the top": (
        'title = "Invented rubric"',
        'titel = "Invented rubric"',
        "",
        "titel",
        "did you mean “title”",
    ),
    "missing title": ('title = "Invented rubric"', "", "", "title", "is missing"),
    "title of a wrong type": (
        'title = "Invented rubric"',
        "title = 3",
        "",
        "title",
        "must be a text",
    ),
    "marks as text": ("marks = 2", 'marks = "2"', "readings", "level 1.marks", "must be a number"),
    "negative marks": ("marks = 2", "marks = -2", "readings", "level 1.marks", "0 or more"),
    "endless marks": ("marks = 2", "marks = inf", "readings", "level 1.marks", "0 or more"),
    "marks not falling": ("marks = 2", "marks = 0", "readings", "level 2.marks", "highest first"),
    "true as marks": ("marks = 2", "marks = true", "readings", "level 1.marks", "must be a number"),
    "last level with a condition": (
        'descriptor = "Not enough."',
        'descriptor = "Not enough."\nwhen = "lengths >= 1"',
        "readings",
        "level 2.when",
        "the last level must have no condition",
    ),
    "first level without a condition": (
        'descriptor = "Enough lengths."\nwhen = "lengths >= asked_lengths"',
        'descriptor = "Enough lengths."',
        "readings",
        "level 1.when",
        "only the last level",
    ),
    "condition for the teacher's eye": (
        'descriptor = "A plan."',
        'descriptor = "A plan."\nwhen = "lengths >= 2"',
        "plan",
        "level 1.when",
        "never used",
    ),
    "two levels of one name": (
        'name = "None"\nmarks = 0\ndescriptor = "Not enough."',
        'name = "Full"\nmarks = 0\ndescriptor = "Not enough."',
        "readings",
        "level",
        "two levels are called “Full”",
    ),
    "two criteria of one id": ('id = "plan"', 'id = "readings"', "readings", "id", "two criteria"),
    "id with spaces": ('id = "plan"', 'id = "The plan"', "The plan", "id", "small letters"),
    "no id": ('id = "plan"\n', "", "number 2", "id", "is missing"),
    "unknown role": (
        'role = "praise"',
        'role = "prase"',
        "readings",
        "phrase 1.role",
        "did you mean “praise”",
    ),
    "role of the eye elsewhere": (
        'role = "praise"',
        'role = "look"',
        "readings",
        "phrase 1.role",
        "not a role of a drafted criterion",
    ),
    "praise for nothing": (
        'role = "praise"\nwhen = "lengths >= asked_lengths"',
        'role = "praise"',
        "readings",
        "phrase 1.when",
        "must rest on a fact",
    ),
    "praise for the brief": (
        'role = "praise"\nwhen = "lengths >= asked_lengths"',
        'role = "praise"\nwhen = "asked_lengths >= 5"',
        "readings",
        "phrase 1.when",
        "must rest on a fact",
    ),
    "praise that names nothing": (
        "You timed {lengths} lengths.",
        "Well done!",
        "readings",
        "phrase 1.text",
        "must quote a fact",
    ),
    "empty text": (
        'text = "You timed {lengths} lengths."',
        'text = " "',
        "readings",
        "phrase 1.text",
        "empty",
    ),
    "no alternates": (
        'text = "You timed {lengths} lengths."',
        "text = []",
        "readings",
        "phrase 1.text",
        "a list of texts",
    ),
    "text as number": (
        'text = "You timed {lengths} lengths."',
        "text = [3]",
        "readings",
        "phrase 1.text",
        "not a text",
    ),
    "no text": (
        'text = "You timed {lengths} lengths."\n',
        "",
        "readings",
        "phrase 1.text",
        "is missing",
    ),
    "code in a condition": (
        'when = "lengths >= asked_lengths"\n\n[[criterion.level]]',
        "when = \"__import__('os')\"\n\n[[criterion.level]]",
        "readings",
        "level 1.when",
        "is not allowed",
    ),
    "wrong types compared": (
        'when = "lengths >= asked_lengths"\n\n[[criterion.level]]',
        "when = \"lengths == 'five'\"\n\n[[criterion.level]]",
        "readings",
        "level 1.when",
        "cannot be compared",
    ),
    "condition as a number": (
        'when = "lengths >= asked_lengths"\n\n[[criterion.level]]',
        "when = 5\n\n[[criterion.level]]",
        "readings",
        "level 1.when",
        "must be a text",
    ),
    "levels as text": (
        '[[criterion.level]]\nname = "Full"\nmarks = 1\ndescriptor = "A plan."\n\n'
        '[[criterion.level]]\nname = "None"\nmarks = 0\ndescriptor = "No plan."\n',
        'level = "high"\n',
        "plan",
        "level",
        "must be a list",
    ),
    "levels as a list of texts": (
        '[[criterion.level]]\nname = "Full"\nmarks = 1\ndescriptor = "A plan."\n\n'
        '[[criterion.level]]\nname = "None"\nmarks = 0\ndescriptor = "No plan."\n',
        'level = ["high", "low"]\n',
        "plan",
        "level",
        "[[…level]]",
    ),
    "one level": (
        '\n[[criterion.level]]\nname = "None"\nmarks = 0\ndescriptor = "No plan."\n',
        "",
        "plan",
        "level",
        "at least two levels",
    ),
    "translated title of a wrong type": (
        'title = "Plan"',
        'title = "Plan"\ntitle_ms = 3',
        "plan",
        "title_ms",
        "must be a text",
    ),
}


@pytest.mark.parametrize("name", BROKEN)
def test_each_fault_is_told_with_its_place(tmp_path, name):
    old, new, criterion, key, told = BROKEN[name]
    assert GOOD.count(old) == 1
    problems = problems_of(tmp_path, GOOD.replace(old, new))
    found = [p for p in problems if (p.criterion, p.key) == (criterion, key)]
    assert any(told in p.message for p in found), problems
    line = str(found[0])
    assert "mine.toml" in line
    assert criterion in line
    assert key in line


def test_all_faults_are_told_at_once(tmp_path):
    bad = GOOD
    for name in (
        "misspelt key of a level",
        "negative marks",
        "misspelt placeholder",
        "id with spaces",
    ):
        old, new = BROKEN[name][:2]
        bad = bad.replace(old, new)
    problems = problems_of(tmp_path, bad)
    # The misspelt key is told twice: unknown, and the right one missing.
    assert len(problems) == 5, problems


@pytest.mark.parametrize(
    "content, told",
    [
        (b"title = \xff", "is not UTF-8"),
        ("title = ", "is not valid TOML"),
        ("title = 'x'\ncriterion = []", "there is no criterion"),
        ("title = 'x'", "is missing"),
        ("title = 'x'\ncriterion = ['a']", "[[…criterion]]"),
        ("", "is missing"),
    ],
)
def test_files_that_are_no_rubric(tmp_path, content, told):
    assert any(told in str(problem) for problem in problems_of(tmp_path, content))


def test_a_file_that_is_not_there(tmp_path):
    with pytest.raises(RubricError, match="cannot be opened"):
        load_rubric(tmp_path / "none.toml")


def test_the_class_folders_own_rubric_comes_first(tmp_path):
    (tmp_path / "short.toml").write_text(GOOD, encoding="utf-8")
    assert find_rubric("short", tmp_path).title == "Invented rubric"
    assert find_rubric("short.toml", tmp_path).title == "Invented rubric"
    assert find_rubric("full_report", tmp_path).title == "Pendulum at home: full report"


def test_a_misspelt_rubric_name_gets_a_near_match(tmp_path):
    with pytest.raises(RubricError, match="did you mean “full_report”") as wrong:
        find_rubric("ful_report", tmp_path)
    # At fault is the line in the brief that names it, and no file that does not exist.
    assert str(wrong.value).startswith("brief.toml, rubric: there is no rubric “ful_report”")


@pytest.mark.parametrize("name", ["../short", "/etc/passwd", "sub/short"])
def test_a_rubrics_name_is_a_name_and_not_a_path(tmp_path, name):
    with pytest.raises(RubricError, match="not a path"):
        find_rubric(name, tmp_path / "sub")
