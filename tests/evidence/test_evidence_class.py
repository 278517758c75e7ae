"""The cache, the worker that may die, and a whole class looked at."""

import io
import os

import clips
import numpy as np
import pytest
from PIL import Image
from test_photos import saved, scene

from markbench.evidence import class_look
from markbench.evidence.cache import Cache, digest_of
from markbench.evidence.class_look import (
    look_at_class,
    photo_from_bytes,
    photo_to_bytes,
    swing_from_bytes,
    swing_to_bytes,
)
from markbench.evidence.photos import PhotoLook, look_at_photo
from markbench.evidence.picture import PictureError
from markbench.evidence.process import SlowWorkerError
from markbench.evidence.video.judge import SwingMeasurement
from markbench.evidence.worker import Worker
from markbench.model import Piece


def test_the_digest_is_sha_256():
    """FIPS 180-4, the example of one block: "abc"."""
    assert digest_of(b"abc").startswith("ba7816bf8f01cfea414140de5dae2223")


def test_the_least_lately_used_goes_first(tmp_path):
    cache = Cache(tmp_path, most_bytes=2500)
    for n in range(2):
        cache.put(f"{n}", bytes(1000))
        os.utime(tmp_path / f"{n}", (1000 + n, 1000 + n))
    assert cache.get("0") is not None
    cache.put("2", bytes(1000))
    assert cache.get("1") is None
    assert cache.get("0") is not None
    assert not list(tmp_path.glob(".new-*"))


def test_a_cache_that_cannot_be_written_is_no_error(tmp_path):
    (tmp_path / "file").write_bytes(b"")
    cache = Cache(tmp_path / "file" / "below")
    cache.put("a", b"b")
    assert cache.get("a") is None


def test_results_survive_the_cache():
    swing = SwingMeasurement(
        True, "", "ten", times_s=(0.0, 0.1), period_s=1.2, swing_marks_s=(1.2,), size=(4, 3)
    )
    again = swing_from_bytes(swing_to_bytes(swing))
    assert again.times_s == swing.times_s
    assert again.size == (4, 3)
    assert np.isnan(again.ellipse)
    look = look_at_photo(saved(scene(1)))
    kept = photo_from_bytes(photo_to_bytes(look))
    assert kept.header == look.header
    assert (kept.print.bits == look.print.bits).all()
    assert photo_from_bytes(photo_to_bytes(PhotoLook(None, 0, 0, None, "no"))).problem == "no"


def test_a_dead_or_slow_worker_is_told_and_replaced():
    photo = saved(scene(2))
    with Worker() as worker:
        assert worker.photo(photo).header is not None
        assert worker.photo(b"junk").problem
        worker._process.kill()
        worker._process.join()
        assert worker.photo(photo).header is not None
        assert Image.open(io.BytesIO(worker.thumbnail(photo, 64))).size == (64, 48)
        with pytest.raises(PictureError):
            worker.thumbnail(b"junk", 64)
        # Rendering a film takes the worker far longer than to refuse one: no time will do.
        film = clips.render(clips.Clip(seed=3, size=(192, 112), swings=5.6))[0]
        worker.film_limit_s = 0.0
        with pytest.raises(SlowWorkerError, match="longer"):
            worker.swing(film)


def test_a_class_is_looked_at_once(tmp_path, monkeypatch):
    files = {
        "a/setup.jpg": saved(scene(3)),
        "a/me.jpg": b"broken",
        "a/film.mp4": b"no film",
        "a/table.csv": b"1,2",
    }
    kinds = {"a/setup.jpg": "setup_photo", "a/me.jpg": "selfie", "a/film.mp4": "swing_video"}
    pieces = [Piece(name, kinds.get(name, "readings")) for name in files]
    gone = Piece("a/gone.jpg", "photo")

    def open_piece(piece):
        if piece is gone:
            raise OSError("the file is gone")
        return files[piece.file]

    told = []
    cache = Cache(tmp_path)

    def run(stop=lambda: False):
        return {
            piece.file: look
            for piece, look in look_at_class(
                [*pieces, gone],
                open_piece,
                cache=cache,
                progress=lambda *step: told.append(step),
                stop=stop,
            )
        }

    first = run()
    assert list(first) == ["a/setup.jpg", "a/me.jpg", "a/gone.jpg", "a/film.mp4"]
    assert first["a/setup.jpg"].header.width == 640
    assert first["a/me.jpg"].problem
    assert first["a/gone.jpg"].problem == "the file is gone"
    assert first["a/film.mp4"].reason == "unreadable"
    assert told[-1] == (4, 4, "")

    def never(*_):
        raise AssertionError("looked at twice")

    monkeypatch.setattr(class_look.Worker, "_started", never)
    again = run()
    assert again["a/setup.jpg"].header == first["a/setup.jpg"].header
    assert run(stop=lambda: True) == {}
