"""Whether a sentence of the core can be said in another language, whole."""

from __future__ import annotations

import re

from markbench.model import Figures, Sentence
from markbench.ui.languages.refresh import forms_of_sentences, kept_in_tables

COLLECTED = {*forms_of_sentences(), *(words for _, words in kept_in_tables())}
PROSE = re.compile(r"[a-z]{2,} [a-z]{2,}")


def left_in_english(text: str, *, kept: str = "") -> list[str]:
    """Parts of ``text`` that a window in another language would say in English.

    ``kept``: a part that stands as it is, such as the words of a reader of files.
    """
    if isinstance(text, Figures) or (kept and kept in text and not isinstance(text, Sentence)):
        return []
    if not isinstance(text, Sentence):
        return [text] if PROSE.search(text) else []
    told = re.sub(r"\{\w*[^{}]*\}", "", text.form)
    found = [text.form] if re.search(r"[^\W\d_]", told) and text.form not in COLLECTED else []
    for value in text.values.values():
        if isinstance(value, str):
            found += left_in_english(value, kept=kept)
    return found
