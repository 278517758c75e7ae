"""The film's period against the table: which length, which slip, how surely."""

import pytest

from markbench.evidence.video.compare import compare, findings_of_video, video_evidence
from markbench.evidence.video.judge import SwingMeasurement
from markbench.model import Brief, Row
from markbench.physics.pendulum import period_s

TRUE = {length: float(period_s(length, 9.81)) for length in (0.2, 0.3, 0.4, 0.5, 0.6)}


def rows(factor: float = 1.0, swings: int = 10) -> list[Row]:
    return [
        Row(
            length,
            swings,
            (swings * true * factor,) * 2,
            swings * true * factor,
            0.0,
            true * factor,
            (true * factor) ** 2,
            9.81,
        )
        for length, true in TRUE.items()
    ]


def film(period: float, swings: int = 12) -> SwingMeasurement:
    return SwingMeasurement(
        True, period_s=period, u_period_s=0.0005 * period, complete_swings=swings
    )


# Period as written over the true one: t/N with t = (swings that went by)·T.
SLIPS = {"half_swings": 0.5, "count_short": 0.9, "count_over": 1.1}


def test_an_honest_film_names_its_length():
    for k, true in enumerate(TRUE.values()):
        against = compare(film(true * 1.002), rows())
        assert (against.verdict, against.row) == ("confirms", k)
        assert findings_of_video(film(true), "a.mp4", "L", Brief(), rows()) == []


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_is_named_where_no_row_agrees(slip):
    # The longest pendulum under half swings and one too few, the shortest under one too
    # many, lie outside the periods as written.
    length = 0.2 if slip == "count_over" else 0.6
    table = rows(SLIPS[slip])
    against = compare(film(TRUE[length]), table)
    assert against.verdict == "contradicts"
    assert against.explanation == slip
    weights = video_evidence(film(TRUE[length]), table)
    assert max(weights, key=weights.get) == slip
    assert weights[slip] - weights["honest"] > 2
    (finding,) = findings_of_video(film(TRUE[length]), "a.mp4", "L", Brief(), table)
    assert finding.check == "video_period"
    assert finding.cells == ((against.row, None),)


def test_half_swings_outweigh_everything_at_any_length():
    for true in TRUE.values():
        weights = video_evidence(film(true), rows(0.5))
        assert max(weights, key=weights.get) == "half_swings"


def test_a_film_of_another_pendulum_decides_nothing():
    weights = video_evidence(film(0.45), rows())
    assert max(weights.values()) - min(weights.values()) < 0.5


def test_without_a_period_nothing_is_said():
    refused = SwingMeasurement(False, "no_swing", "nothing")
    assert set(video_evidence(refused, rows()).values()) == {0.0}
    assert compare(refused, rows()).verdict == "cannot tell"
    (finding,) = findings_of_video(refused, "a.mp4", "L", Brief(), rows())
    assert finding.check == "video_not_measured"


def test_fewer_swings_than_asked():
    checks = [f.check for f in findings_of_video(film(TRUE[0.4], 9), "a.mp4", "L", Brief(), rows())]
    assert checks == ["video_few_swings"]
