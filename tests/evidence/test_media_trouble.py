"""Media that bring their reader down cost one finding or one picture, and the rest goes on."""

import multiprocessing
import os
import signal
import threading
from fractions import Fraction

import clips
import numpy as np
import pytest
from PIL import Image
from test_photos import saved, scene

from any_language import left_in_english
from markbench.evidence import class_look
from markbench.evidence.cache import Cache
from markbench.evidence.class_look import look_at_class
from markbench.evidence.process import SlowWorkerError, WorkerError
from markbench.evidence.showing import Opener
from markbench.evidence.video.compare import findings_of_video
from markbench.evidence.video.judge import SwingMeasurement
from markbench.evidence.worker import Worker
from markbench.model import Brief, Piece

posix = pytest.mark.skipif(os.name != "posix", reason="signals and limits of memory are Posix's")


def grey_film(first: int, frames: int = 30) -> bytes:
    """A second of a grey level that rises, so that frames are told apart."""
    levels = [np.full((48, 64), first + 4 * n, dtype=np.uint8) for n in range(frames)]
    return clips.encode(levels, np.arange(frames) / 30, "mp4", 0, Fraction(30))


@pytest.fixture(scope="module")
def long_film() -> bytes:
    """A film that keeps its reader busy for a second and more."""
    return clips.render(clips.Clip(seed=3, size=(192, 112), rate=Fraction(25), swings=5.6))[0]


@posix
def test_a_reader_killed_over_a_film_leaves_the_class_its_others(tmp_path, long_film, monkeypatch):
    class Doomed(Worker):
        """Its process is killed while it looks at the first learner's film."""

        def ask(self, task, argument, limit_s):
            if task == "swing" and argument.read_bytes() == long_film:
                self._started()
                pid = self._process.pid
                threading.Timer(0.2, os.kill, (pid, signal.SIGKILL)).start()
            return super().ask(task, argument, limit_s)

    files = {
        "a/swing.mp4": long_film,
        "b/swing.mp4": grey_film(40),
        "c/me.jpg": saved(scene(3)),
    }
    pieces = [Piece(f, "selfie" if f.endswith("jpg") else "swing_video") for f in files]
    monkeypatch.setattr(class_look, "Worker", Doomed)
    looks = {
        piece.file: look
        for piece, look in look_at_class(pieces, lambda p: files[p.file], cache=Cache(tmp_path))
    }
    assert looks["c/me.jpg"].header.width == 640
    assert looks["b/swing.mp4"].reason == "no_swing"
    told = findings_of_video(looks["a/swing.mp4"], "a/swing.mp4", "L1", Brief())
    assert [finding.check for finding in told] == ["video_unreadable"]
    assert "made its reader fail" in told[0].message


class Ended(Worker):
    """Its process ends over each of the first ``times`` questions, whatever is asked."""

    times = 1

    def swing(self, data):
        if Ended.times:
            Ended.times -= 1
            raise WorkerError("the file made its reader fail")
        return SwingMeasurement(accepted=True, period_s=1.0)


def looked(folder, stop=lambda: False):
    film = Piece("a/swing.mp4", "swing_video")
    found = list(look_at_class([film], lambda _: b"film", cache=Cache(folder), stop=stop))
    return [look.reason for _, look in found]


def test_a_sound_film_whose_reader_ended_once_is_measured_after_all(tmp_path, monkeypatch):
    monkeypatch.setattr(class_look, "Worker", Ended)
    Ended.times = 1
    assert looked(tmp_path) == [""]


def test_what_the_end_of_a_reader_left_is_not_remembered(tmp_path, monkeypatch):
    monkeypatch.setattr(class_look, "Worker", Ended)
    Ended.times = 2
    assert looked(tmp_path) == ["unreadable"]
    assert looked(tmp_path) == [""]  # tomorrow, on a machine with memory to spare


def test_a_film_under_measurement_when_the_class_is_closed_is_no_finding(tmp_path, monkeypatch):
    monkeypatch.setattr(class_look, "Worker", Ended)
    Ended.times = 1
    assert looked(tmp_path, stop=lambda: Ended.times == 0) == []  # stopped while it was asked
    assert looked(tmp_path) == [""]


def test_a_film_swept_away_while_it_is_read_is_not_called_unreadable(long_film):
    class Swept(Worker):
        """As when the program ends: its temporary files go first, its processes last."""

        def ask(self, task, argument, limit_s):
            argument.unlink()
            return super().ask(task, argument, limit_s)

    with Swept() as worker, pytest.raises(WorkerError, match="taken away"):
        worker.swing(long_film)


