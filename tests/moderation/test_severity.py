"""Severity beyond chance: exact test, and a proposal that nobody applies."""

import itertools

from hypothesis import given
from hypothesis import strategies as st

from markbench.moderation.severity import by_criterion, propose_adjustment, severity, sign_flip_p

# Darwin's fifteen pairs of maize, in eighths of an inch, as Fisher (1935), The Design of
# Experiments, section 21, works them: 863 of 32 768 patterns in each tail.
DARWIN = [49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48]
BOUNDARIES = (("A", 16.0), ("B", 13.0), ("C", 10.0))


def test_fishers_own_example():
    assert sign_flip_p(DARWIN) == 2 * 863 / 32768


@given(st.lists(st.integers(-6, 6).map(lambda half: half / 2), min_size=1, max_size=8))
def test_every_pattern_counted(differences):
    """Against counting all 2^n patterns one by one."""
    far = abs(sum(differences))
    patterns = itertools.product((1, -1), repeat=len(differences))
    hits = sum(
        abs(sum(s * d for s, d in zip(signs, differences, strict=True))) >= far
        for signs in patterns
    )
    assert sign_flip_p(differences) == hits / 2 ** len(differences)


def test_five_learners_can_never_show_severity():
    found = severity([10] * 5, [8] * 5)
    assert found.mean == -2
    assert found.p == 2 / 32
    assert not found.beyond_chance


def test_holm_over_criteria():
    alike = ([4, 3, 2, 4, 3, 4], [4, 3, 3, 3, 3, 4])
    harsh = ([4] * 6, [3] * 6)
    found = by_criterion({"raw_data": harsh, "graph": alike, "result": alike})
    # 2/64 for the smallest of three: three times as large (Holm 1979).
    assert found["raw_data"].p == 2 / 64
    assert found["raw_data"].p_adjusted == 6 / 64
    assert found["graph"].p_adjusted == 1
    assert not found["raw_data"].beyond_chance


def test_nobody_marked_twice():
    found = severity([], [])
    assert found.mean is None
    assert not found.beyond_chance
    assert "nobody" in str(found)
    assert propose_adjustment(found, {"07": 12}, BOUNDARIES, 20) is None


def test_proposal_lists_everyone_whose_grade_changes():
    found = severity([14, 12, 15, 9, 11, 16, 13, 10], [12, 10, 13, 8, 9, 14, 11, 8])
    assert found.mean == -1.875
    totals = {"01": 16, "02": 15, "03": 14, "04": 10, "05": 1, "06": 20, "07": 16}
    proposal = propose_adjustment(found, totals, BOUNDARIES, 20, settled={"07"})
    assert proposal.shift == -2
    assert {c.learner: (c.before, c.after) for c in proposal.changes} == {
        "01": ("A", "B"), "03": ("B", "C"), "04": ("C", ""),
    }  # fmt: skip
    assert proposal.totals["05"] == (1, 0)  # never below nought
    assert "07" not in proposal.totals
    assert "not applied" in str(proposal)
    assert totals["01"] == 16


def test_no_proposal_within_chance_or_below_half_a_mark():
    assert propose_adjustment(severity([5, 6, 7], [6, 5, 7]), {"1": 9}, BOUNDARIES, 20) is None
    slight = severity([10] * 20, [10] * 14 + [9] * 6)
    assert slight.beyond_chance
    assert propose_adjustment(slight, {"1": 9}, BOUNDARIES, 20) is None
    assert propose_adjustment(slight, {"1": 9}, BOUNDARIES, 20, step=0.25).shift == -0.25
