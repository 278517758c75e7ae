"""A sentence is its English text to everybody, and can still be said in another language."""

from __future__ import annotations

import copy
import json
import pickle

from markbench.model import Figures, Finding, Sentence, joined, opening, reworded, say
from markbench.model.sentence import known_again


def sentence() -> Sentence:
    inner = say("{n} days", n=3)
    return say("{who} came {late} late, by {t:.2f} s.", who="Ida", late=inner, t=0.5)


def test_a_sentence_is_its_english_text() -> None:
    assert sentence() == "Ida came 3 days late, by 0.50 s."
    assert hash(sentence()) == hash(str.__str__(sentence()))
    assert json.loads(json.dumps([sentence()])) == [sentence()]
    assert Finding("late", "1", sentence()) == Finding("late", "1", f"{sentence()}")


def test_it_keeps_its_form_when_it_is_copied_or_sent_to_another_process() -> None:
    for other in (pickle.loads(pickle.dumps(sentence())), copy.deepcopy(sentence())):
        assert other == sentence()
        assert (other.form, other.values) == (sentence().form, sentence().values)
        assert isinstance(other.values["late"], Sentence)
    assert isinstance(pickle.loads(pickle.dumps(Figures("1.5 s"))), Figures)


def test_parts_in_a_row_are_kept_apart() -> None:
    both = joined((sentence(), "", say("None of it.")))
    assert both == f"{sentence()} None of it."
    assert isinstance(both, Sentence)
    assert [type(part) for part in both.values.values()] == [Sentence, Sentence]
    assert joined(("", "")) == ""
    assert joined(("{braces}", "of a learner"), ", ") == "{braces}, of a learner"


def test_a_sentence_begins_with_a_capital() -> None:
    begun = opening(say("{what} is 3", what="the sum"))
    assert begun == "The sum is 3"
    assert isinstance(begun, Sentence)
    assert pickle.loads(pickle.dumps(begun)) == begun
    assert opening("g of the line") == "g of the line"


def test_a_sentence_kept_as_plain_text_is_known_again() -> None:
    forms = ("nearest below grade {grade} ({least})", "highest total (all in all)")
    known = known_again("nearest below grade B+ (12.5)", forms)
    assert isinstance(known, Sentence)
    assert known == "nearest below grade B+ (12.5)"
    assert known.values == {"grade": "B+", "least": "12.5"}
    assert isinstance(known_again("highest total (all in all)", forms), Sentence)
    assert not isinstance(known_again("no such form", forms), Sentence)


def test_names_are_hidden_among_the_values_only() -> None:
    hidden = reworded(sentence(), lambda text: text.replace("Ida", "Learner 1"))
    assert hidden == "Learner 1 came 3 days late, by 0.50 s."
    assert isinstance(hidden, Sentence)
    assert hidden.form == sentence().form
    assert reworded("Ida's", lambda text: text.upper()) == "IDA'S"