def test_a_film_that_takes_too_long_here_is_not_asked_for_again(tmp_path, monkeypatch):
    class Slow(Worker):
        def swing(self, data):
            raise SlowWorkerError("looking at the file took longer than 300 s")

    monkeypatch.setattr(class_look, "Worker", Slow)
    film = Piece("a/swing.mp4", "swing_video")
    [(_, found)] = look_at_class([film], lambda _: b"film", cache=Cache(tmp_path))
    [told] = findings_of_video(found, "a/swing.mp4", "L1", Brief())
    assert told.check == "video_not_measured"
    assert not told.ask


def test_a_reader_that_cannot_be_started_is_told(monkeypatch):
    def refuse(_self):
        raise OSError(12, "Cannot allocate memory")

    monkeypatch.setattr(multiprocessing.get_context("spawn").Process, "start", refuse)
    with Worker() as worker, pytest.raises(WorkerError, match="did not start"):
        worker.photo(b"any")


@posix
def test_a_reader_that_may_have_no_more_memory_says_so_and_goes_on():
    """A sound photo of 100 million pixels (100 MB grey, 300 in colour) where 60 are to be had."""
    large = saved(Image.new("L", (10_000, 10_000), 90), "PNG")
    assert len(large) < 1 << 20
    with Worker(memory_bytes=2 << 30) as worker:
        small = worker.photo(saved(scene(4)))
        assert small.header is not None
        used = _address_space(worker._process.pid)
    with Worker(memory_bytes=used + (60 << 20)) as worker:
        try:
            starved = worker.photo(large)
            problem = starved.problem if starved.header is None else ""
        except WorkerError as error:
            problem = str(error)
        assert problem
        assert worker.photo(saved(scene(4))).header is not None


def _address_space(pid: int) -> int:
    """Bytes of address space of a process (proc(5), field VmPeak)."""
    try:
        with open(f"/proc/{pid}/status") as status:
            lines = dict(line.split(":", 1) for line in status)
    except OSError:
        pytest.skip("no /proc on this system")
    return int(lines["VmPeak"].split()[0]) << 10


def test_the_same_bytes_are_looked_at_once_whoever_hands_them_in(tmp_path, monkeypatch):
    film, asked = grey_film(60), []

    class Counting(Worker):
        def swing(self, data):
            asked.append(data)
            return SwingMeasurement(accepted=False, reason="no_swing", message="none")

    monkeypatch.setattr(class_look, "Worker", Counting)
    pieces = [Piece("a/swing.mp4", "swing_video"), Piece("b/other name.mov", "swing_video")]
    for _ in range(2):  # the second time as after a restart
        looks = list(look_at_class(pieces, lambda _: film, cache=Cache(tmp_path)))
        assert [look.reason for _, look in looks] == ["no_swing", "no_swing"]
    assert len(asked) == 1


def test_what_is_shown_is_decoded_elsewhere():
    with Opener() as opener:
        pid = opener._process.pid if opener._process else os.getpid()
        number, start_s, times_s = opener.open_film(grey_film(40), 960)
        assert opener._process.pid not in (pid, os.getpid())
        assert (start_s, len(times_s)) == (0.0, 30)
        levels = [np.frombuffer(opener.frame(number, n).rgb, np.uint8).mean() for n in (0, 20, 7)]
        # Four grey levels a frame from 40, as drawn; 255/219 of them at most are lost or won.
        assert levels == pytest.approx([40, 120, 68], abs=6)


@posix
def test_a_reader_killed_over_a_picture_costs_that_picture():
    photo = saved(scene(2))
    with Opener() as opener:
        number, _, _ = opener.open_film(grey_film(40), 960)
        os.kill(opener._process.pid, signal.SIGKILL)
        opener._process.join()
        with pytest.raises(ValueError, match="breaks off"):
            opener.frame(number, 3)
        assert opener.picture(photo, 64).width == 64
        again, _, _ = opener.open_film(grey_film(40), 960)
        assert opener.frame(again, 3).width == 64
        with pytest.raises(ValueError, match="cannot be opened"):
            opener.picture(b"no picture", 64)
        with pytest.raises(ValueError, match="cannot be opened"):
            opener.open_film(b"no film", 64)


def test_a_reader_that_failed_says_so_in_any_language(monkeypatch: pytest.MonkeyPatch) -> None:
    def ask(_self: Opener, *_question: object) -> object:
        raise SlowWorkerError("looking at the file took longer than 20 s")

    monkeypatch.setattr(Opener, "ask", ask)
    opener = Opener()
    with pytest.raises(ValueError, match="took longer than 20 s") as trouble:
        opener.picture(b"", 100)
    opener.close()
    assert not left_in_english(trouble.value.args[0])
