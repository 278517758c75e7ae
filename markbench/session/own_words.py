"""Words that the teacher told the speller, as decisions of the class in which she told them.

The words lie in a file of her own, for all classes; the journal says what was learnt here, and
the file follows the journal, so that one Undo reaches the word, too, in its turn. Rejected: a
pile of its own for what is not the class's, which would have to be put in order with the
journal's steps, and would be forgotten when the class is closed.
"""

from __future__ import annotations

from collections.abc import Callable

from markbench.model import Decision
from markbench.session.session import Change, Session
from markbench.session.spelling import OwnWords

KIND = "word"


def learn(session: Session, language: str, word: str) -> None:
    """Know a word from now on, in every class."""
    # Each time has a decision of its own: the word may have been forgotten from elsewhere.
    value = {"word": word, "language": language}
    session.decide(Decision(KIND, "", f"{len(session.history())}", value))


def follow(session: Session, own: OwnWords) -> Callable[[], None]:
    """Have the words follow what is learnt in this class, undoing included.

    Returns a function that ends it.
    """
    done = len(session.history())

    def on_change(change: Change) -> None:
        nonlocal done
        if KIND not in change.kinds:
            return
        fresh = session.history()[done:]
        done += len(fresh)
        for d in fresh:
            told = d.value or d.before
            if d.kind != KIND or not isinstance(told, dict):
                continue
            language, word = str(told.get("language", "")), str(told.get("word", ""))
            words = own if language == own.language else OwnWords(language)
            if d.value is None:
                words.drop(word)
            else:
                words.add(word)

    return session.listen(on_change)
