"""Films and photographs: the motion against published periods, the files against readers."""

from __future__ import annotations

import datetime as dt
import io

import av
import numpy as np
import pytest
from PIL import Image, ImageOps

from simulation.film import Film, angles, frame_times, record
from simulation.pictures import Look, Picture, photograph

SMALL = (160, 120)


# T of a 1 m pendulum at 9.81 m/s², from a university's computing exercise.
@pytest.mark.parametrize(("amplitude", "period"), [(10, 2.00989262729860), (40, 2.06893785189359)])
def test_film_keeps_the_published_period(amplitude, period):
    film = Film(1.0, g=9.81, amplitude_deg=amplitude, decay_s=1e9)
    times = np.arange(0, 10 * period, 1e-4)
    track = angles(film, times)
    rising = np.flatnonzero((track[:-1] < 0) & (track[1:] >= 0))
    crossings = times[rising] - track[rising] * 1e-4 / (track[rising + 1] - track[rising])
    # Linear interpolation over steps of 1 ms is good to about 1e-6 s.
    np.testing.assert_allclose(np.diff(crossings), period, atol=5e-6)


def test_swing_decays_as_said():
    film = Film(0.5, decay_s=20.0, amplitude_deg=5.0)
    track = np.abs(angles(film, np.linspace(0, 20, 20_001)))
    last = track[-1500:].max()
    assert last / track[0] == pytest.approx(np.exp(-1), rel=0.05)


def decoded(data: bytes) -> list[av.VideoFrame]:
    with av.open(io.BytesIO(data)) as container:
        return list(container.decode(video=0))


@pytest.mark.parametrize("uneven", [False, True])
def test_film_can_be_read_with_its_own_times(uneven):
    film = Film(0.2, swings=1.5, size=SMALL, uneven=uneven, held_s=0.2)
    frames = decoded(record(film))
    np.testing.assert_allclose([f.time for f in frames], frame_times(film), atol=1e-4)
    gaps = np.diff(frame_times(film))
    assert (np.ptp(gaps) > 0.001) == uneven


def test_turned_film_says_so():
    film = Film(0.2, swings=0.5, size=(120, 160), rotated=True)
    frame = decoded(record(film))[0]
    assert (frame.width, frame.height) == (160, 120)
    assert frame.rotation == -90


def test_bob_is_where_the_angle_says():
    film = Film(0.3, swings=1, size=(320, 240), amplitude_deg=15, bob=(200, 40, 40))
    frames = decoded(record(film))
    rows, columns = [], []
    for frame in frames[:: len(frames) // 6]:
        pixels = frame.to_ndarray(format="rgb24").astype(int)
        red = (pixels[..., 0] > 120) & (pixels[..., 1] < 70) & (pixels[..., 2] < 80)
        red[:60] = False  # books above the support may be red
        y, x = np.nonzero(red)
        rows.append(y.mean())
        columns.append(x.mean())
    swing = angles(film, np.maximum(frame_times(film)[:: len(frames) // 6] - film.held_s, 0))
    slope, _ = np.polyfit(np.sin(swing), columns, 1)
    # 0.7 of the height from pivot to bob; the highlight shifts the colour by a pixel or two.
    assert slope == pytest.approx(0.7 * 240, rel=0.05)


def test_photograph_carries_its_tags():
    taken = dt.datetime(2026, 3, 4, 17, 3, 2)
    data = photograph(
        Picture("setup", 0.3, 1, size=(320, 240), taken=taken, gps=(52.4, -20.5), orientation=6)
    )
    image = Image.open(io.BytesIO(data))
    exif = image.getexif()
    assert exif[0x0112] == 6
    assert image.size == (240, 320)
    assert ImageOps.exif_transpose(image).size == (320, 240)
    assert exif.get_ifd(0x8769)[0x9003] == "2026:03:04 17:03:02"
    assert [float(v) for v in exif.get_ifd(0x8825)[2]] == [52, 24, 0]
    plain = Image.open(io.BytesIO(photograph(Picture("setup", 0.3, 1, size=SMALL))))
    assert not plain.getexif().get_ifd(0x8825)


@pytest.mark.parametrize("trouble", ["dark", "blurred", "blank", "small"])
def test_photographs_in_trouble_look_it(trouble):
    def opened(trouble: str) -> np.ndarray:
        data = photograph(Picture("selfie", 0.4, 2, size=(320, 240), trouble=trouble, look=Look()))
        return np.asarray(Image.open(io.BytesIO(data)).convert("L"), dtype=float)

    good, bad = opened(""), opened(trouble)
    if trouble == "small":
        assert bad.shape == (120, 160)
    elif trouble == "blurred":
        assert np.abs(np.diff(bad)).mean() < 0.5 * np.abs(np.diff(good)).mean()
    elif trouble == "dark":
        assert bad.mean() < 30 < good.mean()
    else:
        assert bad.std() < 3 < good.std()


def test_pictures_and_films_are_drawn_alike_each_time():
    picture = Picture("selfie", 0.4, 3, size=SMALL)
    assert photograph(picture) == photograph(picture)
    film = Film(0.1, swings=0.5, size=SMALL)
    assert record(film) == record(film)
