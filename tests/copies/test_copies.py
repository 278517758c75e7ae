"""Copied tables are found; independent ones, and a class's shared lengths, are not."""

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest

from markbench.checks.copies import alike_findings, find_alike, log_threshold, told_together
from markbench.checks.copies.index import candidates
from markbench.checks.copies.pairs import score
from markbench.checks.copies.tables import tables_of
from markbench.model import Concern, Learner, Piece, Portfolio, ReadingsTable, Source
from markbench.physics.stack import Stack
from simulation.copied import COPIES, copies
from simulation.readings import join, simulate


def test_honest_classes_with_common_lengths_are_left_in_peace():
    for seed in range(20):
        assert find_alike(simulate(30, seed=300 + seed, decimals=2).stack()) == []


@pytest.mark.parametrize("how", COPIES)
def test_copies_are_found_in_their_class(how):
    # Half of the timings altered by 0.01–0.05 s is the hardest: 9 in 10 is asked of it.
    found = 0
    for seed in range(20):
        honest = simulate(29, seed=400 + seed, decimals=2)
        copy = copies(honest.take(slice(3, 4)), how, seed=seed)
        pairs = find_alike(join(honest, copy).stack())
        assert all((pair.first, pair.second) == (3, 29) for pair in pairs)
        found += len(pairs)
    assert found >= (17 if how == "altered" else 20)


def test_a_ratio_is_a_bound_on_chance():
    # By Markov's inequality the share of honest pairs with a likelihood ratio above x is at
    # most 1/x; this holds for any class, so it is checked far below the threshold too.
    honest = simulate(400, seed=61, decimals=2)
    first, second = np.triu_indices(400, 1)
    ratio = score(tables_of(honest.stack()), first, second).log_ratio
    for log_x in (0.0, 1.0, 2.0, 4.0):
        assert (ratio > log_x).mean() <= np.exp(-log_x)


def test_the_index_misses_no_copy_that_everyone_with_everyone_would_find():
    honest = simulate(600, seed=5, decimals=2)
    group = join(honest, *(copies(honest.take(slice(0, 40)), how, seed=6) for how in COPIES))
    tables = tables_of(group.stack())
    n = len(tables)
    first, second = np.triu_indices(n, 1)
    everyone = score(tables, first, second).log_ratio > log_threshold(n)
    by_all = set(zip(first[everyone].tolist(), second[everyone].tolist(), strict=True))
    by_index = {(p.first, p.second) for p in find_alike(group.stack())}
    assert by_index <= by_all
    assert len(by_index) >= 0.95 * len(by_all) > 100


def test_the_index_leaves_nearly_all_pairs_unlooked_at():
    first, _ = candidates(tables_of(simulate(4000, seed=8).stack()))
    assert len(first) < 4 * 4000  # of eight million pairs


def test_tables_of_unequal_length_are_compared():
    honest = simulate(20, seed=9, decimals=2)
    stack = honest.stack()
    copy = stack.times_s[4].copy()
    copy[0] = np.nan
    length = stack.length_m[4].copy()
    length[0] = np.nan
    both = Stack(
        np.vstack([stack.length_m, length]),
        np.vstack([stack.swings, np.where(np.isnan(length), np.nan, 10)]),
        np.concatenate([stack.times_s, copy[None]]),
        np.append(stack.time_step_s, 0.01),
        np.append(stack.length_step_m, 0.01),
    )
    assert [(p.first, p.second, p.compared) for p in find_alike(both)] == [(4, 20, 8)]


@pytest.mark.parametrize("n", [0, 1])
def test_too_few_to_compare(n):
    assert find_alike(simulate(max(n, 1), seed=1).take(slice(0, n)).stack()) == []


def portfolio(id_, name, readings, hour, partner=""):
    when = dt.datetime(2026, 3, 9, hour)
    return Portfolio(
        Learner(id_, name, partner=partner),
        (Piece(f"{id_}.csv", "readings", modified=when),),
        table=ReadingsTable(readings, (), Source(f"{id_}.csv")),
    )


