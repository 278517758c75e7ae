"""The simulator against closed forms and published figures, none of them its own."""

from __future__ import annotations

import numpy as np
import pytest

from markbench.physics.stack import stack_readings
from simulation.copied import COPIES, copies
from simulation.readings import SLIPS, join, simulate
from simulation.worlds import NOISES, Habits, gravity_at, hand_noise, period, period_ratio

# Hands that never err, so that a closed form must come out exactly.
PERFECT = Habits(
    scatter_s=(0.0, 0.0, 0.0),
    length_reading_m=0.0,
    length_offset_m=0.0,
    amplitude_deg=(0.0, 0.0),
    amplitude_jitter_deg=0.0,
    measured_share=0.0,
)
N = 400


def perfect(slip: str | None = None, **kwargs):
    return simulate(50, slip=slip, seed=4, decimals=7, habits=PERFECT, **kwargs)


def g_of(sim):
    """g by each row's first timing, relative to the true g, (n, R)."""
    per_swing = sim.times_s[:, :, 0] / sim.swings
    return 4 * np.pi**2 * sim.length_m / per_swing**2 / sim.g[:, None]


# T/T₀ to nine places: Abramowitz & Stegun (1964), Table 17.1, through K(m).
@pytest.mark.parametrize(
    ("amplitude", "ratio"),
    [
        (1, 1.000019039),
        (5, 1.000476172),
        (10, 1.001907188),
        (15, 1.004300579),
        (30, 1.017408798),
        (45, 1.039973343),
        (60, 1.073182007),
        (90, 1.180340599),
        (150, 1.762203730),
    ],
)
def test_amplitude_ratio_of_the_handbook(amplitude, ratio):
    assert period_ratio(np.array(float(amplitude))) == pytest.approx(ratio, abs=1e-9)


def test_period_of_a_published_exercise():
    # A university's computing exercise: L = 1 m, g = 9.81, 10° and 80°.
    got = period(np.array(1.0), np.array(9.81), np.array([10.0, 80.0]))
    np.testing.assert_allclose(got, [2.00989262729860052, 2.28188592401963935], rtol=1e-13)


def test_gravity_at_real_places():
    # Garland & Cook (1955) on today's datum: Teddington, Washington; Potosí's height
    # through the laboratory formula. The formula's own claim is ±0.0005 m/s².
    rng = np.random.default_rng(0)
    got = gravity_at(rng, np.array([51.42, 38.89, -19.5]), np.array([10.0, 0.0, 3960.0]))
    np.testing.assert_allclose(got, [9.81182, 9.80105, 9.77386], atol=1.5e-3)


# What each slip does to g at one length: exact consequences of T² = 4π²L/g.
@pytest.mark.parametrize(
    ("slip", "swings", "factor"),
    [
        (None, 10, 1.0),
        ("half_swings", 10, 4.0),
        ("count_short", 10, 1.234568),
        ("count_short", 20, 1.108033),
        ("count_over", 10, 0.826446),
        ("count_over", 20, 0.907029),
        ("period_as_total", 10, 100.0),
        ("period_as_total", 20, 400.0),
    ],
)
def test_counting_slips_have_their_closed_forms(slip, swings, factor):
    got = g_of(perfect(slip, swings=swings))
    # A period is typed to a hundredth at worst: 0.005 s of 0.9 s, doubled by the square.
    rtol = 0.012 if slip == "period_as_total" else 1e-5
    np.testing.assert_allclose(got, factor, rtol=rtol)


@pytest.mark.parametrize(("unit", "factor"), [("inch", 1 / 2.54), ("m", 0.01), ("mm", 10.0)])
def test_unit_slips_have_their_closed_forms(unit, factor):
    np.testing.assert_allclose(g_of(perfect("length_unit", variant=unit)), factor, rtol=1e-5)


@pytest.mark.parametrize(
    ("slip", "sign"), [("length_to_top", 1), ("length_to_bottom", -1), ("whole_thread", -1)]
)
def test_length_slips_leave_the_slope_and_move_the_intercept(slip, sign):
    sim = perfect(slip)
    for i in range(len(sim)):
        squared = (sim.times_s[i, :, 0] / sim.swings[i]) ** 2
        slope, intercept = np.polyfit(sim.length_m[i], squared, 1)
        per_metre = 4 * np.pi**2 / sim.g[i]
        assert slope == pytest.approx(per_metre, rel=1e-5)
        # Intercept ±4π²δ/g, δ the distance from the bob's middle.
        assert intercept == pytest.approx(sign * per_metre * sim.parameter[i], abs=1e-5)


