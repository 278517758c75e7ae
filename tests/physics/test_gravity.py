"""Local gravity against published values."""

import pytest

from markbench.model import Place
from markbench.physics.gravity import local_gravity, normal_gravity


@pytest.mark.parametrize(
    ("latitude_deg", "g"),
    [
        # WGS 84 normal gravity: NIMA TR8350.2, 3rd ed. (1997); equator and pole are its
        # defining constants (table number from memory).
        (0.0, 9.7803253359),
        (45.0, 9.8061977694),
        (90.0, 9.8321849379),
        (-45.0, 9.8061977694),
    ],
)
def test_normal_gravity_on_the_ellipsoid(latitude_deg, g):
    assert float(normal_gravity(latitude_deg)) == pytest.approx(g, abs=2e-10)


def test_height_is_applied():
    # Potosí, 19.5° S, 3960 m: evaluated with the NPL's latitude-and-height formula as
    # 9.77386 m/s²; a widely copied page prints 9.787, having left the height out.
    assert float(normal_gravity(-19.5, 3960.0)) == pytest.approx(9.77386, abs=2e-5)


@pytest.mark.parametrize(
    ("latitude_deg", "height_m", "measured"),
    [
        # Measured gravity, handbook table to three decimals with latitude to 1°.
        (90, 0, 9.832),
        (59, 45, 9.818),
        (51, 102, 9.811),
        (51, 1376, 9.808),
        (41, 38, 9.803),
        (40, 1638, 9.796),
        (9, 6, 9.782),
        (-6, 7, 9.782),
        (-37, 3, 9.800),
    ],
)
def test_against_measured_gravity(latitude_deg, height_m, measured):
    # 0.0012: a degree of latitude at mid-latitudes is 0.0009, the table's rounding 0.0005.
    assert float(normal_gravity(latitude_deg, height_m)) == pytest.approx(measured, abs=0.0012)


def test_precise_stations_lie_within_the_stated_uncertainty():
    # Garland & Cook (1955), Proc. R. Soc. A 229, less 0.0140 cm/s² for the present datum
    # (datum shift from memory); Teddington and Washington.
    for latitude_deg, height_m, measured in ((51.42, 10.0, 9.811823), (38.9, 0.0, 9.801052)):
        local = local_gravity(Place(latitude_deg, height_m))
        assert abs(local.g - measured) < 0.0005


def test_no_place_spans_where_people_live():
    nowhere = local_gravity(Place())
    assert nowhere.g - 3**0.5 * nowhere.u_g == pytest.approx(9.76)
    assert nowhere.g + 3**0.5 * nowhere.u_g == pytest.approx(9.83)
    assert local_gravity(Place(50.0, 100.0)).u_g < nowhere.u_g / 10
