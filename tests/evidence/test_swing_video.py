"""Films rendered with a known swing: measured, or refused for the right reason."""

import io
import struct
from dataclasses import replace
from fractions import Fraction

import av
import clips
import numpy as np
import pytest
from scipy import optimize, signal

from markbench.evidence.video.film import FilmError, read_film
from markbench.evidence.video.judge import measure_swing

SMALL = clips.Clip(
    seed=3,
    size=(192, 112),
    rate=Fraction(25),
    small_period_s=0.8,
    swings=5.6,
    amplitude_deg=14,
    bob=0.035,
)
USABLE = {
    "plain": replace(SMALL, rate=Fraction(30000, 1001)),
    "held, talk, shaken, turned": replace(
        SMALL, seed=4, hand=True, talk_s=1.0, shake=0.006, turned=90, kind="mov", size=(112, 192)
    ),
    "uneven, dim, person": replace(
        SMALL, seed=5, variable=True, kind="webm", person=True, light=0.4, noise=4.0
    ),
}
UNUSABLE = {
    "two bobs": (
        replace(SMALL, trouble="two bobs", other={"ratio": 0.7, "phase": 2.0, "aside": 0.3}),
        {"two_bobs", "unsteady", "no_swing"},
    ),
    "no swing": (replace(SMALL, trouble="no swing", person=True), {"no_swing"}),
    "few swings": (
        replace(SMALL, hand=True, talk_s=0.5, swings=2.4),
        {"few_swings", "no_swing"},
    ),
    "cut": (replace(SMALL, swings=8, trouble="cut", cut_swings=1.4), {"cut"}),
}


@pytest.fixture(scope="module")
def films():
    return {name: clips.render(clip) for name, clip in USABLE.items()}


@pytest.mark.parametrize("name", USABLE)
def test_period_and_count(films, name):
    data, truth = films[name]
    found = measure_swing(data)
    assert found.accepted, found.message
    assert found.period_s == pytest.approx(truth.period_s, rel=0.005)
    assert abs(found.period_s - truth.period_s) < 5 * found.u_period_s
    assert found.complete_swings == int(truth.swings)
    assert len(found.swing_marks_s) == found.complete_swings
    assert found.start_s == pytest.approx(truth.release_s, abs=0.06 * truth.period_s)
    steps = np.diff((found.start_s, *found.swing_marks_s))
    assert steps == pytest.approx(truth.period_s, rel=0.02)


@pytest.mark.parametrize("name", UNUSABLE)
def test_unusable_is_refused(name):
    clip, reasons = UNUSABLE[name]
    found = measure_swing(clips.render(clip)[0])
    assert not found.accepted
    assert found.reason in reasons
    assert np.isnan(found.period_s)
    assert found.message


def test_scipy_finds_the_same_period_on_the_same_trace(films):
    """Reference methods: scipy.signal.lombscargle and scipy.optimize.curve_fit."""
    found = measure_swing(films["plain"][0])
    t, x = np.array(found.times_s), np.array(found.displacement_px)
    seen = np.isfinite(x)
    t, x = t[seen], x[seen] - x[seen].mean()
    grid = np.linspace(0.4, 3.0, 5000)
    power = signal.lombscargle(t, x, 2 * np.pi * grid)
    assert 1 / grid[np.argmax(power)] == pytest.approx(found.period_s, rel=0.01)

    def swing(t, size, rate, phase, damping, middle):
        return middle + size * np.exp(-damping * t) * np.cos(rate * t + phase)

    guess = (x.max(), 2 * np.pi * grid[np.argmax(power)], 0.0, 0.0, 0.0)
    fitted, _ = optimize.curve_fit(swing, t, x, guess)
    assert 2 * np.pi / abs(fitted[1]) == pytest.approx(found.period_s, rel=0.002)


@pytest.mark.parametrize("name", USABLE)
def test_frame_times_are_the_containers_own(films, name):
    data, truth = films[name]
    film = read_film(data)
    with av.open(io.BytesIO(data)) as container:
        stream = container.streams.video[0]
        stamps = sorted(p.pts * p.time_base for p in container.demux(stream) if p.pts is not None)
    assert film.group == 1
    assert film.times_s == pytest.approx(np.array(stamps, dtype=float), abs=1e-9)
    # WebM counts milliseconds.
    assert film.times_s == pytest.approx(truth.frame_times_s, abs=0.00051)


