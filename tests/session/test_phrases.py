"""Phrases are kept, come back where the same was found, and are never said with a hole."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from markbench.session import Session
from markbench.session.phrases import (
    LONGEST,
    PhraseError,
    fill,
    forget_phrase,
    keep_phrase,
    left_open,
    offers,
    phrases,
)
from markbench.session.reading_level import LEAST_WORDS, reading_level

HEAD = "Length / cm,Time of 10 swings / s\n"
GOOD = HEAD + "20,8.97\n30,10.99\n40,12.69\n50,14.18\n60,15.54\n"
SHORT = HEAD + "20,8.97\n30,10.99\n"


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    for name, text in (("Aino", SHORT), ("Bodil", SHORT), ("Cato", GOOD), ("Dina", None)):
        (tmp_path / name).mkdir()
        if text is not None:
            (tmp_path / name / "readings.csv").write_text(text)
        else:
            (tmp_path / name / "notes.txt").write_text("nothing yet")
    opened = Session.open(tmp_path, "T. Teacher")
    yield opened
    opened.close()


def ids(session: Session) -> list[str]:
    return [learner.id for learner in session.learners]


TWO = "You have {lengths} lengths; take three more between {shortest} and {longest}."


def test_a_phrase_comes_back_where_the_same_was_found(session: Session) -> None:
    aino, bodil, cato, _ = ids(session)
    keep_phrase(session, aino, "readings", TWO)
    assert "too_few_lengths" in phrases(session)[0].about
    first = offers(session, bodil, "result")[0]
    assert "too_few_lengths" in first.shared
    assert first.words.startswith("You have 2 lengths; take three more between 20.0 cm")
    assert all("too_few_lengths" not in one.shared for one in offers(session, cato, "result"))


def test_numbers_are_the_learners_own(session: Session) -> None:
    cato = ids(session)[2]
    keep_phrase(session, ids(session)[0], "readings", TWO)
    assert "5 lengths" in offers(session, cato, "readings")[0].words


def test_it_is_found_as_one_types(session: Session) -> None:
    learner = ids(session)[2]
    keep_phrase(session, learner, "readings", "Hang the bob from something that cannot move.")
    keep_phrase(session, learner, "readings", "Count nought as you start the watch.")
    assert offers(session, learner, "", "nough")[0].phrase.text.startswith("Count nought")
    assert offers(session, learner, "", "somethng move")[0].phrase.text.startswith("Hang")
    assert offers(session, learner, "", "zebra crossing") == ()
    assert offers(session, learner, "", "paint the zebra blue") == ()  # one common word


def test_a_place_that_cannot_be_filled_is_refused_with_a_sentence(session: Session) -> None:
    dina = ids(session)[3]
    keep_phrase(session, ids(session)[0], "readings", TWO)
    offer = offers(session, dina, "readings")[0]
    assert offer.words == ""
    assert "{shortest}" in offer.trouble
    assert "not known for this learner" in offer.trouble
    with pytest.raises(PhraseError, match="not known"):
        fill(TWO, session.facts(dina))


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "nothing to keep"),
        ("You have {lenghts}.", "did you mean"),
        ("You have {lengths.", "cannot be read"),
        ("a" * (LONGEST + 1), "too many"),
    ],
)
def test_what_cannot_be_kept_is_told(session: Session, text: str, why: str) -> None:
    with pytest.raises(PhraseError, match=why):
        keep_phrase(session, ids(session)[0], "readings", text)
    assert phrases(session) == ()


def test_kept_twice_is_one_and_forgetting_can_be_undone(session: Session, tmp_path: Path) -> None:
    learner = ids(session)[0]
    keep_phrase(session, learner, "readings", TWO)
    keep_phrase(session, learner, "result", TWO)
    assert len(phrases(session)) == 1
    forget_phrase(session, phrases(session)[0])
    assert phrases(session) == ()
    session.undo()
    assert [one.text for one in phrases(session)] == [TWO]
    session.close()
    again = Session.open(tmp_path, "T. Teacher")
    assert [one.text for one in phrases(again)] == [TWO]
    again.close()


def test_a_text_with_a_hole_is_not_sent() -> None:
    assert left_open("All done, 12.7 s it was.") == ""
    assert "{shortest} and" not in left_open("At {shortest}.")
    assert left_open("At {shortest}, {x}.").startswith("{shortest}, {x} are still")


def test_reading_level_is_the_published_index() -> None:
    # Smith & Senter (1967): 4.71 strokes/word + 0.5 words/sentence − 21.43, by hand here:
    # 59 strokes, 14 words, 2 sentences: 4.71·59/14 + 0.5·7 − 21.43 = 1.92.
    text = "Hang thin thread from firm beam here. Take good time when bobs swing fast."
    level = reading_level(text)
    assert (level.words, level.sentences) == (14, 2)
    assert level.grade == pytest.approx(1.92, abs=0.005)


def test_a_decimal_point_ends_no_sentence_and_short_texts_have_no_level() -> None:
    level = reading_level("It took 12.71 s for 10 swings, and g came to 9.81 m/s² in the end.")
    assert level.sentences == 1
    assert reading_level("Well done.").grade is None
    assert reading_level("mot " * LEAST_WORDS, "fr").grade is None


def test_longer_words_and_sentences_read_harder() -> None:
    easy = "You did well. Now do it once more. Use a long thread. Start at the low point."
    hard = (
        "Notwithstanding considerable experimental uncertainty, your determination demonstrates "
        "methodological understanding commensurate with professional laboratory expectations."
    )
    assert reading_level(easy).grade < 5 < reading_level(hard).grade