def test_wide_swing_lowers_g_by_the_square_of_the_ratio():
    sim = perfect("wide_swing")
    np.testing.assert_allclose(
        g_of(sim), np.broadcast_to(1 / period_ratio(sim.parameter)[:, None] ** 2, (50, 5)), 1e-5
    )
    assert sim.parameter.min() >= 35
    assert sim.parameter.max() <= 70


def test_a_bobs_size_lengthens_the_period():
    # Nelson & Olsson (1986): ΔT/T = (1/5)(a/l)²; a = 25 mm, l = 1 m: 1.25e-4.
    one, zero = np.array(1.0), np.array(0.0)
    ratio = period(one, np.array(9.81), zero, 0.025) / period(one, np.array(9.81), zero)
    assert ratio - 1 == pytest.approx(1.25e-4, rel=1e-3)


def test_clock_forms_of_a_minute_and_five_seconds():
    for variant in ("run_together", "minute_point", "as_minutes"):
        honest = simulate(N, seed=9, decimals=2, swings=50)
        misread = simulate(N, slip="clock_misread", variant=variant, seed=9, decimals=2, swings=50)
        changed = (
            np.abs(misread.times_s / misread.swings[:, :, None])
            / (2 * np.pi * np.sqrt(misread.true_length_m / misread.g[:, None]))[:, :, None]
        )
        over = changed > 1.3 if variant != "minute_point" else changed < 0.7
        assert over.any(axis=(1, 2)).all(), "every learner has a reading that shows it"
        assert over.all() == (variant == "as_minutes")
        assert honest.times_s.max() > 60


def test_ordinary_swings_are_raised_until_the_display_shows_minutes():
    sim = simulate(N, slip="clock_misread", variant="run_together", seed=2)
    assert (np.nanmax(sim.times_s, axis=(1, 2)) > 100).all()
    assert (np.nanmin(sim.times_s, axis=(1, 2)) < 60).all()


@pytest.mark.parametrize("design", ["standard", "low", "tall", "mixed"])
def test_one_timing_miscounted_is_one_swing_out(design):
    sim = simulate(N, design, "one_timing_miscounted", seed=5)
    out = sim.counted - sim.swings[:, :, None]
    assert (np.nansum(np.abs(out), axis=(1, 2)) == 1).all()
    assert not np.isnan(sim.times_s[np.arange(N), sim.row, sim.timing]).any()


def test_mistyped_cells_change_one_value_materially():
    clean, typed = (simulate(N, slip=s, seed=6) for s in (None, "mistyped_cell"))
    by_time = np.abs(typed.times_s - clean.times_s) > 1e-9
    by_length = np.abs(typed.length_m - clean.length_m) > 1e-9
    assert (by_time.sum(axis=(1, 2)) + by_length.sum(axis=1) == 1).all()
    assert np.abs(typed.times_s - clean.times_s)[by_time].min() >= 0.3 - 1e-9
    assert set(typed.variant) == {"swapped", "point"}


def test_swapped_rows_exchange_their_timings():
    clean, swapped = (simulate(N, slip=s, seed=6) for s in (None, "rows_swapped"))
    assert (swapped.row != swapped.other_row).all()
    who = np.arange(N)
    np.testing.assert_array_equal(
        swapped.times_s[who, swapped.row], clean.times_s[who, swapped.other_row]
    )


def test_made_readings_are_nearer_than_a_hand():
    made = simulate(N, slip="made_by_hand", seed=7, decimals=2)
    repeats = np.abs(made.times_s[:, :, 0] - made.times_s[:, :, 1])
    assert repeats.max() <= 0.03 + 1e-9
    # Two honest timings differ by √2 × 0.10 s (Faux & Godolphin 2019) as a typical size.
    honest = simulate(N, seed=7, decimals=2)
    differences = honest.times_s[:, :, 0] - honest.times_s[:, :, 1]
    assert np.median(np.abs(differences)) == pytest.approx(0.6745 * 2**0.5 * 0.10, rel=0.1)
    formula = simulate(N, slip="made_from_formula", seed=7, decimals=2)
    g = formula.variant.astype(float)[:, None, None]
    exact = formula.swings[:, :, None] * 2 * np.pi * np.sqrt(formula.length_m[:, :, None] / g)
    assert np.std(formula.times_s - exact) < 0.02


