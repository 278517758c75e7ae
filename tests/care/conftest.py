"""The invented class, opened."""

import os
import shutil

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from care_class import film, write_class

from markbench.evidence.cache import Cache
from markbench.evidence.class_look import look_at_class
from markbench.intake.folder import open_piece, read_class
from markbench.session import Session


@pytest.fixture(scope="session")
def film_bytes():
    return film()


@pytest.fixture(scope="session")
def measured(tmp_path_factory, film_bytes):
    """A cache in which the class's photos and films are measured: that takes seconds."""
    place = tmp_path_factory.mktemp("measured")
    folder = write_class(place / "class", film_bytes)
    pieces = [p for one in read_class(folder).portfolios.values() for p in one.pieces]
    cache = Cache(place / "cache" / "markbench" / "evidence")
    for _ in look_at_class(pieces, lambda piece: open_piece(folder, piece.file), cache=cache):
        pass
    return place / "cache"


@pytest.fixture
def folder(tmp_path, film_bytes, measured, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    shutil.copytree(measured, tmp_path / "cache")
    return write_class(tmp_path / "Class 9Z", film_bytes)


@pytest.fixture
def session(folder):
    opened = Session.open(folder, "T. Teacher")
    yield opened
    opened.close()