@pytest.fixture
def pair():
    readings = simulate(1, seed=3, decimals=2).readings()[0]
    return [portfolio("1", "Ada Invented", readings, 9), portfolio("2", "Ben Made", readings, 11)]


def test_what_is_said_of_a_pair(pair):
    found = alike_findings(pair)
    (finding,) = found["2"]
    assert "10 of 10 timings are the same to the last digit as Ada Invented's" in finding.message
    assert "handed in after the other" in finding.message
    assert "handed in before" in found["1"][0].message
    assert finding.concern is Concern.LOOK
    assert finding.who == "moderator"
    for word in ("copied", "cheat", "dishonest"):
        assert word not in (finding.message + finding.ask).lower()


def at(one, when):
    return replace(one, pieces=tuple(replace(piece, modified=when) for piece in one.pieces))


@pytest.mark.parametrize("seconds", [0, 1, 37, 60])
def test_times_of_copying_say_nothing_of_who_was_first(pair, seconds):
    when = dt.datetime(2026, 3, 9, 11, 0, 40)
    pair = [at(pair[0], when), at(pair[1], when + dt.timedelta(seconds=seconds))]
    for (finding,) in alike_findings(pair).values():
        assert "handed in" not in finding.message
    apart = [pair[0], at(pair[1], when + dt.timedelta(seconds=61))]
    assert "after the other" in alike_findings(apart)["2"][0].message


def test_a_class_copied_within_the_hour_has_no_order(pair):
    third = portfolio("3", "Cy Thought-up", simulate(1, seed=4, decimals=2).readings()[0], 9)
    when = dt.datetime(2026, 3, 9, 9)
    copied = [at(pair[0], when), at(pair[1], when + dt.timedelta(minutes=12)), third]
    assert "handed in" not in alike_findings(copied)["1"][0].message
    other_day = at(third, when - dt.timedelta(days=1))
    assert "before the other" in alike_findings([*copied[:2], other_day])["1"][0].message


@pytest.mark.parametrize("by", ["id", "name", "brief"])
def test_a_declared_partner_explains_a_pair(pair, by):
    partners = ()
    if by == "brief":
        partners = (("Ada Invented", "Ben Made"),)
    else:
        learner = replace(pair[1].learner, partner="1" if by == "id" else "Ada Invented")
        pair[1] = replace(pair[1], learner=learner)
    (finding,) = alike_findings(pair, partners)["1"]
    assert finding.concern is Concern.NOTE
    assert "declared as partners" in finding.message


def test_a_table_that_went_round_is_told_once(pair):
    third = portfolio("3", "Cy Invented", pair[0].table.readings, 12)
    other = simulate(1, seed=4, decimals=2).readings()[0]
    found = alike_findings([*pair, third, portfolio("4", "Di Made", other, 8)])
    names = {"1": "Ada Invented", "2": "Ben Made", "3": "Cy Invented"}
    assert len(found["1"]) == 2
    (together,) = told_together(found["1"], names)
    assert "the same to the last digit as those of Ben Made and Cy Invented." in together.message
    assert together.numbers["with"] == "2, 3"
    assert "4" not in found


def test_pairs_that_agree_differently_are_told_apart(pair):
    """A partner explains one pair, not the other."""
    third = portfolio("3", "Cy Invented", pair[0].table.readings, 12, partner="1")
    found = told_together(alike_findings([*pair, third])["1"], {})
    assert sorted(finding.concern for finding in found) == [Concern.NOTE, Concern.LOOK]
    assert {finding.numbers["with"] for finding in found} == {"2", "3"}


def test_other_questions_stay_as_they_are(pair):
    (one,) = alike_findings(pair)["1"]
    other = replace(one, check="photo_repeated")
    assert told_together((other, one, other), {}) == (other, one, other)