@pytest.mark.parametrize("noise", NOISES)
def test_every_noise_has_unit_standard_deviation(noise):
    errors = hand_noise(np.random.default_rng(1), (20_000, 5, 2), noise)
    assert np.std(errors) == pytest.approx(1.0, abs=0.05)
    assert abs(np.mean(errors)) < 0.02


def test_noise_shapes_differ_as_named():
    rng = np.random.default_rng(2)
    heavy = hand_noise(rng, (20_000, 5, 2), "heavy")
    assert np.mean(np.abs(heavy) > 4) > 20 * 6.3e-5  # the normal law has 6.3e-5 beyond 4
    haste = hand_noise(rng, (20_000, 5, 2), "haste").reshape(-1, 10)
    assert np.corrcoef(haste[:, 0], haste[:, 1])[0, 1] > 0.5
    uneven = hand_noise(rng, (20_000, 5, 2), "uneven")
    repeats = np.abs(uneven)
    assert np.corrcoef(repeats[:, 0, 0], repeats[:, 0, 1])[0, 1] > 0.1


@pytest.mark.parametrize("design", ["standard", "low", "tall", "mixed"])
@pytest.mark.parametrize("slip", [None, *SLIPS])
def test_arrays_and_objects_tell_the_same(design, slip):
    sim = simulate(12, design, slip, seed=8)
    ours, theirs = sim.stack(), stack_readings(sim.readings())
    for name in ("length_m", "swings", "times_s", "time_step_s", "length_step_m"):
        a, b = getattr(ours, name), getattr(theirs, name)
        a = a[tuple(slice(size) for size in b.shape)]
        np.testing.assert_allclose(a, b, err_msg=name)
    assert np.nanmin(sim.length_m) > 0
    assert np.nanmin(sim.times_s) > 0


def test_seeds_decide_everything():
    a, b, c = (simulate(20, "mixed", seed=s) for s in (1, 1, 2))
    np.testing.assert_array_equal(a.times_s, b.times_s)
    assert not np.array_equal(a.times_s, c.times_s)


def test_places():
    known = simulate(200, seed=1)
    assert known.place.latitude_deg is not None
    assert np.ptp(known.g) == 0
    unknown = simulate(2000, seed=1, place=False)
    assert unknown.place.latitude_deg is None
    assert unknown.g.min() >= 9.76
    assert unknown.g.max() <= 9.83
    assert np.ptp(unknown.g) > 0.04


def test_two_slips_at_once():
    sim = perfect("half_swings+length_to_top")
    expected = 4 * sim.length_m / (sim.length_m + sim.parameter[:, None])
    np.testing.assert_allclose(g_of(sim), expected, rtol=1e-5)


def test_bob_diameters_halve_the_error():
    whole = simulate(N, slip="length_to_top", seed=3)
    half = simulate(N, slip="length_to_top", seed=3, bob="diameter")
    np.testing.assert_allclose(half.parameter, whole.parameter / 2)
    assert whole.parameter.min() >= 0.008
    assert whole.parameter.max() <= 0.025


@pytest.mark.parametrize("how", COPIES)
def test_copies_keep_what_they_should(how):
    original = simulate(100, seed=11, decimals=2)
    copy = copies(original, how, seed=12)
    moved = np.abs(copy.times_s - original.times_s) > 1e-9
    if how == "altered":
        assert (moved.sum(axis=(1, 2)) == 5).all()
        size = np.abs(copy.times_s - original.times_s)[moved]
        assert 0.01 - 1e-9 <= size.min() < size.max() <= 0.05 + 1e-9
    elif how == "shifted":
        assert np.ptp(copy.times_s - original.times_s, axis=(1, 2)).max() < 1e-9
    elif how == "reordered":
        np.testing.assert_allclose(
            np.sort(copy.times_s, axis=1).sum(axis=2).sum(axis=1),
            original.times_s.sum(axis=(1, 2)),
        )
        assert moved.any()
    else:
        assert not moved.any()
    assert (np.abs(copy.length_m - original.length_m) > 1e-9).any() == (
        how in ("reordered", "lengths_changed")
    )


def test_classes_join_and_part():
    whole = join(simulate(3, seed=1), simulate(2, "mixed", seed=2))
    assert len(whole) == 5
    np.testing.assert_array_equal(
        whole.take(slice(0, 3)).readings()[1], simulate(3, seed=1).readings()[1]
    )


def test_unknown_names_are_refused():
    with pytest.raises(ValueError, match=r"no such slip: half_swing$"):
        simulate(1, slip="half_swing", seed=1)
    with pytest.raises(ValueError, match="noise"):
        simulate(1, noise="pink", seed=1)