def boxes(data: bytes, path: str) -> bytes:
    """The body of the first box at ``path``, such as ``moov.trak`` (ISO/IEC 14496-12, 4.2)."""
    for name in path.split("."):
        at = 0
        while data[at + 4 : at + 8] != name.encode():
            at += struct.unpack(">I", data[at : at + 4])[0]
        data = data[at + 8 : at + struct.unpack(">I", data[at : at + 4])[0]]
    return data


@pytest.mark.parametrize("name", ["plain", "held, talk, shaken, turned"])
def test_frame_times_are_those_of_the_sample_tables(films, name):
    """Read by hand, without a library: ISO/IEC 14496-12, 8.4.2 (mdhd), 8.6.1 (stts, ctts)."""
    data = films[name][0]
    media = boxes(data, "moov.trak.mdia")
    scale = struct.unpack(">I", boxes(media, "mdhd")[12:16])[0]
    table = boxes(media, "minf.stbl")
    lasting = struct.unpack(">I", boxes(table, "stts")[4:8])[0]
    runs = struct.iter_unpack(">II", boxes(table, "stts")[8 : 8 + 8 * lasting])
    decoded = np.cumsum([0, *np.concatenate([[delta] * count for count, delta in runs])])[:-1]
    offsets = np.zeros(decoded.size, dtype=int)
    if b"ctts" in table:
        runs = struct.iter_unpack(">Ii", boxes(table, "ctts")[8:])
        offsets = np.concatenate([[offset] * count for count, offset in runs])
    shown = np.sort(decoded + offsets) / scale
    film = read_film(data)
    assert film.times_s - film.times_s[0] == pytest.approx(shown - shown[0], abs=1e-9)


def test_a_rate_of_30000_over_1001_is_not_30(films):
    """ITU-R BT.709: 30/1.001 a second. Counting frames at 30 would be 0.1 % short."""
    data, truth = films["plain"]
    film, found = read_film(data), measure_swing(data)
    assert np.diff(film.times_s) == pytest.approx(1001 / 30000, abs=2e-5)
    by_count = truth.period_s * 1000 / 1001
    assert abs(found.period_s - truth.period_s) < abs(found.period_s - by_count)


@pytest.mark.parametrize("turned", [0, 90, 180, 270])
def test_the_rotation_tag_sets_the_picture_upright(turned):
    """ISO/IEC 14496-12, 8.3.2: the matrix of the track header."""
    upright = np.zeros((96, 160), dtype=np.uint8)
    upright[8:40, 16:64] = 200
    data = clips.encode([upright] * 5, np.arange(5) / 25, "mp4", turned, Fraction(25))
    film = read_film(data)
    assert film.size == (160, 96)
    assert film.frames[2][24, 40] > 150
    assert film.frames[2][70, 120] < 50


def test_a_fast_film_is_averaged_not_thinned():
    levels = [np.full((64, 64), 100 + 40 * (n % 2), dtype=np.uint8) for n in range(80)]
    film = read_film(clips.encode(levels, np.arange(80) / 120, "mp4", 0, Fraction(120)))
    assert film.group == 4
    assert film.times_s[0] == pytest.approx(1.5 / 120, abs=1e-4)
    assert film.frames[10].mean() == pytest.approx(120, abs=4)


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"not a film at all",
        b"#EXTM3U\n#EXTINF:1,\nhttp://example.invalid/a.ts\n",
        b"\x00\x00\x00\x18ftypmp42" + bytes(200),
        b"\x1aE\xdf\xa3" + bytes(range(256)),
    ],
)
def test_what_is_no_film_is_unreadable(data):
    found = measure_swing(data)
    assert found.reason == "unreadable"
    with pytest.raises(FilmError):
        read_film(data)


def test_a_film_broken_anywhere_never_raises(films):
    data = films["held, talk, shaken, turned"][0]
    rng = np.random.default_rng(8)
    for _ in range(4):
        broken = bytearray(data[: int(len(data) * rng.uniform(0.2, 1.0))])
        for at in rng.integers(0, len(broken), 200):
            broken[at] = rng.integers(256)
        found = measure_swing(bytes(broken))
        assert found.accepted or found.reason
