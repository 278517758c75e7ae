"""Order of marking and marking without names, on a small invented class."""

import dataclasses
import json

import pytest

from markbench.session import Session
from markbench.session.blind import Veiled, is_blind, numbers, set_blind
from markbench.session.order import choose_order, in_order, order_by, seed_of, shuffled

# Invented learners; one bears the name that another one's file is called by.
LEARNERS = {"70001": "Ada Invented", "70002": "Ben Made-Up", "70003": "Zoë Fabricated"}
TABLE = "Length / cm,t1 / s for 10 swings,t2 / s\n20,8.95,9.01\n30,11.02,10.95\n40,12.72,{last}\n"


@pytest.fixture
def session(tmp_path):
    root = tmp_path / "Class 9Z"
    for name in LEARNERS.values():
        (root / name).mkdir(parents=True)
        last = "14.10" if name.startswith("Ben") else "12.66"
        (root / name / "readings.csv").write_text(TABLE.format(last=last), "utf-8")
        (root / name / f"selfie {name}.jpg").write_bytes(b"not a picture")
    rows = "".join(f"{i},{name}\n" for i, name in LEARNERS.items())
    (root / "class_list.csv").write_text("id,name\n" + rows, "utf-8")
    (root / "brief.toml").write_text('evidence = ["selfie", "swing_video"]\n', "utf-8")
    opened = Session.open(root, "T. Teacher")
    yield opened
    opened.close()


def test_by_name_until_something_else_is_chosen(session):
    assert order_by(session, "readings") == "name"
    assert in_order(session, "readings") == ("70001", "70002", "70003")


def test_by_concern_the_questioned_one_comes_first(session):
    choose_order(session, "readings", "concern")
    assert in_order(session, "readings")[0] == "70002"  # one timing a second and a half off


def test_a_shuffle_is_recorded_with_its_seed_and_comes_out_the_same(session):
    choose_order(session, "readings", "shuffled", seed=7)
    decision = session.history()[-1]
    assert (decision.kind, decision.subject) == ("order", "readings")
    assert decision.value == {"by": "shuffled", "seed": 7}
    assert decision.at is not None
    first = in_order(session, "readings")
    assert sorted(first) == sorted(LEARNERS)
    choose_order(session, "readings", "name")
    choose_order(session, "readings", "shuffled", seed=7)
    assert in_order(session, "readings") == first
    assert seed_of(session, "readings") == 7
    assert order_by(session, "result") == "name"  # another criterion keeps its own order


def test_a_shuffle_without_a_seed_is_refused(session):
    with pytest.raises(ValueError, match="seed"):
        choose_order(session, "readings", "shuffled")


def test_a_late_joiner_moves_nobody_else():
    ids = [f"s{i}" for i in range(40)]
    before = shuffled(ids, 3, "result")
    after = shuffled([*ids, "new"], 3, "result")
    assert tuple(one for one in after if one != "new") == before
    assert before != tuple(ids)
    assert before != shuffled(ids, 4, "result")
    assert before != shuffled(ids, 3, "readings")


def test_places_in_shuffled_orders_are_even():
    # Over many seeds everyone is first about equally often: 4000 seeds, 8 learners, so 500
    # each with a standard deviation of √(4000·⅛·⅞) = 21; 100 is nearly five of these.
    ids = [f"s{i}" for i in range(8)]
    first = [shuffled(ids, seed, "c")[0] for seed in range(4000)]
    assert all(abs(first.count(one) - 500) < 100 for one in ids)


def test_blind_is_recorded_on_and_off_and_keeps_its_numbers(session):
    assert not is_blind(session)
    set_blind(session, True, seed=11)
    assert is_blind(session)
    dealt = numbers(session)
    set_blind(session, False, seed=12)
    assert not is_blind(session)
    set_blind(session, True, seed=13)
    assert numbers(session) == dealt
    values = [d.value["on"] for d in session.history() if d.kind == "blind"]
    assert values == [True, False, True]
    session.undo()
    assert not is_blind(session)


def words_of(thing):
    return json.dumps(dataclasses.asdict(thing), default=str, ensure_ascii=False)


def test_a_veiled_session_tells_no_name_and_no_file(session):
    set_blind(session, True, seed=1)
    veiled = Veiled(session, lambda n: f"Portfolio {n}")
    told = [words_of(veiled.work), *map(words_of, veiled.learners)]
    for learner in LEARNERS:
        told.append(words_of(veiled.portfolio(learner)))
        told += map(words_of, veiled.findings(learner))
        told += map(words_of, veiled.drafts(learner))
    plain = [words_of(session.portfolio(i)) for i in LEARNERS]
    assert any("Ada Invented" in words for words in plain)  # there was something to hide
    for words in told:
        for name in LEARNERS.values():
            assert name not in words
            assert name.split()[0] not in words


def test_veiled_learners_stand_by_their_numbers(session):
    set_blind(session, True, seed=5)
    veiled = Veiled(session, lambda n: f"Portfolio {n}")
    assert [one.name for one in veiled.learners] == ["Portfolio 1", "Portfolio 2", "Portfolio 3"]


def test_commands_through_the_veil_journal_the_true_file(session):
    veiled = Veiled(session, lambda n: f"Portfolio {n}")
    selfie = next(p for p in veiled.portfolio("70001").pieces if p.kind == "selfie")
    assert not veiled.may_open(selfie.file)
    veiled.set_piece_status("70001", selfie.file, "again")
    true = "Ada Invented/selfie Ada Invented.jpg"
    assert session.value("piece_status", "70001", true) == "again"
    assert veiled.value("piece_status", "70001", selfie.file) == "again"
    table = veiled.portfolio("70001").table
    veiled.correct("70001", table.readings[0].timings[0].source, "8.91")
    assert session.portfolio("70001").table.readings[0].timings[0].time_s == pytest.approx(8.91)
    assert veiled.portfolio("70001").table.readings[0].timings[0].time_s == pytest.approx(8.91)


def test_a_bare_file_name_is_hidden_for_its_owner_once(session):
    veiled = Veiled(session, lambda n: f"Portfolio {n}")
    number = numbers(session)["70002"]
    assert veiled.hide("see Ben Made-Up/readings.csv", "70002").startswith(
        f"see Portfolio {number}/"
    )
    hidden = veiled.hide("readings.csv and Zoë Fabricated's", "70002")
    assert hidden.count("Portfolio") == 2
    assert "Zoë" not in hidden


def test_numbers_in_sentences_stay(session):
    veiled = Veiled(session, lambda n: f"Portfolio {n}")
    assert veiled.hide("0.70001 s and 170001 s") == "0.70001 s and 170001 s"
    assert "Portfolio" in veiled.hide("learner 70001 asked")
