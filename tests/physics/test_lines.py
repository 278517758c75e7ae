"""Straight lines against certified regressions and another library."""

import numpy as np
import pytest
import statsmodels.api as sm

from markbench.physics.lines import fit_lines

# NIST Statistical Reference Datasets, linear regression: Norris.
NORRIS_X = np.array(
    "0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0 "
    "447.5 11.6 556.0 228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 "
    "229.2 669.1 448.9 0.5".split(),
    dtype=float,
)
NORRIS_Y = np.array(
    "0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3 "
    "448.9 10.8 557.7 228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 "
    "228.9 668.4 449.2 0.2".split(),
    dtype=float,
)


def test_norris_certified():
    line = fit_lines(NORRIS_X, NORRIS_Y)
    assert line.intercept[0] == pytest.approx(-0.262323073774029, rel=1e-9)
    assert line.slope[0] == pytest.approx(1.00211681802045, rel=1e-12)
    assert line.u_intercept[0] == pytest.approx(0.232818234301152, rel=1e-9)
    assert line.u_slope[0] == pytest.approx(0.429796848199937e-03, rel=1e-9)
    assert line.residual_sd[0] == pytest.approx(0.884796396144373, rel=1e-9)
    # Computed in a general C library's test from the same data.
    assert line.covariance[0] == pytest.approx(-7.74327536339570e-05, rel=1e-9)


# NIST StRD, Pontius: a load cell's calibration, certified as a quadratic. The line is
# fitted to what the quadratic term leaves, whose certified coefficients must come back.
PONTIUS_Y = np.array(
    ".11019 .21956 .32949 .43899 .54803 .65694 .76562 .87487 .98292 1.09146 1.20001 1.30822 "
    "1.41599 1.52399 1.63194 1.73947 1.84646 1.95392 2.06128 2.16844 .11052 .22018 .32939 .43886 "
    ".54798 .65739 .76596 .87474 .98300 1.09150 1.20004 1.30818 1.41613 1.52408 1.63159 1.73965 "
    "1.84696 1.95445 2.06177 2.16829".split(),
    dtype=float,
)
PONTIUS_X = np.tile(150000.0 * np.arange(1, 21), 2)


def test_pontius_line_part():
    quadratic = -0.316081871345029e-14
    line = fit_lines(PONTIUS_X, PONTIUS_Y - quadratic * PONTIUS_X**2)
    assert line.intercept[0] == pytest.approx(0.673565789473684e-03, rel=1e-6)
    assert line.slope[0] == pytest.approx(0.732059160401003e-06, rel=1e-9)


@pytest.mark.parametrize(
    ("x", "y", "slope", "u_slope", "residual_sd"),
    [
        # NIST StRD NoInt1 and NoInt2: y = slope·x, certified values.
        (
            np.arange(60.0, 71.0), np.arange(130.0, 141.0),
            2.07438016528926, 0.165289256198347e-01, 3.56753034006338,
        ),
        (
            np.array([4.0, 5.0, 6.0]), np.array([3.0, 4.0, 4.0]),
            0.727272727272727, 0.420827318078432e-01, 0.369274472937998,
        ),
    ],
)  # fmt: skip
def test_line_through_the_origin_certified(x, y, slope, u_slope, residual_sd):
    # Points and their mirror images put the free line through the origin. They leave twice
    # the freedom and twice the squares, so the residual s.d. stays and Σx² doubles.
    line = fit_lines(np.concatenate([x, -x]), np.concatenate([y, -y]))
    assert line.slope[0] == pytest.approx(slope, rel=1e-12)
    assert line.intercept[0] == pytest.approx(0.0, abs=1e-9)
    assert line.residual_sd[0] == pytest.approx(residual_sd, rel=1e-10)
    assert line.u_slope[0] * 2**0.5 == pytest.approx(u_slope, rel=1e-10)


def test_thermometer_calibration_of_the_gum():
    # JCGM 100:2008, H.3: corrections of a thermometer, reference 20 °C.
    t = np.array(
        [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511]
    )
    b = -np.array([0.171, 0.169, 0.166, 0.159, 0.164, 0.165, 0.156, 0.157, 0.159, 0.161, 0.160])
    line = fit_lines(t - 20.0, b)
    assert round(line.intercept[0], 4) == -0.1712
    assert round(line.u_intercept[0], 4) == 0.0029
    assert round(line.slope[0], 5) == 0.00218
    assert round(line.u_slope[0], 5) == 0.00067
    correlation = line.covariance[0] / (line.u_intercept[0] * line.u_slope[0])
    assert round(correlation, 3) == -0.930


def test_studentised_residuals_against_statsmodels():
    # Anscombe (1973), Am. Stat. 27, 17, third set: one point far off the line of the rest.
    x = np.array([10.0, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5])
    y = np.array([7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73])
    line = fit_lines(x, y)
    influence = sm.OLS(y, sm.add_constant(x)).fit().get_influence()
    np.testing.assert_allclose(line.studentised[0], influence.resid_studentized_external, rtol=1e-7)
    assert line.studentised[0][2] == pytest.approx(1203.539464, rel=1e-6)


def test_a_class_of_uneven_tables_at_once():
    rng = np.random.default_rng(20)
    x = rng.uniform(0.1, 1.0, (50, 8))
    y = 4 * x + rng.normal(0, 0.05, x.shape)
    x[rng.random(x.shape) < 0.3] = np.nan
    line = fit_lines(x, y)
    for i in range(50):
        there = np.isfinite(x[i])
        if there.sum() < 3:
            continue
        fit = sm.OLS(y[i][there], sm.add_constant(x[i][there])).fit()
        assert line.slope[i] == pytest.approx(fit.params[1], rel=1e-9)
        assert line.u_slope[i] == pytest.approx(fit.bse[1], rel=1e-9)


def test_too_little_for_a_line_gives_nan_not_a_number():
    same = fit_lines(np.array([[0.3, 0.3, 0.3]]), np.array([[1.1, 1.2, 1.3]]))
    assert np.isnan(same.slope[0])
    two = fit_lines(np.array([[0.2, 0.4]]), np.array([[0.8, 1.6]]))
    assert two.slope[0] == pytest.approx(4.0)
    assert np.isnan(two.u_slope[0])


def test_real_student_pendulum_readings():
    # Data set Pendulum of the R package fastR2 (Pruim, Foundations and Applications of
    # Statistics): 27 periods by physics students, 0.1–16 m. Line of T² on L recomputed
    # with a general library: intercept 0.401867 ± 0.262655, slope 3.801130 ± 0.042421.
    lengths = np.repeat([0.101, 0.205, 0.411, 0.809, 1.485, 2.437, 4.0, 8.0, 16.0], 3)
    periods = np.array(
        "0.72 0.67 0.68 1.01 0.91 1.01 1.33 1.41 1.29 1.87 1.82 1.85 2.43 2.35 2.46 3.07 3.24 3.13 "
        "4.17 3.83 4.02 5.55 5.56 5.75 7.68 8.01 7.68".split(),
        dtype=float,
    )
    line = fit_lines(lengths, periods**2)
    assert line.intercept[0] == pytest.approx(0.401867, abs=1e-6)
    assert line.u_intercept[0] == pytest.approx(0.262655, abs=1e-6)
    assert line.slope[0] == pytest.approx(3.801130, abs=1e-6)
    assert line.u_slope[0] == pytest.approx(0.042421, abs=1e-6)
