"""The language of conditions: what Python says where all is known, silence where not."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from markbench.rubric.condition import ConditionError, condition, parse
from markbench.rubric.phrasing import TemplateError, template

KINDS = {"a": "number", "b": "number", "c": "number", "p": "yes/no", "q": "yes/no", "w": "text"}

numbers = st.integers(-20, 20) | st.floats(-20, 20, allow_nan=False).map(lambda x: round(x, 2))
facts = st.fixed_dictionaries(
    {
        "a": numbers,
        "b": numbers,
        "c": numbers,
        "p": st.booleans(),
        "q": st.booleans(),
        "w": st.sampled_from(["", "red", "blue"]),
    }
)
arithmetic = st.recursive(
    st.sampled_from(["a", "b", "c", "1", "2.5", "0", "-3"]),
    lambda inner: st.tuples(inner, st.sampled_from("+-*/"), inner).map(
        lambda t: f"({t[0]} {t[1]} {t[2]})"
    ),
    max_leaves=4,
)
signs = st.sampled_from(["<", "<=", ">", ">=", "==", "!="])
atoms = st.one_of(
    st.sampled_from(["p", "q", "True", "False", "p == q", 'w == "red"', 'w != ""']),
    st.sampled_from(['w in ("red", "blue")', "a not in (1, 2, 3)", "p != q"]),
    st.tuples(arithmetic, signs, arithmetic).map(" ".join),
    st.tuples(arithmetic, signs, arithmetic, signs, arithmetic).map(" ".join),
)
conditions = st.recursive(
    atoms,
    lambda inner: st.one_of(
        st.tuples(inner, st.sampled_from(["and", "or"]), inner).map(
            lambda t: f"({t[0]}) {t[1]} ({t[2]})"
        ),
        inner.map(lambda x: f"not ({x})"),
    ),
    max_leaves=6,
)


@settings(max_examples=400, deadline=None)
@given(conditions, facts)
def test_known_facts_give_what_python_gives(text, known):
    try:
        expected = bool(eval(text, {"__builtins__": {}}, dict(known)))
    except ZeroDivisionError:
        return  # without a value in Python, unknown here: see the next test
    assert parse(text, KINDS).holds(known) is expected


@settings(max_examples=200, deadline=None)
@given(conditions)
def test_with_nothing_known_a_fact_never_decides(text):
    """Neither a condition nor its opposite holds, unless its constants alone decide it."""
    nothing = dict.fromkeys(KINDS)
    asked = parse(text, KINDS)
    if not asked.names:
        return
    both = asked.holds(nothing), parse(f"not ({text})", KINDS).holds(nothing)
    decided_by_constants = "True" in text or "False" in text or any(both)
    if any(both):
        # Only then may one hold: replacing every fact by anything else must not change it.
        other = {"a": 1, "b": 2, "c": 7, "p": True, "q": False, "w": "red"}
        assert asked.holds(other) is both[0]
    assert both != (True, True)
    assert decided_by_constants or both == (False, False)


@pytest.mark.parametrize(
    "text",
    ["a > 3", "not a > 3", "a == a", "a + 1 > 0 or a < 0", "p", "not p", "w == ''", "1 / 0 > 0"],
)
def test_the_unknown_never_holds(text):
    assert not parse(text, KINDS).holds(dict.fromkeys(KINDS))


def test_known_parts_still_decide():
    some = {**dict.fromkeys(KINDS), "a": 5}
    assert parse("a > 3 or p", KINDS).holds(some)
    assert parse("not (a < 3 and p)", KINDS).holds(some)
    assert not parse("a > 3 and p", KINDS).holds(some)
    assert parse("known(a) and not known(b)", KINDS).holds(some)


def test_zero_is_known():
    assert parse("a == 0 and known(a)", KINDS).holds({**dict.fromkeys(KINDS), "a": 0})


def test_nothing_asked_always_holds():
    assert parse("  ", KINDS).holds({})


@pytest.mark.parametrize(
    "text, told",
    [
        ("lenghts > 3", "did you mean “lengths”"),
        ("lengths >", "cannot be read"),
        ("lengths > 3)", "cannot be read"),
        ("lengths", "is a number where a yes or no"),
        ("slip", "is a text where a yes or no"),
        ("setup_photo > 2", "cannot be compared"),
        ("setup_photo < selfie", "has no order"),
        ('slip > "a"', "has no order"),
        ('lengths == "five"', "cannot be compared"),
        ("lengths + setup_photo > 2", "is a yes or no where a number"),
        ("lengths and setup_photo", "is a number where a yes or no"),
        ("not lengths", "is a number where a yes or no"),
        ("lengths ** 2 > 4", "is not allowed"),
        ("lengths % 2 == 0", "is not allowed"),
        ("__import__('os').system('true')", "is not allowed"),
        ("lengths.real > 2", "is not allowed"),
        ("open('x')", "is not allowed"),
        ("(lambda: True)()", "is not allowed"),
        ("[x for x in (1, 2)]", "is not allowed"),
        ("f'{lengths}' == '5'", "is not allowed"),
        ("lengths if setup_photo else 3", "is not allowed"),
        ("slip is None", "only numbers"),
        ("lengths in slip", "stands a list in brackets"),
        ("known(lenghts)", "did you mean “lengths”"),
        ("known(3)", "is not allowed"),
        ("known(lengths, slip)", "is not allowed"),
        ("(" * 300 + "1" + ")" * 300 + " > 0", "longer than"),
        ("((" * 120 + "1" + "))" * 120 + " > 0", "cannot be read"),
        ("lengths > 3j", "is not allowed"),
        ("lengths > 1\x00", "cannot be read"),
    ],
)
def test_what_is_not_in_the_language_is_told(text, told):
    with pytest.raises(ConditionError, match=told.replace("(", r"\(")):
        condition(text)


@pytest.mark.parametrize(
    "text, why",
    [
        ("(lengths > 3", "a bracket is not closed"),
        ("lengths > 3)", "a bracket closes nothing"),
        ("(lengths > 3]", "a bracket closes nothing"),
        ("slip == 'half", "a quotation mark is not closed"),
        ("slip == '(' and lengths > ", "something is missing at the end"),
        ("lengths = 3", "to compare, write == instead of ="),
        ("lengths > 3 && setup_photo", "write and, or, not instead of signs"),
        ("!setup_photo", "write and, or, not instead of signs"),
        ("lengths => 3", "write <= or >=, the sign = last"),
        ("lengths more than 3", "something is missing in “lengths more”"),
        ("lengths > > 3", "something is missing or too much"),
    ],
)
def test_why_a_condition_cannot_be_read_is_told_in_plain_words(text, why):
    with pytest.raises(ConditionError) as caught:
        condition(text)
    assert caught.value.problems == (f"this condition cannot be read: {why}",)


@pytest.mark.parametrize(
    "text, why",
    [
        ("You have {lengths.", "a curly bracket is not closed"),
        ("You have lengths}.", "a curly bracket closes nothing"),
        ("You have {lengths} of {", "a curly bracket is not closed"),
    ],
)
def test_why_a_sentence_cannot_be_read_is_told_in_plain_words(text, why):
    with pytest.raises(TemplateError) as caught:
        template(text)
    assert caught.value.problems == (f"this sentence cannot be read: {why}",)


def test_everything_wrong_is_told_at_once():
    with pytest.raises(ConditionError) as caught:
        condition("lenghts > 3 and slipp == '' and selfie > 1")
    assert len(caught.value.problems) == 3


def test_infinite_and_large_numbers_do_no_harm():
    assert not parse("1e308 * 10 < a", KINDS).holds({"a": 5})
    assert not parse("9" * 400 + " / 1 > a", KINDS).holds({"a": 5})
    assert parse("a < b", KINDS).holds({"a": 1, "b": math.inf})
