"""What is at hand while writing in a class: the phrases of all classes, and the spelling.

One of each for a desk, found through it; the lists of words load in the background.
"""

from __future__ import annotations

import re

from PySide6.QtCore import QObject, Signal

from markbench.session.own_words import KIND as WORD
from markbench.session.own_words import follow as follow_words
from markbench.session.own_words import learn
from markbench.session.phrase_book import PhraseBook
from markbench.session.phrases import follow
from markbench.session.spelling import OwnWords, Spelling
from markbench.ui.background import in_background
from markbench.ui.desk import Desk

_WORD = re.compile(r"[^\W\d_]+")


class AtHand(QObject):
    """``spelling`` is ``None`` until it is loaded, and where a language has no list.

    ``loaded``: other words are known now.
    """

    loaded = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._desk = desk
        self.book = PhraseBook()
        self.language = desk.session.brief.feedback_language.split("-")[0]
        self.words = OwnWords(self.language)
        desk.closing.connect(follow(desk.held, self.book))
        desk.closing.connect(follow_words(desk.held, self.words))
        desk.told.connect(lambda change: self.loaded.emit() if WORD in change.kinds else None)
        self.spelling: Spelling | None = None
        #: Words that are never questioned in this class: learners' names, the rubric's words.
        self.known = _names(desk) | _of_the_rubric(desk)
        self._asked = False

    @staticmethod
    def of(desk: Desk) -> AtHand:
        """The one that belongs to a desk."""
        found = desk.findChild(AtHand)
        return found if isinstance(found, AtHand) else AtHand(desk)

    def load(self) -> None:
        """Load the lists of the feedback's language, once."""
        if self._asked:
            return
        self._asked = True
        in_background(
            self,
            lambda _progress, _stop: Spelling.load(self.language, self.words),
            done=self._take,
            failed=lambda _error: None,  # without a list there is nothing to check
        )

    def learn(self, word: str) -> None:
        """Know a word from now on, in every class."""
        self._desk.do(lambda session: learn(session, self.language, word))

    def _take(self, spelling: Spelling | None) -> None:
        self.spelling = spelling
        self.loaded.emit()


def _names(desk: Desk) -> frozenset[str]:
    # The names of the class list even while they are hidden: nothing of them is shown.
    names = " ".join(one.name for one in desk.held.learners)
    return frozenset(word.lower() for word in _WORD.findall(names))


def _of_the_rubric(desk: Desk) -> frozenset[str]:
    said = []
    for criterion in desk.held.rubric.criteria:
        said += [criterion.title, *(level.descriptor for level in criterion.levels)]
        said += [level.name for level in criterion.levels]
        said += [phrase.text for phrase in criterion.phrases]
    return frozenset(word.lower() for word in _WORD.findall(" ".join(said)))
