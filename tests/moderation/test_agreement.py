"""Agreement over a class, put together from outcomes."""

import pytest
from moderation_forms import AT, RUBRIC, mark, marks

from markbench.model import Brief, Criterion, Decision, Level, Mark
from markbench.moderation.agreement import agreement, level_index, share
from markbench.moderation.outcome import outcomes

FIRST = {"01": (4, 3, 2), "02": (2, 2, 1), "03": (0, 1, 3), "04": (4, 4, 4)}
SECOND = {"01": (4, 2, 0), "02": (2, 1, 1), "03": (1, 1, 3)}


def class_of(first, second, marker="M. Moderator"):
    state = {}
    for learner, three in second.items():
        for criterion, given in zip(RUBRIC.criteria, three, strict=True):
            value = {"level": f"L{given}", "marks": float(given), "feedback": ""}
            d = Decision("second_mark", learner, f"{criterion.id}|{marker}", value, at=AT)
            state[d.key] = d
    firsts = {learner: marks(*three) for learner, three in first.items()}
    return outcomes(state, RUBRIC, Brief(), firsts, {}, {})


def test_counts_by_hand():
    found = agreement(RUBRIC, class_of(FIRST, SECOND))
    assert found.learners == ("01", "02", "03")
    raw, graph, result = found.criteria
    assert (raw.exact.count, raw.within_one.count, raw.exact.of) == (2, 3, 3)
    assert (graph.exact.count, graph.within_one.count) == (1, 3)
    assert (result.exact.count, result.within_one.count) == (2, 2)
    # Totals 9, 5, 4 and 6, 4, 5: differences -3, -1, +1.
    assert found.totals.mean == pytest.approx(-1)
    assert found.totals.sd == pytest.approx(2)
    assert found.severity.p == 6 / 8  # all patterns but the two of sum ±1 reach 3: by hand
    assert "on purpose" in str(found)
    assert not any(word in str(found) for word in ("good", "poor", "substantial"))


def test_nobody_second_marked():
    found = agreement(RUBRIC, class_of(FIRST, {}))
    assert all(row.kappa.value is None and row.exact.value is None for row in found.criteria)
    assert found.totals.mean is None
    assert "undefined" in str(found)


def test_one_category_only_is_undefined_and_never_fails():
    found = agreement(RUBRIC, class_of({"01": (4, 4, 4)}, {"01": (4, 4, 4)}))
    assert found.criteria[0].kappa.value is None
    assert found.criteria[0].exact.value == 1


def test_one_of_two_second_markers_can_be_chosen():
    both = class_of(FIRST, SECOND)
    assert agreement(RUBRIC, both, marker="M. Moderator").learners == ("01", "02", "03")
    assert agreement(RUBRIC, both, marker="Nobody").learners == ()


def test_exact_interval_of_a_share():
    # Clopper and Pearson (1934): 0 of 10 at 95 % reaches 1 − 0.025^(1/10) = 0.3085.
    assert share(0, 10).high95 == pytest.approx(0.3085, abs=5e-5)
    assert share(10, 10).low95 == pytest.approx(0.6915, abs=5e-5)
    assert share(0, 0).value is None


def test_a_level_the_rubric_has_lost_is_placed_by_its_marks():
    assert level_index(RUBRIC.criteria[0], mark("raw_data", 3)) == 1
    lost = Mark("raw_data", "Gone", 2.2, "", "A. Teacher", AT)
    assert level_index(RUBRIC.criteria[0], lost) == 2
    two = Criterion("x", "X", (Level("High", 2, ""), Level("Low", 0, "")))
    assert level_index(two, Mark("x", "Low", 0, "", "A. Teacher", AT)) == 1
