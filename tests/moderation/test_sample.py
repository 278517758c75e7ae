"""The sample: the risky all, the ordinary over the range, the same for the same seed."""

import itertools
import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from moderation_forms import RUBRIC, marks

from markbench.model import Concern, Draft, Finding, Sentence
from markbench.moderation.sample import Sample, draw, outlier_reasons, sample_size

BOUNDARIES = (("A", 16.0), ("B", 13.0))
classes = st.dictionaries(
    st.text("abcdef0123456789", min_size=1, max_size=4),
    st.none() | st.integers(0, 40).map(lambda half: half / 2),
    max_size=150,
)


@pytest.mark.parametrize(
    ("learners", "size"), [(0, 0), (6, 6), (10, 10), (11, 10), (30, 10), (101, 11), (400, 20)]
)
def test_size_by_the_stated_rule(learners, size):
    assert sample_size(learners) == size


@settings(max_examples=80, deadline=None, derandomize=True)
@given(classes, st.data(), st.integers(0, 2**32))
def test_any_class(totals, data, seed):
    flagged = data.draw(st.sets(st.sampled_from(sorted(totals)))) if totals else set()
    outliers = {learner: ["asked"] for learner in flagged}
    sample = draw(totals, outliers, BOUNDARIES, seed)
    drawn = set(sample.ids)
    ordinary = {x: t for x, t in totals.items() if t is not None and x not in flagged}
    assert flagged <= drawn
    assert {one.learner for one in sample.learners if one.outlier} == flagged
    assert drawn - flagged <= set(ordinary)
    assert len(drawn - flagged) >= min(sample_size(len(totals)), len(ordinary))
    assert all(one.reasons for one in sample.learners)
    assert list(sample.ids) == [learner for learner in totals if learner in drawn]
    if ordinary:
        got = [ordinary[learner] for learner in drawn - flagged]
        assert max(got) == max(ordinary.values())
        assert min(got) == min(ordinary.values())
    # The order of the class list has no say.
    backwards = dict(reversed(totals.items()))
    assert set(draw(backwards, outliers, BOUNDARIES, seed).ids) == drawn


def test_spread_over_the_range_and_either_side_of_boundaries():
    totals = {f"{n:02}": n * 20 / 99 for n in range(100)}
    sample = draw(totals, {}, BOUNDARIES, 7)
    got = sorted(totals[learner] for learner in sample.ids)
    assert len(got) == 10
    assert max(b - a for a, b in itertools.pairwise(got)) < 8
    reasons = " ".join(reason for one in sample.learners for reason in one.reasons)
    for words in ("highest", "lowest", "at or above grade A (16)", "below grade B (13)"):
        assert words in reasons


def test_seeds_differ_and_are_kept():
    totals = {f"{n:02}": float(n % 17) for n in range(60)}
    samples = {draw(totals, {}, (), seed).ids for seed in range(20)}
    assert len(samples) > 10
    assert draw(totals, {}, (), 3) == draw(totals, {}, (), 3)


def test_a_known_draw_stays_the_same_in_every_version():
    """Found by running an independent few lines of the rule by hand, not this module."""
    import hashlib

    totals = {f"{n:02}": float(n) for n in range(30)}
    middle = [f"{n:02}" for n in range(1, 29)]  # lowest and highest are taken first
    runs = [middle[r * 28 // 8 : (r + 1) * 28 // 8] for r in range(8)]
    lots = [min(r, key=lambda x: hashlib.sha256(f"11:{x}".encode()).hexdigest()) for r in runs]
    assert set(draw(totals, {}, (), 11).ids) == {"00", "29", *lots}


def test_sample_goes_through_the_journal_unchanged():
    sample = draw(
        {"1": 3.0, "2": None, "3": 9.5}, {"2": ["the numbers suggest a slip"]}, BOUNDARIES, 5
    )
    kept = Sample.from_json(json.loads(json.dumps(sample.to_json())))
    assert kept == sample
    # … and can still be said in the language of a window.
    said = [kept.rule, *(why for one in kept.learners for why in one.reasons)]
    assert all(isinstance(text, Sentence) for text in said), said
    assert sample.unmarked == ("2",)
    assert "seed 5" in str(sample)


def drafts(*three):
    return [Draft(c.id, f"L{m}", float(m), ()) for c, m in zip(RUBRIC.criteria, three, strict=True)]


def test_outliers():
    calm = outlier_reasons([], False, drafts(4, 3, 2), marks(4, 3, 2), RUBRIC)
    assert calm == ()
    asked = Finding("copied", "07", "…", Concern.LOOK, who="moderator")
    other = Finding("few_lengths", "07", "…", Concern.ASK)
    found = outlier_reasons([asked, other], True, drafts(4, 4, 4), marks(4, 3, 2), RUBRIC)
    assert found == (
        "question for the moderator: copied",
        "the numbers suggest a slip",
        "marked −3 of 12 against the drafts",
    )
    assert outlier_reasons([], False, drafts(4, 4, 4), marks(4, 4, 2), RUBRIC) == ()
    assert outlier_reasons([], False, drafts(4, 4, 4), {}, RUBRIC) == ()
