"""Every input that once broke a reader is read again, because it lies in ``corpus/<reader>/``."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from hostile_readers import READERS
from watching import watched

CORPUS = Path(__file__).parent / "corpus"
INPUTS = sorted(path for path in CORPUS.glob("*/*") if path.is_file())


def test_every_folder_of_the_corpus_is_a_readers():
    assert {path.parent.name for path in INPUTS} <= set(READERS)
    assert len(INPUTS) >= 30


@pytest.fixture(autouse=True)
def no_more_memory() -> Iterator[None]:
    """Some of these took all there was: a reader that is broken again must not do so here."""
    if sys.platform != "linux":
        yield
        return
    import resource

    soft, hard = resource.getrlimit(resource.RLIMIT_AS)
    resource.setrlimit(resource.RLIMIT_AS, (8 << 30, hard))
    yield
    resource.setrlimit(resource.RLIMIT_AS, (soft, hard))


@pytest.mark.parametrize("path", INPUTS, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_what_broke_a_reader_once_is_answered(path: Path, tmp_path: Path):
    with watched(tmp_path) as touched:
        READERS[path.parent.name].read(path.read_bytes(), tmp_path)
    assert touched == []
